"""Elevations: whether they are trusted, climbs counted once, slopes called by their name."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from measurement.hand_made import BEGIN, HandWalk, card_of, clean_of, measure

from audit.measurement.ground_walked import judge_elevation, kinds_of_ground, smoothed_heights
from audit.settings import GroundSettings

S = GroundSettings()
NO_HALTS = np.empty((0, 2))


def recording(height, *, every_s=1.0, speed_m_s=1.25, timed=True):
    height = np.asarray(height, dtype=np.float64)
    time_s = BEGIN + every_s * np.arange(len(height))
    along = speed_m_s * (time_s - BEGIN)
    clean = clean_of(time_s, np.column_stack([along, 0.0 * along]), timed=timed, every_s=every_s)
    return replace(clean, elevation_m=height)


def test_elevations_scatter_as_they_do_at_halts_and_usually() -> None:
    """Up and down by 1 m for two minutes, twice the memory: a variance of 121 / 120, counted twice."""
    height = np.concatenate(
        [np.full(100, 50.0), 50.0 + (-1.0) ** np.arange(121), np.full(99, 50.0)]
    )
    judged = judge_elevation(recording(height), np.array([[BEGIN + 100, BEGIN + 220]]), S)
    assert judged.sd_m == pytest.approx(
        math.sqrt((4.0**2 + 2.0 * np.var(height[100:221], ddof=1)) / 3.0)
    )
    assert judged.trusted
    # A short halt counts a little; one of two fixes not at all.
    short = judge_elevation(recording(height), np.array([[BEGIN + 100, BEGIN + 106]]), S)
    assert short.sd_m == pytest.approx(
        math.sqrt((4.0**2 + 0.2 * np.var(height[100:107], ddof=1)) / 1.2)
    )
    assert judge_elevation(recording(height), np.array([[BEGIN + 100, BEGIN + 101]]), S).sd_m == 4.0
    three = judge_elevation(recording(height), np.array([[BEGIN + 100, BEGIN + 102]]), S)
    assert three.sd_m == pytest.approx(math.sqrt((4.0**2 + 0.2 * 4.0 / 3.0) / 1.2))


def test_elevations_are_trusted_that_are_known_quiet_and_walkable() -> None:
    level = np.full(600, 100.0)
    few = np.where(np.arange(600) < 470, 100.0, np.nan)
    enough = np.where(np.arange(600) < 480, 100.0, np.nan)
    assert judge_elevation(recording(level), NO_HALTS, S).trusted
    assert judge_elevation(recording(enough), NO_HALTS, S).trusted  # just 0.8 of them
    assert not judge_elevation(recording(few), NO_HALTS, S).trusted
    assert not judge_elevation(recording(level, timed=False), NO_HALTS, S).trusted
    wild = np.concatenate([np.tile([80.0, 120.0], 150), np.full(300, 100.0)])
    halt = np.array([[BEGIN, BEGIN + 300.0]])
    assert judge_elevation(recording(wild), halt, S).sd_m > 8.0
    assert not judge_elevation(recording(wild), halt, S).trusted
    # Two cliffs of 50 m in 750 m are a sixth of the way; a slope of 60 in 100 is walked.
    cliffs = np.where((np.arange(600) // 200) == 1, 150.0, 100.0)
    assert not judge_elevation(recording(cliffs), NO_HALTS, S).trusted
    assert judge_elevation(recording(0.6 * 1.25 * np.arange(600.0)), NO_HALTS, S).trusted
    assert not judge_elevation(recording(0.8 * 1.25 * np.arange(600.0)), NO_HALTS, S).trusted
    # Less than one stretch of 60 m shows no slope.
    assert judge_elevation(recording(3.0 * np.arange(40.0)), NO_HALTS, S).trusted


def test_ground_is_called_by_its_slope() -> None:
    rise = np.array([3.1, 3.0, 0.0, -3.0, -3.1, 5.0])
    run = np.array([60.0, 60.0, 60.0, 60.0, 60.0, 0.0])
    assert kinds_of_ground(rise, run, S).tolist() == [
        "uphill", "level", "level", "level", "downhill", "level",
    ]  # fmt: skip


def test_heights_are_means_weighted_by_nearness_in_time() -> None:
    time_s, height = np.array([0.0, 10.0, 25.0, 60.0]), np.array([100.0, 104.0, 90.0, 95.0])
    moments = np.array([5.0, 30.0])
    expected = []
    for moment in moments:
        weights = [math.exp(-0.5 * ((moment - t) / 20.0) ** 2) for t in time_s]
        expected.append(sum(w * h for w, h in zip(weights, height, strict=True)) / sum(weights))
    assert smoothed_heights(time_s, height, moments, S) == pytest.approx(expected)
    # Far from all that is known the line between two decides.
    far = smoothed_heights(np.array([0.0, 1000.0]), np.array([100.0, 200.0]), np.array([400.0]), S)
    assert far == pytest.approx([140.0])


@pytest.mark.parametrize(
    ("profile", "climb_m", "descent_m"),
    [
        ([100, 160, 130, 190], 120.0, 30.0),
        ([100, 40, 70, 10], 30.0, 120.0),
        ([100, 102, 100, 102], 0.0, 0.0),  # less than elevations can feign
        ([100, 104, 101, 160], 60.0, 0.0),  # a dip of 3 m in a climb is none
        ([100, 96, 99, 40], 0.0, 60.0),
        ([100, 97, 160, 163, 100], 66.0, 66.0),  # from the lowest to the highest
    ],
)
def test_climbs_and_descents_are_counted_once(profile, climb_m, descent_m) -> None:
    """Each piece 1200 m long, so that smoothing rounds little; errors feign 1.5 times 4 m."""
    pieces = len(profile) - 1
    walk = HandWalk().halt(60).mark("start").walk(90, 1200.0 * pieces).mark("claim").halt(60)
    clean = walk.clean()
    along = np.clip(1.25 * (clean.time_s - walk.marks["start"]), 0.0, 1200.0 * pieces)
    height = np.interp(along, 1200.0 * np.arange(pieces + 1), profile)
    clean = replace(clean, elevation_m=height)
    card = card_of((0, 0), (1200 * pieces, 0))
    measures = measure(card, clean, [walk.portion()], walk.halts).legs[0].measures
    assert measures is not None
    assert measures.details is not None
    ground = measures.details.ground
    assert ground.climb_m == pytest.approx(climb_m, abs=2.5 * pieces)
    assert ground.descent_m == pytest.approx(descent_m, abs=2.5 * pieces)
    # The two halts are still: what is usual and two quiet minutes, each once.
    assert ground.elevation_sd_m == pytest.approx(math.sqrt(2.0 * 4.0**2 / 3.0))
