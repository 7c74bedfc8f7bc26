"""Bypasses drawn by hand: which are found, and their sides to the metre."""

from __future__ import annotations

import math

import numpy as np
import pytest

from audit.measurement.bypasses import describe_bypass, find_bypasses
from audit.settings import MeasuringSettings

S = MeasuringSettings()
NOISE_M, MEMORY_S = 3.0, 50.0


def walk(*pieces: tuple[float, float], start=(500.0, 700.0)) -> np.ndarray:
    """Go so many metres on so many degrees, a place a metre."""
    here, places = np.array(start), [np.array(start)]
    for azimuth, metres in pieces:
        ahead = np.array([math.sin(math.radians(azimuth)), math.cos(math.radians(azimuth))])
        places += [here + ahead * step for step in range(1, round(metres) + 1)]
        here = places[-1]
    return np.array(places)


def around(out_m=40.0, on_m=60.0, back_m=40.0, heading=90.0, hand=1.0):
    """Walk 100 m, out to a side, on, back in and 100 m more."""
    return walk((heading, 100), (heading + 90 * hand, out_m), (heading, on_m),
                (heading - 90 * hand, back_m), (heading, 100))  # fmt: skip


@pytest.mark.parametrize("heading", [0.0, 90.0, 217.0])
@pytest.mark.parametrize("hand", [1.0, -1.0])
def test_a_box_is_found_from_where_the_line_is_left_to_where_it_is_met(heading, hand) -> None:
    found = find_bypasses(around(heading=heading, hand=hand), heading, NOISE_M, S)
    assert found == [(100, 240)]


@pytest.mark.parametrize(
    ("pieces", "found"),
    [
        # The shorter side must be longer than the receiver's wander: 12 m, or twice the noise.
        ([(90, 100), (180, 12), (90, 50), (0, 12), (90, 100)], [(100, 174)]),
        ([(90, 100), (180, 11), (90, 50), (0, 11), (90, 100)], []),
        # A side runs within 40 degrees of a right angle.
        ([(90, 100), (141, 40), (90, 50), (39, 40), (90, 100)], [(100, 230)]),
        ([(90, 100), (129, 40), (90, 50), (51, 40), (90, 100)], []),
        # Out and never in; out twice to the same hand.
        ([(90, 100), (180, 40), (90, 200)], []),
        ([(90, 100), (180, 40), (90, 50), (180, 40), (90, 50)], []),
        # The way back in must come within 300 m.
        ([(90, 100), (180, 40), (90, 300), (0, 40), (90, 50)], [(100, 480)]),
        ([(90, 100), (180, 40), (90, 301), (0, 40), (90, 50)], []),
        # Two, one after the other, to either hand.
        ([(90, 50), (180, 20), (90, 30), (0, 20), (90, 50), (0, 20), (90, 30), (180, 20), (90, 9)],
         [(50, 120), (170, 240)]),
    ],
)  # fmt: skip
def test_what_is_a_bypass_and_what_is_none(pieces, found) -> None:
    assert find_bypasses(walk(*pieces), 90.0, NOISE_M, S) == found


def test_a_noisy_receiver_feigns_wider_bypasses() -> None:
    small = around(out_m=16.0, back_m=16.0)
    assert find_bypasses(small, 90.0, 7.9, S) == [(100, 192)]
    assert find_bypasses(small, 90.0, 8.1, S) == []  # under twice the noise


@pytest.mark.parametrize(
    ("hand", "side"),
    [(1.0, "right"), (-1.0, "left")],
)
@pytest.mark.parametrize(("out_m", "back_m"), [(40.0, 40.0), (40.0, 25.0), (25.0, 40.0)])
def test_sides_are_measured_from_the_lines_before_and_after(hand, side, out_m, back_m) -> None:
    drawn = around(out_m=out_m, back_m=back_m, heading=30.0, hand=hand)
    ends = (100, round(100 + out_m + 60 + back_m))
    time_s = 1000.0 + 0.8 * np.arange(len(drawn))
    found = describe_bypass(time_s, drawn, 30.0, ends, NOISE_M, MEMORY_S, S)
    assert (found.side, found.start_s, found.end_s) == (side, 1080.0, 1000.0 + 0.8 * ends[1])
    assert found.out_m == pytest.approx(out_m, abs=1e-6)
    assert found.back_m == pytest.approx(back_m, abs=1e-6)
    assert found.ahead_m == pytest.approx(60.0, abs=1e-6)
    # The difference of two errors, of which exp(-T / memory) is the same.
    lasted_s = 0.8 * (out_m + 60.0 + back_m)
    sd_m = NOISE_M * math.sqrt(2.0 * (1.0 - math.exp(-lasted_s / MEMORY_S)))
    assert found.side_sd_m == pytest.approx(sd_m)
    assert found.equal is (out_m == back_m)


def test_sides_are_equal_as_far_as_receiver_and_counting_can_tell() -> None:
    """The wider of 19 in 20: 1.96 times the receiver's error and 5 in 100 of the longer side."""
    lasted_s = 200.0  # four memories
    sd_m = NOISE_M * math.sqrt(2.0 * (1.0 - math.exp(-4.0)))
    limit_m = 1.96 * math.hypot(sd_m, 0.05 * 60.0)
    assert 10.0 < limit_m < 11.0
    for back_m, equal in ((60.0 - math.floor(limit_m), True), (60.0 - math.ceil(limit_m), False)):
        drawn = around(out_m=60.0, back_m=back_m)
        last = round(100 + 60 + 60 + back_m)
        time_s = lasted_s * np.arange(len(drawn)) / (last - 100)
        found = describe_bypass(time_s, drawn, 90.0, (100, last), NOISE_M, MEMORY_S, S)
        assert found.equal is equal, back_m


def test_the_line_before_and_after_is_that_of_the_last_and_next_metres() -> None:
    """15 m of it, or 16 places: where the walker had been further off does not count."""
    drawn = walk((60, 40), (90, 60), (180, 40), (90, 60), (0, 40), (90, 100))
    drawn[100 + 140 + 16 :, 1] += 500.0
    found = describe_bypass(
        np.arange(len(drawn)) * 1.0, drawn, 90.0, (100, 240), NOISE_M, MEMORY_S, S
    )
    assert found.out_m == pytest.approx(40.0, abs=1e-6)
    assert found.back_m == pytest.approx(40.0, abs=1e-6)


def test_the_furthest_place_is_that_from_the_middle_of_both_lines() -> None:
    """The line after lies 30 m right: 12 m left is further than 34 m right, from 15 m right."""
    drawn = walk((90, 100), (0, 12), (90, 20), (180, 46), (90, 20), (0, 4), (90, 100))
    found = describe_bypass(
        np.arange(len(drawn)) * 1.0, drawn, 90.0, (100, 202), NOISE_M, MEMORY_S, S
    )
    assert (found.side, found.out_m, found.back_m) == (
        "left",
        pytest.approx(12.0),
        pytest.approx(42.0),
    )


def test_the_furthest_place_may_be_the_last() -> None:
    """Out 40 m to the right and on there, from one metre off the line: nothing leads back."""
    drawn = around()
    found = describe_bypass(
        np.arange(len(drawn)) * 1.0, drawn, 90.0, (101, 140), NOISE_M, MEMORY_S, S
    )
    # The line before is the mean of sixteen places, one of them a metre off.
    assert found.out_m == pytest.approx(40.0 - 1.0 / 16.0)
    assert found.back_m == pytest.approx(0.0, abs=1e-9)
