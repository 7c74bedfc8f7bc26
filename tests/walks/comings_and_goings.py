"""What comes before and after the course: the car, the walk in, the walk off, another walk."""

from __future__ import annotations

import numpy as np

from audit.units import FloatArray
from walks.outings import Outing
from walks.seconds import Seconds
from walks.trails import Gait, Tag, Trail, along
from walks.truth import KINDS


def come_to_start(outing: Outing) -> None:
    """From the car, or in it, to the start; there a halt to plan."""
    rng, trail, difficulty = outing.rng, outing.trail, outing.difficulty
    tag = Tag(kind="approach")
    if outing.chance(difficulty.vehicle):
        park = trail.position_m.copy()
        far = park + along(float(rng.uniform(0.0, 360.0)), float(rng.uniform(800.0, 4000.0)))
        trail.position_m = far
        trail.add(far[None, :].copy(), tag)
        drive = Gait(speed_m_s=float(rng.uniform(8.0, 18.0)), unevenness=0.3)
        trail.go_by_way_of(park, int(rng.integers(1, 4)), drive, tag)
    trail.halt(float(rng.uniform(5.0, 120.0)), tag)
    start = outing.course.points_m[0] + outing.shared.start_shift_m
    if outing.chance(difficulty.pace_strip):
        end = trail.position_m + along(float(rng.uniform(0.0, 360.0)), 100.0)
        back = trail.position_m.copy()
        for _ in range(int(rng.integers(1, 3))):
            trail.go_through(np.array([end, back]), outing.gait, tag)
    trail.go_by_way_of(start + rng.normal(0.0, 1.5, 2), int(rng.integers(0, 3)), outing.gait, tag)
    if outing.chance(difficulty.halt_at_point):
        trail.halt(float(rng.uniform(20.0, 240.0)), Tag(kind="at-point"))


def walk_off(outing: Outing, car_m: FloatArray) -> None:
    """Go home: to the car or elsewhere, perhaps a drive."""
    rng, trail = outing.rng, outing.trail
    tag = Tag(kind="walk-off")
    goal = car_m
    if outing.chance(0.4):
        goal = trail.position_m + along(
            float(rng.uniform(0.0, 360.0)), float(rng.uniform(*outing.difficulty.approach_m))
        )
    trail.go_by_way_of(goal, int(rng.integers(0, 3)), outing.gait, tag)
    trail.halt(float(rng.uniform(5.0, 120.0)), tag)
    if outing.chance(outing.difficulty.vehicle):
        far = trail.position_m + along(
            float(rng.uniform(0.0, 360.0)), float(rng.uniform(800.0, 4000.0))
        )
        drive = Gait(speed_m_s=float(rng.uniform(8.0, 18.0)), unevenness=0.3)
        trail.go_by_way_of(far, 2, drive, tag)


def with_another_walk(rng: np.random.Generator, seconds: Seconds, outing: Outing) -> Seconds:
    """Put a walk that has nothing to do with the course before or after this one."""
    before = bool(rng.random() < 0.5)
    place = outing.course.points_m[0] + along(
        float(rng.uniform(0.0, 360.0)), float(rng.uniform(200.0, 4000.0))
    )
    trail = Trail(rng, place)
    tag = Tag(kind="approach" if before else "walk-off")
    for _ in range(int(rng.integers(3, 8))):
        goal = place + rng.normal(0.0, 400.0, 2)
        trail.go_by_way_of(goal, int(rng.integers(0, 3)), outing.gait, tag)
        if rng.random() < 0.5:
            trail.halt(float(rng.uniform(20.0, 300.0)), tag)
    places, columns = trail.arrays()
    columns["kind"][:] = KINDS.index(tag.kind)
    apart_s = float(np.round(rng.uniform(0.6, 20.0) * 3600.0))
    if before:
        first_s = float(seconds.time_s[0]) - apart_s - len(places)
    else:
        first_s = float(seconds.time_s[-1]) + apart_s
    other = Seconds(
        time_s=first_s + np.arange(len(places), dtype=float), places_m=places, **columns
    )
    parts = (other, seconds) if before else (seconds, other)
    return Seconds(
        time_s=np.concatenate([part.time_s for part in parts]),
        places_m=np.concatenate([part.places_m for part in parts]),
        label=np.concatenate([part.label for part in parts]),
        other_label=np.concatenate([part.other_label for part in parts]),
        kind=np.concatenate([part.kind for part in parts]),
    )
