"""The rehearsal for people: short text for a terminal, and the page."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Any

import numpy as np

from audit.geodesy.areas_on_grid import GroundAreas
from audit.leg_card.leg_pieces import walked_m
from audit.rehearsal.finished_rehearsal import LegRehearsal, Rehearsal
from audit.reports import digits, rehearsal_words
from audit.reports.cause_words import cause_words
from audit.reports.figure_ground import GroundSketch, Sign, ground_frame, ground_specification
from audit.reports.ground_key import ground_key
from audit.reports.picture import draw
from audit.reports.printable import printable
from audit.reports.still_page import render_still_page
from audit.units import FloatArray
from audit.words import say

_FAR_LEGS, _CLOSE_LEGS = 1.0, 0.3
"""Ends nearer the point than this share of the leg are drawn: on the first picture, and close."""


def render_rehearsal(rehearsal: Rehearsal, first: Sequence[str] = ()) -> str:
    """Give plain text that ends with a line feed; ``first`` are sentences on the plan."""
    lines = [*first, rehearsal.card.name, *_head(rehearsal)]
    planned = rehearsal_words.planned_sentences(rehearsal)
    if planned:
        lines += ["", say("rehearse-planned"), *(f"  {words}" for words in planned)]
    for leg in rehearsal.legs:
        lines += ["", _title(leg)]
        lines += [f"  {words}" for words in _told(leg)]
    return "\n".join(printable(line) for line in lines) + "\n"


def render_rehearsal_html(
    rehearsal: Rehearsal, areas: GroundAreas, first: Sequence[str] = ()
) -> str:
    """Give the page, whole without a network, without scripts and on paper."""
    return render_still_page(
        "rehearsal.html.j2",
        course=rehearsal.card.name,
        first=first,
        head=_head(rehearsal),
        planned=rehearsal_words.planned_sentences(rehearsal),
        dangers=_of_all_legs(rehearsal, rehearsal_words.danger_sentences),
        nears=_of_all_legs(rehearsal, rehearsal_words.near_sentences),
        areas_given=areas.bounds is not None or bool(areas.no_go or areas.hazards),
        beside=rehearsal.beside,
        notes=rehearsal.notes,
        legs=[_section(leg, rehearsal, areas) for leg in rehearsal.legs],
    )


def _of_all_legs(rehearsal: Rehearsal, sentences: Callable[[LegRehearsal], list[str]]) -> list[str]:
    return [words for leg in rehearsal.legs for words in sentences(leg)]


def _head(rehearsal: Rehearsal) -> list[str]:
    ways = sum(len(leg.ends) for leg in rehearsal.legs)
    resolution = digits.stated_metres(rehearsal.resolution_m)
    return [
        say("rehearse-simulated", ways=str(ways), legs=len(rehearsal.legs)),
        say("rehearse-resolution", resolution=resolution),
    ]


def _title(leg: LegRehearsal) -> str:
    """Name the leg; on one along via positions the straight azimuth is not what is walked."""
    return say(
        "rehearse-leg" if len(leg.leg.line) == 2 else "rehearse-leg-via",
        leg=leg.leg.name,
        start=leg.leg.start.name,
        end=leg.leg.end.name,
        azimuth=digits.card_azimuth(leg.leg.azimuth.degrees),
        length=digits.stated_metres(walked_m(leg.leg)),
    )


def _told(leg: LegRehearsal) -> list[str]:
    """Give what the terminal tells of a leg."""
    count = rehearsal_words.alike_count(leg)
    words = [*rehearsal_words.danger_sentences(leg), *rehearsal_words.near_sentences(leg)]
    words.append(say("rehearse-alike-short", count=count))
    words += rehearsal_words.proposal_sentences(leg)
    if leg.no_change:
        words.append(say("rehearse-no-change", why=leg.no_change))
    return words


def _section(leg: LegRehearsal, rehearsal: Rehearsal, areas: GroundAreas) -> dict[str, Any]:
    rows = rehearsal_words.way_rows(leg)
    title = _title(leg)
    number = rehearsal.legs.index(leg) + 1
    pictures = []
    whole, close = (
        _sketch(leg, rows, rehearsal, areas, share) for share in (_FAR_LEGS, _CLOSE_LEGS)
    )
    whole = replace(whole, window=ground_frame(close))
    about = say("rehearse-at-point")
    for kind, sketch, words in (("whole", whole, title), ("close", close, about)):
        said = say("rehearse-picture-said", count=str(len(sketch.ends)))
        drawn = draw(ground_specification(sketch), f"leg-{number}-{kind}", words, said)
        pictures.append(drawn.svg)
    return {
        "title": title,
        "pictures": pictures,
        "signs": ground_key(whole, close),
        "rows": rows,
        "hidden": rehearsal_words.hidden_words(leg, rehearsal.settings.hidden),
        "alike": rehearsal_words.alike_sentences(leg, rehearsal.settings.most_told_pairs),
        "alike_count": rehearsal_words.alike_count(leg),
        "proposals": rehearsal_words.proposal_sentences(leg),
        "no_change": leg.no_change,
        "not_here": [
            say("rehearse-not-here-one", cause=cause_words(cause), why=why)
            for cause, why in leg.not_here
        ],
    }


def _sketch(
    leg: LegRehearsal,
    rows: list[rehearsal_words.WayRow],
    rehearsal: Rehearsal,
    areas: GroundAreas,
    share: float,
) -> GroundSketch:
    """Draw the ends that lie no further from the point than a share of the leg."""
    end = np.array([leg.leg.end.east_m, leg.leg.end.north_m])
    reach_m = share * leg.leg.distance_m
    near = [row for row in rows if np.hypot(row.end.east_m - end[0], row.end.north_m - end[1])
            <= reach_m]  # fmt: skip
    lines: list[tuple[str, FloatArray]] = [("wrong", np.asarray(row.end.way.line)) for row in near]
    for other in rehearsal.card.legs:
        kind = "planned" if other is leg.leg else "other"
        lines.append((kind, np.asarray(other.line)))
    lines.append(("ellipse", _outline(leg, end)))
    whole = share >= _FAR_LEGS
    shown = np.asarray(leg.leg.line) if whole else end + reach_m * _CORNERS / 3.0
    points = [point for point in rehearsal.card.points if _inside(point, near, shown)]
    return GroundSketch(
        points=tuple(Sign(text=p.name, east_m=p.east_m, north_m=p.north_m) for p in points),
        lines=tuple(lines),
        ends=tuple(
            Sign(text=row.sign, east_m=row.end.east_m, north_m=row.end.north_m) for row in near
        ),
        areas=areas,
        radius_m=rehearsal.card.arrival_radius_m,
        shown=shown,
    )


def _inside(point: Any, near: list[rehearsal_words.WayRow], shown: FloatArray) -> bool:  # noqa: ANN401
    """Say whether a point lies in the ground that the leg and its ends take up."""
    corners = np.vstack([shown, *([row.end.east_m, row.end.north_m] for row in near)])
    low, high = corners.min(axis=0), corners.max(axis=0)
    return bool(low[0] <= point.east_m <= high[0] and low[1] <= point.north_m <= high[1])


_CORNERS = np.array([[-1.0, -1.0], [1.0, 1.0]])


def _outline(leg: LegRehearsal, end: FloatArray) -> FloatArray:
    """Give the outline of the ellipse that holds 95 of 100 ordinary walks."""
    return leg.forecast.far_outline() + end
