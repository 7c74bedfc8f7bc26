"""What is a walker's own and stays with him through the whole outing. All numbers are chosen."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np


@dataclass(frozen=True, slots=True, kw_only=True)
class Habits:
    """One walker's lasting ways.

    Attributes
    ----------
    heading_sd_deg, compass_bias_deg : float
        How far off a sighting is by chance, and how far the compass hand is off always.
    pace_ratio : float
        True metres for a metre counted; ``pace_ratio_sd`` is how it varies from leg to leg.
    sighting : str
        "marks" for walking from mark to mark, "in-hand" for following the needle.
    notes : str
        When he writes at a point: "before" leaving it, some way "after", or while "walking".
    over_m : float
        What he always walks on beyond his count.
    restless_m : float
        How far he strolls about while he stands.
    """

    speed_m_s: float
    heading_sd_deg: float
    wobble_deg: float
    compass_bias_deg: float
    pace_ratio: float
    pace_ratio_sd: float
    sight_m: float
    sighting: str
    mark_m: float
    mark_halt_s: float
    stand_s: float
    stand_spread: float
    notes: str
    aside_m: float
    aside_back: bool
    bead_halt_s: float
    rest_every_m: float
    rest_s: float
    company: str
    search: str
    patience_s: float
    look_s: float
    over_m: float
    bypass: str
    lost_way: str
    restless_m: float


_SPEED_M_S = {"trained": 1.3, "ordinary": 1.18, "novice": 1.0}
_BY_MARKS = {"trained": 0.7, "ordinary": 0.5, "novice": 0.3}
_HEADING_SD_DEG = {"trained": (1.6, 2.5), "ordinary": (3.2, 4.6), "novice": (4.8, 6.2)}
_PACE_SD = {"trained": (0.014, 0.022), "ordinary": (0.025, 0.038), "novice": (0.04, 0.06)}
"""Of the ratio between walkers, and of one walker between legs."""

_SIGHT_M = {"trained": (12, 42), "ordinary": (12, 36), "novice": (8, 24)}
_SEARCHES = ("none", "look", "spiral", "back", "fan", "wander")
_SEARCH_SHARES = {
    "trained": (0.16, 0.27, 0.22, 0.14, 0.19, 0.02),
    "ordinary": (0.16, 0.24, 0.16, 0.15, 0.14, 0.15),
    "novice": (0.18, 0.2, 0.08, 0.14, 0.1, 0.3),
}
_LOST_WAYS = ("on", "back-to-claim", "redo", "relocate")
_LOST_SHARES = {
    "trained": (0.15, 0.15, 0.2, 0.5),
    "ordinary": (0.22, 0.18, 0.15, 0.45),
    "novice": (0.28, 0.12, 0.1, 0.5),
}


def draw_habits(rng: np.random.Generator, level: str) -> Habits:
    """Draw a walker of the level."""
    stand_s, stand_spread = _standing(rng)
    steps_aside = rng.random() < 0.28
    heading_sd_deg = float(rng.uniform(*_HEADING_SD_DEG[level]))
    rests = rng.random() < 0.2
    # Who rests often goes faster in between.
    speed_m_s = _SPEED_M_S[level] * float(np.exp(rng.normal(0, 0.14))) * (1.2 if rests else 1.0)
    by_marks = rng.random() < _BY_MARKS[level]
    between_walkers, between_legs = _PACE_SD[level]
    # Each argument draws in its turn: another order makes other walks.
    return Habits(
        speed_m_s=float(np.clip(speed_m_s, 0.75, 1.75)),
        heading_sd_deg=heading_sd_deg,
        wobble_deg=float(rng.uniform(1.0, 2.2)) * heading_sd_deg + 2.0,
        compass_bias_deg=float(rng.normal(0, 0.35 * heading_sd_deg)),
        pace_ratio=float(np.exp(rng.normal(0, between_walkers))),
        pace_ratio_sd=between_legs,
        sighting="marks" if by_marks else "in-hand",
        mark_m=float(rng.uniform(25, 90)),
        mark_halt_s=float(rng.choice([0.0, 3.0, 8.0], p=(0.45, 0.35, 0.2))),
        bead_halt_s=float(rng.uniform(3, 9)) if rng.random() < 0.3 else 0.0,
        rest_every_m=float(rng.uniform(250, 700)) if rests else 0.0,
        rest_s=float(rng.uniform(50, 240)),
        over_m=float(rng.uniform(5, 22)) if rng.random() < 0.25 else 0.0,
        sight_m=float(rng.uniform(*_SIGHT_M[level])),
        stand_s=stand_s,
        stand_spread=stand_spread,
        notes=_pick(rng, ("before", "after", "walking"), (0.62, 0.22, 0.16)),
        aside_m=float(rng.uniform(4, 14)) if steps_aside else 0.0,
        aside_back=bool(rng.random() < 0.35),
        company=_pick(rng, ("alone", "waits", "leapfrog"), (0.7, 0.2, 0.1)),
        search=_pick(rng, _SEARCHES, _SEARCH_SHARES[level]),
        patience_s=float(rng.uniform(90, 600)),
        look_s=float(rng.uniform(2, 18)),
        bypass=_pick(rng, ("box", "arc", "through"), (0.4, 0.35, 0.25)),
        lost_way=_pick(rng, _LOST_WAYS, _LOST_SHARES[level]),
        restless_m=float(rng.choice([0.4, 1.5, 4.0], p=(0.4, 0.4, 0.2))),
    )


def fitted_to(habits: Habits, marker: str) -> Habits:
    """Give the same walker on a course whose points are marked in this way."""
    if marker == "small":
        return replace(habits, sight_m=max(3.5, 0.35 * habits.sight_m))
    if marker == "none":
        # With nothing to find he looks round for the ground the map shows, or not at all.
        search = "none" if habits.search in ("none", "spiral", "fan") else "look"
        lost_way = habits.lost_way if habits.lost_way == "relocate" else "on"
        return replace(habits, sight_m=0.0, search=search, lost_way=lost_way)
    return habits


def _standing(rng: np.random.Generator) -> tuple[float, float]:
    """Draw the median time at a point and how much it varies: each walker is of one sort."""
    sort = rng.random()
    if sort < 0.22:
        return float(rng.uniform(1, 6)), 0.5
    if sort < 0.72:
        return float(rng.uniform(15, 60)), 0.45
    return float(rng.uniform(80, 240)), 0.4


def _pick(rng: np.random.Generator, names: tuple[str, ...], shares: tuple[float, ...]) -> str:
    return names[int(rng.choice(len(names), p=shares))]
