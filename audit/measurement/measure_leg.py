"""All measurements of one leg."""

from __future__ import annotations

from typing import Literal

import numpy as np

from audit.azimuths import GridAzimuth
from audit.leg_card import CardLeg
from audit.matching.leg_match import CleanTrack
from audit.measurement.cross_track import measure_cross_track
from audit.measurement.ledger import make_ledger
from audit.measurement.leg_details import Bypass
from audit.measurement.leg_measures import LegMeasures
from audit.measurement.line_followed import line_followed
from audit.measurement.lines_of_leg import (
    carried_direction,
    line_direction,
    own_line,
    planned_line,
)
from audit.measurement.nearest_approach import nearest_approach
from audit.measurement.receiver_noise import noise_between
from audit.measurement.walk_context import WalkContext, placed
from audit.measurement.walk_of_leg import WalkOfLeg
from audit.measurement.walked_heading import walked_heading
from audit.read_only import read_only
from audit.settings import MeasuringSettings
from audit.units import FloatArray, direction_degrees, unit_vector


def measure_leg(
    context: WalkContext, walk: WalkOfLeg, leg: CardLeg, bypasses: tuple[Bypass, ...]
) -> LegMeasures:
    """Measure a leg that was walked, against its card."""
    clean, card, settings = context.clean, context.card, context.settings
    start, claim = walk.start.place, walk.claim.place
    target = np.array([leg.end.east_m, leg.end.north_m])
    straight = float(np.hypot(*(claim - start)))
    gap_share = _gap_share(clean, walk, straight)
    noise_m = noise_between(clean, context.noise, walk.times_s, gap_share, settings.noise)
    heading = walked_heading(context, walk, noise_m, bypasses)
    planned, own = planned_line(leg), own_line(leg, start)
    cross_track = measure_cross_track(planned, walk.position)
    own_cross_track = measure_cross_track(own, walk.position)
    miss = claim - target
    along, across = _along_across(miss, leg)
    nearest_m, nearest_s = _nearest(clean, walk, target)
    followed = line_followed(context, walk, (planned, own), own_cross_track)
    made, paced_m = straight, straight
    if len(leg.line) > 2:  # walked along its line: not its chord counts
        paced_m = walk.path_m
        # Who went another way walked his own metres, which no place of the line stands for.
        made = float(own_cross_track.along_m[-1]) if followed else walk.path_m
    paces, paces_from = _paces(context.counted_paces.get(leg.name), card.paces_per_100m, paced_m)
    straight_sd = _straight_sd(walk)
    return LegMeasures(
        start=placed(context, walk.start),
        claim=placed(context, walk.claim),
        heading=heading,
        straight_m=straight,
        straight_sd_m=straight_sd,
        path_m=walk.path_m,
        paces=paces,
        paces_from=paces_from,
        duration_s=walk.claim.time_s - walk.start.time_s if clean.timed else None,
        halted_s=walk.halted_s if clean.timed else None,
        azimuth_error_deg=carried_direction(leg).turn_to(heading.azimuth),
        made_good_m=made if followed else None,
        distance_error_m=made - leg.distance_m,
        distance_ratio=made / leg.distance_m,
        cross_track=cross_track,
        own_cross_track=own_cross_track,
        miss_m=float(np.hypot(*miss)),
        miss_azimuth=GridAzimuth(direction_degrees(float(miss[0]), float(miss[1]))),
        miss_along_m=along,
        miss_across_m=across,
        miss_sd_m=_miss_sd(walk, leg),
        nearest_m=nearest_m,
        nearest_s=nearest_s if clean.timed else None,
        found=nearest_m <= card.arrival_radius_m,
        nearest_after_m=_nearest_after(context, walk, target, float(np.hypot(*miss))),
        ledger=make_ledger(leg, start, claim, heading.azimuth),
        gap_share=gap_share,
        curve_time_s=read_only(walk.time_s),
        noise_m=noise_m,
        along_planned_m=float((claim - start) @ unit_vector(carried_direction(leg).degrees)),
        along_heading_m=float((claim - start) @ unit_vector(heading.azimuth.degrees)),
        path_sd_m=_path_sd(walk, clean.median_interval_s, straight_sd, settings.measuring),
        line_followed=followed,
        unseen_s=_unseen_s(clean, walk) if clean.timed else None,
    )


