"""Errors of one leg's figures, and what is told beside them, worked out beside the check."""

from __future__ import annotations

import math
from dataclasses import replace
from types import SimpleNamespace
from unittest.mock import Mock

import numpy as np
import pytest
from measurement.hand_made import BEGIN, SETTINGS, card_of, clean_of, leg_as_carded, match_with

from audit.azimuths import GridAzimuth, MagneticAzimuth
from audit.matching.leg_match import LegMatch
from audit.measurement import ground_walked, measure_details, measure_leg, measure_walk, near_roads
from audit.measurement.ledger_errors import ledger_errors
from audit.measurement.leg_measures import CrossTrack
from audit.measurement.lines_of_leg import (
    carried_direction,
    line_direction,
    line_length_m,
    own_line,
    planned_line,
)
from audit.measurement.paces_of_walk import Cadence, leg_paces
from audit.measurement.places import Fixed
from audit.measurement.receiver_noise import ReceiverNoise

S = SETTINGS.measuring
CARD = card_of((0, 0), (400, 0))
LEG = CARD.legs[0]


def fixed(time_s, east_m=0.0, north_m=0.0, sd_m=3.0, along_sd_m=0.0) -> Fixed:
    return Fixed(
        time_s=time_s, east_m=east_m, north_m=north_m, sd_m=sd_m, halt_s=(time_s, time_s),
        along_sd_m=along_sd_m,
    )  # fmt: skip


def walk_of(start, claim, **known):
    known = {"path_m": 400.0, "lost_m": 0.0, "speed_m_s": 1.25, "until_s": claim.time_s} | known
    seen = SimpleNamespace(marked_by="way")
    known = {"start_error": seen, "claim_error": seen} | known
    times_s = start.time_s, claim.time_s
    return SimpleNamespace(start=start, claim=claim, times_s=times_s, **known)


def square(leg, start_m=0.0, end_m=0.0):
    """The leg with points read off squares of so many metres to either side."""
    return replace(
        leg,
        start=replace(leg.start, half_square_m=start_m),
        end=replace(leg.end, half_square_m=end_m),
    )


def test_errors_of_two_ends_add_as_squares() -> None:
    walk = walk_of(fixed(0.0, sd_m=3.0, along_sd_m=4.0), fixed(400.0, sd_m=12.0, along_sd_m=84.0))
    assert measure_leg._straight_sd(walk) == pytest.approx(math.hypot(5.0, math.hypot(12.0, 84.0)))
    # Along the walk, half of a square on each axis; anywhere in a square, a third of its half side's.
    expected = math.sqrt(12.0**2 + 84.0**2 / 2.0 + 50.0**2 / 3.0)
    assert measure_leg._miss_sd(walk, square(LEG, end_m=50.0)) == pytest.approx(expected)


def test_error_of_a_path_grows_with_its_length_and_with_what_nobody_saw() -> None:
    walk = walk_of(fixed(0.0), fixed(400.0), path_m=1000.0, lost_m=20.0)
    share = math.hypot(S.path_sd, S.path_sd_per_s * 30.0)
    for interval_s, of_path in ((30.0, share), (None, S.path_sd)):
        assert measure_leg._path_sd(walk, interval_s, 5.0, S) == pytest.approx(
            math.sqrt(25.0 + (1000.0 * of_path) ** 2 + (20.0 * S.path_lost_share) ** 2)
        )


def eastward(seconds=1000, gaps=(), speed_m_s=1.0):
    time_s = np.arange(0.0, seconds + 1.0)
    place = np.column_stack([5000.0 + speed_m_s * time_s, np.full(len(time_s), 7000.0)])
    clean = clean_of(time_s, place)
    cut = [SimpleNamespace(before=g, start_s=float(g), end_s=float(g + 1)) for g in gaps]
    return replace(clean, gaps=tuple(cut))


