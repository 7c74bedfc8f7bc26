"""Where a walker stood: means of halts, the bend on the way, and how well either is known."""

from __future__ import annotations

import math

import numpy as np
import pytest
from measurement.hand_made import clean_of

from audit.matching.leg_match import Reckoned
from audit.measurement import places
from audit.measurement.places import fix_place, place_between
from audit.settings import MeasuringSettings

S = MeasuringSettings()


def kept_of_variance(length_s: float) -> float:
    """Of a mean over correlated noise: 2/x (1 - (1 - exp(-x)) / x), x = length / memory."""
    x = length_s / S.noise_correlation_s
    return 2.0 / x * (1.0 - (1.0 - math.exp(-x)) / x)


def standing(shift_m=0.0):
    """Walk east for 60 s, stand from 60 to 360 s while the receiver drifts, walk north."""
    time_s = np.arange(0.0, 421.0)
    east = np.clip(time_s, 0.0, 60.0)
    north = np.clip(time_s - 360.0, 0.0, None)
    drift = np.where((time_s >= 60.0) & (time_s <= 360.0), (time_s - 60.0) / 100.0, 0.0)
    return clean_of(time_s, np.column_stack([east + drift + shift_m, north]))


@pytest.mark.parametrize(
    ("moment_s", "begin_s", "end_s"),
    [
        (60.0, 60.0, 180.0),  # just come: the first two minutes of the halt
        (360.0, 240.0, 360.0),  # about to leave: the last two
        (200.0, 80.0, 320.0),  # in the middle: two minutes either way
        (54.0, 60.0, 180.0),  # within reach before it
        (366.0, 240.0, 360.0),
    ],
)
def test_a_halt_is_the_mean_of_what_is_near_the_moment(moment_s, begin_s, end_s) -> None:
    found = fix_place(standing(), np.array([[60.0, 360.0]]), moment_s, 4.0, S)
    assert found.halt_s == (begin_s, end_s)
    assert found.east_m == pytest.approx(60.0 + ((begin_s + end_s) / 2.0 - 60.0) / 100.0)
    assert found.north_m == 0.0
    assert found.sd_m == pytest.approx(4.0 * math.sqrt(kept_of_variance(end_s - begin_s)))
    assert found.time_s == moment_s
    assert found.place.tolist() == [found.east_m, found.north_m]


def test_a_halt_out_of_reach_is_another_place() -> None:
    found = fix_place(standing(), np.array([[60.0, 360.0]]), 53.0, 4.0, S)
    assert found.halt_s == (53.0, 53.0)


def test_the_nearer_of_two_halts_is_taken() -> None:
    halts = np.array([[0.0, 10.0], [14.0, 30.0], [400.0, 410.0]])
    assert fix_place(standing(), halts, 11.0, 4.0, S).halt_s == (0.0, 10.0)
    assert fix_place(standing(), halts, 13.0, 4.0, S).halt_s == (14.0, 30.0)


def test_on_the_way_two_pieces_that_meet_give_the_corner() -> None:
    time_s = np.arange(0.0, 61.0, 3.0)
    place = np.column_stack([1.2 * np.minimum(time_s, 30.0), 1.2 * np.maximum(time_s - 30.0, 0.0)])
    found = fix_place(clean_of(time_s, place), np.empty((0, 2)), 30.0, 4.0, S)
    assert (found.east_m, found.north_m) == pytest.approx((36.0, 0.0), abs=1e-4)
    # Over 12 s to either side.
    assert found.sd_m == pytest.approx(4.0 * math.sqrt(kept_of_variance(24.0)))


def test_with_few_fixes_a_place_lies_straight_between_two() -> None:
    """Every 6 s there are five within 12 s either way, every 7 s three."""
    for every_s, alone in ((6.0, False), (7.0, True)):
        time_s = every_s * np.arange(-10.0, 11.0)
        clean = clean_of(time_s, np.column_stack([2.0 * time_s, np.abs(time_s)]))
        found = fix_place(clean, np.empty((0, 2)), 0.0, 4.0, S)
        assert (found.sd_m == 4.0) is alone
    between = place_between(clean, 3.5, 4.0)
    assert (between.east_m, between.north_m, between.sd_m) == (7.0, 3.5, 4.0)


@pytest.mark.parametrize(
    ("from_s", "to_s"), [(-1e9, 1e9), (500.0, 1e9), (-1e9, 700.0), (500.0, 700.0)]
)
def test_a_corner_between_few_fixes_is_laid_through_those_about_it(
    monkeypatch, from_s, to_s
) -> None:
    """So many on either side, and none beyond the walk's other corners."""
    asked = []

    def corner(time_s, _, moments_s, **__):
        asked.append((time_s.tolist(), moments_s.tolist()))

    monkeypatch.setattr(places, "sparse_corner", corner)
    time_s = 30.0 * np.arange(40.0)
    clean = clean_of(time_s, np.column_stack([time_s, 0.0 * time_s]), every_s=30.0)
    fix_place(
        clean,
        np.empty((0, 2)),
        615.0,
        4.0,
        S,
        places.Around(from_s=from_s, to_s=to_s, speed_m_s=1.2),
    )
    reach_s = S.corner_fixes * 30.0
    about = time_s[(np.abs(time_s - 615.0) <= reach_s) & (time_s >= from_s) & (time_s <= to_s)]
    moments_s = 615.0 + 30.0 * np.linspace(-1.0, 1.0, S.corner_moments)
    assert asked == [(about.tolist(), moments_s.tolist())]


def test_the_one_fix_of_a_halt_is_its_place() -> None:
    time_s = np.arange(0.0, 601.0, 60.0)
    clean = clean_of(time_s, np.column_stack([time_s, 0.0 * time_s]))
    one = fix_place(clean, np.array([[110.0, 130.0]]), 120.0, 4.0, S)
    assert (one.east_m, one.halt_s) == (120.0, (110.0, 130.0))
    # The mean of 20 s of an error that is forgotten over 100 s, its variance integrated.
    share = 2.0 * 100.0 / 20.0 - 2.0 * (100.0 / 20.0) ** 2 * (1.0 - np.exp(-20.0 / 100.0))
    assert one.sd_m == pytest.approx(4.0 * np.sqrt(share), rel=1e-9)
    two = fix_place(clean, np.array([[120.0, 180.0]]), 120.0, 4.0, S)
    assert (two.east_m, two.halt_s) == (150.0, (120.0, 180.0))


def test_a_place_reckoned_into_a_silence_is_the_less_sure_the_further_from_a_fix() -> None:
    near, far = (
        fix_place(
            standing(), np.array([[60.0, 360.0]]), 90.0, 4.0, S,
            unseen=Reckoned(east_m=3.0, north_m=4.0, seen_s=0.0, gone_m=gone_m),
        )
        for gone_m in (0.0, 100.0)
    )  # fmt: skip
    assert near.place.tolist() == far.place.tolist() == [3.0, 4.0]
    assert near.halt_s == (near.time_s, near.time_s) == (90.0, 90.0)
    assert near.sd_m == pytest.approx(math.hypot(4.0, S.unseen_sd_m))
    assert far.sd_m == pytest.approx(math.hypot(4.0, S.unseen_sd_m, 100.0 * S.unseen_sd_share))
