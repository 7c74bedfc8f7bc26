"""The made receivers: stated noise and correlation, logging, rounding; and real ones beside them."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import gpxpy
import numpy as np
import pytest
from pyproj import Transformer
from walks import CLEAN, DIFFICULTIES, make_walk
from walks.random_drift import drift, smooth_drift
from walks.receivers import Receiver, noise_m

RECEIVER = Receiver(
    noise_m=5.0,
    correlation_s=60.0,
    slow_m=0.0,
    smoothing_s=4.0,
    white_m=0.0,
    interval_s=1.0,
    moved_m=0.0,
    decimals=7,
)


def correlation(series: np.ndarray, lag: int) -> float:
    return float(np.corrcoef(series[lag:], series[:-lag])[0, 1])


@pytest.mark.parametrize("tau_s", [15.0, 60.0, 180.0])
def test_a_drift_has_its_spread_and_correlation(tau_s):
    """Ornstein-Uhlenbeck: correlation exp(-t/tau) (any text on Markov processes)."""
    n = 400_000
    series = drift(np.random.default_rng(1), n, 5.0, tau_s)
    # Spread of the sample's sd: about sd sqrt(tau / n); five of these.
    assert series.std() == pytest.approx(5.0, abs=5.0 * 5.0 * np.sqrt(tau_s / n))
    for lag in (1, 10, round(tau_s)):
        assert correlation(series, lag) == pytest.approx(np.exp(-lag / tau_s), abs=0.03)


@pytest.mark.parametrize("smoothing_s", [0.0, 2.0, 8.0])
def test_smoothing_keeps_the_spread_and_takes_the_jumps(smoothing_s):
    series = smooth_drift(np.random.default_rng(2), 400_000, 5.0, 60.0, smoothing_s)
    assert series.std() == pytest.approx(5.0, rel=0.06)
    # Without smoothing a second's step is sd sqrt(2/tau); any filter only makes it smaller.
    step = np.diff(series).std()
    bare = 5.0 * np.sqrt(2.0 / 60.0)
    assert step == pytest.approx(bare, rel=0.03) if smoothing_s == 0.0 else step < 0.8 * bare


def test_no_drift_is_no_drift():
    assert not drift(np.random.default_rng(1), 50, 0.0, 20.0).any()
    assert len(drift(np.random.default_rng(1), 0, 3.0, 20.0)) == 0


def test_noise_has_the_size_that_the_truth_states():
    squares, stated = [], []
    for seed in range(12):
        family = replace(CLEAN, noise_m=(5.0, 5.0), correlation_s=(20.0, 20.0))
        walk = make_walk(seed, family)
        to_grid = Transformer.from_crs("EPSG:4326", walk.plan.grid, always_xy=True)
        east, north = to_grid.transform(walk.track.longitude_deg, walk.track.latitude_deg)
        at = np.searchsorted(walk.truth.time_s, walk.track.time_s)
        squares += [(east - walk.truth.east_m[at]) ** 2, (north - walk.truth.north_m[at]) ** 2]
        stated.append(walk.truth.receiver["noise_m"])
    assert set(stated) == {5.0}
    # 12 walks of an hour, correlation 20 s: about 2000 independent values an axis.
    assert np.sqrt(np.concatenate(squares).mean()) == pytest.approx(5.0, rel=0.06)


def test_under_trees_the_noise_is_twice_as_large_for_the_stated_share():
    rng = np.random.default_rng(3)
    open_sky = noise_m(rng, RECEIVER, 200_000)
    trees = noise_m(rng, RECEIVER, 200_000, under_trees=0.5)
    assert open_sky.std() == pytest.approx(5.0, rel=0.1)
    assert trees.std() == pytest.approx(5.0 * np.sqrt(0.5 + 0.5 * 4.0), rel=0.1)


@pytest.mark.parametrize("interval_s", [1.0, 5.0, 30.0, 60.0])
def test_fixes_come_at_the_interval(interval_s):
    track = make_walk(1, replace(CLEAN, interval_s=(interval_s,))).track
    assert set(np.diff(track.time_s)) == {interval_s}


def test_logging_by_distance_waits_for_the_distance():
    walk = make_walk(1, replace(CLEAN, by_distance=1.0))
    moved_m = walk.truth.receiver["moved_m"]
    at = np.searchsorted(walk.truth.time_s, walk.track.time_s)
    steps = np.hypot(np.diff(walk.truth.east_m[at]), np.diff(walk.truth.north_m[at]))
    waits = np.diff(walk.track.time_s)
    assert np.all((steps >= moved_m - 0.05) | (waits >= 90.0))


@pytest.mark.parametrize("decimals", [5, 6])
def test_positions_are_rounded(decimals):
    track = make_walk(1, replace(CLEAN, decimals=(decimals,))).track
    scaled = track.longitude_deg * 10.0**decimals
    assert np.abs(scaled - np.round(scaled)).max() < 1e-4


def test_gaps_hold_no_fix_and_are_marked():
    walk = make_walk(2, replace(CLEAN, gaps_per_h=6.0))
    truth = walk.truth
    assert not truth.recorded.all()
    silent = set(truth.time_s[~truth.recorded])
    assert not silent & set(walk.track.time_s)
    assert np.diff(walk.track.time_s).max() > 20.0


def test_spikes_are_rare_and_far():
    quiet = make_walk(2, CLEAN).track
    spiky = make_walk(2, replace(CLEAN, spikes_per_h=10.0)).track
    away_m = 111_000.0 * np.abs(spiky.latitude_deg - quiet.latitude_deg)
    assert 0 < np.count_nonzero(away_m > 1.0) < 0.02 * len(away_m)


# Real recordings beside the made ones


def recorded_m(path: Path) -> tuple[np.ndarray, np.ndarray]:
    """Give seconds and local metres of a recording, by the reference reader."""
    with path.open(encoding="utf-8") as file:
        gpx = gpxpy.parse(file)
    points = [p for track in gpx.tracks for segment in track.segments for p in segment.points]
    points = [p for p in points if p.time is not None]
    latitude = np.array([p.latitude for p in points])
    longitude = np.array([p.longitude for p in points])
    metres = 111_200.0 * np.column_stack(
        [(longitude - longitude[0]) * np.cos(np.radians(latitude[0])), latitude - latitude[0]]
    )
    return np.array([p.time.timestamp() for p in points]), metres


def test_a_real_still_receiver_lies_within_the_made_ones(shared_tracks):
    """Eleven minutes of a still receiver: correlation after 10 s, and the step of a second."""
    _, places = recorded_m(shared_tracks / "static-receiver.gpx")
    real = [(correlation(axis, 10), float(np.diff(axis).std() / axis.std())) for axis in places.T]
    made = []
    rng = np.random.default_rng(5)
    family = DIFFICULTIES["trained"]
    for tau_s in family.correlation_s:
        for smoothing_s in family.smoothing_s:
            for share in family.slow_share:
                receiver = replace(
                    RECEIVER, correlation_s=tau_s, smoothing_s=smoothing_s, slow_m=share * 5.0
                )
                for _ in range(20):
                    axis = noise_m(rng, receiver, len(places))[:, 0]
                    made.append((correlation(axis, 10), float(np.diff(axis).std() / axis.std())))
    after_10_s, step = zip(*made, strict=True)
    for real_correlation, real_step in real:
        assert min(after_10_s) <= real_correlation <= max(after_10_s)
        assert min(step) <= real_step <= max(step)


@pytest.mark.parametrize(
    "name", ["pair-ilona-2014.gpx", "pair-south-2015.gpx", "hike-handheld-long.gpx"]
)
def test_real_hikers_walk_at_speeds_of_the_made_walkers(shared_tracks, name):
    time_s, places = recorded_m(shared_tracks / name)
    apart_s = np.diff(time_s)
    speed = np.hypot(*np.diff(places, axis=0).T)[apart_s > 0] / apart_s[apart_s > 0]
    moving = np.median(speed[speed > 0.3])
    slowest = DIFFICULTIES["novice"].speed_m_s[0] * 0.6  # the ground slows by as much
    fastest = DIFFICULTIES["trained"].speed_m_s[1] * 1.5
    assert slowest < moving < fastest
