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
    "wrong-grid-line",
)


def plot_wrongly(
    rng: np.random.Generator,
    intent: LegIntent,
    cause: str,
    course: Course,
    leg: int,
    *,
    true_digits: bool = False,
) -> None:
    """Move the place that the walker makes for, where that can be walked at all."""
    if np.any(intent.plotted_shift_m):
        return
    axis = np.array([1.0, 0.0]) if rng.random() < 0.5 else np.array([0.0, 1.0])
    if true_digits and cause in ("digits-transposed", "digit-wrong"):
        shift = _slip_among_digits_m(rng, cause, course.points_m[leg + 1], axis) * axis
    elif cause == "wrong-grid-line":
        shift = sign(rng) * 1000.0 * axis
    elif cause == "digits-transposed":
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
    longest_m = 1000.0 if cause == "wrong-grid-line" else 800.0
    if not 40.0 <= size <= longest_m or float(np.hypot(*(planned + shift))) < 60.0:
        return
    intent.plotted_shift_m = shift
    intent.plant(cause, size, "m")


def _slip_among_digits_m(
    rng: np.random.Generator, cause: str, point_m: np.ndarray, axis: np.ndarray
) -> float:
    """Change the 8-figure reference of a point on one axis: swap or misread hundreds and tens."""
    coordinate = int(point_m @ axis) % 100_000
    digits = [int(digit) for digit in f"{coordinate:05d}"]
    place = 2 if rng.random() < 0.7 else 1
    changed = list(digits)
    if cause == "digits-transposed":
        changed[place], changed[place + 1] = changed[place + 1], changed[place]
    else:
        changed[place] = int(rng.integers(0, 10))
    return float(int("".join(map(str, changed))) - coordinate)
