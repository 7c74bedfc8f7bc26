"""Make a walk: course, walker, receiver, and the truth of it all."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from audit.plan import Plan
from audit.track import Track
from walks.comings_and_goings import come_to_start, walk_off, with_another_walk
from walks.courses import Course, make_course
from walks.difficulties import Difficulty
from walks.families import DIFFICULTIES
from walks.leg_truths import leg_truths, recording_window, seen_by_recording
from walks.outings import Outing, begin_outing
from walks.plans import plan_of
from walks.receivers import Receiver, draw_receiver, record, with_elevations
from walks.seconds import Seconds, seconds_of
from walks.trails import along
from walks.truth import LegTruth, Planted, Truth
from walks.walkers import walk_course

FIRST_DAY = dt.datetime(2026, 3, 1, 7, 0, tzinfo=dt.UTC)


@dataclass(frozen=True, slots=True, kw_only=True)
class Walk:
    """A made walk: what the auditor gets, and what really happened."""

    seed: int
    difficulty: str
    course: Course
    plan: Plan
    track: Track
    truth: Truth


def make_walk(seed: int, difficulty: str | Difficulty, walker: int = 0) -> Walk:
    """Make the walk of a seed: the same seed, difficulty and walker give the same bytes.

    Course, walker and receiver draw from streams of their own, so that two
    difficulties which differ in the receiver alone share course and walker. The
    walkers 0, 1, 2 and so on of a seed are a class on one course.
    """
    family = DIFFICULTIES[difficulty] if isinstance(difficulty, str) else difficulty
    # Stream 0 is the course's; each walker has three more.
    roots = np.random.SeedSequence(seed).spawn(1 + 3 * (walker + 1))
    streams = [np.random.default_rng(root) for root in (roots[0], *roots[-3:])]
    course = make_course(streams[0], family)
    return walk_on(course, family, streams[1:], seed=seed)


def walk_on(
    course: Course,
    family: Difficulty,
    streams: Sequence[np.random.Generator],
    *,
    seed: int,
    first_s: float | None = None,
    turn_deg: float = 0.0,
) -> Walk:
    """Walk a course: one stream each for the walker, the receiver and the recording.

    ``first_s`` is when the recording begins, drawn where it is left out; ``turn_deg``
    is what the compass in hand adds to every azimuth.
    """
    rng, receiving, recording = streams
    car_m = course.points_m[0] + along(
        float(rng.uniform(0.0, 360.0)), float(rng.uniform(*family.approach_m))
    )
    outing = begin_outing(rng, family, course, car_m)
    outing.bias_deg += turn_deg
    come_to_start(outing)
    walk_course(outing)
    walk_off(outing, car_m)
    drawn_s = _first_second(rng)
    first_s = drawn_s if first_s is None else first_s
    seconds = seconds_of(outing.trail, first_s)
    legs = leg_truths(outing, seconds)
    window = recording_window(receiving, family, seconds, legs, outing)
    seconds = seconds.cut((seconds.time_s >= window[0]) & (seconds.time_s <= window[1]))
    # A second belongs to the leg that was walked during it; before the first nothing was.
    seconds.label[0] = seconds.other_label[0] = -1
    legs = tuple(seen_by_recording(leg, window) for leg in legs)
    if recording.random() < family.two_walks:
        seconds = with_another_walk(recording, seconds, outing)
    receiver = draw_receiver(receiving, family)
    track, recorded = record(
        receiving, family, receiver, course.grid, seconds.time_s, seconds.places_m
    )
    if family.slope:
        track = with_elevations(track, seconds, outing.shared, receiving)
    truth = _truth(outing, seconds, legs, recorded, receiver)
    day = dt.datetime.fromtimestamp(first_s, dt.UTC).date()
    return Walk(
        seed=seed,
        difficulty=family.name,
        course=course,
        plan=plan_of(course, day, _older_deg(family, outing)),
        track=track,
        truth=truth,
    )


def _older_deg(family: Difficulty, outing: Outing) -> float:
    """Give how much the angle on the plan is out of date."""
    stale = [one.size for one in outing.shared.planted if one.cause == "gm-angle-stale"]
    return stale[0] if stale and family.old_angle_on_plan else 0.0


def _first_second(rng: np.random.Generator) -> float:
    days, seconds = int(rng.integers(0, 270)), int(rng.integers(0, 6 * 3600))
    return (FIRST_DAY + dt.timedelta(days=days, seconds=seconds)).timestamp()


def _truth(
    outing: Outing,
    seconds: Seconds,
    legs: tuple[LegTruth, ...],
    recorded: np.ndarray,
    receiver: Receiver,
) -> Truth:
    return Truth(
        time_s=seconds.time_s,
        east_m=np.ascontiguousarray(seconds.places_m[:, 0]),
        north_m=np.ascontiguousarray(seconds.places_m[:, 1]),
        label=seconds.label,
        other_label=seconds.other_label,
        kind=seconds.kind,
        recorded=recorded,
        legs=legs,
        order=tuple(outing.order),
        marked=outing.marked,
        bias_deg=outing.bias_deg,
        pace_factor=outing.pace_factor,
        planted=tuple(_walk_wide(outing)),
        receiver=receiver.as_dict(),
    )


def _walk_wide(outing: Outing) -> list[Planted]:
    planted = list(outing.shared.planted)
    made_for = outing.order
    whole = list(range(1, len(made_for) + 1))
    if made_for != whole and sorted(made_for) != made_for:
        planted.append(Planted(cause="order-changed", size=1.0, unit="point"))
    elif made_for != whole:
        missing = max(made_for, default=0) - len(made_for)
        planted.append(Planted(cause="point-skipped", size=float(missing), unit="point"))
    return planted
