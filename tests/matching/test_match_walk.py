"""Walks drawn by hand, matched: whatever a walker may do, told apart.

The truth is what was drawn; a cut is right within 30 s or 30 m (the project's measure).
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from accuracy.project import match_of, portions_of
from accuracy.scoring import score_walk
from confusion.planted import Sort
from matching.walked_square import SQUARE, matched, square_walk
from measurement.hand_made import ORIGIN, SETTINGS, HandWalk, card_of, clean_of, receiver
from walks import make_walk

from audit.matching.match_walk import match_walk
from audit.matching.walk_layout import near_course

S = SETTINGS.matching


def assert_portions(match, walk: HandWalk, *names) -> None:
    """``names`` are pairs of marks, or None for a leg that was not walked."""
    for leg, pair in zip(match.legs, names, strict=True):
        if pair is None:
            assert leg.status in ("skipped", "not-started")
            assert leg.start_s is None
            assert leg.claim_s is None
            continue
        assert leg.status == "walked"
        assert leg.start_s == pytest.approx(walk.marks[pair[0]], abs=30.0)
        assert leg.claim_s == pytest.approx(walk.marks[pair[1]], abs=30.0)
        assert 0.5 < leg.confidence <= 1.0


SQUARE_LEGS = (("a", "b"), ("b2", "c"), ("c2", "d"), ("d2", "e"))


@pytest.mark.parametrize("every_s", [1, 5, 15, 30])
@pytest.mark.parametrize("halt_s", [0, 20, 90])
def test_square_walked_as_planned(every_s, halt_s) -> None:
    walk = square_walk(halt_s)
    match = matched(walk, *SQUARE, every_s=every_s)
    assert_portions(match, walk, *SQUARE_LEGS)
    assert match.pace_scale == pytest.approx(1.0, abs=0.05)
    assert abs(match.bias_deg) < 2.0


@pytest.mark.parametrize("angle", [-14.0, 10.0])
def test_square_walked_with_the_angle_left_out(angle) -> None:
    """All directions turned: every leg ends elsewhere, and still is the leg."""
    walk = HandWalk().halt(60)
    marks = iter("abcdefgh")
    for azimuth, metres in ((90, 400), (0, 300), (270, 400), (180, 300)):
        walk.mark(next(marks)).walk(azimuth + angle, metres).mark(next(marks)).halt(45)
    match = matched(walk, *SQUARE, angle_deg=angle)
    assert_portions(match, walk, ("a", "b"), ("c", "d"), ("e", "f"), ("g", "h"))
    assert match.bias_deg == pytest.approx(angle, abs=3.5)


def back_by_the_start() -> HandWalk:
    """The second leg, 300 m north, is walked south; from there straight back and on to its point."""
    walk = HandWalk().halt(60).mark("a").walk(90, 400).mark("b").halt(45).mark("b2")
    walk.walk(180, 300).mark("c").halt(45).walk(0, 600).halt(45).mark("c2")
    return walk.walk(270, 400).mark("d").halt(45).mark("d2").walk(180, 300).mark("e").halt(60)


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_who_comes_back_by_the_start_walked_the_back_azimuth_first(seed) -> None:
    """The second half of the way back looks like the leg; the first speaks for the whole."""
    walk = back_by_the_start()
    match = matched(walk, *SQUARE, seed=seed)
    assert_portions(match, walk, *SQUARE_LEGS)
    clean, never = walk.clean(1, receiver(seed, 3.0)), replace(S, cost_turned_back=60.0)
    without = match_walk(clean, card_of(*SQUARE), never).legs[1]
    assert match.legs[1].confidence > 0.9
    assert without.start_s > walk.marks["c"]


def test_three_legs_on_their_back_azimuths_lead_far_off_and_are_followed() -> None:
    """Legs of 400 m north, walked south but for the last: from points that nobody sees, 2400 m off."""
    walk, marks = HandWalk().halt(60), iter("abcdefghij")
    for azimuth in (180, 180, 180, 0, 90):
        walk.mark(next(marks)).walk(azimuth, 400).mark(next(marks)).halt(45)
    match = matched(walk, *((0, 400 * leg) for leg in range(5)), (400, 1600))
    assert_portions(match, walk, *(tuple(pair) for pair in ("ab", "cd", "ef", "gh", "ij")))


@pytest.mark.parametrize("factor", [0.5, 2.0])
def test_half_and_twice_the_distance_on_every_leg(factor) -> None:
    """Between points that nobody sees, all legs half or twice as long: none ends at its point."""
    ways = ((90, 400), (0, 300), (250, 500), (140, 350), (30, 450))
    walk, marks = HandWalk().halt(60), iter("abcdefghij")
    points = [np.zeros(2)]
    for azimuth, metres in ways:
        angle = np.radians(azimuth)
        points.append(points[-1] + metres * np.array([np.sin(angle), np.cos(angle)]))
        length = metres * factor
        walk.mark(next(marks)).walk(azimuth, length, speed_m_s=length / round(length / 1.25))
        walk.mark(next(marks)).halt(45)
    match = matched(walk, *(tuple(point) for point in points))
    assert_portions(match, walk, *(tuple(pair) for pair in ("ab", "cd", "ef", "gh", "ij")))
    assert match.pace_scale == pytest.approx(factor, rel=0.1)


@pytest.mark.parametrize("angle", [-27.0, 24.0])
def test_a_large_angle_taken_the_wrong_way(angle) -> None:
    """Where compasses point 25 degrees off, a slip turns all legs by 50: they still are legs."""
    walk = HandWalk().halt(60)
    marks = iter("abcdefghijkl")
    ways = ((90, 400), (0, 300), (270, 400), (180, 300), (90, 500), (0, 400))
    for azimuth, metres in ways:
        walk.mark(next(marks)).walk(azimuth + 2.0 * angle, metres).mark(next(marks)).halt(45)
    match = matched(walk, *SQUARE, (500, 0), (500, 400), angle_deg=angle)
    pairs = ("ab", "cd", "ef", "gh", "ij", "kl")
    assert_portions(match, walk, *(tuple(pair) for pair in pairs))
    assert match.bias_deg == pytest.approx(2.0 * angle, abs=8.0)


def test_paces_too_long_throughout() -> None:
    walk = HandWalk().halt(60)
    marks = iter("abcdefgh")
    for azimuth, metres in ((90, 480), (0, 360), (270, 480), (180, 360)):  # 1.2 times
        walk.mark(next(marks)).walk(azimuth, metres).mark(next(marks)).halt(45)
    match = matched(walk, *SQUARE)
    assert_portions(match, walk, ("a", "b"), ("c", "d"), ("e", "f"), ("g", "h"))
    assert match.pace_scale == pytest.approx(1.2, abs=0.08)


def test_one_leg_on_its_back_azimuth() -> None:
    walk = HandWalk().halt(60).mark("a").walk(90, 400).mark("b").halt(45).mark("b2")
    walk.walk(180, 300).mark("c").halt(45).mark("c2").walk(270, 400).mark("d").halt(60)
    match = matched(walk, (0, 0), (400, 0), (400, 300), (0, 300))
    assert_portions(match, walk, ("a", "b"), ("b2", "c"), ("c2", "d"))


def test_point_left_out() -> None:
    # From point 1 straight to point 3, a diagonal that no leg plans.
    walk = HandWalk().halt(60).mark("a").walk(90, 400).mark("b").halt(60).mark("b2")
    diagonal = 270.0 + np.degrees(np.arctan2(300.0, 400.0))
    walk.walk(diagonal, 500).mark("d").halt(60).mark("d2").walk(180, 300).mark("e").halt(60)
    match = matched(walk, *SQUARE)
    assert_portions(match, walk, ("a", "b"), None, None, ("d2", "e"))
    assert [leg.status for leg in match.legs[1:3]] == ["skipped", "skipped"]


def test_course_given_up_after_two_legs() -> None:
    walk = HandWalk().halt(60).mark("a").walk(90, 400).mark("b").halt(60).mark("b2")
    walk.walk(0, 300).mark("c").halt(120).walk(225, 500)
    match = matched(walk, *SQUARE)
    assert_portions(match, walk, ("a", "b"), ("b2", "c"), None, None)
    assert match.legs[-1].status == "not-started"


def test_recording_that_ends_in_a_leg() -> None:
    walk = HandWalk().halt(60).mark("a").walk(90, 400).mark("b").halt(60).mark("b2").walk(0, 200)
    match = matched(walk, (0, 0), (400, 0), (400, 300))
    assert match.legs[0].status == "walked"
    assert match.legs[1].status in ("unfinished", "not-started")


def test_approach_and_walk_off_belong_to_no_leg() -> None:
    walk = HandWalk().walk(40, 600).halt(90).mark("a").walk(90, 400).mark("b").halt(60).mark("b2")
    walk.walk(0, 300).mark("c").halt(90).walk(200, 800)
    start = 600 * np.array([np.sin(np.radians(40.0)), np.cos(np.radians(40.0))])
    points = [tuple(start + p) for p in ((0, 0), (400, 0), (400, 300))]
    assert_portions(matched(walk, *points), walk, ("a", "b"), ("b2", "c"))


def test_overshoot_and_way_back() -> None:
    walk = HandWalk().halt(60).mark("a").walk(90, 480).mark("b").halt(30).walk(270, 80)
    walk.halt(40).mark("b2").walk(0, 300).mark("c").halt(60)
    match = matched(walk, (0, 0), (400, 0), (400, 300))
    assert_portions(match, walk, ("a", "b"), ("b2", "c"))


def test_legs_on_top_of_each_other_are_told_by_their_order() -> None:
    # A star: out to the east and back, out to the north and back.
    walk = HandWalk().halt(60)
    marks = iter("abcdefgh")
    for azimuth, metres in ((90, 400), (270, 400), (0, 300), (180, 300)):
        walk.mark(next(marks)).walk(azimuth, metres).mark(next(marks)).halt(45)
    match = matched(walk, (0, 0), (400, 0), (0, 0), (0, 300), (0, 0))
    assert_portions(match, walk, ("a", "b"), ("c", "d"), ("e", "f"), ("g", "h"))


def test_boxed_obstacle_does_not_cut_the_leg() -> None:
    walk = HandWalk().halt(60).mark("a").walk(90, 150).walk(180, 50).walk(90, 100).walk(0, 50)
    walk.walk(90, 150).mark("b").halt(60).mark("b2").walk(0, 300).mark("c").halt(60)
    assert_portions(matched(walk, (0, 0), (400, 0), (400, 300)), walk, ("a", "b"), ("b2", "c"))


def test_recording_without_times_is_matched_by_its_shape() -> None:
    walk = square_walk(0)
    whole = walk.clean(1, receiver(2, 2.0))
    # As cleaning lays it out: an even walk along the fixes.
    place = np.column_stack([whole.east_m, whole.north_m])[60:-60:10]
    step = np.hypot(*np.diff(place, axis=0).T)
    even_s = np.concatenate([[0.0], np.cumsum(np.maximum(step, 0.01)) / 1.2])
    match = match_walk(clean_of(even_s, place, timed=False, every_s=10.0), card_of(*SQUARE), S)
    assert [leg.status for leg in match.legs] == ["walked"] * 4
    at = [np.interp(leg.claim_s, even_s, even_s * 1.2) for leg in match.legs]
    assert at == pytest.approx([400.0, 700.0, 1100.0, 1400.0], rel=0.08)


def test_bent_leg_is_known_by_its_ends() -> None:
    walk = HandWalk().halt(60).mark("a").walk(90, 300).walk(0, 200).mark("b").halt(60).mark("b2")
    walk.walk(270, 300).mark("c").halt(60)
    match = matched(walk, (0, 0), (300, 200), (0, 200), via=((300, 0),))
    assert_portions(match, walk, ("a", "b"), ("b2", "c"))


def test_portions_follow_each_other() -> None:
    for seed in range(5):
        match = matched(square_walk(15), *SQUARE, seed=seed, noise_m=8.0, every_s=5)
        times = [
            t for leg in match.legs if leg.start_s is not None for t in (leg.start_s, leg.claim_s)
        ]
        assert times == sorted(times)
        for leg in match.legs:
            assert 0.0 <= leg.confidence <= 1.0
            if leg.status == "walked":
                assert leg.search_end_s >= leg.claim_s


def test_drive_to_the_course_is_not_searched() -> None:
    walk = HandWalk().walk(90, 20_000, speed_m_s=20.0).halt(60).walk(0, 300).halt(60)
    clean = walk.clean()
    card = card_of((20_000, 0), (20_000, 300))
    near = near_course(clean, card, S)
    assert len(near) < len(clean)
    assert near.time_s[-1] == clean.time_s[-1]
    off = np.hypot(near.east_m - card.points[0].east_m, near.north_m - card.points[0].north_m)
    assert off.max() <= S.far_m + 300.0


def test_recording_that_begins_in_a_leg_has_it_walked_and_says_so() -> None:
    # Worked on paper: 150 of 400 m were walked before the recorder was switched on.
    walk = HandWalk().mark("a").walk(90, 250).mark("b").halt(60).mark("b2").walk(0, 300).mark("c")
    walk.halt(60)
    match = matched(walk, (-150, 0), (250, 0), (250, 300))
    assert [leg.status for leg in match.legs] == ["walked", "walked"]
    assert [leg.under_way for leg in match.legs] == [True, False]


@pytest.mark.parametrize(("before_m", "after_m"), [(50.0, 50.0), (100.0, 25.0), (25.0, 100.0)])
def test_a_point_that_lies_in_a_silence_is_found_where_the_ways_meet(before_m, after_m) -> None:
    """The recorder is silent from before the first point until after it; both were walked."""
    walk = square_walk(halt_s=45)
    clean = walk.clean(1, receiver(3, 2.0))
    silent = (clean.time_s > walk.marks["b"] - before_m / 1.25) & (
        clean.time_s < walk.marks["b2"] + after_m / 1.25
    )
    place = np.column_stack([clean.east_m, clean.north_m])[~silent]
    match = match_walk(clean_of(clean.time_s[~silent], place), card_of(*SQUARE), S)
    assert_portions(match, walk, *SQUARE_LEGS)
    corner = ORIGIN + np.array([400.0, 0.0])
    ended, begun = match.legs[0].claim_unseen, match.legs[1].start_unseen
    for unseen, gone_m in ((ended, before_m), (begun, after_m)):
        assert unseen.gone_m == pytest.approx(gone_m, abs=15.0)
        assert (unseen.east_m, unseen.north_m) == pytest.approx(corner, abs=15.0)
    assert match.legs[0].claim_s <= match.legs[1].start_s
    assert [leg.start_unseen for leg in match.legs if leg.leg != 1] == [None] * 3
    assert [leg.claim_unseen for leg in match.legs[1:]] == [None] * 3


def test_twice_every_distance_is_believed_where_it_explains_the_walk_better():
    """Bug: it was believed only where more legs turned out sure, and one leg in four was lost."""
    walk = make_walk(
        1_100_004, Sort(difficulty="ordinary", cause="wrong-ruler", whole_walk=True).family()
    )
    match = match_of(walk, SETTINGS)
    assert match.pace_scale == pytest.approx(2.0, abs=0.15)
    scored = score_walk(walk, portions_of(match))
    assert all(leg.right for leg in scored.legs)
