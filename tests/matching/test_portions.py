"""Portions between cuts: every pair once, and figures as worked out one by one."""

from __future__ import annotations

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from measurement.hand_made import ORIGIN, SETTINGS, HandWalk, receiver

from audit.matching.cuts import find_cuts
from audit.matching.halts import find_movement
from audit.matching.portions import find_portions, near_pairs
from audit.matching.walk_samples import sample_walk

S = SETTINGS.matching


@settings(max_examples=80, deadline=None)
@given(
    path=st.lists(st.floats(0.0, 500.0), min_size=1, max_size=25).map(sorted),
    reach=st.floats(0.0, 400.0),
)
def test_all_pairs_within_reach_and_no_other(path, reach) -> None:
    path_m = np.array(path)
    first, second = near_pairs(path_m, reach)
    expected = {
        (i, j)
        for i in range(len(path_m))
        for j in range(i + 1, len(path_m))
        if path_m[j] <= path_m[i] + reach
    }
    assert set(zip(first.tolist(), second.tolist(), strict=True)) == expected
    assert np.all(np.diff(second) >= 0)


@pytest.fixture(scope="module")
def laid_out():
    walk = HandWalk().halt(60).walk(90, 300).halt(40).walk(20, 250).walk(150, 200).halt(60)
    samples = sample_walk(walk.clean(1, receiver(3, 2.0)), S)
    movement = find_movement(samples, S)
    cuts = find_cuts(samples, movement, np.array([[300.0, 0.0]]) + ORIGIN, S)
    return walk, samples, movement, cuts, find_portions(samples, movement, cuts, 600.0)


def test_portion_is_described_by_its_samples(laid_out) -> None:
    _, samples, movement, cuts, portions = laid_out
    assert len(portions) > 50
    for number in range(0, len(portions), 7):
        begin = int(cuts.sample[portions.first[number]])
        end = int(cuts.sample[portions.second[number]])
        track = samples.smooth[begin : end + 1]
        chord = track[-1] - track[0]
        length = float(np.hypot(*chord))
        assert portions.chord_m[number] == pytest.approx(length, abs=1e-9)
        assert portions.path_m[number] == pytest.approx(
            movement.path_m[end] - movement.path_m[begin], abs=1e-9
        )
        if length > 1.0:
            far = 1e5 * chord / length
            line = shapely.linestrings([track[0] - far, track[0] + far])
            off = shapely.distance(line, shapely.points(track))
            # exact to the cancellation of running sums over a kilometre
            assert portions.deviation_m[number] == pytest.approx(np.sqrt((off**2).mean()), abs=1e-3)
            east, north = chord / length
            angle = np.radians(portions.chord_deg[number])
            assert (np.sin(angle), np.cos(angle)) == pytest.approx((east, north), abs=1e-9)
        assert portions.silence_s[number] == 0.0


def test_halts_inside_a_portion_are_counted(laid_out) -> None:
    _, _, movement, cuts, portions = laid_out
    for number in range(0, len(portions), 11):
        begin = cuts.sample[portions.first[number]]
        end = cuts.sample[portions.second[number]]
        inside = sum(begin <= first and last <= end for first, last in movement.halts)
        assert portions.halts[number] == inside


def test_cuts_stand_at_halts_bends_and_points(laid_out) -> None:
    walk, samples, _, cuts, _ = laid_out
    assert np.all(np.diff(cuts.sample) > 0)
    assert cuts.sample[0] == 0
    assert cuts.sample[-1] == len(samples) - 1
    for begun, ended in walk.halts[1:2]:
        assert np.abs(cuts.time_s[cuts.begins_halt] - begun).min() < 10.0
        assert np.abs(cuts.time_s[cuts.ends_halt] - ended).min() < 10.0
    bend_s = walk.halts[1][1] + 200.0  # 250 m at 1.25 m/s after the second halt
    assert np.abs(cuts.time_s[cuts.turn_deg > 45.0] - bend_s).min() < 10.0


def test_long_straight_walk_has_fillers() -> None:
    samples = sample_walk(HandWalk().walk(90, 2000).clean(), S)
    movement = find_movement(samples, S)
    cuts = find_cuts(samples, movement, np.empty((0, 2)), S)
    assert np.diff(cuts.path_m).max() <= 2.0 * S.filler_m
    assert len(cuts) >= 2000 / S.filler_m / 2
