"""Planned and walked azimuth of a leg as two arrows, with the interval of the walked one."""

from __future__ import annotations

import math
from typing import Any

from audit.debriefing.finished_debrief import LegDebrief
from audit.measurement.leg_measures import LegMeasures
from audit.reports import digits, ink, wording
from audit.reports.chart_layers import Layer, as_given, position, specification, view
from audit.units import unit_vector
from audit.words import in_force, say
from audit.words.in_other_units import CIRCLE, AngleUnit

WIDTH_PX, HEIGHT_PX = 230.0, 170.0
_REACH_PX, _WHOLE_REACH_PX = 96.0, 62.0
_DEPTH_PX = 104.0
_LETTER_PX, _LINE_PX, _BESIDE_PX = 7.5, 14.0, 4.0
"""Of the names of the arrows: a bold letter of a broad type, a line, and half the room between."""
_RIM_SIGN: dict[AngleUnit, str] = {"degrees": "°"}
_WINDOWS_DEG = (15.0, 30.0, 60.0, 180.0)
"""Shown to either side; the last is the whole circle."""
_MIL_STEPS = ((100, 20), (200, 50), (400, 100))
_STEPS: dict[AngleUnit, tuple[tuple[int, int], ...]] = {
    "degrees": ((5, 1), (10, 5), (20, 5), (45, 15)),
    "gon": ((5, 1), (10, 5), (20, 5), (50, 10)),
    "mil6400": (*_MIL_STEPS, (800, 200)),
    "mil6300": (*_MIL_STEPS, (900, 300)),
    "mil6000": (*_MIL_STEPS, (1000, 250)),
}
"""Between numbers and between ticks, for each window."""


def dial_specification(leg: LegDebrief) -> dict[str, Any] | None:
    """Give the Vega-Lite specification, the planned azimuth straight up; None if not walked."""
    measures = leg.audit.measures
    if measures is None:
        return None
    half_deg = wording.half_interval_deg(measures)
    seen_deg = abs(measures.azimuth_error_deg) + half_deg
    window = next((n for n, side in enumerate(_WINDOWS_DEG) if seen_deg <= 0.9 * side), -1)
    side_deg = _WINDOWS_DEG[window]
    whole = side_deg == 180.0
    outer = _WHOLE_REACH_PX if whole else _REACH_PX / math.sin(math.radians(side_deg))
    inner = 0.0 if whole else max(outer - _DEPTH_PX, 0.0)
    dial = _Dial(inner, outer, leg.audit.card.azimuth.degrees)
    layers = [
        *dial.interval(measures.azimuth_error_deg, half_deg),
        *dial.scale(side_deg, *_STEPS[in_force().units.angle][window]),
        *dial.arrows(measures),
        *dial.words(leg, measures, whole=whole),
    ]
    low_px = outer + 24.0 - HEIGHT_PX
    if whole:
        low_px = -HEIGHT_PX / 2
    axes = (
        position("x", [-WIDTH_PX / 2, WIDTH_PX / 2], None),
        position("y", [low_px, low_px + HEIGHT_PX], None),
    )
    return specification(view(layers, axes, (WIDTH_PX, HEIGHT_PX), "dial"))


