"""The figures of a walker over his attempts, below each other, day and night told by shape."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

from audit.reports import ink
from audit.reports.chart_layers import Layer, Spec, axis, position, specification, stacked, view
from audit.school_records.trend import AttemptShown, OverAttempts, Trend, TrendOfLight
from audit.words import in_force, say
from audit.words.in_other_units import METRES

WIDTH_PX = 620.0
_HEIGHT_PX = 130.0
_ASIDE = {"day": -0.12, "twilight": 0.0, "night": 0.12, "unknown": 0.0}
"""Of an attempt, so that its day and its night do not cover each other."""
_SIGNS = {
    "day": {"shape": "circle", "filled": False, "stroke": ink.ORANGE},
    "twilight": {"shape": "diamond", "filled": False, "stroke": ink.GREY},
    "night": {"shape": "triangle-up", "filled": True, "fill": ink.BLUE, "stroke": ink.BLUE},
    "unknown": {"shape": "square", "filled": False, "stroke": ink.INK},
}
_MOST_NUMBERS = 12
"""Of attempts under the chart."""
Bar = tuple[float, float, float]
"""A figure with the ends of its interval."""


def trend_specification(trend: Trend) -> Spec | None:
    """Give the Vega-Lite specification; None where no attempt has a figure."""
    views = [
        _view(trend, "bias", _heading, lambda light: light.heading),
        _view(trend, "scatter", _scatter, None),
        _view(trend, "distance", _distance, None),
        _view(trend, "paces", _paces, lambda light: light.paces),
    ]
    shown = [one for one in views if one is not None]
    if not shown:
        return None
    if len(shown) == 1:
        return specification(shown[0])
    return stacked(shown, 34)


def _view(
    trend: Trend,
    name: str,
    figure: Callable[[AttemptShown], Bar | None],
    over: Callable[[TrendOfLight], OverAttempts] | None,
) -> Spec | None:
    layers: list[Layer] = []
    seen: list[float] = []
    for light in trend.lights:
        rows = _rows(light, figure)
        seen += [row[key] for row in rows for key in ("low", "high")]
        layers += _signs(light.light, rows)
        if over is not None:
            layers += _mean(light, over(light), _shown(name))
    if not seen:
        return None
    low, high = min(seen), max(seen)
    title = say(f"trend-axis-{name}", unit=in_force().angle_sign().strip())
    room = 0.08 * (high - low) or 1.0
    attempt = say("trend-axis-attempt")
    step = -(-trend.attempts // _MOST_NUMBERS)
    values = list(range(1, trend.attempts + 1, step))
    numbers = axis(title=attempt, grid=False, ticks=True, values=values, format="d")
    axes = (
        position("x", (0.5, trend.attempts + 0.5), numbers),
        position("y", (low - room, high + room), axis(title=title, tickCount=5)),
    )
    if low < 0.0 < high:
        ends = [{"x": 0.5, "y": 0.0}, {"x": trend.attempts + 0.5, "y": 0.0}]
        layers.insert(0, Layer(rows=ends, mark={"type": "line", "stroke": ink.INK}))
    return view(layers, axes, (WIDTH_PX, _HEIGHT_PX), name)


def _rows(
    light: TrendOfLight, figure: Callable[[AttemptShown], Bar | None]
) -> list[dict[str, float]]:
    rows = []
    for one in light.attempts:
        bar = figure(one)
        if bar is not None:
            value, low, high = (round(part, 3) for part in bar)
            place = one.number + _ASIDE[light.light]
            rows.append({"x": place, "y": value, "low": low, "high": high})
    return rows


def _signs(light: str, rows: Sequence[dict[str, float]]) -> list[Layer]:
    bars = [{"x": row["x"], "y": row["low"], "y2": row["high"]} for row in rows]
    sign: dict[str, Any] = {"type": "point", "size": 70, "opacity": 1, "strokeWidth": 2}
    stroke = _SIGNS[light]["stroke"]
    return [
        Layer(rows=bars, mark={"type": "rule", "stroke": stroke}, channels={"y2": "y2"}),
        Layer(rows=rows, mark={**sign, "fill": "white", **_SIGNS[light], "filled": True}),
    ]


def _shown(name: str) -> float:
    """Give how many of what is shown make one of what is kept: degrees, or paces to 100 m."""
    units = in_force().units
    return METRES[units.length] if name == "paces" else units.angle_from(1.0)


def _mean(light: TrendOfLight, figure: OverAttempts, shown: float) -> list[Layer]:
    """Draw the mean over all attempts, and a line only where the numbers carry a change."""
    if figure.mean is None:
        return []
    numbers = [one.number for one in light.attempts]
    middle = sum(numbers) / len(numbers)
    carried = figure.change is not None and figure.change.carried
    step = figure.change.step.value if figure.change is not None and carried else 0.0
    rows = [
        {"x": float(at), "y": shown * (figure.mean.value + step * (at - middle))}
        for at in (numbers[0], numbers[-1])
    ]
    mark = {"type": "line", "stroke": _SIGNS[light.light]["stroke"], "strokeWidth": 1.5}
    return [Layer(rows=rows, mark=mark if carried else {**mark, "strokeDash": [2, 3]})]


def _heading(one: AttemptShown) -> Bar | None:
    of = one.heading_deg
    return None if of is None else _angles(of.value, of.low, of.high)


def _scatter(one: AttemptShown) -> Bar | None:
    of = one.heading_scatter_deg
    return None if of is None else _angles(of.value, of.low, of.high)


def _angles(*degrees: float) -> Bar:
    """Give angles in the unit in force."""
    value, low, high = (in_force().units.angle_from(one) for one in degrees)
    return value, low, high


def _distance(one: AttemptShown) -> Bar | None:
    of = one.distance
    return None if of is None else (100.0 * of.value, 100.0 * of.low, 100.0 * of.high)


def _paces(one: AttemptShown) -> Bar | None:
    if one.paces_per_100m is None:
        return None
    unit_m = METRES[in_force().units.length]
    middle, half = one.paces_per_100m * unit_m, 2.0 * (one.paces_sd or 0.0) * unit_m
    return middle, middle - half, middle + half
