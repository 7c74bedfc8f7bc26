"""Wrong azimuths: what stands on the compass when a setting goes wrong.

r is the turn off the planned grid azimuth, G the grid-magnetic angle, C the
convergence, M the magnetic azimuth; the predictions are those of the table of mistakes.
"""

from __future__ import annotations

import numpy as np

from audit.units import turn_degrees, wrap_degrees
from walks.courses import Course

ANGLE_CAUSES = (
    "gm-angle-omitted",
    "gm-angle-reversed",
    "gm-angle-doubled",
    "declination-for-gm-angle",
)
SETTING_CAUSES = (
    *ANGLE_CAUSES,
    "reciprocal",
    "right-angle",
    "bezel-clicks",
    "dial-misread",
    "bezel-wrong-way",
    "mils-as-degrees",
    "neighbour-azimuth",
    "azimuth-digits",
)


def sign(rng: np.random.Generator) -> float:
    """Give -1 or +1."""
    return float(rng.choice([-1.0, 1.0]))


def angle_error_deg(cause: str, course: Course) -> float:
    """Give r for the mistakes with the grid-magnetic angle."""
    angle = course.grid_magnetic_angle_deg
    return {
        "gm-angle-omitted": angle,
        "gm-angle-reversed": 2.0 * angle,
        "gm-angle-doubled": -angle,
        "declination-for-gm-angle": -course.convergence_deg,
    }[cause]


def wrong_setting_deg(
    rng: np.random.Generator, cause: str, course: Course, leg: int, azimuth_deg: float
) -> float | None:
    """Give the turn off the right azimuth for a setting mistake, None where it has no effect."""
    magnetic = wrap_degrees(azimuth_deg - course.grid_magnetic_angle_deg)
    if cause in ANGLE_CAUSES:
        return angle_error_deg(cause, course)
    if cause == "reciprocal":
        return 180.0
    if cause == "right-angle":
        return sign(rng) * 90.0
    if cause == "bezel-clicks":
        return sign(rng) * 3.0 * float(rng.integers(1, 5))
    if cause == "dial-misread":
        return sign(rng) * float(rng.choice([5.0, 10.0]))
    if cause == "bezel-wrong-way":
        return turn_degrees(0.0, -2.0 * magnetic)
    if cause == "mils-as-degrees":
        read = magnetic * 6400.0 / 360.0 / 10.0 if rng.random() < 0.5 else 5.625 * magnetic
        return turn_degrees(magnetic, read)
    if cause == "neighbour-azimuth":
        near = [n for n in (leg - 1, leg + 1) if 0 <= n < course.leg_count]
        other = course.card_azimuth_deg[int(rng.choice(near))]
        return turn_degrees(azimuth_deg, other)
    return _digit_slip_deg(rng, magnetic)


def _digit_slip_deg(rng: np.random.Generator, magnetic_deg: float) -> float | None:
    digits = list(f"{round(magnetic_deg) % 360:03d}")
    first, second = [(0, 1), (1, 2), (0, 2)][int(rng.integers(3))]
    if rng.random() < 0.7:
        digits[first], digits[second] = digits[second], digits[first]
    else:
        digits[first] = str(rng.integers(0, 10 if first else 4))
    read = float("".join(digits))
    if read >= 360.0 or abs(turn_degrees(magnetic_deg, read)) < 1.0:
        return None
    return turn_degrees(float(round(magnetic_deg)), read)
