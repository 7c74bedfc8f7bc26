"""Paths, corners and what lies about a leg, worked out beside the check."""

from __future__ import annotations

import math
from types import SimpleNamespace
from unittest.mock import Mock

import numpy as np
import pytest
from measurement.hand_made import SETTINGS, clean_of
from scipy.integrate import quad
from scipy.stats import norm

from audit.azimuths import GridAzimuth
from audit.matching.leg_match import LegMatch
from audit.measurement import sighting_stops, walk_of_leg
from audit.measurement.leg_details import Bypass
from audit.measurement.places import Fixed
from audit.measurement.sighting_stops import find_sighting_stops
from audit.measurement.walk_of_leg import WalkOfLeg, walking_speed, with_corners

LEFT_OUT_M = quad(lambda x: 1.0 - math.sqrt(1.0 - 2.0 * norm.cdf(x) * norm.sf(x)), -9, 9)[0]
"""What a Gaussian of width one cuts off the way round a right angle."""


def leg(number, start_s, claim_s):
    return LegMatch(leg=number, status="walked", start_s=start_s, claim_s=claim_s)


def match_of(*legs, halts=()):
    return SimpleNamespace(legs=legs, halts=np.array(halts, dtype=np.float64).reshape(-1, 2))


def walk(path_m=500.0, lost_m=50.0, seconds=500.0, smoothing_s=8.0, halted_s=0.0) -> WalkOfLeg:
    start, claim = (
        Fixed(time_s=s, east_m=s, north_m=0.0, sd_m=3.0, halt_s=(s, s)) for s in (0.0, seconds)
    )
    return WalkOfLeg(
        leg=0, start=start, claim=claim, start_error=None, claim_error=None,
        time_s=np.array([0.0, seconds]), position=np.array([start.place, claim.place]),
        smoothing_s=smoothing_s, path_m=path_m, lost_m=lost_m, halted_s=halted_s, until_s=seconds,
    )  # fmt: skip


def box(out_m, back_m, start_s=100.0, end_s=200.0) -> Bypass:
    return Bypass(
        start_s=start_s, end_s=end_s, side="right", out_m=out_m, ahead_m=60.0, back_m=back_m,
        side_sd_m=3.0, equal=True,
    )  # fmt: skip


def test_speed_is_that_of_the_time_not_stood() -> None:
    assert walk(halted_s=100.0).speed_m_s == 500.0 / 400.0
    assert walking_speed(500.0, (100.0, 700.0), 100.0) == 1.0
    assert walking_speed(5.0, (100.0, 700.0), 600.0) == 5.0  # a second at least


def test_four_right_angles_of_a_bypass_are_given_back() -> None:
    """At a metre a second a width of 8 s is 8 m: each angle lost so many widths."""
    given_m = 4.0 * LEFT_OUT_M * 8.0
    found = with_corners(walk(), (box(40.0, 40.0),))
    assert found.path_m == pytest.approx(500.0 + given_m, rel=1e-4)
    assert found.lost_m == pytest.approx(50.0 - given_m, abs=0.01)
    # Of sides under two and a half widths the share.
    short = with_corners(walk(), (box(10.0, 5.0),))
    assert short.path_m == pytest.approx(500.0 + 2.0 * LEFT_OUT_M * (10.0 + 5.0) / 2.5, rel=1e-4)
    twice = with_corners(walk(), (box(40.0, 40.0), box(40.0, 40.0)))
    assert twice.path_m == pytest.approx(500.0 + 2.0 * given_m, rel=1e-4)
    assert with_corners(walk(lost_m=3.0), (box(40.0, 40.0),)).lost_m == 0.0
    faster = with_corners(walk(path_m=1000.0), (box(80.0, 80.0),))
    assert faster.path_m == pytest.approx(1000.0 + 2.0 * given_m, rel=1e-4)


