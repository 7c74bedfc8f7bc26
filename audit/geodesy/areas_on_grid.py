"""The areas of a course brought onto its grid, where lines can be held against them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from audit.areas import Area, Ring
from audit.geodesy.grids import CourseGrid
from audit.units import FloatArray

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class GroundArea:
    """An area on the course grid, in metres."""

    name: str
    shape: BaseGeometry


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class GroundAreas:
    """All areas of a course on its grid; ``bounds`` is None where none are given."""

    bounds: BaseGeometry | None = None
    no_go: tuple[GroundArea, ...] = ()
    hazards: tuple[GroundArea, ...] = ()
    roads: tuple[GroundArea, ...] = ()


def areas_on_grid(areas: Iterable[Area], grid: CourseGrid) -> GroundAreas:
    """Give the areas on a grid; bounds of several parts are one."""
    import shapely  # noqa: PLC0415 (only where there are areas)

    placed = [(area, _shape(area, grid)) for area in areas]
    bounds = [shape for area, shape in placed if area.kind == "bounds"]
    return GroundAreas(
        bounds=shapely.union_all(bounds) if bounds else None,
        no_go=tuple(GroundArea(name=a.name, shape=s) for a, s in placed if a.kind == "no-go"),
        hazards=tuple(GroundArea(name=a.name, shape=s) for a, s in placed if a.kind == "hazard"),
        roads=tuple(GroundArea(name=a.name, shape=s) for a, s in placed if a.kind == "road"),
    )


def _shape(area: Area, grid: CourseGrid) -> BaseGeometry:
    import shapely  # noqa: PLC0415

    if area.lines:
        return shapely.MultiLineString([_on_grid(line, grid) for line in area.lines])
    return shapely.union_all(
        [
            shapely.Polygon(_on_grid(part[0], grid), [_on_grid(hole, grid) for hole in part[1:]])
            for part in area.parts
        ]
    )


def _on_grid(ring: Ring, grid: CourseGrid) -> FloatArray:
    degrees = np.array(ring)
    return np.column_stack(grid.to_grid(degrees[:, 0].copy(), degrees[:, 1].copy()))
