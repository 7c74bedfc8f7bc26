"""Where the walker's own navigation ended: put back from the point to where he turned to it.

A walker who sees his point leaves the direction that he held and walks up to it; then he
stands there. The halt is where matching puts the claim, but his navigation ended where
the point came into sight: at the bend.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from statistics import NormalDist

import numpy as np
from numpy.typing import NDArray

from audit.leg_card import CardLeg
from audit.matching.leg_match import CleanTrack, LegMatch, Match
from audit.matching.walk_layout import SampledWalk
from audit.measurement.receiver_noise import ReceiverNoise
from audit.settings import ClaimSettings
from audit.statistics.late_bend import Motion, weigh_bends
from audit.units import direction_degrees, unit_vector


@dataclass(frozen=True, slots=True, kw_only=True)
class SightBend:
    """A turn to a point in sight, shortly before the halt at it.

    Attributes
    ----------
    probability : float
        That there was one, by the fixes and by how often such turns are made.
    turned_s, turned_sd_s : float
        When, if there was one, and the standard error of it.
    arrived_s : float
        When the walker stood at the point.
    """

    leg: int
    probability: float
    turned_s: float
    turned_sd_s: float
    arrived_s: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Arrival:
    """The halt that a leg ends in, and the way up to it."""

    leg: LegMatch
    arrived_s: float
    left_s: float
    since_s: float
    speed_m_s: float


def find_sight_bends(
    clean: CleanTrack,
    sampled: SampledWalk,
    match: Match,
    card_legs: tuple[CardLeg, ...],
    noise: ReceiverNoise,
    settings: ClaimSettings,
) -> dict[int, SightBend]:
    """Look at every leg that ends in a halt near its point; by index of leg."""
    bends = {}
    for leg, card_leg in zip(match.legs, card_legs, strict=True):
        if "claim" in leg.pinned or leg.claim_unseen:  # settled by somebody, or seen by nobody
            continue
        arrival = _arrival(clean, sampled, match, leg, card_leg, settings)
        if arrival is not None:
            bend = _bend(clean, arrival, noise, settings)
            if bend is not None:
                bends[leg.leg] = bend
    return bends


def claims_at_bends(match: Match, bends: dict[int, SightBend]) -> Match:
    """Give the match with every claim put to its bend where one is more probable than not."""
    legs = tuple(
        replace(leg, claim_s=bends[leg.leg].turned_s, search_end_s=bends[leg.leg].arrived_s)
        if leg.leg in bends and bends[leg.leg].probability > 0.5
        else leg
        for leg in match.legs
    )
    return replace(match, legs=legs)


def _arrival(
    clean: CleanTrack,
    sampled: SampledWalk,
    match: Match,
    leg: LegMatch,
    card_leg: CardLeg,
    settings: ClaimSettings,
) -> _Arrival | None:
    """Find the halt at the claim, if it is near the point and the way up to it is known."""
    if leg.status != "walked" or leg.start_s is None or leg.claim_s is None or not clean.timed:
        return None
    halts = match.halts
    at_claim = np.flatnonzero(
        (halts[:, 0] - settings.halt_reach_s <= leg.claim_s) & (halts[:, 1] >= leg.claim_s)
    )
    if len(at_claim) == 0:
        return None
    began_s, left_s = halts[at_claim[0]]
    arrived_s = float(max(leg.claim_s, began_s))
    standing = (clean.time_s >= arrived_s) & (clean.time_s <= left_s)
    if not standing.any():
        return None
    off_m = np.hypot(
        clean.east_m[standing].mean() - card_leg.end.east_m,
        clean.north_m[standing].mean() - card_leg.end.north_m,
    )
    if off_m > settings.near_point_m + card_leg.end.half_square_m:
        return None
    samples, path_m = sampled.samples, sampled.movement.path_m
    usual = sampled.movement.walking_m_s
    # A halt on the way would make the speed before the arrival look slow.
    rested = halts[halts[:, 1] < arrived_s - settings.halt_reach_s, 1]
    reach_s = (settings.most_bend_m + settings.window_m) / usual
    since = max(leg.start_s, arrived_s - reach_s, float(rested.max(initial=-np.inf)))
    way = np.diff(np.interp([since, arrived_s], samples.time_s, path_m))[0]
    if way < settings.least_way_m:
        return None
    return _Arrival(
        leg=leg,
        arrived_s=arrived_s,
        left_s=float(left_s),
        since_s=since,
        speed_m_s=float(way / (arrived_s - since)),
    )


def _bend(
    clean: CleanTrack, arrival: _Arrival, noise: ReceiverNoise, settings: ClaimSettings
) -> SightBend | None:
    start_s, speed = arrival.leg.times_s[0], arrival.speed_m_s
    index = _fixes(clean, arrival, settings)
    if len(index) < settings.least_fixes:
        return None
    held = _held_direction(clean, start_s, arrival.arrived_s - settings.most_bend_m / speed)
    place = clean.places(index)
    place = place - place[0]
    ahead = unit_vector(held)
    right = np.array([ahead[1], -ahead[0]])
    walked_m = (arrival.arrived_s - arrival.since_s) * speed
    most_m = min(settings.most_bend_m, 0.8 * walked_m)
    back_m = np.arange(settings.least_bend_m, most_m + 0.1, settings.step_m)
    candidates_s = arrival.arrived_s - back_m / speed
    bends = weigh_bends(
        clean.time_s[index],
        np.column_stack([place @ ahead, place @ right]),
        candidates_s,
        end_s=arrival.arrived_s,
        motion=Motion(speed_m_s=speed, noise_m=noise.noise_m, correlation_s=noise.correlation_s),
        settings=settings,
    )
    sharp = np.array(
        [
            NormalDist().cdf((abs(turn) - settings.least_turn_deg) / max(sd, 1e-6))
            for turn, sd in zip(bends.turn_deg, bends.turn_sd_deg, strict=True)
        ]
    )
    odds = np.exp(bends.log_odds) * sharp * settings.share / len(candidates_s)
    total = float(odds.sum())
    weight = odds / total if total > 0.0 else np.full(len(odds), 1.0 / len(odds))
    turned_s = float(weight @ candidates_s)
    return SightBend(
        leg=arrival.leg.leg,
        probability=total / (total + 1.0 - settings.share),
        turned_s=turned_s,
        turned_sd_s=float(np.sqrt(weight @ (candidates_s - turned_s) ** 2)),
        arrived_s=arrival.arrived_s,
    )


def _held_direction(clean: CleanTrack, start_s: float, until_s: float) -> float:
    """Give the direction from the leg's start to where the bends that are tried begin."""
    ends = (start_s, max(until_s, start_s + 1.0))
    east_m, north_m = np.diff(clean.places_at(ends), axis=0)[0]
    return direction_degrees(float(east_m), float(north_m))


def _fixes(clean: CleanTrack, arrival: _Arrival, settings: ClaimSettings) -> NDArray[np.int64]:
    """Choose fixes of the way up to the halt, not too close to each other, and some of the halt."""
    way = np.flatnonzero((clean.time_s >= arrival.since_s) & (clean.time_s <= arrival.arrived_s))
    every = max(int(settings.spacing_s / (clean.median_interval_s or settings.spacing_s)), 1)
    standing = np.flatnonzero((clean.time_s > arrival.arrived_s) & (clean.time_s <= arrival.left_s))
    some = np.linspace(0, len(standing) - 1, min(len(standing), settings.halt_fixes))
    return np.concatenate([way[::-1][::every][::-1], standing[np.round(some).astype(np.int64)]])