def test_what_is_known_about_an_end_reaches_to_the_other_ends_of_the_legs_there() -> None:
    legs = [leg(n, 50.0 + 300.0 * n, 290.0 + 300.0 * n) for n in range(5)]
    start, claim = walk_of_leg._around(match_of(*legs), legs[2], 1.3, turned=False)
    assert (start.from_s, start.to_s, start.speed_m_s) == (350.0, 890.0, 1.3)
    assert (claim.from_s, claim.to_s, claim.speed_m_s) == (650.0, 1190.0, 1.3)
    first, _ = walk_of_leg._around(match_of(*legs), legs[0], 1.3, turned=False)
    _, last = walk_of_leg._around(match_of(*legs), legs[4], 1.3, turned=False)
    assert (first.from_s, last.to_s) == (-math.inf, math.inf)
    assert walk_of_leg._around(match_of(*legs), legs[2], 1.3, turned=True) == (start, None)


def test_a_leg_lasts_until_the_next_is_left_for() -> None:
    legs = leg(0, 100.0, 400.0), leg(1, 450.0, 700.0), leg(2, 700.0, 990.0)
    match = match_of(*legs)
    assert [walk_of_leg._until(match, one, 1200.0) for one in legs] == [450.0, 700.0, 1200.0]
    # Whoever walked a leg again before this one does not matter.
    assert walk_of_leg._until(match_of(leg(0, 500.0, 900.0), leg(1, 10.0, 300.0)),
                              leg(0, 500.0, 900.0), 999.0) == 999.0  # fmt: skip


def test_time_stood_on_a_leg_is_what_halts_share_with_it() -> None:
    halts = np.array([[0.0, 110.0], [200.0, 230.0], [390.0, 500.0], [600.0, 700.0]])
    assert walk_of_leg._halted_within(halts, 100.0, 400.0) == 10.0 + 30.0 + 10.0


def test_smoothing_goes_with_the_noise_within_its_range() -> None:
    s = SETTINGS.measuring
    for noise_m, width_s in ((0.5, 5.0), (4.0, 10.0), (30.0, 25.0)):
        assert walk_of_leg._smoothing_s(noise_m, s) == width_s
    # Known within a factor: exp(s^2) times its middle is the root of its mean square.
    logs = np.random.default_rng(1).normal(0.0, SETTINGS.heading.noise_log_sd, 200_000)
    likely_m = walk_of_leg._likely_noise_m(4.0, SETTINGS)
    assert likely_m == pytest.approx(4.0 * math.sqrt(np.exp(2.0 * logs).mean()), rel=0.02)


def around_a_corner(step_s=2.0):
    """Two hundred metres east, two hundred north, a metre a second."""
    along = np.arange(0.0, 401.0, step_s)
    return np.column_stack([np.minimum(along, 200.0), np.maximum(along - 200.0, 0.0)])


@pytest.mark.parametrize("step_s", [1.0, 2.0])
def test_a_corner_loses_so_many_widths_of_smoothing(step_s) -> None:
    way = around_a_corner(step_s)
    moving = np.zeros(len(way), dtype=bool)
    path_m, lost_m = walk_of_leg._walked_and_lost(way, moving, step_s, 10.0, 0.0)
    assert path_m == pytest.approx(400.0 - LEFT_OUT_M * 10.0, abs=0.15)
    assert lost_m == pytest.approx(LEFT_OUT_M * 10.0, rel=0.03)
    straight = np.column_stack([np.arange(0.0, 401.0, step_s), np.zeros(len(way))])
    path_m, lost_m = walk_of_leg._walked_and_lost(straight, moving, step_s, 10.0, 20.0)
    assert (path_m, lost_m) == (pytest.approx(400.0), pytest.approx(0.0, abs=1e-9))


def test_what_was_seen_is_not_smoothed_into_a_silence() -> None:
    """Bug: the last samples before a silence were drawn out towards the place that was reckoned
    in it, as if that were one step away: the last by half of 300 m."""
    seen = np.column_stack([np.arange(0.0, 101.0, 2.0), np.zeros(51)])
    rough = np.vstack([seen, [[400.0, 0.0]]])
    time_s = np.append(seen[:, 0], 400.0)
    silences = walk_of_leg._silences_in(time_s, 2.0)
    assert silences.tolist() == [51]
    assert walk_of_leg._smoothed_apart(rough, 5.0, silences) == pytest.approx(rough)
    # What lies in it is walked straight, and nothing is lost of it.
    halted = np.zeros(len(rough), dtype=bool)
    found = walk_of_leg._walked_and_lost(rough, halted, 2.0, 10.0, 2.0, silences)
    assert found == (pytest.approx(400.0), pytest.approx(0.0, abs=1e-6))
    # Ends that lie within a step of the next sample are no silence.
    assert walk_of_leg._silences_in(np.array([0.0, 0.5, 2.5, 4.5, 6.0]), 2.0).tolist() == []


