"""Who walks: body, compass hand, counting, patience and manners. All numbers are chosen."""

from __future__ import annotations

import math
from dataclasses import dataclass
from random import Random

from agent_walks.weighted import pick


@dataclass(slots=True, kw_only=True)
class Traits:
    """The numbers that make one walker.

    Attributes
    ----------
    style : str
        "marks" from mark to mark, "leapfrog" the same with a partner sent ahead, "needle"
        with the compass in hand, or by "feel" with a look at it now and then.
    bias_deg, set_sd_deg, sight_sd_deg, veer_sd_deg : float
        How far off he always is, and by chance: at setting, at sighting, and by feel.
    slide : float
        How far a slope takes him down, of a metre walked.
    pace_ratio : float
        What he counts for a metre walked; ``pace_ratio_sd`` is how it varies by leg.
    adjust : float
        How much of what a slope takes from his pace he allows for in the count.
    habit : int
        The hand on which he likes to go round things.
    alert, checks_code : float
        How well he looks out, and how often he makes sure that a post is his.
    dawdle : float
        How long his halts are, against those of others.
    """

    style: str
    speed_m_s: float
    bias_deg: float
    set_sd_deg: float
    sight_sd_deg: float
    veer_sd_deg: float
    wobble_deg: float
    slide: float
    pace_ratio: float
    pace_ratio_sd: float
    adjust: float
    counts_bypass: bool
    habit: int
    resight_s: float
    knot_s: float
    alert: float
    patience_s: float
    checks_code: float
    halts_per_km: float
    dawdle: float


_STYLES = {
    "trained": (("marks", 74), ("leapfrog", 12), ("needle", 14)),
    "ordinary": (("marks", 50), ("leapfrog", 6), ("needle", 30), ("feel", 14)),
    "novice": (("marks", 30), ("leapfrog", 3), ("needle", 35), ("feel", 32)),
}
_SET_SD_DEG = {"trained": 1.5, "ordinary": 2.4, "novice": 3.2}
_BIAS_SD_DEG = {"trained": 0.7, "ordinary": 1.4, "novice": 1.8}
_SIGHT_SD_DEG = {"trained": 2.2, "ordinary": 3.5, "novice": 4.6}
_VEER_SD_DEG = {"trained": 0.9, "ordinary": 1.4, "novice": 1.7}
_PACE_SD = {"trained": 0.017, "ordinary": 0.024, "novice": 0.035}
_RANK = {"trained": 0, "ordinary": 1, "novice": 2}


def make_traits(rng: Random, level: str) -> Traits:
    """Draw a walker of a level."""
    rank = _RANK[level]
    # Each argument draws in its turn: another order makes other walks.
    return Traits(
        style=pick(rng, _STYLES[level]),
        speed_m_s=min(1.7, max(1.15, rng.gauss(1.42, 0.12))),
        bias_deg=rng.gauss(0.0, _BIAS_SD_DEG[level]),
        set_sd_deg=_SET_SD_DEG[level],
        sight_sd_deg=_SIGHT_SD_DEG[level] * rng.uniform(0.7, 1.2),
        veer_sd_deg=_VEER_SD_DEG[level],
        wobble_deg=rng.uniform(2.0, 5.0) + 0.7 * rank,
        slide=rng.uniform(0.02, 0.12) * (1 + 0.5 * rank),
        pace_ratio=math.exp(rng.gauss(0.0, _PACE_SD[level])),
        pace_ratio_sd=_PACE_SD[level],
        adjust=min(1.0, max(0.0, rng.gauss((0.85, 0.65, 0.4)[rank], 0.15))),
        counts_bypass=rng.random() < (0.05, 0.2, 0.4)[rank],
        habit=rng.choice((-1, 1)),
        resight_s=rng.choice((0.0, 3.0, 5.0, 8.0)) + rng.uniform(0, 3),
        knot_s=rng.choice((0.0, 0.0, 2.0, 4.0)),
        alert=rng.uniform(0.5, 1.0) * (1.0, 0.8, 0.6)[rank],
        patience_s=math.exp(rng.gauss(math.log((420, 560, 700)[rank]), 0.45)),
        checks_code=(0.9, 0.7, 0.45)[rank],
        halts_per_km=_one_draw_on(rng).uniform(0.4, 2.2) * (0.7, 1.0, 1.4)[rank],
        dawdle=math.exp(rng.gauss(0.0, 0.35)) * (0.8, 1.0, 1.25)[rank],
    )


def _one_draw_on(rng: Random) -> Random:
    """Draw a number that nothing reads: without it all that follows would be drawn anew."""
    rng.random()
    return rng
