"""The made walks hang together: their truth is consistent, on the track, and reproducible."""

from __future__ import annotations

import time
from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pyproj import Geod, Transformer
from walks import CLEAN, DIFFICULTIES, KINDS, Truth, Walk, make_walk

FAMILIES = sorted(DIFFICULTIES)
OWN_NAVIGATION = [KINDS.index(kind) for kind in ("walking", "halt", "bypass")]


def walked_legs(truth: Truth):
    return [leg for leg in truth.legs if leg.status in ("walked", "unfinished")]


def track_on_grid(walk: Walk) -> np.ndarray:
    to_grid = Transformer.from_crs("EPSG:4326", walk.plan.grid, always_xy=True)
    return np.column_stack(to_grid.transform(walk.track.longitude_deg, walk.track.latitude_deg))


def as_bytes(walk: Walk) -> bytes:
    truth, track = walk.truth, walk.track
    columns = (track.time_s, track.longitude_deg, track.latitude_deg, track.segment, truth.time_s)
    more = (truth.east_m, truth.north_m, truth.label, truth.other_label, truth.kind, truth.recorded)
    return (
        b"".join(column.tobytes() for column in (*columns, *more))
        + repr((walk.plan, truth.legs, truth.planted, truth.receiver)).encode()
    )


@pytest.mark.parametrize("family", FAMILIES)
def test_the_same_seed_gives_the_same_bytes(family):
    assert as_bytes(make_walk(7, family)) == as_bytes(make_walk(7, family))
    assert as_bytes(make_walk(7, family)) != as_bytes(make_walk(8, family))


@given(seed=st.integers(0, 2**32), family=st.sampled_from(FAMILIES))
@settings(max_examples=60, deadline=None)
def test_the_truth_is_consistent(seed, family):
    walk = make_walk(seed, family)
    truth = walk.truth
    n = len(truth.time_s)
    columns = (truth.east_m, truth.north_m, truth.label, truth.other_label, truth.kind)
    assert {len(column) for column in (*columns, truth.recorded)} == {n}
    steps = np.diff(truth.time_s)
    assert np.all((steps == 1.0) | (steps > 1800.0))
    assert np.all((truth.kind >= 0) & (truth.kind < len(KINDS)))
    assert np.all((truth.label >= -1) & (truth.label < len(truth.legs)))
    assert [leg.leg for leg in truth.legs] == list(range(len(walk.plan.legs)))
    spans = sorted((leg.start_s, leg.search_end_s, leg.leg) for leg in walked_legs(truth))
    assert all(start <= end for start, end, _ in spans)
    assert all(before[1] <= after[0] for before, after in pairwise(spans))


@given(seed=st.integers(0, 2**32), family=st.sampled_from(FAMILIES))
@settings(max_examples=60, deadline=None)
def test_a_leg_is_labelled_from_its_start_to_its_claim_and_on_through_its_search(seed, family):
    truth = make_walk(seed, family).truth
    labelled = np.full(len(truth.time_s), -1)
    for leg in walked_legs(truth):
        # The second in which he leaves is the last at the point.
        own = (truth.time_s > leg.start_s) & (truth.time_s <= leg.claim_s)
        assert np.all(truth.label[own] == leg.leg)
        assert np.all(np.isin(truth.kind[own], OWN_NAVIGATION))
        looking = (truth.time_s > leg.claim_s) & (truth.time_s <= leg.search_end_s)
        assert np.all(truth.kind[looking] == KINDS.index("search"))
        labelled[own | looking] = leg.leg
        first, last = truth.index_at(leg.start_s), truth.index_at(leg.claim_s)
        # Right after the claim there is a search, a halt, another leg, or the end.
        assert last + 1 == len(truth.time_s) or not (
            truth.label[last + 1] == leg.leg and truth.kind[last + 1] in OWN_NAVIGATION
        )
        east = truth.east_m[last] - truth.east_m[first]
        north = truth.north_m[last] - truth.north_m[first]
        chord_deg = np.degrees(np.angle(complex(north, east))) % 360.0
        assert (
            np.hypot(east, north) == pytest.approx(leg.length_m, abs=1e-6) or leg.cut_by_recording
        )
        assert chord_deg == pytest.approx(leg.azimuth_deg, abs=1e-6) or leg.cut_by_recording
        assert (leg.start_s, leg.claim_s) == leg.attempts[-1]
    assert np.array_equal(labelled, truth.label)


def test_nobody_runs_or_jumps_on_a_leg():
    for seed in range(20):
        truth = make_walk(seed, "novice").truth
        step_m = np.hypot(np.diff(truth.east_m), np.diff(truth.north_m))
        on_leg = (truth.label[1:] >= 0) & (truth.label[:-1] >= 0)
        assert step_m[on_leg].max() < 5.0  # m in a second
        moving = step_m[on_leg & (truth.kind[1:] == KINDS.index("walking"))]
        assert 0.4 < np.median(moving) < 1.9  # m/s


def test_a_clean_walk_is_recorded_where_it_was_walked():
    for seed in range(5):
        walk = make_walk(seed, "clean")
        truth = walk.truth
        at = np.searchsorted(truth.time_s, walk.track.time_s)
        places = np.column_stack([truth.east_m, truth.north_m])[at]
        # Seven decimals of a degree are 11 mm.
        assert np.abs(track_on_grid(walk) - places).max() < 0.02