def test_what_straight_lines_between_fixes_cut_off_is_given_back() -> None:
    """Lines over 30 s smooth like a triangle of that half-width, a deviation of 30 / sqrt 6: the
    path is the same as with a fix a second, whose 10 s of smoothing cut off what they did."""
    rates = []
    for every_s in (1.0, 20.0, 30.0):
        # Whatever moment the fixes fall on.
        paths = []
        for begun_s in np.arange(0.0, every_s, max(every_s / 10.0, 1.0)):
            fixes_s = np.concatenate([[0.0], np.arange(begun_s + 1e-6, 400.0, every_s), [400.0]])
            at = [np.minimum(fixes_s, 200.0), np.maximum(fixes_s - 200.0, 0.0)]
            second_s = np.arange(0.0, 401.0)
            way = np.column_stack([np.interp(second_s, fixes_s, axis) for axis in at])
            still = np.zeros(len(way), dtype=bool)
            paths.append(walk_of_leg._walked_and_lost(way, still, 1.0, 10.0, every_s)[0])
        rates.append(np.mean(paths))
    assert rates == pytest.approx([rates[0]] * 3, abs=0.6)


def test_what_a_receiver_wanders_in_a_halt_is_no_way() -> None:
    way = np.column_stack([np.arange(0.0, 101.0), np.zeros(101)])
    wandered = np.concatenate(
        [way, way[-1] + [[0.0, 8.0], [8.0, 0.0]] * 30, way + np.array([100.0, 0.0])]
    )
    halted = np.zeros(len(wandered), dtype=bool)
    halted[101:161] = True
    path_m, _ = walk_of_leg._walked_and_lost(wandered, halted, 1.0, 0.1, 0.0)
    # Into the halt and out of it is walked.
    assert path_m == pytest.approx(200.0 + 8.0 + 8.0)


HALTED = clean_of(np.arange(0.0, 1001.0), np.column_stack([np.arange(0.0, 1001.0), np.zeros(1001)]))


def stops(*halts, bypasses=(), times_s=(100.0, 900.0)):
    found = find_sighting_stops(
        HALTED, np.array(halts, dtype=np.float64).reshape(-1, 2), times_s, bypasses, 3.0, SETTINGS
    )
    return [(one.start_s, one.end_s) for one in found]


def test_a_stop_on_the_way_is_a_quarter_of_a_minute_from_both_ends() -> None:
    assert stops((116, 130), (500, 520), (870, 884)) == [(116, 130), (500, 520), (870, 884)]
    assert stops((115, 130), (870, 885)) == []
    assert stops() == []


def test_a_halt_at_a_bypass_is_none_and_one_beside_it_is() -> None:
    around = (box(40.0, 40.0, 400.0, 600.0),)
    assert stops((450, 470), bypasses=around) == []
    assert stops((380, 400), bypasses=around) == stops((600, 620), bypasses=around) == []
    beside = [(300, 320), (700, 720)]
    assert stops(*beside, bypasses=around) == beside


def test_the_turn_at_a_stop_is_from_the_stop_before_to_the_stop_after(monkeypatch) -> None:
    third = SimpleNamespace(azimuth=GridAzimuth(90.0), sd_deg=3.0)
    turned = SimpleNamespace(azimuth=GridAzimuth(97.0), sd_deg=4.0)
    asked = Mock(side_effect=[third, turned, turned])
    monkeypatch.setattr(sighting_stops, "stretch_heading", asked)
    (one, _) = find_sighting_stops(
        HALTED, np.array([[300.0, 320.0], [600.0, 620.0]]), (100.0, 900.0), (), 3.0, SETTINGS
    )
    assert [call.args[1] for call in asked.call_args_list] == [
        (100.0, 300.0),
        (320.0, 600.0),
        (620.0, 900.0),
    ]
    assert (one.turn_deg, one.turn_sd_deg) == (7.0, pytest.approx(5.0))
