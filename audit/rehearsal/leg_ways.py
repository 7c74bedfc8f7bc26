"""Every mistake of the catalogue on one leg, and why some are not made there."""

from __future__ import annotations

import numpy as np

from audit.diagnosis.cause import Cause
from audit.diagnosis.causes import CAUSES
from audit.leg_card import LegCard
from audit.leg_card.leg_pieces import leg_pieces
from audit.rehearsal.expected_ways import expected_ways
from audit.rehearsal.finished_rehearsal import Way
from audit.rehearsal.paper_evidence import Heights, paper_evidence, paper_slope
from audit.rehearsal.shaped_ways import shaped_ways
from audit.settings import Settings
from audit.words import sentence

_EXPECTED = frozenset({"turn", "length", "place"})
_WHY_NOT = {
    "slope-paced": sentence("rehearse-not-steep"),
    "sidehill": sentence("rehearse-no-heights"),
    "gm-angle-stale": sentence("rehearse-angle-of-day"),
    "declination-for-gm-angle": sentence("rehearse-angles-alike"),
    "gm-angle-omitted": sentence("rehearse-small-angle"),
    "gm-angle-reversed": sentence("rehearse-small-angle"),
    "gm-angle-doubled": sentence("rehearse-small-angle"),
    "wrong-point": sentence("rehearse-no-other-point"),
    "bezel-wrong-way": sentence("rehearse-due-north"),
    "point-skipped": sentence("rehearse-none-follows"),
    "order-changed": sentence("rehearse-none-follows"),
    "neighbour-azimuth": sentence("rehearse-no-other-azimuth"),
}
_STRAIGHT_ONLY = sentence("rehearse-not-straight")
_NOTHING = sentence("rehearse-nowhere-else")


def leg_ways(
    card: LegCard, number: int, heights: Heights | None, settings: Settings
) -> tuple[tuple[Way, ...], tuple[tuple[str, str], ...]]:
    """Give all ways of a leg in the order of the catalogue, and (cause, why not) of the rest."""
    leg = card.legs[number]
    slope = paper_slope(leg, heights, settings)
    evidence = paper_evidence(card, number, slope, settings.diagnosis)
    pieces = leg_pieces(leg, card.angles, None)
    drawn: dict[str, list[Way]] = {}
    for way in shaped_ways(card, number, settings.rehearsal):
        if float(np.hypot(*(way.line[-1] - leg.line[-1]))) >= 1.0 or way.cause == "order-changed":
            drawn.setdefault(way.cause, []).append(way)
    ways: list[Way] = []
    missing: list[tuple[str, str]] = []
    for cause in CAUSES:
        found = drawn.get(cause.name, [])
        if not found and cause.kind in _EXPECTED:
            found = list(expected_ways(cause, leg, pieces, evidence, settings.diagnosis))
        ways += found
        if not found:
            missing.append((cause.name, _why_not(cause, bent=evidence.bent)))
    return tuple(ways), tuple(missing)


def _why_not(cause: Cause, *, bent: bool) -> str:
    if cause.kind == "shape" and bent:
        return _STRAIGHT_ONLY
    return _WHY_NOT.get(cause.name, _NOTHING)
