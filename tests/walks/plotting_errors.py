"""Points plotted in a wrong place on the walker's own map."""

from __future__ import annotations

import numpy as np

from walks.courses import Course
from walks.leg_intents import LegIntent
from walks.wrong_settings import sign

PLOTTING_CAUSES = (
    "digits-transposed",
    "digit-wrong",
    "easting-northing-swapped",
    "wrong-plotting-scale",
)


def plot_wrongly(
    rng: np.random.Generator, intent: LegIntent, cause: str, course: Course, leg: int
) -> None:
    if np.any(intent.plotted_shift_m):
        return
    axis = np.array([1.0, 0.0]) if rng.random() < 0.5 else np.array([0.0, 1.0])
    if cause == "digits-transposed":
        shift = sign(rng) * 90.0 * float(rng.integers(1, 5)) * axis
    elif cause == "digit-wrong":
        shift = sign(rng) * 100.0 * float(rng.integers(1, 4)) * axis
    elif cause == "easting-northing-swapped":
        within = np.mod(course.points_m[leg + 1], 1000.0)
        half = float(within[1] - within[0])
        shift = np.array([half, -half])
    else:
        within = np.mod(course.points_m[leg + 1], 1000.0)
        shift = within if rng.random() < 0.5 else -within / 2.0
    size = float(np.hypot(*shift))
    planned = course.points_m[leg + 1] - course.points_m[leg]
    if not 40.0 <= size <= 800.0 or float(np.hypot(*(planned + shift))) < 60.0:
        return
    intent.plotted_shift_m = shift
    intent.plant(cause, size, "m")
