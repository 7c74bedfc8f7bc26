"""The map of plan and walk on the course grid, as one chart specification."""

from __future__ import annotations

from typing import Any

import numpy as np

from audit.debriefing.records import Debrief
from audit.reports import ink, map_layers
from audit.reports.chart_layers import specification
from audit.reports.display_lines import DisplayLine, tolerance_m, walked_lines
from audit.reports.map_frame import (
    MARGIN_STRIP_PX,
    MapFrame,
    lines_between,
    map_frame,
)
from audit.reports.map_labels import label_layers
from audit.reports.map_margin import margin_layers


def map_specification(debrief: Debrief) -> dict[str, Any]:
    """Give the Vega-Lite specification: grid north up, one scale east and north."""
    frame = map_frame(debrief)
    lines = map_lines(debrief, frame)
    layers = [
        *map_layers.line_layers(lines),
        *map_layers.point_layers(debrief, frame),
        *map_layers.letter_layers(debrief, frame),
        *map_layers.claim_layers(debrief),
        *label_layers(debrief, frame, lines),
        *margin_layers(debrief, frame),
    ]
    axes = _grid_axes(frame, debrief.card.grid.code)
    return specification(layers, axes, frame.width_px, frame.height_px + MARGIN_STRIP_PX)


def map_tolerance_m(debrief: Debrief) -> float:
    """Give how closely the drawn lines keep to the recording."""
    return tolerance_m(map_frame(debrief).metres_per_pixel)


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
    return [*planned, *walked_lines(debrief, tolerance_m(frame.metres_per_pixel)), *misses]


def _grid_axes(frame: MapFrame, grid: str) -> tuple[Any, Any]:
    """Give the two position channels; the lines of the course grid are their axes."""
    import altair as alt  # noqa: PLC0415

    # Two figures of the kilometres, as they stand in the margin of a map sheet.
    figures = "02d" if frame.label_m >= 1000.0 else "04.1f"
    label = (
        f"datum.value % {frame.label_m} === 0 ? format(datum.value / 1000 % 100, '{figures}') : ''"
    )
    kilometre = {"test": "datum.value % 1000 === 0", "value": ink.GRID_LINE_KM}
    style: dict[str, Any] = {
        "grid": True,
        "gridColor": {"condition": kilometre, "value": ink.GRID_LINE},
        "domain": False,
        "ticks": False,
        "labelExpr": label,
        "labelOverlap": False,
        "labelFontSize": ink.LABEL_PX,
        "labelColor": ink.INK,
        "titleFontSize": ink.LABEL_PX,
        "titleFontWeight": "normal",
        "titleColor": ink.INK,
    }
    easts = lines_between(frame.west_m, frame.east_m, frame.line_m)
    norths = lines_between(frame.south_m, frame.north_m, frame.line_m)
    across = alt.Scale(domain=[frame.west_m, frame.east_m], nice=False, zero=False)
    up = alt.Scale(domain=[frame.foot_m, frame.north_m], nice=False, zero=False)
    # The foot of the map is taken by the scale bar, so the eastings stand at its head.
    words = f"km east on {grid}, hundreds left out"
    head = alt.Axis(values=easts, title=words, orient="top", **style)
    side = alt.Axis(values=norths, title="km north", **style)
    return alt.X("x:Q", scale=across, axis=head), alt.Y("y:Q", scale=up, axis=side)
