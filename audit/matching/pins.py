"""Boundaries that somebody who knows has settled: the rest is matched around them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from audit.units import FloatArray

PinnedEnd = Literal["from", "claim"]

PINNED_GAIN = 1e4
"""Nats for taking a pinned leg as pinned: more than any walk can say against it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pin:
    """The moment at which the walker left for a leg ("from") or claimed its end ("claim")."""

    leg: int
    end: PinnedEnd
    time_s: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PinnedLeg:
    """The cuts that a leg is pinned to; None where an end is free."""

    first: int | None = None
    second: int | None = None

    def portions(self, first: NDArray[np.int32], second: NDArray[np.int32]) -> NDArray[np.int64]:
        """Give the portions, by their two cuts, that begin and end as pinned."""
        fits = np.ones(len(first), dtype=bool)
        if self.first is not None:
            fits &= first == self.first
        if self.second is not None:
            fits &= second == self.second
        return np.flatnonzero(fits)


class PinnedCuts:
    """Pins put on the cuts of a walk that were seen: no leg has more than one pin an end.

    ``cut_samples`` has the sample of every cut, and ``unseen`` marks those that were reckoned.
    """

    def __init__(
        self,
        pins: Sequence[Pin],
        cut_samples: NDArray[np.int64],
        sample_s: FloatArray,
        unseen: NDArray[np.bool_] | None = None,
    ) -> None:
        reckoned = np.zeros(len(cut_samples), dtype=bool) if unseen is None else unseen
        self._seen = np.flatnonzero(~reckoned)
        self._time_s = {(pin.leg, pin.end): pin.time_s for pin in pins}
        self.of_leg: dict[int, PinnedLeg] = {}
        self.time_of_cut: dict[int, float] = {}
        for pin in pins:
            sample = nearest_samples(sample_s, [pin])[0]
            cut = int(self._seen[np.searchsorted(cut_samples[self._seen], sample)])
            self.time_of_cut.setdefault(cut, pin.time_s)
            known = self.of_leg.get(pin.leg, PinnedLeg())
            self.of_leg[pin.leg] = PinnedLeg(
                first=cut if pin.end == "from" else known.first,
                second=cut if pin.end == "claim" else known.second,
            )

    def __bool__(self) -> bool:
        return bool(self.of_leg)

    def time_s(self, leg: int, end: PinnedEnd) -> float | None:
        """Give the moment that an end is pinned to, to the second; None where it is free."""
        return self._time_s.get((leg, end))

    def ends(self, leg: int) -> tuple[PinnedEnd, ...]:
        """Give the pinned ends of a leg."""
        both: tuple[PinnedEnd, ...] = ("from", "claim")
        return tuple(end for end in both if (leg, end) in self._time_s)

    def allow(self, leg: int, kind: str) -> bool:
        """Tell whether a kind of walk of a leg is open: who claimed its end did not give it up."""
        pinned = self.of_leg.get(leg)
        if pinned is None:
            return True
        if kind == "late-start":
            return pinned.first is None
        return kind != "given-up" or pinned.second is None

    def pairs(self) -> NDArray[np.int64]:
        """Give first and second cut of a portion for each pinned leg, shape (k, 2).

        A leg that is pinned at one end only gets the shortest: it must have one at all.
        """
        pairs = []
        for pinned in self.of_leg.values():
            first, second = pinned.first, pinned.second
            if first is None and second is not None:
                first = self._next_seen(second, -1)
            elif second is None and first is not None:
                second = self._next_seen(first, 1)
            pairs.append((first, second))
        return np.array(pairs, dtype=np.int64).reshape(-1, 2)

    def _next_seen(self, cut: int, step: int) -> int:
        """Give the next cut before or after one at which any leg may begin or end."""
        place = int(np.searchsorted(self._seen, cut)) + step
        return int(self._seen[np.clip(place, 0, len(self._seen) - 1)])


def nearest_samples(sample_s: FloatArray, pins: Sequence[Pin]) -> NDArray[np.int64]:
    """Give the sample nearest to each pin."""
    times = np.array([pin.time_s for pin in pins], dtype=np.float64)
    after = np.clip(np.searchsorted(sample_s, times), 0, len(sample_s) - 1)
    before = np.maximum(after - 1, 0)
    earlier = times - sample_s[before] <= sample_s[after] - times
    return np.asarray(np.where(earlier, before, after), dtype=np.int64)
