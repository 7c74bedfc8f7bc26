"""What is drawn on the map: lines, points with their circles, halts, searches, claims."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np

from audit.debriefing.finished_debrief import Debrief
from audit.measurement.leg_measures import Span
from audit.reports import ink
from audit.reports.chart_layers import Layer, in_parts
from audit.reports.display_lines import DisplayLine
from audit.reports.map_frame import MapFrame
from audit.units import FloatArray

_LETTER_ROOM_PX = 13.0
"""Letters and claims keep this far from each other."""

HEXAGON = "M-1,0L-0.5,-0.87L0.5,-0.87L1,0L0.5,0.87L-0.5,0.87Z"

_STROKES: dict[str, dict[str, Any]] = {
    "planned": {"stroke": ink.INK, "strokeWidth": 1.5, "strokeDash": ink.PLANNED_DASH},
    "other": {"stroke": ink.GREY, "strokeWidth": 1.2},
    "gap": {"stroke": ink.GREY, "strokeWidth": 1.6, "strokeDash": ink.GAP_DASH},
    "walked": {"stroke": ink.BLUE, "strokeWidth": 2.4},
    "search": {
        "stroke": ink.BLUE,
        "strokeWidth": 2.4,
        "strokeDash": ink.SEARCH_DASH,
        "strokeCap": "round",
    },
    "bypass": {"stroke": ink.BLUE, "strokeWidth": 2.4, "strokeDash": ink.BYPASS_DASH},
    "miss": {"stroke": ink.ORANGE, "strokeWidth": 3},
}


def line_layers(lines: Sequence[DisplayLine]) -> list[Layer]:
    """Give one layer a kind of line."""
    return [
        Layer(
            rows=in_parts(
                [_at(*point) for point in line.points.tolist()]
                for line in lines
                if line.kind == kind
            ),
            mark={"type": "line", "clip": True, "strokeJoin": "round", **stroke},
        )
        for kind, stroke in _STROKES.items()
    ]


def point_params(debrief: Debrief) -> list[dict[str, Any]]:
    """Give what the points need: how large their circles are."""
    return [{"name": "radius_m", "value": debrief.card.arrival_radius_m}]


def point_layers(debrief: Debrief) -> list[Layer]:
    """Draw each point as a cross inside its arrival circle, which is true to scale."""
    rows = [_at(point.east_m, point.north_m) for point in debrief.points]
    line = {"type": "point", "filled": False, "stroke": ink.INK, "opacity": 1, "clip": True}
    # The size of a sign is that of the square about it, for a circle too.
    size = {"expr": "pow(2 * radius_m / metres_per_px, 2)"}
    circle = {**line, "shape": "circle", "size": size, "strokeWidth": 1}
    cross = {**line, "shape": "M-1,0L1,0M0,-1L0,1", "size": 110, "strokeWidth": 2}
    return [Layer(rows=rows, mark=circle), Layer(rows=rows, mark=cross)]


def letter_layers(debrief: Debrief, frame: MapFrame) -> list[Layer]:
    """Draw S in a circle, B in a hexagon and H in a square, where ``letters`` has room."""
    shapes = {"S": "circle", "B": HEXAGON, "H": "square"}
    return [
        layer
        for letter, rows in letters(debrief, frame).items()
        for layer in letter_sign(rows, shapes[letter])
    ]


def letters(debrief: Debrief, frame: MapFrame) -> dict[str, list[dict[str, Any]]]:
    """Give the places of S on each leg's longest search, of B on bypasses, of H on halts.

    A letter that would cover a claim, a point or another letter is left out.
    """
    taken = [np.array([point.east_m, point.north_m]) for point in debrief.points]
    taken += list(_claims(debrief))
    placed: dict[str, list[dict[str, Any]]] = {}
    for letter, spans in (
        ("S", _longest_searches(debrief)),
        ("B", _longest_first(debrief, "bypass")),
        ("H", _longest_first(debrief, "halt")),
    ):
        rows = placed.setdefault(letter, [])
        for span in spans:
            middle = (span.first + span.last) // 2
            where = np.array([debrief.clean.east_m[middle], debrief.clean.north_m[middle]])
            room_px = [np.hypot(*(where - other)) / frame.metres_per_pixel for other in taken]
            if min(room_px, default=np.inf) >= _LETTER_ROOM_PX:
                taken.append(where)
                rows.append({**_at(*where), "t": letter})
    return placed


def signs_of_map(debrief: Debrief, frame: MapFrame) -> FloatArray:
    """Give the places of all claims and letters, shape (n, 2)."""
    rows = (row for placed in letters(debrief, frame).values() for row in placed)
    lettered = [[row["x"], row["y"]] for row in rows]
    return np.vstack([_claims(debrief), np.array(lettered).reshape(-1, 2)])


def _claims(debrief: Debrief) -> FloatArray:
    claims = [leg.audit.measures.claim for leg in debrief.legs if leg.audit.measures is not None]
    return np.array([[claim.east_m, claim.north_m] for claim in claims]).reshape(-1, 2)


def _longest_searches(debrief: Debrief) -> list[Span]:
    """Give the longest stretch of search of each leg, which halts break into several."""
    longest: dict[int | None, Span] = {}
    for span in debrief.spans:
        known = longest.get(span.leg)
        if span.kind == "search" and (
            known is None or span.last - span.first > known.last - known.first
        ):
            longest[span.leg] = span
    return list(longest.values())


def _longest_first(debrief: Debrief, kind: str) -> list[Span]:
    return sorted(
        (span for span in debrief.spans if span.kind == kind),
        key=lambda span: span.first - span.last,
    )


def letter_sign(rows: Sequence[dict[str, Any]], shape: str) -> list[Layer]:
    """Give a white sign of a shape with the letter ``t`` of each row in it."""
    sign = {"type": "point", "shape": shape, "size": 150, "fill": "white", "opacity": 1}
    sign |= {"stroke": ink.BLUE, "strokeWidth": 1.3, "clip": True}
    text = {"type": "text", "fontSize": 9, "fontWeight": "bold", "fill": ink.BLUE, "clip": True}
    return [Layer(rows=rows, mark=sign), Layer(rows=rows, mark=text, channels={"text": "t:N"})]


def claim_layers(debrief: Debrief) -> list[Layer]:
    """Draw a diamond where the walker's own navigation on a leg ended."""
    return claim_signs(
        [_at(*claim) for claim in _claims(debrief).tolist()], claims_reckoned(debrief)
    )


