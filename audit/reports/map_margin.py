"""The foot of the map: scale bar, grid north and magnetic north, kept right while zooming."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from audit.debriefing.finished_debrief import Debrief
from audit.reports import ink
from audit.reports.angle_words import east_or_west
from audit.reports.chart_layers import Layer, as_given, with_decimal_sign
from audit.reports.map_frame import MARGIN_STRIP_PX
from audit.units import unit_vector
from audit.words import say

BAR_SHARE = 0.45
"""The bar takes no more of the width than this."""
MARGIN_PARAMS = (
    {"name": "metres_per_px", "expr": "(domain('x')[1] - domain('x')[0]) / width"},
    {"name": "bar_room_m", "expr": f"metres_per_px * width * {BAR_SHARE}"},
    {"name": "bar_power", "expr": "pow(10, floor(log(bar_room_m) / LN10 + 1e-9))"},
    {
        "name": "bar_m",
        "expr": "bar_power * (bar_room_m >= 5 * bar_power ? 5 : "
        "bar_room_m >= 2 * bar_power ? 2 : 1)",
    },
)
"""The longest of 1, 2 and 5 times a power of ten that the room holds."""

_ARROW_PX = 26.0
NARROWEST_DEG = 9.0
"""Norths nearer to each other than this are drawn this far apart, as in map margins."""

_SMALL_TEXT = {"type": "text", "fontSize": ink.LABEL_PX - 1, "fill": ink.INK}
_BAR_LEFT_PX = 8
_ROOM_FOR_NOTE_PX = 420
"""A narrower map says the angle only in its words below."""
_LENGTH = (
    "bar_m * datum.k / 2 === 0 ? '0' : bar_m * datum.k / 2 < 1000 ? "
    "format(bar_m * datum.k / 2, '~f') + ' m' : format(bar_m * datum.k / 2000, '~f') + ' km'"
)


def margin_layers(debrief: Debrief) -> list[Layer]:
    """Give the layers of the strip below the map, over whatever would run into it."""
    angle_deg = debrief.card.angles.grid_magnetic_angle_deg
    return [*_ground(), *_scale_bar(), *_norths(angle_deg)]


def _ground() -> list[Layer]:
    strip = {"x": 0, "x2": "width", "y": f"height - {MARGIN_STRIP_PX - 1}", "y2": "height + 1"}
    edge = {"x": 0, "x2": "width", "y": 0, "y2": f"height - {MARGIN_STRIP_PX}"}
    line = {"type": "rect", "filled": False, "stroke": ink.INK, "strokeWidth": 1}
    return [
        Layer(rows=[{}], mark={"type": "rect", "fill": "white"}, channels=_spots(strip)),
        Layer(rows=[{}], mark=line, channels=_spots(edge)),
    ]


def _scale_bar() -> list[Layer]:
    """Draw a bar of two halves, one filled, with its length."""
    along = f"{_BAR_LEFT_PX} + datum.k * bar_m / 2 / metres_per_px"
    beyond = f"{_BAR_LEFT_PX} + (datum.k + 1) * bar_m / 2 / metres_per_px"
    halves = _spots({"x": along, "x2": beyond, "y": "height - 12", "y2": "height - 18"})
    numbers = _spots({"x": along, "y": "height - 29", "text": with_decimal_sign(_LENGTH)})
    bar = {"type": "rect", "stroke": ink.INK, "strokeWidth": 1}
    return [
        Layer(
            rows=[{"k": 0, "c": ink.INK}, {"k": 1, "c": "white"}],
            mark=bar,
            channels={**halves, "fill": as_given("c", "nominal")},
        ),
        Layer(rows=[{"k": k} for k in range(3)], mark=_SMALL_TEXT, channels=numbers),
    ]


def _norths(angle_deg: float) -> list[Layer]:
    """Draw both norths from one foot, magnetic north on its own side."""
    side = 1.0 if angle_deg >= 0.0 else -1.0
    shown_deg = side * max(abs(angle_deg), NARROWEST_DEG)
    foot_px = (56.0, 4.0)
    shafts, letters = [], []
    for turn_deg, name, letter_side in ((0.0, "GN", -side), (shown_deg, "MN", side)):
        right, up = unit_vector(turn_deg) * _ARROW_PX
        tip = {"r": foot_px[0] - float(right), "u": foot_px[1] + float(up)}
        shafts.append({"r0": foot_px[0], "u0": foot_px[1], **tip, "a": turn_deg})
        letters.append({"r": tip["r"] - letter_side * 14.0, "u": tip["u"] + 2.0, "t": name})
    words = say("map-angle", angle=east_or_west(angle_deg))
    note = {"r": foot_px[0] + 32.0, "u": 15.0, "t": words}
    return [*_arrows(shafts), *_words(letters, note)]


def _arrows(shafts: Sequence[dict[str, Any]]) -> list[Layer]:
    tip = {"x": "width - datum.r", "y": "height - datum.u"}
    foot = {"x2": "width - datum.r0", "y2": "height - datum.u0"}
    head = {"type": "point", "shape": "triangle-up", "size": 24, "fill": ink.INK, "opacity": 1}
    line = {"type": "rule", "stroke": ink.INK, "strokeWidth": 1.4}
    angle = {**_spots(tip), "angle": as_given("a", "quantitative")}
    return [
        Layer(rows=shafts, mark=line, channels=_spots({**tip, **foot})),
        Layer(rows=shafts, mark={**head, "strokeWidth": 0}, channels=angle),
    ]


def _words(letters: Sequence[dict[str, Any]], note: dict[str, Any]) -> list[Layer]:
    places = {"x": "width - datum.r", "y": "height - datum.u"}
    spots = _spots({**places, "text": "datum.t"})
    roomy = _spots({**places, "text": f"width > {_ROOM_FOR_NOTE_PX} ? datum.t : ''"})
    right_aligned = {**_SMALL_TEXT, "align": "right"}
    return [
        Layer(rows=letters, mark=_SMALL_TEXT, channels=spots),
        Layer(rows=[note], mark=right_aligned, channels=roomy),
    ]


def _spots(places: dict[str, Any]) -> dict[str, Any]:
    """Give channels in pixels of the picture, each a sum that follows its size."""
    return {name: {"value": {"expr": str(place)}} for name, place in places.items()}
