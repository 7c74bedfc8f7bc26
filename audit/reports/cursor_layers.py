"""The time cursor of a picture: empty until the page's script puts it somewhere."""

from __future__ import annotations

from audit.reports import ink
from audit.reports.chart_layers import Layer

CURSOR = "cursor"
"""Name of the rows that the script fills, in every picture that follows the cursor."""


def cursor_layers() -> list[Layer]:
    """Give a ring with a dot where the walker was at the moment of the cursor."""
    ring = {"type": "point", "shape": "circle", "filled": False, "opacity": 1, "clip": True}
    rim = {**ring, "size": 260, "stroke": "white", "strokeWidth": 5}
    dark = {**ring, "size": 260, "stroke": ink.INK, "strokeWidth": 2}
    dot = {**ring, "size": 26, "fill": ink.INK, "strokeWidth": 0}
    return [Layer(rows=(), mark=mark, name=CURSOR) for mark in (rim, dark, dot)]


def cursor_rule() -> list[Layer]:
    """Give an upright line at the moment of the cursor."""
    rule = {"type": "rule", "stroke": ink.INK, "strokeWidth": 1.5, "clip": True}
    return [Layer(rows=(), mark=rule, channels={"y": {"value": 0}, "y2": {"value": "height"}},
                  name=CURSOR)]  # fmt: skip
