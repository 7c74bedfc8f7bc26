"""What a receiver makes of a trail: noise, trees, spikes, gaps, logging and rounding."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from audit.track import Track
from audit.units import FloatArray, unit_vector
from walks.courses import to_geographic
from walks.difficulties import Difficulty
from walks.random_drift import drift, smooth_drift
from walks.seconds import Seconds
from walks.walk_mistakes import WalkMistakes

SLOW_S = 600.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Receiver:
    """One receiver on one day. Spreads are per axis."""

    noise_m: float
    correlation_s: float
    slow_m: float
    smoothing_s: float
    white_m: float
    interval_s: float
    moved_m: float
    """Log only after so many metres; 0: by time."""
    decimals: int

    def as_dict(self) -> dict[str, float]:
        """Give the figures by name."""
        return {
            "noise_m": self.noise_m,
            "correlation_s": self.correlation_s,
            "slow_m": self.slow_m,
            "smoothing_s": self.smoothing_s,
            "white_m": self.white_m,
            "interval_s": self.interval_s,
            "moved_m": self.moved_m,
            "decimals": float(self.decimals),
        }


def draw_receiver(rng: np.random.Generator, difficulty: Difficulty) -> Receiver:
    """Draw a receiver."""
    noise = float(rng.uniform(*difficulty.noise_m))
    by_distance = bool(rng.random() < difficulty.by_distance)
    return Receiver(
        noise_m=noise,
        correlation_s=float(rng.uniform(*difficulty.correlation_s)),
        slow_m=noise * float(rng.uniform(*difficulty.slow_share)),
        smoothing_s=float(rng.uniform(*difficulty.smoothing_s)),
        white_m=difficulty.white_m,
        interval_s=float(rng.choice(difficulty.interval_s)),
        moved_m=float(rng.uniform(5.0, 20.0)) if by_distance else 0.0,
        decimals=int(rng.choice(difficulty.decimals)),
    )


def noise_m(
    rng: np.random.Generator, receiver: Receiver, n: int, under_trees: float = 0.0
) -> FloatArray:
    """Give n seconds of position error, shape (n, 2)."""
    worse = np.ones(n)
    if under_trees > 0.0:
        cover = drift(rng, n, 1.0, 400.0)
        worse = np.where(cover > np.quantile(cover, 1.0 - under_trees), 2.0, 1.0)
        worse = np.convolve(np.pad(worse, 20, mode="edge"), np.ones(41) / 41.0, mode="valid")
    axes = []
    for _ in range(2):
        fast = smooth_drift(rng, n, receiver.noise_m, receiver.correlation_s, receiver.smoothing_s)
        slow = drift(rng, n, receiver.slow_m, SLOW_S)
        axes.append(worse * fast + slow + receiver.white_m * rng.standard_normal(n))
    return np.column_stack(axes)


def _logged(receiver: Receiver, time_s: FloatArray, places_m: FloatArray) -> NDArray[np.bool_]:
    """Say at which seconds the receiver writes a fix."""
    since = time_s - time_s[0]
    if receiver.moved_m <= 0.0:
        return np.asarray(np.mod(since, receiver.interval_s) == 0.0)
    keep = np.zeros(len(time_s), dtype=bool)
    last = 0
    keep[0] = True
    for index in range(1, len(time_s)):
        away = np.hypot(*(places_m[index] - places_m[last]))
        if away >= receiver.moved_m or since[index] - since[last] >= 90.0:
            keep[index] = True
            last = index
    return keep


def _silent(
    rng: np.random.Generator, difficulty: Difficulty, time_s: FloatArray
) -> NDArray[np.bool_]:
    """Say at which seconds the receiver has no fix."""
    silent = np.zeros(len(time_s), dtype=bool)
    hours = len(time_s) / 3600.0
    for _ in range(int(rng.poisson(difficulty.gaps_per_h * hours))):
        begin = float(rng.uniform(time_s[0], time_s[-1]))
        silent |= (time_s > begin) & (time_s < begin + float(rng.uniform(*difficulty.gap_s)))
    return silent


def _spikes_m(
    rng: np.random.Generator, difficulty: Difficulty, fixes: int, hours: float
) -> FloatArray:
    """Give the jumps of single fixes or of runs of two or three, shape (fixes, 2)."""
    jumps = np.zeros((fixes, 2))
    for _ in range(int(rng.poisson(difficulty.spikes_per_h * hours))):
        first = int(rng.integers(0, fixes))
        jump = float(rng.uniform(30.0, 200.0)) * unit_vector(float(rng.uniform(0.0, 360.0)))
        jumps[first : first + int(rng.integers(1, 4))] += jump
    return jumps


def record(
    rng: np.random.Generator,
    difficulty: Difficulty,
    receiver: Receiver,
    grid: str,
    time_s: FloatArray,
    places_m: FloatArray,
) -> tuple[Track, NDArray[np.bool_]]:
    """Record a trail: the track, and which seconds had a receiver that knew where it was."""
    silent = _silent(rng, difficulty, time_s)
    seen_m = places_m + noise_m(rng, receiver, len(time_s), difficulty.under_trees)
    keep = _logged(receiver, time_s, seen_m) & ~silent
    seen_m, kept_s = seen_m[keep], time_s[keep]
    seen_m = seen_m + _spikes_m(rng, difficulty, len(kept_s), len(time_s) / 3600.0)
    longitude, latitude = to_geographic(grid).transform(seen_m[:, 0], seen_m[:, 1])
    apart = np.concatenate([[0.0], np.diff(kept_s)]) > 1800.0
    unknown = np.full(len(kept_s), np.nan)
    track = Track(
        time_s=kept_s.copy(),
        longitude_deg=np.round(longitude, receiver.decimals),
        latitude_deg=np.round(latitude, receiver.decimals),
        elevation_m=unknown,
        hdop=unknown.copy(),
        cadence_per_min=unknown.copy(),
        segment=np.cumsum(apart).astype(np.int64),
        source="made-walk.gpx",
    )
    return track, ~silent


def with_elevations(
    track: Track, seconds: Seconds, shared: WalkMistakes, rng: np.random.Generator
) -> Track:
    """Give the track its elevations on one even slope, off by a slow 3 m."""
    fall = shared.slope * (seconds.places_m @ unit_vector(shared.downhill_deg))
    level = np.interp(track.time_s, seconds.time_s, fall.max() + 100.0 - fall)
    off = np.interp(track.time_s, seconds.time_s, drift(rng, len(fall), 3.0, 300.0))
    return replace(track, elevation_m=np.round(level + off, 1))
