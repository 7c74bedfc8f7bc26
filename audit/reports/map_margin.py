"""The foot of the map: scale bar, grid north and magnetic north."""

from __future__ import annotations

from typing import Any

from audit.debriefing.records import Debrief
from audit.reports import ink
from audit.reports.angle_words import east_or_west
from audit.reports.chart_layers import Layer, as_given
from audit.reports.map_frame import MapFrame, bar_length_m
from audit.units import unit_vector

_ARROW_PX = 26.0
NARROWEST_DEG = 9.0
"""Norths nearer to each other than this are drawn this far apart, as in map margins."""

_SMALL_TEXT = {"type": "text", "fontSize": ink.LABEL_PX - 1, "fill": ink.INK}


def margin_layers(debrief: Debrief, frame: MapFrame) -> list[Layer]:
    """Give the layers of the strip below the map, over whatever would run into it."""
    angle_deg = debrief.card.angles.grid_magnetic_angle_deg
    return [*_ground(frame), *_scale_bar(frame), *_norths(angle_deg, frame)]


def _ground(frame: MapFrame) -> list[Layer]:
    sides = {"x": frame.west_m, "x2": frame.east_m}
    strip = {**sides, "y": _up(frame, -1.0), "y2": frame.south_m}
    edge = {**sides, "y": frame.south_m, "y2": frame.north_m}
    line = {"type": "rect", "filled": False, "stroke": ink.INK, "strokeWidth": 1}
    channels = {"x2": "x2", "y2": "y2"}
    return [
        Layer(rows=[strip], mark={"type": "rect", "fill": "white"}, channels=channels),
        Layer(rows=[edge], mark=line, channels=channels),
    ]


def _scale_bar(frame: MapFrame) -> list[Layer]:
    """Draw a bar of two halves, one filled, with its length."""
    length_m = bar_length_m(frame)
    half_m = length_m / 2
    left = frame.west_m + 8 * frame.metres_per_pixel
    level = {"y": _up(frame, 12.0), "y2": _up(frame, 18.0)}
    halves = [
        {**level, "x": left, "x2": left + half_m, "c": ink.INK},
        {**level, "x": left + half_m, "x2": left + length_m, "c": "white"},
    ]
    bar = {"type": "rect", "stroke": ink.INK, "strokeWidth": 1}
    ends = [(0.0, "0"), (half_m, _length(half_m)), (length_m, _length(length_m))]
    numbers = [{"x": left + along, "y": _up(frame, 29.0), "t": text} for along, text in ends]
    return [
        Layer(
            rows=halves,
            mark=bar,
            channels={"x2": "x2", "y2": "y2", "fill": as_given("c", "nominal")},
        ),
        Layer(rows=numbers, mark=_SMALL_TEXT, channels={"text": "t:N"}),
    ]


def _length(metres: float) -> str:
    return f"{metres:.0f} m" if metres < 1000.0 else f"{metres / 1000.0:g} km"


def _norths(angle_deg: float, frame: MapFrame) -> list[Layer]:
    """Draw both norths from one foot, magnetic north on its own side."""
    side = 1.0 if angle_deg >= 0.0 else -1.0
    shown_deg = side * max(abs(angle_deg), NARROWEST_DEG)
    shafts: list[dict[str, Any]] = []
    heads, letters = [], []
    foot = (frame.width_px - 56.0, 4.0)
    norths = ((0.0, "GN", -side), (shown_deg, "MN", side))
    for number, (turn_deg, name, letter_side) in enumerate(norths):
        right, up = unit_vector(turn_deg) * _ARROW_PX
        tip = (foot[0] + right, foot[1] + up)
        shafts.append({**_spot(frame, *foot), "s": number, "i": 0})
        shafts.append({**_spot(frame, *tip), "s": number, "i": 1})
        heads.append({**_spot(frame, *tip), "a": turn_deg})
        letters.append({**_spot(frame, tip[0] + letter_side * 14.0, tip[1] + 2.0), "t": name})
    line = {"type": "line", "stroke": ink.INK, "strokeWidth": 1.4}
    head = {"type": "point", "shape": "triangle-up", "size": 24, "fill": ink.INK, "opacity": 1}
    head |= {"strokeWidth": 0}
    note = {**_spot(frame, foot[0] - 32.0, 15.0)}
    note["t"] = f"grid-magnetic angle {east_or_west(angle_deg)}"
    angle = {"angle": as_given("a", "quantitative")}
    return [
        Layer(rows=shafts, mark=line, channels={"order": "i:Q", "detail": "s:N"}),
        Layer(rows=heads, mark=head, channels=angle),
        Layer(rows=letters, mark=_SMALL_TEXT, channels={"text": "t:N"}),
        Layer(rows=[note], mark={**_SMALL_TEXT, "align": "right"}, channels={"text": "t:N"}),
    ]


def _spot(frame: MapFrame, right_px: float, up_px: float) -> dict[str, Any]:
    """Give the place of a spot of the strip, in pixels from its lower left corner."""
    return {"x": frame.west_m + right_px * frame.metres_per_pixel, "y": _up(frame, up_px)}


def _up(frame: MapFrame, up_px: float) -> float:
    return frame.foot_m + up_px * frame.metres_per_pixel
