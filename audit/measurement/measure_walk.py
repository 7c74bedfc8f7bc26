"""From a matched walk to the measurements of every leg and the spans of the recording."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from audit.leg_card import CardLeg, LegCard
from audit.leg_card.pace_kind import pace_unit
from audit.matching.leg_match import CleanTrack, LegMatch, Match
from audit.matching.walk_layout import SampledWalk
from audit.measurement.before_recording import legs_before_recording
from audit.measurement.bypasses import describe_bypass, find_bypasses
from audit.measurement.claims import claims_at_bends, find_sight_bends
from audit.measurement.ground_walked import judge_elevation
from audit.measurement.leg_details import Bypass
from audit.measurement.leg_measures import LegAudit, LegMeasures, Span
from audit.measurement.measure_details import measure_details
from audit.measurement.measure_leg import measure_leg
from audit.measurement.nearest_approach import nearest_approach
from audit.measurement.paces_of_walk import WalkPaces, read_cadence, walk_paces
from audit.measurement.receiver_noise import ReceiverNoise, measure_noise
from audit.measurement.search_ends import with_search_ends
from audit.measurement.slants import find_slants
from audit.measurement.spans import divide_walk
from audit.measurement.straight_walking import StraightStretch, straight_stretches, wander_of
from audit.measurement.walk_context import WalkContext
from audit.measurement.walk_of_leg import WalkOfLeg, walk_of_leg, with_corners
from audit.measurement.ways_aside import find_ways_aside, without_half_seen
from audit.settings import Settings
from audit.statistics.walking_noise import Wander
from audit.units import FloatArray
from audit.walkers_log import WalkersLog


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkMeasures:
    """All legs measured, the recording divided, and what all of it rests on.

    Attributes
    ----------
    match : Match
        With its claims put where the walker turned to a point in sight, and the ends of
        searches where measuring found them.
    paces : WalkPaces
        Pace counts of the course as a whole.
    """

    legs: tuple[LegAudit, ...]
    spans: tuple[Span, ...]
    noise: ReceiverNoise
    match: Match
    paces: WalkPaces


def measure_walk(
    clean: CleanTrack,
    sampled: SampledWalk,
    match: Match,
    card: LegCard,
    settings: Settings,
    *,
    log: WalkersLog | None = None,
    cadence_per_min: FloatArray | None = None,
) -> WalkMeasures:
    """Measure every leg that was walked.

    ``cadence_per_min`` holds the cadence at each fix of ``clean``, shape (n,).
    """
    noted = log or WalkersLog(entries=())
    context = _context(clean, sampled, match, card, settings, cadence_per_min, noted)
    legs: list[LegAudit] = []
    bypasses: dict[int, list[tuple[float, float]]] = {}
    before = legs_before_recording(clean, context.match, card, settings.diagnosis)
    whole_s = float(clean.time_s[0]), float(clean.time_s[-1])
    for portion, card_leg in zip(context.match.legs, card.legs, strict=True):
        measures = passed = None
        if portion.status != "walked":
            end = np.array([card_leg.end.east_m, card_leg.end.north_m])
            passed = nearest_approach(clean, whole_s, end)
        else:
            measures, found = _measure(context, portion, card_leg)
            bypasses[portion.leg] = [(bypass.start_s, bypass.end_s) for bypass in found]
        legs.append(
            LegAudit(
                card=card_leg,
                status=portion.status,
                confidence=portion.confidence,
                measures=measures,
                before_recording=portion.leg in before and portion.status == "skipped",
                passed=passed,
            )
        )
    return WalkMeasures(
        legs=tuple(legs),
        spans=divide_walk(clean, context.match, bypasses, settings.measuring),
        noise=context.noise,
        match=context.match,
        paces=_walk_paces(context, legs),
    )


def _context(
    clean: CleanTrack,
    sampled: SampledWalk,
    match: Match,
    card: LegCard,
    settings: Settings,
    cadence_per_min: FloatArray | None,
    log: WalkersLog,
) -> WalkContext:
    """Look at the recording as a whole: its noise, claims, searches, elevations, cadence."""
    noise = measure_noise(
        clean, match.halts, settings.noise, _straight_walking(clean, match, settings)
    )
    settings = _fitted_to_noise(settings, noise)
    bends = find_sight_bends(clean, sampled, match, card.legs, noise, settings.claim)
    match = with_search_ends(clean, claims_at_bends(match, bends), card, settings)
    unit = pace_unit(card.paces_per_100m, settings.paces)
    return WalkContext(
        clean=clean,
        sampled=sampled,
        match=match,
        card=card,
        noise=noise,
        bends=bends,
        elevation=judge_elevation(clean, match.halts, settings.ground),
        cadence=read_cadence(cadence_per_min, unit, settings.paces) if clean.timed else None,
        counted_paces=log.counted_paces(),
        azimuths_set=log.azimuths_set(),
        settings=settings,
    )


def _measure(
    context: WalkContext, portion: LegMatch, card_leg: CardLeg
) -> tuple[LegMeasures, tuple[Bypass, ...]]:
    settings = context.settings
    walk = walk_of_leg(
        context.clean,
        context.sampled,
        context.match,
        portion,
        context.noise.noise_m,
        context.bends.get(portion.leg),
        settings,
    )
    bypasses = _bypasses(context, walk)
    walk = with_corners(walk, bypasses)
    measures = measure_leg(context, walk, card_leg, bypasses)
    details = measure_details(context, walk, card_leg, portion, measures, bypasses)
    return replace(measures, details=details, under_way=portion.under_way), bypasses


def _bypasses(context: WalkContext, walk: WalkOfLeg) -> tuple[Bypass, ...]:
    noise, settings = context.noise, context.settings
    chord = walk.position[-1] - walk.position[0]
    if float(np.hypot(*chord)) == 0.0:
        return ()
    found = find_bypasses(walk.position, walk.chord_deg, noise.noise_m, settings.measuring)
    boxes = [
        describe_bypass(
            walk.time_s,
            walk.position,
            walk.chord_deg,
            ends,
            noise.noise_m,
            noise.correlation_s,
            settings.measuring,
        )
        for ends in found
    ]
    aside = find_ways_aside(walk.time_s, walk.position, noise.noise_m, found, settings.aside)
    across = [*boxes, *aside]
    halts = context.match.halts
    slants = find_slants(context.clean, walk, halts, noise, across, settings.slants)
    silences = [(gap.start_s, gap.end_s) for gap in context.clean.gaps]
    seen = without_half_seen([*across, *slants], silences, walk.speed_m_s, settings.aside)
    return tuple(sorted(seen, key=lambda bypass: bypass.start_s))


def _walk_paces(context: WalkContext, legs: list[LegAudit]) -> WalkPaces:
    known = [
        (leg.measures.details.paces, leg.measures.details.ground, leg.measures.path_m)
        for leg in legs
        if leg.measures is not None and leg.measures.details is not None
    ]
    settings = context.settings.paces
    return walk_paces(known, pace_unit(context.card.paces_per_100m, settings), settings)


def _straight_walking(
    clean: CleanTrack, match: Match, settings: Settings
) -> list[tuple[StraightStretch, Wander]]:
    """Give the straight stretches of the legs, with what is known of wandering on them."""
    if not clean.timed:
        return []
    walks = [leg.times_s for leg in match.legs if leg.status == "walked"]
    return [
        (stretch, wander_of(stretch, settings.heading))
        for stretch in straight_stretches(clean, walks, match.halts, settings.noise)
    ]


def _fitted_to_noise(settings: Settings, noise: ReceiverNoise) -> Settings:
    """Let what the halts showed, and what they left open, count in every figure."""
    heading, measuring = settings.heading, settings.measuring
    return replace(
        settings,
        heading=replace(
            heading,
            noise_log_sd=float(np.hypot(heading.noise_log_sd, noise.noise_log_sd)),
            usual_correlation_s=noise.correlation_s,
            usual_correlation_log_sd=float(
                np.hypot(heading.leg_correlation_log_sd, noise.correlation_log_sd)
            ),
        ),
        measuring=replace(measuring, noise_correlation_s=noise.correlation_s),
    )
