"""All claims about their points in one figure, turned so that the line of the leg runs up."""

from __future__ import annotations

import math
from typing import Any

import numpy as np

from audit.debriefing.finished_debrief import Debrief
from audit.measurement.lines_of_leg import line_direction
from audit.reports import digits, ink
from audit.reports.chart_layers import (
    Layer,
    Spec,
    as_given,
    circle_size,
    position,
    rimmed,
    specification,
    view,
)
from audit.reports.label_places import Label, place_labels
from audit.reports.length_axis import length_axis, length_label
from audit.reports.map_layers import claim_sign
from audit.units import unit_vector
from audit.words import in_force, say
from audit.words.in_other_units import METRES

SIDE_PX = 340.0
_RING_STEPS = (10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0, 5000.0, 10000.0)
_LEAST_RADII = 1.5


def target_specification(debrief: Debrief) -> dict[str, Any] | None:
    """Give the Vega-Lite specification, one scale both ways; None where no leg was walked."""
    rows = _claims(debrief)
    if not rows:
        return None
    radius_m = debrief.card.arrival_radius_m
    claims_m = max(math.hypot(row["x"], row["y"]) + row["sd"] for row in rows)
    far_m = max(claims_m, _LEAST_RADII * radius_m) * 1.08
    metres = METRES[in_force().units.length]
    fitting = (metres * step for step in _RING_STEPS if far_m / (metres * step) <= 4)
    step_m = next(fitting, metres * _RING_STEPS[-1])
    rings = [step_m * i for i in range(1, math.floor(far_m / step_m) + 1)]
    px_a_metre = SIDE_PX / 2 / far_m
    layers = [
        *_circles([ring * px_a_metre for ring in rings], ink.GRID_LINE, 1.0),
        *_circles([radius_m * px_a_metre], ink.INK, 1.5),
        *_forecasts(debrief),
        *_cross_and_rings(rings),
        *_errors(rows),
        claim_sign(rows),
        *_names(rows, px_a_metre),
    ]

    def side(title: str) -> Spec:
        shown = (-far_m, far_m)
        return length_axis(shown, 5, length_label(), title=say(title), grid=False, ticks=True)

    axes = (
        position("x", (-far_m, far_m), side("picture-left-right")),
        position("y", (-far_m, far_m), side("picture-short-beyond")),
    )
    return specification(view(layers, axes, (SIDE_PX, SIDE_PX), "target"))


def _claims(debrief: Debrief) -> list[dict[str, Any]]:
    return [
        {
            "x": round(measures.miss_across_m, 1),
            "y": round(measures.miss_along_m, 1),
            "sd": round(measures.miss_sd_m, 1),
            "t": leg.name,
        }
        for leg in debrief.legs
        if (measures := leg.audit.measures) is not None
    ]


def _forecasts(debrief: Debrief) -> list[Layer]:
    """Draw the ellipse that holds 95 of 100 ordinary walks: of the smallest and the largest."""
    told = [
        (leg.forecast.forecast, line_direction(leg.audit.card).degrees)
        for leg in debrief.legs
        if leg.forecast is not None
    ]
    told.sort(key=lambda one: one[0].far.major_m)
    rows = []
    for forecast, up_deg in {id(one): one for one in (told[:1] + told[-1:])}.values():
        outline = forecast.far_outline()
        across = outline @ unit_vector(up_deg + 90.0)
        along = outline @ unit_vector(up_deg)
        rows += [
            {"x": round(float(x), 1), "y": round(float(y), 1), "k": place, "leg": forecast.leg}
            for place, (x, y) in enumerate(zip(across, along, strict=True))
        ]
    line = {"type": "line", "stroke": ink.GREY, "strokeWidth": 0.8, "strokeDash": [2, 2]}
    channels = {"order": "k:Q", "detail": "leg:N"}
    return [Layer(rows=rows, mark={**line, "clip": True}, channels=channels)]


def _circles(radii_px: list[float], stroke: str, width: float) -> list[Layer]:
    circle = {"type": "point", "shape": "circle", "filled": False, "opacity": 1, "clip": True}
    rows = [{"x": 0.0, "y": 0.0, "a": circle_size(radius)} for radius in radii_px]
    mark = {**circle, "stroke": stroke, "strokeWidth": width}
    return [Layer(rows=rows, mark=mark, channels={"size": as_given("a", "quantitative")})]


def _cross_and_rings(rings_m: list[float]) -> list[Layer]:
    cross = {"type": "point", "shape": "M-1,0L1,0M0,-1L0,1", "size": 160, "filled": False}
    cross |= {"stroke": ink.INK, "strokeWidth": 2, "opacity": 1}
    words = {"type": "text", "fontSize": ink.LABEL_PX - 1, "fill": ink.GREY_TEXT, "dy": -6}
    rows = [{"x": 0.0, "y": ring, "t": digits.stated_metres(ring)} for ring in rings_m]
    return [
        Layer(rows=[{"x": 0.0, "y": 0.0}], mark=cross),
        Layer(rows=rows, mark=words, channels={"text": "t:N"}),
    ]


def _errors(rows: list[dict[str, Any]]) -> list[Layer]:
    """Draw one standard error either way along both axes."""
    bars = []
    for row in rows:
        x, y, error = row["x"], row["y"], row["sd"]
        bars.append({"x": x - error, "x2": x + error, "y": y, "y2": y})
        bars.append({"x": x, "x2": x, "y": y - error, "y2": y + error})
    rule = {"type": "rule", "stroke": ink.ORANGE, "strokeWidth": 1.5, "clip": True}
    return [Layer(rows=bars, mark=rule, channels={"x2": "x2", "y2": "y2"})]


def _names(rows: list[dict[str, Any]], px_a_metre: float) -> list[Layer]:
    """Write the name of each leg beside its claim, where it covers no other."""
    places = np.array([[row["x"], -row["y"]] for row in rows]) * px_a_metre + SIDE_PX / 2
    labels = [
        Label(text=row["t"], right_px=float(x), down_px=float(y), clear_px=9.0, kind="leg")
        for row, (x, y) in zip(rows, places, strict=True)
    ]
    placed = [
        {
            **row,
            "dx": round(one.right_px - one.label.right_px, 1),
            "dy": round(one.down_px - one.label.down_px, 1),
        }
        for row, one in zip(rows, place_labels(labels, places, SIDE_PX, SIDE_PX), strict=True)
    ]
    words = {"type": "text", "fontSize": ink.LABEL_PX, "fontWeight": "bold", "fill": ink.INK}
    words |= {"dx": {"expr": "datum.dx"}, "dy": {"expr": "datum.dy"}}
    channels = {"text": {"value": {"expr": "datum.t"}}}
    return [Layer(rows=placed, mark=rimmed(words), channels=channels)]
