"""How well a portion of the walk fits a leg, in nats: its directions, distances and halts."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.matching.boxes import find_boxes
from audit.matching.cuts import Cuts
from audit.matching.edge_evidence import EdgeEvidence, lay_out_edge
from audit.matching.halts import Movement
from audit.matching.portions import Portions
from audit.matching.route import Edge, Route
from audit.matching.walk_samples import WalkSamples
from audit.settings import MatchingSettings
from audit.units import FloatArray, direction_degrees, turn_degrees

_ROOT_TAU = float(np.sqrt(2.0 * np.pi))


@dataclass(frozen=True, slots=True, kw_only=True)
class Walker:
    """What is supposed of this walker on all legs alike.

    Attributes
    ----------
    bias_deg : float
        Turn of the walked directions off the planned ones.
    pace_scale : float
        Distance walked over distance planned.
    heading_sd_deg, distance_sd : float
        Scatter from leg to leg, in degrees and in the logarithm of distance.
    """

    bias_deg: float
    pace_scale: float
    heading_sd_deg: float
    distance_sd: float


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
    ) -> None:
        self.cuts = cuts
        self.portions = portions
        self.route = route
        self.settings = settings
        self.noise_m = movement.noise_m
        self.place_sd_m = float(np.hypot(1.4 * movement.noise_m, settings.place_sd_m))
        self.direction_sd_deg = float(
            np.hypot(settings.wander_sd_deg, settings.wander_sd_per_noise_m * movement.noise_m)
        )
        steps = samples.smooth[2:] - samples.smooth[:-2]
        steps = np.vstack([steps[:1], steps, steps[-1:]])
        self._step_deg = direction_degrees(steps[:, 0], steps[:, 1])
        # A straight line across a gap is the recorder's, not the walker's.
        step_m = np.concatenate([[0.0], np.diff(movement.path_m)])
        self._step_m = np.where(samples.in_gap, 0.0, step_m)
        self._step_m[np.flatnonzero(np.diff(samples.stretch)) + 1] = 0.0
        self._edges: dict[tuple[float, float, str, int], EdgeEvidence] = {}
        self._directions: dict[float, tuple[FloatArray, FloatArray]] = {}
        offset = cuts.position[:, None, :] - route.position[None, :, :]
        self.to_point_m = np.hypot(offset[..., 0], offset[..., 1])
        self.arrive = self._edge_of_walking(cuts.begins_halt)
        self.leave = self._edge_of_walking(cuts.ends_halt)
        self.at_point = -np.logaddexp(
            -0.5 * (self.to_point_m / settings.arrival_sd_m) ** 2, -settings.cost_arrive_elsewhere
        )

    def of_edge(self, edge: Edge) -> EdgeEvidence:
        """Give what the walk says about an edge; worked out once."""
        target = max(edge.target, 0)
        key = (edge.azimuth_deg, edge.distance_m, edge.kind, target)
        if key not in self._edges:
            self._edges[key] = lay_out_edge(
                edge,
                self.portions,
                self.cuts,
                self.to_point_m[:, target],
                self.noise_m,
                self.settings,
            )
        return self._edges[key]

    def portion_costs(self, edge: Edge, walker: Walker) -> FloatArray:
        """Give the cost of each of an edge's portions as this walker's walk of it."""
        at = self.of_edge(edge)
        settings = self.settings
        expected_deg = edge.azimuth_deg + walker.bias_deg
        likelihood = self._heading_likelihood(at, expected_deg, walker)
        if edge.kind in ("late-start", "given-up"):
            shorter = at.chord_m < edge.distance_m * walker.pace_scale * 0.95
            cost = -np.log(likelihood)
            cost += np.where(shorter, settings.cost_partial_distance, settings.cost_impossible)
        else:
            likelihood *= self._distance_likelihood(at, edge.distance_m, walker)
            cost = -np.log(likelihood + at.found)
        if not edge.bent:
            cost += self._direction_cost(at, expected_deg)
        return cost + at.standing_cost

    def _edge_of_walking(self, halt_edge: np.ndarray) -> FloatArray:
        """Cost of leaving or arriving at each cut: rest is likely, mid-stride is not."""
        settings = self.settings
        return np.where(
            halt_edge, -settings.gain_halt, np.where(self.cuts.bends, 0.0, settings.cost_mid_stride)
        )

    def _heading_likelihood(
        self, at: EdgeEvidence, expected_deg: float, walker: Walker
    ) -> FloatArray:
        """Likelihood of each chord's direction, against an even one."""
        share = self.settings.stray_heading_share
        turn = turn_degrees(expected_deg, at.chord_deg)
        sd = np.hypot(walker.heading_sd_deg, at.chord_sd_deg)
        density = np.exp(-0.5 * (turn / sd) ** 2) / (sd * _ROOT_TAU)
        return np.asarray((1.0 - share) * 360.0 * density + share)

    def _distance_likelihood(
        self, at: EdgeEvidence, planned_m: float, walker: Walker
    ) -> FloatArray:
        """Likelihood of each chord's length, hundreds lost or counted twice among the likely."""
        settings = self.settings
        scale = walker.pace_scale
        sd = float(np.hypot(walker.distance_sd, self.place_sd_m / planned_m))
        shares = {0.0: 1.0 - settings.stray_distance_share}
        for hundred in (-100.0, 100.0):
            if planned_m * scale + hundred > settings.shortest_partial_m:
                shares[hundred] = settings.hundred_share
        density = np.zeros(len(at.log_ratio))
        for extra, share in shares.items():
            off = (at.log_ratio - np.log(scale + extra / planned_m)) / sd
            density += share * np.exp(-0.5 * off**2)
        return np.asarray(density * (3.0 / (sd * _ROOT_TAU)) + settings.stray_distance_share)

    def _direction_cost(self, at: EdgeEvidence, expected_deg: float) -> FloatArray:
        """Cost of the directions of every metre between the cuts.

        Metres that go the expected way count for the leg, others against it; what
        counts against is capped softly, since an obstacle may be walked round.
        """
        gain, loss = self._running_directions(expected_deg)
        settings = self.settings
        against = loss[at.second] - loss[at.first]
        soft = settings.bypass_cap + settings.bypass_slope * (against - settings.bypass_cap)
        return np.asarray(np.minimum(against, soft) - (gain[at.second] - gain[at.first]))

    def _running_directions(self, expected_deg: float) -> tuple[FloatArray, FloatArray]:
        key = round(expected_deg, 3)
        if key not in self._directions:
            settings, sd = self.settings, self.direction_sd_deg
            turn = turn_degrees(expected_deg, self._step_deg)
            share = settings.stray_step_share
            likelihood = (1.0 - share) * np.exp(-0.5 * (turn / sd) ** 2) / (sd * _ROOT_TAU)
            ratio = np.log(likelihood + share / 360.0) + np.log(360.0) - settings.direction_discount
            weight = self._step_m / settings.direction_memory_m
            gain = np.maximum(ratio, 0.0) * weight
            loss = np.maximum(-ratio, 0.0) * weight
            for first, back, last in find_boxes(turn, self._step_m, self.noise_m, settings):
                # An obstacle walked round costs the same whatever its width.
                loss[first:last] = 0.0
                gain[first:last] = np.where(np.abs(turn[first:last]) < 45.0, gain[first:last], 0.0)
                loss[first] = loss[back] = settings.cost_bypass / 2.0
            at_cuts = self.cuts.sample
            self._directions[key] = np.cumsum(gain)[at_cuts], np.cumsum(loss)[at_cuts]
        return self._directions[key]
