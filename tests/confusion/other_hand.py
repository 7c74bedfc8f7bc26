"""The same table on walks of a simulator that another hand wrote, where it lies at hand.

Its walker, receiver and courses share nothing with `tests/walks`; what is planted is
ours: a mistake of the whole walk, one of a single leg, both at once, or none. Where the
two meet, the whole walk's is planted on that leg as well.

    PYTHONPATH=.:tests python -m confusion.other_hand --seeds development --walks 120
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from accuracy.research_prototype import loaded
from accuracy.seeds import SEEDS, first_seeds
from honesty.other_hand import CORNER_M, as_walk, simulated
from walks import DIFFICULTIES, LegTruth, Walk
from walks.truth import Planted

import audit
from audit.geodesy.reference_digits import digit_values
from confusion.planted import Sort
from confusion.table import as_text, figures
from confusion.verdicts import Verdict, verdicts

LEVELS = (1, 2, 3)
WALK_CAUSES = (
    "gm-angle-omitted", "gm-angle-reversed", "gm-angle-doubled", "steady-bias", "pace-long",
    "pace-short",
)  # fmt: skip
LEG_CAUSES = ("reciprocal", "dial-misread", "hundred-miscounted", "digit-wrong", "veer")
NOTHING_HAPPENS = dict.fromkeys((
    "p_skip", "p_swap", "p_rep", "p_late", "p_aband", "p_lost", "p_decl", "p_plot", "p_rec",
    "p_over", "p_byp", "collinear",
), 0.0)  # fmt: skip
"""What its walker does besides, left out here: what is planted is the only mistake."""
OWN_BIAS_DEG, OWN_PACE = 0.8, 0.015


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What is planted in one walk: of the whole walk, and of one leg; "" for nothing."""

    whole: str
    whole_size: float
    leg: int
    slip: str
    slip_size: float
    own_bias_deg: float
    own_pace: float
    angle_deg: float
    legs: int

    def forced(self) -> dict[str, Any]:
        """Say it in the simulator's own words."""
        turned = self.whole_size if _unit(self.whole) == "deg" else 0.0
        slip: Mapping[str, Any] = {
            "": {},
            "reciprocal": {"gross": self.slip_size},
            "dial-misread": {"gross": self.slip_size},
            "hundred-miscounted": {"extra": self.slip_size},
            "digit-wrong": {"plot": [self.slip_size, 0.0]},
            "veer": {"curve": self.slip_size},
        }[self.slip]
        return {
            "gm": self.angle_deg,
            "bias": self.own_bias_deg + turned,
            "scale": self.own_pace * (self.whole_size if _unit(self.whole) == "ratio" else 1.0),
            "marked": False,
            "leg": {self.leg: dict(slip)},
        }


def asked(seed: int, level: int) -> Asked:
    """Draw what is planted: always the same for a seed."""
    rng = np.random.default_rng([seed, 7])
    angle = float(rng.choice([-1.0, 1.0]) * rng.uniform(2.0, 16.0))
    legs = int(rng.integers(4, 9))
    whole = str(rng.choice(WALK_CAUSES)) if rng.random() < 0.5 else ""
    slip = str(rng.choice(LEG_CAUSES)) if rng.random() < 0.5 else ""
    side = float(rng.choice([-1.0, 1.0]))
    whole_size = {
        "": 0.0,
        "gm-angle-omitted": angle,
        "gm-angle-reversed": 2.0 * angle,
        "gm-angle-doubled": -angle,
        "steady-bias": side * rng.uniform(5.0, 13.0),
        "pace-long": rng.uniform(1.07, 1.2),
        "pace-short": 1.0 / rng.uniform(1.07, 1.2),
    }[whole]
    leg = int(rng.integers(0, legs))
    slip_size = {
        "": 0.0,
        "reciprocal": 180.0,
        "dial-misread": side * 10.0,
        "hundred-miscounted": side * 100.0,
        "digit-wrong": _moved_m(seed, level, legs, leg, rng) if slip == "digit-wrong" else 0.0,
        "veer": side * rng.uniform(15.0, 35.0),
    }[slip]
    return Asked(
        whole=whole,
        whole_size=float(whole_size),
        leg=leg,
        slip=slip,
        slip_size=float(slip_size),
        own_bias_deg=float(rng.normal(0.0, OWN_BIAS_DEG)),
        own_pace=float(1.0 + rng.normal(0.0, OWN_PACE)),
        angle_deg=angle,
        legs=legs,
    )


