"""From a cleaned track and a leg card to the portion of the walk that each leg has."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import partial

import numpy as np

from audit.leg_card import LegCard
from audit.matching.broad_look import BroadLook
from audit.matching.first_look import near_evidence
from audit.matching.gone_to_later import with_points_gone_to
from audit.matching.learnt import learnt
from audit.matching.leg_match import CleanTrack, LegMatch, Match
from audit.matching.noted_moments import NotedMoment
from audit.matching.passed_in_turn import may_be_put_right, puts_right
from audit.matching.pins import PINNED_GAIN, Pin
from audit.matching.read_legs import read_legs
from audit.matching.route import walked_route, with_slips
from audit.matching.stays import Stays
from audit.matching.supposed_walkers import (
    broad_walkers,
    fan_of_walkers,
    known_better,
    prior_cost,
    walkers_of_half_or_twice,
)
from audit.matching.walk_layout import SampledWalk, WalkLaidOut, lay_out
from audit.matching.walker import Walker
from audit.matching.ways import EdgeOdds, Ways, ways_of
from audit.read_only import read_only
from audit.settings import MatchingSettings


def match_walk(
    clean: CleanTrack,
    card: LegCard,
    settings: MatchingSettings,
    pins: Sequence[Pin] = (),
    noted: Sequence[NotedMoment] = (),
) -> Match:
    """Find the portion of the walk that each leg of the card has, around the pinned ends.

    A semi-Markov dynamic programme over candidate cuts, in the walker's own dead-reckoning
    frame: a leg is known by where it began, its heading and its length, and only then by how
    near it ended to its point. Instead of the one best way it adds up all ways, for a fan of
    supposed walkers, and chooses for each leg the portion that is most probably right.
    """
    laid_out = lay_out(clean, card, settings, pins, noted=noted)
    match = match_laid_out(laid_out, card, settings)
    return looked_at_again(match, laid_out, card, settings, pins, noted)


def looked_at_again(
    match: Match,
    walk: SampledWalk,
    card: LegCard,
    settings: MatchingSettings,
    pins: Sequence[Pin] = (),
    noted: Sequence[NotedMoment] = (),
) -> Match:
    """Look once more at a walk of which legs are not walked or far from their points.

    Legs from point to point then gain, and that is believed where legs astray turn out so.
    """
    if not may_be_put_right(match, walk, card, settings):
        return match
    gaining = replace(settings, gain_point_to_point=settings.gain_where_astray)
    laid_out = lay_out(walk.clean, card, gaining, pins, noted=noted)
    other = match_laid_out(laid_out, card, gaining)
    right = puts_right(other, match, walk, card, settings)
    return replace(other, cost=match.cost) if right else match


def match_laid_out(laid_out: WalkLaidOut, card: LegCard, settings: MatchingSettings) -> Match:
    """Match a walk that is laid out already.

    Where a leg stays in doubt, half or twice the distance on every leg is supposed as well, and
    believed where it explains the walk much better, and its legs are known as well: on a winding
    path it fits by chance. Slips lead to so many places that a walk passes some by chance. So
    they are supposed only of legs that stay in doubt without them, only where the walker then
    went on by the card, and believed only where more legs are known by them, or the walk is
    explained much better.
    """
    stays = in_play(Stays(laid_out.evidence), card, settings)
    weighed = weigh(stays, card, settings, fan_of_walkers(card, settings))
    match = _match(weighed, laid_out, card, settings)
    if not all(_known(leg, settings.slip_sure) for leg in match.legs):
        others = _of_half_or_twice(stays, weighed, card, settings)
        if others:
            anew = weigh(stays, card, settings, [*weighed.walkers, *others])
            other = _match(anew, laid_out, card, settings)
            if _explains_better(other, match, settings):
                weighed, match = anew, other
    route = with_slips(stays.evidence.route, card, _in_doubt(match, settings), settings)
    if route is stays.evidence.route:
        return match
    stays = stays.narrowed(stays.evidence.on(route))
    slipped = _match(weigh(stays, card, settings, weighed.walkers), laid_out, card, settings)
    return slipped if _is_better(slipped, match, settings) else match


def _of_half_or_twice(
    stays: Stays, weighed: Weighed, card: LegCard, settings: MatchingSettings
) -> list[Walker]:
    """Give those who walk half or twice every distance and fit nearly as well as the best."""
    worst = weighed.cost + settings.fan_keep_nats
    return [
        ways.walker
        for ways in ways_of(stays, walkers_of_half_or_twice(settings))
        if ways.total + prior_cost(ways.walker, card, settings) < worst
    ]


def _explains_better(other: Match, match: Match, settings: MatchingSettings) -> bool:
    """Tell whether half or twice the distance explains the walk much better, and all its legs.

    As many legs have to be walked, and nearly as many known: on a winding path any distance
    fits something. And it has to be about half or twice still, once the walker is known better.
    """
    walked, before = (sum(leg.status == "walked" for leg in of.legs) for of in (other, match))
    known, known_before = (
        sum(_known(leg, settings.slip_before_sure) for leg in of.legs) for of in (other, match)
    )
    return (
        other.cost < match.cost - settings.half_or_twice_nats
        and abs(float(np.log2(other.pace_scale))) >= settings.half_or_twice_still
        and walked >= before
        and known >= settings.half_or_twice_known * known_before
    )


def _is_better(slipped: Match, match: Match, settings: MatchingSettings) -> bool:
    """Tell whether slips put more legs beyond doubt, or explain the walk much better."""
    more = _told(slipped, settings) > _told(match, settings)
    return more or slipped.cost < match.cost - settings.slips_nats


def _told(match: Match, settings: MatchingSettings) -> int:
    """Count the legs of which it is known that they were walked, or surely left out."""
    return sum(
        _known(leg, settings.slip_before_sure)
        or (leg.status == "skipped" and leg.confidence >= settings.slip_sure)
        for leg in match.legs
    )


def _known(leg: LegMatch, sure: float) -> bool:
    """Tell whether a leg is known to have been walked, as sure as this by the odds alone."""
    return leg.status == "walked" and leg.sure_by_odds >= sure


def _in_doubt(match: Match, settings: MatchingSettings) -> list[int]:
    """Give the legs in doubt before the last one that is known to have been walked."""
    known = [leg.leg for leg in match.legs if _known(leg, settings.slip_before_sure)]
    before = match.legs[: max(known, default=0)]
    return [leg.leg for leg in before if not _known(leg, settings.slip_sure)]


def _match(
    weighed: Weighed, laid_out: WalkLaidOut, card: LegCard, settings: MatchingSettings
) -> Match:
    legs = read_legs(weighed.odds, laid_out, len(card.legs), settings)
    return Match(
        legs=with_points_gone_to(legs, laid_out, card, settings),
        noise_m=laid_out.movement.noise_m,
        halts=read_only(laid_out.samples.time_s[laid_out.movement.halts].reshape(-1, 2)),
        bias_deg=weighed.best.bias_deg,
        pace_scale=weighed.best.pace_scale,
        cost=weighed.cost + PINNED_GAIN * len(laid_out.pins.of_leg),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Weighed:
    """All ways weighed, for a few walkers: of each his weight and the odds of the portions."""

    odds: list[tuple[float, list[EdgeOdds]]]
    walkers: list[Walker]
    best: Walker
    cost: float


def weigh(
    stays: Stays, card: LegCard, settings: MatchingSettings, fan: Iterable[Walker]
) -> Weighed:
    """Weigh all ways for a fan of supposed walkers; the best few are worked out twice."""
    prior = partial(prior_cost, card=card, settings=settings)
    kept: list[Ways] = []
    for ways in ways_of(stays, list(fan)):
        # Weighed few at once, the best kept: all of them would fill the memory.
        kept.append(ways)
        kept.sort(key=lambda ways: ways.total + prior(ways.walker))
        if len(kept) > settings.fan_keep:
            del kept[settings.fan_keep :]
            stays.evidence.directions.let_go()  # most are those of walkers who are out
    least = kept[0].total + prior(kept[0].walker)
    kept = [
        ways for ways in kept if ways.total + prior(ways.walker) - least < settings.fan_keep_nats
    ]
    odds = [ways.edge_odds() for ways in kept]
    for _ in range(settings.rounds):
        walkers = [
            known_better(ways.walker, of, stays.evidence, settings)
            for ways, of in zip(kept, odds, strict=True)
        ]
        kept, odds = [], []  # before the next ones take as much memory again
        kept = list(ways_of(stays, walkers))
        odds = [ways.edge_odds() for ways in kept]
    costs = np.array([ways.total + prior(ways.walker) for ways in kept])
    weights = np.exp(costs.min() - costs)
    weights /= weights.sum()
    return Weighed(
        odds=[(float(w), of) for w, of in zip(weights, odds, strict=True)],
        walkers=[ways.walker for ways in kept],
        best=kept[int(np.argmin(costs))].walker,
        cost=float(costs.min()),
    )


def in_play(stays: Stays, card: LegCard, settings: MatchingSettings) -> Stays:
    """Leave only the portions that a walker of whom little is supposed may have walked.

    Nearly all are beside any way through the whole course; one look at all finds the others.
    """
    stays = stays.narrowed(near_evidence(stays, card, settings))
    seen = BroadLook(stays, broad_walkers(card, settings)).in_play(settings.in_play_nats)
    narrow = stays.evidence.narrowed(seen, learnt())
    stays.evidence.forget()  # a recording of many walks is laid out many times
    walked = [edge for edge, index in seen if len(index)]
    narrow.route = walked_route(narrow.route, walked)
    return stays.narrowed(narrow)
