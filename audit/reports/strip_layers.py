"""What is drawn on a cross-track strip: noise band, lines, walk, point, halts, claim.

Nothing but thin dashes where the recorder was silent.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Any

import numpy as np

from audit.debriefing.finished_debrief import Debrief
from audit.leg_card import CardLeg
from audit.measurement.leg_measures import LegMeasures
from audit.measurement.lines_of_leg import line_direction
from audit.reports import ink, wording
from audit.reports.chart_layers import Layer, in_parts, rimmed
from audit.reports.cursor_layers import cursor_layers
from audit.reports.display_lines import thinned
from audit.reports.map_layers import claim_signs, letter_sign
from audit.reports.strip_frame import Strip
from audit.reports.strip_silences import seen_parts, silences
from audit.words import say

_TEXT = {"type": "text", "fontSize": ink.LABEL_PX, "fill": ink.INK}


def strip_layers(debrief: Debrief, strip: Strip) -> list[Layer]:
    """Give all layers of a strip, from the lowest to the uppermost."""
    return [
        *_noise_band(debrief, strip),
        *_planned_and_own_lines(strip),
        *_curve(debrief, strip),
        *_point(strip),
        *_halts(debrief, strip),
        *_claim(strip),
        *cursor_layers(),
    ]


def own_line(card: CardLeg, measures: LegMeasures, noise_m: float) -> list[tuple[float, float]]:
    """Give both ends of the planned azimuth drawn from where the walker really began.

    Nothing where it lies within the receiver's noise of the planned line.
    """
    planned, own = measures.cross_track, measures.own_cross_track
    if len(planned.offset_m) != len(own.offset_m):
        return []
    apart = planned.offset_m - own.offset_m
    ends = [(float(planned.along_m[i]), float(apart[i])) for i in (0, -1)]
    if len(card.line) == 2:  # a card of its own mind turns it off the line between the points
        turn = math.radians(line_direction(card).turn_to(card.azimuth))
        far_m, (along_m, aside_m) = float(own.along_m[-1]), ends[0]
        ends[1] = (along_m + far_m * math.cos(turn), aside_m + far_m * math.sin(turn))
    return ends if max(abs(offset) for _, offset in ends) > noise_m else []


def _noise_band(debrief: Debrief, strip: Strip) -> list[Layer]:
    """Shade the standard deviation of the receiver to either side of what was seen."""
    # A closed line with a filling, since a walk may double back where an area may not.
    noise = np.array([0.0, strip.noise_m])
    curves = (thinned(part, strip.within_m) for part in seen_parts(debrief, strip))
    bands = (np.vstack([curve + noise, curve[::-1] - noise]) for curve in curves)
    mark: dict[str, Any] = {"type": "line", "interpolate": "linear-closed", "strokeWidth": 0}
    mark |= {"fill": ink.PALE_BLUE, "opacity": 1}
    return [Layer(rows=in_parts(_rows(band.tolist()) for band in bands), mark=mark)]


def _planned_and_own_lines(strip: Strip) -> list[Layer]:
    """Draw the planned line at 0, and the own line where it can be told from it."""
    planned = {"type": "line", "stroke": ink.INK, "strokeWidth": 1.5}
    planned["strokeDash"] = ink.PLANNED_DASH
    own = {"type": "line", "stroke": ink.GREY, "strokeWidth": 1.8}
    own["strokeDash"] = ink.OWN_LINE_DASH
    line = [(0.0, 0.0), (strip.line_m, 0.0)]
    return [
        Layer(rows=_rows(line), mark=planned),
        Layer(rows=_rows(own_line(strip.card, strip.measures, strip.noise_m)), mark=own),
    ]


def _curve(debrief: Debrief, strip: Strip) -> list[Layer]:
    """Draw the walk itself, broken where the recording is silent."""
    walked = (thinned(part, strip.within_m) for part in seen_parts(debrief, strip))
    silent = (strip.curve[list(ends)] for ends in silences(debrief, strip))
    line = {"type": "line", "stroke": ink.BLUE, "strokeWidth": 2.4, "strokeJoin": "round"}
    gap = {"type": "line", "stroke": ink.GREY, "strokeWidth": 1.6, "strokeDash": ink.GAP_DASH}
    return [
        Layer(rows=in_parts(_rows(part.tolist()) for part in parts), mark=mark)
        for parts, mark in ((walked, line), (silent, gap))
    ]


def _point(strip: Strip) -> list[Layer]:
    """Draw the planned point, with the arrival radius to either side of it."""
    at = strip.line_m
    reach = {"x": at, "y": -strip.radius_m, "y2": strip.radius_m}
    bar = {"type": "rule", "stroke": ink.INK, "strokeWidth": 1}
    cross = {"type": "point", "shape": "M-1,0L1,0M0,-1L0,1", "size": 110, "filled": False}
    cross |= {"stroke": ink.INK, "strokeWidth": 2, "opacity": 1}
    return [
        Layer(rows=[reach], mark=bar, channels={"y2": "y2"}),
        Layer(rows=[{"x": at, "y": 0.0}], mark=cross),
    ]


def _halts(debrief: Debrief, strip: Strip) -> list[Layer]:
    rows = []
    for first, last, kind in _spans(debrief, strip):
        if kind == "halt":
            along, offset = strip.curve[(first + last) // 2].tolist()
            rows.append({"x": along, "y": offset, "t": "H"})
    return letter_sign(rows, "square")


def _claim(strip: Strip) -> list[Layer]:
    along, offset = strip.curve[-1].tolist()
    _, reckoned = strip.measures.ends_reckoned
    words = wording.offset(strip.measures.cross_track.end_m, strip.measures.miss_sd_m)
    if reckoned:
        words = say("picture-reckoned", said=words)
    label = {**_TEXT, "fill": ink.ORANGE, "fontWeight": "bold", "align": "right", "dx": -12}
    label["dy"] = {"expr": "datum.dy"}
    place = [{"x": along, "y": offset, "t": words, "dy": -12 if offset <= 0.0 else 14}]
    channels = {"text": "t:N"}
    return [
        *claim_signs(place, [reckoned]),
        Layer(rows=place, mark=rimmed(label), channels=channels),
    ]


def _spans(debrief: Debrief, strip: Strip) -> Iterator[tuple[int, int, str]]:
    """Give (first, last, kind) of the leg's spans up to the claim, as places of the curve."""
    passed_s = strip.measures.curve_time_s
    for span in debrief.spans:
        if span.leg == strip.leg and span.start_s < passed_s[-1]:
            first, last = np.searchsorted(passed_s, [span.start_s, span.end_s])
            yield int(first), min(int(last), len(passed_s) - 1), span.kind


def _rows(points: list[tuple[float, float]]) -> list[dict[str, Any]]:
    return [{"x": round(x, 1), "y": round(y, 2)} for x, y in points]
