"""Every mistake of the catalogue on one leg, and why some are not made there."""

from __future__ import annotations

import numpy as np

from audit.diagnosis.cause import Cause
from audit.diagnosis.causes import CAUSES
from audit.leg_card import LegCard
from audit.rehearsal.expected_ways import expected_ways
from audit.rehearsal.paper_evidence import Heights, paper_evidence, paper_slope
from audit.rehearsal.records import Way
from audit.rehearsal.shaped_ways import shaped_ways
from audit.settings import Settings

_EXPECTED = frozenset({"turn", "length", "place"})
_WHY_NOT = {
    "slope-paced": "the leg is not steep enough, or its heights are not known",
    "sidehill": "its heights are not known",
    "gm-angle-stale": "the plan's angle is that of the day, or is worked out for it",
    "declination-for-gm-angle": "declination and angle are the same here, to the eye",
    "gm-angle-omitted": "the angle is too small to show",
    "gm-angle-reversed": "the angle is too small to show",
    "gm-angle-doubled": "the angle is too small to show",
    "wrong-point": "no other known point is near enough",
    "bezel-wrong-way": "the leg runs to magnetic north or south",
    "point-skipped": "no leg follows that begins at its point",
    "order-changed": "no leg follows that begins at its point",
    "neighbour-azimuth": "no other leg has another azimuth",
}
_STRAIGHT_ONLY = "the leg follows a line that is not straight"
_NOTHING = "it leads nowhere else on this leg"


def leg_ways(
    card: LegCard, number: int, heights: Heights | None, settings: Settings
) -> tuple[tuple[Way, ...], tuple[tuple[str, str], ...]]:
    """Give all ways of a leg in the order of the catalogue, and (cause, why not) of the rest."""
    leg = card.legs[number]
    slope = paper_slope(leg, heights, settings.rehearsal)
    evidence = paper_evidence(card, number, slope)
    drawn: dict[str, list[Way]] = {}
    for way in shaped_ways(card, number, settings.rehearsal):
        if float(np.hypot(*(way.line[-1] - leg.line[-1]))) >= 1.0 or way.cause == "order-changed":
            drawn.setdefault(way.cause, []).append(way)
    ways: list[Way] = []
    missing: list[tuple[str, str]] = []
    for cause in CAUSES:
        found = drawn.get(cause.name, [])
        if not found and cause.kind in _EXPECTED:
            found = list(expected_ways(cause, leg, evidence, settings.diagnosis))
        ways += found
        if not found:
            missing.append((cause.name, _why_not(cause, bent=evidence.bent)))
    return tuple(ways), tuple(missing)


def _why_not(cause: Cause, *, bent: bool) -> str:
    if cause.kind == "shape" and bent:
        return _STRAIGHT_ONLY
    return _WHY_NOT.get(cause.name, _NOTHING)
