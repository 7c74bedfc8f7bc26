"""Two walkers in each other's steps for longer than chance would have it.

Chance is what the class itself shows: how long any other two of one lane, whichever, would have
been in each other's steps, had they set off as far apart as these two did. That allows
for a lane in common, for a slow start behind a quick one, and for the time of day.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

from audit.settings.class_shows import ClassShowsSettings
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WalkOnClock:
    """A walk by the clock: times rise. ``begun_s`` is when the walker left for the first leg."""

    ident: str
    lane: str
    begun_s: float
    time_s: FloatArray
    east_m: FloatArray
    north_m: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class Company:
    """Two who were together away from the points.

    Attributes
    ----------
    together_s : float
    usual_s : float
        What 95 in 100 of other pairs would have stayed below; ``pairs`` of them were tried.
    share : float
        Of the shorter of the two walks, points left out.
    apart_s : float
        How much later the second passed where the first had been, on average.
    """

    first: str
    second: str
    together_s: float
    usual_s: float
    pairs: int
    share: float
    apart_s: float


def walked_together(
    walks: Sequence[WalkOnClock],
    points_m: Mapping[str, FloatArray],
    settings: ClassShowsSettings,
) -> list[Company]:
    """Give the pairs that were together for longer than chance, the longest first.

    ``points_m`` holds the points of each lane, shape (k, 2).
    """
    evens = [_even(walk, points_m[walk.lane], settings) for walk in walks]
    pairs = [
        (one, other)
        for one, other in combinations((even for even in evens if len(even.places) >= 2), 2)
        if one.lane == other.lane
    ]
    usual = _SetOffApart(pairs, settings)
    found = []
    for one, other in pairs:
        together, apart_s = _in_steps(one, other, 0, settings)
        free_s = settings.step_s * min(int(one.free.sum()), int(other.free.sum()))
        share = together / max(free_s, settings.step_s)
        if together < settings.least_together_s or share < settings.least_share:
            continue
        others = usual.of_others(one, other)
        if len(others) < settings.least_pairs:
            continue
        usual_s = float(np.quantile(others, settings.chance_quantile))
        if together <= settings.more_than_chance * usual_s:
            continue
        first, second = (one, other) if apart_s >= 0 else (other, one)
        found.append(
            Company(
                first=first.ident,
                second=second.ident,
                together_s=together,
                usual_s=usual_s,
                pairs=len(others),
                share=min(share, 1.0),
                apart_s=abs(apart_s),
            )
        )
    return sorted(found, key=lambda one: -one.together_s)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Even:
    """A walk at even steps of time, from ``first`` steps since 1970; ``free`` of all points.

    ``places`` are complex: east, and north times the imaginary unit.
    """

    ident: str
    lane: str
    begun_s: float
    first: int
    places: NDArray[np.complex128]
    free: NDArray[np.bool_]


def _even(walk: WalkOnClock, points_m: FloatArray, settings: ClassShowsSettings) -> _Even:
    step = settings.step_s
    first, last = int(np.ceil(walk.time_s[0] / step)), int(walk.time_s[-1] // step)
    times = step * np.arange(first, last + 1)
    places = np.interp(times, walk.time_s, walk.east_m).astype(complex)
    places += 1j * np.interp(times, walk.time_s, walk.north_m)
    away = np.abs(places[:, None] - (points_m[None, :, 0] + 1j * points_m[None, :, 1]))
    free = (away > settings.about_point_m).all(axis=1) & (times >= walk.begun_s)
    return _Even(
        ident=walk.ident,
        lane=walk.lane,
        begun_s=walk.begun_s,
        first=first,
        places=places,
        free=free,
    )


def _in_steps(
    one: _Even, other: _Even, shift: int, settings: ClassShowsSettings
) -> tuple[float, float]:
    """Give how long one is in the other's steps, and how far behind: positive where it comes after.

    The other's clock is shifted by so many steps of time.
    """
    step = settings.step_s
    moved = other.first + shift
    when = np.flatnonzero(one.free)
    most = round(settings.lag_s / step)
    # Only while both are out, the lag allowed.
    at = when + one.first - moved
    out = (at >= -most) & (at < len(other.places) + most)
    when, at = when[out], at[out]
    near = np.full(len(when), np.inf)
    behind = np.zeros(len(when))
    for lag in sorted(range(-most, most + 1), key=abs):
        there = np.clip(at + lag, 0, len(other.places) - 1)
        away = np.abs(one.places[when] - other.places[there])
        away[there != at + lag] = np.inf
        nearer = away < near
        behind[nearer] = lag * step
        near = np.minimum(near, away)
    together = near <= settings.together_m
    if not together.any():
        return 0.0, 0.0
    return step * float(together.sum()), float(behind[together].mean())


class _SetOffApart:
    """How long any two would have been together, had they set off so far apart.

    Where many walk together, many ask the same of the same two: only the whole steps of time
    between their beginnings matter, so that each is worked out once.
    """

    def __init__(self, pairs: Sequence[tuple[_Even, _Even]], settings: ClassShowsSettings) -> None:
        self._settings = settings
        self._pairs = [way for pair in pairs for way in (pair, pair[::-1])]
        self._idents = np.array([[ahead.ident, after.ident] for ahead, after in self._pairs])
        begun_s = np.array([[ahead.begun_s, after.begun_s] for ahead, after in self._pairs])
        self._ahead_s, self._after_s = begun_s.reshape(-1, 2).T
        self._as_they_are = _steps(self._ahead_s - self._after_s, settings)
        self._known: dict[int, FloatArray] = {}

    def of_others(self, one: _Even, other: _Even) -> FloatArray:
        """Give the seconds of all pairs without these two, had they set off as far apart."""
        apart_s = other.begun_s - one.begun_s
        shifts = _steps(self._ahead_s + apart_s - self._after_s, self._settings)
        free = ~np.isin(self._idents, [one.ident, other.ident]).any(axis=1)
        more = shifts - self._as_they_are
        together_s = np.empty(len(shifts))
        for steps in np.unique(more[free]):
            known = self._known.setdefault(int(steps), np.full(len(shifts), np.nan))
            asked = free & (more == steps)
            for number in np.flatnonzero(asked & np.isnan(known)):
                ahead, after = self._pairs[number]
                shift = int(shifts[number])
                known[number] = _in_steps(ahead, after, shift, self._settings)[0]
            together_s[asked] = known[asked]
        return together_s[free]


def _steps(seconds: FloatArray, settings: ClassShowsSettings) -> NDArray[np.int64]:
    """Give the nearest whole steps of time."""
    return np.rint(seconds / settings.step_s).astype(np.int64)
