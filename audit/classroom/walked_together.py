"""Two walkers in each other's steps for longer than chance would have it.

Chance is what the class itself shows: how long any other two of one lane, whichever, would have
been in each other's steps, had they set off as far apart as these two did. That allows
for a lane in common, for a slow start behind a quick one, and for the time of day.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

from audit.settings.class_shows import ClassShowsSettings
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
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
    found = []
    for one, other in pairs:
        together, apart_s = _in_steps(one, other, 0.0, settings)
        free_s = settings.step_s * min(int(one.free.sum()), int(other.free.sum()))
        share = together / max(free_s, settings.step_s)
        if together < settings.least_together_s or share < settings.least_share:
            continue
        others = list(_so_far_apart(pairs, one, other, settings))
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


@dataclass(frozen=True, slots=True, kw_only=True)
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
    one: _Even, other: _Even, shift_s: float, settings: ClassShowsSettings
) -> tuple[float, float]:
    """Give how long one is in the other's steps, the other's clock shifted, and how far behind.

    Positive where the other comes after.
    """
    step = settings.step_s
    moved = other.first + round(shift_s / step)
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


def _so_far_apart(
    pairs: Sequence[tuple[_Even, _Even]], one: _Even, other: _Even, settings: ClassShowsSettings
) -> Iterator[float]:
    """Give how long these pairs would have been together, had they set off as far apart."""
    apart_s = other.begun_s - one.begun_s
    for first, second in pairs:
        if {first.ident, second.ident} & {one.ident, other.ident}:
            continue
        for ahead, after in ((first, second), (second, first)):
            shift_s = ahead.begun_s + apart_s - after.begun_s
            yield _in_steps(ahead, after, shift_s, settings)[0]
