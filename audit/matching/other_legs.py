"""What the other legs of a walk say of one: how this walker walks, rests, and finds points.

Whoever rests at every point and finds each of them ends a leg differently from one who does not;
and where the next leg would begin as it was planned, this one is likely to have ended.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from audit.matching.cuts import Cuts
from audit.matching.end_looks import along_and_aside, sample_after
from audit.matching.portions import IndexArray
from audit.matching.range_most import RangeMost
from audit.matching.reading import LegReading
from audit.matching.route import Edge
from audit.matching.walk_layout import WalkLaidOut
from audit.units import FloatArray, direction_degrees, turn_degrees

End = Literal["start", "claim"]

NEXT_TO_S = (20.0, 45.0, 90.0, 180.0)
"""So far into the leg next to an end the way is held against that leg's plan; chosen."""

FOUND_WITHIN_CUTS = 30
"""Among so many cuts after a claim the point was found, if it was; chosen."""

_FAR_M, _NONE_M, _NO_LEG_RATIO, _NO_LEG_DEG, _NO_LEG_M = 2000.0, 3000.0, 3.0, 200.0, -999.0
"""Longer ways to another leg tell no more; and values for another leg that there is not."""

BESIDE_LOOKS = (
    "odds_nats", "behind_best_nats", "after_best_s", "path_from_best_m", "from_best_m",
    "rest_over_best_s",
    "log_planned_m", "log_ratio_as_planned", "turned_as_planned_deg", "start_off_m",
    "claim_off_m", "point_within_m", "speed_share", "halted_within_s", "rest_within_s",
    "others_log_ratio_scatter", "others_turned_scatter_deg", "others_rest_s",
    "others_halted_share", "others_off_m", "others_found_m",
    "noise_m", "step_s", "walking_m_s",
    "rest_since_leg_before_s", "rest_until_next_leg_s", "path_from_leg_before_m",
    "path_to_next_leg_m", "from_leg_before_m", "to_next_leg_m",
    "next_to_log_ratio", "next_to_turned_deg",
    *(f"next_to_{of}_{after:g}s" for after in NEXT_TO_S for of in ("along_m", "aside_m")),
)  # fmt: skip
"""The names of the readings, in the order of their columns.

Of a moment beside the likeliest for the same end; of the leg that it would make; of the other
legs of this walker, with how far off their points he ended them, and how near he came then; of
his recorder; of the legs before and after it; and of the leg next to this end, which it would
make longer or shorter.
"""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class OpenLeg:
    """The moments open for one end of a leg; arrays of shape (n,).

    ``start`` and ``claim`` are the cuts of the likeliest portion with each; ``share`` is how
    much of the leg's odds each holds.
    """

    end: End
    leg: int
    cut: IndexArray
    start: IndexArray
    claim: IndexArray
    share: FloatArray