def test_the_share_of_a_leg_in_gaps_is_that_of_its_straight_distance() -> None:
    walk = walk_of(fixed(100.0), fixed(300.0))
    for gaps, share in (((), 0.0), ((200,), 0.005), ((150, 250), 0.01), ((99, 300), 0.0),
                        ((100, 299), 0.01)):  # fmt: skip
        assert measure_leg._gap_share(eastward(gaps=gaps), walk, 200.0) == pytest.approx(share)
    assert measure_leg._gap_share(eastward(gaps=(200,), speed_m_s=900.0), walk, 200.0) == 1.0
    assert measure_leg._gap_share(eastward(gaps=(200,)), walk, 0.0) == 0.0
    # Bug: of a gap in which the leg began all counted, also what lay before the leg.
    begun = walk_of(fixed(100.25, 5100.25, 7000.0), fixed(300.0))
    assert measure_leg._gap_share(eastward(gaps=(100,)), begun, 200.0) == pytest.approx(
        0.75 / 200.0
    )
    ended = walk_of(fixed(100.0), fixed(299.25, 5299.25, 7000.0))
    assert measure_leg._gap_share(eastward(gaps=(299,)), ended, 200.0) == pytest.approx(
        0.25 / 200.0
    )
    north = eastward(gaps=(200,))
    north = replace(north, east_m=north.north_m, north_m=north.east_m)
    assert measure_leg._gap_share(north, walk, 200.0) == pytest.approx(0.005)


def test_the_claim_counts_for_the_nearest_approach() -> None:
    clean = eastward()
    target = np.array([5200.0, 7030.0])
    for claim, nearest in (
        (fixed(210.0, 5210.0, 7000.0), (30.0, 200.0)),
        (fixed(210.0, 5200.0, 7020.0), (10.0, 210.0)),
        (fixed(210.0, 5200.0, 7060.0), (30.0, 210.0)),  # of two as near, the claim
    ):
        by = SimpleNamespace(marked_by="way")
        walk = walk_of(fixed(100.0), claim, until_s=300.0, claim_error=by)
        assert measure_leg._nearest(clean, walk, target) == pytest.approx(nearest)
    reckoned = SimpleNamespace(marked_by="reckoned")
    unseen = walk_of(
        fixed(100.0), fixed(210.0, 5200.0, 7030.0), until_s=300.0, claim_error=reckoned
    )
    assert measure_leg._nearest(clean, unseen, target) == pytest.approx((30.0, 200.0))


def test_paces_of_the_log_come_before_those_of_the_pace_count() -> None:
    assert measure_leg._paces(250.0, 62.0, 500.0) == (250.0, "log")
    assert measure_leg._paces(None, 62.0, 500.0) == (310.0, "pace count")
    assert measure_leg._paces(None, None, 500.0) == (None, None)


def test_a_bent_leg_is_set_against_its_chord_and_a_straight_one_against_its_card() -> None:
    bent = card_of((0, 0), (300, 400), via=((300, 0),)).legs[0]
    chord_deg = pytest.approx(math.degrees(math.atan2(300, 400)), abs=1e-6)
    assert carried_direction(bent).degrees == line_direction(bent).degrees == chord_deg
    begun = np.array([10.0, 20.0])
    assert planned_line(bent) == pytest.approx(bent.line)
    assert own_line(bent, begun) - begun == pytest.approx(bent.line - bent.line[0])
    said = card_of((0, 0), (400, 0), legs=(leg_as_carded(180.0, 100.0),)).legs[0]
    assert carried_direction(said).degrees == 180.0
    assert own_line(said, begun) == pytest.approx(np.array([begun, begun - [0.0, 100.0]]))


def test_the_planned_line_runs_between_the_points_whatever_the_card_says() -> None:
    """Bug: it was drawn on the card's azimuth, and offset and miss across did not agree."""
    said = card_of((0, 0), (400, 0), legs=(leg_as_carded(180.0, 100.0),)).legs[0]
    assert planned_line(said) == pytest.approx(said.line)
    assert line_direction(said).degrees == pytest.approx(90.0, abs=1e-6)
    assert line_length_m(said) == pytest.approx(400.0, abs=1e-6)
    # A miss 30 m east and 10 m south of the end of a leg due east: 30 m on, 10 m to the right.
    assert measure_leg._along_across(np.array([30.0, -10.0]), said) == pytest.approx((30.0, 10.0))


