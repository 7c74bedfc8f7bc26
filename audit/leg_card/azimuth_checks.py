"""Where a leg's azimuths disagree with its points or with each other."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from audit.azimuths import GridAzimuth, TrueAzimuth
from audit.leg_card.azimuth_slips import (
    azimuth_digit_slips,
    grid_slips,
    magnetic_slips,
    neighbour_slips,
    true_slips,
)
from audit.leg_card.finished_card import CardFinding, CardLeg
from audit.leg_card.leg_check import LegCheck
from audit.leg_card.legs import PointsSay
from audit.leg_card.rounding import grid_rounding_deg, plan_rounding_deg
from audit.leg_card.slips import DIGIT, KNOWN, Slip, fitting_slips, slip_names, slip_sentence
from audit.leg_card.told_numbers import told_angle, told_azimuth
from audit.units import turn_degrees
from audit.words import Sentence, sentence
from audit.words.figures import Turn

_NOTHING = KNOWN - 1
"""The rank of no slip: for an azimuth that only the one beside it shows to be off."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StatedAzimuth:
    """An azimuth that the plan gives beside the one that it should be.

    ``north`` is "grid", "magnetic" or "true"; ``slips`` are those of that kind of azimuth.
    """

    north: str
    given_deg: float
    expected_deg: float
    tolerance_deg: float
    slips: Sequence[Slip]

    @property
    def off_deg(self) -> float:
        """Given less expected, clockwise positive."""
        return turn_degrees(self.expected_deg, self.given_deg)


def leading_azimuth(check: LegCheck, said: PointsSay) -> StatedAzimuth | None:
    """Give the azimuth that leads the leg beside the one that the points say; None without one."""
    leg, angles, said_azimuth = check.leg, check.angles, said.azimuth
    if said_azimuth is None:
        return None
    if leg.grid_azimuth is not None:
        north, given_deg, expected_deg = "grid", leg.grid_azimuth.degrees, said_azimuth.degrees
        slips: Sequence[Slip] = grid_slips(angles)
    elif leg.magnetic_azimuth is not None:
        north, given_deg = "magnetic", leg.magnetic_azimuth.degrees
        expected_deg, slips = angles.magnetic(said_azimuth).degrees, magnetic_slips(angles)
    elif leg.true_azimuth is not None:
        north, given_deg = "true", leg.true_azimuth.degrees
        expected_deg, slips = angles.true(said_azimuth).degrees, true_slips(angles)
    else:
        return None
    if said.first_stretch is not None:
        turn_deg = turn_degrees(said_azimuth.degrees, said.first_stretch.degrees)
        what = sentence("slip-via")
        slips = (*slips, Slip(name="via-azimuth", what=what, turn_deg=turn_deg))
    doubt_deg = _squares_deg(check, said, turn_degrees(expected_deg, given_deg))
    rounding_deg = grid_rounding_deg(leg) if north == "grid" else plan_rounding_deg(given_deg)
    if north == "magnetic":
        doubt_deg += check.angle_doubt_deg
    return StatedAzimuth(
        north=north,
        given_deg=given_deg,
        expected_deg=expected_deg,
        tolerance_deg=doubt_deg + rounding_deg,
        slips=slips,
    )


def _squares_deg(check: LegCheck, said: PointsSay, off_deg: float) -> float:
    """Give how far an azimuth may be off its points: a careful hand, and their squares."""
    return check.settings.azimuth_slack_deg + said.room.degrees(off_deg)


def azimuths_against_points(check: LegCheck) -> Iterator[CardFinding]:
    """Hold the azimuth that leads the leg against the one between its points."""
    stated = None if check.said is None else leading_azimuth(check, check.said)
    if stated is None:
        return
    right = grid_at_odds(check)
    plain = abs(stated.off_deg) > stated.tolerance_deg
    if right is not None:  # also where the squares of the points would let it pass
        stated = replace(stated, tolerance_deg=min(stated.tolerance_deg, right.tolerance_deg))
    yield from _finding(
        check,
        stated,
        because=sentence("finding-by-points"),
        explained=check.explained,
        right=right,
        blamed=DIGIT if plain else _NOTHING,
    )


def grid_at_odds(check: LegCheck) -> StatedAzimuth | None:
    """Give the azimuth that shows the grid azimuth to be the wrong one of the two.

    It is the magnetic or the true one, where it disagrees with the grid azimuth, agrees with
    the points, and lies nearer to them by far than the grid azimuth does. None otherwise.
    """
    said, grid = check.said, check.leg.grid_azimuth
    if said is None or said.azimuth is None or grid is None or check.explained:
        return None
    most_deg = check.settings.nearer_share * abs(said.azimuth.turn_to(grid))
    for by_grid in _beside_grid(check, grid):
        off_deg = _off_points_deg(check, by_grid)
        disagrees = abs(by_grid.off_deg) > by_grid.tolerance_deg
        if disagrees and off_deg is not None and off_deg <= most_deg:
            return by_grid
    return None


def _off_points_deg(check: LegCheck, by_grid: StatedAzimuth) -> float | None:
    """Give how far off the points an azimuth is; None where it does not agree with them."""
    said, grid = check.said, check.leg.grid_azimuth
    if said is None or said.azimuth is None or grid is None:
        return None
    off_deg = turn_degrees(0.0, by_grid.off_deg + said.azimuth.turn_to(grid))
    most_deg = by_grid.tolerance_deg + _squares_deg(check, said, off_deg)
    return abs(off_deg) if abs(off_deg) <= most_deg else None


