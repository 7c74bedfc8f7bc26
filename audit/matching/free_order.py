"""A course whose points may be visited in any order: the order that was walked."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from audit.errors import refuse
from audit.leg_card import LegCard, card_in_order
from audit.matching.free_visits import find_visits
from audit.matching.leg_match import CleanTrack, LegMatch, LegStatus, Match
from audit.matching.orders import OrderOdds, weigh_orders
from audit.matching.outings import MatchedOuting, match_outings
from audit.matching.pins import Pin, PinnedCuts
from audit.matching.route import Edge, Route, course_points
from audit.matching.supposed_walkers import fan_of_walkers, prior_cost
from audit.matching.walk_layout import lay_out
from audit.settings import MatchingSettings
from audit.units import direction_degrees, wrap_degrees


def find_order(
    clean: CleanTrack, card: LegCard, settings: MatchingSettings, pins: Sequence[Pin] = ()
) -> OrderOdds:
    """Find in which order the points of a card were visited, and which were not.

    The legs of the card, whatever they are, only name the points: leg n leads to point n.
    The same evidence as for a planned order is weighed for the way from every point to
    every other, for some supposed walkers; the walker that fits best is believed.
    """
    laid_out = lay_out(clean, card, settings, pins, plan=any_order_route)
    ending = np.exp(-settings.cost_point_not_visited * np.arange(len(card.legs), -1, -1.0))
    must = frozenset(pin.leg for pin in pins)
    best: tuple[float, OrderOdds] | None = None
    for walker in fan_of_walkers(card, settings):
        odds = weigh_orders(find_visits(laid_out.evidence, walker), len(card.legs), ending, must)
        prior = float(np.exp(-prior_cost(walker, card, settings)))
        if best is None or odds.total * prior > best[0]:
            best = odds.total * prior, odds
    if best is None:
        message = "no walker was supposed"
        raise ValueError(message)
    return best[1]


def any_order_route(card: LegCard, settings: MatchingSettings, pins: PinnedCuts) -> Route:
    """Lay out the straight way from every point to every other one.

    Raises
    ------
    InputRefusedError
        Where no two points are far enough apart to tell a way between them.
    """
    position = course_points(card)
    points = len(card.legs)
    edges = []
    for source in range(points + 1):
        for target in range(1, points + 1):
            vector = position[target] - position[source]
            distance_m = float(np.hypot(*vector))
            if source == target or distance_m < settings.shortest_free_leg_m:
                continue
            azimuth = direction_degrees(float(vector[0]), float(vector[1]))
            edges.append(
                Edge(
                    source=source,
                    target=target,
                    azimuth_deg=wrap_degrees(azimuth),
                    distance_m=distance_m,
                    leg=target - 1,
                    kind="leg",
                    cost=0.0,
                    pinned=pins.of_leg.get(target - 1),
                )
            )
    if not edges:
        raise refuse(
            card.name,
            "points",
            f"all within {settings.shortest_free_leg_m:g} m of each other",
            "leave no way between them that a recording could show",
            'Set the points of a course with order = "free" further apart.',
        )
    order = tuple(range(points + 1))
    return Route(position=position, edges=tuple(edges), order=order, legs=points)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class FreeMatch:
    """A walk in free order, matched.

    Attributes
    ----------
    card : LegCard
        Its legs in the order that was walked, then the points that were not visited.
    visited : int
        How many points were.
    odds : OrderOdds
        What the walk says about the order; numbers are legs of the card as it was given.
    """

    card: LegCard
    outing: MatchedOuting
    visited: int
    odds: OrderOdds


def match_free_order(
    clean: CleanTrack, card: LegCard, settings: MatchingSettings, pins: Sequence[Pin] = ()
) -> FreeMatch:
    """Find the order of a walk, and the portion of each leg in it."""
    odds = find_order(clean, card, settings, pins)
    order = odds.order
    in_order = card_in_order(card, order, others=False) if order else card
    place = {leg: number for number, leg in enumerate(order)}
    moved = [replace(pin, leg=place[pin.leg]) for pin in pins if pin.leg in place]
    outing = match_outings(clean, in_order, settings, moved)
    match = replace(outing.match, legs=_legs(card, order, odds, outing.match))
    return FreeMatch(
        card=card_in_order(card, order),
        outing=replace(outing, match=match),
        visited=len(order),
        odds=odds,
    )


def _legs(
    card: LegCard, order: Sequence[int], odds: OrderOdds, match: Match
) -> tuple[LegMatch, ...]:
    """Give the legs in order, then those not visited; a leg is as sure as its order is, too."""
    legs = []
    before = -1
    for number, leg in enumerate(order):
        found = match.legs[number]
        sure = 1.0 if found.pinned else min(float(odds.next_point[before + 1, leg]), 1.0)
        # Whoever came to a point in no way that is a walk of the leg left the leg out.
        status: LegStatus = "skipped" if found.status == "not-started" else found.status
        legs.append(replace(found, status=status, confidence=found.confidence * sure))
        before = leg
    for leg in (n for n in range(len(card.legs)) if n not in order):
        visited = min(float(odds.next_point[:, leg].sum()), 1.0)
        legs.append(LegMatch(leg=len(legs), status="not-started", confidence=1.0 - visited))
    return tuple(legs)
