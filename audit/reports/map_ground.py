"""The ground below the map, and which ground that is."""

from __future__ import annotations

import base64
from typing import Any

from audit.debriefing.finished_debrief import Debrief
from audit.ground_picture import GroundPicture
from audit.reports.chart_layers import Layer, as_given
from audit.reports.map_frame import map_frame
from audit.words import say


def ground_layers(ground: GroundPicture | None) -> list[Layer]:
    """Give the picture at its place, carried in the drawing itself."""
    if ground is None:
        return []
    row = {
        "x": ground.west_m,
        "x2": ground.east_m,
        "y": ground.south_m,
        "y2": ground.north_m,
        "u": f"data:image/jpeg;base64,{base64.b64encode(ground.jpeg).decode()}",
    }
    mark = {"type": "image", "aspect": False, "clip": True}
    channels: dict[str, Any] = {"x2": "x2", "y2": "y2", "url": as_given("u", "nominal")}
    return [Layer(rows=[row], mark=mark, channels=channels)]


def ground_edges(debrief: Debrief) -> tuple[float, float, float, float]:
    """Give west, south, east and north of the ground that the map shows, in grid metres."""
    frame = map_frame(debrief)
    return frame.west_m, frame.south_m, frame.east_m, frame.north_m


def ground_words(ground: GroundPicture | None) -> str:
    """Say what lies under the map, "" where nothing does."""
    if ground is None:
        return ""
    if ground.what == "elevation":
        return say("map-ground-elevation", source=ground.source or "none")
    if ground.source:
        return say("map-ground-picture", source=ground.source)
    return say("map-ground-a-picture")
