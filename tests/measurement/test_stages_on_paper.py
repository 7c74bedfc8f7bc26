"""What a walk is divided into, searches and halts that are looked at, second by second."""

from __future__ import annotations

import math
from dataclasses import replace
from unittest.mock import Mock

import numpy as np
import pytest
from measurement.hand_made import SETTINGS, card_of, clean_of, match_of, match_with

from audit.matching.leg_match import LegMatch
from audit.measurement import last_search, receiver_noise, search_ends, search_shape, spans
from audit.measurement.receiver_noise import measure_noise, noise_between
from audit.measurement.search_ends import settled_since, with_search_ends
from audit.measurement.search_shape import describe_search

S = SETTINGS.measuring
SEARCH = SETTINGS.search
ON_GRID_M = np.array([3000.0, 8000.0])
NO_HALTS = np.empty((0, 2))


def eastward(seconds=1000, every_s=1.0, stood=()):
    """A metre a second due east, standing in some stretches of time."""
    time_s = np.arange(0.0, seconds + 1e-9, every_s)
    still = sum((np.clip(time_s - a, 0.0, b - a) for a, b in stood), np.zeros(len(time_s)))
    return clean_of(
        time_s, np.column_stack([5000.0 + time_s - still, np.full(len(time_s), 7000.0)])
    )


def leg(number, start_s, claim_s, search_end_s=None, status="walked"):
    return LegMatch(
        leg=number, status=status, start_s=start_s, claim_s=claim_s, search_end_s=search_end_s
    )


def stages(*legs, clean=None):
    return [
        (one.kind, one.leg, one.start_s, one.end_s)
        for one in spans._stages(clean or eastward(), match_with(*legs), S)
    ]


def test_before_and_after_a_leg_he_is_at_the_point_within_25_m_of_it() -> None:
    assert stages(leg(0, 100.0, 400.0)) == [
        ("approach", None, 0.0, 75.0), ("at-point", None, 75.0, 100.0),
        ("walking", 0, 100.0, 400.0),
        ("at-point", None, 400.0, 426.0), ("walk-off", None, 426.0, 1000.0),
    ]  # fmt: skip
    # Who never leaves the point again is at it to the end; a search comes before.
    assert stages(leg(0, 100.0, 950.0, 980.0))[2:] == [
        ("walking", 0, 100.0, 950.0), ("search", 0, 950.0, 980.0),
        ("at-point", None, 980.0, 1000.0), ("walk-off", None, 1000.0, 1000.0),
    ]  # fmt: skip
    assert stages() == [("approach", None, 0.0, 1000.0)]


def test_with_few_fixes_the_next_one_shows_the_point() -> None:
    """The claim at 410 s: the fix at 420 s, and the first beyond 25 m of that."""
    assert stages(leg(0, 100.0, 410.0), clean=eastward(every_s=20.0))[-2:] == [
        ("at-point", None, 410.0, 460.0), ("walk-off", None, 460.0, 1000.0)
    ]  # fmt: skip


def test_who_claims_as_the_recording_ends_is_at_the_point_to_its_end() -> None:
    """The last fix, at 1000 s, is where he stands; the one before it lies 30 m back."""
    clean = eastward(every_s=20.0)
    assert stages(leg(0, 100.0, 990.0), clean=clean)[-2:] == [
        ("at-point", None, 990.0, 1000.0), ("walk-off", None, 1000.0, 1000.0)
    ]  # fmt: skip
    late = clean_of(
        np.array([0.0, 500.0, 990.0, 1000.0]), np.array([[0, 0], [500, 0], [990, 0], [1090, 0]])
    )
    found = stages(leg(0, 100.0, 1000.0), clean=late)
    assert found[-1] == ("walk-off", None, 1000.0, 1000.0)


