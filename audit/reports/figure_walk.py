"""The whole walk over time: offset from the planned line of the leg under way, speed, height."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np

from audit.debriefing.finished_debrief import Debrief
from audit.measurement.speed_and_direction import SpeedAndDirection
from audit.reports import ink
from audit.reports.chart_layers import (
    Layer,
    Spec,
    axis,
    in_parts,
    position,
    stacked,
    unnumbered,
    view,
)
from audit.reports.cursor_layers import cursor_layers, cursor_rule
from audit.reports.curve_strip import STRIP_GAP_PX, CurveFrame, curve_view
from audit.reports.length_axis import length_axis, side_label
from audit.reports.map_layers import claim_signs, claims_reckoned
from audit.reports.strip_frame import SIDE_PX, with_room
from audit.reports.walk_moments import LegPassage, legs_of_walk, offset_over_time
from audit.units import FloatArray
from audit.words import say

WIDTH_PX, _OFFSET_PX = 760, 110
_NARROWEST_SIDE_M = 20.0
_MOST_PLACES = 600
_LETTER_PX, _LINE_PX = 8.0, 16
"""Of the names of legs; where one is left out, its upright line leaves the names free."""


def walk_specification(debrief: Debrief, moved: SpeedAndDirection) -> dict[str, Any] | None:
    """Give the Vega-Lite specification, or None for a recording without times.

    Along the strips run seconds since the start of the recording.
    """
    clean = debrief.clean
    if not clean.timed:
        return None
    passed_s = clean.time_s - clean.time_s[0]
    shown = (0.0, float(passed_s[-1]))
    curves = {"height": clean.elevation_m, "speed": moved.speed_m_s}
    curves = {name: values for name, values in curves.items() if np.isfinite(values).sum() > 1}
    views = [_offset_view(debrief, passed_s, shown, with_times=not curves)]
    for name, values in curves.items():
        last = name == list(curves)[-1]
        times = _time_axis(shown) if last else unnumbered(_time_axis(shown))
        frame = CurveFrame(shown=shown, width_px=WIDTH_PX, side_px=SIDE_PX, along_axis=times)
        views.append(curve_view(name, passed_s, values, frame, [gap.before for gap in clean.gaps]))
    return stacked(views, STRIP_GAP_PX)


def _offset_view(
    debrief: Debrief, passed_s: FloatArray, shown: tuple[float, float], *, with_times: bool
) -> Spec:
    offset_m = offset_over_time(debrief)
    ends_m = [end_m for leg in legs_of_walk(debrief) for end_m in (leg.start_m, leg.end_m)]
    far_m = max(_NARROWEST_SIDE_M, float(np.nanmax(np.abs([*offset_m, *ends_m]), initial=0.0)))
    low, high = with_room(-far_m, far_m, 0.1)
    line = {"type": "line", "strokeJoin": "round", "clip": True}
    walked = {**line, "stroke": ink.BLUE, "strokeWidth": 1.8}
    planned = {**line, "stroke": ink.INK, "strokeWidth": 1.2, "strokeDash": ink.PLANNED_DASH}
    band = {"type": "area", "fill": ink.PALE_BLUE, "opacity": 1, "clip": True}
    parts = _parts(debrief, passed_s, offset_m)
    zero = [{"x": shown[0], "y": 0.0}, {"x": shown[1], "y": 0.0}]
    noise_m = round(debrief.quality.noise_m, 1)
    band_rows = in_parts(_band(part, noise_m) for part in parts)
    silent = {**line, "stroke": ink.GREY, "strokeWidth": 1.6, "strokeDash": ink.GAP_DASH}
    silent_rows = in_parts(_silent(debrief, passed_s, offset_m))
    layers = [
        Layer(rows=band_rows, mark=band, channels={"y2": "y2"}),
        Layer(rows=zero, mark=planned),
        Layer(rows=in_parts(parts), mark=walked),
        Layer(rows=silent_rows, mark=silent),
        *_leg_marks(debrief, shown),
        *cursor_rule(),
        *cursor_layers(),
    ]
    across = length_axis(
        (low, high), 5, side_label(), title=None, minExtent=SIDE_PX, maxExtent=SIDE_PX
    )
    along = _time_axis(shown) if with_times else unnumbered(_time_axis(shown))
    axes = (position("x", shown, along), position("y", (low, high), across, reverse=True))
    return view(layers, axes, (WIDTH_PX, _OFFSET_PX), "walk", one_shape=True)


def _parts(
    debrief: Debrief, passed_s: FloatArray, offset_m: FloatArray
) -> list[list[dict[str, Any]]]:
    """Give the rows of each leg, in as many parts as the recording has of it."""
    parts = []
    for leg in legs_of_walk(debrief):
        if leg.last < leg.first:  # all of it in one silence
            continue
        step = max(1, (leg.last - leg.first) * len(debrief.legs) // _MOST_PLACES)
        before = [gap.before for gap in debrief.clean.gaps if leg.first <= gap.before < leg.last]
        begins, ends = [leg.first, *(one + 1 for one in before)], [*before, leg.last]
        for first, last in zip(begins, ends, strict=True):
            parts.append(_at([*range(first, last, step), last], passed_s, offset_m))
    return parts


def _silent(
    debrief: Debrief, passed_s: FloatArray, offset_m: FloatArray
) -> list[list[dict[str, Any]]]:
    """Give the rows of each silence on a leg: from the fix before it to the one after it.

    A start or claim that was reckoned into one stands in place of the fix on its side.
    """
    parts = []
    for leg in legs_of_walk(debrief):
        ends = _ends(debrief, leg)
        seen = _at([leg.first, leg.last] if leg.first <= leg.last else [], passed_s, offset_m)
        if not seen:
            parts.append(ends)
            continue
        both = zip(ends, seen, leg.reckoned, strict=True)
        parts += [[end, fix] for end, fix, unseen in both if unseen]
        parts += [
            _at([gap.before, gap.before + 1], passed_s, offset_m)
            for gap in debrief.clean.gaps
            if leg.first <= gap.before < leg.last
        ]
    return parts


def _ends(debrief: Debrief, leg: LegPassage) -> list[dict[str, Any]]:
    """Give the rows of the start and the claim of a leg."""
    begun_s = float(debrief.clean.time_s[0])
    ends = ((leg.start_s, leg.start_m), (leg.claim_s, leg.end_m))
    return [{"x": round(at_s - begun_s, 1), "y": round(off_m, 1)} for at_s, off_m in ends]


def _at(places: Sequence[int], passed_s: FloatArray, offset_m: FloatArray) -> list[dict[str, Any]]:
    return [
        {"x": round(float(passed_s[i]), 1), "y": round(float(offset_m[i]), 1)}
        for i in places
        if np.isfinite(offset_m[i])
    ]


def _band(rows: list[dict[str, Any]], noise_m: float) -> list[dict[str, Any]]:
    """Give one standard deviation of the receiver to either side of the walk."""
    low_high = ((round(row["y"] - noise_m, 1), round(row["y"] + noise_m, 1)) for row in rows)
    return [{**row, "y": low, "y2": high} for row, (low, high) in zip(rows, low_high, strict=True)]


def _leg_marks(debrief: Debrief, shown: tuple[float, float]) -> list[Layer]:
    """Draw an upright line where each leg begins, its name where it has room, and the claims."""
    begun_s, walked = float(debrief.clean.time_s[0]), legs_of_walk(debrief)
    begins = [{"x": leg.start_s - begun_s, "t": debrief.legs[leg.leg].name} for leg in walked]
    claims = [{"x": leg.claim_s - begun_s, "y": leg.end_m} for leg in walked]
    rule = {"type": "rule", "stroke": ink.INK, "strokeWidth": 1}
    words = {"type": "text", "fontSize": ink.LABEL_PX, "fontWeight": "bold", "fill": ink.INK}
    words |= {"align": "left", "baseline": "top", "dx": 4}
    named = _apart(begins, shown)
    full: dict[str, Any] = {"y": {"value": 0}, "y2": {"value": "height"}}
    below: dict[str, Any] = {**full, "y": {"value": _LINE_PX}}
    return [
        Layer(rows=named, mark=rule, channels=full),
        Layer(rows=[row for row in begins if row not in named], mark=rule, channels=below),
        Layer(rows=named, mark=words, channels={"text": "t:N", "y": {"value": 2}}),
        *claim_signs(claims, claims_reckoned(debrief), size=90),
    ]


def _apart(begins: list[dict[str, Any]], shown: tuple[float, float]) -> list[dict[str, Any]]:
    """Leave out the names that would run into the one before."""
    px_per_s = WIDTH_PX / (shown[1] - shown[0])
    named: list[dict[str, Any]] = []
    free_px = -np.inf
    for row in begins:
        if row["x"] * px_per_s >= free_px:
            named.append(row)
            free_px = row["x"] * px_per_s + _LETTER_PX * (len(row["t"]) + 1)
    return named


def _time_axis(shown: tuple[float, float]) -> Spec:
    """Give an axis of hours and minutes since the start."""
    steps = (60, 300, 600, 1200, 1800, 3600, 7200, 14400, 86400, 864000, 1e9)
    span_s = shown[1] - shown[0]  # centuries, where a clock jumped
    step_s = next((step for step in steps if span_s / step <= 8), span_s / 8)
    label = "floor(datum.value / 3600) + ':' + format(floor(datum.value % 3600 / 60), '02d')"
    values = [step_s * i for i in range(int((shown[1] - shown[0]) / step_s) + 1)]
    return axis(title=say("picture-since-start"), values=values, labelExpr=label)
