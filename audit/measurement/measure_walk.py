"""From a matched walk to the measurements of every leg and the spans of the recording."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.leg_card import LegCard
from audit.matching.leg_match import CleanTrack, Match
from audit.matching.walk_layout import WalkLaidOut
from audit.measurement.bypasses import find_bypasses
from audit.measurement.leg_measures import LegAudit, Span
from audit.measurement.measure_leg import measure_leg
from audit.measurement.spans import divide_walk
from audit.measurement.walk_of_leg import WalkOfLeg, walk_of_leg
from audit.settings import Settings


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkMeasures:
    """All legs measured, and the recording divided."""

    legs: tuple[LegAudit, ...]
    spans: tuple[Span, ...]


def measure_walk(
    clean: CleanTrack,
    laid_out: WalkLaidOut,
    match: Match,
    card: LegCard,
    settings: Settings,
    *,
    counted_paces: dict[str, float] | None = None,
) -> WalkMeasures:
    """Measure every leg that was walked.

    ``counted_paces`` holds, by name of leg, the paces that the walker's log gives.
    """
    counted = counted_paces or {}
    legs: list[LegAudit] = []
    bypasses: dict[int, list[tuple[float, float]]] = {}
    for leg_match, card_leg in zip(match.legs, card.legs, strict=True):
        measures = None
        if leg_match.status == "walked":
            walk = walk_of_leg(clean, laid_out, match, leg_match, settings.measuring)
            bypasses[leg_match.leg] = _bypass_times(walk, match, settings)
            measures = measure_leg(
                clean, walk, card, card_leg, match, settings, counted.get(card_leg.name)
            )
        legs.append(
            LegAudit(
                card=card_leg,
                status=leg_match.status,
                confidence=leg_match.confidence,
                measures=measures,
            )
        )
    spans = divide_walk(clean, match, bypasses, settings.measuring)
    return WalkMeasures(legs=tuple(legs), spans=spans)


def _bypass_times(walk: WalkOfLeg, match: Match, settings: Settings) -> list[tuple[float, float]]:
    chord = walk.position[-1] - walk.position[0]
    if float(np.hypot(*chord)) == 0.0:
        return []
    found = find_bypasses(walk.position, walk.chord_deg, match.noise_m, settings.measuring)
    return [(float(walk.time_s[first]), float(walk.time_s[last])) for first, last in found]
