"""Each planted mistake shows in the true path as the table of mistakes predicts."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from walks import CLEAN, DIFFICULTIES, LegTruth, Walk, make_walk

# The table's names, written down here a second time on purpose.
NAMES = {
    "gm-angle-omitted", "gm-angle-reversed", "gm-angle-doubled", "declination-for-gm-angle",
    "gm-angle-stale", "reciprocal", "right-angle", "bezel-clicks", "bezel-wrong-way",
    "mils-as-degrees", "wrong-mil-circle", "azimuth-digits", "dial-misread", "neighbour-azimuth",
    "magnetic-disturbance", "steady-bias", "hundred-miscounted", "single-double-pace",
    "pace-long", "pace-short", "wrong-ruler", "slope-paced", "early-stop", "overshoot",
    "bypass-paced", "veer", "sidehill", "handrail", "bypass-unequal", "obstacle-one-side",
    "digits-transposed", "digit-wrong", "easting-northing-swapped", "wrong-grid-line",
    "wrong-plotting-scale", "datum", "point-misplaced", "wrong-start", "wrong-point",
    "point-skipped", "order-changed", "passed-unseen",
}  # fmt: skip


def wrapped(angle_deg: float) -> float:
    """Bring an angle into [-180, 180), by plain arithmetic."""
    return (angle_deg + 180.0) % 360.0 - 180.0


def legs_with(cause: str, seeds: int = 25, **changes) -> list[tuple[Walk, LegTruth, float]]:
    """Give the legs on which only this mistake was planted, with its size."""
    family = replace(CLEAN, notices=0.0, **changes).planting(leg={cause: 1.0})
    found = []
    for seed in range(seeds):
        walk = make_walk(seed, family)
        for leg in walk.truth.legs:
            sizes = [planted.size for planted in leg.planted if planted.cause == cause]
            if len(leg.planted) == 1 and sizes:
                found.append((walk, leg, sizes[0]))
    assert len(found) >= 5
    return found


def turn_deg(walk: Walk, leg: LegTruth) -> float:
    return wrapped(leg.azimuth_deg - walk.course.card_azimuth_deg[leg.leg])


PREDICTED_TURN = {
    "gm-angle-omitted": lambda course, _magnetic, _size: course.grid_magnetic_angle_deg,
    "gm-angle-reversed": lambda course, _magnetic, _size: 2.0 * course.grid_magnetic_angle_deg,
    "gm-angle-doubled": lambda course, _magnetic, _size: -course.grid_magnetic_angle_deg,
    "declination-for-gm-angle": lambda course, _magnetic, _size: -course.convergence_deg,
    "reciprocal": lambda _course, _magnetic, _size: 180.0,
    "bezel-wrong-way": lambda _course, magnetic, _size: -2.0 * magnetic,
    "bezel-clicks": lambda _course, _magnetic, size: size,
    "dial-misread": lambda _course, _magnetic, size: size,
    "right-angle": lambda _course, _magnetic, size: size,
}


@pytest.mark.parametrize("cause", sorted(PREDICTED_TURN))
def test_a_wrong_setting_turns_the_leg_as_the_table_says(cause):
    for walk, leg, size in legs_with(cause):
        magnetic = walk.course.card_azimuth_deg[leg.leg] - walk.course.grid_magnetic_angle_deg
        predicted = PREDICTED_TURN[cause](walk.course, magnetic, size)
        assert wrapped(turn_deg(walk, leg) - predicted) == pytest.approx(0.0, abs=1e-6)
        assert wrapped(size - predicted) == pytest.approx(0.0, abs=1e-6)
        assert leg.length_m == pytest.approx(walk.course.card_m[leg.leg], abs=1e-6)


def test_clicks_are_multiples_of_three_degrees_and_right_angles_are_right():
    assert {abs(size) for _, _, size in legs_with("bezel-clicks")} <= {3.0, 6.0, 9.0, 12.0}
    assert {abs(size) for _, _, size in legs_with("right-angle")} == {90.0}
    assert {abs(size) for _, _, size in legs_with("dial-misread")} == {5.0, 10.0}


def test_digits_of_the_magnetic_azimuth_are_swapped_or_wrong():
    for walk, leg, _size in legs_with("azimuth-digits"):
        angle = walk.course.grid_magnetic_angle_deg
        meant = f"{round((walk.course.card_azimuth_deg[leg.leg] - angle) % 360.0) % 360:03d}"
        exact = (walk.course.card_azimuth_deg[leg.leg] - angle) % 360.0
        read = (leg.azimuth_deg - angle) % 360.0 - (exact - round(exact))
        read_digits = f"{round(read) % 360:03d}"
        differing = sum(a != b for a, b in zip(meant, read_digits, strict=True))
        assert differing == 1 or sorted(meant) == sorted(read_digits)


def test_mils_are_read_on_the_other_scale():
    for walk, leg, _size in legs_with("mils-as-degrees"):
        angle = walk.course.grid_magnetic_angle_deg
        magnetic = (walk.course.card_azimuth_deg[leg.leg] - angle) % 360.0
        walked = leg.azimuth_deg - angle
        tenth_of_mils = magnetic * 6400.0 / 360.0 / 10.0
        on_black = 5.625 * magnetic
        off = min(abs(wrapped(walked - tenth_of_mils)), abs(wrapped(walked - on_black)))
        assert off < 1e-6


def test_a_neighbours_azimuth_is_another_legs():
    for walk, leg, _size in legs_with("neighbour-azimuth"):
        near = [n for n in (leg.leg - 1, leg.leg + 1) if 0 <= n < len(walk.truth.legs)]
        others = [walk.course.card_azimuth_deg[n] for n in near]
        assert min(abs(wrapped(leg.azimuth_deg - other)) for other in others) < 1e-6


def test_hundreds_are_whole_and_independent_of_the_leg():
    for walk, leg, size in legs_with("hundred-miscounted"):
        assert size % 100.0 == 0.0
        assert size != 0.0
        assert leg.length_m - walk.course.card_m[leg.leg] == pytest.approx(size, abs=1e-6)


@pytest.mark.parametrize(("cause", "low", "high"), [("early-stop", -0.3, -0.12)])
def test_an_early_stop_is_short(cause, low, high):
    for walk, leg, size in legs_with(cause):
        assert low <= size / walk.course.card_m[leg.leg] <= high
        assert leg.length_m - walk.course.card_m[leg.leg] == pytest.approx(size, abs=1e-6)


def test_an_overshoot_is_long_and_its_far_end_is_the_claim():
    for walk, leg, size in legs_with("overshoot"):
        assert 30.0 <= size <= 150.0
        assert leg.length_m - walk.course.card_m[leg.leg] == pytest.approx(size, abs=1e-6)


def test_paces_counted_in_a_bypass_shorten_the_leg_by_the_two_sides():
    for walk, leg, size in legs_with("bypass-paced"):
        along = leg.length_m * np.cos(np.radians(turn_deg(walk, leg)))
        short = along - walk.course.card_m[leg.leg]
        assert size < -25.0
        assert short == pytest.approx(size, abs=1.0)


def test_an_unequal_bypass_leaves_a_step_across_the_line():
    for walk, leg, size in legs_with("bypass-unequal"):
        across = leg.length_m * np.sin(np.radians(turn_deg(walk, leg)))
        assert across == pytest.approx(size, abs=1.0)


def test_obstacles_on_one_side_add_up_across_the_line():
    for walk, leg, size in legs_with("obstacle-one-side"):
        across = leg.length_m * np.sin(np.radians(turn_deg(walk, leg)))
        assert across == pytest.approx(size, abs=1.0)


def test_a_veer_turns_the_last_part_of_the_leg_against_the_first():
    for walk, leg, size in legs_with("veer"):
        truth = walk.truth
        first, last = truth.index_at(leg.start_s), truth.index_at(leg.claim_s)
        third = (last - first) // 3
        ends = [(first, first + third), (last - third, last)]
        azimuths = [
            np.degrees(
                np.arctan2(truth.east_m[b] - truth.east_m[a], truth.north_m[b] - truth.north_m[a])
            )
            for a, b in ends
        ]
        # The heading turns evenly by ``size``: two thirds of it lie between the thirds.
        assert wrapped(azimuths[1] - azimuths[0]) == pytest.approx(size * 2.0 / 3.0, rel=0.15)


@pytest.mark.parametrize("cause", ["handrail", "magnetic-disturbance"])
def test_a_part_of_the_leg_follows_another_bearing(cause):
    for walk, leg, size in legs_with(cause):
        across = leg.length_m * np.sin(np.radians(turn_deg(walk, leg)))
        assert across * size > 0.0
        assert abs(across) > 5.0


@pytest.mark.parametrize(
    "cause",
    ["digits-transposed", "digit-wrong", "easting-northing-swapped", "wrong-plotting-scale"],
)
def test_a_plotting_error_ends_the_leg_at_the_wrong_plot(cause):
    unstated = 0
    for walk, leg, size in legs_with(cause, seeds=40):
        truth, course = walk.truth, walk.course
        before = truth.legs[leg.leg - 1] if leg.leg else None
        if before is not None and before.planted:
            continue  # begins at the wrong plot of the leg before
        start, end = course.points_m[leg.leg], course.points_m[leg.leg + 1]
        walked = leg.length_m * np.array(
            [np.sin(np.radians(leg.azimuth_deg)), np.cos(np.radians(leg.azimuth_deg))]
        )
        miss = walked - (end - start)
        assert np.hypot(*miss) == pytest.approx(size, abs=1e-6)
        unstated += 1
        if cause == "digits-transposed":
            assert np.sort(np.abs(miss)) == pytest.approx([0.0, size], abs=1e-6)
            assert size % 90.0 == pytest.approx(0.0, abs=1e-6)
        if cause == "digit-wrong":
            assert np.sort(np.abs(miss)) == pytest.approx([0.0, size], abs=1e-6)
            assert size % 100.0 == pytest.approx(0.0, abs=1e-6)
        if cause == "easting-northing-swapped":
            assert miss.sum() == pytest.approx(0.0, abs=1e-6)
        if cause == "wrong-plotting-scale":
            within = end % 1000.0
            doubled = np.allclose(miss, within, atol=1e-6)
            assert doubled or np.allclose(miss, -within / 2.0, atol=1e-6)
    assert unstated >= 5


def test_the_wrong_point_is_another_point_of_the_plan():
    for walk, leg, _size in legs_with("wrong-point", seeds=40, legs=(6, 10)):
        at = walk.truth.index_at(leg.claim_s)
        first = walk.truth.index_at(leg.start_s)
        moved = np.array(
            [
                walk.truth.east_m[at] - walk.truth.east_m[first],
                walk.truth.north_m[at] - walk.truth.north_m[first],
            ]
        )
        goals = walk.course.points_m - walk.course.points_m[leg.leg]
        away = np.hypot(*(goals - moved).T)
        assert walk.course.site[int(np.argmin(away))] != walk.course.site[leg.leg + 1]
        assert away.min() < 1e-6


@pytest.mark.parametrize("cause", ["pace-long", "pace-short", "single-double-pace", "wrong-ruler"])
def test_a_pace_ratio_scales_every_leg_alike(cause):
    for seed in range(5):
        walk = make_walk(seed, CLEAN.planting(walk={cause: 1.0}))
        (planted,) = walk.truth.planted
        for leg in walk.truth.legs:
            assert leg.length_m / walk.course.card_m[leg.leg] == pytest.approx(planted.size)
            assert planted in leg.planted


@pytest.mark.parametrize("cause", ["gm-angle-omitted", "gm-angle-stale", "steady-bias"])
def test_a_shared_turn_is_the_same_on_every_leg(cause):
    for seed in range(5):
        walk = make_walk(seed, CLEAN.planting(walk={cause: 1.0}))
        (planted,) = walk.truth.planted
        for leg in walk.truth.legs:
            assert turn_deg(walk, leg) == pytest.approx(wrapped(planted.size), abs=1e-6)


def test_a_wrong_mil_circle_turns_in_proportion_to_the_magnetic_azimuth():
    walk = make_walk(2, CLEAN.planting(walk={"wrong-mil-circle": 1.0}))
    (planted,) = walk.truth.planted
    for leg in walk.truth.legs:
        angle = walk.course.grid_magnetic_angle_deg
        magnetic = (walk.course.card_azimuth_deg[leg.leg] - angle) % 360.0
        assert turn_deg(walk, leg) == pytest.approx(wrapped(planted.size * magnetic), abs=1e-6)


def test_on_a_slope_the_walker_slides_downhill():
    """One direction explains the slides of all legs: right of the line here, left of it there."""
    for seed in range(5):
        walk = make_walk(seed, CLEAN.planting(walk={"sidehill": 1.0}))
        slides = []
        for leg in walk.truth.legs:
            across = leg.length_m * np.sin(np.radians(turn_deg(walk, leg)))
            right = np.radians(walk.course.card_azimuth_deg[leg.leg] + 90.0)
            slides.append(across / leg.length_m * np.array([np.sin(right), np.cos(right)]))
        assert max(np.hypot(*slide) for slide in slides) <= walk.truth.planted[0].size
        directions = np.radians(np.arange(0.0, 360.0))
        downhill = np.column_stack([np.sin(directions), np.cos(directions)])
        assert np.any(np.all(downhill @ np.array(slides).T > -1e-3, axis=1))


def test_a_wrong_start_shifts_the_whole_leg():
    walk = make_walk(4, CLEAN.planting(walk={"wrong-start": 1.0}))
    (planted,) = walk.truth.planted
    first = walk.truth.index_at(walk.truth.legs[0].start_s)
    begun = np.array([walk.truth.east_m[first], walk.truth.north_m[first]])
    # The walker stands within some metres of where he believes to start.
    assert np.hypot(*(begun - walk.course.points_m[0])) == pytest.approx(planted.size, abs=8.0)
    assert turn_deg(walk, walk.truth.legs[0]) == pytest.approx(0.0, abs=1e-6)


def test_passed_unseen_leaves_the_marker_aside():
    family = replace(CLEAN, marked=1.0, marker_sd_m=0.0).planting(leg={"passed-unseen": 1.0})
    for seed in range(5):
        for leg in make_walk(seed, family).truth.legs:
            assert [planted.cause for planted in leg.planted] == ["passed-unseen"]


def test_a_walker_who_notices_starts_the_leg_again():
    family = replace(CLEAN, notices=1.0).planting(leg={"reciprocal": 1.0})
    walk = make_walk(1, family)
    for leg in walk.truth.legs:
        assert abs(turn_deg(walk, leg)) < 1e-6
        began = walk.truth.index_at(leg.start_s)
        earlier = (walk.truth.other_label == leg.leg) & (walk.truth.label == -1)
        assert np.flatnonzero(earlier).max() < began


def test_every_mistake_planted_has_a_name_of_the_table():
    planted = set()
    for seed in range(60):
        walk = make_walk(seed, "worst-day")
        planted |= {p.cause for leg in walk.truth.legs for p in leg.planted}
        planted |= {p.cause for p in walk.truth.planted}
    assert planted <= NAMES
    assert len(planted) > 20
    for family in DIFFICULTIES.values():
        assert {*family.walk_mistakes, *family.leg_mistakes} <= NAMES


@pytest.mark.parametrize("key", ["walk", "leg"])
def test_an_unknown_mistake_is_refused(key):
    with pytest.raises(ValueError, match="no mistake"):
        make_walk(1, CLEAN.planting(**{key: {"no-such": 1.0}}))