def test_points_at_one_place_leave_the_line_to_the_card() -> None:
    nowhere = card_of((0, 0), (0, 0), legs=(leg_as_carded(180.0, 100.0),)).legs[0]
    line = planned_line(nowhere)
    assert line[1] - line[0] == pytest.approx([0.0, -100.0], abs=1e-9)
    assert line_length_m(nowhere) == pytest.approx(100.0)
    assert line_direction(nowhere).degrees == pytest.approx(180.0)


def context_of(clean=None, *, legs=(), match_legs=(), **known):
    return SimpleNamespace(
        clean=clean, settings=SETTINGS, card=CARD, legs=legs,
        match=match_with(*match_legs),
        sampled=SimpleNamespace(movement=SimpleNamespace(walking_m_s=1.0)), **known,
    )  # fmt: skip


def test_the_band_of_a_line_is_of_the_receiver_and_of_what_the_line_rests_on() -> None:
    """The planned one: its points, each anywhere in its square, the mean of both variances. The
    one drawn from where he began: that place."""
    curve = CrossTrack(
        along_m=np.array([0.0, 400.0]), offset_m=np.zeros(2), end_m=0.0, max_abs_m=0.0, rms_m=0.0
    )
    walk = walk_of(fixed(0.0, sd_m=6.0), fixed(400.0))
    walk.position, walk.time_s = np.array([[0.0, 0.0], [400.0, 0.0]]), np.array([0.0, 400.0])
    leg = square(LEG, 30.0, 50.0)
    for planned, variance in ((True, (30.0**2 / 3.0 + 50.0**2 / 3.0) / 2.0), (False, 36.0)):
        kept = measure_details._line_kept(context_of(), walk, leg, curve, 4.0, planned=planned)
        assert kept.band_m == pytest.approx(1.96 * math.sqrt(16.0 + variance))


def one(leg, start_s, claim_s, confidence=0.99, **known):
    return LegMatch(
        leg=leg, status="walked", start_s=start_s, claim_s=claim_s, confidence=confidence, **known
    )


def test_a_point_is_judged_by_receiver_logging_and_square_and_by_every_other_reading() -> None:
    """100 m past the point; a reading that leaves all but the sure leg open, which is a later one
    of the plan, came by it at 20 m before that leg, and not again after it."""
    time_s = np.arange(0.0, 901.0, 10.0)
    off_m = np.interp(time_s, [0, 100, 200, 900], [80.0, 20.0, 100.0, 100.0])
    clean = clean_of(time_s, np.column_stack([5000.0 + 0 * time_s, 7000.0 + off_m]))
    leg = square(LEG, end_m=30.0)
    leg = replace(leg, end=replace(leg.end, east_m=5000.0, north_m=7000.0))
    sure, doubted = one(1, 300.0, 400.0), one(0, 600.0, 700.0, 0.8)
    context = context_of(clean, match_legs=(sure, doubted))
    walk = walk_of(fixed(600.0), fixed(700.0))
    point = measure_details._point(
        context, walk, leg, doubted, SimpleNamespace(noise_m=4.0, nearest_m=100.0)
    )
    # Each 10 s a fix at 1.25 m/s: 12.5 m, evenly likely.
    assert point.sd_m == pytest.approx(math.sqrt(16.0 + 12.5**2 / 12.0 + 30.0**2 / 3.0))
    assert (point.radius_m, point.elsewhere_m) == (CARD.arrival_radius_m, pytest.approx(20.0))
    assert point.doubt == pytest.approx(0.2)
    # Without noise, and without times, the square is left.
    still = measure_details._point(
        context_of(replace(clean, median_interval_s=None), match_legs=(sure, doubted)), walk, leg,
        doubted, SimpleNamespace(noise_m=0.0, nearest_m=100.0),
    )  # fmt: skip
    assert still.sd_m == pytest.approx(math.sqrt(30.0**2 / 3.0))


