"""What is told of a leg beyond its main figures, gathered."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from audit.leg_card import CardLeg
from audit.matching.leg_match import LegMatch
from audit.matching.walk_samples import smoothed
from audit.measurement.ground_walked import measure_ground
from audit.measurement.ledger_errors import ledger_errors, split_setting
from audit.measurement.leg_details import (
    Bypass,
    LegDetails,
    LineKept,
    PointReached,
    Search,
    Setting,
)
from audit.measurement.leg_measures import CrossTrack, LegMeasures
from audit.measurement.line_kept import measure_line_kept
from audit.measurement.lines_of_leg import line_direction
from audit.measurement.nearest_approach import nearest_approach
from audit.measurement.paces_of_walk import leg_paces
from audit.measurement.places import place_between
from audit.measurement.places_and_headings import Place
from audit.measurement.point_reached import (
    Approach,
    judge_point,
    other_readings,
    share_within,
    unseen_approach,
)
from audit.measurement.search_shape import describe_search, walked_up
from audit.measurement.sighting_stops import find_sighting_stops
from audit.measurement.thirds import measure_thirds
from audit.measurement.walk_context import WalkContext, placed
from audit.measurement.walk_of_leg import WalkOfLeg
from audit.units import unit_vector


def measure_details(
    context: WalkContext,
    walk: WalkOfLeg,
    leg: CardLeg,
    portion: LegMatch,
    measures: LegMeasures,
    bypasses: tuple[Bypass, ...],
) -> LegDetails:
    """Gather drift, line, ground, paces, point, errors, search and halts of a measured leg."""
    clean, settings = context.clean, context.settings
    noise_m = measures.noise_m
    ground = measure_ground(clean, walk, context.elevation, settings.ground)
    return LegDetails(
        thirds=measure_thirds(clean, walk, noise_m, settings.heading),
        planned_line=_line_kept(context, walk, leg, measures.cross_track, noise_m, planned=True),
        own_line=_line_kept(context, walk, leg, measures.own_cross_track, noise_m, planned=False),
        ground=ground,
        paces=leg_paces(
            clean,
            walk,
            predicted=leg.paces,
            counted=context.counted_paces.get(leg.name),
            path_sd_m=measures.path_sd_m,
            cadence=context.cadence,
            settings=settings.paces,
        ),
        point=_point(context, walk, leg, portion, measures),
        ledger_errors=ledger_errors(leg, measures, walk.start.sd_m, walk.claim.sd_m),
        setting=_setting(context, leg, measures),
        start_error=walk.start_error,
        claim_error=walk.claim_error,
        search=_search(context, walk, leg, portion, measures),
        bypasses=bypasses,
        sighting_stops=find_sighting_stops(
            clean, context.match.halts, walk.times_s, bypasses, noise_m, settings
        ),
    )


def _line_kept(
    context: WalkContext,
    walk: WalkOfLeg,
    leg: CardLeg,
    curve: CrossTrack,
    noise_m: float,
    *,
    planned: bool,
) -> LineKept:
    """Judge a line by receiver noise, and by the squares of its points where it is the plan's."""
    squares = (leg.start.half_square_m**2 + leg.end.half_square_m**2) / 2.0 / 3.0
    sd_m = float(np.sqrt(noise_m**2 + (squares if planned else walk.start.sd_m**2)))

    def place_at(index: int) -> Place:
        return placed(context, place_between(context.clean, float(walk.time_s[index]), noise_m))

    return measure_line_kept(curve, walk.position, sd_m, place_at, context.settings.measuring)


def _point(
    context: WalkContext, walk: WalkOfLeg, leg: CardLeg, portion: LegMatch, measures: LegMeasures
) -> PointReached:
    measuring, clean = context.settings.measuring, context.clean
    interval_s = clean.median_interval_s or 0.0
    logging_m = interval_s * walk.speed_m_s / np.sqrt(12.0)
    square = leg.end.half_square_m / np.sqrt(3.0)
    sd_m = float(np.sqrt(measures.noise_m**2 + logging_m**2 + square**2))
    target = np.array([leg.end.east_m, leg.end.north_m])
    speed = measuring.gap_speed * context.sampled.movement.walking_m_s

    def approach(times_s: tuple[float, float], nearest_m: float) -> Approach:
        unseen_m = unseen_approach(clean, times_s, target, nearest_m, speed)
        return Approach(nearest_m=nearest_m, unseen_m=unseen_m)

    others = []
    for other in other_readings(clean, context.match, portion, measuring):
        approaches = [
            approach(stretch_s, nearest_approach(clean, stretch_s, target)[0])
            for stretch_s in other.stretches_s
        ]
        others.append((other.doubt, min(approaches, key=lambda one: one.possible_m)))
    here = approach((walk.start.time_s, walk.until_s), measures.nearest_m)
    radius_m = context.card.arrival_radius_m
    judged = judge_point(here, others, radius_m, sd_m, measuring)
    if walk.claim_error.marked_by != "reckoned":
        return judged
    # Where he was reckoned to be is the likelier place than the nearest at which he was seen.
    there = share_within(measures.miss_m, radius_m, float(np.hypot(sd_m, walk.claim.sd_m)))
    return replace(judged, probability=max(judged.probability, (1.0 - judged.doubt) * there))


def _setting(context: WalkContext, leg: CardLeg, measures: LegMeasures) -> Setting | None:
    """Split setting from holding where the log says what was set on a straight leg."""
    noted = context.azimuths_set.get(leg.name)
    if noted is None or len(leg.line) > 2:
        return None
    set_to = context.card.angles.grid_from_magnetic(noted)
    return split_setting(leg, measures.heading.azimuth, measures.along_heading_m, set_to)


def _search(
    context: WalkContext,
    walk: WalkOfLeg,
    leg: CardLeg,
    portion: LegMatch,
    measures: LegMeasures,
) -> Search | None:
    """Describe what lies between the claim and the end of the search."""
    end_s = portion.search_end_s
    samples = context.sampled.samples
    if end_s is None or end_s <= walk.claim.time_s:
        return None
    inside = (samples.time_s > walk.claim.time_s) & (samples.time_s <= end_s)
    if inside.sum() < 2:
        return None
    place = np.vstack([walk.claim.place, samples.raw[inside]])
    time_s = np.concatenate([[walk.claim.time_s], samples.time_s[inside]])
    place = smoothed(place, walk.smoothing_s / samples.step_s)
    found = describe_search(
        time_s, place, measures.heading.azimuth.degrees, context.settings.search
    )
    if found is None:
        return None
    end = np.array([leg.end.east_m, leg.end.north_m])
    if walked_up(place, end, context.card.arrival_radius_m, context.settings.search):
        return replace(found, walked_up=True)
    if found.shape != "straight on":
        return found
    onward = unit_vector(line_direction(leg).degrees)
    beyond_m = (place - end) @ onward
    return replace(found, past_m=max(float(beyond_m.max()), 0.0))
