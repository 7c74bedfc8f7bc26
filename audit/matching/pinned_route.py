"""The ways of walking a course that keep to the boundaries somebody has settled."""

from __future__ import annotations

from dataclasses import replace

from audit.leg_card import LegCard
from audit.matching.pins import PINNED_GAIN, PinnedCuts
from audit.matching.route import Edge, Route, plan_route
from audit.settings import MatchingSettings


def planned_route(card: LegCard, settings: MatchingSettings, pins: PinnedCuts) -> Route:
    """Lay out the ways in which the legs of a card may have been walked, as they are pinned."""
    route = plan_route(card, settings)
    return pinned_route(route, pins, settings) if pins else route


def pinned_route(route: Route, pins: PinnedCuts, settings: MatchingSettings) -> Route:
    """Make every way of a route lead over the pinned legs, each as it is pinned.

    Whatever else the pins leave no room for, before a pinned leg or after it, may be jumped
    over, at a price that no walk pays which can be told otherwise.
    """
    edges = []
    for edge in route.edges:
        pinned = None if edge.leg is None else pins.of_leg.get(edge.leg)
        if pinned is None or edge.leg is None:
            edges.append(edge)
        elif pins.allow(edge.leg, edge.kind):
            edges.append(replace(edge, pinned=pinned, cost=edge.cost - PINNED_GAIN))
    edges += [
        Edge(
            source=source,
            target=target,
            azimuth_deg=0.0,
            distance_m=0.0,
            leg=None,
            kind="jump",
            cost=settings.cost_jump + settings.cost_leg_left_out * (target - source),
        )
        for source, target in _jumps(route.legs, pins)
    ]
    return replace(route, edges=tuple(edges))


def _jumps(legs: int, pins: PinnedCuts) -> list[tuple[int, int]]:
    """Give from where to where legs may be jumped over: up to a pinned leg, or on from one."""
    jumps = set()
    for leg in pins.of_leg:
        jumps |= {(source, leg) for source in range(leg)}
        jumps |= {(leg + 1, target) for target in range(leg + 2, legs + 1)}
    return sorted(jumps)
