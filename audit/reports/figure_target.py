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
    cross_at_point,
    position,
    rimmed,
    specification,
    view,
)
from audit.reports.label_places import Label, boxes_round, place_labels, sampled
from audit.reports.length_axis import length_axis, length_label
from audit.reports.map_layers import claim_signs, claims_reckoned
from audit.units import FloatArray, unit_vector
from audit.words import in_force, say
from audit.words.in_other_units import METRES

SIDE_PX = 340.0
_RING_STEPS = (10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0, 5000.0, 10000.0)
_LEAST_RADII = 1.5
_RING_BEARINGS = (0.0, 45.0, 315.0, 180.0, 135.0, 225.0)
"""Where the words of the rings may stand: above first, never on the line of left and right."""
_RING_WORDS = {"type": "text", "fontSize": ink.LABEL_PX - 1, "fill": ink.GREY_TEXT, "clip": True}
_CLAIM_PX = 5.0
"""To each side of a claim's middle, without the corners that its diamond leaves free."""
_LED_PX = 20.0
"""A name whose middle stands further from its claim than this is led to it."""


def target_specification(debrief: Debrief) -> dict[str, Any] | None:
    """Give the Vega-Lite specification, one scale both ways; None where no leg was walked."""
    rows = _claims(debrief)
    if not rows:
        return None
    radius_m = debrief.card.arrival_radius_m
    far_m = _far_m(debrief, rows)
    metres = METRES[in_force().units.length]
    fitting = (metres * step for step in _RING_STEPS if far_m / (metres * step) <= 4)
    step_m = next(fitting, metres * _RING_STEPS[-1])
    rings = [step_m * i for i in range(1, math.floor(far_m / step_m) + 1)]
    px_a_metre = SIDE_PX / 2 / far_m
    words = _ring_words(rings, rows)
    layers = [
        *_circles([ring * px_a_metre for ring in rings], ink.GRID_LINE, 1.0),
        *_circles([radius_m * px_a_metre], ink.INK, 1.5),
        *_forecasts(debrief),
        cross_at_point(),
        Layer(rows=words, mark=rimmed(_RING_WORDS), channels={"text": "t:N"}),
        *_errors(rows),
        *claim_signs(rows, claims_reckoned(debrief)),
        *_names(rows, radius_m, words, px_a_metre),
    ]

    def side(title: str) -> Spec:
        shown = (-far_m, far_m)
        return length_axis(shown, 5, length_label(), title=say(title), grid=False, ticks=True)

    axes = (
        position("x", (-far_m, far_m), side("picture-left-right")),
        position("y", (-far_m, far_m), side("picture-short-beyond")),
    )
    return specification(view(layers, axes, (SIDE_PX, SIDE_PX), "target", one_shape=True))


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


def target_note(debrief: Debrief) -> str:
    """Say what the signs of the figure mean, of the ellipses only those that it shows."""
    far_m, told = _far_m(debrief, _claims(debrief)), _outlines(debrief)
    seen = [bool((np.abs(outline).max(axis=1) < far_m).any()) for _, outline in told]
    drawn = "both" if len(told) > 1 else "only"
    if not all(seen):
        drawn = "easiest" if seen[0] else "none"
    radius = digits.stated_metres(debrief.card.arrival_radius_m)
    return say("page-target-note", radius=radius, forecasts=drawn if told else "none")


def _far_m(debrief: Debrief, rows: list[dict[str, Any]]) -> float:
    """Give how far from the point the figure shows ground, to each side."""
    claims_m: list[float] = [math.hypot(row["x"], row["y"]) + row["sd"] for row in rows]
    return max(*claims_m, _LEAST_RADII * debrief.card.arrival_radius_m, 0.0) * 1.08


def _outlines(debrief: Debrief) -> list[tuple[str, FloatArray]]:
    """Give the ellipse that holds 95 of 100 ordinary walks: of the smallest and the largest leg.

    Each is (leg, places right of and beyond the point).
    """
    told = [
        (leg.forecast.forecast, line_direction(leg.audit.card).degrees)
        for leg in debrief.legs
        if leg.forecast is not None
    ]
    told.sort(key=lambda one: one[0].far.major_m)
    outlines = []
    for forecast, up_deg in {id(one): one for one in (told[:1] + told[-1:])}.values():
        outline = forecast.far_outline()
        sides = [outline @ unit_vector(up_deg + 90.0), outline @ unit_vector(up_deg)]
        outlines.append((forecast.leg, np.column_stack(sides)))
    return outlines


