"""What goes wrong on a leg, planted on purpose. All shares and sizes are chosen."""

from __future__ import annotations

from dataclasses import dataclass, field
from random import Random
from typing import NamedTuple

from agent_walks.weighted import pick

NEVER = 1e9
"""Metres that no count comes to."""


class Iron(NamedTuple):
    """Something that draws the needle, most at one share of the count."""

    at: float
    width_m: float
    turn_deg: float


@dataclass(slots=True, kw_only=True)
class Fault:
    """Everything planted on one leg; the default is a leg without a mistake.

    A turn is noticed at ``notice_m`` of the count; ``early`` and ``give_up`` are shares of it;
    ``shift_m`` is how far from its point the leg is begun; ``skip`` is how the leg is left out.
    """

    turn_deg: float = 0.0
    notice_m: float = NEVER
    length_factor: float = 1.0
    length_add_m: float = 0.0
    veer_deg: float = 0.0
    slide_factor: float = 1.0
    iron: Iron | None = None
    shift_m: float = 0.0
    early: float | None = None
    skip: str = ""
    give_up: float | None = None
    causes: list[str] = field(default_factory=list)

    def name(self, cause: str) -> None:
        """Note a cause once."""
        if cause not in self.causes:
            self.causes.append(cause)


_OF_LEG = {"trained": 0.11, "ordinary": 0.12, "novice": 0.17}
_OF_OUTING = {"trained": 0.04, "ordinary": 0.09, "novice": 0.12}
_SKIPPED = {"trained": 0.008, "ordinary": 0.02, "novice": 0.055}
_UNFINISHED = {"trained": 0.006, "ordinary": 0.015, "novice": 0.045}
"""Chances of a mistake on a leg, of one on the whole outing, and of a leg not ended."""

_SKIPS = (("next-line", 45), ("cut-across", 25), ("led", 30))
_SINGLE = (
    ("hundred-miscounted", 20),
    ("neighbour-azimuth", 9),
    ("azimuth-digits", 7),
    ("reciprocal", 6),
    ("right-angle", 5),
    ("bezel-clicks", 9),
    ("dial-misread", 8),
    ("bezel-wrong-way", 3),
    ("single-double-pace", 4),
    ("early-stop", 12),
    ("overshoot", 11),
    ("veer", 11),
    ("sidehill", 8),
    ("magnetic-disturbance", 5),
    ("wrong-start", 7),
)
_WHOLE = (
    ("gm-angle-omitted", 32),
    ("gm-angle-reversed", 12),
    ("gm-angle-doubled", 8),
    ("pace-long", 18),
    ("pace-short", 18),
    ("steady-bias", 14),
)


def _turned(rng: Random, name: str, magnetic: int, other: int) -> float:
    """How far off the planned azimuth a wrong setting sends him."""
    if name == "neighbour-azimuth":
        return float(other - magnetic)
    if name == "azimuth-digits":
        hundreds, tens, ones = magnetic // 100, magnetic // 10 % 10, magnetic % 10
        swapped = (100 * hundreds + 10 * ones + tens, 100 * tens + 10 * hundreds + ones)
        swaps = [read for read in swapped if read < 360 and read != magnetic]
        swaps = swaps or [(magnetic + 10) % 360]
        return float(rng.choice(swaps) - magnetic)
    if name == "reciprocal":
        return 180.0
    if name == "right-angle":
        return rng.choice((-90.0, 90.0))
    if name == "bezel-clicks":
        return 3.0 * rng.choice((-4, -3, -2, 2, 3, 4))
    if name == "dial-misread":
        return rng.choice((-10.0, -10.0, -5.0, 5.0, 10.0, 10.0))
    return -2.0 * magnetic


def _plant(
    rng: Random, fault: Fault, name: str, length_m: float, magnetic: int, other: int
) -> None:
    """Put one mistake on one leg."""
    if name == "hundred-miscounted":
        add = rng.choice((-100.0, 100.0))
        fault.length_add_m = 100.0 if length_m < 180 else add
    elif name == "single-double-pace":
        fault.length_factor = 0.5 if length_m > 900 or rng.random() < 0.6 else 2.0
    elif name == "early-stop":
        fault.early = rng.uniform(0.6, 0.87)
    elif name == "overshoot":
        fault.length_factor = rng.uniform(1.17, 1.45)
    elif name == "veer":
        fault.veer_deg = rng.choice((-1, 1)) * rng.uniform(16.0, 38.0)
    elif name == "sidehill":
        fault.slide_factor = rng.uniform(6.0, 12.0)
    elif name == "magnetic-disturbance":
        fault.iron = Iron(
            rng.uniform(0.2, 0.6),
            rng.uniform(60, 140),
            rng.choice((-1, 1)) * rng.uniform(20, 50),
        )
    elif name == "wrong-start":
        fault.shift_m = rng.uniform(35.0, 110.0)
    else:
        fault.turn_deg = _turned(rng, name, magnetic, other)
        big = abs((fault.turn_deg + 180) % 360 - 180)
        if big < 4:
            return
        if rng.random() < min(0.85, big / 120.0):
            # The sun on the wrong cheek, a slope that should not be there: he notices.
            fault.notice_m = rng.uniform(40.0, 260.0)
    fault.name(name)


def _whole_outing(rng: Random, faults: list[Fault], level: str, gm_angle_deg: float) -> None:
    """A mistake that goes through all legs, or through the first of them till it is noticed."""
    if rng.random() > _OF_OUTING[level]:
        return
    name = pick(rng, _WHOLE)
    if name.startswith("gm") and abs(gm_angle_deg) < 3.0:
        return
    last = len(faults)
    if name.startswith("gm") and rng.random() < 0.5:
        last = rng.randint(1, len(faults))
    ratio = 1.0 + rng.uniform(0.07, 0.17)
    turn = {
        "gm-angle-omitted": gm_angle_deg,
        "gm-angle-reversed": 2 * gm_angle_deg,
        "gm-angle-doubled": -gm_angle_deg,
        "steady-bias": rng.choice((-1, 1)) * rng.uniform(4, 9),
    }
    for fault in faults[:last]:
        fault.name(name)
        fault.turn_deg += turn.get(name, 0.0)
        if name == "pace-long":
            fault.length_factor *= ratio
        elif name == "pace-short":
            fault.length_factor /= ratio


def make_faults(
    rng: Random, level: str, plan: list[tuple[float, float]], gm_angle_deg: float
) -> list[Fault]:
    """Draw the mistakes of an outing, one Fault a leg."""
    count = len(plan)
    faults = [Fault() for _ in range(count)]
    magnetics = [round(azimuth_deg - gm_angle_deg) % 360 for azimuth_deg, _ in plan]
    _whole_outing(rng, faults, level, gm_angle_deg)
    for leg, fault in enumerate(faults):
        if fault.causes:
            continue
        if rng.random() < _OF_LEG[level]:
            before = leg and rng.random() < 0.75
            other = magnetics[leg - 1] if before else magnetics[(leg + 1) % count]
            _plant(rng, fault, pick(rng, _SINGLE), plan[leg][1], magnetics[leg], other)
        elif 0 < leg < count - 1 and rng.random() < _SKIPPED[level]:
            fault.skip = pick(rng, _SKIPS)
            fault.name("point-skipped")
        elif rng.random() < _UNFINISHED[level]:
            fault.give_up = rng.uniform(0.15, 0.85)
    return faults
