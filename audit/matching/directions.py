"""The directions of every metre walked, summed up so that any portion takes one look-up."""

from __future__ import annotations

import numpy as np

from audit.matching.boxes import find_boxes
from audit.matching.cuts import Cuts
from audit.matching.edge_evidence import EdgeEvidence
from audit.matching.halts import Movement
from audit.matching.planned_line import direction_of_nearest_piece
from audit.matching.route import Edge
from audit.matching.walk_samples import WalkSamples, smoothed_over
from audit.settings import MatchingSettings
from audit.units import FloatArray, direction_degrees, turn_degrees

_ROOT_TAU = float(np.sqrt(2.0 * np.pi))

Reach = tuple[int, int]
"""First and last cut between which sums are wanted."""


class Directions:
    """What the directions walked say for and against a leg's own."""

    def __init__(
        self, samples: WalkSamples, movement: Movement, cuts: Cuts, settings: MatchingSettings
    ) -> None:
        self._cuts = cuts
        self._settings = settings
        self._noise_m = movement.noise_m
        # A direction shows over a longer time than a bend: what is taken off the noise is worth
        # more here than what is taken off the bends.
        width_s = max(settings.smoothing_s, settings.direction_smoothing_s_per_m * self._noise_m)
        self._smooth = smoothed_over(samples, width_s)
        self._sd_deg = float(
            np.hypot(settings.wander_sd_deg, settings.wander_sd_per_noise_m * movement.noise_m)
        )
        self._step_deg = _directions_deg(self._smooth)
        self._sharp_deg = _directions_deg(samples.smooth)
        # A straight line across a gap is the recorder's, not the walker's.
        step_m = np.concatenate([[0.0], np.diff(movement.path_m)])
        self._step_m = np.where(samples.in_gap, 0.0, step_m)
        self._step_m[np.flatnonzero(np.diff(samples.stretch)) + 1] = 0.0
        self._known: dict[tuple[float, Reach, int | None], FloatArray] = {}
        self._asked: dict[tuple[float, Reach, int | None], float] = {}

    def forget(self) -> None:
        """Let go of all that was worked out."""
        self._known, self._asked = {}, {}

    def let_go(self) -> None:
        """Let go of the sums alone: asked for again, they come out the same."""
        self._known = {}

    def cost(
        self,
        edge: Edge,
        at: EdgeEvidence,
        expected_deg: float | FloatArray,
        most: float | FloatArray,
        reach: Reach,
    ) -> FloatArray:
        """Cost of the directions of every metre of an edge's portions.

        Of directions expected of several walkers, shape (walkers, 1), they have a row each.
        Metres that go the expected way count for the leg, up to ``most``, others against it;
        what counts against is capped softly, since an obstacle may be walked round.
        """
        gain, against = self._between(edge, at, expected_deg, reach)
        settings = self._settings
        soft = settings.bypass_cap + settings.bypass_slope * (against - settings.bypass_cap)
        return np.asarray(np.minimum(against, soft) - np.minimum(gain, most))

    def _between(
        self, edge: Edge, at: EdgeEvidence, expected_deg: float | FloatArray, reach: Reach
    ) -> tuple[FloatArray, FloatArray]:
        """Give what speaks for and against each portion's directions."""
        each = (self._running(edge, deg, reach) for deg in np.ravel(expected_deg).tolist())
        between = np.array(
            [sums.take(at.second, axis=1) - sums.take(at.first, axis=1) for sums in each]
        )
        gain, loss = between[:, 0], between[:, 1]
        return (gain, loss) if np.ndim(expected_deg) else (gain[0], loss[0])

    def most_gain(self, length_m: float | FloatArray) -> float | FloatArray:
        """Give what the directions of a leg can bring: those of its own length, well walked.

        Who walks straight on past the end goes the same way whether on the leg or not.
        """
        settings = self._settings
        share = (1.0 - settings.stray_step_share) * 360.0 / (self._sd_deg * _ROOT_TAU)
        usual = float(np.log(share + settings.stray_step_share)) - settings.direction_discount
        length = length_m * settings.direction_length_share
        return max(usual, 0.0) * length / settings.direction_memory_m

    def _running(self, edge: Edge, expected_deg: float, reach: Reach) -> FloatArray:
        """Give what speaks for and against a direction, summed up to each cut in reach.

        They have shape (2, cuts).
        Along a bent line the direction expected is that of its nearest piece.
        """
        key = (round(expected_deg, 3), reach, None if edge.line is None else edge.leg)
        if key not in self._known:
            # Directions that round to the same share the sums of the one first asked for.
            expected_deg = self._asked.setdefault(key, expected_deg)
            settings, sd = self._settings, self._sd_deg
            at_cuts = self._cuts.sample[reach[0] : reach[1] + 1]
            part = slice(int(at_cuts[0]), int(at_cuts[-1]) + 1)
            step_m = self._step_m[part]
            expected = np.full(len(step_m), expected_deg)
            if edge.line is not None:
                expected = direction_of_nearest_piece(edge.line, self._smooth[part])
            turn = turn_degrees(expected, self._step_deg[part])
            share = settings.stray_step_share
            likelihood = (1.0 - share) * np.exp(-0.5 * (turn / sd) ** 2) / (sd * _ROOT_TAU)
            ratio = np.log(likelihood + share / 360.0) + np.log(360.0) - settings.direction_discount
            weight = step_m / settings.direction_memory_m
            gain = np.maximum(ratio, 0.0) * weight
            loss = np.maximum(-ratio, 0.0) * weight
            sharp = turn_degrees(expected, self._sharp_deg[part])
            for first, back, last in find_boxes(sharp, step_m, self._noise_m, settings):
                # An obstacle walked round costs the same whatever its width.
                loss[first:last] = 0.0
                gain[first:last] = np.where(np.abs(sharp[first:last]) < 45.0, gain[first:last], 0.0)
                loss[first] = loss[back] = settings.cost_bypass / 2.0
            sums = np.zeros((2, len(self._cuts)))
            sums[:, reach[0] : reach[1] + 1] = np.cumsum([gain, loss], axis=1)[
                :, at_cuts - part.start
            ]
            self._known[key] = sums
        return self._known[key]


def _directions_deg(place: FloatArray) -> FloatArray:
    """Give the direction at each place, shape (n, 2), from the one before it to the one after."""
    ends = np.concatenate([place[:1], place, place[-1:]])
    steps = ends[2:] - ends[:-2]
    return np.asarray(direction_degrees(steps[:, 0], steps[:, 1]))
