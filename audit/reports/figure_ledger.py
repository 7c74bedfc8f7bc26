"""Where one miss came from: the parts of its ledger head to tail, from the point to the claim."""

from __future__ import annotations

import math
from typing import Any

import numpy as np

from audit.debriefing.finished_debrief import LegDebrief
from audit.measurement.leg_measures import Ledger, LegMeasures
from audit.reports import ink
from audit.reports.chart_layers import Layer, as_given, position, rimmed, specification, view
from audit.reports.length_axis import length_axis
from audit.reports.map_layers import claim_signs
from audit.units import direction_degrees
from audit.words import in_force, say

PARTS = ("inherited", "plan", "heading", "distance", "detour")
SIDE_PX = 190.0
_ROOM = 0.2
_LEAST_M = 40.0
"""Ground shown at least, so that a miss within ordinary error looks as small as it is."""
_NAMED_SHARE = 0.12
"""Vectors shorter than this share of the figure are drawn without their name."""


def ledger_specification(leg: LegDebrief) -> dict[str, Any] | None:
    """Give the Vega-Lite specification, grid north up, one scale both ways; None if not walked."""
    measures = leg.audit.measures
    if measures is None:
        return None
    corners = _corners(measures.ledger)
    low, high = corners.min(axis=0), corners.max(axis=0)
    side_m = max(float((high - low).max()), _LEAST_M) * (1 + 2 * _ROOM)
    middle = (low + high) / 2
    layers = [
        *_parts(corners, side_m),
        *_miss(measures),
        *_names(corners, side_m),
        *claim_signs(
            [{"x": float(corners[-1][0]), "y": float(corners[-1][1])}], measures.ends_reckoned[1:]
        ),
    ]
    x, y = ([float(one - side_m / 2), float(one + side_m / 2)] for one in middle)
    across = say("picture-across", unit=in_force().units.length)
    axes = (
        position("x", x, length_axis((x[0], x[1]), 4, "size", title=across)),
        position("y", y, length_axis((y[0], y[1]), 4, "size", title=say("picture-south-north"))),
    )
    return specification(view(layers, axes, (SIDE_PX, SIDE_PX), "ledger", one_shape=True))


def _corners(ledger: Ledger) -> np.ndarray[Any, np.dtype[np.float64]]:
    """Give where each vector ends, the point itself first; shape (6, 2)."""
    vectors = np.array([getattr(ledger, part) for part in PARTS])
    return np.vstack([np.zeros(2), np.cumsum(vectors, axis=0)])


def _parts(corners: np.ndarray[Any, np.dtype[np.float64]], side_m: float) -> list[Layer]:
    lines, heads = [], []
    for (x, y), (x2, y2) in zip(corners[:-1].tolist(), corners[1:].tolist(), strict=True):
        if math.hypot(x2 - x, y2 - y) < 1e-3 * side_m:
            continue
        lines.append({"x": x, "y": y, "x2": x2, "y2": y2})
        heads.append({"x": x2, "y": y2, "a": direction_degrees(x2 - x, y2 - y)})
    rule = {"type": "rule", "stroke": ink.BLUE, "strokeWidth": 2}
    head = {"type": "point", "shape": "triangle-up", "size": 45, "fill": ink.BLUE, "opacity": 1}
    return [
        Layer(rows=lines, mark=rule, channels={"x2": "x2", "y2": "y2"}),
        Layer(rows=heads, mark={**head, "strokeWidth": 0},
              channels={"angle": as_given("a", "quantitative")}),
    ]  # fmt: skip


def _miss(measures: LegMeasures) -> list[Layer]:
    """Draw the miss itself, and the point as a cross."""
    total = measures.ledger.total
    line = {"type": "rule", "stroke": ink.ORANGE, "strokeWidth": 3.5}
    cross = {"type": "point", "shape": "M-1,0L1,0M0,-1L0,1", "size": 130, "filled": False}
    cross |= {"stroke": ink.INK, "strokeWidth": 2, "opacity": 1}
    ends = {"x": 0.0, "y": 0.0, "x2": float(total[0]), "y2": float(total[1])}
    return [
        Layer(rows=[ends], mark=line, channels={"x2": "x2", "y2": "y2"}),
        Layer(rows=[{"x": 0.0, "y": 0.0}], mark=cross),
    ]


def _names(corners: np.ndarray[Any, np.dtype[np.float64]], side_m: float) -> list[Layer]:
    """Name each vector that is long enough to stand beside its name."""
    rows = []
    for part, begin, end in zip(PARTS, corners[:-1], corners[1:], strict=True):
        if float(np.hypot(*(end - begin))) < _NAMED_SHARE * side_m:
            continue
        middle = (begin + end) / 2
        rows.append({"x": float(middle[0]), "y": float(middle[1]), "t": say(f"page-part-{part}")})
    words = {"type": "text", "fontSize": ink.LABEL_PX - 1, "fill": ink.INK, "dy": -7}
    return [Layer(rows=rows, mark=rimmed(words), channels={"text": "t:N"})]
