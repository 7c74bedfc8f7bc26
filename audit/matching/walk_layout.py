"""A walk made ready for matching: sampled, its halts and cuts found, looked at as it allows."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

import numpy as np

from audit.leg_card import LegCard
from audit.matching.cuts import Cuts, find_cuts
from audit.matching.halts import Movement, find_movement
from audit.matching.leg_match import CleanTrack
from audit.matching.noted_moments import NotedMoment
from audit.matching.pinned_route import planned_route
from audit.matching.pins import Pin, PinnedCuts, nearest_samples
from audit.matching.portions import find_portions
from audit.matching.route import Route, course_points
from audit.matching.walk_evidence import Evidence
from audit.matching.walk_samples import WalkSamples, sample_walk
from audit.settings import MatchingSettings


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SampledWalk:
    """A walk on an even time step, with where it moved and where it stood."""

    clean: CleanTrack
    samples: WalkSamples
    movement: Movement


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WalkLaidOut(SampledWalk):
    """A walk made ready for matching."""

    cuts: Cuts
    evidence: Evidence
    pins: PinnedCuts

    def sampled(self) -> SampledWalk:
        """Give the walk alone: what matching looks up fills most of the memory."""
        return SampledWalk(clean=self.clean, samples=self.samples, movement=self.movement)


def lay_out(
    clean: CleanTrack,
    card: LegCard,
    settings: MatchingSettings,
    pins: Sequence[Pin] = (),
    plan: Callable[[LegCard, MatchingSettings, PinnedCuts], Route] = planned_route,
    noted: Sequence[NotedMoment] = (),
) -> WalkLaidOut:
    """Resample the walk, find its halts and cuts, and prepare the evidence.

    ``plan`` lays out the ways in which the course may have been walked. ``noted`` are moments
    at which the walker says he was at a point.
    """
    clean = near_course(clean, card, settings, pins)
    samples = sample_walk(clean, settings)
    movement = find_movement(samples, settings)
    fitted = _fitted_to_noise(settings, movement.noise_m)
    samples = sample_walk(clean, fitted)
    movement = replace(
        find_movement(samples, fitted),
        noise_m=movement.noise_m,
        noise_from_s=movement.noise_from_s,
    )
    settings = _fitted_to_halts(
        settings, movement, len(card.legs), clean.median_interval_s or samples.step_s
    )
    pinned_samples = nearest_samples(samples.time_s, pins)
    cuts = find_cuts(samples, movement, course_points(card), settings, pinned_samples)
    pinned = PinnedCuts(pins, cuts.sample, samples.time_s, cuts.unseen)
    route = plan(card, settings, pinned)
    longest = max(edge.distance_m for edge in route.edges if edge.leg is not None)
    longest = max(settings.longest_portion * longest, settings.longest_portion_least_m)
    portions = find_portions(samples, movement, cuts, longest, pinned.pairs())
    evidence = Evidence(samples, movement, cuts, portions, route, settings, noted)
    return WalkLaidOut(
        clean=clean,
        samples=samples,
        movement=movement,
        cuts=cuts,
        evidence=evidence,
        pins=pinned,
    )


def _fitted_to_noise(settings: MatchingSettings, noise_m: float) -> MatchingSettings:
    """Look as closely as the receiver allows: a quiet one shows a halt of a few seconds."""
    return replace(
        settings,
        smoothing_s=float(
            np.clip(settings.smoothing_s_per_m * noise_m, *settings.smoothing_range_s)
        ),
        speed_window_s=float(
            np.clip(settings.speed_window_s_per_m * noise_m, *settings.speed_window_range_s)
        ),
    )


def _fitted_to_halts(
    settings: MatchingSettings, movement: Movement, legs: int, interval_s: float
) -> MatchingSettings:
    """Charge a halt on the way, and a cut in mid-stride, by what this walk can show.

    Two halts a leg are put down to points and searches; the rest, over the path, is
    the rate at which this walker stops to look at his compass.
    """
    on_the_way = max(len(movement.halts) - 2.0 * (legs + 1), 0.0) + settings.halts_prior
    rate = on_the_way / max(float(movement.path_m[-1]), settings.halts_path_least_m)
    cost = -np.log(rate * settings.halt_window_m)
    # Fixes far apart in time show neither short halts nor the bends between legs.
    seen = min(settings.bends_seen_s / interval_s, 1.0)
    return replace(
        settings,
        cost_halt=float(np.clip(cost, *settings.cost_halt_range)),
        cost_mid_stride=settings.cost_mid_stride * seen,
    )


def near_course(
    clean: CleanTrack, card: LegCard, settings: MatchingSettings, pins: Sequence[Pin] = ()
) -> CleanTrack:
    """Keep the fixes from the first to the last that lie near the course, or are pinned.

    A drive to the course, or the other days of a logger, need not be searched for legs.
    """
    corners = np.concatenate([leg.line for leg in card.legs])
    middle = (corners.min(axis=0) + corners.max(axis=0)) / 2.0
    reach = float(np.hypot(*(corners - middle).T).max()) + settings.far_m
    near = np.hypot(clean.east_m - middle[0], clean.north_m - middle[1]) <= reach
    for pin in pins:
        near[clean.index_at(pin.time_s)] = True
    index = np.flatnonzero(near)
    if len(index) < 2 or len(index) == len(clean):
        return clean
    return clean.part(slice(int(index[0]), int(index[-1]) + 1))
