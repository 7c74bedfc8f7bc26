"""The sums of a leg, line by line as an instructor writes them beside the card."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import dataclass

from audit.azimuths import GridAzimuth
from audit.leg_card.leg_check import LegCheck
from audit.leg_card.wording import azimuth_text


@dataclass(frozen=True, slots=True, kw_only=True)
class SumLine:
    """One line of a worked sum.

    Attributes
    ----------
    what : str
        The field of the plan that it gives, such as "magnetic_azimuth_deg";
        "back_magnetic_azimuth_deg", which no plan has a field for, is for the compass.
    working : str
        The sum in figures.
    computed : float
        Its result, in the unit of the field's name.
    given : float or None
        What the plan says, None where it says nothing.
    agrees : bool or None
        Whether plan and sum agree; None where the plan says nothing.
    """

    what: str
    working: str
    computed: float
    given: float | None = None
    agrees: bool | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class LegSums:
    """The worked sums of one leg, from point to point."""

    leg: str
    start: str
    end: str
    lines: tuple[SumLine, ...]


def worked_sums(check: LegCheck, disputed: Collection[str]) -> LegSums:
    """Give the sums of a leg; ``disputed`` are the fields that a finding is about."""
    lines = []
    for line in _lines(check):
        given = _given(check, line.what)
        agrees = None if given is None else line.what not in disputed
        lines.append(
            SumLine(
                what=line.what,
                working=line.working,
                computed=line.computed,
                given=given,
                agrees=agrees,
            )
        )
    leg = check.leg
    return LegSums(leg=leg.name, start=check.start.name, end=check.end.name, lines=tuple(lines))


def _lines(check: LegCheck) -> Iterator[SumLine]:
    said, angles = check.said, check.angles
    east_m = check.end.east_m - check.start.east_m
    north_m = check.end.north_m - check.start.north_m
    grid = check.leg.grid_azimuth
    if said is not None and said.azimuth is not None:
        working = f"{_side(east_m, 'east', 'west')}, {_side(north_m, 'north', 'south')}"
        yield SumLine(what="grid_azimuth_deg", working=working, computed=said.azimuth.degrees)
        grid = grid or said.azimuth
    if grid is not None:
        yield from _magnetic_lines(check, grid)
    if grid is not None and check.leg.true_azimuth is not None:
        working = f"{azimuth_text(grid.degrees)} {_plus(angles.convergence_deg)}"
        yield SumLine(what="true_azimuth_deg", working=working, computed=angles.true(grid).degrees)
    if said is not None:
        working = f"root of {abs(east_m):.0f}² + {abs(north_m):.0f}²"
        if check.leg.via:
            working = "along the via positions"
        yield SumLine(what="distance_m", working=working, computed=said.along_m)
    if check.paces_per_100m is not None:
        rate = check.paces_per_100m
        working = f"{check.distance_m:.0f} m x {rate:g} / 100"
        yield SumLine(what="paces", working=working, computed=check.distance_m * rate / 100.0)


def _magnetic_lines(check: LegCheck, grid: GridAzimuth) -> Iterator[SumLine]:
    angle_deg = check.angles.grid_magnetic_angle_deg
    magnetic = check.angles.magnetic(grid)
    half_turn_deg = magnetic.back().degrees - magnetic.degrees
    yield SumLine(
        what="magnetic_azimuth_deg",
        working=f"{azimuth_text(grid.degrees)} - {_bracketed(angle_deg)}",
        computed=magnetic.degrees,
    )
    yield SumLine(
        what="back_magnetic_azimuth_deg",
        working=f"{azimuth_text(magnetic.degrees)} {_plus(half_turn_deg)}",
        computed=magnetic.back().degrees,
    )


def _given(check: LegCheck, what: str) -> float | None:
    leg = check.leg
    azimuths = {
        "grid_azimuth_deg": leg.grid_azimuth,
        "magnetic_azimuth_deg": leg.magnetic_azimuth,
        "true_azimuth_deg": leg.true_azimuth,
    }
    azimuth = azimuths.get(what)
    if azimuth is not None:
        return azimuth.degrees
    return {"distance_m": leg.distance_m, "paces": leg.paces}.get(what)


def _side(metres: float, positive: str, negative: str) -> str:
    return f"{abs(metres):.0f} m {positive if metres >= 0.0 else negative}"


def _bracketed(degrees: float) -> str:
    return f"({degrees:.1f})" if degrees < 0.0 else f"{degrees:.1f}"


def _plus(degrees: float) -> str:
    return f"{'-' if degrees < 0.0 else '+'} {abs(degrees):.1f}"
