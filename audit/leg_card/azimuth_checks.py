"""Where a leg's azimuths disagree with its points or with each other."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from audit.azimuths import GridAzimuth
from audit.leg_card.leg_check import LegCheck
from audit.leg_card.records import CardFinding
from audit.leg_card.rounding import azimuth_rounding_deg
from audit.leg_card.slips import Slip, grid_slips, magnetic_slips, slip_sentence, true_slips
from audit.leg_card.wording import azimuth_text, east_or_west
from audit.units import turn_degrees


def azimuths_against_points(check: LegCheck) -> Iterator[CardFinding]:
    """Hold the azimuth that leads the leg against the one between its points."""
    leg, said = check.leg, check.said
    if said is None or said.azimuth is None:
        return
    points_deg = said.azimuth.degrees
    doubt_deg = check.settings.azimuth_slack_deg + math.degrees(
        math.asin(min(1.0, said.slack_m / said.chord_m))
    )
    if leg.grid_azimuth is not None:
        what, given_deg, expected_deg = "grid", leg.grid_azimuth.degrees, points_deg
        slips: Sequence[Slip] = grid_slips(check.angles)
    elif leg.magnetic_azimuth is not None:
        what, given_deg = "magnetic", leg.magnetic_azimuth.degrees
        expected_deg = check.angles.magnetic(said.azimuth).degrees
        slips, doubt_deg = magnetic_slips(check.angles), doubt_deg + check.angle_doubt_deg
    elif leg.true_azimuth is not None:
        what, given_deg = "true", leg.true_azimuth.degrees
        expected_deg = check.angles.true(said.azimuth).degrees
        slips = true_slips(check.angles)
    else:
        return
    if said.first_stretch is not None:
        to_first_deg = turn_degrees(points_deg, said.first_stretch.degrees)
        slips = (*slips, Slip(what="the way to the first via position", turn_deg=to_first_deg))
    yield from _azimuth_finding(
        check, what, given_deg, expected_deg, doubt_deg, slips, because="its points give"
    )


def azimuths_against_each_other(check: LegCheck) -> Iterator[CardFinding]:
    """Hold magnetic and true azimuths against the one that leads the leg."""
    leg, angles = check.leg, check.angles
    if leg.grid_azimuth is None:
        if leg.magnetic_azimuth is not None and leg.true_azimuth is not None:
            grid = angles.grid_from_magnetic(leg.magnetic_azimuth)
            doubt_deg = azimuth_rounding_deg(leg.magnetic_azimuth.degrees) + check.angle_doubt_deg
            yield from _true_finding(check, grid, doubt_deg, "its magnetic azimuth gives")
        return
    doubt_deg = azimuth_rounding_deg(leg.grid_azimuth.degrees)
    grid_text = f"grid {azimuth_text(leg.grid_azimuth.degrees)}"
    if leg.magnetic_azimuth is not None:
        because = (
            f"{grid_text} with the grid-magnetic angle of "
            f"{east_or_west(angles.grid_magnetic_angle_deg)} gives"
        )
        yield from _azimuth_finding(
            check,
            "magnetic",
            leg.magnetic_azimuth.degrees,
            angles.magnetic(leg.grid_azimuth).degrees,
            doubt_deg + check.angle_doubt_deg,
            magnetic_slips(angles),
            because=because,
        )
    if leg.true_azimuth is not None:
        because = (
            f"{grid_text} with the convergence of {east_or_west(angles.convergence_deg)} gives"
        )
        yield from _true_finding(check, leg.grid_azimuth, doubt_deg, because)


def _true_finding(
    check: LegCheck, grid: GridAzimuth, doubt_deg: float, because: str
) -> Iterator[CardFinding]:
    if check.leg.true_azimuth is None:
        return
    yield from _azimuth_finding(
        check,
        "true",
        check.leg.true_azimuth.degrees,
        check.angles.true(grid).degrees,
        doubt_deg,
        true_slips(check.angles),
        because=because,
    )


def _azimuth_finding(
    check: LegCheck,
    north: str,
    given_deg: float,
    expected_deg: float,
    doubt_deg: float,
    slips: Sequence[Slip],
    *,
    because: str,
) -> Iterator[CardFinding]:
    tolerance_deg = doubt_deg + azimuth_rounding_deg(given_deg)
    off_deg = turn_degrees(expected_deg, given_deg)
    if abs(off_deg) <= tolerance_deg:
        return
    message = (
        f"Leg {check.leg.name}: the plan gives a {north} azimuth of {azimuth_text(given_deg)}; "
        f"{because} {azimuth_text(expected_deg)}, {abs(off_deg):.1f} degrees away."
        f"{slip_sentence(off_deg, slips, tolerance_deg)}"
    )
    yield CardFinding(
        leg=check.leg.name,
        what=f"{north}_azimuth_deg",
        given=given_deg,
        computed=expected_deg,
        message=message,
    )
