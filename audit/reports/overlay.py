"""Plan and walk on one sheet true to scale, to be laid on the map in hand."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from audit.debriefing.finished_debrief import Debrief
from audit.errors import OutputRefusedError
from audit.reports import ink, map_layers
from audit.reports.chart_layers import Axes, axis, position, specification, view
from audit.reports.display_lines import tolerance_m
from audit.reports.figure_map import map_lines
from audit.reports.map_frame import MapFrame, shown_ground
from audit.reports.map_labels import label_layers, label_params
from audit.reports.paper_sizes import MARGIN_MM, Paper, Sheet, sheets

PX_A_MM = 5.0
"""So that words are 2.4 mm high and lines 0.3 mm wide on the sheet."""
_BESIDE_MM, _HEAD_MM = 16.0, 32.0
"""Room for the numbers of the grid, and for the words at the head."""
_EDGE_MM = 4.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Overlay:
    """The drawing for one sheet: ``PX_A_MM`` of its pixels are one millimetre."""

    specification: dict[str, Any]
    sheet: Sheet


def overlay(debrief: Debrief, scale: int, paper: Paper) -> Overlay:
    """Give the overlay at 1:``scale``.

    Raises
    ------
    OutputRefusedError
        Where the course fits no sheet at that scale.
    """
    shown = shown_ground(debrief)
    edge_m = _EDGE_MM / 1000.0 * scale
    low, high = shown.min(axis=0) - edge_m, shown.max(axis=0) + edge_m
    size_mm = (high - low) / scale * 1000.0
    fitting = [
        sheet
        for sheet in sheets(paper)
        if size_mm[0] + _BESIDE_MM <= sheet.width_mm - 2 * MARGIN_MM
        and size_mm[1] + _HEAD_MM <= sheet.height_mm - 2 * MARGIN_MM
    ]
    if not fitting:
        message = (
            f"At 1:{scale:,} the course takes {size_mm[0] / 10:.0f} by {size_mm[1] / 10:.0f} cm, "
            "more than a sheet holds. Choose a smaller scale, or plans of fewer legs."
        ).replace(",", " ", 1)
        raise OutputRefusedError(message)
    metres_per_pixel = scale / 1000.0 / PX_A_MM
    frame = MapFrame(
        width_px=float((high - low)[0]) / metres_per_pixel,
        west_m=float(low[0]),
        east_m=float(high[0]),
        south_m=float(low[1]),
        north_m=float(high[1]),
        metres_per_pixel=metres_per_pixel,
    )
    return Overlay(specification=_drawing(debrief, frame), sheet=fitting[0])


def _drawing(debrief: Debrief, frame: MapFrame) -> dict[str, Any]:
    lines = map_lines(debrief, frame)
    layers = [
        *map_layers.line_layers(lines),
        *map_layers.point_layers(debrief),
        *map_layers.claim_layers(debrief),
        *label_layers(debrief, frame, lines, kinds=("point", "leg")),
    ]
    content = view(layers, _axes(frame), (frame.width_px, frame.height_px), "overlay")
    content["params"] = [
        {"name": "metres_per_px", "expr": "(domain('x')[1] - domain('x')[0]) / width"},
        *map_layers.point_params(debrief),
        *label_params(frame),
    ]
    return specification(content)


def overlay_tolerance_m(debrief: Debrief, scale: int) -> float:
    """Give how closely the drawn lines keep to the recording."""
    return tolerance_m(scale / 1000.0 / PX_A_MM, debrief.settings.reports)


def _axes(frame: MapFrame) -> Axes:
    """Give the kilometre lines, to be laid on those of the map sheet."""
    style: dict[str, Any] = {
        "grid": True,
        "gridColor": ink.GRID_LINE_KM,
        "labelExpr": "format(datum.value / 1000 % 100, '02d')",
        "title": None,
    }
    easts, norths = (
        [1000.0 * k for k in range(int(np.ceil(low / 1000)), int(np.floor(high / 1000)) + 1)]
        for low, high in ((frame.west_m, frame.east_m), (frame.south_m, frame.north_m))
    )
    return (
        position("x", (frame.west_m, frame.east_m), axis(values=easts, orient="top", **style)),
        position("y", (frame.south_m, frame.north_m), axis(values=norths, **style)),
    )
