"""Samples of a walk given place by place, for what can be counted on paper."""

from __future__ import annotations

import numpy as np

from audit.matching.walk_samples import WalkSamples


def drawn(*pieces: tuple[float, float, int], step_s: float = 2.0, raw=None) -> WalkSamples:
    """Go (east, north) metres evenly in so many samples, piece by piece, from (0, 0)."""
    places = [np.zeros((1, 2))]
    for east, north, count in pieces:
        share = np.arange(1, count + 1)[:, None] / count
        places.append(places[-1][-1] + share * np.array([east, north]))
    return samples_of(np.concatenate(places), step_s=step_s, raw=raw)


def samples_of(place, *, step_s: float = 2.0, raw=None, stretch=None) -> WalkSamples:
    place = np.asarray(place, dtype=np.float64)
    return WalkSamples(
        step_s=step_s,
        time_s=1000.0 + step_s * np.arange(len(place)),
        raw=place if raw is None else raw,
        smooth=place,
        stretch=np.zeros(len(place), dtype=np.int64) if stretch is None else stretch,
        in_gap=np.zeros(len(place), dtype=bool),
        long_interval_s=step_s,
        usual_move_m=float(np.median(np.hypot(*np.diff(place, axis=0).T)))
        if len(place) > 1
        else 0.0,
    )
