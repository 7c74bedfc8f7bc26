"""What tells how sure a leg may be that has been read: its odds, and how both its ends look.

The odds of all ways say how likely a portion is under the costs that were weighed. How far they
may be trusted is another question: they are right less often where the walk about an end looks
like no end of a leg, where the recorder is poor, or where the legs beside it are in doubt.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

import numpy as np

from audit.matching.cuts import Cuts
from audit.matching.open_ends import LOOKS, OpenEnds, shares_at
from audit.matching.other_legs import End
from audit.matching.portions import IndexArray
from audit.matching.reading import LegReading, is_near
from audit.matching.second_look import ENDS, SecondLook
from audit.matching.trees import Trees, shipped_trees
from audit.settings import MatchingSettings
from audit.units import FloatArray

_MOST_NATS = 14.0
"""Odds are told no further than this: about one in a million."""

_OF_THE_LEG = (
    "right_nats", "right_by_odds_nats", "walked_nats", "start_moved_s", "claim_moved_s",
    "legs", "legs_walked_share", "leg_before_nats", "next_leg_nats", "others_nats",
)  # fmt: skip
_OF_AN_END = ("near_nats", "away_nats", "spread_nats", "open_moments", *LOOKS)

SURE_LOOKS = (*_OF_THE_LEG, *(f"{end}_{look}" for end in ENDS for look in _OF_AN_END))
"""The names of the readings of a leg, in the order of their columns.

How likely the portion is, how likely the one was that was read without the second look, and that
the leg was walked at all; how far the second look moved its ends; how many legs the course has, how
many of them were walked, and how sure the legs beside it and all others are; and of each end how
much of the odds lies near it, how much on the likeliest moment away from it, how widely they are
spread, over how many moments, and what the second look saw of it.
"""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SureLooks:
    """The legs that can be looked at; ``leg`` has shape (n,), ``looks`` (n, len(SURE_LOOKS))."""

    leg: IndexArray
    looks: FloatArray


@cache
def learnt_trust() -> Trees:
    """Give the trees that are shipped; made anew by ``python -m learning.sure``."""
    return Trees.of(shipped_trees("learnt_sure.json", SURE_LOOKS)["trees"])


def trust_in(
    by_odds: Sequence[LegReading],
    readings: Sequence[LegReading],
    seen: SecondLook,
    cuts: Cuts,
    settings: MatchingSettings,
) -> dict[int, float]:
    """Give by leg the nats by which its odds may be trusted more, or less, than others.

    ``by_odds`` and ``readings`` are the legs as read without and with the second look. Nothing is
    said of legs that were not looked at a second time, nor of those that were read otherwise
    than as walked from the start by either.
    """
    of = sure_looks(by_odds, readings, seen, cuts, settings)
    if not len(of.leg):
        return {}
    nats = said_by(learnt_trust(), of.looks, settings)
    return dict(zip(of.leg.tolist(), nats.tolist(), strict=True))


def said_by(trees: Trees, looks: FloatArray, settings: MatchingSettings) -> FloatArray:
    """Give what trees say of some legs, in nats, as far as they are heard."""
    most = settings.trust_most_nats
    return np.asarray(np.clip(settings.trust_weight * trees(looks), -most, most))


def nats_of(share: float) -> float:
    """Give a share of the odds in nats for it against the rest."""
    least = float(np.exp(-_MOST_NATS))
    within = min(max(share, least), 1.0 - least)
    return float(np.log(within / (1.0 - within)))


def sure_looks(
    by_odds: Sequence[LegReading],
    readings: Sequence[LegReading],
    seen: SecondLook,
    cuts: Cuts,
    settings: MatchingSettings,
) -> SureLooks:
    """Look at all legs read as walked, without and with the second look, that it looked at."""
    looked_at = [set(seen.open_ends[end].leg.tolist()) for end in ENDS]
    legs = [
        (leg, reading.first, reading.second)
        for leg, reading in enumerate(readings)
        if leg in looked_at[0] & looked_at[1] and reading.kind == by_odds[leg].kind == "leg"
        if reading.first is not None and reading.second is not None
    ]
    rows = [
        [
            *_of_the_leg(leg, by_odds, readings, cuts),
            *_of_an_end(leg, "start", first, seen, cuts, settings),
            *_of_an_end(leg, "claim", second, seen, cuts, settings),
        ]
        for leg, first, second in legs
    ]
    looks = np.array(rows).reshape(len(legs), len(SURE_LOOKS))
    return SureLooks(leg=np.array([leg for leg, _, _ in legs], dtype=np.int64), looks=looks)


def _of_the_leg(
    leg: int, by_odds: Sequence[LegReading], readings: Sequence[LegReading], cuts: Cuts
) -> list[float]:
    here, there = readings[leg], by_odds[leg]
    moved_s = [
        abs(float(cuts.time_s[now] - cuts.time_s[before]))
        if now is not None and before is not None
        else 0.0
        for now, before in ((here.first, there.first), (here.second, there.second))
    ]
    nats = [nats_of(of.right) for of in readings]
    others = nats[:leg] + nats[leg + 1 :]
    return [
        nats[leg],
        nats_of(there.right),
        nats_of(here.share),
        *moved_s,
        len(readings),
        sum(of.kind != "none" for of in readings) / len(readings),
        nats[leg - 1] if leg else _MOST_NATS,
        nats[leg + 1] if leg + 1 < len(readings) else _MOST_NATS,
        float(np.mean(others)) if others else _MOST_NATS,
    ]


def _of_an_end(
    leg: int, end: End, read: int, seen: SecondLook, cuts: Cuts, settings: MatchingSettings
) -> list[float]:
    """Look at one end, read as some cut; of those looked at the nearest stands for it."""
    at, _, share = shares_at(seen.odds[leg]["leg"], end)
    near = is_near(cuts, np.array([read]), at, settings)[0]
    away = float(share[~near].max(initial=0.0))
    spread = float(-(share * np.log(np.maximum(share, 1e-12))).sum())
    opened: OpenEnds = seen.open_ends[end]
    rows = np.flatnonzero(opened.leg == leg)
    row = rows[int(np.argmin(np.abs(cuts.time_s[opened.cut[rows]] - cuts.time_s[read])))]
    return [
        nats_of(float(share[near].sum())),
        nats_of(away),
        spread,
        len(rows),
        *opened.looks[row].tolist(),
    ]