def _moved_m(seed: int, level: int, legs: int, leg: int, rng: np.random.Generator) -> float:
    """Draw a wrong digit of hundreds of metres in the easting of a leg's end, up to 3 away."""
    simulator = loaded("sim")
    walker = {**simulator.LEVELS[level], **NOTHING_HAPPENS}
    points = simulator.make_course(np.random.default_rng(seed), walker, legs)[0]
    digit = digit_values(float(points[leg + 1][0]) + CORNER_M[0])[1]
    near = [other for other in range(10) if 0 < abs(other - digit) <= 3]
    return 100.0 * (int(rng.choice(near)) - digit)


def planted_walk(seed: int, level: int) -> tuple[Asked, Walk]:
    """Have it walked, and note down what was planted where."""
    what = asked(seed, level)
    simulation = simulated(seed, level, force=what.forced(), L=what.legs, P_over=NOTHING_HAPPENS)
    walk = as_walk(simulation, seed, f"other hand, level {level}")
    legs = tuple(_with_planted(leg, what) for leg in walk.truth.legs)
    truth = replace(
        walk.truth, legs=legs, bias_deg=what.own_bias_deg, pace_factor=what.forced()["scale"]
    )
    return what, replace(walk, truth=truth)


def judged(seed: int, level: int) -> list[Verdict]:
    """Debrief one of its walks, and set what is said beside what was planted."""
    what, walk = planted_walk(seed, level)
    ordinary = loaded("sim").LEVELS[level]
    family = replace(
        DIFFICULTIES["ordinary"],
        bias_sd_deg=OWN_BIAS_DEG,
        leg_sd_deg=float(ordinary["az"]),
        pace_sd=OWN_PACE,
        leg_pace_sd=float(ordinary["pace_leg"]),
    )
    debrief = audit.debrief(walk.plan, walk.track)
    by_walk, by_leg = (
        verdicts(
            Sort(difficulty=walk.difficulty, cause=cause, whole_walk=whole), walk, debrief, family
        )
        for whole, cause in ((True, what.whole), (False, what.slip))
    )
    return _both(by_walk, by_leg, what)


def _both(by_walk: Sequence[Verdict], by_leg: Sequence[Verdict], what: Asked) -> list[Verdict]:
    """Join what stands out by the scatter of the walk, and what by that of a single leg."""
    return [
        replace(one, separable=(one.separable - {what.slip}) | (other.separable & {what.slip}))
        for one, other in zip(by_walk, by_leg, strict=True)
    ]


def _with_planted(leg: LegTruth, what: Asked) -> LegTruth:
    made = []
    if what.whole:
        made.append(Planted(cause=what.whole, size=what.whole_size, unit=_unit(what.whole)))
    if what.slip and leg.leg == what.leg:
        # A line that bends evenly ends half as far off as it bends.
        size = what.slip_size / 2.0 if what.slip == "veer" else what.slip_size
        made.append(Planted(cause=what.slip, size=size, unit=_unit(what.slip)))
    return replace(leg, planted=tuple(made))


def _unit(cause: str) -> str:
    if cause in ("pace-long", "pace-short"):
        return "ratio"
    return "m" if cause in ("hundred-miscounted", "digit-wrong") else "deg"


def main(arguments: Sequence[str] | None = None) -> int:
    """Print the table for each level of the other simulator."""
    parser = argparse.ArgumentParser(
        prog="python -m confusion.other_hand", description=main.__doc__
    )
    parser.add_argument("--seeds", choices=sorted(SEEDS), default="development")
    parser.add_argument("--walks", type=int, default=40, help="of each level")
    parser.add_argument("--levels", nargs="+", type=int, choices=LEVELS, default=LEVELS)
    chosen = parser.parse_args(arguments)
    for level in chosen.levels:
        print(f"level {level}")
        seeds = first_seeds(chosen.seeds, chosen.walks)
        print(as_text(figures([one for seed in seeds for one in judged(seed, level)])))
    return 0


if __name__ == "__main__":
    sys.exit(main())
