"""Legs walked by hand: what is measured is what was drawn, worked out on paper beside it."""

from __future__ import annotations

import numpy as np
import pytest
from measurement.hand_made import (
    BEGIN,
    ORIGIN,
    SETTINGS,
    HandWalk,
    card_of,
    clean_of,
    kinds,
    leg_as_carded,
    measure,
)

from audit.debriefing.quality import _gap_notes

EVERY_S = (1, 2, 5, 10, 15, 20, 30)


def only(measures, leg: int = 0):
    found = measures.legs[leg].measures
    assert found is not None
    return found


@pytest.fixture(scope="module")
def five_degrees_right():
    """400 m on 095 where 090 was planned: claim at 400 (sin 95, cos 95) = (398.478, -34.862)."""
    walk = HandWalk().halt(60).mark("start").walk(95, 400).mark("claim").halt(60)
    return walk, card_of((0, 0), (400, 0))


@pytest.mark.parametrize("every_s", EVERY_S)
def test_straight_leg_turned_by_five_degrees(five_degrees_right, every_s) -> None:
    walk, card = five_degrees_right
    found = only(measure(card, walk.clean(every_s), [walk.portion()], walk.halts))
    assert found.heading.azimuth.degrees == pytest.approx(95.0, abs=1e-3)
    assert found.azimuth_error_deg == pytest.approx(5.0, abs=1e-3)
    assert found.straight_m == pytest.approx(400.0, abs=0.01)
    assert found.path_m == pytest.approx(400.0, abs=0.01)
    assert found.distance_error_m == pytest.approx(0.0, abs=0.01)
    assert found.distance_ratio == pytest.approx(1.0, abs=1e-4)
    assert found.along_planned_m == pytest.approx(398.478, abs=0.01)
    assert found.along_heading_m == pytest.approx(400.0, abs=0.01)
    assert found.miss_m == pytest.approx(34.895, abs=0.01)  # 2 x 400 x sin 2.5
    assert found.miss_azimuth.degrees == pytest.approx(182.5, abs=0.05)
    assert found.miss_along_m == pytest.approx(-1.522, abs=0.01)
    assert found.miss_across_m == pytest.approx(
        34.862, abs=0.01
    )  # south of an eastward line: right
    assert found.cross_track.end_m == pytest.approx(34.862, abs=0.01)
    assert found.cross_track.max_abs_m == pytest.approx(34.862, abs=0.01)
    assert found.cross_track.rms_m == pytest.approx(34.862 / np.sqrt(3.0), abs=0.05)
    assert found.duration_s == 320.0  # 400 m at 1.25 m/s
    assert found.halted_s == 0.0
    assert found.gap_share == 0.0
    # The way on 095 leaves the planned line for good: nearest is abreast of the point.
    assert found.nearest_m == pytest.approx(400.0 * np.sin(np.radians(5.0)), abs=0.01)
    assert not found.found


@pytest.mark.parametrize("every_s", [*EVERY_S, 60])
def test_spans_of_a_leg_between_two_halts(five_degrees_right, every_s) -> None:
    walk, card = five_degrees_right
    clean = walk.clean(every_s)
    measures = measure(card, clean, [walk.portion()], walk.halts)
    assert kinds(measures) == [("at-point", None), ("walking", 0), ("at-point", None)]
    for time_s, span in ((walk.marks["start"], 0), (walk.marks["claim"], 1)):
        # on the nearest fix
        assert clean.time_s[measures.spans[span].last] == pytest.approx(time_s, abs=every_s / 2)


def test_interval_of_a_heading_without_error_is_what_noise_and_length_leave(
    five_degrees_right,
) -> None:
    walk, card = five_degrees_right
    measures = measure(card, walk.clean(), [walk.portion()], walk.halts)
    found, noise = only(measures), measures.noise
    # Two halts of a minute: the mean of each keeps 2/x (1 - (1 - exp(-x)) / x) of the variance.
    x = 60.0 / noise.correlation_s
    kept = 2.0 / x * (1.0 - (1.0 - np.exp(-x)) / x)
    # A size that is known within a factor, log-normal: the root of its mean square is
    # exp(s^2) times its middle. The leg's own factor of 0.55 and that of the whole walk.
    factor = np.exp(0.55**2 + noise.noise_log_sd**2)
    sd_m = np.sqrt(2.0 * kept) * noise.noise_m * factor
    # And each end along the way: by what a halt leaves open, 2.5 m, and half of what logging
    # every second at 1.25 m/s does (1.25 / sqrt 12).
    along_m = np.hypot(2.5, 0.5 * 1.25 / np.sqrt(12.0))
    assert found.straight_sd_m == pytest.approx(np.hypot(sd_m, np.sqrt(2.0) * along_m), rel=1e-6)
    assert sd_m < 2.0  # two short halts and a straight walk show a receiver with little error
    assert 0.05 * sd_m < np.radians(found.heading.sd_deg) * 400.0 < 1.3 * sd_m
    assert found.heading.low_deg < 95.0 < found.heading.high_deg


