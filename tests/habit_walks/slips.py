"""Mistakes, of the whole walk and of single legs, and the orders a walker really follows.

All shares, weights and sizes are chosen.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import NamedTuple

import numpy as np

from audit.units import FloatArray
from habit_walks.course import Course
from habit_walks.habits import Habits
from habit_walks.trace import Tracer


class Rail(NamedTuple):
    """A path followed aside between two shares of the count."""

    begin: float
    end: float
    turn_deg: float


class Iron(NamedTuple):
    """Something that draws the needle, most at one share of the count."""

    at: float
    width_m: float
    turn_deg: float


class Decoy(NamedTuple):
    """Something taken for the point, at a share of the count and so far to the right."""

    at: float
    aside_m: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """What the walker truly does on one leg, his own errors included.

    ``count_m`` is what his count must reach, ``ratio`` true metres per counted metre;
    ``veer_per_100m_deg`` turns him more and more; who is ``blind`` does not see the point;
    ``give_up_at`` is a share of the count.
    """

    azimuth_deg: float
    count_m: float
    ratio: float
    veer_per_100m_deg: float = 0.0
    slope_turn_deg: float = 0.0
    rail: Rail | None = None
    iron: Iron | None = None
    blind: bool = False
    paced_bypass: bool = False
    unequal_bypass: bool = False
    decoy: Decoy | None = None
    give_up_at: float | None = None
    causes: tuple[str, ...] = ()


_WALK_SHARE = {"trained": 0.06, "ordinary": 0.11, "novice": 0.15}
_LEG_SHARE = {"trained": 0.09, "ordinary": 0.16, "novice": 0.2}
_WALK_SLIPS = (
    "gm-angle-omitted",
    "gm-angle-reversed",
    "gm-angle-doubled",
    "steady-bias",
    "pace-long",
    "pace-short",
    "single-double-pace",
)
_WALK_WEIGHTS = (0.22, 0.1, 0.1, 0.16, 0.2, 0.16, 0.06)
_LEG_WEIGHTS = {
    "hundred-miscounted": 14,
    "bezel-clicks": 8,
    "dial-misread": 8,
    "azimuth-digits": 5,
    "neighbour-azimuth": 5,
    "reciprocal": 2,
    "right-angle": 2,
    "early-stop": 9,
    "overshoot": 9,
    "veer": 7,
    "sidehill": 6,
    "handrail": 6,
    "bypass-unequal": 6,
    "bypass-paced": 4,
    "magnetic-disturbance": 3,
    "digits-transposed": 3,
    "digit-wrong": 3,
    "wrong-point": 7,
    "passed-unseen": 5,
}


_TURNS = (
    "bezel-clicks",
    "dial-misread",
    "reciprocal",
    "right-angle",
    "azimuth-digits",
    "neighbour-azimuth",
)


def _turned(order: Order, degrees: float) -> Order:
    return replace(order, azimuth_deg=(order.azimuth_deg + degrees) % 360.0)


def walk_slip(rng: np.random.Generator, course: Course, level: str) -> str | None:
    """A mistake made on every leg of the walk, or none."""
    if rng.random() >= _WALK_SHARE[level]:
        return None
    name = str(rng.choice(_WALK_SLIPS, p=_WALK_WEIGHTS))
    if name.startswith("gm-angle") and abs(course.gm_angle_deg) < 4.0:
        return None
    return name


def steady_size(rng: np.random.Generator, name: str | None) -> float:
    """How big a lasting mistake is: degrees, or a factor on the distance.

    Drawn for a walk without one, too, so that the rest of the walk does not hang on it.
    """
    if name == "steady-bias":
        return float(rng.choice([-1.0, 1.0]) * rng.uniform(5, 11))
    if name == "pace-long":
        return float(rng.uniform(1.1, 1.25))
    if name == "pace-short":
        return float(rng.uniform(0.78, 0.91))
    return float(rng.choice([0.5, 2.0], p=(0.75, 0.25)))


def _with_walk_slip(order: Order, name: str, size: float, gm_angle_deg: float) -> Order:
    turns = {
        "gm-angle-omitted": gm_angle_deg,
        "gm-angle-reversed": 2 * gm_angle_deg,
        "gm-angle-doubled": -gm_angle_deg,
    }
    order = replace(order, causes=(*order.causes, name))
    if name in turns:
        return _turned(order, turns[name])
    if name == "steady-bias":
        return _turned(order, size)
    return replace(order, ratio=order.ratio * size)


def plain_order(
    tracer: Tracer,
    habits: Habits,
    azimuth_and_length: tuple[float, float],
    steady: tuple[str | None, float],
    gm_angle_deg: float,
) -> Order:
    """The order with no slip of this leg: ordinary scatter and what the walker always does."""
    azimuth_deg, length_m = azimuth_and_length
    lean = habits.compass_bias_deg + 0.85 * habits.heading_sd_deg * tracer.normal()
    ratio = habits.pace_ratio * (1.0 + habits.pace_ratio_sd * tracer.normal())
    over = min(habits.over_m, 0.06 * length_m)
    order = Order(azimuth_deg=(azimuth_deg + lean) % 360.0, count_m=length_m + over, ratio=ratio)
    name, size = steady
    return order if name is None else _with_walk_slip(order, name, size, gm_angle_deg)


def _wrong_digits(rng: np.random.Generator, magnetic_deg: float) -> float:
    """Degrees added by two digits swapped or one digit wrong, never an angle above 360."""
    digits = f"{round(magnetic_deg) % 360:03d}"
    for _ in range(20):
        if rng.random() < 0.5:
            hundreds, tens, ones = digits[0], digits[1], digits[2]
            wrong = str(rng.choice([tens + hundreds + ones, hundreds + ones + tens]))
        else:
            place = int(rng.integers(0, 3))
            wrong = digits[:place] + str(int(rng.integers(0, 10))) + digits[place + 1 :]
        if int(wrong) < 360 and int(wrong) != int(digits):
            return float(int(wrong) - int(digits))
    return 0.0


def _plot_shift(rng: np.random.Generator, name: str, length: float) -> FloatArray:
    """A point plotted wrong along one grid axis, as far as a careful look would let pass."""
    size = 90.0 * int(rng.integers(1, 5)) if name == "digits-transposed" else 100.0
    size = size if size < 0.7 * length else 90.0 if name == "digits-transposed" else 50.0
    shift = np.zeros(2)
    shift[int(rng.integers(0, 2))] = size * float(rng.choice([-1.0, 1.0]))
    return shift


def _turn_slip(rng: np.random.Generator, course: Course, index: int, name: str) -> float:
    azimuth, _ = course.leg(index)
    side = float(rng.choice([-1.0, 1.0]))
    if name == "bezel-clicks":
        return side * 3.0 * int(rng.integers(1, 5))
    if name == "dial-misread":
        return side * float(rng.choice([5.0, 10.0]))
    if name == "reciprocal":
        return 180.0
    if name == "right-angle":
        return 90.0 * side
    if name == "neighbour-azimuth":
        other = index + 1 if index + 1 < course.count else index - 1
        return course.leg(other)[0] - azimuth
    return _wrong_digits(rng, (azimuth - course.gm_angle_deg) % 360.0)


def _shape_slip(rng: np.random.Generator, order: Order, name: str, downhill_deg: float) -> Order:
    side = float(rng.choice([-1.0, 1.0]))
    if name == "veer":
        total = rng.uniform(14, 32)
        return replace(
            order, veer_per_100m_deg=side * float(total / max(order.count_m / 100.0, 1.5))
        )
    if name == "sidehill":
        below = np.sin(np.radians(downhill_deg - order.azimuth_deg))
        return replace(order, slope_turn_deg=float(np.sign(below) * rng.uniform(5, 10)))
    if name == "handrail":
        begin = float(rng.uniform(0.1, 0.45))
        end = begin + float(rng.uniform(0.25, 0.45))
        return replace(order, rail=Rail(begin, end, side * float(rng.uniform(10, 26))))
    if name == "magnetic-disturbance":
        where, wide = float(rng.uniform(0.2, 0.7)), float(rng.uniform(30, 60))
        return replace(order, iron=Iron(where, wide, side * float(rng.uniform(20, 40))))
    if name == "bypass-paced":
        return replace(order, paced_bypass=True)
    if name == "bypass-unequal":
        return replace(order, unequal_bypass=True)
    if name == "passed-unseen":
        return replace(order, blind=True, count_m=order.count_m * rng.uniform(1.2, 1.45))
    return order


def _length_slip(rng: np.random.Generator, order: Order, name: str) -> Order:
    if name == "hundred-miscounted":
        hundreds = 1 if rng.random() < 0.85 else 2
        sign = -1.0 if order.count_m > 100.0 * hundreds + 90 and rng.random() < 0.5 else 1.0
        return replace(order, count_m=order.count_m + sign * 100.0 * hundreds)
    if name == "early-stop":
        return replace(order, count_m=order.count_m * rng.uniform(0.62, 0.86))
    return replace(order, blind=True, count_m=order.count_m * rng.uniform(1.18, 1.5))


def leg_slip(rng: np.random.Generator, level: str) -> str | None:
    """The mistake of one leg, or none."""
    if rng.random() >= _LEG_SHARE[level]:
        return None
    names = tuple(_LEG_WEIGHTS)
    weights = np.array(list(_LEG_WEIGHTS.values()), float)
    return str(rng.choice(names, p=weights / weights.sum()))


def slipped_order(
    rng: np.random.Generator, course: Course, index: int, order: Order, name: str
) -> Order:
    """The order with the named mistake of this leg in it; unchanged where it cannot happen."""
    azimuth, length = course.leg(index)
    if name in ("digits-transposed", "digit-wrong"):
        wrong = course.points_m[index + 1] + _plot_shift(rng, name, length) - course.points_m[index]
        turned = float(np.degrees(np.arctan2(*wrong))) - azimuth
        order = replace(_turned(order, turned), count_m=float(np.hypot(*wrong)))
    elif name in ("hundred-miscounted", "early-stop", "overshoot"):
        order = _length_slip(rng, order, name)
    elif name == "wrong-point":
        # Far enough short of the true point that the two are not one and the same.
        where = 1.0 - max(float(rng.uniform(0.08, 0.28)), 75.0 / max(length, 150.0))
        order = replace(order, decoy=Decoy(float(where), float(rng.uniform(-14, 14))))
    elif name in _TURNS:
        turn = _turn_slip(rng, course, index, name)
        if abs((turn + 180) % 360 - 180) < 2.5:
            return order
        order = _turned(order, turn)
    else:
        order = _shape_slip(rng, order, name, course.downhill_deg)
    return replace(order, causes=(*order.causes, name))
