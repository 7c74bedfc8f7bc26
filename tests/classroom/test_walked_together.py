"""Who walks in another's steps is asked about; who only shares the lane is not."""

from __future__ import annotations

import numpy as np
import pytest
from walks.random_drift import drift

from audit.classroom.walked_together import WalkOnClock, walked_together
from audit.settings.class_shows import ClassShowsSettings

SETTINGS = ClassShowsSettings()
POINTS = {"A": np.array([[0.0, 0.0], [900.0, 0.0], [900.0, 800.0], [0.0, 900.0], [0.0, 0.0]])}


def walk(rng, ident, begun_s, aside_m=45.0):
    """Walk the lane at one's own speed, off the lines as compass walkers are."""
    speed = rng.uniform(0.9, 1.4)
    places = []
    for start, end in zip(POINTS["A"][:-1], POINTS["A"][1:], strict=True):
        n = int(np.hypot(*(end - start)) / speed)
        share = np.linspace(0.0, 1.0, n)[:, None]
        bow = np.sin(np.pi * share) * rng.normal(0.0, aside_m, 2)
        wander = np.column_stack([drift(rng, n, 4.0, 60.0) for _ in range(2)])
        places += [start + share * (end - start) + bow + wander, np.repeat(end[None], 60, axis=0)]
    track = np.concatenate(places)
    times = begun_s + np.arange(len(track), dtype=float)
    return WalkOnClock(ident=ident, lane="A", begun_s=begun_s, time_s=times,
                       east_m=track[:, 0], north_m=track[:, 1])  # fmt: skip


def behind(rng, other, ident, seconds):
    """Walk in another's steps."""
    n = len(other.time_s)
    return WalkOnClock(
        ident=ident, lane=other.lane, begun_s=other.begun_s + seconds,
        time_s=other.time_s + seconds,
        east_m=other.east_m + drift(rng, n, 4.0, 60.0),
        north_m=other.north_m + drift(rng, n, 4.0, 60.0),
    )  # fmt: skip


def a_class(rng, apart_s=240.0, aside_m=45.0):
    return [walk(rng, f"w{number}", number * apart_s, aside_m) for number in range(10)]


@pytest.mark.parametrize("seconds", [10.0, 30.0])
def test_follower_is_found_and_who_was_first(seconds):
    rng = np.random.default_rng(3)
    walks = a_class(rng)
    found = walked_together([*walks, behind(rng, walks[4], "late", seconds)], POINTS, SETTINGS)
    assert [(one.first, one.second) for one in found] == [("w4", "late")]
    assert found[0].share > 0.8
    assert found[0].apart_s == pytest.approx(seconds, abs=10.0)
    assert found[0].together_s > 1.5 * found[0].usual_s


def test_two_pairs_do_not_hide_each_other():
    rng = np.random.default_rng(4)
    walks = a_class(rng)
    walks += [behind(rng, walks[2], "one", 20.0), behind(rng, walks[7], "two", 20.0)]
    found = {(one.first, one.second) for one in walked_together(walks, POINTS, SETTINGS)}
    assert found == {("w2", "one"), ("w7", "two")}


@pytest.mark.parametrize("apart_s", [0.0, 60.0, 300.0])
def test_a_lane_in_common_is_no_company(apart_s):
    told = 0
    for seed in range(12):
        walks = a_class(np.random.default_rng(seed), apart_s)
        told += len(walked_together(walks, POINTS, SETTINGS))
    assert told <= 0.01 * 12 * 45  # pairs; the worst is a class that sets off all at once


def test_a_trail_that_all_follow_is_no_company():
    """Setting off together, all within a few metres of one line."""
    rng = np.random.default_rng(8)
    assert walked_together(a_class(rng, 0.0, aside_m=2.0), POINTS, SETTINGS) == []


def test_few_walkers_give_nothing_to_compare_with():
    rng = np.random.default_rng(1)
    one = walk(rng, "one", 0.0)
    assert walked_together([one, behind(rng, one, "two", 20.0)], POINTS, SETTINGS) == []
