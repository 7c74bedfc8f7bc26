"""Areas brought onto the grid of a course: each kind in its place, holes and lines kept."""

from __future__ import annotations

import pytest
from shapely import Point

from audit.areas import AREA_KINDS, Area, AreaKind
from audit.geodesy.areas_on_grid import GroundArea, areas_on_grid
from audit.geodesy.grids import course_grid

GRID = course_grid("EPSG:32616")


def ring(east_m: float, north_m: float, side_m: float):
    """Give a square of the grid by its south-west corner, in degrees."""
    corners = ((0.0, 0.0), (side_m, 0.0), (side_m, side_m), (0.0, side_m), (0.0, 0.0))
    return tuple(
        (float(east), float(north))
        for east, north in (GRID.to_geographic(east_m + x, north_m + y) for x, y in corners)
    )


def square(kind: AreaKind, number: int) -> Area:
    return Area(name=kind, kind=kind, parts=((ring(641_000.0 + 500.0 * number, 4.04e6, 100.0),),))


def test_each_kind_is_where_it_is_looked_for() -> None:
    placed = areas_on_grid([square(kind, n) for n, kind in enumerate(AREA_KINDS)], GRID)
    found = {
        "bounds": (placed.bounds,),
        "no-go": placed.no_go,
        "hazard": placed.hazards,
        "road": placed.roads,
    }
    for number, kind in enumerate(AREA_KINDS):
        (one,) = found[kind]
        shape = one.shape if isinstance(one, GroundArea) else one
        assert shape.bounds == pytest.approx(
            (641_000.0 + 500.0 * number, 4.04e6, 641_100.0 + 500.0 * number, 4_040_100.0), abs=1e-3
        )
        assert not isinstance(one, GroundArea) or one.name == kind


def test_nothing_given_is_nothing_bounded() -> None:
    placed = areas_on_grid([square("hazard", 0)], GRID)
    assert placed.bounds is None
    assert (placed.no_go, placed.roads) == ((), ())


def test_bounds_of_several_parts_are_one_and_holes_are_out() -> None:
    holed = Area(
        name="wood",
        kind="bounds",
        parts=((ring(641_000.0, 4.04e6, 300.0), ring(641_100.0, 4_040_100.0, 100.0)),),
    )
    apart = Area(name="field", kind="bounds", parts=((ring(642_000.0, 4.04e6, 100.0),),))
    bounds = areas_on_grid([holed, apart], GRID).bounds
    assert bounds is not None
    assert bounds.area == pytest.approx(300.0**2 - 100.0**2 + 100.0**2, abs=0.1)
    for east_m, inside in ((641_050.0, True), (641_150.0, False), (642_050.0, True)):
        assert (
            bounds.contains(Point(east_m, 4_040_050.0 if east_m != 641_150.0 else 4_040_150.0))
            is inside
        )


def test_a_line_has_its_length_and_no_ground() -> None:
    line = ring(641_000.0, 4.04e6, 100.0)[:3]
    (road,) = areas_on_grid([Area(name="track", kind="road", lines=(line, line[:2]))], GRID).roads
    assert road.shape.length == pytest.approx(300.0, abs=1e-3)
    assert road.shape.area == 0.0
