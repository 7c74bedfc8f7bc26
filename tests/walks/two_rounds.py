"""Two walkers of one course in one recording, the second setting out as soon as the first is in."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.track import Track
from walks.difficulties import Difficulty
from walks.walk import Walk, make_walk

BACK_M_S = 1.2


@dataclass(frozen=True, slots=True, kw_only=True)
class TwoRounds:
    """A recording of two made walks of one course, with no pause between.

    Attributes
    ----------
    track : Track
        The first walk, the way from its end to where the second begins, and the second.
    later_s : float
        Added to the times of the second walk's truth.
    """

    first: Walk
    second: Walk
    track: Track
    later_s: float


def make_two_rounds(seed: int, difficulty: str | Difficulty) -> TwoRounds:
    """Make both walks; the same seed and difficulty give the same bytes."""
    first, second = (make_walk(seed, difficulty, walker) for walker in (0, 1))
    one, two = first.track, second.track
    ends = [(t.longitude_deg[at], t.latitude_deg[at]) for t, at in ((one, -1), (two, 0))]
    (lon, lat), (lon_to, lat_to) = ends
    metres = float(np.hypot((lon_to - lon) * np.cos(np.radians(lat)), lat_to - lat) * 60.0 * 1852.0)
    every_s = float(np.median(np.diff(one.time_s)))
    count = max(int(metres / BACK_M_S / every_s), 1)
    share = np.arange(1, count + 1) / (count + 1)
    error = np.random.default_rng([seed, count]).normal(0.0, 1.5e-5, (2, count))
    missing = np.full(count, np.nan)
    later_s = float(one.time_s[-1] + (count + 1) * every_s - two.time_s[0])
    columns = {
        "time_s": (one.time_s[-1] + np.arange(1, count + 1) * every_s, two.time_s + later_s),
        "longitude_deg": (lon + share * (lon_to - lon) + error[0], two.longitude_deg),
        "latitude_deg": (lat + share * (lat_to - lat) + error[1], two.latitude_deg),
    }
    joined = {
        name: np.concatenate(
            [getattr(one, name), *columns.get(name, (missing, getattr(two, name)))]
        )
        for name in (
            "time_s",
            "longitude_deg",
            "latitude_deg",
            "elevation_m",
            "hdop",
            "cadence_per_min",
        )
    }
    joined["segment"] = np.zeros(len(joined["time_s"]), dtype=np.int64)
    return TwoRounds(first=first, second=second, track=Track(**joined), later_s=later_s)