@pytest.mark.parametrize(("azimuth", "side"), [(80.0, -1.0), (100.0, 1.0)])
def test_right_of_the_line_is_positive(azimuth, side) -> None:
    walk = HandWalk().halt(60).mark("start").walk(azimuth, 500).mark("claim").halt(60)
    found = only(measure(card_of((0, 0), (500, 0)), walk.clean(), [walk.portion()], walk.halts))
    for value in (
        found.azimuth_error_deg,
        found.cross_track.end_m,
        found.own_cross_track.end_m,
        found.miss_across_m,
    ):
        assert value * side > 0.0


@pytest.mark.parametrize("planned", [0.0, 45.0, 137.0, 225.0, 301.0, 359.5])
def test_signs_are_the_same_in_every_direction(planned) -> None:
    angle = np.radians(planned)
    card = card_of((0, 0), (500 * np.sin(angle), 500 * np.cos(angle)))
    walk = HandWalk().halt(60).mark("start").walk(planned + 6.0, 450).mark("claim").halt(60)
    found = only(measure(card, walk.clean(), [walk.portion()], walk.halts))
    across = 450.0 * np.sin(np.radians(6.0))
    assert found.azimuth_error_deg == pytest.approx(6.0, abs=0.01)
    assert found.miss_across_m == pytest.approx(across, abs=0.05)
    assert found.miss_along_m == pytest.approx(450.0 * np.cos(np.radians(6.0)) - 500.0, abs=0.05)
    assert found.cross_track.end_m == pytest.approx(across, abs=0.05)
    assert found.distance_ratio == pytest.approx(0.9, abs=1e-3)
    assert found.distance_error_m == pytest.approx(-50.0, abs=0.05)


def test_own_line_begins_where_the_walker_really_began() -> None:
    # Begun 40 m south of the planned start, walked straight east: 40 m right of the plan
    # throughout, and never off his own line.
    walk = HandWalk()
    walk.places[0] = np.array([0.0, -40.0])
    walk.halt(60).mark("start").walk(90, 500).mark("claim").halt(60)
    found = only(measure(card_of((0, 0), (500, 0)), walk.clean(), [walk.portion()], walk.halts))
    assert found.cross_track.end_m == pytest.approx(40.0, abs=0.01)
    assert found.cross_track.max_abs_m == pytest.approx(40.0, abs=0.01)
    assert found.cross_track.rms_m == pytest.approx(40.0, abs=0.01)
    assert found.own_cross_track.max_abs_m == pytest.approx(0.0, abs=0.01)
    assert found.azimuth_error_deg == pytest.approx(0.0, abs=0.01)
    assert found.ledger.inherited == pytest.approx((0.0, -40.0), abs=0.01)
    assert found.ledger.total == pytest.approx((0.0, -40.0), abs=0.01)
    assert found.ledger.heading == pytest.approx((0.0, 0.0), abs=0.1)


@pytest.mark.parametrize("every_s", [1, 2, 5])
def test_two_legs_that_meet_in_a_bend_without_a_halt(every_s) -> None:
    card = card_of((0, 0), (400, 0), (400, 300))
    walk = HandWalk().halt(60).mark("start").walk(90, 400).mark("bend")
    walk.walk(0, 300).mark("claim").halt(60)
    portions = [walk.portion(claim="bend"), walk.portion(1, start="bend")]
    measures = measure(card, walk.clean(every_s), portions, walk.halts)
    for leg, heading, length in ((0, 90.0, 400.0), (1, 0.0, 300.0)):
        found = only(measures, leg)
        assert found.azimuth_error_deg == pytest.approx(0.0, abs=0.01)
        assert abs(np.sin(np.radians(found.heading.azimuth.degrees - heading))) < 1e-3
        assert found.straight_m == pytest.approx(length, abs=0.05)
        assert found.path_m == pytest.approx(length, abs=0.05)
        assert found.miss_m == pytest.approx(0.0, abs=0.05)
        assert found.found
    assert kinds(measures)[1:3] == [("walking", 0), ("walking", 1)]


