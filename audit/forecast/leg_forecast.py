"""Where walks of a leg end: closed formulae for the mean, the spread, and the chance of sight."""

from __future__ import annotations

import cmath
import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from audit.azimuths import NorthAngles
from audit.forecast.normal_in_disk import chance_in_disk, normal_below, normal_deviate
from audit.forecast.walker_scatter import WalkerScatter
from audit.leg_card import CardLeg
from audit.leg_card.bezel import clicks_to_set
from audit.leg_card.leg_pieces import LegPiece, leg_pieces
from audit.read_only import read_only
from audit.settings import ForecastSettings
from audit.units import FloatArray, direction_degrees, east_north, unit_vector, wrap_degrees

_NO_ANGLES = NorthAngles(grid_magnetic_angle_deg=0.0, convergence_deg=0.0)
"""Where nothing is asked of the compass."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ellipse:
    """An ellipse of equal density that holds ``share`` of all walks.

    ``major_deg`` is the grid azimuth of its longer axis, in [0, 180).
    """

    share: float
    major_m: float
    minor_m: float
    major_deg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class AimedOff:
    """What becomes of a leg that is aimed off its point on purpose.

    Attributes
    ----------
    offset_m : float
        Right positive.
    offset_deg : float
        The same as a turn of the leg, or of its last straight piece.
    chance_in_sight : float
        That the walk ends within sight all the same.
    chance_of_side : float
        That it ends on the side that was meant, so that the turn at the line feature is
        to the right hand.
    """

    offset_m: float
    offset_deg: float
    chance_in_sight: float
    chance_of_side: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class LegForecast:
    """Where walks of one leg end, as seen from its point.

    Attributes
    ----------
    toward_deg : float
        Direction of travel at the end: grid azimuth of the axis "along".
    along_m, across_m : float
        Middle of the ends from the point: beyond it, and right of it.
    along_sd_m, across_sd_m : float
    near, far : Ellipse
        The inner and the outer one, about the middle.
    sight_m, chance_in_sight : float
        That a walk ends within sight of the point.
    sure_offset_m : float
        Offset from which on nearly all walks end on the side that was meant.
    covariance_m2, walk_covariance_m2 : float arrays, shape (2, 2)
        Of (east, north): all of it, and the walker's own part.
    walk_mean_m : (east, north)
        Mean of what the walker does, less what the card says.
    """

    leg: str
    toward_deg: float
    along_m: float
    across_m: float
    along_sd_m: float
    across_sd_m: float
    near: Ellipse
    far: Ellipse
    sight_m: float
    chance_in_sight: float
    sure_offset_m: float
    aimed_off: AimedOff | None
    covariance_m2: FloatArray
    walk_covariance_m2: FloatArray
    walk_mean_m: tuple[float, float]

    def far_outline(self, corners: int = 48) -> FloatArray:
        """Give the outer ellipse as (east, north) from the point, closed; shape (n, 2)."""
        middle = self.along_m * unit_vector(self.toward_deg)
        middle = middle + self.across_m * unit_vector(self.toward_deg + 90.0)
        angle = np.radians(np.linspace(0.0, 360.0, corners + 1))[:, None]
        major = self.far.major_m * np.cos(angle) * unit_vector(self.far.major_deg)
        minor = self.far.minor_m * np.sin(angle) * unit_vector(self.far.major_deg + 90.0)
        return np.asarray(middle + major + minor)


def forecast_leg(
    leg: CardLeg,
    scatter: WalkerScatter,
    sight_m: float,
    *,
    aim_off_m: float = 0.0,
    angles: NorthAngles | None = None,
    settings: ForecastSettings | None = None,
) -> LegForecast:
    """Forecast where walks of a leg end that begin at its start.

    Each straight piece of a leg along via positions is set and counted by itself. Beside
    the walker's own error the references count: a point lies anywhere in its square alike,
    which is a standard deviation of half the side over the root of 3.

    ``angles`` are those of the card; without them nobody knows what rounding to clicks
    turns the pieces of such a leg by.
    """
    chosen = settings or ForecastSettings()
    pieces = leg_pieces(leg, angles or _NO_ANGLES, None)
    known = angles is not None or len(pieces) == 1
    steps = np.array([piece.distance_m * unit_vector(piece.azimuth.degrees) for piece in pieces])
    clicked = clicked_turns_deg(pieces, scatter) if known else None
    mean, walk = walk_moments(steps, scatter, clicked)
    squares = (leg.start.half_square_m**2 + leg.end.half_square_m**2) / 3.0
    covariance = walk + squares * np.eye(2)
    last = pieces[-1]
    toward = last.azimuth.degrees
    axes = np.array([unit_vector(toward), unit_vector(toward + 90.0)])
    start = np.array([leg.start.east_m, leg.start.north_m])
    end = np.array([leg.end.east_m, leg.end.north_m])
    middle = start + mean - end
    along_sd, across_sd = np.sqrt(np.diag(axes @ covariance @ axes.T))
    along_m, across_m = axes @ middle
    return LegForecast(
        leg=leg.name,
        toward_deg=toward,
        along_m=float(along_m),
        across_m=float(across_m),
        along_sd_m=float(along_sd),
        across_sd_m=float(across_sd),
        near=ellipse_of(covariance, chosen.near_share),
        far=ellipse_of(covariance, chosen.far_share),
        sight_m=sight_m,
        chance_in_sight=chance_in_disk(middle, covariance, sight_m),
        sure_offset_m=float(across_sd) * normal_deviate(chosen.sure_side) + abs(float(across_m)),
        aimed_off=_aimed_off(last, middle, covariance, sight_m, aim_off_m) if aim_off_m else None,
        covariance_m2=read_only(covariance),
        walk_covariance_m2=read_only(walk),
        walk_mean_m=east_north(mean - steps.sum(axis=0)),
    )


def walk_moments(
    steps_m: FloatArray, scatter: WalkerScatter, set_turns_deg: FloatArray | None = None
) -> tuple[FloatArray, FloatArray]:
    """Give mean, shape (2,), and covariance, shape (2, 2), of where the steps of a leg lead.

    Exact moments, not a linear approximation. A walk is q times the sum of steps, each
    turned by its own angle h; q is lognormal and h normal, or normal and even over a click.
    With north + i east for a step, E[z], E[z z] and E[z conj(z)] need no more than the
    characteristic function of h at 1 and 2 and the moments of q.

    ``steps_m`` holds (east, north), one row a straight piece; ``set_turns_deg`` is what
    rounding to a click turns each by, where that is known, else any of a click alike.
    """
    step = steps_m[:, 1] + 1j * steps_m[:, 0]
    if set_turns_deg is not None:
        step = step * np.exp(1j * np.radians(set_turns_deg))
    turn = math.radians(scatter.turn_deg)
    click = scatter.click_deg if set_turns_deg is None else 0.0
    once, twice = (_characteristic(k, scatter.turn_sd_deg, click) for k in (1, 2))
    first = math.exp(scatter.log_ratio + 0.5 * scatter.log_ratio_sd**2)
    second = math.exp(2.0 * scatter.log_ratio + 2.0 * scatter.log_ratio_sd**2)
    total, squared = step.sum(), (step**2).sum()
    mean = first * once * cmath.exp(1j * turn) * total
    size = float((np.abs(step) ** 2).sum())
    product = second * (size + once**2 * (abs(total) ** 2 - size))
    pseudo = second * cmath.exp(2j * turn) * (twice * squared + once**2 * (total**2 - squared))
    spread, skew = product - abs(mean) ** 2, pseudo - mean**2
    north, east = (spread + skew.real) / 2.0, (spread - skew.real) / 2.0
    both = skew.imag / 2.0
    return np.array([mean.imag, mean.real]), np.array([[east, both], [both, north]])


def ellipse_of(covariance_m2: FloatArray, share: float) -> Ellipse:
    """Give the ellipse of equal density that holds this share of a normal scatter."""
    variances, axes = np.linalg.eigh(covariance_m2)
    radius = math.sqrt(-2.0 * math.log(1.0 - share))
    minor, major = (radius * math.sqrt(max(float(one), 0.0)) for one in variances)
    direction = direction_degrees(float(axes[0, 1]), float(axes[1, 1]))
    return Ellipse(
        share=share, major_m=major, minor_m=minor, major_deg=wrap_degrees(2.0 * direction) / 2.0
    )


def clicked_turns_deg(pieces: Sequence[LegPiece], scatter: WalkerScatter) -> FloatArray | None:
    """Give what rounding its magnetic azimuth to a click turns each piece of a leg by."""
    if not scatter.click_deg:
        return None
    return np.array(
        [clicks_to_set(piece.magnetic, scatter.click_deg)[0].error_deg for piece in pieces]
    )


def _aimed_off(
    last: LegPiece, middle: FloatArray, covariance: FloatArray, sight_m: float, offset_m: float
) -> AimedOff:
    """Aim the last piece off: what comes before leads to its via position as planned."""
    right = unit_vector(last.azimuth.degrees + 90.0)
    across_sd = math.sqrt(float(right @ covariance @ right))
    moved = middle + offset_m * right
    side = math.copysign(1.0, offset_m)
    return AimedOff(
        offset_m=offset_m,
        offset_deg=math.degrees(math.atan(offset_m / last.distance_m)),
        chance_in_sight=chance_in_disk(moved, covariance, sight_m),
        chance_of_side=normal_below(side * float(right @ moved) / max(across_sd, 1e-9)),
    )


def _characteristic(times: int, sd_deg: float, click_deg: float) -> float:
    """Give E[cos(k h)] of a turn that is normal, and even over a click beside."""
    normal = math.exp(-0.5 * (times * math.radians(sd_deg)) ** 2)
    half = times * math.radians(click_deg) / 2.0
    return normal * (math.sin(half) / half if half else 1.0)