def test_in_a_silence_he_walked_at_most_three_tenths_faster_than_usual() -> None:
    """Silent for 100 s between 60 m on either side: 130 m of way leave him 10 m short of nowhere."""
    time_s = np.concatenate([np.arange(0.0, 101.0), np.arange(200.0, 301.0)])
    east = np.concatenate([np.full(101, 5000.0 - 60.0), np.full(101, 5000.0 + 60.0)])
    clean = clean_of(time_s, np.column_stack([east, np.full(202, 7000.0)]), gaps=(100,))
    leg = replace(LEG, end=replace(LEG.end, east_m=5000.0, north_m=7100.0))
    portion = one(0, 50.0, 250.0, 1.0)
    walk = walk_of(fixed(50.0), fixed(250.0))
    point = measure_details._point(
        context_of(clean, match_legs=(portion,)), walk, leg, portion,
        SimpleNamespace(noise_m=4.0, nearest_m=100.0),
    )  # fmt: skip
    nearest_m = (2.0 * math.hypot(60.0, 100.0) - 1.3 * 100.0) / 2.0
    assert point.unseen_m == pytest.approx(100.0 - nearest_m)


def test_setting_is_told_of_a_straight_leg_whose_log_says_what_was_set() -> None:
    measures = SimpleNamespace(
        along_heading_m=400.0, heading=SimpleNamespace(azimuth=GridAzimuth(92.0))
    )
    context = context_of(azimuths_set={LEG.name: MagneticAzimuth(96.0)})
    split = measure_details._setting(context, LEG, measures)  # 96 - 7 = 089 grid
    assert (split.set_turn_deg, split.held_turn_deg) == (pytest.approx(-1.0), pytest.approx(3.0))
    bent = replace(LEG, line=np.array([[0.0, 0.0], [200.0, 10.0], [400.0, 0.0]]))
    assert measure_details._setting(context, bent, measures) is None
    assert measure_details._setting(context_of(azimuths_set={}), LEG, measures) is None


def test_a_search_is_what_lies_between_the_claim_and_its_end(monkeypatch) -> None:
    described = Mock()
    monkeypatch.setattr(measure_details, "describe_search", described)
    monkeypatch.setattr(measure_details, "walked_up", lambda *_: False)
    time_s = np.arange(0.0, 501.0, 2.0)
    samples = SimpleNamespace(
        time_s=time_s, step_s=2.0, raw=np.column_stack([time_s, np.zeros(len(time_s))])
    )
    context = SimpleNamespace(
        sampled=SimpleNamespace(samples=samples),
        settings=SETTINGS,
        card=SimpleNamespace(arrival_radius_m=25.0),
    )
    walk = walk_of(fixed(100.0), fixed(301.0, 301.0, 0.0), smoothing_s=8.0)
    measures = SimpleNamespace(heading=SimpleNamespace(azimuth=GridAzimuth(90.0)))
    for end_s, last_s in (
        (400.0, 400.0),
        (304.0, 304.0),
        (303.0, None),
        (301.0, None),
        (None, None),
    ):
        described.reset_mock()
        found = measure_details._search(
            context, walk, LEG, one(0, 100.0, 301.0, search_end_s=end_s), measures
        )
        if last_s is None:
            assert found is None
            continue
        times_s, place, heading_deg, _ = described.call_args.args
        assert times_s.tolist() == [301.0, *np.arange(302.0, last_s + 1.0, 2.0)]
        assert place[:, 0] == pytest.approx(times_s, abs=1.0)
        assert place[[0, -1], 0] == pytest.approx([301.0, last_s])
        assert heading_deg == 90.0


def test_counted_paces_for_a_hundred_metres_and_their_error() -> None:
    """330 over 500 m; a careful count is good to 3 in 100, the path to 10 m in 500."""
    clean = eastward()
    walk = walk_of(fixed(100.0), fixed(500.0), path_m=500.0)

    def told(counted, path_m=500.0, cadence=None):
        walk.path_m = path_m
        return leg_paces(
            clean, walk, predicted=310.0, counted=counted, path_sd_m=10.0, cadence=cadence,
            settings=SETTINGS.paces,
        )  # fmt: skip

    paces = told(330.0)
    assert (paces.predicted, paces.counted, paces.by_cadence) == (310.0, 330.0, None)
    assert paces.per_100m == pytest.approx(66.0)
    assert paces.per_100m_sd == pytest.approx(66.0 * math.hypot(0.03, 0.02))
    assert told(None).per_100m is None
    assert told(330.0, path_m=0.0).per_100m is told(330.0, path_m=0.0).per_100m_sd is None
    steady = Cadence(per_min=np.full(len(clean), 54.0))
    assert told(None, cadence=steady).by_cadence == pytest.approx(360.0)  # 400 s at 54 a minute


