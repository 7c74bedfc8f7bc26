"""Mistakes that a whole walk shares."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from audit.units import FloatArray, unit_vector
from walks.courses import Course
from walks.difficulties import Difficulty
from walks.truth import Planted
from walks.wrong_settings import ANGLE_CAUSES, angle_error_deg, sign


@dataclass(slots=True, kw_only=True)
class WalkMistakes:
    """What the whole walk shares."""

    turn_deg: float = 0.0
    pace: float = 1.0
    mil_circle: float = 0.0
    drift_m_per_m: float = 0.0
    downhill_deg: float = 0.0
    slope: float = 0.0
    slope_paced: bool = False
    uphill_pace: float = 1.0
    start_shift_m: FloatArray = field(default_factory=lambda: np.zeros(2))
    planted: list[Planted] = field(default_factory=list)


def pace_on_ground(shared: WalkMistakes, azimuth_deg: float) -> float:
    """Give what the slope of a leg makes of every metre that is paced there."""
    downhill = unit_vector(shared.downhill_deg)
    rise = -shared.slope * float(downhill @ unit_vector(azimuth_deg))
    ratio = float(1.0 / np.hypot(1.0, rise)) if shared.slope_paced else 1.0
    return ratio * (shared.uphill_pace if rise > 0.06 else 1.0)


def draw_walk_mistakes(
    rng: np.random.Generator, difficulty: Difficulty, course: Course
) -> WalkMistakes:
    """Draw what the whole walk shares; at most one mistake with the angle."""
    shared = WalkMistakes(slope=difficulty.slope)
    if difficulty.slope:
        shared.downhill_deg = float(rng.uniform(0.0, 360.0))
    for cause, chance in difficulty.walk_mistakes.items():
        if rng.random() >= chance:
            continue
        _plant_on_walk(rng, shared, cause, course)
    return shared


def _plant_on_walk(
    rng: np.random.Generator, shared: WalkMistakes, cause: str, course: Course
) -> None:
    has_angle = any(planted.unit == "deg" for planted in shared.planted)
    has_pace = any(planted.unit == "ratio" for planted in shared.planted)
    if cause in (*ANGLE_CAUSES, "gm-angle-stale", "steady-bias"):
        if has_angle:
            return
        if cause == "gm-angle-stale":
            size = sign(rng) * float(rng.uniform(0.5, 3.0))
        elif cause == "steady-bias":
            size = sign(rng) * float(rng.uniform(4.0, 15.0))
        else:
            size = angle_error_deg(cause, course)
        shared.turn_deg = size
        shared.planted.append(Planted(cause=cause, size=size, unit="deg"))
    elif cause in ("pace-long", "pace-short", "single-double-pace", "wrong-ruler"):
        if has_pace:
            return
        ratio = {
            "pace-long": float(rng.uniform(1.08, 1.25)),
            "pace-short": float(rng.uniform(0.75, 0.92)),
        }.get(cause, float(rng.choice([0.5, 2.0])))
        shared.pace = ratio
        shared.planted.append(Planted(cause=cause, size=ratio, unit="ratio"))
    elif cause == "wrong-mil-circle":
        shared.mil_circle = float(rng.choice([-0.0625, -0.0156, 0.067]))
        shared.planted.append(Planted(cause=cause, size=shared.mil_circle, unit="deg per deg"))
    elif cause == "sidehill":
        shared.drift_m_per_m = float(rng.uniform(0.04, 0.14))
        if not shared.slope:
            shared.downhill_deg = float(rng.uniform(0.0, 360.0))
        shared.planted.append(Planted(cause=cause, size=shared.drift_m_per_m, unit="m per m"))
    elif cause == "slope-paced":
        shared.slope_paced = True
        shared.planted.append(Planted(cause=cause, size=shared.slope, unit="m per m"))
    elif cause == "pace-short-uphill":
        shared.uphill_pace = float(rng.uniform(0.75, 0.9))
        shared.planted.append(Planted(cause="pace-short", size=shared.uphill_pace, unit="ratio"))
    elif cause == "wrong-start":
        shared.start_shift_m = float(rng.uniform(80.0, 300.0)) * unit_vector(
            float(rng.uniform(0.0, 360.0))
        )
        size = float(np.hypot(*shared.start_shift_m))
        shared.planted.append(Planted(cause=cause, size=size, unit="m"))
    else:
        message = f"{cause} is no mistake that a whole walk can share"
        raise ValueError(message)