def test_turn_after_a_leg_does_not_turn_the_leg() -> None:
    """The fixes beyond a bend belong to another leg, whichever way it goes."""
    headings = []
    for turn in (90.0, -90.0, 150.0):
        walk = HandWalk().halt(60).mark("start").walk(40, 200).mark("claim").walk(40 + turn, 200)
        card = card_of((0, 0), (128.6, 153.2))
        found = only(measure(card, walk.clean(), [walk.portion()], walk.halts))
        headings.append(found.heading.azimuth.degrees)
    assert headings == pytest.approx([40.0, 40.0, 40.0], abs=0.05)


def test_overshoot_belongs_to_the_leg_and_the_way_back_does_not() -> None:
    # 450 m where 400 were planned, a halt, then 50 m back to the point.
    walk = HandWalk().halt(60).mark("start").walk(90, 450).mark("claim").halt(40)
    walk.walk(270, 50).mark("found").halt(30)
    portion = walk.portion(search_end="found")
    measures = measure(card_of((0, 0), (400, 0)), walk.clean(), [portion], walk.halts)
    found = only(measures)
    assert found.straight_m == pytest.approx(450.0, abs=0.01)
    assert found.miss_along_m == pytest.approx(50.0, abs=0.01)
    assert found.distance_error_m == pytest.approx(50.0, abs=0.01)
    assert found.distance_ratio == pytest.approx(1.125, abs=1e-4)
    assert found.miss_azimuth.degrees == pytest.approx(90.0, abs=0.01)
    assert found.nearest_m == pytest.approx(0.0, abs=0.01)
    assert found.found
    assert kinds(measures) == [
        ("at-point", None),
        ("walking", 0),
        ("halt", 0),
        ("search", 0),
        ("at-point", None),
    ]


def test_nearest_approach_says_when() -> None:
    # Passes 20 m beside the point after 300 m (240 s) and walks on to 500 m.
    walk = HandWalk().halt(60).mark("start").walk(90, 500).mark("claim").halt(60)
    found = only(measure(card_of((0, 0), (300, 20)), walk.clean(7), [walk.portion()], walk.halts))
    assert found.nearest_m == pytest.approx(20.0, abs=0.01)
    assert found.nearest_s == pytest.approx(BEGIN + 60.0 + 240.0, abs=0.5)
    assert found.found  # though he passed it
    assert found.miss_m == pytest.approx(np.hypot(200.0, 20.0), abs=0.01)


@pytest.mark.parametrize("every_s", EVERY_S)
def test_claim_is_never_nearer_than_the_nearest_approach(every_s) -> None:
    walk = HandWalk().halt(7).mark("start").walk(90, 400).mark("claim").walk(180, 250).mark("end")
    portions = [walk.portion(), walk.portion(1, start="claim", claim="end")]
    card = card_of((0, 0), (405, -3), (405, -253))
    for leg in measure(card, walk.clean(every_s), portions, walk.halts).legs:
        assert leg.measures is not None
        assert leg.measures.nearest_m <= leg.measures.miss_m + 1e-9


def test_found_looks_up_to_the_next_departure_and_no_further() -> None:
    # Misses point 1 by 100 m, leaves for point 2, and comes by point 1 only on the way home.
    card = card_of((0, 0), (400, 0), (400, 300), arrival_radius_m=30.0)
    walk = HandWalk().halt(30).mark("start").walk(90, 300).mark("a").halt(30).mark("b")
    walk.walk(0, 300).mark("c").halt(30).walk(90, 100).walk(180, 300).halt(30)
    portions = [walk.portion(claim="a"), walk.portion(1, start="b", claim="c")]
    first, second = (leg.measures for leg in measure(card, walk.clean(), portions, walk.halts).legs)
    assert first.nearest_m == pytest.approx(100.0, abs=0.01)
    assert not first.found
    assert second.found  # point 2 was passed on the way home, which no leg follows


