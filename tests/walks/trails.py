"""The trail of a walker: straight pieces, ways through points, and halts, at one second each."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.units import FloatArray, direction_degrees, unit_vector
from walks.random_drift import drift
from walks.truth import KINDS


@dataclass(frozen=True, slots=True, kw_only=True)
class Gait:
    """How somebody walks: speed, and how the heading wanders about the azimuth held."""

    speed_m_s: float
    wander_deg: float = 0.0
    wander_s: float = 25.0
    sighting_deg: float = 0.0
    """Error of each sight at a new steering mark, every 60 to 180 m."""
    unevenness: float = 0.1
    """Spread of the speed over half a minute, as a share."""


@dataclass(slots=True, kw_only=True)
class Tag:
    """What the seconds of a chunk are: kind, leg, and the other answer that is as right."""

    kind: str
    label: int = -1
    other: int | None = None


class Trail:
    """Grows second by second; the truth arrays come out at the end."""

    def __init__(self, rng: np.random.Generator, position_m: FloatArray) -> None:
        self._rng = rng
        self.position_m = np.array(position_m, dtype=float)
        self._places: list[FloatArray] = [self.position_m[None, :].copy()]
        self._tags: list[tuple[int, Tag]] = [(1, Tag(kind="approach"))]
        self.second = 0

    def add(self, places_m: FloatArray, tag: Tag) -> None:
        """Append one place a second, shape (n, 2)."""
        if len(places_m) == 0:
            return
        self._places.append(places_m)
        self._tags.append((len(places_m), tag))
        self.second += len(places_m)
        self.position_m = places_m[-1].copy()

    def halt(self, seconds: float, tag: Tag) -> None:
        """Stand about: small steps that end where they began."""
        n = round(seconds)
        if n < 1:
            return
        taper = np.sin(np.pi * np.arange(1, n + 1) / (n + 1))
        sway = np.column_stack([drift(self._rng, n, 0.5, 15.0) for _ in range(2)])
        self.add(self.position_m + sway * taper[:, None], tag)

    def _steps_m(self, length_m: float, gait: Gait) -> FloatArray:
        """Give the length of each second's step, adding up to a length."""
        rng = self._rng
        steps = np.zeros(0)
        while steps.sum() < length_m:
            n = int(1.3 * length_m / gait.speed_m_s) + 20
            pace = np.exp(drift(rng, n, gait.unevenness, 30.0))
            quick = 1.0 + 0.4 * gait.unevenness * rng.standard_normal(n)
            more = gait.speed_m_s * np.clip(pace * quick, 0.3, 2.5)
            steps = np.concatenate([steps, more])
        walked = np.cumsum(steps)
        last = int(np.searchsorted(walked, length_m))
        steps = steps[: last + 1].copy()
        steps[-1] -= walked[last] - length_m
        return steps

    def _wander_deg(self, steps_m: FloatArray, gait: Gait) -> FloatArray:
        rng = self._rng
        n = len(steps_m)
        wander = drift(rng, n, gait.wander_deg, gait.wander_s)
        if gait.sighting_deg > 0.0:
            walked = np.cumsum(steps_m)
            marks = np.cumsum(rng.uniform(60.0, 180.0, int(walked[-1] / 60.0) + 1))
            errors = gait.sighting_deg * rng.standard_normal(len(marks) + 1)
            wander = wander + errors[np.searchsorted(marks, walked)]
        return wander

    def straight_places(
        self,
        azimuth_deg: float,
        length_m: float,
        gait: Gait,
        *,
        bend_deg: tuple[float, float] = (0.0, 0.0),
        drift_m_per_m: FloatArray | None = None,
    ) -> FloatArray:
        """Give the places of walking a length on an azimuth, not yet appended.

        ``bend_deg`` turns the heading evenly from the first to the second value;
        ``drift_m_per_m`` (east, north) slides the walker for every metre walked.
        """
        if length_m <= 0.0:
            return np.zeros((0, 2))
        steps = self._steps_m(length_m, gait)
        share = np.cumsum(steps) / length_m
        heading = azimuth_deg + bend_deg[0] + (bend_deg[1] - bend_deg[0]) * share
        heading = np.radians(heading + self._wander_deg(steps, gait))
        moves = steps[:, None] * np.column_stack([np.sin(heading), np.cos(heading)])
        if drift_m_per_m is not None:
            moves = moves + steps[:, None] * drift_m_per_m
        return self.position_m + np.cumsum(moves, axis=0)

    def go_through(self, targets_m: FloatArray, gait: Gait, tag: Tag) -> None:
        """Walk to each target in turn, wandering on the way but arriving."""
        for target in np.atleast_2d(targets_m):
            way = target - self.position_m
            length = float(np.hypot(*way))
            if length < 0.5:
                continue
            azimuth = direction_degrees(float(way[0]), float(way[1]))
            places = self.straight_places(azimuth, length, gait)
            share = (np.arange(1, len(places) + 1) / len(places))[:, None]
            self.add(places + share * (target - places[-1]), tag)

    def go_by_way_of(
        self, target_m: FloatArray, bends: int, gait: Gait, tag: Tag, spread: float = 0.18
    ) -> None:
        """Walk to a target by some bends, as paths do."""
        start = self.position_m.copy()
        way = target_m - start
        length = float(np.hypot(*way))
        corners = [
            start + way * (i + 1) / (bends + 1) + self._rng.normal(0.0, spread * length + 3.0, 2)
            for i in range(bends)
        ]
        self.go_through(np.array([*corners, target_m]), gait, tag)

    def arrays(self) -> tuple[FloatArray, dict[str, np.ndarray]]:
        """Give the places, shape (n, 2), and label, other label and kind of every second."""
        places = np.concatenate(self._places)
        counts = [count for count, _ in self._tags]
        kinds = [KINDS.index(tag.kind) for _, tag in self._tags]
        labels = [tag.label for _, tag in self._tags]
        others = [tag.label if tag.other is None else tag.other for _, tag in self._tags]
        return places, {
            "kind": np.repeat(np.array(kinds, dtype=np.int64), counts),
            "label": np.repeat(np.array(labels, dtype=np.int64), counts),
            "other_label": np.repeat(np.array(others, dtype=np.int64), counts),
        }


def along(azimuth_deg: float, length_m: float) -> FloatArray:
    """Give (east, north) of a length on an azimuth."""
    return length_m * unit_vector(azimuth_deg)
