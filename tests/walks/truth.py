"""What really happened, second by second and leg by leg."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from audit.units import FloatArray

KINDS = ("approach", "walking", "halt", "at-point", "bypass", "search", "gap", "walk-off")
"""Kinds of seconds; the words of the result document. ``gap`` is in ``Truth.recorded`` only."""

LegStatus = Literal["walked", "skipped", "unfinished", "not-started"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Planted:
    """One mistake that the walker was made to make.

    ``size`` is in ``unit``: the turn off the planned azimuth in deg, metres, or a ratio.
    """

    cause: str
    size: float
    unit: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LegTruth:
    """One planned leg as it was really walked.

    Attributes
    ----------
    start_s, claim_s : float or None
        When the walker left for the leg, and when his own navigation on it ended;
        None unless walked or unfinished. For a leg that the recording begins in the
        middle of, the recording's first second; ``cut_by_recording`` is then True.
    attempts : tuple of (start_s, claim_s)
        Every attempt at the whole leg; the last one is the pair above.
    search_end_s : float or None
        When looking for the point ended.
    azimuth_deg, length_m : float or None
        True chord between the two on the grid.
    set_azimuth_deg : float or None
        Grid azimuth that the walker set out to hold, his mistakes included.
    count_m : float or None
        Metres of path that his count gave him, his mistakes included.
    pace_factor : float
        Metres walked for a metre counted, the named distance mistakes left out.
    found : bool or None
        Whether the point was then reached.
    """

    leg: int
    status: LegStatus
    start_s: float | None = None
    claim_s: float | None = None
    search_end_s: float | None = None
    attempts: tuple[tuple[float, float], ...] = ()
    cut_by_recording: bool = False
    azimuth_deg: float | None = None
    length_m: float | None = None
    set_azimuth_deg: float | None = None
    count_m: float | None = None
    pace_factor: float = 1.0
    found: bool | None = None
    planted: tuple[Planted, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Truth:
    """A whole made walk. Arrays have shape (n,), one entry a second of being out.

    Attributes
    ----------
    time_s : float array
        Epoch seconds on the recording's clock; rises by one, with a longer step only
        between two walks in one recording.
    label : int array
        Index of the leg that the second belongs to, its search included, or -1.
    other_label : int array
        A second answer that is as right: the first attempt at a leg walked twice, a
        start in a wrong direction that was noticed. Equal to ``label`` elsewhere.
    kind : int array
        Index into ``KINDS``.
    recorded : bool array
        False where the receiver had no fix or was not running.
    order : tuple of int
        Points made for, in the order walked.
    planted : tuple of Planted
        Mistakes of the whole walk; also listed with each leg that they touch.
    receiver : dict
        Noise and logging of the receiver, by name with unit.
    """

    time_s: FloatArray
    east_m: FloatArray
    north_m: FloatArray
    label: NDArray[np.int64]
    other_label: NDArray[np.int64]
    kind: NDArray[np.int64]
    recorded: NDArray[np.bool_]
    legs: tuple[LegTruth, ...]
    order: tuple[int, ...]
    marked: bool
    bias_deg: float
    pace_factor: float
    planted: tuple[Planted, ...]
    receiver: dict[str, float]

    def index_at(self, time_s: float) -> int:
        """Give the index of the second nearest to a time."""
        after = int(np.searchsorted(self.time_s, time_s))
        if after == 0:
            return 0
        if after == len(self.time_s):
            return len(self.time_s) - 1
        return (
            after - 1 if time_s - self.time_s[after - 1] <= self.time_s[after] - time_s else after
        )

    def path_m(self) -> FloatArray:
        """Give the metres walked up to each second."""
        steps = np.hypot(np.diff(self.east_m), np.diff(self.north_m))
        return np.concatenate([[0.0], np.cumsum(steps)])
