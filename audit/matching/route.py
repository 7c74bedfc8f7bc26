"""The ways in which a course can be walked: as planned, or with the usual departures from it."""

from __future__ import annotations

from collections.abc import Container, Iterable
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from audit.leg_card import LegCard
from audit.matching.pins import PinnedLeg
from audit.matching.where_slips_lead import Slips, carried_on, slips_of
from audit.settings import MatchingSettings
from audit.units import FloatArray, direction_degrees, turn_degrees, wrap_degrees

EdgeKind = Literal[
    "leg", "slip", "carried", "reversed", "link", "aside", "late-start", "given-up", "jump"
]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Edge:
    """One stretch of a way: from a node toward the point of another.

    Attributes
    ----------
    source, target : int
        Nodes; -1 for a leg that was under way when the recording began or ended.
    leg : int or None
        The planned leg that this is a walk of; None for a stretch that no leg plans.
    cost : float
        Nats against this way, beside what the walk itself says.
    line : float array or None, shape (k, 2)
        The planned line in the direction of walking, where it is not straight.
    points_azimuth_deg, points_distance_m : float or None
        What the points say, where the card says something else: which of the two the
        walker went by is not known.
    pinned : PinnedLeg or None
        The cuts that somebody has settled for this leg.
    slips : Slips or None
        The ways that slips lead, for an edge that is walked along one of them.
    told_m : float or None
        Of how many metres the directions may speak for it, where not of all.
    leaves_out : tuple of int
        Nodes of the points that who goes this way has not visited, and passes over.
    """

    source: int
    target: int
    azimuth_deg: float
    distance_m: float
    leg: int | None
    kind: EdgeKind
    cost: float
    points_azimuth_deg: float | None = None
    points_distance_m: float | None = None
    line: FloatArray | None = None
    pinned: PinnedLeg | None = None
    slips: Slips | None = None
    told_m: float | None = None
    leaves_out: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Route:
    """Nodes ("at this point, with this history") and the edges between them.

    Nodes 0 to L are the points in the order of the plan; further ones belong to
    ways that leave it and return. ``order`` lists those that edges lead to, so that every
    edge leads forward. ``position`` has shape (nodes, 2). ``legs`` is L. ``misplotted`` has
    for each leg the node of who believes its point elsewhere; see `with_slips`.
    """

    position: FloatArray
    edges: tuple[Edge, ...]
    order: tuple[int, ...]
    legs: int
    misplotted: tuple[int, ...] = ()


def course_points(card: LegCard) -> FloatArray:
    """Give the points in the order of the legs, shape (legs + 1, 2)."""
    points = [card.legs[0].start, *(leg.end for leg in card.legs)]
    return np.array([(point.east_m, point.north_m) for point in points])


def plan_route(card: LegCard, settings: MatchingSettings) -> Route:
    """Lay out the ways in which the legs of a card may have been walked.

    Each leg as planned or on its back azimuth and then back by its start, points skipped
    or taken in the other order, a leg walked twice, one begun before the recording or
    given up.
    """
    builder = _RouteBuilder(card, settings)
    for leg in range(builder.legs):
        builder.add_leg(leg)
        builder.add_turning_back(leg)
        builder.add_misplotted(leg)
        builder.add_skips(leg)
        builder.add_exchange(leg)
        builder.add_repeat(leg)
    return builder.route()


def walked_route(route: Route, edges: Iterable[Edge]) -> Route:
    """Give a route without the nodes beside the plan that none of these edges touches."""
    touched = {node for edge in edges for node in (edge.source, edge.target)}
    order = tuple(node for node in route.order if node <= route.legs or node in touched)
    return replace(route, order=order)


