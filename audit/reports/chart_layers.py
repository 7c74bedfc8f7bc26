"""A picture as a stack of layers, put together into one chart specification."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from audit.reports import ink


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
    """

    rows: Sequence[Mapping[str, Any]]
    mark: Mapping[str, Any]
    channels: Mapping[str, str | Mapping[str, Any]] = field(default_factory=dict)


def as_given(name: str, kind: str) -> dict[str, Any]:
    """Give a channel that takes its values from the rows as they stand, without a scale."""
    return {"field": name, "type": kind, "scale": None}


def specification(
    layers: Sequence[Layer],
    axes: tuple[Any, Any],
    width_px: float,
    height_px: float,
) -> dict[str, Any]:
    """Give the Vega-Lite specification of all layers over each other on common axes.

    ``axes`` are the x and y channels of Altair; layers with nothing to draw are left out. The
    rows go in as named data sets after Altair is done, since it copies what it is given.
    """
    import altair as alt  # noqa: PLC0415
    from altair.utils.schemapi import debug_mode  # noqa: PLC0415

    makers = {
        "order": alt.Order,
        "detail": alt.Detail,
        "text": alt.Text,
        "x2": alt.X2,
        "y2": alt.Y2,
        "fill": alt.Fill,
        "angle": alt.Angle,
    }
    charts, datasets = [], {}
    with debug_mode(arg=False):  # the tests hold the finished charts against the schema
        for number, layer in enumerate(one for one in layers if one.rows):
            name = f"layer{number}"
            datasets[name] = list(layer.rows)
            channels = {
                key: makers[key](value) if isinstance(value, str) else makers[key](**value)
                for key, value in layer.channels.items()
            }
            chart = alt.Chart(alt.NamedData(name=name), mark=alt.MarkDef(**layer.mark))
            charts.append(chart.encode(**channels))
        # All in one call: each further one would copy the whole chart anew.
        whole = alt.layer(
            *charts,
            encoding=alt.SharedEncoding(x=axes[0], y=axes[1]),
            width=width_px,
            height=height_px,
            background="transparent",
            config=alt.Config(
                font=ink.FONT, aria=False, padding=2, view=alt.ViewConfig(stroke=None)
            ),
        )
    made: dict[str, Any] = whole.to_dict(validate=False)
    made["datasets"] = datasets
    return made
