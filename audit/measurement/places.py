"""Where the walker was at the start and at the claim of a leg, better than one fix can say."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.matching.leg_match import CleanTrack, Reckoned
from audit.settings import MeasuringSettings
from audit.statistics.correlated_noise import variance_of_mean
from audit.statistics.sparse_corner import sparse_corner
from audit.statistics.two_pieces import fit_meeting
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class Fixed:
    """A place with its standard error per axis.

    Attributes
    ----------
    halt_s : (float, float)
        Start and end of the part of a halt that it was averaged over; ``time_s`` twice
        where the walker did not halt. Fixes outside it show the walker somewhere else.
    along_sd_m : float
        Standard error along the walk for want of knowing the moment better.
    """

    time_s: float
    east_m: float
    north_m: float
    sd_m: float
    halt_s: tuple[float, float]
    along_sd_m: float = 0.0

    @property
    def place(self) -> FloatArray:
        """(east, north), shape (2,)."""
        return np.array([self.east_m, self.north_m])


@dataclass(frozen=True, slots=True, kw_only=True)
class Around:
    """The walk about a moment: from when to when it has no other corner, and how fast it went."""

    from_s: float
    to_s: float
    speed_m_s: float


def fix_place(
    clean: CleanTrack,
    halts: FloatArray,
    time_s: float,
    noise_m: float,
    settings: MeasuringSettings,
    around: Around | None = None,
    unseen: Reckoned | None = None,
) -> Fixed:
    """Average the fixes of the halt at a moment; where there is none, fit the bend there.

    ``halts`` has shape (k, 2): start and end of each halt in seconds. The standard
    error counts the noise as correlated, so a long halt helps less than its number of
    fixes would have it. ``around`` says what of the walk shows a bend where fixes are few,
    ``unseen`` where the walker was reckoned to be in a silence.
    """
    if unseen is not None:
        return _reckoned(unseen, time_s, noise_m, settings)
    halt = _halt_at(halts, time_s, settings.halt_reach_s)
    if halt is not None:
        window = _clipped(halt, time_s, settings.halt_window_s)
        inside = _between(clean, *window)
        if inside.any():
            east, north = float(clean.east_m[inside].mean()), float(clean.north_m[inside].mean())
            sd_m = _standard_error(noise_m, window[1] - window[0], settings)
            return Fixed(time_s=time_s, east_m=east, north_m=north, sd_m=sd_m, halt_s=window)
    reach = settings.line_window_s
    inside = _between(clean, time_s - reach, time_s + reach)
    if inside.sum() >= 5:
        position = clean.places(inside)
        east, north = fit_meeting(clean.time_s[inside], position, time_s).position.tolist()
        sd_m = _standard_error(noise_m, 2.0 * reach, settings)
    else:
        corner = _corner(clean, time_s, noise_m, settings, around)
        return corner or place_between(clean, time_s, noise_m)
    return Fixed(time_s=time_s, east_m=east, north_m=north, sd_m=sd_m, halt_s=(time_s, time_s))


def _corner(
    clean: CleanTrack,
    time_s: float,
    noise_m: float,
    settings: MeasuringSettings,
    around: Around | None,
) -> Fixed | None:
    """Lay the way before and the way after through the few fixes about a moment."""
    if around is None or clean.median_interval_s is None:
        return None
    apart_s = clean.median_interval_s
    reach_s = settings.corner_fixes * apart_s
    inside = _between(
        clean, max(time_s - reach_s, around.from_s), min(time_s + reach_s, around.to_s)
    )
    moments_s = time_s + apart_s * np.linspace(-1.0, 1.0, settings.corner_moments)
    corner = sparse_corner(
        clean.time_s[inside],
        clean.places(inside),
        moments_s,
        speed_m_s=around.speed_m_s,
        speed_sd=settings.corner_speed_sd,
        noise_m=noise_m,
    )
    if corner is None:
        return None
    east, north = corner.place.tolist()
    sd_m = float(np.hypot(noise_m, corner.sd_m))
    return Fixed(time_s=time_s, east_m=east, north_m=north, sd_m=sd_m, halt_s=(time_s, time_s))


def _reckoned(
    unseen: Reckoned, time_s: float, noise_m: float, settings: MeasuringSettings
) -> Fixed:
    """Take a place that was reckoned into a silence; the further from a fix, the less sure."""
    share = settings.unseen_straight_sd_share if unseen.straight else settings.unseen_sd_share
    sd_m = float(np.hypot(np.hypot(noise_m, settings.unseen_sd_m), share * unseen.gone_m))
    return Fixed(
        time_s=time_s,
        east_m=unseen.east_m,
        north_m=unseen.north_m,
        sd_m=sd_m,
        halt_s=(time_s, time_s),
    )


def place_between(clean: CleanTrack, time_s: float, noise_m: float) -> Fixed:
    """Give the place at a moment on the way, straight between the fixes around it."""
    return Fixed(
        time_s=time_s,
        east_m=float(np.interp(time_s, clean.time_s, clean.east_m)),
        north_m=float(np.interp(time_s, clean.time_s, clean.north_m)),
        sd_m=noise_m,
        halt_s=(time_s, time_s),
    )


def _halt_at(halts: FloatArray, time_s: float, reach_s: float) -> tuple[float, float] | None:
    """Give the halt nearest to a moment, if it is within reach."""
    if len(halts) == 0:
        return None
    off_s = np.maximum(np.maximum(halts[:, 0] - time_s, time_s - halts[:, 1]), 0.0)
    nearest = int(np.argmin(off_s))
    if off_s[nearest] > reach_s:
        return None
    return float(halts[nearest, 0]), float(halts[nearest, 1])


def _clipped(halt: tuple[float, float], time_s: float, longest_s: float) -> tuple[float, float]:
    """Keep the part of a long halt that is nearest to the moment."""
    start, end = halt
    return max(start, min(time_s, end) - longest_s), min(end, max(time_s, start) + longest_s)


def _between(clean: CleanTrack, start_s: float, end_s: float) -> np.ndarray:
    return (clean.time_s >= start_s) & (clean.time_s <= end_s)


def _standard_error(noise_m: float, length_s: float, settings: MeasuringSettings) -> float:
    share = variance_of_mean(length_s, settings.noise_correlation_s)
    return float(noise_m * np.sqrt(share))
