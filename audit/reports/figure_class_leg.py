"""All tracks on one leg in one figure, turned so that everybody walks to the right."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any

import numpy as np

from audit.classroom.class_result import ClassResult
from audit.classroom.lane_result import LaneLeg, LaneResult
from audit.classroom.walker_result import WalkerResult
from audit.reports import ink
from audit.reports.chart_layers import Layer, in_parts, position, rimmed, specification, view
from audit.reports.label_places import Label, place_labels
from audit.reports.length_axis import length_axis
from audit.units import FloatArray
from audit.words import in_force, say
from audit.words.in_other_units import LENGTH_SIGN

WIDTH_PX = 560.0
_ROOM = 0.06
_MOST_PLACES = 70
"""Of a track; more cannot be told apart on the figure."""
_LEAST_SIDE, _MOST_SIDE = 0.14, 0.33
"""Ground shown to either side, as a share of the length shown; who goes farther runs off it."""
_SIDE_STEP = 0.03
_CORNERS = 40


def tracks_key(result: ClassResult) -> list[tuple[str, str]]:
    """Give (sign, meaning) of what the figures of a class show."""
    walked = [
        (one, number)
        for one in result.walkers
        for number, leg in enumerate(one.legs)
        if one.trace is not None and None not in {leg.trace_from, leg.trace_to}
    ]
    found = {one.legs[number].point.grade == "found" for one, number in walked}
    left = any(number > 0 for _, number in walked)
    shown = {"planned": True, "point": True, "found-track": True in found}
    shown |= {"missed-track": False in found, "left": left}
    return [(sign, say(f"class-key-{sign}")) for sign, so in shown.items() if so]


def leg_tracks_specification(
    lane: LaneResult, leg: int, walkers: Sequence[tuple[int, WalkerResult]]
) -> dict[str, Any] | None:
    """Give the Vega-Lite specification, one scale both ways; None where nobody walked it."""
    turned = _Turned(lane.legs[leg])
    walked = [(n, one, turned.way(one, leg)) for n, one in walkers]
    walked = [row for row in walked if len(row[2]) > 1]
    if not walked:
        return None
    shown = np.concatenate([way for _, _, way in walked])
    claims = np.array([way[-1] for _, _, way in walked])
    low = min(0.0, float(np.quantile(shown[:, 0], 0.01)))
    high = max(turned.length_m, float(np.quantile(claims[:, 0], 0.97)))
    room = _ROOM * (high - low)
    along = (low - room, high + room)
    length_m = along[1] - along[0]
    side = float(np.quantile(np.abs(claims[:, 1]), 0.95)) * 1.25 / length_m
    side = _SIDE_STEP * math.ceil(min(max(side, _LEAST_SIDE), _MOST_SIDE) / _SIDE_STEP)
    size = (WIDTH_PX, round(2.0 * side * WIDTH_PX))
    found = [one.legs[leg].point.grade == "found" for _, one, _ in walked]
    layers = [
        *_tracks([way for _, _, way in walked], found),
        *_plan(turned, walked[0][1].legs[leg].point.radius_m),
        *_left_from([turned.began(one, leg + 1) for _, one, _ in walked]),
        *_claims(claims, found),
        *_numbers(claims, found, [n for n, _, _ in walked], along, side * length_m),
    ]
    aside = (-side * length_m, side * length_m)
    numbers = f"size + ' {LENGTH_SIGN[in_force().units.length]}'"
    style: dict[str, Any] = {"ticks": True, "grid": False}
    axes = (
        position("x", along, length_axis(along, 6, numbers, title=None, labelFlush=True, **style)),
        position(
            "y",
            aside,
            length_axis(aside, 5, numbers, title=say("class-side"), minExtent=52, **style),
        ),
    )
    return specification(view(layers, axes, size, "leg", one_shape=True))


class _Turned:
    """The frame of a leg: along its straight line, and to the left of it."""

    def __init__(self, leg: LaneLeg) -> None:
        line = np.array(leg.line)
        self._start = line[0]
        way = line[-1] - line[0]
        self.length_m = float(np.hypot(*way))
        self._ahead = way / self.length_m
        self.line = self.of(line)

    def of(self, places_m: FloatArray) -> FloatArray:
        """Give (along, left) of (east, north), shape (n, 2)."""
        ahead, off = self._ahead, places_m - self._start
        return np.column_stack([off @ ahead, off @ np.array([-ahead[1], ahead[0]])])

    def way(self, walker: WalkerResult, leg: int) -> FloatArray:
        """Give a walker's way on the leg, thinned; empty where it was not walked."""
        part, trace = walker.legs[leg], walker.trace
        if trace is None or part.trace_from is None or part.trace_to is None:
            return np.empty((0, 2))
        places = np.column_stack([trace.east_m, trace.north_m])[part.trace_from : part.trace_to]
        every = max(1, math.ceil(len(places) / _MOST_PLACES))
        return self.of(np.vstack([places[:-1:every], places[-1:]]))

    def began(self, walker: WalkerResult, leg: int) -> FloatArray:
        """Give where a walker left for a leg, shape (0 or 1, 2)."""
        if leg >= len(walker.legs) or walker.trace is None:
            return np.empty((0, 2))
        first = walker.legs[leg].trace_from
        if first is None or first >= len(walker.trace.east_m):
            return np.empty((0, 2))
        return self.of(np.array([[walker.trace.east_m[first], walker.trace.north_m[first]]]))


