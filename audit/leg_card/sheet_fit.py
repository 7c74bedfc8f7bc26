"""Whether every point, and every via position, lies on the map sheet that the plan names."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from audit.geodesy.grids import CourseGrid
from audit.leg_card.finished_card import CardFinding, CardPoint
from audit.leg_card.via_checks import via_name
from audit.plan import Plan
from audit.positions import Position
from audit.words import sentence
from audit.words.figures import Length, Listed

_Place = tuple[str, str | None, float, float, float]
"""A name, the reference as given, half the side of its square, and easting and northing."""


def sheet_fit(plan: Plan, points: Iterable[CardPoint], grid: CourseGrid) -> Iterator[CardFinding]:
    """Find the places outside the sheet, with how far off it they lie."""
    if plan.sheet is None:
        return
    low_east_m, low_north_m = _corner(plan.sheet[0], grid, -1.0)
    high_east_m, high_north_m = _corner(plan.sheet[1], grid, 1.0)
    if high_east_m <= low_east_m or high_north_m <= low_north_m:
        first, second = (corner.given for corner in plan.sheet)
        swapped = high_east_m <= low_east_m and high_north_m <= low_north_m
        message = sentence(
            "finding-sheet-swapped" if swapped else "finding-sheet-corners",
            first=first,
            second=second,
        )
        yield CardFinding(leg=None, what="sheet", given=first, computed=None, message=message)
        return
    for name, given, half_m, east_m, north_m in _places(plan, points, grid):
        off = {
            "west": low_east_m - east_m,
            "east": east_m - high_east_m,
            "south": low_north_m - north_m,
            "north": north_m - high_north_m,
        }
        beyond = [
            sentence(f"finding-{side}-of", size=Length(metres=metres))
            for side, metres in off.items()
            if metres > half_m  # no place of its square is on the sheet
        ]
        if beyond:
            message = sentence("finding-off-sheet", point=name, beyond=Listed(things=beyond))
            yield CardFinding(
                leg=None, what="sheet", given=given, computed=max(off.values()), message=message
            )


def _places(plan: Plan, points: Iterable[CardPoint], grid: CourseGrid) -> Iterator[_Place]:
    for point in points:
        position = plan.position(point.name)
        given, half_m = (position.given, position.half_square_m) if position else (None, 0.0)
        yield point.name, given, half_m, point.east_m, point.north_m
    for leg in plan.legs:
        for number, via in enumerate(leg.via, start=1):
            place = grid.to_grid(via.longitude_deg, via.latitude_deg)
            yield via_name(leg.name, number), via.given, via.half_square_m, *place


def _corner(position: Position, grid: CourseGrid, side: float) -> tuple[float, float]:
    """Give the outer corner of the square that a reference to a corner of the sheet names."""
    east_m, north_m = grid.to_grid(position.longitude_deg, position.latitude_deg)
    half_m = side * position.half_square_m
    return east_m + half_m, north_m + half_m