def test_what_the_halts_leave_open_of_the_noise_is_added_to_every_leg() -> None:
    noise = ReceiverNoise(
        noise_m=4.0, noise_log_sd=0.3, correlation_s=70.0, correlation_log_sd=0.6,
        source="halts", halted_s=300.0, prior_m=4.5,
    )  # fmt: skip
    fitted = measure_walk._fitted_to_noise(SETTINGS, noise)
    assert fitted.heading.noise_log_sd == pytest.approx(math.hypot(0.55, 0.3))
    assert fitted.heading.usual_correlation_log_sd == pytest.approx(math.hypot(0.8, 0.6))
    assert fitted.heading.usual_correlation_s == fitted.measuring.noise_correlation_s == 70.0


def test_straight_walking_is_looked_for_on_legs_that_were_walked(monkeypatch) -> None:
    asked = Mock(return_value=[])
    monkeypatch.setattr(measure_walk, "straight_stretches", asked)
    match = SimpleNamespace(
        halts=np.empty((0, 2)),
        legs=(one(0, 10.0, 90.0), LegMatch(leg=1, status="skipped"), one(2, 100.0, 190.0),
              LegMatch(leg=3, status="unfinished", start_s=200.0, claim_s=250.0)),
    )  # fmt: skip
    clean = eastward()
    assert measure_walk._straight_walking(clean, match, SETTINGS) == []
    assert asked.call_args.args[1] == [(10.0, 90.0), (100.0, 190.0)]
    asked.reset_mock()
    assert measure_walk._straight_walking(replace(clean, timed=False), match, SETTINGS) == []
    assert not asked.called


def test_a_way_is_cut_into_pieces_of_equal_length_and_time() -> None:
    """Steps of 25 m and 4 m, the first in pieces no longer than the program's own length."""
    place = np.array([[0.0, 0.0], [15.0, 20.0], [15.0, 24.0], [15.0, 24.0]])
    middles, lengths, seconds = near_roads._pieces(place, BEGIN + np.array([0.0, 20.0, 23.0, 30.0]))
    count = math.ceil(25.0 / near_roads._PIECE_M)
    assert lengths[:count] == pytest.approx(np.full(count, 25.0 / count))
    assert seconds[:count] == pytest.approx(np.full(count, 20.0 / count))
    assert lengths.sum() == pytest.approx(29.0)
    assert seconds.sum() == pytest.approx(30.0)
    assert middles[0] == pytest.approx([7.5 / count, 10.0 / count])
    assert middles[count - 1] == pytest.approx([15.0 - 7.5 / count, 20.0 - 10.0 / count])
    assert near_roads._pieces(place, None)[2].sum() == 0.0


def test_runs_near_a_road_are_kept_where_they_are_longer_than_a_crossing() -> None:
    near = np.array([True, True, False, True, False, True, True, True])
    lengths = np.array([5.0, 5.0, 5.0, 30.0, 5.0, 4.0, 4.0, 4.0])
    for least_m, kept in ((9.0, near), (10.0, near & (np.arange(8) > 2)), (12.0, np.arange(8) == 3),
                          (30.0, np.zeros(8, dtype=bool))):  # fmt: skip
        assert near_roads._kept(near, lengths, least_m).tolist() == kept.tolist()


def test_the_heading_part_of_a_bent_leg_goes_by_the_vector_between_its_ends() -> None:
    """Four and three hundred metres make five; of 700 m along the line none counts."""
    bent = card_of((0, 0), (300, 400), via=((300, 0),)).legs[0]
    measures = SimpleNamespace(
        along_heading_m=400.0, straight_m=999.0, heading=SimpleNamespace(own_sd_deg=2.0),
        ledger=SimpleNamespace(detour=(0.0, 1.0)), straight_sd_m=5.0, miss_sd_m=6.0,
    )  # fmt: skip
    errors = ledger_errors(bent, measures, 3.0, 4.0)
    turn_sd = math.radians(2.0)
    assert errors.heading_m == pytest.approx((500.0 + 400.0) / 2.0 * turn_sd, rel=1e-3)
    assert errors.detour_m == pytest.approx(math.hypot(5.0, 400.0 * turn_sd))
    assert (errors.distance_m, errors.total_m) == (5.0, 6.0)