class OtherLegs:
    """The legs of a walk as they were read, to look at one of them beside the others."""

    def __init__(
        self, readings: Sequence[LegReading], planned: Mapping[int, Edge], laid_out: WalkLaidOut
    ) -> None:
        """Take the legs as they were read.

        ``planned`` has the straight ones walked as planned: they tell how this walker walks. Of
        the others, along a line or by a slip, is told when they were.
        """
        self._laid_out, self._planned = laid_out, planned
        self._points = laid_out.evidence.route.position
        self._rest = RangeMost(laid_out.cuts.rest_s)
        self._read = {
            leg: (of.first, of.second)
            for leg, of in enumerate(readings)
            if of.kind == "leg" and of.first is not None and of.second is not None
        }
        legs = [leg for leg in self._read if leg in planned]
        self._legs = np.array(legs, dtype=np.int64)
        first, second = np.array([self._read[leg] for leg in legs], dtype=np.int64).reshape(-1, 2).T
        self._ends = {"start": first, "claim": second}
        ways = [self._way(leg, *self._read[leg]) for leg in legs]
        self._ratio = np.array([float(ratio) for ratio, _ in ways])
        self._turned_deg = np.array([float(turned) for _, turned in ways])
        self._usual: dict[int, tuple[float, float]] = {}
        claims = list(zip(legs, second.tolist(), strict=True))
        self._off_m = np.array([self._off(claim, leg + 1) for leg, claim in claims])
        self._found_m = np.array([self._found(leg, claim) for leg, claim in claims])

    def beside(self, leg: int) -> tuple[int | None, int | None]:
        """Give the cuts at which the leg read before one ended and the one after began."""
        ended = [second for of, (_, second) in self._read.items() if of < leg]
        begun = [first for of, (first, _) in self._read.items() if of > leg]
        return ended[-1] if ended else None, begun[0] if begun else None

    def usual(self, leg: int) -> tuple[float, float]:
        """Give log distance ratio and turn in degrees, as is usual on the other legs; or 0."""
        if leg not in self._usual:
            others = self._legs != leg
            some = bool(others.any())
            self._usual[leg] = (
                float(np.median(self._ratio[others])) if some else 0.0,
                float(np.median(self._turned_deg[others])) if some else 0.0,
            )
        return self._usual[leg]

    def looks(self, of: OpenLeg) -> FloatArray:
        """Give the readings of some open moments, shape (n, len(BESIDE_LOOKS))."""
        columns = [
            *_beside_best(of, self._laid_out.cuts),
            *self._of_leg(of),
            *self._of_others(of),
            *self._of_recorder(),
            *self._between(of),
            *self._next_to(of),
        ]
        count = len(of.cut)
        return np.column_stack([np.broadcast_to(one, count).astype(float) for one in columns])

    def _of_leg(self, of: OpenLeg) -> list[FloatArray | float]:
        cuts = self._laid_out.cuts
        ratio, turned_deg = self._way(of.leg, of.start, of.claim)
        took_s = np.maximum(cuts.time_s[of.claim] - cuts.time_s[of.start], 1.0)
        speed_m_s = (cuts.path_m[of.claim] - cuts.path_m[of.start]) / took_s
        return [
            float(np.log(self._planned[of.leg].distance_m)),
            ratio,
            np.abs(turned_deg),
            self._off(of.start, of.leg),
            self._off(of.claim, of.leg + 1),
            np.array(
                [self._nearest(of.leg + 1, *ends) for ends in zip(of.start, of.claim, strict=True)]
            ),
            speed_m_s / self._laid_out.movement.walking_m_s,
            cuts.halted_s[of.claim] - cuts.halted_s[of.start],
            self._rest.between(of.start + 1, of.claim),
        ]

    def _of_others(self, of: OpenLeg) -> list[FloatArray | float]:
        others = self._legs != of.leg
        if not others.any():
            return [-1.0] * 6
        ratio, turned_deg = self.usual(of.leg)
        cuts, ends = self._laid_out.cuts, self._ends[of.end][others]
        halted = cuts.begins_halt if of.end == "claim" else cuts.ends_halt
        return [
            float(np.median(np.abs(self._ratio[others] - ratio))),
            float(np.median(np.abs(self._turned_deg[others] - turned_deg))),
            float(np.median(cuts.rest_s[ends])),
            float(np.mean(halted[ends])),
            float(np.median(self._off_m[others])),
            float(np.median(self._found_m[others])),
        ]

    def _of_recorder(self) -> list[float]:
        movement = self._laid_out.movement
        return [movement.noise_m, self._laid_out.samples.step_s, movement.walking_m_s]

    def _between(self, of: OpenLeg) -> list[FloatArray | float]:
        """Look at what lies between the moments and the legs before and after."""
        cuts, cut = self._laid_out.cuts, of.cut
        ended, begun = self.beside(of.leg)
        before = np.full(len(cut), 0 if ended is None else ended)
        after = np.full(len(cut), len(cuts) - 1 if begun is None else begun)

        def path_m(first: IndexArray, last: IndexArray) -> FloatArray:
            return np.clip(cuts.path_m[last] - cuts.path_m[first], -_FAR_M, _FAR_M)

        def apart_m(other: IndexArray) -> FloatArray:
            return np.asarray(np.hypot(*(cuts.position[cut] - cuts.position[other]).T))

        # The halt at the moment itself may lie on either side of it.
        return [
            self._rest.between(before, np.maximum(cut - 2, before)),
            self._rest.between(np.minimum(cut + 3, after), after),
            _NONE_M if ended is None else path_m(before, cut),
            _NONE_M if begun is None else path_m(cut, after),
            _NONE_M if ended is None else apart_m(before),
            _NONE_M if begun is None else apart_m(after),
        ]

    def _next_to(self, of: OpenLeg) -> list[FloatArray | float]:
        """Look at the leg that goes on from a claim, or led to a start, if it met it here."""
        leg, sign = (of.leg + 1, 1.0) if of.end == "claim" else (of.leg - 1, -1.0)
        if leg not in self._planned:
            return [_NO_LEG_RATIO, _NO_LEG_DEG, *(_NO_LEG_M, -1.0) * len(NEXT_TO_S)]
        usual_ratio, usual_deg = self.usual(of.leg)
        columns: list[FloatArray | float] = [_NO_LEG_RATIO, _NO_LEG_DEG]
        if leg in self._read:
            first, second = self._read[leg]
            ends = (of.cut, second) if of.end == "claim" else (first, of.cut)
            ratio, turned_deg = self._way(leg, *ends)
            columns = [ratio - usual_ratio, np.abs(turn_degrees(usual_deg, turned_deg))]
        azimuth_deg = self._planned[leg].azimuth_deg + usual_deg
        samples = self._laid_out.samples
        here = self._laid_out.cuts.sample[of.cut]
        for after_s in NEXT_TO_S:
            there = sample_after(here, sign * after_s, samples)
            columns += along_and_aside(
                (samples.smooth[there] - samples.smooth[here]) * sign, azimuth_deg
            )
        return columns

    def _way(
        self, leg: int, first: IndexArray | int, second: IndexArray | int
    ) -> tuple[FloatArray, FloatArray]:
        """Give log distance ratio and turn in degrees against the plan, from cut to cut."""
        place = self._laid_out.cuts.position
        east, north = np.moveaxis(place[second] - place[first], -1, 0)
        edge = self._planned[leg]
        ratio = np.log(np.maximum(np.hypot(east, north), 1.0) / edge.distance_m)
        turned = turn_degrees(np.full(east.shape, edge.azimuth_deg), direction_degrees(east, north))
        return ratio, turned

    def _off(self, cut: IndexArray | int, point: int) -> FloatArray:
        off = self._laid_out.cuts.position[cut] - self._points[point]
        return np.asarray(np.hypot(off[..., 0], off[..., 1]))

    def _found(self, leg: int, claim: int) -> float:
        last = min(claim + FOUND_WITHIN_CUTS, len(self._laid_out.cuts) - 1)
        return self._nearest(leg + 1, claim, last)

    def _nearest(self, point: int, first: int, last: int) -> float:
        """Give how near the walk comes to a point between two cuts."""
        samples, at = self._laid_out.samples, self._laid_out.cuts.sample
        off = samples.smooth[at[first] : at[last] + 1] - self._points[point]
        return float(np.hypot(*off.T).min())


def _beside_best(of: OpenLeg, cuts: Cuts) -> list[FloatArray | float]:
    nats, best = np.log(of.share), of.cut[int(np.argmax(of.share))]
    return [
        nats,
        nats.max() - nats,
        cuts.time_s[of.cut] - cuts.time_s[best],
        np.abs(cuts.path_m[of.cut] - cuts.path_m[best]),
        np.hypot(*(cuts.position[of.cut] - cuts.position[best]).T),
        cuts.rest_s[of.cut] - cuts.rest_s[best],
    ]