def test_a_clean_leg_has_the_length_and_direction_of_the_plan_on_the_ellipsoid():
    """Against a geodesic library, not against the projection that made the walk."""
    earth = Geod(ellps="WGS84")
    for seed in range(8):
        walk = make_walk(seed, replace(CLEAN, leg_m=(300.0, 900.0)))
        for leg in walk.truth.legs:
            planned = walk.plan.legs[leg.leg]
            start, end = walk.plan.position(planned.start), walk.plan.position(planned.end)
            true_deg, _, ground_m = earth.inv(
                start.longitude_deg, start.latitude_deg, end.longitude_deg, end.latitude_deg
            )
            # UTM stretches by 0.04 % at most here; a stated card is rounded to 10 m, 1 degree.
            assert leg.length_m == pytest.approx(ground_m, rel=6e-4, abs=5.1)
            turn = (
                leg.azimuth_deg + walk.course.convergence_deg - true_deg + 180.0
            ) % 360.0 - 180.0
            assert abs(turn) < 0.55  # degrees


def test_two_difficulties_that_differ_in_the_receiver_share_the_walker():
    quiet, loud = make_walk(3, "clean"), make_walk(3, "noisy")
    assert quiet.truth.legs == loud.truth.legs
    assert np.array_equal(quiet.truth.east_m, loud.truth.east_m)
    assert quiet.plan == loud.plan


def test_the_walkers_of_a_seed_are_a_class_on_one_course():
    first, second = (make_walk(3, "ordinary", walker=walker) for walker in (0, 1))
    assert first.course.card_m == second.course.card_m
    assert [point.position for point in first.plan.points] == [
        point.position for point in second.plan.points
    ]
    assert first.truth.legs != second.truth.legs


def test_a_misplaced_marker_shifts_every_walkers_find():
    family = replace(CLEAN, marked=1.0, misplaced=1.0, finds=1.0)
    walk = make_walk(5, family)
    site = walk.course.misplaced
    leg = next(n for n, number in enumerate(walk.course.site[1:]) if number == site)
    shift = walk.course.marker_shift_m[leg + 1]
    assert 60.0 <= np.hypot(*shift) <= 200.0
    truth = walk.truth.legs[leg]
    if truth.found:
        found_at = walk.truth.index_at(truth.search_end_s)
        place = np.array([walk.truth.east_m[found_at], walk.truth.north_m[found_at]])
        assert np.hypot(*(place - walk.course.points_m[leg + 1] - shift)) < 1.0


def test_a_recording_that_starts_late_begins_in_the_first_leg():
    for seed in range(10):
        walk = make_walk(seed, replace(CLEAN, starts_late=1.0))
        first = walk.truth.legs[0]
        assert first.cut_by_recording
        assert first.status == "walked"
        assert first.start_s == walk.track.time_s[0]


def test_a_recording_that_ends_early_leaves_a_leg_unfinished_and_the_rest_not_started():
    for seed in range(10):
        walk = make_walk(seed, replace(CLEAN, ends_early=1.0))
        status = [leg.status for leg in walk.truth.legs]
        cut = status.index("unfinished")
        assert set(status[:cut]) <= {"walked"}
        assert set(status[cut + 1 :]) <= {"not-started"}
        assert walk.truth.legs[cut].claim_s == walk.track.time_s[-1]


def test_two_walks_in_one_recording_lie_half_an_hour_apart_at_least():
    for seed in range(10):
        walk = make_walk(seed, replace(CLEAN, two_walks=1.0))
        truth = walk.truth
        (jump,) = np.flatnonzero(np.diff(truth.time_s) > 1.0)
        assert truth.time_s[jump + 1] - truth.time_s[jump] > 1800.0
        sides = (truth.label[: jump + 1], truth.label[jump + 1 :])
        assert sum(bool(np.all(side == -1)) for side in sides) == 1
        assert set(walk.track.segment) == {0, 1}


def test_skipped_and_swapped_points_leave_their_legs_unwalked():
    skipped = swapped = 0
    for seed in range(30):
        truth = make_walk(seed, replace(CLEAN, legs=(5, 9), skips=1.0)).truth
        missing = set(range(1, len(truth.legs) + 1)) - set(truth.order)
        for leg in truth.legs:
            touches = leg.leg + 1 in missing or leg.leg in missing
            assert (leg.status == "skipped") == touches
        skipped += bool(missing)
        truth = make_walk(seed, replace(CLEAN, legs=(5, 9), swaps=1.0)).truth
        swapped += list(truth.order) != sorted(truth.order)
        if list(truth.order) != sorted(truth.order):
            assert sum(leg.status == "skipped" for leg in truth.legs) in (2, 3)
    assert skipped > 20
    assert swapped > 10


def test_a_walker_who_gives_up_starts_no_later_leg():
    seen = set()
    for seed in range(20):
        truth = make_walk(seed, replace(CLEAN, legs=(5, 9), abandons=1.0)).truth
        status = [leg.status for leg in truth.legs]
        after = status.index("not-started") if "not-started" in status else len(status)
        assert set(status[after:]) <= {"not-started"}
        seen |= set(status)
    assert {"walked", "unfinished", "not-started"} <= seen


def test_a_leg_walked_twice_has_both_attempts():
    family = replace(CLEAN, legs=(4, 6), repeats=1.0)
    legs = [leg for seed in range(6) for leg in make_walk(seed, family).truth.legs]
    twice = [leg for leg in legs if len(leg.attempts) == 2]
    assert twice
    for leg in twice:
        (first_start, first_claim), last = leg.attempts
        assert first_start < first_claim < last[0]
        assert last == (leg.start_s, leg.claim_s)


def test_a_walk_of_two_hours_is_made_quickly():
    began = time.process_time()
    walks = [make_walk(seed, "ordinary") for seed in range(10)]
    seconds = time.process_time() - began
    hours = sum(len(walk.truth.time_s) for walk in walks) / 3600.0
    assert seconds / hours < 0.075  # processor seconds for an hour of walking
