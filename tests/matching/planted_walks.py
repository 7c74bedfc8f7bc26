"""Walks of known fixes for the tests of cleaning: invented, with a receiver's correlated noise."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy.signal import lfilter

from audit.track import Track

METRES_PER_DEGREE = 100_000.0
START = 1_791_014_400.0  # 2026-10-03T08:00:00Z


class FlatGrid:
    """Stands in for the grid of a course: degrees times 100 000 are metres."""

    def to_grid(self, longitude_deg, latitude_deg):
        return longitude_deg * METRES_PER_DEGREE, latitude_deg * METRES_PER_DEGREE


def recording(time_s, east_m, north_m, segment=None) -> Track:
    """A track with these places on the flat grid."""
    time_s = np.array(time_s, dtype=np.float64)
    nothing = np.full(len(time_s), np.nan)
    return Track(
        time_s=time_s,
        longitude_deg=np.array(east_m, dtype=np.float64) / METRES_PER_DEGREE,
        latitude_deg=np.array(north_m, dtype=np.float64) / METRES_PER_DEGREE,
        elevation_m=nothing.copy(),
        hdop=nothing.copy(),
        cadence_per_min=nothing.copy(),
        segment=np.zeros(len(time_s), dtype=np.int64)
        if segment is None
        else np.array(segment, dtype=np.int64),
    )


def picked(track: Track, which, time_s=None) -> Track:
    """The same recording with some of its rows, in this order."""
    return Track(
        time_s=(track.time_s if time_s is None else time_s)[which],
        longitude_deg=track.longitude_deg[which],
        latitude_deg=track.latitude_deg[which],
        elevation_m=track.elevation_m[which],
        hdop=track.hdop[which],
        cadence_per_min=track.cadence_per_min[which],
        segment=track.segment[which],
    )


def receiver_error(seconds: int, sd_m: float, memory_s: float, rng) -> np.ndarray:
    """First-order Gauss-Markov noise at 1 Hz, the common model of receiver error."""
    kept = np.exp(-1.0 / memory_s)
    shocks = rng.normal(0.0, sd_m * np.sqrt(1.0 - kept * kept), seconds)
    shocks[0] = rng.normal(0.0, sd_m)
    return lfilter([1.0], [1.0, -kept], shocks)


def walked(seed: int, every_s: int, minutes: int = 90, *, runs: bool = False):
    """Times and places, shape (n,) and (n, 2), of a walk with legs, halts and cul-de-sacs.

    Noise of 2 to 12 m that is forgotten over 20 to 60 s, and up to 2 m of white noise.
    With ``runs``, one leg in twelve is run at 2.2 to 3.5 m/s, side trips with it.
    """
    rng = np.random.default_rng(seed)
    seconds = minutes * 60 + 1
    usual = rng.uniform(0.6, 1.7) if runs else rng.uniform(0.9, 1.5)
    parts, length, azimuth = [], 0, rng.uniform(0.0, 360.0)
    while length < seconds:
        pace = usual * rng.uniform(0.75, 1.3)
        if runs and rng.random() < 1 / 12:
            pace = rng.uniform(2.2, 3.5)
        count = int(rng.uniform(100.0, 700.0) / pace)
        heading = np.radians(azimuth + receiver_error(count, 8.0, 30.0, rng))
        speed = pace * rng.normal(1.0, 0.1, count)
        parts.append(speed[:, None] * np.column_stack([np.sin(heading), np.cos(heading)]))
        if rng.random() < 0.25:
            way = rng.uniform(0.0, 2.0 * np.pi)
            out = np.tile(pace * np.array([np.sin(way), np.cos(way)]), (int(100.0 / pace), 1))
            out = out[: int(len(out) * rng.uniform(0.2, 1.5))]
            parts += [out, np.zeros((int(rng.integers(0, 40)), 2)), -out]
        if rng.random() < 0.6:
            parts.append(np.zeros((int(rng.uniform(10.0, 300.0)), 2)))
        azimuth += rng.uniform(-150.0, 150.0)
        length = sum(len(part) for part in parts)
    place = np.cumsum(np.concatenate(parts)[:seconds], axis=0)
    sd_m, memory_s = rng.uniform(2.0, 12.0), rng.uniform(20.0, 60.0)
    for axis in range(2):
        place[:, axis] += receiver_error(seconds, sd_m, memory_s, rng)
    place += rng.normal(0.0, rng.uniform(0.0, 2.0), place.shape)
    time_s = START + np.arange(seconds)
    return time_s[::every_s].copy(), place[::every_s].copy(), rng


@dataclass(frozen=True)
class Planted:
    place: np.ndarray
    bad: np.ndarray


def with_spikes(place: np.ndarray, rng, every_fixes: int = 80) -> Planted:
    """Runs of 1 to 5 fixes moved by 60 to 300 m, half of them all the same way."""
    place, bad = place.copy(), np.zeros(len(place), dtype=bool)
    for _ in range(max(1, len(place) // every_fixes)):
        length = int(rng.integers(1, 6))
        first = int(rng.integers(12, len(place) - 12 - length))
        if bad[first - 15 : first + length + 15].any():
            continue
        off_m, way = rng.uniform(60.0, 300.0, length), rng.uniform(0.0, 2.0 * np.pi, length)
        if rng.random() < 0.5:
            off_m[:], way[:] = off_m[0], way[0]
        spike = slice(first, first + length)
        place[spike] += np.column_stack([off_m * np.sin(way), off_m * np.cos(way)])
        bad[spike] = True
    return Planted(place, bad)
