"""The map of plan and walk on the course grid, as one chart specification."""

from __future__ import annotations

from typing import Any

import numpy as np

from audit.debriefing.finished_debrief import Debrief
from audit.ground_picture import GroundPicture
from audit.reports import ink, map_layers
from audit.reports.chart_layers import Axes, axis, position, specification, view
from audit.reports.cursor_layers import cursor_layers
from audit.reports.display_lines import DisplayLine, tolerance_m, walked_lines
from audit.reports.map_frame import MARGIN_STRIP_PX, MOST_LABELS, MOST_LINES, MapFrame, map_frame
from audit.reports.map_ground import ground_layers
from audit.reports.map_labels import label_layers, label_params
from audit.reports.map_margin import MARGIN_PARAMS, margin_layers
from audit.words import say

_ZOOM = {
    "name": "zoom",
    "select": {
        "type": "interval",
        "clear": False,  # the page's script knows what the whole course is at the width there is
        # The wheel alone scrolls the page, and so does a finger.
        "zoom": "wheel![event.ctrlKey || event.metaKey]",
        "translate": "[pointerdown[event.pointerType === 'mouse'], window:pointerup]"
        " > window:pointermove!",
    },
    "bind": "scales",
}
_OVER_OPACITY = 0.4
_GRID_PARAMS = (
    {"name": "shown_m", "expr": "metres_per_px * max(width, height)"},
    {
        "name": "line_m",
        "expr": f"100 * pow(10, max(0, ceil(log(shown_m / {MOST_LINES} / 100) / LN10 - 1e-9)))",
    },
    {
        "name": "label_m",
        "expr": " : ".join(
            f"shown_m / (line_m * {factor}) <= {MOST_LABELS} ? line_m * {factor}"
            for factor in (1, 2, 5, 10)
        )
        + " : line_m * 20",
    },
)
"""The grid of the map in hand: 100 m or 1 km lines, wider only where they would crowd."""


def map_specification(debrief: Debrief, ground: GroundPicture | None = None) -> dict[str, Any]:
    """Give the Vega-Lite specification: grid north up, one scale east and north.

    ``ground`` lies below everything else.
    """
    frame = map_frame(debrief)
    lines = map_lines(debrief, frame)
    layers = [
        *ground_layers(ground),
        *map_layers.line_layers(lines),
        *map_layers.point_layers(debrief),
        *map_layers.letter_layers(debrief, frame),
        *map_layers.claim_layers(debrief),
        *label_layers(debrief, frame, lines),
        *cursor_layers(),
        *margin_layers(debrief),
    ]
    size = (frame.width_px, frame.height_px + MARGIN_STRIP_PX)
    content = view(
        layers,
        _grid_axes(frame, debrief.card.grid.code, over=ground is not None),
        size,
        "map",
        one_shape=True,
    )
    content["layer"][0]["params"] = [_ZOOM]
    content["params"] = [
        *map_layers.point_params(debrief),
        *MARGIN_PARAMS,
        *_GRID_PARAMS,
        *label_params(frame),
    ]
    return specification(content)


def map_tolerance_m(debrief: Debrief) -> float:
    """Give how closely the drawn lines keep to the recording."""
    return tolerance_m(map_frame(debrief).metres_per_pixel, debrief.settings.reports)


def map_lines(debrief: Debrief, frame: MapFrame) -> list[DisplayLine]:
    """Give all lines of the map in the order of drawing: plan, walk, misses."""
    planned = [DisplayLine(kind="planned", points=leg.audit.card.line) for leg in debrief.legs]
    misses = [
        DisplayLine(
            kind="miss",
            points=np.array(
                [leg.audit.card.line[-1], [measures.claim.east_m, measures.claim.north_m]]
            ),
        )
        for leg in debrief.legs
        if (measures := leg.audit.measures) is not None
    ]
    within_m = tolerance_m(frame.metres_per_pixel, debrief.settings.reports)
    return [*planned, *walked_lines(debrief, within_m), *misses]


def _grid_axes(frame: MapFrame, grid: str, *, over: bool) -> Axes:
    """Give the two position channels; the lines of the course grid are their axes.

    ``over`` sets the lines over a picture of the ground, which would hide them.
    """
    # Two figures of the kilometres, as they stand in the margin of a map sheet.
    label = (
        "abs(datum.value / label_m - round(datum.value / label_m)) < 1e-6 ? "
        "format(datum.value / 1000 % 100, label_m >= 1000 ? '02d' : '04.1f') : ''"
    )
    kilometre = {"test": "datum.value % 1000 === 0", "value": ink.GRID_LINE_KM}
    style: dict[str, Any] = {
        "grid": True,
        "gridColor": {"condition": kilometre, "value": ink.GRID_LINE},
        "labelExpr": label,
    }
    if over:
        style |= {"zindex": 1, "gridColor": ink.GREY, "gridOpacity": _OVER_OPACITY}
    # The foot of the map is taken by the scale bar, so the eastings stand at its head.
    words = say("map-km-east", grid=grid)
    head = axis(values=_lines_of("x"), title=words, orient="top", **style)
    side = axis(values=_lines_of("y"), title=say("map-km-north"), **style)
    x = position("x", [frame.west_m, frame.east_m], head)
    y = position("y", [frame.foot_m, frame.north_m], side)
    return x, y


def _lines_of(scale: str) -> dict[str, str]:
    """Give the multiples of the line spacing that the map shows."""
    low, high = f"domain('{scale}')[0]", f"domain('{scale}')[1]"
    if scale == "y":
        low = f"({low} + {MARGIN_STRIP_PX} * metres_per_px)"
    return {"expr": f"sequence(ceil({low} / line_m) * line_m, {high} + 1e-6, line_m)"}