def _forecasts(debrief: Debrief) -> list[Layer]:
    rows = [
        {"x": round(float(x), 1), "y": round(float(y), 1), "k": place, "leg": leg}
        for leg, outline in _outlines(debrief)
        for place, (x, y) in enumerate(outline)
    ]
    line = {"type": "line", "stroke": ink.GREY, "strokeWidth": 0.8, "strokeDash": [2, 2]}
    channels = {"order": "k:Q", "detail": "leg:N"}
    return [Layer(rows=rows, mark={**line, "clip": True}, channels=channels)]


def _circles(radii_px: list[float], stroke: str, width: float) -> list[Layer]:
    circle = {"type": "point", "shape": "circle", "filled": False, "opacity": 1, "clip": True}
    rows = [{"x": 0.0, "y": 0.0, "a": circle_size(radius)} for radius in radii_px]
    mark = {**circle, "stroke": stroke, "strokeWidth": width}
    return [Layer(rows=rows, mark=mark, channels={"size": as_given("a", "quantitative")})]


def _ring_words(rings_m: list[float], rows: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """Give the words of the rings, all on the side of the point that the claims leave free."""
    claims = np.array([[row["x"], row["y"]] for row in rows])

    def room(bearing_deg: float) -> float:
        words = np.outer(rings_m, unit_vector(bearing_deg))
        return float(np.hypot(*(claims[:, None] - words).transpose(2, 0, 1)).min(initial=np.inf))

    right, up = unit_vector(max(_RING_BEARINGS, key=room))
    return [
        {
            "x": round(ring * float(right), 1),
            "y": round(ring * float(up), 1),
            "t": digits.stated_metres(ring),
        }
        for ring in rings_m
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


def _names(
    rows: list[dict[str, Any]], radius_m: float, rings: list[dict[str, Any]], px_a_metre: float
) -> list[Layer]:
    """Write the name of each leg beside its claim, where it covers nothing else.

    A name that had to stand apart is led back to its claim by a thin line.
    """
    places = _to_pixels([[row["x"], row["y"]] for row in rows], px_a_metre)
    bars = [
        _to_pixels([[row["x"] - dx, row["y"] - dy], [row["x"] + dx, row["y"] + dy]], px_a_metre)
        for row in rows
        for dx, dy in ((row["sd"], 0.0), (0.0, row["sd"]))
    ]
    turns = np.linspace(0.0, 2.0 * np.pi, 73)
    circle = radius_m * np.column_stack([np.cos(turns), np.sin(turns)])
    taken = [boxes_round(places, _CLAIM_PX), *(_ring_box(ring, px_a_metre) for ring in rings)]
    labels = [
        Label(text=row["t"], right_px=float(x), down_px=float(y), clear_px=9.0, kind="leg")
        for row, (x, y) in zip(rows, places, strict=True)
    ]
    seen = sampled([*bars, _to_pixels(circle, px_a_metre)])
    placed = place_labels(labels, seen, SIDE_PX, SIDE_PX, np.vstack(taken))
    names, leads = [], []
    for row, one in zip(rows, placed, strict=True):
        dx, dy = one.right_px - one.label.right_px, one.down_px - one.label.down_px
        names.append({**row, "dx": round(dx, 1), "dy": round(dy, 1)})
        if math.hypot(dx, dy) > _LED_PX:
            share = 1.0 - _CLAIM_PX / math.hypot(dx, dy)
            end = {
                "x2": row["x"] + share * dx / px_a_metre,
                "y2": row["y"] - share * dy / px_a_metre,
            }
            leads.append({"x": row["x"], "y": row["y"], **end})
    words = {"type": "text", "fontSize": ink.LABEL_PX, "fontWeight": "bold", "fill": ink.INK}
    words |= {"dx": {"expr": "datum.dx"}, "dy": {"expr": "datum.dy"}}
    channels = {"text": {"value": {"expr": "datum.t"}}}
    lead = {"type": "rule", "stroke": ink.INK, "strokeWidth": 0.8, "clip": True}
    return [
        Layer(rows=leads, mark=lead, channels={"x2": "x2", "y2": "y2"}),
        Layer(rows=names, mark=rimmed(words), channels=channels),
    ]


def _to_pixels(places_m: Any, px_a_metre: float) -> FloatArray:  # noqa: ANN401 (pairs of numbers)
    """Give pixels right of and below the upper left corner, shape (n, 2)."""
    places = np.asarray(places_m, dtype=float).reshape(-1, 2)
    pixels: FloatArray = places * [px_a_metre, -px_a_metre] + SIDE_PX / 2
    return pixels


def _ring_box(ring: dict[str, Any], px_a_metre: float) -> FloatArray:
    """Give the box that the word of a ring takes."""
    half = np.array([4.0 * len(ring["t"]), 7.0])
    middle = _to_pixels([ring["x"], ring["y"]], px_a_metre)[0]
    return np.concatenate([middle - half, middle + half])[None, :]