def with_slips(
    route: Route, card: LegCard, legs: Container[int], settings: MatchingSettings
) -> Route:
    """Give a route on which some legs may also be walked to where slips lead.

    The leg after one whose point was plotted wrongly may be planned from there; which slip
    it was on the one and on the other is not asked.
    """
    planned = {
        edge.leg: edge
        for edge in route.edges
        if edge.kind == "leg" and edge.target == edge.source + 1 and edge.pinned is None
        if edge.leg is not None
    }
    slipped, order = [], list(route.order)
    for leg, edge in planned.items():
        slips = slips_of(card, leg, settings) if leg in legs else None
        if slips is None:
            continue
        slip = replace(edge, kind="slip", cost=settings.cost_slip, slips=slips)
        slipped.append(slip)
        onward = planned.get(leg + 1)
        carried = None if onward is None else carried_on(card, leg + 1, settings)
        if onward is not None and carried is not None:
            wrong = route.misplotted[leg]
            cost = slip.cost + settings.cost_slip_carried
            slipped.append(replace(slip, target=wrong, cost=cost))
            slipped.append(replace(onward, source=wrong, kind="carried", cost=0.0, slips=carried))
            order.insert(order.index(leg) + 1, wrong)
    if not slipped:
        return route
    return replace(route, edges=(*route.edges, *slipped), order=tuple(order))


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Course:
    azimuth_deg: float
    distance_m: float
    leg: int | None = None
    line: FloatArray | None = None
    points_azimuth_deg: float | None = None
    points_distance_m: float | None = None
    told_m: float | None = None
    leaves_out: tuple[int, ...] = ()


