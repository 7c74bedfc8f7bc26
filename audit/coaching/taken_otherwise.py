"""Legs that ended at each other's points: the points were taken in another order."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import pairwise

from audit.coaching.steps import LegSteps
from audit.leg_card import CardPoint
from audit.measurement.leg_measures import LegAudit, LegMeasures
from audit.settings import CoachingSettings
from audit.words import sentence


def taken_otherwise(
    legs: Sequence[LegAudit], sure: Mapping[str, LegMeasures], radius_m: float,
    settings: CoachingSettings,
) -> dict[str, CardPoint]:  # fmt: skip
    """Give, by name of leg, the point at which it ended, where such legs only swap their points.

    One leg that ended at another's point may have been led there by any mistake. Two or
    more that ended at each other's, none left over, are an order.
    """
    near_m = settings.other_point_radii * radius_m
    ends = {leg.card.name: leg.card.end for leg in legs if not leg.card.end.dead_reckoned}
    at = {}
    for name in ends.keys() & sure.keys():
        point, away_m = min(
            ((end, _away_m(sure[name], end)) for end in ends.values()), key=lambda one: one[1]
        )
        if point.name != ends[name].name and away_m <= near_m < sure[name].miss_m:
            at[name] = point
    while at:
        planned, taken = {ends[name].name for name in at}, {point.name for point in at.values()}
        left = {
            name: point
            for name, point in at.items()
            if point.name in planned and ends[name].name in taken
        }
        if len(left) == len(at):
            break
        at = left
    in_order = [name for name in ends if name in at]
    once = len({at[name].name for name in in_order}) == len(in_order)
    return {name: at[name] for name in in_order} if once else {}


def _away_m(measures: LegMeasures, point: CardPoint) -> float:
    return math.hypot(measures.claim.east_m - point.east_m, measures.claim.north_m - point.north_m)


def out_of_order(legs: Sequence[LegAudit], taken: Mapping[str, CardPoint]) -> dict[str, str]:
    """Give those legs, and each that set out from the end of one, with the name of that point."""
    names = [leg.card.name for leg in legs]
    left_from = {after: taken[name].name for name, after in pairwise(names) if name in taken}
    return {**left_from, **{name: point.name for name, point in taken.items()}}


def without_their_steps(
    steps: Mapping[str, LegSteps], aside: Mapping[str, str]
) -> dict[str, LegSteps]:
    """Lay neither card nor log beside legs that were walked as other legs."""
    return {
        name: replace(of, hops=(), sentences=(sentence("step-other-order", point=aside[name]),))
        if name in aside
        else of
        for name, of in steps.items()
    }
