"""How well a portion of the walk fits a leg, in nats: its directions, distances and halts."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from copy import copy
from dataclasses import dataclass, replace
from typing import NamedTuple

import numpy as np

from audit.matching.chord_likelihood import (
    distance_likelihood,
    going_on_so_far,
    heading_likelihood,
    slipped_likelihood,
)
from audit.matching.cut_costs import cost_at_cuts
from audit.matching.cuts import Cuts
from audit.matching.directions import Directions
from audit.matching.edge_evidence import (
    CutRuns,
    EdgeEvidence,
    PortionLooks,
    lay_out_edge,
    look_at_portions,
    reaches,
    worth_a_look,
)
from audit.matching.halts import Movement
from audit.matching.learnt import Learnt, Signs
from audit.matching.noted_moments import NotedMoment, NotedMoments
from audit.matching.portions import Portions, SmallIndex
from audit.matching.route import Edge, Route
from audit.matching.signs import SignsSeen
from audit.matching.walk_samples import WalkSamples
from audit.matching.walker import Walkers
from audit.matching.where_slips_lead import Slips
from audit.settings import MatchingSettings
from audit.units import FloatArray

_SUMS = 6
"""Of each direction two sums, for and against, and of three turns."""


class EdgeKey(NamedTuple):
    """What an edge has in common with others over which any portion costs the same."""

    azimuth_deg: float
    distance_m: float
    kind: str
    source: int
    target: int
    by_points: tuple[float | None, float | None]
    leg: int | None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Seen:
    """An edge's portions as one walker's, before any turn off his usual direction.

    ``log_ratio`` is the logarithm of length over length expected, ``length`` the likelihood of
    the length, ``found`` that of the end where the point was found, and ``directions`` what
    those of every metre cost.
    """

    at: EdgeEvidence
    looks: PortionLooks
    log_ratio: FloatArray
    length: FloatArray
    found: FloatArray
    directions: FloatArray


class Evidence:
    """The walk laid out so that the cost of any portion as any leg takes one look-up.

    Everything is relative to the walk having nothing to do with the leg: cost 0
    says nothing for or against it.
    """

    def __init__(
        self,
        samples: WalkSamples,
        movement: Movement,
        cuts: Cuts,
        portions: Portions,
        route: Route,
        settings: MatchingSettings,
        noted: Sequence[NotedMoment] = (),
    ) -> None:
        self.cuts = cuts
        self.portions = portions
        self.route = route
        self.settings = settings
        self.noise_m = movement.noise_m
        self.place_sd_m = float(np.hypot(1.4 * movement.noise_m, settings.place_sd_m))
        self.directions = Directions(samples, movement, cuts, settings)
        self._keys: dict[Edge, EdgeKey] = {}
        self._edges: dict[EdgeKey, EdgeEvidence] = {}
        self._runs: dict[EdgeKey, CutRuns] = {}
        self._reach: dict[float, tuple[int, int]] = {}
        # Several nodes stand for one place with different histories.
        self._place_of = np.unique(route.position, axis=0, return_inverse=True)[1].ravel()
        self.noted = NotedMoments(noted, cuts.time_s, self._place_of, settings) if noted else None
        offset = cuts.position[:, None, :] - route.position[None, :, :]
        self.to_point_m = np.hypot(offset[..., 0], offset[..., 1])
        self.seen = SignsSeen.of(samples, movement, portions, cuts, self.to_point_m, route.legs)
        self.learnt: Learnt | None = None
        self._told: dict[EdgeKey, FloatArray] = {}
        self.arrive = cost_at_cuts(cuts, cuts.begins_halt, settings.gain_rest_arriving, settings)
        self.leave = cost_at_cuts(cuts, cuts.ends_halt, settings.gain_rest_leaving, settings)
        self.give_up = self.arrive.copy()
        near = np.exp(-0.5 * (self.to_point_m / settings.arrival_sd_m) ** 2)
        self.at_point = -np.log(near + np.exp(-settings.cost_arrive_elsewhere))
        if not cuts.begins_halt[-1] and not cuts.ends_halt[-1]:
            # Where the recorder stopped in mid-stride, away from the point, nobody claimed
            # it, nor gave up.
            self.at_point[-1] += settings.cost_recording_ends * (1.0 - near[-1])
            self.give_up[-1] = -settings.cost_given_up

    @property
    def size(self) -> int:
        """How many figures are worked out for one walker: of portions, and sums up to cuts."""
        of_edges = {self.key(of): of for of in self.route.edges if of.kind != "jump"}
        portions = sum(len(self.of_edge(of).index) for of in of_edges.values())
        directions = {of.azimuth_deg for of in of_edges.values()}
        return max(1, portions + _SUMS * len(directions) * len(self.cuts))

    def key(self, edge: Edge) -> EdgeKey:
        """Give what an edge has in common with others over which any portion costs the same."""
        if edge not in self._keys:
            self._keys[edge] = self._key(edge)
        return self._keys[edge]

    def _key(self, edge: Edge) -> EdgeKey:
        source, target = (
            int(self._place_of[node]) if node >= 0 else -1 for node in (edge.source, edge.target)
        )
        return EdgeKey(
            azimuth_deg=edge.azimuth_deg,
            distance_m=edge.distance_m,
            kind=edge.kind,
            source=source,
            target=target,
            by_points=(edge.points_azimuth_deg, edge.points_distance_m),
            leg=edge.leg if edge.line is not None or edge.pinned or edge.slips else None,
        )

    def of_edge(self, edge: Edge) -> EdgeEvidence:
        """Give what the walk says about an edge; worked out once."""
        key = self.key(edge)
        if key not in self._edges:
            self._edges[key] = self.laid_out(edge, self.worth_a_look(edge))
        return self._edges[key]

    def runs_of(self, edge: Edge) -> CutRuns:
        """Give the portions of an edge cut by cut; worked out once."""
        key = self.key(edge)
        if key not in self._runs:
            at = self.of_edge(edge)
            self._runs[key] = CutRuns(at.first, at.second, len(self.cuts))
        return self._runs[key]

    def worth_a_look(self, edge: Edge) -> SmallIndex:
        """Give the portions that may be a walk of an edge, as places among all."""
        return worth_a_look(edge, self.portions, self.to_point_m, self.settings)

    def laid_out(self, edge: Edge, index: SmallIndex) -> EdgeEvidence:
        """Work out what no walker changes of some portions as an edge, without keeping it."""
        portions, cuts, to_point_m = self.portions, self.cuts, self.to_point_m
        at = lay_out_edge(edge, index, portions, cuts, to_point_m, self.noise_m, self.settings)
        if self.noted is None:
            return at
        against = self.noted.on_way(at.first, at.second).astype(np.float32)
        return replace(at, standing_cost=at.standing_cost + against)

    def ending(self, edge: Edge, cut: SmallIndex) -> FloatArray:
        """Give the cost of ending an edge at each of some cuts."""
        if edge.target < 0:
            ended = 0.0 if self.noted is None else self.noted.ended(-1)
            return np.asarray((self.give_up + ended)[cut])
        claimed = 0.0 if self.noted is None else self.noted.claimed(edge.target)[cut]
        return np.asarray(self.arrive[cut] + self.at_point[cut, edge.target] + claimed)

    def on(self, route: Route) -> Evidence:
        """Give the same evidence for another route over the same points."""
        other = copy(self)
        other.route = route
        other.own_edges()
        return other

    def own_edges(self) -> None:
        """Keep what is worked out for further edges apart from those this was copied from."""
        self._edges, self._runs = dict(self._edges), dict(self._runs)

    def narrowed(
        self, edges: Iterable[tuple[Edge, SmallIndex]], learnt: Learnt | None = None
    ) -> Evidence:
        """Give the same evidence with only some of the portions of each edge.

        ``edges`` tells their places among all portions; edges that it does not name keep
        none. On these, what was learnt of the signs is listened to as well.
        """
        narrow = copy(self)
        narrow.keep_only(edges)
        narrow.learnt = learnt
        return narrow

    def keep_only(self, edges: Iterable[tuple[Edge, SmallIndex]]) -> None:
        """Let go of all portions but these; see `narrowed`."""
        kept: dict[EdgeKey, list[SmallIndex]] = {}
        for edge, places in edges:
            kept.setdefault(self.key(edge), []).append(places)
        none = [np.empty(0, dtype=np.int32)]
        self._edges, self._runs = {}, {}
        for edge in self.route.edges:
            key = self.key(edge)
            if edge.kind != "jump" and key not in self._edges:
                index = np.unique(np.concatenate(kept.get(key, none)))
                self._edges[key] = self.laid_out(edge, index)
        self.directions = copy(self.directions)
        self.directions.forget()
        self._told = {}
        self._reach = reaches((key.azimuth_deg, at) for key, at in self._edges.items())

    def forget(self) -> None:
        """Let go of what was worked out for every edge; it is worked out anew where asked for."""
        self._edges, self._runs, self._told = {}, {}, {}
        self.directions.forget()

    def portion_costs(
        self, edge: Edge, walker: Walkers, at: EdgeEvidence | None = None
    ) -> FloatArray:
        """Give the cost of each of an edge's portions as a walker's walk of it.

        Of several walkers they have shape (walkers, portions).
        ``at`` are those of them that are looked at, where not all are.
        """
        at = self.of_edge(edge) if at is None else at
        seen = self._seen(edge, at, walker)
        standing_cost = at.standing_cost + self._told_by_signs(edge, seen)
        if at.slipped is not None:
            return self._slipped_cost(seen, at.slipped, walker) + standing_cost
        as_usual = self._cost_turned(edge, seen, walker, 0.0, seen.directions)
        if edge.kind != "leg":
            return as_usual + standing_cost
        share, turn = self.settings.turned_leg_share, self.settings.turned_leg_deg
        odds = np.log1p(-2.0 * share) - as_usual
        for turned in (-turn, turn):
            directions = self._direction_cost(edge, at, walker, turned)
            cost = self._cost_turned(edge, seen, walker, turned, directions)
            odds = np.logaddexp(odds, np.log(share) - cost)
        odds = np.logaddexp(odds, -self._astray_cost(seen))
        return np.asarray(standing_cost - odds)

    def _seen(self, edge: Edge, at: EdgeEvidence, walker: Walkers) -> _Seen:
        """Give an edge's portions as this walker's."""
        looks = look_at_portions(self.portions, at.index, self.noise_m, self.settings)
        if at.slipped is not None:
            return self._seen_slipped(at, at.slipped, looks, walker)
        log_ratio = looks.log_chord - np.log(edge.distance_m * walker.pace_scale)
        finds = np.asarray(walker.finds, dtype=np.float32)  # as the looks are
        sights = self.settings.found_share + finds * looks.directly
        sights = sights * going_on_so_far(log_ratio, self.settings)
        return _Seen(
            at=at,
            looks=looks,
            log_ratio=log_ratio,
            length=distance_likelihood(edge, looks, walker, self.place_sd_m, self.settings),
            found=np.asarray(sights * at.at_target, dtype=np.float64),
            directions=self._direction_cost(edge, at, walker, 0.0),
        )

    def _seen_slipped(
        self, at: EdgeEvidence, slipped: Slips, looks: PortionLooks, walker: Walkers
    ) -> _Seen:
        """Give portions as this walker's, each after the slip that leads nearest to its end.

        What their directions say is told by how straight they lead there, which is as good for
        a way that was walked as summing up along every slip, and much less work.
        """
        settings, planned_m = self.settings, slipped.distance_m
        log_ratio = looks.log_chord - np.log(planned_m * walker.pace_scale)
        most = self.directions.most_gain(1.0) * planned_m
        gain = settings.slip_direction_share * most * np.exp(-looks.bent_cost)
        price = np.minimum(settings.chance_price_share * most, settings.chance_price_most)
        return _Seen(
            at=at,
            looks=looks,
            log_ratio=log_ratio,
            length=slipped_likelihood(log_ratio, planned_m, walker, self.place_sd_m, settings),
            found=np.zeros(len(at.index)),
            directions=np.asarray(looks.bent_cost + price - gain),
        )

    def _slipped_cost(self, seen: _Seen, slipped: Slips, walker: Walkers) -> FloatArray:
        """Cost of having walked where slips lead."""
        expected_deg = slipped.azimuth_deg + walker.bias_deg
        likelihood = heading_likelihood(seen.looks, expected_deg, walker, self.settings)
        return np.asarray(seen.directions - np.log(likelihood * seen.length))

    def _told_by_signs(self, edge: Edge, seen: _Seen) -> FloatArray | float:
        """Cost of portions by the signs beside direction, length and place."""
        if self.learnt is None:
            return 0.0
        key = self.key(edge)
        if key not in self._told:
            signs = self.seen.of_portions(edge, seen.at.index)
            self._told[key] = self.learnt.portions.nats(signs, self.seen.habits)
        signs = self._walker_signs(edge, seen)
        return self._told[key] + self.learnt.portions.nats(signs, self.seen.habits)

    def signs_of(self, edge: Edge, walker: Walkers) -> Signs:
        """Give all signs of an edge's portions as this walker's walk of it."""
        seen = self._seen(edge, self.of_edge(edge), walker)
        of_portions = self.seen.of_portions(edge, seen.at.index)
        return {**of_portions, **self._walker_signs(edge, seen)}

    def _walker_signs(self, edge: Edge, seen: _Seen) -> Signs:
        """Give the signs of an edge's portions that hang on the walker supposed."""
        length_cost = -np.log(seen.length)
        return self.seen.of_walker(edge, seen.log_ratio, length_cost, seen.directions)

    def _cost_turned(
        self, edge: Edge, seen: _Seen, walker: Walkers, turn_deg: float, directions: FloatArray
    ) -> FloatArray:
        """Cost of having walked an edge turned off this walker's usual direction all along.

        Chord and metres then share the turn: to charge each metre for it again would
        make a leg on a misread dial look like no leg at all.
        """
        settings, looks = self.settings, seen.looks
        off_deg = walker.bias_deg + turn_deg
        likelihood = heading_likelihood(looks, edge.azimuth_deg + off_deg, walker, settings)
        if edge.points_azimuth_deg is not None:
            by_points_deg = edge.points_azimuth_deg + off_deg
            by_points = heading_likelihood(looks, by_points_deg, walker, settings)
            likelihood = (likelihood + by_points) / 2.0
        if edge.kind in ("late-start", "given-up"):
            shorter = looks.log_chord < np.log(edge.distance_m * walker.pace_scale * 0.95)
            cost = -np.log(likelihood)
            cost += np.where(shorter, settings.cost_partial_distance, settings.cost_impossible)
        else:
            cost = -np.log(likelihood * seen.length + seen.found)
        return cost + directions + self._chance_price(edge, walker)

    def _astray_cost(self, seen: _Seen) -> FloatArray:
        """Cost of having walked a leg straight, but in a direction that nothing explains.

        Who plotted the point wrongly walks a leg as well as any other, elsewhere. Its
        directions bring nothing, as straight ways lead everywhere; its length does.
        """
        likelihood = self.settings.astray_share * seen.length
        return np.asarray(seen.looks.bent_cost - np.log(likelihood))

    def _chance_price(self, edge: Edge, walker: Walkers) -> float | FloatArray:
        """Price of a leg, for the long straight ways that lead the right way by chance.

        A straight path keeps its direction, so its metres are not so many witnesses. The
        price is the same for all portions: it moves no cut, but keeps a walk that has
        left the course from passing for more of its legs.
        """
        price = self.settings.chance_price_share * self.directions.most_gain(
            edge.distance_m * walker.pace_scale
        )
        return np.minimum(price, self.settings.chance_price_most)

    def _direction_cost(
        self, edge: Edge, at: EdgeEvidence, walker: Walkers, turn_deg: float
    ) -> FloatArray:
        """Cost of the directions of every metre, walked so much off this walker's usual one."""
        expected_deg = edge.azimuth_deg + (walker.bias_deg + turn_deg)
        reach = self._reach.get(edge.azimuth_deg, at.reach)
        most = self.directions.most_gain((edge.told_m or edge.distance_m) * walker.pace_scale)
        return self.directions.cost(edge, at, expected_deg, most, reach)
