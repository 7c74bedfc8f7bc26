"""Candidate cuts of samples given one by one: where they stand, and what is said of each."""

from __future__ import annotations

import numpy as np
import pytest
from matching.drawn_samples import drawn
from measurement.hand_made import SETTINGS

from audit.matching.cuts import find_cuts, nearest_approaches
from audit.matching.halts import find_movement
from audit.matching.planned_line import direction_of_nearest_piece

S = SETTINGS.matching
NO_POINTS = np.empty((0, 2))


def cuts_of(samples, points=NO_POINTS, pinned=None):
    return find_cuts(samples, find_movement(samples, S), np.asarray(points, float), S, pinned)


def test_approaches_are_the_nearest_places_of_each_passing() -> None:
    """Past (0, 20) three times, 20, 5 and 60 m away; a fourth passing at 95 m is none."""
    east, back = drawn((200.0, 0.0, 50)).smooth, drawn((-200.0, 0.0, 50)).smooth
    shifts = np.array([[-100.0, 0.0], [100.0, 15.0], [-100.0, 80.0], [100.0, -75.0]])
    passings = zip((east, back, east, back), shifts, strict=True)
    place = np.concatenate([way + shift for way, shift in passings])
    found = nearest_approaches(place, np.array([0.0, 20.0]), S)
    assert found.tolist() == [51 + 25, 25, 102 + 25]


def test_a_dozen_approaches_are_enough_and_of_equal_places_the_last_counts() -> None:
    depth_m = 1.0 + np.random.default_rng(5).permutation(15)
    off_m = np.full(31, 40.0)
    off_m[1::2] = depth_m
    in_and_out = np.column_stack([off_m, np.zeros(31)])
    found = nearest_approaches(in_and_out, np.zeros(2), S)
    assert found.tolist() == (1 + 2 * np.argsort(depth_m)[:12]).tolist()
    standing = np.array([[9.0, 0.0], [5.0, 0.0], [5.0, 0.0], [9.0, 0.0]])
    assert nearest_approaches(standing, np.zeros(2), S).tolist() == [2]
    # Neither the first place nor the last is an approach.
    assert nearest_approaches(np.array([[1.0, 0.0], [2.0, 0.0]]), np.zeros(2), S).tolist() == []


def test_an_even_walk_is_cut_at_its_ends_and_every_so_often() -> None:
    cuts = cuts_of(drawn((700.0, 0.0, 350)))
    assert cuts.path_m == pytest.approx(70.0 * np.arange(11), abs=2.0)  # a sample
    assert cuts.turn_deg[[0, -1]].tolist() == [180.0, 180.0]
    assert cuts.turn_deg[1:-1] == pytest.approx(np.zeros(9), abs=1e-9)
    assert cuts.leaving_deg[:-1] == pytest.approx(np.full(10, 90.0))
    assert cuts.arriving_deg[1:] == pytest.approx(np.full(10, 90.0))
    assert not np.any([cuts.begins_halt, cuts.ends_halt, cuts.rest_s])
    assert cuts.time_s == pytest.approx(1000.0 + cuts.path_m)


@pytest.mark.parametrize(("turn_deg", "right"), [(60.0, 1.0), (60.0, -1.0), (120.0, 1.0)])
def test_a_bend_is_a_cut_that_knows_both_directions(turn_deg, right) -> None:
    angle = np.radians(90.0 + right * turn_deg)
    bend = drawn((200.0, 0.0, 100), (200.0 * np.sin(angle), 200.0 * np.cos(angle), 100))
    cuts = cuts_of(bend)
    (at,) = np.flatnonzero(cuts.sample == 100)
    assert cuts.turn_deg[at] == pytest.approx(turn_deg, abs=1e-6)
    assert cuts.arriving_deg[at] == pytest.approx(90.0)
    assert cuts.leaving_deg[at] == pytest.approx(90.0 + right * turn_deg)


def test_a_pinned_sample_is_a_cut_and_no_weaker_one_is_near_it() -> None:
    cuts = cuts_of(drawn((700.0, 0.0, 350)), pinned=np.array([37]))
    assert 37 in cuts.sample
    # The filler at 70 m stands within 0.35 of 70 m before the pin at 74 m.
    assert 35 not in cuts.sample
    assert 70 in cuts.sample


def test_cuts_near_each_other_give_way_to_the_stronger() -> None:
    """An approach 6 m after a bend gives way, one 10 m after it stays."""
    bend = drawn((200.0, 0.0, 100), (0.0, 200.0, 100))
    near, apart = (set(cuts_of(bend, [(203.0, north)]).sample.tolist()) for north in (6.0, 10.0))
    assert {100}.issubset(near)
    assert 103 not in near
    assert {100, 105}.issubset(apart)


def test_edges_of_a_halt_say_how_long_it_lasted() -> None:
    samples = drawn((200.0, 0.0, 100), (0.0, 0.0, 60), (200.0, 0.0, 100))
    movement = find_movement(samples, S)
    ((first, last),) = movement.halts
    cuts = cuts_of(samples)
    begins, ends = (np.flatnonzero(mark) for mark in (cuts.begins_halt, cuts.ends_halt))
    assert cuts.sample[begins].tolist() == [first]
    assert cuts.sample[ends].tolist() == [last]
    assert cuts.rest_s[begins[0]] == cuts.rest_s[ends[0]] == 2.0 * (last - first)
    others = np.setdiff1d(np.arange(len(cuts)), np.concatenate([begins, ends]))
    assert not cuts.rest_s[others].any()
    assert cuts.halted_s[ends[0]] - cuts.halted_s[begins[0]] == 2.0 * (last - first)


def test_a_bent_line_runs_as_its_nearest_piece_does() -> None:
    """East for 100 m, then north: on the diagonal between both the first piece decides."""
    line = np.array([[0.0, 0.0], [100.0, 0.0], [100.0, 0.0], [100.0, 100.0]])
    walk = np.array([[10.0, 5.0], [95.0, 4.0], [95.0, 6.0], [105.0, -20.0], [130.0, 60.0],
                     [-30.0, 4.0], [90.0, 300.0]])  # fmt: skip
    assert direction_of_nearest_piece(line, walk) == pytest.approx([90, 90, 0, 90, 0, 90, 0])
    assert direction_of_nearest_piece(np.zeros((3, 2)), walk).tolist() == [0.0] * 7


def test_of_two_halts_each_has_its_own_edges() -> None:
    way = (200.0, 0.0, 100)
    samples = drawn(way, (0.0, 0.0, 60), way, (0.0, 0.0, 30), way)
    halts = find_movement(samples, S).halts
    cuts = cuts_of(samples)
    assert cuts.sample[cuts.begins_halt].tolist() == halts[:, 0].tolist()
    assert cuts.sample[cuts.ends_halt].tolist() == halts[:, 1].tolist()
    assert cuts.rest_s[cuts.begins_halt] == pytest.approx(2.0 * (halts[:, 1] - halts[:, 0]))
    assert cuts.rest_s[cuts.ends_halt] == pytest.approx(2.0 * (halts[:, 1] - halts[:, 0]))