def claims_reckoned(debrief: Debrief) -> list[bool]:
    """Tell of each leg that was walked whether its claim was reckoned and not seen."""
    walked = (leg.audit.measures for leg in debrief.legs)
    return [measures.ends_reckoned[1] for measures in walked if measures is not None]


def claim_signs(
    rows: Sequence[dict[str, Any]], reckoned_ones: Sequence[bool] = (), size: int = 150
) -> list[Layer]:
    """Give the diamond of a claim at the place of each row: hollow where it was reckoned."""
    told = [*reckoned_ones, *[False] * (len(rows) - len(reckoned_ones))]
    mark = {"type": "point", "shape": "diamond", "size": size, "opacity": 1, "clip": True}
    seen = {"fill": ink.ORANGE, "stroke": "white", "strokeWidth": 1.2}
    hollow = {"fill": "white", "stroke": ink.ORANGE, "strokeWidth": 2}
    return [
        Layer(
            rows=[row for row, one in zip(rows, told, strict=True) if one is kind],
            mark={**mark, **paint},
        )
        for kind, paint in ((False, seen), (True, hollow))
    ]


def _at(east_m: float, north_m: float) -> dict[str, Any]:
    """Give a place to a tenth of a metre, finer than any drawing shows."""
    return {"x": round(float(east_m), 1), "y": round(float(north_m), 1)}
