"""One point and one walk about it, for an appeal: radius, whole error, nearest approach.

No word stands in the picture, where it would cover the walk that is argued about: the signs
are told in a key below it.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from audit.classroom.lane_result import LanePoint, LaneResult
from audit.classroom.walker_result import WalkerResult
from audit.grading.verdicts import PointVerdict
from audit.reports import digits, ink
from audit.reports.chart_layers import (
    Layer,
    cross_at_point,
    in_parts,
    position,
    specification,
    view,
)
from audit.reports.length_axis import length_axis
from audit.units import FloatArray
from audit.words import in_force, say
from audit.words.in_other_units import LENGTH_SIGN

SIDE_PX = 300.0
_SHOWN = 2.2
"""Ground shown to each side, in radii with the whole error."""
_MOST_M = 400.0
_CORNERS = 48


def appeal_specification(lane: LaneResult, leg: int, walker: WalkerResult) -> dict[str, Any] | None:
    """Give the Vega-Lite specification, grid north up; None without a recording."""
    if walker.trace is None or not walker.trace.east_m:
        return None
    verdict = walker.legs[leg].point
    point = next(one for one in lane.points if one.name == lane.legs[leg].end)
    whole_m, shown_m = verdict.radius_m + verdict.error_m, _shown_m(verdict)
    layers = [
        _track(_about(point, walker), 1.5 * shown_m),
        _ring(verdict.radius_m, {"stroke": ink.INK, "strokeWidth": 1.6}),
        _ring(whole_m, {"stroke": ink.GREY, "strokeWidth": 1.4, "strokeDash": [4, 3]}),
        *_signs(point, walker, leg),
    ]
    shown = (-shown_m, shown_m)
    numbers = f"size + ' {LENGTH_SIGN[in_force().units.length]}'"
    axes = (
        position("x", shown, length_axis(shown, 5, numbers, title=say("appeal-east"))),
        position("y", shown, length_axis(shown, 5, numbers, title=say("appeal-north"))),
    )
    return specification(view(layers, axes, (SIDE_PX, SIDE_PX), "appeal", one_shape=True))


def appeal_key(lane: LaneResult, leg: int, walker: WalkerResult) -> list[tuple[str, str]]:
    """Give (sign, meaning) of what the picture of this point shows."""
    verdict = walker.legs[leg].point
    point = next(one for one in lane.points if one.name == lane.legs[leg].end)
    claim, near = _signed(point, walker, leg)
    shown = {"walked": True, "ring": True, "whole": verdict.error_m > 0.0, "cross": True}
    for name, places in (("claim", claim), ("nearest", near)):
        shown[name] = any(max(abs(one["x"]), abs(one["y"])) <= _shown_m(verdict) for one in places)
    sizes = {"ring": verdict.radius_m, "whole": verdict.radius_m + verdict.error_m}
    return [
        (name, say(f"appeal-key-{name}", size=digits.stated_metres(sizes.get(name, 0.0))))
        for name, so in shown.items()
        if so
    ]


def _shown_m(verdict: PointVerdict) -> float:
    """Give how far from the point the picture shows ground, to each side."""
    whole_m = verdict.radius_m + verdict.error_m
    approach_m = 0.0 if verdict.approach is None else verdict.approach.distance_m
    return min(max(_SHOWN * whole_m, 1.25 * approach_m), max(_MOST_M, 1.1 * whole_m))


def _about(point: LanePoint, walker: WalkerResult) -> FloatArray:
    trace = walker.trace
    assert trace is not None  # noqa: S101 (the caller has looked)
    return np.column_stack([trace.east_m, trace.north_m]) - [point.east_m, point.north_m]


def _track(places_m: FloatArray, reach_m: float) -> Layer:
    """Draw the parts of the walk that come near."""
    near = np.abs(places_m).max(axis=1) <= reach_m
    parts: list[list[dict[str, float]]] = [[]]
    for place, shown in zip(places_m, near, strict=True):
        if shown:
            parts[-1].append({"x": round(float(place[0]), 1), "y": round(float(place[1]), 1)})
        elif parts[-1]:
            parts.append([])
    line = {"type": "line", "stroke": ink.BLUE, "strokeWidth": 1.8, "clip": True}
    return Layer(rows=in_parts(parts), mark=line, channels={"order": {"value": 0}})


def _ring(radius_m: float, style: dict[str, Any]) -> Layer:
    angle = np.linspace(0.0, 2.0 * np.pi, _CORNERS + 1)
    rows = [
        {"x": round(radius_m * float(np.cos(a)), 1), "y": round(radius_m * float(np.sin(a)), 1)}
        for a in angle
    ]
    return Layer(
        rows=rows, mark={"type": "line", "clip": True, **style}, channels={"order": {"value": 0}}
    )


def _signs(point: LanePoint, walker: WalkerResult, leg: int) -> list[Layer]:
    """Draw the point, the claim, and where the nearest approach was."""
    diamond = {"type": "point", "shape": "diamond", "size": 120, "fill": ink.ORANGE, "opacity": 1}
    square = {"type": "point", "shape": "square", "size": 70, "filled": False, "opacity": 1}
    square |= {"stroke": ink.BLUE, "strokeWidth": 2.2, "clip": True}
    claim, near = _signed(point, walker, leg)
    return [
        cross_at_point(),
        Layer(rows=claim, mark={**diamond, "stroke": "white", "clip": True}),
        Layer(rows=near, mark=square),
    ]


def _signed(
    point: LanePoint, walker: WalkerResult, leg: int
) -> tuple[list[dict[str, float]], list[dict[str, float]]]:
    """Give where the claim and the nearest approach lie; empty where there is none."""
    result, trace = walker.legs[leg], walker.trace
    claim = [] if result.miss is None else [{"x": result.miss.east_m, "y": result.miss.north_m}]
    approach, near = result.point.approach, []
    if trace is not None and trace.time_s and approach is not None and approach.time_s is not None:
        east, north = (
            float(np.interp(approach.time_s, trace.time_s, values)) - middle
            for values, middle in ((trace.east_m, point.east_m), (trace.north_m, point.north_m))
        )
        near = [{"x": round(east, 1), "y": round(north, 1)}]
    return claim, near
