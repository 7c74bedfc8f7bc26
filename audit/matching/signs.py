"""The signs by which a leg is known beside its course: rests, bends, pace and what is near.

Each is one figure of a portion, or of a stay between two legs, that an instructor could read
off the recording. What a value is worth is not said here but learnt (`learnt`).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.matching.arms import Arms, find_arms
from audit.matching.cuts import Cuts
from audit.matching.halts import Movement
from audit.matching.learnt import Habits, Signs
from audit.matching.portions import IndexArray, Portions, SmallIndex
from audit.matching.range_most import RangeMost
from audit.matching.route import Edge
from audit.matching.walk_samples import WalkSamples
from audit.units import FloatArray, turn_degrees

_INNER_M = 30.0
"""What lies nearer to either end of a portion belongs to that end."""

_STIRRED_M = 12.0
"""A stay with less walking than this is standing still; its ways tell nothing."""

_STRAIGHT, _WINDING = 0.985, 0.1
"""The chord of 150 m of walking over its path: of who keeps straight on, and how much less of
who winds along a path; chosen."""

_KINDS = {
    "leg": 0.0,
    "slip": 0.0,
    "carried": 0.0,
    "reversed": 1.0,
    "link": 2.0,
    "aside": 3.0,
    "late-start": 4.0,
    "given-up": 5.0,
}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SignsSeen:
    """Everything that signs are read off, worked out once a walk."""

    cuts: Cuts
    movement: Movement
    portions: Portions
    to_point_m: FloatArray
    arms: Arms
    rest: RangeMost
    bend: RangeMost
    habits: Habits

    @classmethod
    def of(
        cls,
        samples: WalkSamples,
        movement: Movement,
        portions: Portions,
        cuts: Cuts,
        to_point_m: FloatArray,
        legs: int,
    ) -> SignsSeen:
        """Look at a walk."""
        arms = find_arms(samples, movement, cuts)
        return cls(
            cuts=cuts,
            movement=movement,
            portions=portions,
            to_point_m=to_point_m,
            arms=arms,
            rest=RangeMost(cuts.rest_s),
            bend=RangeMost(np.where(cuts.unseen, 0.0, cuts.turn_deg)),
            habits=_habits(movement, arms, legs),
        )

    def of_portions(self, edge: Edge, index: SmallIndex) -> Signs:
        """Give the signs of some portions as walks of an edge that no walker changes."""
        cuts, portions = self.cuts, self.portions
        first, second = portions.first[index], portions.second[index]
        standing, rested = cuts.begins_halt[second], cuts.ends_halt[first]
        seen_start, seen_end = ~cuts.begins_unseen[first], ~cuts.ends_unseen[second]
        before, after = self.arms.before, self.arms.after
        moving_s = cuts.time_s[second] - cuts.time_s[first] - portions.halted_s[index]
        pace = portions.path_m[index] / np.maximum(moving_s, 1.0) / self.movement.walking_m_s
        return {
            "halted_s": portions.halted_s[index].astype(np.float64),
            "pace_on_way": pace,
            "rest_at_claim_s": _where(standing, cuts.rest_s[second]),
            "rest_before_start_s": _where(rested, cuts.rest_s[first]),
            "bend_at_claim_walking_deg": _where(~standing & seen_end, cuts.turn_deg[second]),
            "bend_at_claim_resting_deg": _where(standing, cuts.turn_deg[second]),
            "bend_at_start_walking_deg": _where(~rested & seen_start, cuts.turn_deg[first]),
            "bend_at_start_resting_deg": _where(rested, cuts.turn_deg[first]),
            "pace_after_claim": _where(seen_end, after[60.0].pace[second]),
            "pace_before_start": _where(seen_start, before[60.0].pace[first]),
            "straight_after_claim": _where(seen_end, after[150.0].straightness[second]),
            "straight_before_claim": before[150.0].straightness[second],
            "straight_from_start": after[150.0].straightness[first],
            "claim_off_point_m": self._off(-1 if edge.kind == "slip" else edge.target, second),
            "start_off_point_m": self._off(edge.source, first, otherwise=0.0),
            "kind": np.full(len(index), _KINDS[edge.kind]),
            **(self._of_straight_portions(index) if edge.line is None else {}),
        }

    def _of_straight_portions(self, index: SmallIndex) -> Signs:
        """Give the signs that hang on a leg being straight."""
        cuts, portions, arms = self.cuts, self.portions, self.arms
        first, second = portions.first[index], portions.second[index]
        chord_deg, chord_m = portions.chord_deg[index], np.maximum(portions.chord_m[index], 1.0)
        standing = cuts.begins_halt[second]
        seen_start, seen_end = ~cuts.begins_unseen[first], ~cuts.ends_unseen[second]
        inner = self._inner(first, second)

        def turned(way_deg: FloatArray, at: SmallIndex) -> FloatArray:
            return np.abs(turn_degrees(chord_deg, way_deg[at]))

        going_on = turned(arms.after[100.0].direction_deg, second)
        setting_off = turned(arms.after[35.0].direction_deg, second)
        return {
            "path_over_chord": portions.path_m[index] / chord_m,
            "wavering_share": portions.deviation_m[index] / chord_m,
            "longest_rest_on_way_s": self.rest.between(*inner),
            "sharpest_bend_on_way_deg": self.bend.between(*inner),
            "arriving_turned_deg": turned(arms.before[35.0].direction_deg, second),
            "leaving_turned_deg": turned(arms.after[35.0].direction_deg, first),
            "coming_turned_deg": _where(seen_start, turned(arms.before[35.0].direction_deg, first)),
            "setting_off_walking_deg": _where(~standing & seen_end, setting_off),
            "going_on_walking_deg": _where(~standing & seen_end, going_on),
            "going_on_resting_deg": _where(standing, going_on),
        }

    def of_walker(
        self, edge: Edge, log_ratio: FloatArray, length_cost: FloatArray, direction_cost: FloatArray
    ) -> Signs:
        """Give the signs that hang on the walker supposed: his pace and his directions."""
        if edge.line is not None:
            return {"length_nats": length_cost}
        return {
            "log_distance_ratio": log_ratio,
            "length_nats": length_cost,
            "directions_nats": direction_cost,
        }

    def of_stays(self, node: int, first: SmallIndex, second: SmallIndex) -> Signs:
        """Give the signs of staying at a node from a claim until setting out again."""
        cuts, movement, arms = self.cuts, self.movement, self.arms
        moved = cuts.position[second] - cuts.position[first]
        moved_m = np.hypot(*moved.T)
        path_m = cuts.path_m[second] - cuts.path_m[first]
        # Reckoned on and back into one silence, the ways may pass each other.
        unseen = cuts.ends_unseen[first] | cuts.begins_unseen[second]
        path_m = np.where(unseen, np.maximum(path_m, moved_m), path_m)
        came = np.radians(arms.before[100.0].direction_deg[first])
        passed_s = cuts.time_s[second] - cuts.time_s[first]
        # What walking does not account for in a silence was spent standing, for all one knows.
        in_silence = cuts.ends_unseen[first] & cuts.begins_unseen[second]
        left_s = np.maximum(passed_s - moved_m / movement.walking_m_s, 0.0)
        halted_s = np.where(in_silence, left_s, cuts.halted_s[second] - cuts.halted_s[first])
        moving_s = np.maximum(passed_s - halted_s, 1.0)
        stirred = path_m > _STIRRED_M
        claim_m, leave_m = self.to_point_m[first, node], self.to_point_m[second, node]
        return {
            "moved_m": moved_m,
            "path_m": path_m,
            "straightness": _where(stirred, moved_m / np.maximum(path_m, 1.0)),
            "moved_on_m": moved[:, 0] * np.sin(came) + moved[:, 1] * np.cos(came),
            "moved_aside_m": np.abs(moved[:, 0] * np.cos(came) - moved[:, 1] * np.sin(came)),
            "halted_s": halted_s,
            "left_off_point_m": leave_m,
            "claim_off_point_m": _where(stirred, claim_m),
            "came_nearer_m": _where(stirred, claim_m - leave_m),
            "path_over_miss": _where(stirred, path_m / (claim_m + 20.0)),
            "pace": _where(stirred, path_m / moving_s / movement.walking_m_s),
            "rest_before_leaving_s": _where(stirred & cuts.ends_halt[second], cuts.rest_s[second]),
        }

    def of_starts(self, node: int) -> Signs:
        """Give the signs of beginning the course at a node, shape (cuts,)."""
        return {"start_off_point_m": self.to_point_m[:, node]}

    def of_endings(self, legs_left_out: int) -> Signs:
        """Give the signs of ending the course with so many legs left, shape (cuts,)."""
        path_m = self.cuts.path_m
        return {
            "legs_left_out": np.full(len(path_m), float(legs_left_out)),
            "path_still_walked_m": path_m[-1] - path_m,
        }

    def _off(self, node: int, at: SmallIndex, otherwise: float = np.nan) -> FloatArray:
        """Give how far from a node some cuts are; ``otherwise`` where there is no node."""
        return self.to_point_m[at, node] if node >= 0 else np.full(len(at), otherwise)

    def _inner(self, first: SmallIndex, second: SmallIndex) -> tuple[IndexArray, IndexArray]:
        """Give the cuts of each portion that lie well inside it, as first and beyond last."""
        path_m = self.cuts.seen_path_m
        begin = np.searchsorted(path_m, path_m[first] + _INNER_M)
        return begin, np.searchsorted(path_m, path_m[second] - _INNER_M)


def _habits(movement: Movement, arms: Arms, legs: int) -> Habits:
    """Tell how much a walk halts, for its course, and how much it winds; each from 0 to 1.

    A hiker passes the turns of his path in his stride, and his path is no straight line; who
    follows a compass stops to set it. Fixes far apart hide the halts of both.
    """
    winding = _STRAIGHT - float(np.median(arms.before[150.0].straightness))
    return {
        "halting": float(np.clip(len(movement.halts) / (legs + 1.0), 0.0, 1.0)),
        "winding": float(np.clip(winding / _WINDING, 0.0, 1.0)),
    }


def _where(applies: np.ndarray, values: FloatArray) -> FloatArray:
    """Give the values of a sign, NaN where it does not apply."""
    return np.where(applies, values, np.nan)