def _along_across(miss: FloatArray, leg: CardLeg) -> tuple[float, float]:
    forward = unit_vector(line_direction(leg).degrees)
    return float(miss @ forward), float(miss[0] * forward[1] - miss[1] * forward[0])


def _paces(
    counted: float | None, per_100m: float | None, paced_m: float
) -> tuple[float | None, Literal["log", "pace count"] | None]:
    if counted is not None:
        return counted, "log"
    if per_100m is not None:
        return paced_m * per_100m / 100.0, "pace count"
    return None, None


def _nearest(clean: CleanTrack, walk: WalkOfLeg, target: FloatArray) -> tuple[float, float]:
    """Give the nearest approach to the point between leaving for it and leaving for the next.

    The claim counts too: where it is, is better known than any single fix.
    """
    distance, moment = nearest_approach(clean, (walk.start.time_s, walk.until_s), target)
    if walk.claim_error.marked_by == "reckoned":  # nobody saw him there
        return distance, moment
    at_claim = float(np.hypot(walk.claim.east_m - target[0], walk.claim.north_m - target[1]))
    return (at_claim, walk.claim.time_s) if at_claim <= distance else (distance, moment)


def _nearest_after(
    context: WalkContext, walk: WalkOfLeg, target: FloatArray, miss_m: float
) -> float:
    """Give the nearest approach after the claim and a rest there, in which nobody comes back."""
    claim_s, halts = walk.claim.time_s, context.match.halts
    reach_s = context.settings.measuring.halt_reach_s
    at_claim = halts[(halts[:, 0] <= claim_s + reach_s) & (halts[:, 1] >= claim_s)]
    left_s = float(at_claim[:, 1].max(initial=claim_s))
    if left_s >= walk.until_s:
        return miss_m
    return nearest_approach(context.clean, (left_s, walk.until_s), target)[0]


def _straight_sd(walk: WalkOfLeg) -> float:
    """Add up the places of both ends, and how well their moments are known."""
    return float(np.sqrt(sum(end.sd_m**2 + end.along_sd_m**2 for end in (walk.start, walk.claim))))


def _path_sd(
    walk: WalkOfLeg, interval_s: float | None, straight_sd_m: float, settings: MeasuringSettings
) -> float:
    """Add up the errors of both ends, of smoothing, and of what happened between two fixes."""
    unseen = settings.path_sd_per_s * (interval_s or 0.0)
    share = float(np.hypot(settings.path_sd, unseen))
    lost_m = settings.path_lost_share * walk.lost_m
    return float(np.sqrt(straight_sd_m**2 + (share * walk.path_m) ** 2 + lost_m**2))


def _miss_sd(walk: WalkOfLeg, leg: CardLeg) -> float:
    """Add up, per axis: the place of the claim, its moment, the precision of the reference.

    A place anywhere in a square of half side a scatters by a / sqrt(3) per axis; an
    error along the walk has half its square on each of two axes.
    """
    square = leg.end.half_square_m / np.sqrt(3.0)
    moment = walk.claim.along_sd_m / np.sqrt(2.0)
    return float(np.sqrt(walk.claim.sd_m**2 + moment**2 + square**2))


def _unseen_s(clean: CleanTrack, walk: WalkOfLeg) -> float:
    """Give the seconds from leaving to claim that lie in gaps, long as they may be in one place."""
    begin_s, end_s = walk.times_s
    within = (min(gap.end_s, end_s) - max(gap.start_s, begin_s) for gap in clean.gaps)
    return float(sum(seconds for seconds in within if seconds > 0.0))


def _gap_share(clean: CleanTrack, walk: WalkOfLeg, straight: float) -> float:
    """Give the share of the leg's straight distance that lies in gaps of the recording.

    Of a gap in which the leg begins or ends counts what lies on the leg.
    """
    missing = 0.0
    for gap in clean.gaps:
        if gap.end_s <= walk.start.time_s or gap.start_s >= walk.claim.time_s:
            continue
        begun, ended = (
            np.array([clean.east_m[fix], clean.north_m[fix]])
            for fix in (gap.before, gap.before + 1)
        )
        if gap.start_s < walk.start.time_s:
            begun = walk.start.place
        if gap.end_s > walk.claim.time_s:
            ended = walk.claim.place
        missing += float(np.hypot(*(ended - begun)))
    return min(missing / straight, 1.0) if straight else 0.0
