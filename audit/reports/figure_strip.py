"""The cross-track strip of one leg: offset from the planned line against distance along it.

Seen from above with the walker going to the right: left of the line is up, right of it
down, as on the map.
"""

from __future__ import annotations

from typing import Any

from audit.debriefing.records import Debrief
from audit.reports import ink
from audit.reports.chart_layers import specification
from audit.reports.strip_frame import HEIGHT_PX, WIDTH_PX, Strip, strip_of_leg
from audit.reports.strip_layers import own_line, strip_layers


def strip_specification(debrief: Debrief, leg: int) -> dict[str, Any] | None:
    """Give the Vega-Lite specification, or None for a leg that was not walked."""
    strip = strip_of_leg(debrief, leg)
    if strip is None:
        return None
    return specification(strip_layers(debrief, strip), _axes(strip), WIDTH_PX, HEIGHT_PX)


def strip_tolerance_m(debrief: Debrief, leg: int) -> float:
    """Give how closely the drawn curve keeps to the recording; 0 where none is drawn."""
    strip = strip_of_leg(debrief, leg)
    return 0.0 if strip is None else strip.within_m


def shows_own_line(debrief: Debrief, leg: int) -> bool:
    """Tell whether the strip of a leg has a line of its own beside the planned one."""
    measures = debrief.legs[leg].audit.measures
    return measures is not None and bool(own_line(measures, debrief.quality.noise_m))


def _axes(strip: Strip) -> tuple[Any, Any]:
    import altair as alt  # noqa: PLC0415

    style: dict[str, Any] = {
        "gridColor": ink.GRID_LINE,
        "domain": False,
        "ticks": False,
        "labelFontSize": ink.LABEL_PX,
        "labelColor": ink.INK,
        "titleFontSize": ink.LABEL_PX,
        "titleFontWeight": "normal",
        "titleColor": ink.INK,
    }
    along = alt.Axis(title="metres along the planned line", tickCount=6, **style)
    sides = "datum.value === 0 ? '0' : format(abs(datum.value), 'd') + ' m'"
    across = alt.Axis(title=None, tickCount=5, labelExpr=sides, **style)
    x_scale = alt.Scale(domain=list(strip.along_m), nice=False, zero=False)
    # Reversed, so that right of the line lies on the walker's right hand.
    y_scale = alt.Scale(domain=list(strip.side_m), nice=False, zero=False, reverse=True)
    return alt.X("x:Q", scale=x_scale, axis=along), alt.Y("y:Q", scale=y_scale, axis=across)