def _rows(way: FloatArray) -> list[dict[str, Any]]:
    return [{"x": round(float(x), 1), "y": round(float(y), 1)} for x, y in way]


def _tracks(ways: Sequence[FloatArray], found: Sequence[bool]) -> list[Layer]:
    line = {"type": "line", "clip": True, "strokeJoin": "round"}
    yes = [_rows(way) for way, ok in zip(ways, found, strict=True) if ok]
    no = [_rows(way) for way, ok in zip(ways, found, strict=True) if not ok]
    blue = {**line, "stroke": ink.BLUE, "strokeWidth": 1, "strokeOpacity": 0.65}
    orange = {**line, "stroke": ink.ORANGE, "strokeWidth": 2.4}
    order = {"order": {"value": 0}}
    return [
        Layer(rows=in_parts(yes), mark=blue, channels=order),
        Layer(rows=in_parts(no), mark=orange, channels=order),
    ]


def _plan(turned: _Turned, radius_m: float) -> list[Layer]:
    angle = np.linspace(0.0, 2.0 * np.pi, _CORNERS + 1)
    end = turned.line[-1]
    ring = np.column_stack([end[0] + radius_m * np.cos(angle), end[1] + radius_m * np.sin(angle)])
    line = {"type": "line", "stroke": ink.INK, "clip": True}
    cross = {"type": "point", "shape": "M-1,0L1,0M0,-1L0,1", "size": 130, "filled": False}
    cross |= {"stroke": ink.INK, "strokeWidth": 2, "opacity": 1}
    dashed = {**line, "strokeWidth": 1.6, "strokeDash": ink.PLANNED_DASH}
    order = {"order": {"value": 0}}
    return [
        Layer(rows=_rows(turned.line), mark=dashed, channels=order),
        Layer(rows=_rows(ring), mark={**line, "strokeWidth": 1.3}, channels=order),
        Layer(rows=_rows(turned.line[-1:]), mark=cross),
    ]


def _left_from(places: Sequence[FloatArray]) -> list[Layer]:
    mark = {"type": "point", "shape": "square", "size": 26, "filled": False, "clip": True}
    mark |= {"stroke": ink.INK, "strokeWidth": 1, "opacity": 1}
    return [Layer(rows=[row for place in places for row in _rows(place)], mark=mark)]


def _claims(claims: FloatArray, found: Sequence[bool]) -> list[Layer]:
    mark = {"type": "point", "shape": "diamond", "size": 60, "opacity": 1, "clip": True}
    yes = claims[np.array(found)]
    no = claims[~np.array(found)]
    missed = {"size": 110, "fill": ink.ORANGE, "stroke": "white", "strokeWidth": 1}
    return [
        Layer(rows=_rows(yes), mark={**mark, "fill": "white", "stroke": ink.BLUE}),
        Layer(rows=_rows(no), mark={**mark, **missed}),
    ]


def _numbers(
    claims: FloatArray,
    found: Sequence[bool],
    numbers: Sequence[int],
    along_m: tuple[float, float],
    side_m: float,
) -> list[Layer]:
    """Write the walker's number at the claims of those who did not find the point."""
    px = WIDTH_PX / (along_m[1] - along_m[0])
    places = np.column_stack([claims[:, 0] - along_m[0], side_m - claims[:, 1]]) * px
    labels = [
        Label(text=str(number), right_px=float(right), down_px=float(down), clear_px=7.0,
              kind=str(index), may_go=True)
        for index, (number, (right, down)) in enumerate(zip(numbers, places, strict=True))
        if not found[index]
        and abs(claims[index][1]) < side_m
        and along_m[0] < claims[index][0] < along_m[1]
    ]  # fmt: skip
    rows = []
    for one in place_labels(labels, places, WIDTH_PX, 2.0 * side_m * px):
        claim = claims[int(one.label.kind)]
        rows.append(
            {
                "x": round(float(claim[0]), 1),
                "y": round(float(claim[1]), 1),
                "t": one.label.text,
                "dx": round(one.right_px - one.label.right_px, 1),
                "dy": round(one.down_px - one.label.down_px, 1),
            }
        )
    words = {"type": "text", "fontSize": ink.LABEL_PX, "fontWeight": "bold", "fill": ink.INK}
    words |= {"dx": {"expr": "datum.dx"}, "dy": {"expr": "datum.dy"}}
    return [Layer(rows=rows, mark=rimmed(words), channels={"text": {"value": {"expr": "datum.t"}}})]
