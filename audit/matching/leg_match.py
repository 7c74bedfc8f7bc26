"""What matching hands on: the cleaned walk, and the portion of it that each leg has."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from audit.matching.pins import PinnedEnd
from audit.units import FloatArray

LegStatus = Literal["walked", "skipped", "unfinished", "not-started"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Cleaning:
    """One kind of thing that cleaning did to the recording.

    Attributes
    ----------
    weighs : bool
        Whoever reads the figures must know of it: times were moved, or places lost.
    """

    what: str
    count: int
    detail: str
    weighs: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Gap:
    """A stretch without fixes, between kept fixes ``before`` and ``before + 1``."""

    before: int
    start_s: float
    end_s: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CleanTrack:
    """The fixes that are kept, in time order, on the grid of the course.

    Arrays have shape (n,). ``time_s`` rises strictly. Where the recording carries no
    usable times (``timed`` is False) it counts seconds of an even walk along the
    fixes, and no time figure may be reported from it.

    Attributes
    ----------
    fix : int array
        Index of each kept fix in the recording.
    elevation_m : float array
        NaN where there is none.
    median_interval_s : float or None
        On foot, in the outing that holds most of the fixes; None for a recording without times.
    usual_s : float array or None
        The same for the outing that each fix is of, where several were told apart.
    """

    time_s: FloatArray
    east_m: FloatArray
    north_m: FloatArray
    elevation_m: FloatArray
    hdop: FloatArray
    fix: NDArray[np.int64]
    timed: bool
    gaps: tuple[Gap, ...]
    cleaning: tuple[Cleaning, ...]
    median_interval_s: float | None
    usual_s: FloatArray | None = None

    def __len__(self) -> int:
        return len(self.time_s)

    def part(self, which: slice) -> CleanTrack:
        """Give a stretch of the track; gaps are counted from its own start, and left out."""
        columns = ("time_s", "east_m", "north_m", "elevation_m", "hdop", "fix")
        part = replace(self, **{name: getattr(self, name)[which] for name in columns}, gaps=())
        usual_s = None if self.usual_s is None else self.usual_s[which]
        if usual_s is None or len(usual_s) == 0:
            return replace(part, usual_s=usual_s)
        return replace(part, usual_s=usual_s, median_interval_s=usual_of(usual_s))

    def at_the_interval_of(self, part: CleanTrack) -> CleanTrack:
        """Give the track with the usual interval of a part: another day may have another."""
        return replace(self, median_interval_s=part.median_interval_s)

    def holds(self, time_s: float) -> bool:
        """Tell whether a moment lies within the track."""
        return bool(self.time_s[0] <= time_s <= self.time_s[-1])

    def places(
        self, which: slice | NDArray[np.int64] | NDArray[np.bool_] = slice(None)
    ) -> FloatArray:
        """Give the places of some fixes, or of all of them; shape (k, 2)."""
        return np.column_stack([self.east_m[which], self.north_m[which]])

    def places_at(self, time_s: FloatArray | Sequence[float]) -> FloatArray:
        """Give the places at k moments, straight between the fixes about them; shape (k, 2)."""
        axes = (self.east_m, self.north_m)
        return np.column_stack([np.interp(time_s, self.time_s, axis) for axis in axes])

    def index_at(self, time_s: float) -> int:
        """Give the index of the kept fix nearest to a time."""
        after = int(np.searchsorted(self.time_s, time_s))
        if after == 0:
            return 0
        if after == len(self.time_s):
            return len(self.time_s) - 1
        nearer = time_s - self.time_s[after - 1] <= self.time_s[after] - time_s
        return after - 1 if nearer else after


def usual_of(usual_s: FloatArray) -> float:
    """Give the usual interval of the outing that holds most of some fixes, by that of each."""
    return float(np.sort(usual_s)[len(usual_s) // 2])


@dataclass(frozen=True, slots=True, kw_only=True)
class RunnerUp:
    """The likeliest other reading of a leg, with its probability.

    ``start_s`` and ``claim_s`` are None where it is that the leg was not walked.
    """

    status: LegStatus
    start_s: float | None
    claim_s: float | None
    probability: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Reckoned:
    """A place in a silence of the recorder: on along the way before, or back along that after.

    Attributes
    ----------
    seen_s : float
        The moment of the fix from which it was reckoned: for a claim the last one before, for
        a start the first one after.
    gone_m : float
        Metres from there.
    straight : bool
        It was taken straight between the fixes before and after instead, where no way leads to
        it, or somebody has settled the moment; ``gone_m`` is then from the nearer of the two.
    """

    east_m: float
    north_m: float
    seen_s: float
    gone_m: float
    straight: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class LegMatch:
    """The portion of the walk that one leg has.

    Attributes
    ----------
    start_s, claim_s : float or None
        When the walker left for the leg, and when his own navigation on it ended;
        both None unless the leg was walked (``unfinished``: claim_s is where he gave
        up). On the time axis of the CleanTrack.
    search_end_s : float or None
        When looking for the point ended: found or given up. Equals claim_s where
        there was no search.
    confidence : float
        Probability that this portion is right, within 30 s or 30 m at both ends.
    sure_by_odds : float
        The same of the portion read before the second look, which knows of no slips and of no
        half or twice the distance: whether these are supposed is decided by it. Of use to the
        matching only.
    under_way : bool
        The recording began on the leg: ``start_s`` is its first moment, not the leg's.
    runner_up : RunnerUp or None
        The likeliest reading whose start or claim is materially another, or that makes
        something else of the leg; None where there is none to speak of.
    pinned : tuple of "from" and "claim"
        The ends that somebody has settled.
    start_unseen, claim_unseen : Reckoned or None
        Where the walker was then, if the recorder was silent.
    """

    leg: int
    status: LegStatus
    start_s: float | None = None
    claim_s: float | None = None
    search_end_s: float | None = None
    confidence: float = 0.0
    sure_by_odds: float = 0.0
    under_way: bool = False
    runner_up: RunnerUp | None = None
    pinned: tuple[PinnedEnd, ...] = ()
    start_unseen: Reckoned | None = None
    claim_unseen: Reckoned | None = None

    @property
    def times_s(self) -> tuple[float, float]:
        """Start and claim of a leg that was walked, or begun at least.

        Raises
        ------
        ValueError
            For any other leg, which has neither.
        """
        if self.start_s is None or self.claim_s is None:
            message = "only a leg that was walked has a start and a claim"
            raise ValueError(message)
        return self.start_s, self.claim_s


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Match:
    """All portions, in the order of the plan, and what the walk as a whole showed.

    Attributes
    ----------
    noise_m : float
        Receiver noise, standard deviation per axis.
    halts : float array, shape (k, 2)
        Start and end of each halt, seconds on the CleanTrack's axis.
    bias_deg, pace_scale : float
        This walker's common turn off the planned azimuths, and distance walked over
        distance planned, as the matching estimated them.
    cost : float
        Of all ways together, in nats, against a walk that has nothing to do with the
        course; the lower, the better the walk fits.
    """

    legs: tuple[LegMatch, ...]
    noise_m: float
    halts: FloatArray
    bias_deg: float
    pace_scale: float
    cost: float

    def walked_in_turn(self) -> list[LegMatch]:
        """Give the legs that were walked, or begun at least, one after another in time."""
        walked = [leg for leg in self.legs if leg.start_s is not None and leg.claim_s is not None]
        return sorted(walked, key=lambda leg: leg.times_s[0])
