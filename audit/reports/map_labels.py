"""The words on the map: names of points and legs, size of each miss."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import Any

import numpy as np

from audit.debriefing.finished_debrief import Debrief, LegDebrief
from audit.geodesy.along_line import steps_m
from audit.reports import digits, ink
from audit.reports.chart_layers import Layer, rimmed
from audit.reports.display_lines import DisplayLine
from audit.reports.label_places import Label, PlacedLabel, boxes_round, place_labels, sampled
from audit.reports.map_frame import MapFrame
from audit.reports.map_layers import signs_of_map
from audit.reports.printable import printable
from audit.units import FloatArray
from audit.words import say, told

_LONGEST, _LONGEST_SAID = 18, 30
"""Letters of a name, and of what is said of a leg."""
_SIGN_PX = 8.0
"""To each side of the middle of a diamond or a letter."""
_SMALLEST_SHARE = 0.75
"""Words on a map narrower than its own width become no smaller than this."""
_ROOM = 1.3
"""Room for each label in heights and widths of its own: a phone shows the map at 0.58."""
_STYLES = {
    "point": {"fontWeight": "bold", "fill": ink.INK},
    "leg": {"fontStyle": "italic", "fill": ink.INK},
    "claim": {"fontWeight": "bold", "fill": ink.ORANGE},
}


def label_params(frame: MapFrame) -> list[dict[str, Any]]:
    """Give what the labels need: how much narrower the map is shown than it was laid out."""
    return [
        {"name": "laid_out_px", "value": round(frame.width_px, 2)},
        {"name": "shrunk", "expr": "min(1, width / laid_out_px)"},
    ]


def label_layers(
    debrief: Debrief,
    frame: MapFrame,
    lines: Sequence[DisplayLine],
    kinds: Collection[str] = tuple(_STYLES),
) -> list[Layer]:
    """Give one layer a kind of label."""
    every = [*_points(debrief, frame), *_claims(debrief, frame), *_legs(debrief, frame)]
    labels = [label for label in every if label.kind in kinds]
    seen = sampled(_to_pixels(line.points, frame) for line in lines)
    signs = boxes_round(_to_pixels(signs_of_map(debrief, frame), frame), _SIGN_PX)
    placed = place_labels(labels, seen, frame.width_px, frame.height_px, signs, _ROOM)
    layers = []
    for kind, style in _STYLES.items():
        rows = [_row(one, frame) for one in placed if one.label.kind == kind]
        size = {"expr": f"{ink.LABEL_PX} * max({_SMALLEST_SHARE}, shrunk)"}
        words = {"type": "text", "fontSize": size, "clip": True, **style}
        # Set off in pixels, so that words stay by their place while the map is zoomed.
        words |= {"dx": {"expr": "datum.dx * shrunk"}, "dy": {"expr": "datum.dy * shrunk"}}
        words["align"] = {"expr": "datum.a"}
        channels = {"text": {"value": {"expr": "datum.t"}}}
        layers.append(Layer(rows=rows, mark=rimmed(words), channels=channels))
    return layers


def _points(debrief: Debrief, frame: MapFrame) -> list[Label]:
    radius_px = debrief.card.arrival_radius_m / frame.metres_per_pixel
    clear = max(8.0, min(radius_px, 24.0)) + 3.0
    return [
        _label(told(point.name), (point.east_m, point.north_m), frame, clear, "point")
        for point in debrief.points
    ]


def _claims(debrief: Debrief, frame: MapFrame) -> list[Label]:
    """Say the size of each miss that lies outside the arrival circle."""
    made = []
    for leg in debrief.legs:
        measures = leg.audit.measures
        if measures is not None and measures.miss_m > debrief.card.arrival_radius_m:
            size = digits.metres(measures.miss_m, measures.miss_sd_m)
            claim = (measures.claim.east_m, measures.claim.north_m)
            made.append(
                _label(say("map-leg-off", leg=leg.name, size=size), claim, frame, 14.0, "claim")
            )
    return made


def _legs(debrief: Debrief, frame: MapFrame) -> list[Label]:
    return [
        _label(say("map-leg", leg=leg.name), _middle(leg), frame, 5.0, "leg")
        for leg in debrief.legs
    ]


def _middle(leg: LegDebrief) -> tuple[float, float]:
    """Give the middle of the longest part of the planned line."""
    line = leg.audit.card.line
    longest = int(steps_m(line).argmax())
    east, north = (line[longest] + line[longest + 1]) / 2
    return float(east), float(north)


def _label(
    text: str, at: tuple[float, float], frame: MapFrame, clear_px: float, kind: str
) -> Label:
    text = printable(text)  # the drawing engine ends the program at a control character
    longest = _LONGEST if kind == "point" else _LONGEST_SAID
    short = text if len(text) <= longest else f"{text[: longest - 1]}…"
    right, down = _to_pixels(np.array([at]), frame)[0]
    return Label(text=short, right_px=float(right), down_px=float(down), clear_px=clear_px,
                 kind=kind, may_go=kind == "leg")  # fmt: skip


def _to_pixels(points: FloatArray, frame: MapFrame) -> FloatArray:
    """Give pixels right of and below the upper left corner of the map."""
    right = (points[:, 0] - frame.west_m) / frame.metres_per_pixel
    down = (frame.north_m - points[:, 1]) / frame.metres_per_pixel
    return np.column_stack([right, down])


def _row(placed: PlacedLabel, frame: MapFrame) -> dict[str, object]:
    label = placed.label
    return {
        "x": round(frame.west_m + label.right_px * frame.metres_per_pixel, 1),
        "y": round(frame.north_m - label.down_px * frame.metres_per_pixel, 1),
        "dx": round(placed.edge_px - label.right_px, 1),
        "dy": round(placed.down_px - label.down_px, 1),
        "a": placed.align,
        "t": label.text,
    }
