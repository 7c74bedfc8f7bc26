"""A second look at where each leg began and ended, once all legs have been found.

The odds of all ways leave a few moments open for each end. What the walk looks like for minutes
before and after each of them tells more than the signs that are weighed for every portion: a
search from a detour, a rest on the way from one at the point. How much, is learnt (`trees`).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache

import numpy as np

from audit.matching.open_ends import LOOKS, LookedAt, Odds, OpenEnds
from audit.matching.other_legs import End
from audit.matching.portions import IndexArray
from audit.matching.reading import LegReading
from audit.matching.trees import Trees, shipped_trees
from audit.matching.walk_layout import WalkLaidOut
from audit.settings import MatchingSettings
from audit.units import FloatArray

ENDS: tuple[End, End] = ("start", "claim")


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SecondLook:
    """The odds of each leg with what the second look says, and what it looked at."""

    odds: list[Odds]
    open_ends: Mapping[End, OpenEnds]


@cache
def learnt_trees() -> Mapping[End, Trees]:
    """Give the trees that are shipped; made anew by ``python -m learning.ends``."""
    shipped = shipped_trees("learnt_ends.json", LOOKS)
    return {"start": Trees.of(shipped["start"]), "claim": Trees.of(shipped["claim"])}


def looked_at_again(
    odds: Sequence[Odds],
    readings: Sequence[LegReading],
    laid_out: WalkLaidOut,
    settings: MatchingSettings,
) -> SecondLook:
    """Give the odds of each leg with what the second look says of both its ends.

    ``readings`` are those by the odds alone. Only legs read as walked are looked at, and not by
    a slip. How likely it is that they were walked stays as it was; so does what was reckoned
    into silences.
    """
    weighed = [dict(of) for of in odds]
    looked_at, path_m = LookedAt(odds, readings, laid_out, settings), laid_out.cuts.path_m
    open_ends = {end: looked_at.open_ends(end) for end in ENDS}
    says = {end: _by_leg(open_ends[end], end, path_m, settings) for end in ENDS}
    for leg in range(len(odds)):
        at_start, at_claim = says["start"].get(leg), says["claim"].get(leg)
        if at_start is None or at_claim is None:
            continue
        of = weighed[leg]["leg"]
        nats = _looked_up(at_start, of.first) + _looked_up(at_claim, of.second)
        anew = of.probability * np.exp(nats)
        anew *= of.share / anew.sum()
        weighed[leg]["leg"] = replace(of, probability=anew)
    return SecondLook(odds=weighed, open_ends=open_ends)


def _by_leg(
    ends: OpenEnds, end: End, path_m: FloatArray, settings: MatchingSettings
) -> dict[int, tuple[IndexArray, FloatArray]]:
    """Give what the trees say of each open end, by leg: its cuts and their nats.

    It moves odds from one of them to another, and none to those that were not looked at. Of
    moments at one place, as before and after a halt, it says the same: the trees learnt which
    halt ended a leg, and not which side of it, for either is right within the tolerance.
    """
    if not len(ends.leg):
        return {}
    nats = learnt_trees()[end](ends.looks) * settings.second_look_weight
    apart = np.abs(np.diff(path_m[ends.cut])) > settings.second_look_place_m
    place = np.concatenate([[0], np.cumsum(apart | (np.diff(ends.leg) != 0))])
    nats = (np.bincount(place, ends.odds * nats) / np.bincount(place, ends.odds))[place]
    legs, row = np.unique(ends.leg, return_inverse=True)
    before = np.bincount(row, ends.odds)
    after = np.bincount(row, ends.odds * np.exp(nats))
    nats -= np.log(after / before)[row]
    return {int(leg): (ends.cut[row == n], nats[row == n]) for n, leg in enumerate(legs)}


def _looked_up(said: tuple[IndexArray, FloatArray], cuts: IndexArray) -> FloatArray:
    """Give the nats of some cuts; 0 of those that were not looked at."""
    known, nats = said
    place = np.clip(np.searchsorted(known, cuts), 0, len(known) - 1)
    return np.where(known[place] == cuts, nats[place], 0.0)
