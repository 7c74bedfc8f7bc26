"""All measurements of one leg."""

from __future__ import annotations

from typing import Literal

import numpy as np

from audit.azimuths import GridAzimuth
from audit.leg_card import CardLeg, LegCard
from audit.matching.leg_match import CleanTrack
from audit.measurement.cross_track import measure_cross_track, straight_line
from audit.measurement.ledger import make_ledger
from audit.measurement.leg_measures import LegMeasures, Place
from audit.measurement.places import Fixed
from audit.measurement.receiver_noise import ReceiverNoise, noise_between
from audit.measurement.walk_of_leg import WalkOfLeg
from audit.measurement.walked_heading import measure_heading
from audit.settings import Settings
from audit.units import FloatArray, direction_degrees, unit_vector


def measure_leg(
    clean: CleanTrack,
    walk: WalkOfLeg,
    card: LegCard,
    leg: CardLeg,
    noise: ReceiverNoise,
    settings: Settings,
    counted_paces: float | None,
) -> LegMeasures:
    """Measure a leg that was walked, against its card."""
    start = np.array([walk.start.east_m, walk.start.north_m])
    claim = np.array([walk.claim.east_m, walk.claim.north_m])
    target = np.array([leg.end.east_m, leg.end.north_m])
    straight = float(np.hypot(*(claim - start)))
    gap_share = _gap_share(clean, walk, straight)
    noise_m = noise_between(clean, noise, walk.times_s, gap_share, settings.noise)
    heading = measure_heading(clean, walk.start, walk.claim, noise_m, settings.heading)
    bent = len(leg.line) > 2
    planned = leg.line if bent else straight_line(leg.line[0], leg.azimuth.degrees, leg.distance_m)
    own = (
        leg.line - leg.line[0] + start
        if bent
        else straight_line(start, leg.azimuth.degrees, leg.distance_m)
    )
    miss = claim - target
    along, across = _along_across(miss, leg)
    nearest_m, nearest_s = _nearest(clean, walk, target)
    # A leg along a bent line is walked along it: its path counts, not its chord.
    made = walk.path_m if bent else straight
    paces, paces_from = _paces(counted_paces, card.paces_per_100m, made)
    timed = clean.timed
    return LegMeasures(
        start=_place(clean, walk.start, card),
        claim=_place(clean, walk.claim, card),
        heading=heading,
        straight_m=straight,
        straight_sd_m=_straight_sd(walk, clean),
        path_m=walk.path_m,
        paces=paces,
        paces_from=paces_from,
        duration_s=walk.claim.time_s - walk.start.time_s if timed else None,
        halted_s=walk.halted_s if timed else None,
        azimuth_error_deg=_planned_direction(leg).turn_to(heading.azimuth),
        distance_error_m=made - leg.distance_m,
        distance_ratio=made / leg.distance_m,
        cross_track=measure_cross_track(planned, walk.position),
        own_cross_track=measure_cross_track(own, walk.position),
        miss_m=float(np.hypot(*miss)),
        miss_azimuth=GridAzimuth(direction_degrees(float(miss[0]), float(miss[1]))),
        miss_along_m=along,
        miss_across_m=across,
        miss_sd_m=_miss_sd(walk, leg, clean),
        nearest_m=nearest_m,
        nearest_s=nearest_s if timed else None,
        found=nearest_m <= card.arrival_radius_m,
        ledger=make_ledger(leg, start, claim, heading.azimuth),
        gap_share=gap_share,
        noise_m=noise_m,
        curve_time_s=walk.time_s,
    )


def _planned_direction(leg: CardLeg) -> GridAzimuth:
    """Give what a walked heading is set against: the card's azimuth, or a bent line's chord."""
    if len(leg.line) == 2:
        return leg.azimuth
    east, north = leg.line[-1] - leg.line[0]
    return GridAzimuth(direction_degrees(float(east), float(north)))


def _along_across(miss: FloatArray, leg: CardLeg) -> tuple[float, float]:
    forward = unit_vector(_planned_direction(leg).degrees)
    return float(miss @ forward), float(miss[0] * forward[1] - miss[1] * forward[0])


