"""One person out on one course: what stays the same from leg to leg."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

import numpy as np

from audit.units import FloatArray
from walks.courses import Course
from walks.difficulties import Difficulty
from walks.trails import Gait, Trail
from walks.truth import Planted
from walks.walk_mistakes import WalkMistakes, draw_walk_mistakes

BEND_DEG = 20.0
"""Truth convention: a change of course less sharp than this, without a halt, is walking on.

A point in sight that needs no sharper turn is walked up to, and the leg ends at it; a
search that begins straight on is an overshoot, and the leg ends where it first turns.
"""


@dataclass(slots=True, kw_only=True)
class LegRecord:
    """A leg as it was walked, in seconds of the trail (indices)."""

    leg: int
    start: int
    claim: int
    search_end: int
    set_azimuth_deg: float
    count_m: float
    pace_factor: float
    finished: bool = True
    found: bool | None = None
    attempts: list[tuple[int, int]] = field(default_factory=list)
    planted: tuple[Planted, ...] = ()


@dataclass(slots=True, kw_only=True)
class Outing:
    """A walker, his course and his trail so far."""

    rng: np.random.Generator
    difficulty: Difficulty
    course: Course
    shared: WalkMistakes
    trail: Trail
    gait: Gait
    marked: bool
    markers_m: FloatArray
    sight_m: float
    bias_deg: float
    pace_factor: float
    plotted_shift_m: FloatArray = field(default_factory=lambda: np.zeros(2))
    records: dict[int, LegRecord] = field(default_factory=dict)
    order: list[int] = field(default_factory=list)

    def chance(self, probability: float) -> bool:
        """Throw the dice."""
        return bool(self.rng.random() < probability)

    def leg_gait(self) -> Gait:
        """Give the gait on one leg: the ground changes the speed."""
        speed = self.gait.speed_m_s * float(np.clip(self.rng.lognormal(0.0, 0.15), 0.6, 1.5))
        return replace(self.gait, speed_m_s=speed)


def begin_outing(
    rng: np.random.Generator, difficulty: Difficulty, course: Course, first_place_m: FloatArray
) -> Outing:
    """Draw a walker and set him down where the recording of him begins."""
    shared = draw_walk_mistakes(rng, difficulty, course)
    gait = Gait(
        speed_m_s=float(rng.uniform(*difficulty.speed_m_s)),
        wander_deg=float(rng.uniform(*difficulty.wander_deg)),
        wander_s=float(rng.uniform(*difficulty.wander_s)),
        sighting_deg=difficulty.sighting_sd_deg,
    )
    pace = shared.pace * float(np.exp(rng.normal(0.0, difficulty.pace_sd)))
    return Outing(
        rng=rng,
        difficulty=difficulty,
        course=course,
        shared=shared,
        trail=Trail(rng, first_place_m),
        gait=gait,
        marked=bool(rng.random() < difficulty.marked),
        markers_m=course.points_m + course.marker_shift_m,
        sight_m=float(rng.uniform(*difficulty.sight_m)),
        bias_deg=float(rng.normal(0.0, difficulty.bias_sd_deg)),
        pace_factor=float(np.clip(pace, 0.4, 2.2)),
    )