@pytest.mark.parametrize(
    ("search_end_s", "settled_s"), [(None, 400.0), (390.0, 400.0), (450.0, 450.0), (550.0, 500.0)]
)
def test_between_two_legs_lies_a_search_and_then_the_point(search_end_s, settled_s) -> None:
    found = stages(leg(0, 100.0, 400.0, search_end_s), leg(1, 500.0, 900.0))
    assert found[3:5] == [
        ("search", 0, 400.0, settled_s), ("at-point", None, settled_s, 500.0)
    ]  # fmt: skip


def test_between_legs_that_do_not_follow_lies_a_way_of_none() -> None:
    found = stages(leg(2, 500.0, 900.0), leg(0, 100.0, 400.0, 450.0))
    assert found[2:6] == [
        ("walking", 0, 100.0, 400.0), ("walking", None, 400.0, 475.0),
        ("at-point", None, 475.0, 500.0), ("walking", 2, 500.0, 900.0),
    ]  # fmt: skip


def test_since_when_he_stayed_where_he_left_from() -> None:
    clean = eastward(stood=[(200.0, 400.0)])
    assert settled_since(clean, 0.0, 400.0, 25.0) == 175.0
    assert settled_since(clean, 300.0, 400.0, 25.0) == 300.0  # he was there already
    assert settled_since(clean, 0.0, 400.5, 25.0) == 175.0  # the fix before he leaves
    # Of sparse fixes only the last one lies there: it is the moment, but not after leaving.
    sparse = eastward(every_s=100.0)
    assert settled_since(sparse, 0.0, 450.0, 25.0) == 400.0
    assert settled_since(sparse, 360.0, 370.0, 25.0) == 360.0
    out_and_back = clean_of(
        np.arange(0.0, 101.0),
        np.column_stack([50.0 - np.abs(np.arange(101.0) - 50.0), np.zeros(101)]),
    )
    assert settled_since(out_and_back, 0.0, 100.0, 25.0) == 75.0


def ends(*legs, clean=None):
    card = card_of((0, 0), (9000, 0), (9000, 9000), (0, 9000))
    found = with_search_ends(clean or eastward(), match_of(card, legs), card, SETTINGS)
    return [one.search_end_s for one in found.legs]


def test_a_search_ends_where_the_next_leg_begins() -> None:
    clean = eastward(stood=[(300.0, 400.0)])
    first, second = leg(0, 100.0, 250.0, 250.0), leg(1, 400.0, 700.0, 700.0)
    assert ends(first, second, clean=clean)[0] == 275.0
    # What is known of it stays where it is later, or earlier than the claim does not count.
    assert ends(replace(first, search_end_s=290.0), second, clean=clean)[0] == 290.0
    assert ends(replace(first, search_end_s=None), second, clean=clean)[0] == 275.0
    assert ends(replace(first, search_end_s=10.0), second, clean=clean)[0] == 275.0
    # After a leg left out, and after one given up, nothing shows it.
    assert ends(first, leg(2, 400.0, 700.0, 700.0), clean=clean)[0] == 250.0
    assert ends(leg(0, 100.0, 250.0, 270.0))[0] == 270.0


@pytest.mark.parametrize(("status", "ended_s"), [("walked", 333.0), ("unfinished", 250.0)])
def test_who_gave_a_leg_up_does_not_search_for_its_point(monkeypatch, status, ended_s) -> None:
    monkeypatch.setattr(search_ends, "last_search_end", Mock(return_value=333.0))
    assert ends(leg(0, 100.0, 250.0, 250.0, status))[0] == ended_s


def test_a_search_is_as_long_as_its_way_and_reaches_as_far_as_it_went() -> None:
    walk = np.array([[0.0, 0.0], [0.0, 10.0], [10.0, 10.0], [0.0, 10.0]]) + ON_GRID_M
    found = describe_search(np.array([1.0, 11.0, 21.0, 31.0]), walk, 0.0, SEARCH)
    assert (found.start_s, found.end_s, found.path_m) == (1.0, 31.0, 30.0)
    assert found.reach_m == pytest.approx(math.hypot(10.0, 10.0))
    assert describe_search(np.array([1.0, 2.0]), walk[:2], 0.0, SEARCH) is None  # 10 m
    for metres, told in ((15.0, True), (14.0, False)):
        straight = describe_search(
            np.array([0.0, 9.0]), np.array([[0, 0], [0, metres]]), 0.0, SEARCH
        )
        assert (straight is not None) is told
    assert describe_search(np.array([1.0]), walk[:1], 0.0, SEARCH) is None