def _paces(
    counted: float | None, per_100m: float | None, made_m: float
) -> tuple[float | None, Literal["log", "pace count"] | None]:
    if counted is not None:
        return counted, "log"
    if per_100m is not None:
        return made_m * per_100m / 100.0, "pace count"
    return None, None


def _place(clean: CleanTrack, fixed: Fixed, card: LegCard) -> Place:
    longitude, latitude = card.grid.to_geographic(fixed.east_m, fixed.north_m)
    return Place(
        fix=clean.index_at(fixed.time_s),
        time_s=fixed.time_s if clean.timed else None,
        east_m=fixed.east_m,
        north_m=fixed.north_m,
        longitude_deg=float(longitude),
        latitude_deg=float(latitude),
    )


def _nearest(clean: CleanTrack, walk: WalkOfLeg, target: FloatArray) -> tuple[float, float]:
    """Give the nearest approach to the point between leaving for it and leaving for the next.

    The claim counts too: where it is, is better known than any single fix.
    """
    begin_s, end_s = walk.start.time_s, walk.until_s
    within = clean.time_s[(clean.time_s > begin_s) & (clean.time_s < end_s)]
    time_s = np.concatenate([[begin_s], within, [end_s]])
    east = np.interp(time_s, clean.time_s, clean.east_m) - target[0]
    north = np.interp(time_s, clean.time_s, clean.north_m) - target[1]
    distance, moment = _to_origin(time_s, east, north)
    at_claim = float(np.hypot(walk.claim.east_m - target[0], walk.claim.north_m - target[1]))
    return (at_claim, walk.claim.time_s) if at_claim <= distance else (distance, moment)


def _to_origin(time_s: FloatArray, east: FloatArray, north: FloatArray) -> tuple[float, float]:
    """Give how near a walk comes to the origin and when, fixes joined by straight lines."""
    step_e, step_n = np.diff(east), np.diff(north)
    square = np.maximum(step_e**2 + step_n**2, 1e-12)
    share = np.clip(-(east[:-1] * step_e + north[:-1] * step_n) / square, 0.0, 1.0)
    distance = np.hypot(east[:-1] + share * step_e, north[:-1] + share * step_n)
    nearest = int(np.argmin(distance))
    moment = time_s[nearest] + share[nearest] * (time_s[nearest + 1] - time_s[nearest])
    return float(distance[nearest]), float(moment)


def _straight_sd(walk: WalkOfLeg, clean: CleanTrack) -> float:
    """Add up the places of both ends and, where no halt marks one, half a logging interval."""
    logging = _logging_sd(walk, clean)
    square = sum(
        end.sd_m**2 + (logging**2 if end.halt_s[0] == end.halt_s[1] else 0.0)
        for end in (walk.start, walk.claim)
    )
    return float(np.sqrt(square))


def _miss_sd(walk: WalkOfLeg, leg: CardLeg, clean: CleanTrack) -> float:
    """Add up, per axis: the place of the claim, half a logging interval's walk, the reference.

    A place anywhere in a square of half side a scatters by a / sqrt(3) per axis.
    """
    square = leg.end.half_square_m / np.sqrt(3.0)
    return float(np.sqrt(walk.claim.sd_m**2 + _logging_sd(walk, clean) ** 2 + square**2))


def _logging_sd(walk: WalkOfLeg, clean: CleanTrack) -> float:
    """Give the scatter of a moment somewhere between two fixes, in metres walked."""
    interval = clean.median_interval_s or 0.0
    pace = walk.path_m / max(walk.claim.time_s - walk.start.time_s, 1.0)
    return float(interval * pace / 2.0 / np.sqrt(3.0))


def _gap_share(clean: CleanTrack, walk: WalkOfLeg, straight: float) -> float:
    """Give the share of the leg's straight distance that lies in gaps of the recording."""
    missing = 0.0
    for gap in clean.gaps:
        if gap.end_s > walk.start.time_s and gap.start_s < walk.claim.time_s:
            missing += float(
                np.hypot(
                    clean.east_m[gap.before + 1] - clean.east_m[gap.before],
                    clean.north_m[gap.before + 1] - clean.north_m[gap.before],
                )
            )
    return min(missing / straight, 1.0) if straight else 0.0
