"""A piece of ground before the walk: areas, planned lines, points, and where walks would end."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

import numpy as np

from audit.geodesy.areas_on_grid import GroundAreas
from audit.reports import ink
from audit.reports.chart_layers import (
    Layer,
    axis,
    circle_size,
    position,
    rimmed,
    specification,
    view,
)
from audit.reports.hatching import hatching
from audit.reports.label_places import Label, boxes_round, place_labels, sampled
from audit.units import FloatArray
from audit.words import say

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

_WIDEST_PX = 640.0
_TALLEST, _FLATTEST = 1.0, 0.45
_EDGE_SHARE = 0.07
_SMALLEST_M = 200.0
_AREA_MARKS: dict[str, dict[str, Any]] = {
    "bounds": {"stroke": ink.INK, "strokeWidth": 2.5, "strokeDash": [10, 3, 2, 3]},
    "no-go": {"stroke": ink.INK, "strokeWidth": 1.5, "fill": ink.GREY, "fillOpacity": 0.45},
    "hazard": {"stroke": ink.ORANGE, "strokeWidth": 1.5, "fill": ink.ORANGE, "fillOpacity": 0.15,
               "strokeDash": [4, 2]},
    "unsafe": {"stroke": ink.BLUE, "strokeWidth": 1, "fill": ink.PALE_BLUE, "fillOpacity": 0.6},
}  # fmt: skip
_LINE_AREA_MARKS: dict[str, dict[str, Any]] = {
    "no-go": {"stroke": ink.INK, "strokeWidth": 4},
    "hazard": {"stroke": ink.ORANGE, "strokeWidth": 4, "strokeDash": [3, 2]},
}
"""What is no area but a line, such as a crag, has nothing to fill."""
_HATCHING: dict[str, tuple[tuple[float, ...], dict[str, Any]]] = {
    "no-go": ((45.0, 135.0), {"stroke": ink.INK, "strokeWidth": 0.7}),
    "hazard": ((45.0,), {"stroke": ink.ORANGE, "strokeWidth": 1.2}),
    "unsafe": ((135.0,), {"stroke": ink.BLUE, "strokeWidth": 0.7}),
}
"""Azimuths of the strokes: kinds differ by them on grey paper and for who sees no colour."""
_HATCH_PX = 7.0
_SIGN_PX = 4.0
"""To each side of the middle of a sign, without the corners that it leaves free."""
_LINE_MARKS: dict[str, dict[str, Any]] = {  # in the order of drawing: the plan over all
    "other": {"stroke": ink.GREY, "strokeWidth": 1.2, "strokeDash": ink.PLANNED_DASH},
    "wrong": {"stroke": ink.BLUE, "strokeWidth": 1.4},
    "ellipse": {"stroke": ink.GREY, "strokeWidth": 1, "strokeDash": [2, 2]},
    "planned": {"stroke": ink.INK, "strokeWidth": 1.6, "strokeDash": ink.PLANNED_DASH},
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Sign:
    """Something with a place and a word: a point, or an end of a walk."""

    text: str
    east_m: float
    north_m: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class GroundSketch:
    """What is to be drawn, in grid metres.

    ``lines`` are (kind, places); ``shown`` are places that must lie in the picture beside
    points and ends. ``window`` is the ground (low and high corner) of a closer picture, which
    names the ends inside it.
    """

    points: tuple[Sign, ...]
    lines: tuple[tuple[str, FloatArray], ...]
    ends: tuple[Sign, ...] = ()
    areas: GroundAreas = field(default_factory=GroundAreas)
    unsafe: tuple[BaseGeometry, ...] = ()
    radius_m: float = 0.0
    shown: FloatArray | None = None
    window: tuple[FloatArray, FloatArray] | None = None


def ground_specification(sketch: GroundSketch) -> dict[str, Any]:
    """Give the Vega-Lite specification: grid north up, one scale both ways."""
    (west, south), (east, north) = ground_frame(sketch)
    px_a_metre = _WIDEST_PX / (east - west)
    size = (_WIDEST_PX, (north - south) * px_a_metre)
    seen = ((west, south), (east, north))
    layers = [
        *_area_layers(sketch, seen, _HATCH_PX / px_a_metre),
        *(layer for kind in _LINE_MARKS for layer in _lines(sketch, kind)),
        *_point_layers(sketch, px_a_metre),
        _window_layer(sketch),
        _end_layer(sketch),
        *_words(sketch, (west, north), px_a_metre, size),
    ]
    kilometres = "format(datum.value / 1000 % 100, '05.2f')"
    common: dict[str, Any] = {"grid": True, "labelExpr": kilometres, "tickCount": 6}
    axes = (
        position("x", (west, east), axis(title=say("lanes-grid-east"), **common)),
        position("y", (south, north), axis(title=say("lanes-grid-north"), **common)),
    )
    return specification(view(layers, axes, size, "ground"))


def ground_frame(sketch: GroundSketch) -> tuple[FloatArray, FloatArray]:
    """Give the corners: all points and ends, with room round them."""
    signs = np.array([[one.east_m, one.north_m] for one in (*sketch.points, *sketch.ends)])
    shown = signs if sketch.shown is None else np.vstack([signs, sketch.shown])
    low, high = shown.min(axis=0) - sketch.radius_m, shown.max(axis=0) + sketch.radius_m
    middle = (low + high) / 2.0
    size = np.maximum((high - low) * (1.0 + 2.0 * _EDGE_SHARE), _SMALLEST_M)
    width = max(size[0], size[1] / _TALLEST)
    half = np.array([width, max(size[1], width * _FLATTEST)]) / 2.0
    return middle - half, middle + half


def _area_layers(
    sketch: GroundSketch, seen: tuple[tuple[float, float], tuple[float, float]], apart_m: float
) -> list[Layer]:
    """Draw the areas: filled and hatched, and over them what is a line."""
    import shapely  # noqa: PLC0415 (only where there are areas)

    areas, (low, high) = sketch.areas, seen
    groups: list[tuple[str, list[BaseGeometry]]] = [
        ("unsafe", list(sketch.unsafe)),
        ("no-go", [area.shape for area in areas.no_go]),
        ("hazard", [area.shape for area in areas.hazards]),
        ("bounds", [] if areas.bounds is None else [areas.bounds]),
    ]
    layers, over = [], []
    for kind, shapes in groups:
        wide = [shape for shape in shapes if shape.area > 0.0]
        layers.append(_outlined(wide, _AREA_MARKS[kind]))
        if kind in _HATCHING:
            azimuths, style = _HATCHING[kind]
            box = shapely.box(*low, *high)
            strokes = [
                stroke for azimuth in azimuths for stroke in hatching(wide, box, azimuth, apart_m)
            ]
            rows = [row for n, one in enumerate(strokes) for row in _line_rows(one, str(n))]
            mark = {"type": "line", "clip": True, **style}
            layers.append(Layer(rows=rows, mark=mark, channels=_ONE_LINE_EACH))
        if kind in _LINE_AREA_MARKS:
            lines = [shape for shape in shapes if shape.area <= 0.0]
            over.append(_outlined(lines, _LINE_AREA_MARKS[kind]))
    return [*layers, *over]


def _outlined(shapes: Sequence[BaseGeometry], style: dict[str, Any]) -> Layer:
    rows = [row for place, shape in enumerate(shapes) for row in _outline_rows(shape, place)]
    return Layer(rows=rows, mark={"type": "line", "clip": True, **style}, channels=_ONE_LINE_EACH)


_ONE_LINE_EACH = {"order": "k:Q", "detail": "line:N"}


def _outline_rows(shape: BaseGeometry, name: int) -> list[dict[str, Any]]:
    """Give the outlines of a shape as rows; holes are outlines of their own."""
    import shapely  # noqa: PLC0415 (only where there are areas)

    rows: list[dict[str, Any]] = []
    for place, part in enumerate(shapely.get_parts(shape)):
        outlines = [part]
        if part.geom_type == "Polygon":
            outlines = [part.exterior, *part.interiors]
        for number, outline in enumerate(outlines):
            rows += _line_rows(shapely.get_coordinates(outline), f"{name}-{place}-{number}")
    return rows


def _lines(sketch: GroundSketch, kind: str) -> list[Layer]:
    rows = [
        row
        for number, (of_kind, places) in enumerate(sketch.lines)
        if of_kind == kind
        for row in _line_rows(places, str(number))
    ]
    mark = {"type": "line", "clip": True, "strokeJoin": "round", **_LINE_MARKS[kind]}
    return [Layer(rows=rows, mark=mark, channels=_ONE_LINE_EACH)]


def _line_rows(places: FloatArray, name: str) -> list[dict[str, Any]]:
    return [
        {"x": round(float(x), 1), "y": round(float(y), 1), "k": place, "line": name}
        for place, (x, y) in enumerate(places)
    ]


def _point_layers(sketch: GroundSketch, px_a_metre: float) -> list[Layer]:
    rows = [{"x": one.east_m, "y": one.north_m} for one in sketch.points]
    line = {"type": "point", "filled": False, "stroke": ink.INK, "opacity": 1, "clip": True}
    size = circle_size(sketch.radius_m * px_a_metre)
    circle = {**line, "shape": "circle", "size": size, "strokeWidth": 1}
    cross = {**line, "shape": "M-1,0L1,0M0,-1L0,1", "size": 110, "strokeWidth": 2}
    return [Layer(rows=rows, mark=circle), Layer(rows=rows, mark=cross)]


def _window_layer(sketch: GroundSketch) -> Layer:
    mark = {"type": "rect", "filled": False, "stroke": ink.GREY, "strokeWidth": 1.2, "clip": True}
    if sketch.window is None:
        return Layer(rows=[], mark=mark)
    (west, south), (east, north) = ((float(x), float(y)) for x, y in sketch.window)
    row = {"x": west, "y": south, "x2": east, "y2": north}
    return Layer(rows=[row], mark=mark, channels={"x2": "x2", "y2": "y2"})


def _end_layer(sketch: GroundSketch) -> Layer:
    mark = {"type": "point", "shape": "diamond", "size": 80, "fill": ink.ORANGE, "opacity": 1}
    rows = [{"x": round(one.east_m, 1), "y": round(one.north_m, 1)} for one in sketch.ends]
    return Layer(rows=rows, mark={**mark, "stroke": "white", "strokeWidth": 1, "clip": True})


def _words(
    sketch: GroundSketch, corner: tuple[float, float], px_a_metre: float, size: tuple[float, float]
) -> list[Layer]:
    """Write names beside points and ends, where they cover neither each other nor signs."""
    points = _labels(sketch.points, "point", (corner, px_a_metre))
    points += _labels(_area_names(sketch, corner, px_a_metre, size), "area", (corner, px_a_metre))
    named = [one for one in sketch.ends if not _within(one, sketch.window)]
    ends = _labels(named, "end", (corner, px_a_metre))
    signs = _labels((*sketch.points, *sketch.ends), "sign", (corner, px_a_metre))
    taken = boxes_round(np.array([[one.right_px, one.down_px] for one in signs]), _SIGN_PX)
    lines = [
        (np.asarray(places)[:, :2] - corner) * [px_a_metre, -px_a_metre]
        for _, places in sketch.lines
    ]
    layers = []
    placed = place_labels([*points, *ends], sampled(lines), *size, taken)
    for kind, style in (("point", {"fontWeight": "bold", "fill": ink.INK}),
                        ("area", {"fontStyle": "italic", "fill": ink.GREY_TEXT}),
                        ("end", {"fill": ink.ORANGE, "fontWeight": "bold"})):  # fmt: skip
        rows = [
            {
                "x": round(corner[0] + one.right_px / px_a_metre, 1),
                "y": round(corner[1] - one.down_px / px_a_metre, 1),
                "t": one.label.text,
            }
            for one in placed
            if one.label.kind == kind
        ]
        words = {"type": "text", "fontSize": ink.LABEL_PX, "clip": True, **style}
        layers.append(Layer(rows=rows, mark=rimmed(words), channels={"text": "t:N"}))
    return layers


def _within(sign: Sign, window: tuple[FloatArray, FloatArray] | None) -> bool:
    """Tell whether a closer picture shows a sign."""
    if window is None:
        return False
    low, high = window
    return bool(low[0] <= sign.east_m <= high[0] and low[1] <= sign.north_m <= high[1])


def _area_names(
    sketch: GroundSketch, corner: tuple[float, float], px_a_metre: float, size: tuple[float, float]
) -> list[Sign]:
    """Give the names of the areas that lie in the picture, at a place inside what is seen."""
    import shapely  # noqa: PLC0415 (only where there are areas)

    west, north = (float(one) for one in corner)
    seen = shapely.box(west, north - size[1] / px_a_metre, west + size[0] / px_a_metre, north)
    signs = []
    for area in (*sketch.areas.no_go, *sketch.areas.hazards):
        inside = shapely.intersection(area.shape, seen)
        if not inside.is_empty:
            place = inside.representative_point()
            signs.append(Sign(text=area.name, east_m=place.x, north_m=place.y))
    return signs


def _labels(
    signs: Sequence[Sign], kind: str, frame: tuple[tuple[float, float], float]
) -> list[Label]:
    """Give labels with their places in pixels; those of ends may be left out."""
    (west, north), px_a_metre = frame
    return [
        Label(
            text=one.text,
            right_px=(one.east_m - float(west)) * px_a_metre,
            down_px=(float(north) - one.north_m) * px_a_metre,
            clear_px=9.0 if kind == "point" else 7.0,
            kind=kind,
            may_go=kind == "end",
        )
        for one in signs
    ]
