"""Which small change of a leg would tell two mistakes apart: tried, and worked out anew."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from audit.diagnosis.causes import CAUSES
from audit.forecast.leg_forecast import LegForecast, forecast_leg
from audit.forecast.near_areas import away_and_near_m
from audit.forecast.walker_scatter import WalkerScatter
from audit.leg_card import CardLeg, LegCard
from audit.rehearsal.changed_leg import with_end_moved
from audit.rehearsal.finished_rehearsal import LookAlike, Proposal, Way
from audit.rehearsal.leg_ways import leg_ways
from audit.rehearsal.look_alikes import look_alikes, mistakes_alike
from audit.rehearsal.paper_evidence import Heights
from audit.rehearsal.ways_on_ground import (
    OUT_OF_BOUNDS,
    Surroundings,
    planned_through,
    reference_of,
)
from audit.settings import ForecastSettings, Settings
from audit.words import sentence

Pair = tuple[str, str]
_SETTLES = {cause.name: cause.settles for cause in CAUSES}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Tried:
    """A change of a leg with what it makes of the look-alikes.

    ``meets`` are the areas that forbid it: a leg that it changes leads through them, or its
    point lies near them.
    """

    longer_m: float
    turned_deg: float
    moved_m: float
    leg: CardLeg
    ways: tuple[Way, ...]
    pairs: tuple[LookAlike, ...]
    meets: tuple[str, ...]


def proposals(
    card: LegCard,
    number: int,
    now: tuple[tuple[Way, ...], tuple[LookAlike, ...]],
    around: Surroundings,
    heights: Heights | None,
    walker: tuple[WalkerScatter, Settings],
) -> tuple[Proposal, ...]:
    """Give for the likeliest look-alikes of a leg the smallest change that tells them apart.

    A change is taken only where the leg as a whole has no more look-alikes than before, neither
    by pairs of mistakes nor by the weight of their ways, its point comes to lie neither out of
    bounds nor near another, and both legs that it changes keep off the areas.
    """
    leg, (ways, alike) = card.legs[number], now
    blind = [pair for pair in alike if not pair.by_line]
    asked = _likeliest(ways, blind, walker[1].rehearsal.told_pairs_tried)
    if not asked or why_no_change(card, number):
        return ()
    weight = sum(pair.weight for pair in blind)
    tried = [
        one
        for one in _changes(card, number, around, heights, walker)
        if _stands(one, leg, card, around)
    ]
    before = len(mistakes_alike(ways, blind))
    better = [one for one in tried if _weight(one) <= weight + 1e-12 and _count(one) <= before]
    return tuple(_proposal(pair, before, better) for pair in asked)


def why_no_change(card: LegCard, number: int) -> str:
    """Say why no change of a leg is tried; "" where they are."""
    leg = card.legs[number]
    if len(leg.line) > 2:
        return sentence("rehearse-not-straight")
    if leg.end is card.points[0]:
        return sentence("rehearse-is-start")
    return ""


def _likeliest(ways: Sequence[Way], blind: Sequence[LookAlike], most: int) -> list[Pair]:
    """Give the causes of the likeliest pairs, each pair once."""
    found: dict[Pair, None] = {}
    for pair in blind:
        found.setdefault(_causes(ways, pair))
    return list(found)[:most]


def _causes(ways: Sequence[Way], pair: LookAlike) -> Pair:
    return ways[pair.first].cause, ways[pair.second].cause


def _changes(
    card: LegCard,
    number: int,
    around: Surroundings,
    heights: Heights | None,
    walker: tuple[WalkerScatter, Settings],
) -> Iterator[_Tried]:
    """Give all changes, the smallest move of the point first."""
    scatter, settings = walker
    chosen, leg = settings.rehearsal, card.legs[number]
    moves = [(longer, 0.0) for longer in chosen.lengthen_m]
    moves += [(0.0, turned) for turned in chosen.turn_deg]
    moves += [
        (longer, turned)
        for longer in chosen.lengthen_m
        for turned in chosen.turn_deg
        if abs(longer) <= chosen.together_m and abs(turned) <= chosen.together_deg
    ]
    tried = []
    for longer_m, turned_deg in moves:
        if leg.distance_m + longer_m < min(chosen.shortest_leg_m, leg.distance_m):
            continue
        changed = with_end_moved(card, number, longer_m, turned_deg)
        there = changed.legs[number]
        moved_m = float(np.hypot(*(there.line[-1] - leg.line[-1])))
        tried.append((moved_m, longer_m, turned_deg, changed))
    for moved_m, longer_m, turned_deg, changed in sorted(tried, key=lambda one: one[:3]):
        there = changed.legs[number]
        ways, _ = leg_ways(changed, number, heights, settings)
        forecast = _forecast(there, scatter, changed, settings)
        yield _Tried(
            longer_m=longer_m, turned_deg=turned_deg, moved_m=moved_m, leg=there, ways=ways,
            pairs=tuple(p for p in look_alikes(ways, forecast, settings) if not p.by_line),
            meets=_meets(
                [there, *_others_anew(changed, card, number)],
                forecast, card.arrival_radius_m, around, settings.forecast,
            ),
        )  # fmt: skip


def _forecast(
    leg: CardLeg, scatter: WalkerScatter, card: LegCard, settings: Settings
) -> LegForecast:
    return forecast_leg(leg, scatter, card.arrival_radius_m, settings=settings.forecast)


def _weight(tried: _Tried) -> float:
    return sum(pair.weight for pair in tried.pairs)


def _count(tried: _Tried) -> int:
    return len(mistakes_alike(tried.ways, tried.pairs))


def _stands(tried: _Tried, leg: CardLeg, card: LegCard, around: Surroundings) -> bool:
    """Say whether the moved point may stand where it would: in bounds, and near no other."""
    end, already = tried.leg.end, planned_through(leg, around)
    if OUT_OF_BOUNDS in set(planned_through(tried.leg, around)) - set(already):
        return False
    others = [point for point in card.points if point.name != end.name]
    others += [point for _, point in around.beside]
    apart_m = 2.0 * card.arrival_radius_m
    return all(
        np.hypot(point.east_m - end.east_m, point.north_m - end.north_m) >= apart_m
        for point in others
    )


def _others_anew(changed: LegCard, card: LegCard, number: int) -> list[CardLeg]:
    """Give the other legs that change with the point: those that begin there."""
    pairs = enumerate(zip(changed.legs, card.legs, strict=True))
    return [one for n, (one, was) in pairs if one is not was and n != number]


def _meets(
    anew: Sequence[CardLeg],
    forecast: LegForecast,
    radius_m: float,
    around: Surroundings,
    settings: ForecastSettings,
) -> tuple[str, ...]:
    """Give the areas that legs worked out anew come into, or that the end of the first is near."""
    met = [name for leg in anew for name in planned_through(leg, around) if name != OUT_OF_BOUNDS]
    for area in (*around.areas.no_go, *around.areas.hazards):
        away_m, near_m = away_and_near_m(anew[0].end, area.shape, radius_m, forecast, settings)
        if away_m < near_m:
            met.append(area.name)
    return tuple(dict.fromkeys(met))


def _proposal(pair: Pair, before: int, tried: Sequence[_Tried]) -> Proposal:
    """Give the smallest change on which the two are look-alikes no longer, clear of all areas."""
    settles = " ".join(dict.fromkeys(_SETTLES[cause] for cause in pair))
    kept_off: tuple[str, ...] = ()
    for one in tried:
        if any({*_causes(one.ways, p)} == {*pair} for p in one.pairs):
            continue
        if one.meets:
            kept_off = kept_off or one.meets
        else:
            end = one.leg.end
            return Proposal(
                causes=pair,
                longer_m=one.longer_m,
                turned_deg=one.turned_deg,
                end=(end.east_m, end.north_m),
                reference=reference_of(end.longitude_deg, end.latitude_deg),
                apart_m=_nearest_m(one.ways, pair),
                pairs_before=before,
                pairs_after=_count(one),
                settles=settles,
            )
    return Proposal(
        causes=pair, longer_m=0.0, turned_deg=0.0, end=None, reference="", apart_m=0.0,
        pairs_before=before, pairs_after=before, settles=settles, kept_off=kept_off,
    )  # fmt: skip


def _nearest_m(ways: Sequence[Way], pair: Pair) -> float:
    """Give how near two causes come to each other with any of their ways."""
    first, second = (
        np.array([way.line[-1] for way in ways if way.cause == cause]) for cause in pair
    )
    if not len(first) or not len(second):
        return float("inf")
    return float(np.hypot(*np.moveaxis(first[:, None] - second[None, :], -1, 0)).min())