class _Dial:
    """Places on the dial: turns are from the planned azimuth, which points up."""

    def __init__(self, inner_px: float, outer_px: float, planned_deg: float) -> None:
        self.inner_px, self.outer_px, self.planned_deg = inner_px, outer_px, planned_deg

    def at(self, turn_deg: float, reach_px: float) -> dict[str, Any]:
        right, up = unit_vector(turn_deg) * reach_px
        return {"x": round(float(right), 1), "y": round(float(up), 1)}

    def interval(self, error_deg: float, half_deg: float) -> list[Layer]:
        """Shade the 95 % interval of the walked azimuth."""
        turns = [error_deg + half_deg * step / 6 for step in range(-6, 7)]
        edge = [self.at(turn, self.outer_px) for turn in turns]
        edge += [self.at(turn, self.inner_px) for turn in reversed(turns)]
        mark = {"type": "line", "interpolate": "linear-closed", "strokeWidth": 0}
        mark |= {"fill": ink.PALE_BLUE, "opacity": 1}
        return [Layer(rows=edge, mark=mark)]

    def scale(self, side_deg: float, numbered: int, ticked: int) -> list[Layer]:
        """Draw the rim with its ticks, numbered by grid azimuth."""
        rim = [self.at(side_deg * step / 40, self.outer_px) for step in range(-40, 41)]
        ticks, numbers = [], []
        unit = in_force().units.angle
        degree = CIRCLE[unit] / 360.0
        first = math.ceil((self.planned_deg - side_deg) * degree / ticked)
        last = math.floor((self.planned_deg + side_deg) * degree / ticked)
        for value in (ticked * step for step in range(first, last + 1)):
            turn_deg = value / degree - self.planned_deg
            if turn_deg <= -180.0:
                continue
            has_number = value % numbered == 0
            tip = self.at(turn_deg, self.outer_px + (7.0 if has_number else 4.0))
            ends = {"x2": tip["x"], "y2": tip["y"]}
            ticks.append({**self.at(turn_deg, self.outer_px), **ends})
            if has_number:
                words = {"t": f"{value % CIRCLE[unit]}{_RIM_SIGN.get(unit, '')}"}
                numbers.append({**self.at(turn_deg, self.outer_px + 16.0), **words})
        line = {"type": "line", "stroke": ink.GREY, "strokeWidth": 1}
        rule = {"type": "rule", "stroke": ink.GREY, "strokeWidth": 1}
        text = {"type": "text", "fontSize": ink.LABEL_PX - 1, "fill": ink.INK}
        return [
            Layer(rows=rim, mark=line),
            Layer(rows=ticks, mark=rule, channels={"x2": "x2", "y2": "y2"}),
            Layer(rows=numbers, mark=text, channels={"text": "t:N"}),
        ]

    def arrows(self, measures: LegMeasures) -> list[Layer]:
        """Draw the planned azimuth dashed and the walked one whole."""
        styles = (
            (0.0, {"stroke": ink.INK, "strokeWidth": 1.8, "strokeDash": ink.PLANNED_DASH}),
            (measures.azimuth_error_deg, {"stroke": ink.BLUE, "strokeWidth": 3}),
        )
        layers = []
        for turn_deg, style in styles:
            tip = self.at(turn_deg, self.outer_px - 1.0)
            rows = [{**self.at(turn_deg, self.inner_px), "x2": tip["x"], "y2": tip["y"]}]
            head = {"type": "point", "shape": "triangle-up", "size": 70, "opacity": 1}
            head |= {"fill": style["stroke"], "strokeWidth": 0}
            place = [{**self.at(turn_deg, self.outer_px - 6.0), "a": turn_deg}]
            angle = {"angle": as_given("a", "quantitative")}
            line = {"type": "rule", **style}
            layers.append(Layer(rows=rows, mark=line, channels={"x2": "x2", "y2": "y2"}))
            layers.append(Layer(rows=place, mark=head, channels=angle))
        return layers

    def words(self, leg: LegDebrief, measures: LegMeasures, *, whole: bool) -> list[Layer]:
        """Name the arrows, each on its own side."""
        half_deg = wording.half_interval_deg(measures)
        azimuth = digits.card_azimuth(leg.audit.card.azimuth.degrees)
        planned = say("picture-planned", azimuth=azimuth)
        azimuth = digits.azimuth(measures.heading.azimuth.degrees, half_deg)
        walked = say("picture-walked", azimuth=azimuth)
        side = 1.0 if measures.azimuth_error_deg >= 0.0 else -1.0
        down = -(self.outer_px + 34.0) if whole else self.outer_px - _DEPTH_PX - 16.0
        texts = ((walked, side, ink.BLUE, "bold"), (planned, -side, ink.INK, "normal"))
        meet_px = _where_to_meet(*((walked, planned) if side < 0.0 else (planned, walked)))
        layers = []
        for line, (text, where, colour, weight) in enumerate(texts):
            mark = {"type": "text", "fontSize": ink.LABEL_PX, "fill": colour, "fontWeight": weight}
            place = {"x": meet_px or 0.0, "y": down}
            if meet_px is None:
                mark |= {"align": "center"}
                place["y"] += _LINE_PX * (0.5 - line)
            else:
                mark |= {"align": "left" if where > 0 else "right", "dx": _BESIDE_PX * where}
            layers.append(Layer(rows=[{**place, "t": text}], mark=mark, channels={"text": "t:N"}))
        return layers


def _where_to_meet(left: str, right: str) -> float | None:
    """Give where two labels side by side meet, across from the middle; None if there is no room."""
    half_px = WIDTH_PX / 2.0
    left_px, right_px = (_LETTER_PX * len(text) + _BESIDE_PX for text in (left, right))
    if left_px + right_px > WIDTH_PX:
        return None
    return min(max(0.0, left_px - half_px), half_px - right_px)
