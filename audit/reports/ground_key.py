"""The key of a piece of ground before the walk: what its picture shows, and no sign else."""

from __future__ import annotations

from typing import TYPE_CHECKING

from audit.reports import digits
from audit.reports.figure_ground import GroundSketch, ground_frame
from audit.words import say

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

_ORDER = (
    "planned", "other-leg", "point", "wrong", "claim", "ellipse", "window",
    "no-go", "no-go-line", "hazard", "hazard-line", "unsafe", "bounds",
)  # fmt: skip
_SIGNS = {"other": "other-leg"}
"""Of kinds of lines that go by another name on the map."""


def ground_key(*sketches: GroundSketch) -> list[tuple[str, str]]:
    """Give (sign, meaning) of what any of some sketches shows, in the order of the key."""
    shown = {sign for sketch in sketches for sign in _shown(sketch)}
    radius = digits.stated_metres(max(sketch.radius_m for sketch in sketches))
    return [(sign, say(f"ground-{sign}", radius=radius)) for sign in _ORDER if sign in shown]


def _shown(sketch: GroundSketch) -> set[str]:
    import shapely  # noqa: PLC0415 (only where there are areas)

    (west, south), (east, north) = ground_frame(sketch)
    box = shapely.box(west, south, east, north)

    def seen(shapes: list[BaseGeometry], *, wide: bool) -> bool:
        return any((one.area > 0.0) == wide and one.intersects(box) for one in shapes)

    lines = [(kind, shapely.LineString(places)) for kind, places in sketch.lines]
    shown = {_SIGNS.get(kind, kind) for kind, line in lines if line.intersects(box)}
    shown |= {"point"} if sketch.points else set()
    shown |= {"claim"} if sketch.ends else set()
    shown |= set() if sketch.window is None else {"window"}
    bounds = sketch.areas.bounds
    outline = [] if bounds is None else [bounds.boundary]
    shown |= {"bounds"} if seen(outline, wide=False) else set()
    shown |= {"unsafe"} if seen(list(sketch.unsafe), wide=True) else set()
    for kind, areas in (("no-go", sketch.areas.no_go), ("hazard", sketch.areas.hazards)):
        shapes = [area.shape for area in areas]
        shown |= {kind} if seen(shapes, wide=True) else set()
        shown |= {f"{kind}-line"} if seen(shapes, wide=False) else set()
    return shown
