"""A low strip of one curve: height or speed, over distance or over time."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from audit.reports import ink
from audit.reports.chart_layers import Layer, Spec, axis, in_parts, position, view
from audit.reports.cursor_layers import cursor_rule
from audit.units import FloatArray
from audit.words import say

STRIP_GAP_PX = 8
_HEIGHT_PX = 54
_MOST_PLACES = 120
"""Of the curve; more cannot be told apart on a strip."""

_SCALES = {"height": 1.0, "speed": 3.6}
_WORDS_SHARE = 0.4
"""Room over the curve, as a share of its range, for the words that name it."""
_LEAST_RANGE = {"height": 20.0, "speed": 6.0}


@dataclass(frozen=True, slots=True, kw_only=True)
class CurveFrame:
    """What a strip shows of its length, and the axis of that; numbered where it is the lowest."""

    shown: tuple[float, float]
    width_px: float
    side_px: float
    along_axis: Spec


def curve_view(
    name: str,
    along: FloatArray,
    values: FloatArray,
    frame: CurveFrame,
    silent_after: Sequence[int] = (),
) -> Spec:
    """Give the strip of a curve, broken where it has no value.

    ``along`` and ``values`` have shape (n,); ``silent_after`` are the places after which the
    recording was silent up to the next.
    """
    scaled = values * _SCALES[name]
    low, high = _range(scaled, name)
    line = {"type": "line", "stroke": ink.BLUE, "strokeWidth": 1.6, "strokeJoin": "round"}
    words = {"type": "text", "fontSize": ink.LABEL_PX, "fontStyle": "italic", "fill": ink.INK}
    words |= {"align": "left", "baseline": "top", "x": 6, "y": 3}
    layers = [
        Layer(rows=_rows(along, scaled, silent_after), mark=line),
        Layer(
            rows=[{"t": say(f"picture-{name}")}],
            mark=words,
            channels={"text": "t:N", "x": {"value": 6}, "y": {"value": 3}},
        ),
        *cursor_rule(),
    ]
    side = axis(
        title=None, values=_two_ticks(low, high), minExtent=frame.side_px, maxExtent=frame.side_px
    )
    axes = (
        position("x", frame.shown, frame.along_axis),
        position("y", (low, high), side),
    )
    return view(layers, axes, (frame.width_px, _HEIGHT_PX), name)


def _rows(
    along: FloatArray, values: FloatArray, silent_after: Sequence[int]
) -> list[Mapping[str, Any]]:
    parts: list[list[dict[str, Any]]] = [[]]
    every = math.ceil(len(along) / _MOST_PLACES)
    edges = {place for one in silent_after for place in (one, one + 1)}
    for i in sorted({*range(0, len(along), every), *edges}):
        if i - 1 in silent_after:
            parts.append([])
        if np.isfinite(values[i]):
            parts[-1].append({"x": round(float(along[i]), 1), "y": round(float(values[i]), 2)})
        elif parts[-1]:
            parts.append([])
    return in_parts(parts)


def _range(values: FloatArray, name: str) -> tuple[float, float]:
    """Give the range shown: speeds from nought, heights with at least some relief."""
    low, high = float(np.nanmin(values)), float(np.nanmax(values))
    if name == "speed":
        return 0.0, max(high, _LEAST_RANGE[name]) * (1 + _WORDS_SHARE)
    room = max(_LEAST_RANGE[name] - (high - low), 0.1 * (high - low)) / 2
    return low - room, high + room + _WORDS_SHARE * (high - low + 2 * room)


def _two_ticks(low: float, high: float) -> list[float]:
    """Give the lowest and the highest multiple of a round step inside a range."""
    power = 10.0 ** math.floor(math.log10(high - low))
    step = next(power * f for f in (0.5, 1.0, 2.0) if (high - low) / (power * f) <= 5)
    first, last = math.ceil(low / step), math.floor(high / step)
    return [first * step] if first == last else [first * step, last * step]
