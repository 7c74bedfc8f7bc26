"""Whether every point lies on the map sheet that the plan names."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from audit.geodesy.grids import CourseGrid
from audit.leg_card.records import CardFinding, CardPoint
from audit.plan import Plan
from audit.positions import Position
from audit.words import sentence
from audit.words.figures import Length, Listed


def sheet_fit(plan: Plan, points: Iterable[CardPoint], grid: CourseGrid) -> Iterator[CardFinding]:
    """Find the points outside the sheet, with how far off it they lie."""
    if plan.sheet is None:
        return
    low_east_m, low_north_m = _corner(plan.sheet[0], grid, -1.0)
    high_east_m, high_north_m = _corner(plan.sheet[1], grid, 1.0)
    for point in points:
        off = {
            "west": low_east_m - point.east_m,
            "east": point.east_m - high_east_m,
            "south": low_north_m - point.north_m,
            "north": point.north_m - high_north_m,
        }
        beyond = [
            sentence(f"finding-{side}-of", size=Length(metres=metres))
            for side, metres in off.items()
            if metres > 0.0
        ]
        if beyond:
            position = plan.position(point.name)
            message = sentence("finding-off-sheet", point=point.name, beyond=Listed(things=beyond))
            yield CardFinding(
                leg=None,
                what="sheet",
                given=None if position is None else position.given,
                computed=max(off.values()),
                message=message,
            )


def _corner(position: Position, grid: CourseGrid, side: float) -> tuple[float, float]:
    """Give the outer corner of the square that a reference to a corner of the sheet names."""
    east_m, north_m = grid.to_grid(position.longitude_deg, position.latitude_deg)
    half_m = side * position.half_square_m
    return east_m + half_m, north_m + half_m