@pytest.mark.parametrize(
    ("heights", "climbed"),
    [
        ([0, 10, 0], (10, 10)), ([10, 0, 10], (10, 10)), ([0, 2, 0, 2, 0], (0, 0)),
        ([0, 4, 3, 8, 7, 12], (12, 0)),  # what falls by a metre on the way up is error
        ([12, 8, 9, 4, 5, 0], (0, 12)), ([0, 10, 12, 2, 6], (16, 10)), ([5, 5, 5], (0, 0)), ([0, 3, 0], (3, 3)),
        ([5, 3, 10, 9], (7, 0)), ([5, 7, 0, 1], (0, 7)),  # nor what falls before it,
        ([20, 10, 12, 5], (0, 15)), ([0, 10, 8, 15], (15, 0)),  # two metres on the way
    ],
)  # fmt: skip
def test_rises_and_falls_count_once_they_are_more_than_error(heights, climbed) -> None:
    """Each is from the lowest to the highest, and three metres at least."""
    climb_m, descent_m = ground_walked._climb(np.array(heights, dtype=np.float64), 3.0)
    assert (climb_m, descent_m) == climbed


@pytest.mark.parametrize("stood", [0, 2])
def test_kinds_of_ground_add_up_to_the_path(stood) -> None:
    """600 m by the curve of places, 660 m by the path, whether or not he set off at once."""
    time_s = np.arange(0.0, 601.0 + stood)
    east = np.maximum(time_s - stood, 0.0)
    place = np.column_stack([east, np.zeros(len(east))])
    clean = replace(clean_of(time_s, place), elevation_m=100.0 + 0.2 * east)
    walk = walk_of(fixed(0.0), fixed(float(time_s[-1])), path_m=660.0)
    walk.position, walk.time_s = place, time_s
    quality = ground_walked.ElevationQuality(trusted=True, why_not="", sd_m=1.0)
    ground = ground_walked.measure_ground(clean, walk, quality, SETTINGS.ground)
    assert (ground.level_m, ground.downhill_m) == (0.0, 0.0)
    assert ground.uphill_m == pytest.approx(660.0)
    assert ground.along_m[-1] == pytest.approx(600.0)
    assert ground.elevation_sd_m == pytest.approx(math.sqrt(2.0))
    assert ground.slope_m == pytest.approx(math.hypot(660.0, ground.climb_m), rel=0.01)


@pytest.mark.parametrize(("known", "told"), [(1.0, True), (0.8, True), (0.7, False)])
def test_ground_is_told_where_most_fixes_of_a_leg_have_their_height(known, told) -> None:
    """Four in five of those on the leg, its ends among them, and two at least."""
    time_s = np.arange(0.0, 100.0)
    place = np.column_stack([time_s, np.zeros(100)])
    heights = np.where(np.arange(100) < 100 * known, 50.0, np.nan)
    walk = walk_of(fixed(0.0), fixed(99.0), path_m=99.0)
    walk.position, walk.time_s = place, time_s
    quality = ground_walked.ElevationQuality(trusted=True, why_not="", sd_m=1.0)
    clean = replace(clean_of(time_s, place), elevation_m=heights)
    ground = ground_walked.measure_ground(clean, walk, quality, SETTINGS.ground)
    assert ground.trusted is told
    one = replace(clean, elevation_m=np.where(time_s == 50.0, 50.0, np.nan))
    assert not ground_walked.measure_ground(one, walk, quality, SETTINGS.ground).trusted
    alone = replace(clean_of(time_s[::99], place[::99]), elevation_m=np.array([50.0, np.nan]))
    assert not ground_walked.measure_ground(alone, walk, quality, SETTINGS.ground).trusted