@pytest.mark.parametrize("every_s", [1, 5, 10])
def test_boxed_bypass(every_s) -> None:
    # 30 m right, 60 m on, 30 m back: 60 m more of path, a step of 30 m, nothing left at the end.
    walk = HandWalk().halt(60).mark("start").walk(90, 150).mark("out").walk(180, 30).walk(90, 60)
    walk.walk(0, 30).mark("in").walk(90, 190).mark("claim").halt(60)
    clean = walk.clean(every_s)
    measures = measure(card_of((0, 0), (400, 0)), clean, [walk.portion()], walk.halts)
    found = only(measures)
    assert found.straight_m == pytest.approx(400.0, abs=0.01)
    assert found.azimuth_error_deg == pytest.approx(0.0, abs=0.05)
    assert found.cross_track.max_abs_m == pytest.approx(30.0, abs=1.0)
    assert found.cross_track.end_m == pytest.approx(0.0, abs=0.01)
    # 400 m and twice 30 m aside; what smoothing cuts off the four corners is given back.
    assert found.path_m == pytest.approx(460.0, rel=0.02)
    assert kinds(measures)[1:4] == [("walking", 0), ("bypass", 0), ("walking", 0)]
    bypass = measures.spans[2]
    assert clean.time_s[bypass.first] == pytest.approx(walk.marks["out"], abs=10.0)
    assert clean.time_s[bypass.last] == pytest.approx(walk.marks["in"], abs=10.0)


def test_leg_along_a_bent_line() -> None:
    # Planned over a corner at (300, 0) to (300, 200): 500 m along the line, a chord of 360.6 m.
    card = card_of((0, 0), (300, 200), via=((300, 0),))
    walk = HandWalk().halt(60).mark("start").walk(90, 300).walk(0, 200).mark("claim").halt(60)
    found = only(measure(card, walk.clean(), [walk.portion()], walk.halts))
    assert card.legs[0].distance_m == pytest.approx(500.0, abs=0.01)
    assert found.straight_m == pytest.approx(np.hypot(300.0, 200.0), abs=0.01)
    assert found.path_m == pytest.approx(500.0, rel=0.02)  # one corner rounded off
    assert found.distance_ratio == pytest.approx(1.0, abs=1e-4)  # along the line itself
    assert found.azimuth_error_deg == pytest.approx(0.0, abs=0.01)
    assert found.miss_m == pytest.approx(0.0, abs=0.01)
    assert found.cross_track.max_abs_m < 8.0  # where the corner is rounded
    assert found.cross_track.end_m == pytest.approx(0.0, abs=0.01)
    for part in (found.ledger.heading, found.ledger.distance, found.ledger.detour):
        assert part == pytest.approx((0.0, 0.0), abs=0.1)


def test_card_that_disagrees_with_its_points_goes_to_the_plan() -> None:
    # The points lie 400 m on 090; the card says 400 m on 100, and it is walked as carded.
    card = card_of((0, 0), (400, 0), legs=(leg_as_carded(100.0, 400.0),))
    walk = HandWalk().halt(60).mark("start").walk(100, 400).mark("claim").halt(60)
    found = only(measure(card, walk.clean(), [walk.portion()], walk.halts))
    carded = 400.0 * np.array([np.sin(np.radians(100.0)), np.cos(np.radians(100.0))])
    assert found.azimuth_error_deg == pytest.approx(0.0, abs=0.01)
    assert found.distance_error_m == pytest.approx(0.0, abs=0.01)
    assert found.ledger.plan == pytest.approx(tuple(carded - [400.0, 0.0]), abs=0.01)
    assert found.ledger.total == pytest.approx(found.ledger.plan, abs=0.1)


def test_halts_on_the_way_are_counted_and_those_at_its_ends_are_not() -> None:
    walk = HandWalk().halt(60).mark("start").walk(90, 200).halt(100).walk(90, 200).mark("claim")
    walk.halt(60)
    measures = measure(card_of((0, 0), (400, 0)), walk.clean(), [walk.portion()], walk.halts)
    found = only(measures)
    assert found.halted_s == 100.0
    assert found.duration_s == 420.0
    assert found.path_m == pytest.approx(400.0, abs=0.1)
    assert kinds(measures)[1:4] == [("walking", 0), ("halt", 0), ("walking", 0)]


def test_paces_come_from_the_log_or_from_the_pace_count() -> None:
    walk = HandWalk().halt(60).mark("start").walk(90, 400).mark("claim").halt(60)
    portions = [walk.portion()]
    with_rate = card_of((0, 0), (400, 0), paces_per_100m=65.0)
    counted = only(measure(with_rate, walk.clean(), portions, walk.halts, paces={"1": 271.0}))
    assert (counted.paces, counted.paces_from) == (271.0, "log")
    reckoned = only(measure(with_rate, walk.clean(), portions, walk.halts))
    assert reckoned.paces == pytest.approx(260.0, abs=0.01)  # 4 x 65
    assert reckoned.paces_from == "pace count"
    unknown = only(measure(card_of((0, 0), (400, 0)), walk.clean(), portions, walk.halts))
    assert (unknown.paces, unknown.paces_from) == (None, None)