def _beside_grid(check: LegCheck, grid: GridAzimuth) -> Iterator[StatedAzimuth]:
    """Give magnetic and true azimuth beside what the grid azimuth makes of them."""
    leg, angles = check.leg, check.angles
    doubt_deg = grid_rounding_deg(leg)
    if leg.magnetic_azimuth is not None:
        given_deg = leg.magnetic_azimuth.degrees
        yield StatedAzimuth(
            north="magnetic",
            given_deg=given_deg,
            expected_deg=angles.magnetic(grid).degrees,
            tolerance_deg=doubt_deg + check.angle_doubt_deg + plan_rounding_deg(given_deg),
            slips=magnetic_slips(angles),
        )
    if leg.true_azimuth is not None:
        yield _true_beside(check, grid, doubt_deg, leg.true_azimuth)


def azimuths_against_each_other(check: LegCheck, angle_sentence: str = "") -> Iterator[CardFinding]:
    """Hold magnetic and true azimuths against the one that leads the leg.

    ``angle_sentence`` is said of a magnetic azimuth that no slip explains.
    """
    leg, angles = check.leg, check.angles
    if leg.grid_azimuth is None:
        if leg.magnetic_azimuth is not None and leg.true_azimuth is not None:
            grid = angles.grid_from_magnetic(leg.magnetic_azimuth)
            doubt_deg = plan_rounding_deg(leg.magnetic_azimuth.degrees) + check.angle_doubt_deg
            yield from _true_finding(check, grid, doubt_deg, sentence("finding-by-magnetic"))
        return
    if grid_at_odds(check) is not None:
        return  # it is the grid azimuth that is wrong, and that is told
    grid_azimuth = told_azimuth(leg.grid_azimuth.degrees, in_mils="grid" in leg.in_mils)
    turned = {
        "magnetic": ("finding-by-angle", angles.grid_magnetic_angle_deg),
        "true": ("finding-by-convergence", angles.convergence_deg),
    }
    for stated in _beside_grid(check, leg.grid_azimuth):
        words, angle_deg = turned[stated.north]
        because = sentence(words, grid=grid_azimuth, angle=told_angle(angle_deg))
        otherwise = angle_sentence if stated.north == "magnetic" else ""
        # Where the points let both pass, either may be the wrong one: then no digit is blamed.
        blamed = DIGIT if _off_points_deg(check, stated) is None else KNOWN
        yield from _finding(check, stated, because=because, otherwise=otherwise, blamed=blamed)


def _true_finding(
    check: LegCheck, grid: GridAzimuth, doubt_deg: float, because: str
) -> Iterator[CardFinding]:
    if check.leg.true_azimuth is not None:
        stated = _true_beside(check, grid, doubt_deg, check.leg.true_azimuth)
        yield from _finding(check, stated, because=because)


def _true_beside(
    check: LegCheck, grid: GridAzimuth, doubt_deg: float, given: TrueAzimuth
) -> StatedAzimuth:
    return StatedAzimuth(
        north="true",
        given_deg=given.degrees,
        expected_deg=check.angles.true(grid).degrees,
        tolerance_deg=doubt_deg + plan_rounding_deg(given.degrees),
        slips=true_slips(check.angles),
    )


def _finding(
    check: LegCheck,
    stated: StatedAzimuth,
    *,
    because: str,
    explained: str = "",
    otherwise: str = "",
    right: StatedAzimuth | None = None,
    blamed: int = DIGIT,
) -> Iterator[CardFinding]:
    """Give the finding of an azimuth that is off; ``right`` is one that agrees beside it.

    ``blamed`` is the highest rank of a slip that is named.
    """
    off_deg = stated.off_deg
    if abs(off_deg) <= stated.tolerance_deg:
        return
    fitting = () if explained else _fitting(check, stated)
    if otherwise:  # a sum that all legs share is no slip of the pen on each
        blamed = min(blamed, KNOWN)
    fitting = tuple(slip for slip in fitting if slip.rank <= blamed)
    in_mils = stated.north in check.leg.in_mils
    message = sentence(
        "finding-azimuth",
        leg=check.leg.name,
        north=stated.north,
        given=told_azimuth(stated.given_deg, in_mils=in_mils),
        because=because,
        expected=told_azimuth(stated.expected_deg, in_mils=in_mils),
        off=Turn(degrees=off_deg),
        slips=slip_sentence(fitting) or otherwise,
        explained=explained,
        right="" if right is None else _right_words(check, right),
    )
    yield CardFinding(
        leg=check.leg.name,
        what=f"{stated.north}_azimuth_deg",
        given=stated.given_deg,
        computed=stated.expected_deg,
        message=message,
        slips=slip_names(fitting),
    )


def _right_words(check: LegCheck, right: StatedAzimuth) -> Sentence:
    azimuth = told_azimuth(right.given_deg, in_mils=right.north in check.leg.in_mils)
    return sentence("finding-azimuth-right", north=right.north, azimuth=azimuth)


def _fitting(check: LegCheck, stated: StatedAzimuth) -> tuple[Slip, ...]:
    slips = [*stated.slips]
    if stated.tolerance_deg <= check.settings.named_digit_deg:
        others = ((leg.name, _same_north(leg, stated.north)) for leg in check.others)
        slips += neighbour_slips(stated.expected_deg, others)
        in_mils = stated.north in check.leg.in_mils
        slips += azimuth_digit_slips(stated.given_deg, in_mils=in_mils)
    return fitting_slips(stated.off_deg, slips, stated.tolerance_deg)


def _same_north(leg: CardLeg, north: str) -> float:
    azimuths = {"grid": leg.azimuth, "magnetic": leg.magnetic, "true": leg.true}
    return azimuths[north].degrees
