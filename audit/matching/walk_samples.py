"""The walk on an even time step: what matching looks at instead of every fix."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from audit.geodesy.along_line import steps_m
from audit.matching.leg_match import CleanTrack
from audit.settings import MatchingSettings
from audit.statistics.runs import runs_of_one
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WalkSamples:
    """Evenly spaced samples of the walk, shape (n,) or (n, 2), metres on the course grid.

    Attributes
    ----------
    raw : float array, shape (n, 2)
        Means of the fixes of each step, or straight between fixes that lie further apart.
    smooth : float array, shape (n, 2)
        The same, smoothed over a few seconds.
    stretch : int array
        Number of the unbroken stretch of recording that each sample belongs to.
    in_gap : bool array
        True where a sample stands between fixes that lie too far apart in time.
    usual_move_m : float
        Median distance from one fix to the next.
    long_interval_s : float
        Only one in fifty fixes is followed by the next after longer than this; infinite where
        the recording has no times, and its long lines are no silences.
    """

    step_s: float
    time_s: FloatArray
    raw: FloatArray
    smooth: FloatArray
    stretch: NDArray[np.int64]
    in_gap: NDArray[np.bool_]
    usual_move_m: float
    long_interval_s: float

    def __len__(self) -> int:
        return len(self.time_s)


def sample_walk(clean: CleanTrack, settings: MatchingSettings) -> WalkSamples:
    """Put a cleaned track on an even time step, each unbroken stretch by itself.

    Fixes denser than the step are averaged over it, so that a recording ten times as
    dense costs no more after this; sparser ones are joined by straight lines.
    """
    interval_s = clean.median_interval_s or float(np.median(np.diff(clean.time_s)))
    step_s = float(np.clip(interval_s, settings.step_shortest_s, settings.step_longest_s))
    position = clean.places()
    breaks = np.flatnonzero(np.diff(clean.time_s) > settings.stretch_gap_s) + 1
    gap_s = max(settings.gap_s, 4.0 * interval_s)
    parts = [
        _sample_stretch(clean.time_s[part], position[part], step_s, gap_s)
        for part in np.split(np.arange(len(clean)), breaks)
    ]
    width = settings.smoothing_s / step_s
    return WalkSamples(
        step_s=step_s,
        time_s=np.concatenate([part[0] for part in parts]),
        raw=np.concatenate([part[1] for part in parts]),
        smooth=np.concatenate([smoothed(part[1], width) for part in parts]),
        stretch=np.repeat(np.arange(len(parts)), [len(part[0]) for part in parts]),
        in_gap=np.concatenate([part[2] for part in parts]),
        long_interval_s=(
            float(np.percentile(np.diff(clean.time_s), 98.0))
            if clean.timed and len(clean) > 1
            else np.inf
        ),
        usual_move_m=float(np.median(steps_m(position))),
    )


def per_stretch(samples: WalkSamples, figure: Callable[[slice], FloatArray]) -> FloatArray:
    """Work a figure out on each stretch apart and join the answers."""
    runs = runs_of_one(samples.stretch).tolist()
    return np.concatenate([figure(slice(first, end)) for first, end in runs])


def smoothed_over(samples: WalkSamples, width_s: float) -> FloatArray:
    """Smooth the places of a walk by a Gaussian so wide, each unbroken stretch by itself."""
    return per_stretch(samples, lambda part: smoothed(samples.raw[part], width_s / samples.step_s))


def smoothed(values: FloatArray, width: float) -> FloatArray:
    """Smooth the columns of (n, 2) with a Gaussian of a width in samples, ends held in place."""
    reach = int(np.ceil(3.0 * width))
    if width < 0.3 or len(values) < 3:
        return values.copy()
    reach = min(reach, len(values) - 1)
    kernel = np.exp(-0.5 * (np.arange(-reach, reach + 1) / width) ** 2)
    kernel /= kernel.sum()
    # Mirror through the end point, so that the ends of a track stay where they are.
    head = 2.0 * values[0] - values[reach:0:-1]
    tail = 2.0 * values[-1] - values[-2 : -reach - 2 : -1]
    padded = np.concatenate([head, values, tail])
    return np.column_stack(
        [np.convolve(padded[:, axis], kernel, mode="valid") for axis in range(values.shape[1])]
    )


def _sample_stretch(
    time_s: FloatArray, position: FloatArray, step_s: float, gap_s: float
) -> tuple[FloatArray, FloatArray, NDArray[np.bool_]]:
    grid_s = np.arange(time_s[0], time_s[-1] + step_s / 2, step_s)
    cell = np.round((time_s - time_s[0]) / step_s).astype(np.int64)
    cell = np.minimum(cell, len(grid_s) - 1)
    count = np.bincount(cell, minlength=len(grid_s))
    full = count > 0
    mean_s = np.bincount(cell, time_s - time_s[0], len(grid_s))[full] / count[full] + time_s[0]
    raw = np.column_stack(
        [
            np.interp(
                grid_s,
                mean_s,
                np.bincount(cell, position[:, axis], len(grid_s))[full] / count[full],
            )
            for axis in range(2)
        ]
    )
    in_gap = np.zeros(len(grid_s), dtype=bool)
    for before in np.flatnonzero(np.diff(time_s) > gap_s):
        in_gap |= (grid_s > time_s[before]) & (grid_s < time_s[before + 1])
    # A lone fix parts two silences, on whichever side of its sample it lies.
    return grid_s, raw, in_gap & ~full
