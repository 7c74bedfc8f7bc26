"""A picture as a stack of layers, put together into one chart specification."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from audit.reports import ink
from audit.words import in_force

SCHEMA = "https://vega.github.io/schema/vega-lite/v6.json"
_KINDS = {"Q": "quantitative", "N": "nominal", "T": "temporal"}
_CONFIG = {
    "font": ink.FONT,
    "aria": False,
    "padding": 2,
    "view": {"stroke": None},
    # A place without x and y breaks a line; a data set a part would double the time of drawing.
    "mark": {"invalid": "break-paths-show-domains"},
    # A limit would have every word measured once more, which is what drawing takes longest over.
    "axis": {"labelLimit": 0, "titleLimit": 0},
}

Spec = dict[str, Any]
Axes = tuple[Spec, Spec]


@dataclass(frozen=True, slots=True, kw_only=True)
class Layer:
    """Things of one kind to draw.

    Attributes
    ----------
    rows : sequence of mappings
        One a thing; the fields ``x`` and ``y`` are its place.
    mark : mapping
        A mark definition of Vega-Lite.
    channels : mapping
        Further channels by name: "field:type", or the attributes of the channel.
    name : str
        Of the rows, where a script is to find them again; such a layer stays though empty.
    """

    rows: Sequence[Mapping[str, Any]]
    mark: Mapping[str, Any]
    channels: Mapping[str, str | Mapping[str, Any]] = field(default_factory=dict)
    name: str = ""


def in_parts(parts: Iterable[Sequence[Mapping[str, Any]]]) -> list[Mapping[str, Any]]:
    """Give the rows of a line in several parts, with a break between each two."""
    rows: list[Mapping[str, Any]] = []
    for part in parts:
        if rows and part:
            rows.append({"x": None, "y": None})
        rows += part
    return rows


def as_given(name: str, kind: str) -> Spec:
    """Give a channel that takes its values from the rows as they stand, without a scale."""
    return {"field": name, "type": kind, "scale": None}


def view(
    layers: Sequence[Layer],
    axes: Axes,
    size_px: tuple[float, float],
    prefix: str,
    *,
    one_shape: bool = False,
) -> Spec:
    """Give one view: its layers over each other on common axes, and the rows they name.

    Layers with nothing to draw are left out, or stay where all charts of a kind are to be of
    ``one_shape``. ``prefix`` keeps the rows of several views of one picture apart.
    """
    drawn, datasets = [], {}
    for number, layer in enumerate(one for one in layers if one.rows or one.name or one_shape):
        name = layer.name or f"{prefix}{number}"
        datasets[name] = list(layer.rows)
        encoding = {key: _channel(value) for key, value in layer.channels.items()}
        drawn.append({"data": {"name": name}, "mark": dict(layer.mark), "encoding": encoding})
    return {
        "layer": drawn,
        "encoding": {"x": axes[0], "y": axes[1]},
        "width": size_px[0],
        "height": size_px[1],
        "datasets": datasets,
    }


def specification(content: Spec, datasets: Mapping[str, Any] | None = None) -> Spec:
    """Give a whole Vega-Lite specification of a view, or of views put together."""
    return {
        "$schema": SCHEMA,
        "background": "transparent",
        "config": _CONFIG,
        **content,
        "datasets": {**content.get("datasets", {}), **(datasets or {})},
    }


def stacked(views: Sequence[Spec], spacing_px: float) -> Spec:
    """Give the specification of views one below the other; only the lowest has words below it."""
    bare = [{key: value for key, value in one.items() if key != "datasets"} for one in views]
    datasets = {name: rows for one in views for name, rows in one["datasets"].items()}
    return specification({"vconcat": bare, "spacing": spacing_px, "bounds": "flush"}, datasets)


def axis(**more: Any) -> Spec:  # noqa: ANN401 (whatever Vega-Lite knows of an axis)
    """Give an axis in the style of all pictures."""
    return {
        "gridColor": ink.GRID_LINE,
        "domain": False,
        "ticks": False,
        "labelFontSize": ink.LABEL_PX,
        "labelColor": ink.INK,
        "labelOverlap": False,
        "titleFontSize": ink.LABEL_PX,
        "titleFontWeight": "normal",
        "titleColor": ink.INK,
        **_numbers(more),
    }


def _numbers(more: Spec) -> Spec:
    """Write an axis's numbers with the decimal sign of the language in force."""
    if in_force().decimal(".") == ".":
        return more
    label = more.get("labelExpr", "datum.label")
    return {**more, "labelExpr": with_decimal_sign(label)}


def with_decimal_sign(expression: str) -> str:
    """Give an expression of numbers in text so that it has the decimal sign in force.

    Marks between thousands go, for they are the decimal sign of others.
    """
    sign = in_force().decimal(".")
    if sign == ".":
        return expression
    return f"replace(replace({expression}, /,/g, ''), /[.]/g, '{sign}')"


def unnumbered(one: Spec) -> Spec:
    """Give an axis with its lines alone, for a view that stands above the numbers."""
    return {**one, "labels": False, "title": None}


def position(field_name: str, domain: Sequence[Any], axis_of_it: Spec | None, **scale: Any) -> Spec:  # noqa: ANN401
    """Give a position channel that shows just this domain."""
    return {
        "field": field_name,
        "type": "quantitative",
        "scale": {"domain": list(domain), "nice": False, "zero": False, **scale},
        "axis": axis_of_it,
    }


def circle_size(radius_px: float) -> float:
    """Give the size of a sign that is a circle: in charts that of the square about it."""
    return round((2.0 * radius_px) ** 2, 1)


def rimmed(text: Mapping[str, Any]) -> Spec:
    """Give a text mark that stands out from the lines below it by a white rim."""
    return {**text, "stroke": "white", "strokeWidth": 3.5, "strokeJoin": "round"}


def _channel(value: str | Mapping[str, Any]) -> Spec:
    """Write out "field:type"."""
    if not isinstance(value, str):
        return dict(value)
    name, _, kind = value.partition(":")
    return {"field": name, "type": _KINDS[kind]} if kind else {"field": name}


def cross_at_point() -> Layer:
    """Draw the cross of a point in the middle of a picture that is about it."""
    cross = {"type": "point", "shape": "M-1,0L1,0M0,-1L0,1", "size": 160, "filled": False}
    cross |= {"stroke": ink.INK, "strokeWidth": 2, "opacity": 1}
    return Layer(rows=[{"x": 0.0, "y": 0.0}], mark=cross)
