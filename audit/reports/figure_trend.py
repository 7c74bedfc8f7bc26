"""The figures of a walker over his attempts, below each other, day and night told by shape."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

from audit.reports import ink
from audit.reports.chart_layers import (
    Layer,
    Spec,
    axis,
    position,
    specification,
    stacked,
    unnumbered,
    view,
)
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
_MOST_OF_SCATTER = 4.0
"""The picture shows a scatter's interval up to so many times the largest scatter; chosen: of four
legs and more nearly every interval is whole."""
_GAP_PX = 14
Bar = tuple[float, float, float]
"""A figure with the ends of its interval."""


def trend_specification(trend: Trend) -> Spec | None:
    """Give the Vega-Lite specification; None where no attempt has a figure."""
    names = drawn_figures(trend)
    if not names:
        return None
    views = [_view(trend, name, lowest=name == names[-1]) for name in names]
    if len(views) == 1:
        return specification(views[0])
    return stacked(views, _GAP_PX)


def drawn_figures(trend: Trend) -> list[str]:
    """Give the names of the figures that any attempt has, from the top of the picture."""
    return [
        name
        for name, (figure, _) in _FIGURES.items()
        if any(figure(one) is not None for light in trend.lights for one in light.attempts)
    ]


def trend_key(trend: Trend) -> list[tuple[str, str]]:
    """Give (sign, meaning) of what the picture shows."""
    figures = [_FIGURES[name] for name in drawn_figures(trend)]
    shown: list[str] = [
        light.light
        for light in trend.lights
        if any(figure(one) is not None for figure, _ in figures for one in light.attempts)
    ]
    means = [over(light) for _, over in figures if over for light in trend.lights]
    carried = {_is_carried(one) for one in means if one.mean is not None}
    shown += [name for name, is_drawn in (("mean", False), ("change", True)) if is_drawn in carried]
    return [(f"trend-{name}", say(f"trend-key-{name}")) for name in shown]


def is_cut(trend: Trend) -> bool:
    """Tell whether an interval goes on beyond the picture."""
    return any(
        row["high"] > _top(trend, name)
        for name in drawn_figures(trend)
        for light in trend.lights
        for row in _rows(light, _FIGURES[name][0])
    )


def _top(trend: Trend, name: str) -> float:
    """Give the highest figure that the picture of one shows: of a scatter not its whole interval.

    Of two legs the interval of a scatter is tens of times as wide as the scatter itself, and
    would press all attempts onto the floor of the picture.
    """
    rows = [row for light in trend.lights for row in _rows(light, _FIGURES[name][0])]
    high = max(row["high"] for row in rows)
    if name != "scatter":
        return high
    return min(high, _MOST_OF_SCATTER * max(row["y"] for row in rows))


def _view(trend: Trend, name: str, *, lowest: bool) -> Spec:
    figure, over = _FIGURES[name]
    layers: list[Layer] = []
    rows: list[dict[str, float]] = []
    for light in trend.lights:
        of_light = _rows(light, figure)
        rows += of_light
        layers += _signs(light.light, of_light, _top(trend, name))
        if over is not None:
            layers += _mean(light, over(light), _shown(name))
    low, high = min(row["low"] for row in rows), _top(trend, name)
    title = say(f"trend-axis-{name}", unit=in_force().angle_sign().strip())
    room = 0.08 * (high - low) or 1.0
    step = -(-trend.attempts // _MOST_NUMBERS)
    values = list(range(1, trend.attempts + 1, step))
    attempt = say("trend-axis-attempt")
    numbers = axis(title=attempt, grid=False, ticks=True, values=values, format="d")
    axes = (
        position("x", (0.5, trend.attempts + 0.5), numbers if lowest else unnumbered(numbers)),
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


def _signs(light: str, rows: Sequence[dict[str, float]], top: float) -> list[Layer]:
    bars = [{"x": row["x"], "y": row["low"], "y2": min(row["high"], top)} for row in rows]
    beyond = [{"x": row["x"], "y": top} for row in rows if row["high"] > top]
    head: dict[str, Any] = {"type": "point", "shape": "triangle-up", "size": 40, "opacity": 1}
    sign: dict[str, Any] = {"type": "point", "size": 70, "opacity": 1, "strokeWidth": 2}
    stroke = _SIGNS[light]["stroke"]
    return [
        Layer(rows=bars, mark={"type": "rule", "stroke": stroke}, channels={"y2": "y2"}),
        Layer(rows=beyond, mark={**head, "fill": stroke, "strokeWidth": 0}),
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
    carried = _is_carried(figure)
    step = figure.change.step.value if figure.change is not None and carried else 0.0
    rows = [
        {"x": float(at), "y": shown * (figure.mean.value + step * (at - middle))}
        for at in (numbers[0], numbers[-1])
    ]
    mark = {"type": "line", "stroke": _SIGNS[light.light]["stroke"], "strokeWidth": 1.5}
    return [Layer(rows=rows, mark=mark if carried else {**mark, "strokeDash": [2, 3]})]


def _is_carried(figure: OverAttempts) -> bool:
    return figure.change is not None and figure.change.carried


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


_FIGURES: dict[
    str,
    tuple[Callable[[AttemptShown], Bar | None], Callable[[TrendOfLight], OverAttempts] | None],
] = {
    "bias": (_heading, lambda light: light.heading),
    "scatter": (_scatter, None),
    "distance": (_distance, None),
    "paces": (_paces, lambda light: light.paces),
}
"""How each figure is had of an attempt, and over all attempts where a mean of it is drawn."""
