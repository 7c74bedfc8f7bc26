"""The strips of one leg over distance: offset from the planned line, height, speed.

Offset is seen from above with the walker going to the right: left of the line is up,
right of it down, as on the map.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from audit.debriefing.finished_debrief import Debrief
from audit.measurement.speed_and_direction import SpeedAndDirection
from audit.reports.chart_layers import Axes, Spec, position, stacked, unnumbered, view
from audit.reports.curve_strip import STRIP_GAP_PX, CurveFrame, curve_view
from audit.reports.length_axis import length_axis, side_label
from audit.reports.strip_frame import (
    HEIGHT_PX,
    SIDE_PX,
    WIDTH_PX,
    Strip,
    strip_of_leg,
)
from audit.reports.strip_layers import own_line, strip_layers
from audit.reports.strip_silences import silences, within_silences
from audit.units import FloatArray
from audit.words import in_force, say


def strip_specification(
    debrief: Debrief, leg: int, moved: SpeedAndDirection
) -> dict[str, Any] | None:
    """Give the Vega-Lite specification, or None for a leg that was not walked."""
    strip = strip_of_leg(debrief, leg)
    if strip is None:
        return None
    distances = _distances(strip)
    curves = _of_leg(debrief, strip, moved)
    axes = _axes(strip, unnumbered(distances) if curves else distances)
    views = [
        view(strip_layers(debrief, strip), axes, (WIDTH_PX, HEIGHT_PX), "strip", one_shape=True)
    ]
    along, silent_after = strip.curve[:, 0], [before for before, _ in silences(debrief, strip)]
    for number, (name, values) in enumerate(curves, start=1):
        below = distances if number == len(curves) else unnumbered(distances)
        frame = CurveFrame(
            shown=strip.along_m, width_px=WIDTH_PX, side_px=SIDE_PX, along_axis=below
        )
        views.append(curve_view(name, along, values, frame, silent_after))
    return stacked(views, STRIP_GAP_PX)


def strip_tolerance_m(debrief: Debrief, leg: int) -> float:
    """Give how closely the drawn curve keeps to the recording; 0 where none is drawn."""
    strip = strip_of_leg(debrief, leg)
    return 0.0 if strip is None else strip.within_m


def shows_own_line(debrief: Debrief, leg: int) -> bool:
    """Tell whether the strip of a leg has a line of its own beside the planned one."""
    card, measures = debrief.legs[leg].audit.card, debrief.legs[leg].audit.measures
    return measures is not None and bool(own_line(card, measures, debrief.quality.noise_m))


def _of_leg(
    debrief: Debrief, strip: Strip, moved: SpeedAndDirection
) -> list[tuple[str, FloatArray]]:
    """Give height and speed at the places of the curve, where the recording has them."""
    passed_s, time_s = strip.measures.curve_time_s, debrief.clean.time_s
    unseen = within_silences(debrief, strip)
    columns = {"height": debrief.clean.elevation_m, "speed": moved.speed_m_s}
    curves = {
        name: np.where(unseen, np.nan, np.interp(passed_s, time_s, values))
        for name, values in columns.items()
    }
    return [(name, values) for name, values in curves.items() if np.isfinite(values).sum() > 1]


def _distances(strip: Strip) -> Spec:
    """Give the axis below the lowest strip."""
    title = say("picture-along", unit=in_force().units.length)
    signed = "(datum.value < 0 ? '−' : '') + size"
    return length_axis(strip.along_m, 5, signed, title=title)


def _axes(strip: Strip, distances: Spec) -> Axes:
    across = length_axis(
        strip.side_m, 4, side_label(), title=None, minExtent=SIDE_PX, maxExtent=SIDE_PX
    )
    # Reversed, so that right of the line lies on the walker's right hand.
    return (
        position("x", strip.along_m, distances),
        position("y", strip.side_m, across, reverse=True),
    )