def shape(*places, heading_deg=0.0):
    corners = np.array([(0.0, 0.0), *places]) + ON_GRID_M
    return search_shape.search_shape(corners, heading_deg, SEARCH)


def test_straight_on_is_ahead_and_at_most_back_again() -> None:
    assert shape((0, 100)) == shape((0, 100), (0, 0)) == "straight on"
    for azimuth_deg, name in ((34, "straight on"), (-34, "straight on"), (36, "wandering"),
                              (-36, "wandering")):  # fmt: skip
        angle = math.radians(azimuth_deg)
        assert shape((100 * math.sin(angle), 100 * math.cos(angle))) == name
    # So are two bends, and a third is too much.
    assert shape((0, 100), (20, 30), (0, 100)) == "straight on"
    assert shape((0, 60), (30, 30), (0, 75), (40, 100)) == "wandering"
    # And 2.6 times as far as it reaches.
    assert shape((0, 100), (0, 20), (0, 100)) == "straight on"
    assert shape((0, 100), (0, 10), (0, 100)) == "wandering"


def test_what_is_a_corner_goes_with_how_far_the_search_reaches() -> None:
    """Eight metres off, or 15 in 100 of the reach: 20 m is none at 200 m, and 7 m none at 40 m."""

    def zigzag(reach_m, off_m):
        return [(off_m * (-1) ** n, reach_m * n / 4) for n in (1, 2, 3)] + [(0, reach_m)]

    for reach_m, off_m, name in ((200, 20, "straight on"), (40, 7, "straight on"),
                                 (200, 60, "wandering"), (40, 15, "wandering")):  # fmt: skip
        assert shape(*zigzag(reach_m, off_m)) == name


def test_what_a_receiver_wanders_in_a_halt_is_no_way_of_a_search() -> None:
    time_s = 500.0 + np.arange(0.0, 80.0, 10.0)
    place = np.column_stack([np.array([0, 10, 20, 26, 20, 26, 36, 46]), np.full(8, 9.0)])
    halts = np.array([[520.0, 550.0]])
    walked = last_search.metres_walked(time_s, place, halts)
    assert walked.tolist() == [0.0, 10.0, 20.0, 20.0, 20.0, 20.0, 30.0, 40.0]


def test_he_sets_off_where_the_rest_of_his_way_is_nearly_straight() -> None:
    """To the last place: 93 in 100 of the way, by the chord."""
    place = np.array([[0.0, 0.0], [0.0, 100.0], [100.0, 100.0], [200.0, 100.0], [300.0, 110.0]])
    path = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(place, axis=0).T))])
    for last, first in ((4, 1), (3, 1), (1, 0), (0, 0)):
        assert last_search._sets_off(place + ON_GRID_M, path, last, SEARCH) == first


def test_a_fan_comes_back_twice() -> None:
    """Back within 35 in a hundred of its reach, from beyond 60."""
    assert shape((90, 0), (34, 0), (-90, 0), (-34, 0), (0, -100), heading_deg=0.0) == "fan"
    assert shape((90, 0), (37, 0), (-90, 0), (-37, 0), (0, -100), heading_deg=0.0) != "fan"
    away = np.array([0.0, 100.0, 30.0, 61.0, 30.0, 59.0, 30.0])
    assert search_shape._returns(away, 100.0, SEARCH) == 2
    assert search_shape._returns(np.array([0.0, 60.0, 35.0]), 100.0, SEARCH) == 1