def test_gap_takes_its_share_of_the_straight_distance() -> None:
    walk = HandWalk().halt(60).mark("start").walk(90, 400).mark("claim").halt(60)
    whole = walk.clean()
    kept = np.flatnonzero((whole.time_s <= BEGIN + 140) | (whole.time_s >= BEGIN + 260))
    place = np.column_stack([whole.east_m, whole.north_m])[kept]
    gap = int(np.flatnonzero(np.diff(whole.time_s[kept]) > 1.5)[0])
    clean = clean_of(whole.time_s[kept], place, gaps=(gap,))
    measures = measure(card_of((0, 0), (400, 0)), clean, [walk.portion()], walk.halts)
    found = only(measures)
    assert found.gap_share == pytest.approx(150.0 / 400.0, abs=0.01)  # 120 s at 1.25 m/s
    assert found.straight_m == pytest.approx(400.0, abs=0.01)
    assert ("gap", 0) in kinds(measures)


def test_a_silence_in_one_place_takes_its_share_of_the_time() -> None:
    """Bug: "40 min" of a leg that was a silence of 30 in one place, and not a word of that."""
    walk = HandWalk().halt(60).mark("start").walk(90, 200).halt(1800).walk(90, 200)
    walk = walk.mark("claim").halt(60)
    whole = walk.clean()
    kept = np.flatnonzero((whole.time_s <= BEGIN + 225) | (whole.time_s >= BEGIN + 2015))
    place = np.column_stack([whole.east_m, whole.north_m])[kept]
    gap = int(np.flatnonzero(np.diff(whole.time_s[kept]) > 1.5)[0])
    clean = clean_of(whole.time_s[kept], place, gaps=(gap,))
    measures = measure(card_of((0, 0), (400, 0)), clean, [walk.portion()])
    found = only(measures)
    assert (found.unseen_s, found.gap_share) == (1790.0, 0.0)
    (note,) = _gap_notes(measures.legs[0], SETTINGS.quality)
    assert note.startswith("Leg 1: 84 % of its time lies in gaps of the recording")


def test_miss_counts_the_square_of_the_reference() -> None:
    # A reference to 10 m names a square of half side 5 m: 5 / sqrt 3 = 2.89 m an axis.
    from dataclasses import replace

    walk = HandWalk().halt(60).mark("start").walk(90, 400).mark("claim").halt(60)
    sharp = card_of((0, 0), (400, 0))
    end = replace(sharp.legs[0].end, half_square_m=5.0)
    blunt = replace(sharp, legs=(replace(sharp.legs[0], end=end),))
    sds = [
        only(measure(card, walk.clean(), [walk.portion()], walk.halts)).miss_sd_m
        for card in (sharp, blunt)
    ]
    assert sds[1] ** 2 - sds[0] ** 2 == pytest.approx(25.0 / 3.0, abs=1e-6)


def test_places_are_given_in_degrees_as_well() -> None:
    walk = HandWalk().halt(60).mark("start").walk(90, 400).mark("claim").halt(60)
    card = card_of((0, 0), (400, 0))
    claim = only(measure(card, walk.clean(), [walk.portion()], walk.halts)).claim
    assert (claim.east_m, claim.north_m) == pytest.approx(
        tuple(ORIGIN + np.array([400.0, 0.0])), abs=0.01
    )
    end = card.legs[0].end
    assert claim.longitude_deg == pytest.approx(end.longitude_deg, abs=1e-6)
    assert claim.latitude_deg == pytest.approx(end.latitude_deg, abs=1e-6)
    assert claim.time_s == walk.marks["claim"]


def test_own_line_of_a_bent_leg_begins_where_the_walker_really_began() -> None:
    # The bent leg above, begun 40 m west and walked as planned from there.
    card = card_of((0, 0), (300, 200), via=((300, 0),))
    walk = HandWalk()
    walk.places[0] = np.array([-40.0, 0.0])
    walk.halt(60).mark("start").walk(90, 300).walk(0, 200).mark("claim").halt(60)
    found = only(measure(card, walk.clean(), [walk.portion()], walk.halts))
    assert found.own_cross_track.max_abs_m < 8.0  # where the corner is rounded
    assert found.own_cross_track.end_m == pytest.approx(0.0, abs=0.01)
    # Against the planned line: 40 m left of its northward part.
    assert found.cross_track.end_m == pytest.approx(-40.0, abs=0.01)
    assert found.ledger.inherited == pytest.approx((-40.0, 0.0), abs=0.01)
