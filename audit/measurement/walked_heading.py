"""The grid azimuth really walked on a leg, with its 95 % interval."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from audit.azimuths import GridAzimuth
from audit.matching.leg_match import CleanTrack
from audit.measurement.leg_details import Bypass
from audit.measurement.places import Fixed, place_between
from audit.measurement.places_and_headings import Heading
from audit.measurement.walk_context import WalkContext
from audit.measurement.walk_of_leg import WalkOfLeg
from audit.settings import HeadingSettings
from audit.statistics.chord_regression import Asides, Step, chord_slope
from audit.statistics.spread import TWO_SIDED_95
from audit.units import FloatArray, direction_degrees, turn_degrees, unit_vector, wrap_degrees


def walked_heading(
    context: WalkContext, walk: WalkOfLeg, noise_m: float, bypasses: tuple[Bypass, ...]
) -> Heading:
    """Measure the direction of a leg's straight walking, its bypasses left out.

    Where the walker may have turned to a point in sight, or may not, the interval counts
    both.
    """
    # Smoothing hides the first and last seconds of a bypass.
    begun_s, wide_s = walk.start.time_s, walk.smoothing_s
    steps = tuple(
        Step(
            begin_s=bypass.start_s - wide_s - begun_s,
            end_s=bypass.end_s + wide_s - begun_s,
            out_m=bypass.out_m,
            returned=bypass.returned,
        )
        for bypass in bypasses
    )
    ends, portions = _other_ends(context, walk)
    left = 1.0 - sum(chance for chance, _ in (*ends, *portions))
    asides = Asides(
        steps=steps,
        other_ends=(*ends, *_slants_left(bypasses, left * context.settings.aside.other_reading)),
        other_portions=portions,
        ends_sd_m=_ends_sd(context, walk),
    )
    return measure_heading(
        context.clean, walk.start, walk.claim, noise_m, context.settings.heading, asides
    )


def _ends_sd(context: WalkContext, walk: WalkOfLeg) -> float:
    """Give how far across the leg its ends may lie for want of knowing their moments.

    The walk itself shows it: its places so much earlier and later that three of them,
    weighted 1, 4 and 1, stand for a normal error (Simpson's weights).
    """
    samples = context.sampled.samples
    ahead = unit_vector(walk.chord_deg)
    square = 0.0
    for end, error in ((walk.start, walk.start_error), (walk.claim, walk.claim_error)):
        if error.marked_by == "halt":
            continue
        if error.marked_by == "reckoned":
            square += error.place_sd_m**2
            continue
        apart_s = np.sqrt(3.0) * error.time_sd_s
        here, *there = (
            np.array([np.interp(time_s, samples.time_s, axis) for axis in samples.smooth.T])
            for time_s in (end.time_s, end.time_s - apart_s, end.time_s + apart_s)
        )
        for place in there:
            way = place - here
            square += float(way[0] * ahead[1] - way[1] * ahead[0]) ** 2 / 6.0
    return float(np.sqrt(square))


_Shifts = tuple[tuple[float, float], ...]


def _other_ends(context: WalkContext, walk: WalkOfLeg) -> tuple[_Shifts, _Shifts]:
    """Give probability and shift across of the other readings of where a leg began and ended.

    First the turn to a point in sight that is less probable, or the lack of one; then
    the match's runner-up.
    """
    ends: list[tuple[float, float, float]] = []
    portions: list[tuple[float, float, float]] = []
    start_s = walk.start.time_s
    bend = context.bends.get(walk.leg)
    if bend is not None:
        turned = bend.probability > 0.5
        chance = 1.0 - bend.probability if turned else bend.probability
        ends.append((chance, start_s, bend.arrived_s if turned else bend.turned_s))
    other = context.match.legs[walk.leg].runner_up
    if other is not None and other.start_s is not None and other.claim_s is not None:
        portions.append((min(other.probability, 0.5), other.start_s, other.claim_s))
    return _shifts(context, walk, ends), _shifts(context, walk, portions)


def _shifts(
    context: WalkContext, walk: WalkOfLeg, others: list[tuple[float, float, float]]
) -> _Shifts:
    """Give how far across each of (chance, start, claim) puts the end; unlikely ones are left."""
    least = context.settings.heading.least_other_end
    chord = float(np.hypot(*(walk.claim.place - walk.start.place)))
    # An end that both readings share may have been reckoned into a silence.
    ends = {end.time_s: end.place for end in (walk.start, walk.claim)}
    shifts = []
    for chance, from_s, to_s in others:
        places = [
            ends[t] if t in ends else place_between(context.clean, t, 0.0).place
            for t in (from_s, to_s)
        ]
        way = np.diff(places, axis=0)
        if chance >= least and np.any(way):
            turn = turn_degrees(walk.chord_deg, direction_degrees(*way[0].tolist()))
            # Beyond a right angle a shift has no meaning: it stands for "anywhere on that side".
            shifts.append((chance, chord * float(np.tan(np.radians(np.clip(turn, -80.0, 80.0))))))
    return tuple(shifts)


def _slants_left(bypasses: tuple[Bypass, ...], chance: float) -> _Shifts:
    """Give two more readings of a leg on which obstacles were passed at a slant.

    The slants may have been wandering after all; or there were as many more that do not
    stand out.
    """
    right_m = sum(
        (one.out_m - one.back_m) * (1.0 if one.side == "right" else -1.0)
        for one in bypasses
        if one.slanted
    )
    return ((chance, right_m), (chance, -right_m)) if right_m else ()


def measure_heading(
    clean: CleanTrack,
    start: Fixed,
    claim: Fixed,
    noise_m: float,
    settings: HeadingSettings,
    asides: Asides | None = None,
) -> Heading:
    """Measure the direction from where the walker left to where he claimed to be.

    Every fix of the leg and of the halts at its ends is used. The interval counts the
    receiver's error as correlated in time; a leg too short for its noise has an
    interval of the whole circle.
    """
    asides = asides or Asides()
    chord_e, chord_n = claim.east_m - start.east_m, claim.north_m - start.north_m
    length = float(np.hypot(chord_e, chord_n))
    duration = claim.time_s - start.time_s
    chord_deg = direction_degrees(chord_e, chord_n)
    if length < settings.shortest_m or duration <= 0.0:
        return Heading(
            azimuth=GridAzimuth(chord_deg),
            low_deg=0.0,
            high_deg=wrap_degrees(-1e-9),
            sd_deg=settings.unknown_sd_deg,
        )
    index = _outside(clean, _fixes(clean, start, claim, settings), start.time_s, asides)
    clock = np.clip(clean.time_s[index] - start.time_s, 0.0, duration)
    if len(index) < settings.least_fixes or np.ptp(clock) < duration / 2.0:
        return _from_ends(chord_deg, length, start, claim)
    along = unit_vector(chord_deg)
    across = (clean.east_m[index] - start.east_m) * along[1] - (
        clean.north_m[index] - start.north_m
    ) * along[0]
    slope = chord_slope(
        clean.time_s[index] - start.time_s,
        across,
        duration_s=duration,
        length_m=_at_the_pace_of_straight_walking(clean, start, length, along, duration, asides),
        noise_m=noise_m,
        settings=settings,
        asides=asides,
    )
    # Right of the chord is clockwise of it: a positive slope turns the heading on.
    centre, low, high = (
        direction_degrees(ratio, 1.0) for ratio in (slope.centre, slope.low, slope.high)
    )
    return Heading(
        azimuth=GridAzimuth(chord_deg + centre),
        low_deg=wrap_degrees(chord_deg + low),
        high_deg=wrap_degrees(chord_deg + high),
        sd_deg=float(np.degrees(slope.sd)),
        as_matched_sd_deg=float(np.degrees(slope.own_sd)),
    )


def _at_the_pace_of_straight_walking(
    clean: CleanTrack,
    start: Fixed,
    length_m: float,
    along: FloatArray,
    duration_s: float,
    asides: Asides,
) -> float:
    """Give how far the whole time would have led along, had it all been straight walking."""
    outside_s, outside_m = duration_s, length_m
    for step in asides.steps:
        ends_s = start.time_s + np.clip([step.begin_s, step.end_s], 0.0, duration_s)
        outside_m -= float(np.diff(clean.places_at(ends_s), axis=0)[0] @ along)
        outside_s -= float(np.ptp(ends_s))
    straight_m_s = outside_m / max(outside_s, 1.0)
    least_m_s = 0.5 * length_m / duration_s  # where next to nothing is left outside them
    return max(straight_m_s, least_m_s) * duration_s


def _outside(
    clean: CleanTrack, index: NDArray[np.int64], start_s: float, asides: Asides
) -> NDArray[np.int64]:
    """Leave out the fixes within bypasses: they show another direction."""
    since = clean.time_s[index] - start_s
    keep = np.ones(len(index), dtype=bool)
    for step in asides.steps:
        keep &= (since <= step.begin_s) | (since >= step.end_s)
    return index[keep]


def _from_ends(chord_deg: float, length_m: float, start: Fixed, claim: Fixed) -> Heading:
    """Give the chord with the error of its two ends, where too few fixes lie between them."""
    sd = float(np.degrees(np.hypot(start.sd_m, claim.sd_m) / length_m))
    return Heading(
        azimuth=GridAzimuth(chord_deg),
        low_deg=wrap_degrees(chord_deg - TWO_SIDED_95 * sd),
        high_deg=wrap_degrees(chord_deg + TWO_SIDED_95 * sd),
        sd_deg=sd,
    )


def _fixes(
    clean: CleanTrack, start: Fixed, claim: Fixed, settings: HeadingSettings
) -> NDArray[np.int64]:
    """Choose fixes evenly: some of the halt before, more of the leg, some of the halt after."""
    stretches = (
        (min(start.halt_s[0], start.time_s), start.time_s, settings.halt_fixes),
        (start.time_s, claim.time_s, settings.leg_fixes),
        (claim.time_s, max(claim.halt_s[1], claim.time_s), settings.halt_fixes),
    )
    chosen = [
        _evenly(clean, from_s, to_s, min(most, 1 + int((to_s - from_s) / settings.spacing_s)))
        for from_s, to_s, most in stretches
    ]
    return np.unique(np.concatenate(chosen))


def _evenly(clean: CleanTrack, from_s: float, to_s: float, most: int) -> NDArray[np.int64]:
    first = int(np.searchsorted(clean.time_s, from_s, side="left"))
    last = int(np.searchsorted(clean.time_s, to_s, side="right"))
    count = last - first
    if count <= 0:
        return np.empty(0, dtype=np.int64)
    pick = np.linspace(first, last - 1, min(count, most))
    return np.unique(np.round(pick).astype(np.int64))