def test_a_square_goes_round_to_one_hand() -> None:
    round_right = (0, 50), (50, 50), (50, -50), (-50, -50), (-50, 60)
    assert shape(*round_right) == "square"
    assert shape(*[(-east, north) for east, north in round_right]) == "square"
    # 180 degrees are not round; of four turns a second to the other hand is too many.
    assert shape((0, -100), (-100, -100), (-100, 30)) == "wandering"
    assert shape((0, -100), (-60, -100), (-60, -40), (-120, -40), (-120, -120)) == "wandering"


def halted(seconds, every_s=1.0, halts=((0.0, 60.0),), hdop=None, timed=True):
    rng = np.random.default_rng(2)
    time_s = np.arange(0.0, seconds + 1e-9, every_s)
    clean = clean_of(time_s, 3.0 * rng.normal(size=(len(time_s), 2)), timed=timed)
    clean = clean if hdop is None else replace(clean, hdop=hdop(time_s))
    return clean, np.array(halts, dtype=np.float64).reshape(-1, 2)


def still(clean, start_s, end_s):
    return clean.time_s[receiver_noise._still_fixes(clean, start_s, end_s, SETTINGS.noise)].tolist()


def test_of_a_halt_fixes_ten_seconds_apart_are_used_without_its_edges() -> None:
    clean, _ = halted(2000)
    assert still(clean, 100.0, 160.0) == [105, 115, 125, 135, 145, 155]
    assert still(clean, 100.0, 125.0) == [105, 120]
    assert still(clean, 100.0, 124.0) == []
    assert len(still(clean, 100.0, 1900.0)) == 60
    sparse, _ = halted(2000, 20.0)
    assert still(sparse, 100.0, 160.0) == [120, 140]
    assert still(sparse, 100.0, 130.0) == [120]


def test_how_long_he_stood_and_where_the_noise_rests_on() -> None:
    clean, halts = halted(500, halts=[(0.0, 60.0), (100.0, 120.0), (200.0, 230.0), (300.0, 500.0)])
    noise = measure_noise(clean, halts, SETTINGS.noise)
    # The second is too short, the third has too few fixes; edges of 5 s are left out.
    assert (noise.source, noise.halted_s, noise.walked_s) == ("halts", 50.0 + 20.0 + 190.0, 0.0)
    assert noise.prior_m == SETTINGS.noise.usual_noise_m
    usual = measure_noise(clean, NO_HALTS, SETTINGS.noise)
    assert (usual.source, usual.halted_s) == ("usual value", 0.0)
    assert usual.noise_m == pytest.approx(SETTINGS.noise.usual_noise_m, rel=0.1)
    untimed = measure_noise(replace(clean, timed=False), halts, SETTINGS.noise)
    assert untimed == usual


def test_the_usual_dilution_is_that_of_the_halts_and_zeros_are_not_told() -> None:
    clean, halts = halted(200, hdop=lambda t: np.where(t <= 60.0, 1.5, 4.0))
    noise = measure_noise(clean, halts, SETTINGS.noise)
    assert noise.usual_hdop == 1.5
    assert measure_noise(clean, NO_HALTS, SETTINGS.noise).usual_hdop == 4.0
    half, _ = halted(200, hdop=lambda t: np.where(t % 20 < 10.0, 0.0, 2.0))
    assert measure_noise(half, halts, SETTINGS.noise).usual_hdop == 2.0
    # A stretch is known by the fixes within it, its ends among them.
    known = replace(noise, usual_hdop=1.0, noise_m=4.0)
    lone, _ = halted(200, 100.0, hdop=lambda t: np.where(t == 100.0, 2.0, np.nan))
    for stretch, ratio in (((100.0, 150.0), 2.0), ((50.0, 100.0), 2.0), ((101.0, 150.0), 1.0)):
        assert noise_between(lone, known, stretch, 0.0, SETTINGS.noise) == 4.0 * ratio