class _RouteBuilder:
    def __init__(self, card: LegCard, settings: MatchingSettings) -> None:
        self.legs = len(card.legs)
        self.card = card
        self.settings = settings
        self.position = list(course_points(card))
        self.edges: list[Edge] = []
        self.asides: dict[int, list[int]] = {}
        self.misplotted: list[int] = []

    def route(self) -> Route:
        order: list[int] = []
        for node in range(self.legs + 1):
            order.append(node)
            order += self.asides.get(node, [])
        return Route(
            position=np.array(self.position),
            edges=tuple(self.edges),
            order=tuple(order),
            legs=self.legs,
            misplotted=tuple(self.misplotted),
        )

    def add_leg(self, leg: int) -> None:
        card_leg, settings = self.card.legs[leg], self.settings
        azimuth, distance = card_leg.azimuth.degrees, card_leg.distance_m
        line = card_leg.line if len(card_leg.line) > 2 else None
        if line is not None:  # the line bends: its chord is the one between its ends
            chord = line[-1] - line[0]
            azimuth = direction_degrees(float(chord[0]), float(chord[1]))
            distance = float(np.hypot(*chord))
        along = _Course(azimuth_deg=azimuth, distance_m=distance, leg=leg, line=line)
        along = self._with_points(along, leg)
        back = replace(along, azimuth_deg=azimuth + 180.0, points_azimuth_deg=None, line=None)
        give_up = settings.cost_unfinished + settings.cost_given_up
        give_up += settings.cost_leg_left_out * (self.legs - 1 - leg)
        late = settings.cost_unfinished + 1.5 * settings.cost_leg_left_out * leg
        self._edge(leg, leg + 1, "leg", 0.0, along)
        self._edge(leg, leg + 1, "reversed", settings.cost_reversed, back)
        self._edge(-1, leg + 1, "late-start", late, along)
        self._edge(leg, -1, "given-up", give_up, along)

    def _with_points(self, course: _Course, leg: int) -> _Course:
        """Add what the points say of a leg where the card says something else."""
        vector = self.position[leg + 1] - self.position[leg]
        distance = float(np.hypot(*vector))
        if course.line is not None or distance < self.settings.shortest_link_m:
            return course
        azimuth = direction_degrees(float(vector[0]), float(vector[1]))
        turned = abs(turn_degrees(course.azimuth_deg, azimuth)) > self.settings.card_differs_deg
        ratio = abs(float(np.log(distance / course.distance_m)))
        stretched = ratio > self.settings.card_differs_share
        return replace(
            course,
            points_azimuth_deg=azimuth if turned else None,
            points_distance_m=distance if stretched else None,
        )

    def add_skips(self, leg: int) -> None:
        for left_out in (1, 2):
            target = leg + 1 + left_out
            if target <= self.legs:
                cost = self.settings.cost_skip * (0.5 + 0.5 * left_out)
                over = tuple(range(leg + 1, target))
                self._straight(leg, target, "link", cost, over)

    def add_exchange(self, leg: int) -> None:
        """Take the next two points in the other order."""
        if leg + 2 > self.legs:
            return
        later = self._node(leg, self.position[leg + 2])
        earlier = self._node(leg, self.position[leg + 1])
        if not self._straight(leg, later, "link", self.settings.cost_exchange, (leg + 1,)):
            return
        self._straight(later, earlier, "link", 0.0)
        if leg + 3 <= self.legs:
            self._straight(earlier, leg + 3, "link", 0.0)

    def add_repeat(self, leg: int) -> None:
        """Walk the leg, go back to its start, and walk it again."""
        card_leg = self.card.legs[leg]
        azimuth, distance = card_leg.azimuth.degrees, card_leg.distance_m
        out = self._node(leg, self.position[leg + 1])
        back = self._node(leg, self.position[leg])
        along = _Course(azimuth_deg=azimuth, distance_m=distance)
        self._edge(leg, out, "aside", self.settings.cost_repeat, along)
        self._edge(out, back, "aside", 0.0, replace(along, azimuth_deg=azimuth + 180.0))
        self._edge(back, leg + 1, "leg", 0.0, replace(along, leg=leg))

    def add_turning_back(self, leg: int) -> None:
        """Walk the leg on its back azimuth, see it, and come back by its start to its point.

        That nothing stands where he turns is not told to the evidence: tried, and no better.
        Of the way back on the first leg as much speaks for it as of the leg itself, for who
        came to the start from there, and walked the leg as planned, went the same way.
        """
        of = self.card.legs[leg]
        if len(of.line) > 2:
            return
        azimuth, distance = of.azimuth.degrees, of.distance_m
        told_m = distance if leg == 0 else None
        along = _Course(azimuth_deg=azimuth, distance_m=2.0 * distance, told_m=told_m)
        back = _Course(azimuth_deg=azimuth + 180.0, distance_m=distance, leg=leg)
        way = np.radians(azimuth)
        wrong = self.position[leg] - distance * np.array([np.sin(way), np.cos(way)])
        there = self._node(leg, wrong)
        self._edge(
            leg,
            there,
            "reversed",
            self.settings.cost_reversed + self.settings.cost_turned_back,
            back,
        )
        self._edge(there, leg + 1, "aside", 0.0, along)

    def add_misplotted(self, leg: int) -> None:
        """Make the node of who believes the leg's point elsewhere: no edge leads there yet."""
        self.position.append(self.position[leg + 1])
        self.misplotted.append(len(self.position) - 1)

    def _node(self, after: int, position: FloatArray) -> int:
        self.position.append(position)
        node = len(self.position) - 1
        self.asides.setdefault(after, []).append(node)
        return node

    def _straight(
        self,
        source: int,
        target: int,
        kind: EdgeKind,
        cost: float,
        leaves_out: tuple[int, ...] = (),
    ) -> bool:
        """Add the straight way between two nodes, unless they are too near to tell."""
        vector = self.position[target] - self.position[source]
        distance = float(np.hypot(*vector))
        if distance < self.settings.shortest_link_m:
            return False
        azimuth = direction_degrees(float(vector[0]), float(vector[1]))
        course = _Course(azimuth_deg=azimuth, distance_m=distance, leaves_out=leaves_out)
        self._edge(source, target, kind, cost, course)
        return True

    def _edge(self, source: int, target: int, kind: EdgeKind, cost: float, course: _Course) -> None:
        self.edges.append(
            Edge(
                source=source,
                target=target,
                azimuth_deg=wrap_degrees(course.azimuth_deg),
                distance_m=course.distance_m,
                leg=course.leg,
                kind=kind,
                cost=cost,
                line=course.line,
                points_azimuth_deg=course.points_azimuth_deg,
                points_distance_m=course.points_distance_m,
                told_m=course.told_m,
                leaves_out=course.leaves_out,
            )
        )
