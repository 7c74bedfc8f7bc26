"""From a matched walk to the measurements of every leg and the spans of the recording."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from audit.leg_card import LegCard
from audit.matching.leg_match import CleanTrack, Match
from audit.matching.walk_layout import WalkLaidOut
from audit.measurement.bypasses import find_bypasses
from audit.measurement.claims import claims_at_bends, find_sight_bends
from audit.measurement.leg_measures import LegAudit, Span
from audit.measurement.measure_leg import measure_leg
from audit.measurement.receiver_noise import ReceiverNoise, measure_noise
from audit.measurement.spans import divide_walk
from audit.measurement.walk_of_leg import WalkOfLeg, walk_of_leg
from audit.settings import Settings


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkMeasures:
    """All legs measured, the recording divided, and the receiver's error that all rests on.

    ``match`` is the match with its claims put where the walker turned to a point in sight.
    """

    legs: tuple[LegAudit, ...]
    spans: tuple[Span, ...]
    noise: ReceiverNoise
    match: Match


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
    noise = measure_noise(clean, match.halts, settings.noise)
    settings = _fitted_to_noise(settings, noise)
    bends = find_sight_bends(clean, laid_out, match, card.legs, noise, settings.claim)
    match = claims_at_bends(match, bends)
    legs: list[LegAudit] = []
    bypasses: dict[int, list[tuple[float, float]]] = {}
    for leg_match, card_leg in zip(match.legs, card.legs, strict=True):
        measures = None
        if leg_match.status == "walked":
            walk = walk_of_leg(clean, laid_out, match, leg_match, noise.noise_m, settings.measuring)
            bypasses[leg_match.leg] = _bypass_times(walk, noise, settings)
            measures = measure_leg(
                clean, walk, card, card_leg, noise, settings, counted.get(card_leg.name)
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
    return WalkMeasures(legs=tuple(legs), spans=spans, noise=noise, match=match)


def _fitted_to_noise(settings: Settings, noise: ReceiverNoise) -> Settings:
    """Let what the halts showed, and what they left open, count in every figure."""
    heading, measuring = settings.heading, settings.measuring
    return replace(
        settings,
        heading=replace(
            heading, noise_log_sd=float(np.hypot(heading.noise_log_sd, noise.noise_log_sd))
        ),
        measuring=replace(measuring, noise_correlation_s=noise.correlation_s),
    )


def _bypass_times(
    walk: WalkOfLeg, noise: ReceiverNoise, settings: Settings
) -> list[tuple[float, float]]:
    chord = walk.position[-1] - walk.position[0]
    if float(np.hypot(*chord)) == 0.0:
        return []
    found = find_bypasses(walk.position, walk.chord_deg, noise.noise_m, settings.measuring)
    return [(float(walk.time_s[first]), float(walk.time_s[last])) for first, last in found]
