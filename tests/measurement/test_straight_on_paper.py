"""Stretches of straight walking, thirds of a leg and steps aside, counted on paper."""

from __future__ import annotations

import math
from dataclasses import replace
from types import SimpleNamespace
from unittest.mock import Mock

import numpy as np
import pytest
from measurement.hand_made import SETTINGS, clean_of

from audit.azimuths import GridAzimuth
from audit.measurement import slants, thirds, ways_aside
from audit.measurement.leg_details import Bypass
from audit.measurement.places import Fixed
from audit.measurement.slants import find_slants
from audit.measurement.straight_walking import straight_stretches, wander_of
from audit.measurement.thirds import measure_thirds
from audit.measurement.ways_aside import find_ways_aside
from audit.statistics.steps_aside import StepAside

NOISE, ASIDE, SLANTS = SETTINGS.noise, SETTINGS.aside, SETTINGS.slants
BEGUN_S = 40_000.0
NO_HALTS = np.empty((0, 2))
RECEIVER = SimpleNamespace(noise_m=3.0, correlation_s=60.0)


def along(seconds, azimuth_deg=90.0, every_s=1.0, across=None, gaps=()):
    """A metre a second on one bearing, and so far to the right of it, far from any origin."""
    time_s = np.arange(0.0, seconds + 1e-9, every_s)
    right = np.zeros(len(time_s)) if across is None else across(time_s)
    angle = math.radians(azimuth_deg)
    east = 5000.0 + time_s * math.sin(angle) + right * math.cos(angle)
    north = 7000.0 + time_s * math.cos(angle) - right * math.sin(angle)
    return clean_of(time_s, np.column_stack([east, north]), gaps=gaps)


def stretches(clean, walks, halts=()):
    """First and last moment of each; on a clock that began long ago."""
    gaps = tuple(
        replace(gap, start_s=gap.start_s + BEGUN_S, end_s=gap.end_s + BEGUN_S) for gap in clean.gaps
    )
    clean = replace(clean, time_s=clean.time_s + BEGUN_S, gaps=gaps)
    walks = [(begun + BEGUN_S, ended + BEGUN_S) for begun, ended in walks]
    found = straight_stretches(clean, walks, np.array(halts).reshape(-1, 2) + BEGUN_S, NOISE)
    return [(one.time_s[0] - BEGUN_S, one.time_s[-1] - BEGUN_S) for one in found]


@pytest.mark.parametrize("azimuth_deg", [0.0, 90.0, 233.0])
def test_a_stretch_is_seen_from_its_own_chord(azimuth_deg) -> None:
    clean = along(200, azimuth_deg, every_s=12.5, across=lambda t: 5.0 * (t == 12.5))
    (one,) = straight_stretches(clean, [(0.0, 200.0)], NO_HALTS, NOISE)
    assert one.time_s == pytest.approx(clean.time_s)
    assert one.speed_m_s == pytest.approx(1.0)
    assert one.across_m == pytest.approx(5.0 * (one.time_s == 12.5), abs=1e-6)


def test_a_long_walk_is_cut_into_equal_pieces_of_five_minutes_at_most() -> None:
    clean = along(700, every_s=5.0)
    pieces = stretches(clean, [(0.0, 700.0)])
    assert len(pieces) == 3
    for first_s, last_s in pieces:
        assert 215.0 < last_s - first_s <= 700.0 / 3.0
    assert len(stretches(clean, [(0.0, 600.0)])) == 2


def test_halts_and_silences_part_stretches_and_the_longest_comes_first() -> None:
    clean = along(900, every_s=12.5, gaps=(32,))  # silent from 400 to 412.5 s
    parted = stretches(clean, [(0.0, 250.0), (300.0, 900.0)], [(100.0, 125.0), (650.0, 700.0)])
    assert parted == [(412.5, 650.0), (700.0, 900.0), (125.0, 250.0), (0.0, 100.0), (300.0, 400.0)]
    # A halt before or after the walk does not.
    assert stretches(clean, [(500.0, 600.0)], [(475.0, 500.0), (600.0, 625.0)]) == [(500.0, 600.0)]
    # One that a walk begins or ends in shortens it.
    assert stretches(clean, [(500.0, 600.0)], [(575.0, 700.0)]) == [(500.0, 575.0)]
    assert stretches(clean, [(500.0, 600.0)], [(450.0, 525.0)]) == [(525.0, 600.0)]


def test_a_stretch_lasts_a_minute_and_is_sixty_metres_long() -> None:
    clean = along(300, every_s=12.0)
    assert stretches(clean, [(0.0, 60.0)]) == [(0.0, 60.0)]
    assert stretches(clean, [(0.5, 60.0)]) == []
    slow = clean_of(clean.time_s, np.column_stack([0.5 * clean.time_s, 0.0 * clean.time_s]))
    assert stretches(slow, [(0.0, 120.0)]) == [(0.0, 120.0)]
    assert stretches(slow, [(0.0, 110.0)]) == []


def test_six_fixes_ten_seconds_apart_are_enough() -> None:
    assert stretches(along(300, every_s=12.0), [(0.0, 60.0)]) == [(0.0, 60.0)]
    assert stretches(along(300, every_s=15.0), [(0.0, 60.0)]) == []  # five
    # Of 66 fixes a second apart every eleventh: six of them, to 55 s.
    assert stretches(along(300), [(0.0, 65.0)]) == []  # 55 m
    assert stretches(along(300), [(0.0, 71.0)]) == [(0.0, 66.0)]


@pytest.mark.parametrize("hand", [1.0, -1.0])
@pytest.mark.parametrize(("off_deg", "straight"), [(50.0, True), (60.0, False)])
def test_a_way_that_goes_off_by_more_than_55_degrees_is_not_straight(
    off_deg, straight, hand
) -> None:
    """Off for 25 m in the middle, and back again."""
    off_m = 25.0 * math.tan(math.radians(off_deg))

    def bump(time_s):
        return hand * np.interp(time_s, [100.0, 125.0, 175.0, 200.0], [0.0, off_m, off_m, 0.0])

    assert bool(stretches(along(300, 40.0, 12.5, bump), [(0.0, 300.0)])) is straight


def test_wandering_goes_with_the_speed() -> None:
    """Seven degrees of wandering are so many radians of the speed, a factor of exp 0.6 a deviate."""
    wander = wander_of(SimpleNamespace(speed_m_s=2.0), SETTINGS.heading)
    assert wander.speeds_m_s == pytest.approx(
        [2.0 * math.radians(7.0) * math.exp(0.6 * d) for d in (-1.8, -0.9, 0.0, 0.9, 1.8)]
    )
    normal = np.exp(wander.log_prior)
    assert normal == pytest.approx([math.exp(-0.5 * d * d) for d in (-1.8, -0.9, 0, 0.9, 1.8)])


def leg(time_s, position) -> SimpleNamespace:
    ends = [
        Fixed(time_s=t, east_m=p[0], north_m=p[1], sd_m=3.0, halt_s=(t, t))
        for t, p in ((time_s[0], position[0]), (time_s[-1], position[-1]))
    ]
    chord = position[-1] - position[0]
    return SimpleNamespace(
        time_s=time_s, position=position, times_s=(time_s[0], time_s[-1]), start=ends[0],
        claim=ends[1], chord_deg=math.degrees(math.atan2(*chord)) % 360.0,
        start_error=SimpleNamespace(marked_by="halt"), claim_error=SimpleNamespace(marked_by="way"),
    )  # fmt: skip


def test_thirds_are_of_the_way_not_of_the_time(monkeypatch) -> None:
    """Half as fast beyond the middle: 300 m in 450 s; thirds end at 100 s and at 250 s."""
    third = SimpleNamespace(azimuth=GridAzimuth(90.0), sd_deg=3.0)
    turned = SimpleNamespace(azimuth=GridAzimuth(97.0), sd_deg=4.0)
    asked = Mock(side_effect=[third, turned] * 2)
    monkeypatch.setattr(thirds, "stretch_heading", asked)
    time_s = np.arange(0.0, 451.0, 10.0)
    east = np.minimum(time_s, 150.0) + 0.5 * np.maximum(time_s - 150.0, 0.0)
    walk = leg(time_s, np.column_stack([east, np.zeros(len(east))]))
    found = measure_thirds(None, walk, 3.0, SETTINGS.heading)
    assert [call.args[1] for call in asked.call_args_list] == [
        (0.0, pytest.approx(100.0)),
        (pytest.approx(250.0), 450.0),
    ]
    assert (found.drift_deg, found.drift_sd_deg) == (7.0, pytest.approx(5.0))
    for length_m, told in ((60.0, True), (59.0, False)):
        short = leg(np.array([0.0, 50.0]), np.array([[0.0, 0.0], [length_m, 0.0]]))
        assert (measure_thirds(None, short, 3.0, SETTINGS.heading) is not None) is told


def stepped(*pieces, start=(5000.0, 7000.0)):
    """Go so many metres on so many degrees, a place every metre, a metre a second."""
    here, places = np.array(start), [np.array(start)]
    for azimuth, metres in pieces:
        ahead = np.array([math.sin(math.radians(azimuth)), math.cos(math.radians(azimuth))])
        places += [here + ahead * step for step in range(1, metres + 1)]
        here = places[-1]
    return 100.0 + np.arange(len(places)), np.array(places)


def aside(*pieces, noise_m=3.0, taken=()):
    return find_ways_aside(*stepped(*pieces), noise_m, taken, ASIDE)


@pytest.mark.parametrize("heading", [0.0, 90.0, 321.0])
@pytest.mark.parametrize(("hand", "side"), [(1, "right"), (-1, "left")])
def test_a_way_across_is_an_obstacle_passed_on_that_side(heading, hand, side) -> None:
    (one,) = aside((heading, 180), (heading + 70 * hand, 30), (heading, 180))
    assert (one.start_s, one.end_s, one.side) == (280.0, 310.0, side)
    assert one.out_m == pytest.approx(30.0 * math.sin(math.radians(70.0)))
    assert one.ahead_m == pytest.approx(30.0 * math.cos(math.radians(70.0)))
    assert (one.back_m, one.side_sd_m, one.returned, one.equal) == (0.0, 3.0, False, False)


def test_its_bends_belong_to_a_way_across() -> None:
    """Two fifths of the least turn, 25 degrees, are ten: 15 lean its way, 9 and 15 left do not."""
    for bends, begun_s, ended_s in (
        ((15, 15), 276.0, 315.0), ((9, 9), 280.0, 310.0), ((-15, -15), 280.0, 310.0),
    ):  # fmt: skip
        (one,) = aside((90, 176), (90 + bends[0], 4), (170, 30), (90 + bends[1], 5), (90, 180))
        assert (one.start_s, one.end_s) == (begun_s, ended_s)


def test_what_reaches_to_an_end_of_the_leg_may_be_the_turn_there() -> None:
    assert aside((170, 30), (90, 300)) == []
    assert aside((90, 300), (170, 30)) == []
    assert len(aside((90, 1), (170, 30), (90, 300))) == 1
    assert len(aside((90, 300), (170, 30), (90, 1))) == 1


def test_what_is_part_of_a_bypass_is_told_with_it() -> None:
    way = (90, 180), (170, 30), (90, 180)
    for taken in ((100, 181), (209, 300), (190, 200)):
        assert aside(*way, taken=[taken]) == []
    for taken in ((100, 180), (210, 300)):
        assert len(aside(*way, taken=[taken])) == 1


def test_a_way_aside_leads_seven_metres_out_and_twice_the_noise() -> None:
    assert len(aside((90, 180), (180, 8), (90, 180), noise_m=3.9)) == 1
    assert aside((90, 180), (180, 8), (90, 180), noise_m=4.1) == []
    assert aside((90, 180), (180, 6), (90, 180), noise_m=0.5) == []


def test_a_slant_is_none_here() -> None:
    """An arcsine of 0.85 is 58 degrees."""
    assert len(aside((90, 180), (150, 30), (90, 180))) == 1
    assert aside((90, 180), (146, 30), (90, 180)) == []


def test_a_way_aside_stands_out_from_how_the_walker_wanders() -> None:
    """Three of his standard errors, each 1.4826 times what half of his turns keep within."""
    for half_deg, found in ((10, 1), (25, 0)):  # 44 degrees, and 111
        winding = [(90 + half_deg * turn, 3) for turn in (0, 1, 2, 1, 0, -1, -2, -1, 0) * 6]
        assert len(aside(*winding, (180, 30), *winding)) == found


def test_standing_has_no_direction() -> None:
    time_s, place = np.arange(10.0), np.zeros((10, 2))
    assert find_ways_aside(time_s, place, 3.0, (), ASIDE) == []
    time_s, place = stepped((0, 180), (90, 30), (0, 180))
    stood = np.insert(place, 195, [place[195]] * 5, axis=0)
    found = find_ways_aside(np.arange(len(stood), dtype=float), stood, 3.0, (), ASIDE)
    assert [one.side for one in found] in (["right"], ["right", "right"])
    assert sum(one.out_m for one in found) == pytest.approx(30.0, abs=1.0)


def test_the_direction_held_is_the_middle_one() -> None:
    off = ways_aside._off_the_held(
        np.array([350.0, 10.0, 10.0, 10.0, 80.0]), np.ones(5, dtype=bool)
    )
    assert off == pytest.approx([-20.0, 0.0, 0.0, 0.0, 70.0])
    still = np.array([True, True, True, True, False])
    off = ways_aside._off_the_held(np.array([350.0, 350.0, 350.0, 10.0, 200.0]), still)
    assert off == pytest.approx([0.0, 0.0, 0.0, 20.0, -150.0])


def seen(clean, times_s=(100.0, 400.0), halts=()):
    walk = leg(np.array(times_s), np.column_stack(
        [np.interp(times_s, clean.time_s, axis) for axis in (clean.east_m, clean.north_m)]
    ))  # fmt: skip
    return slants._seen_across(clean, walk, np.array(halts).reshape(-1, 2), RECEIVER, SLANTS)


@pytest.mark.parametrize("azimuth_deg", [0.0, 90.0, 233.0])
def test_slants_are_looked_for_across_the_chord(azimuth_deg) -> None:
    clean = along(600, azimuth_deg, 10.0, lambda t: 12.0 * ((t > 200.0) & (t < 300.0)))
    found = seen(clean)
    assert found.time_s.tolist() == list(range(110, 400, 10))
    inside = (found.time_s > 200.0) & (found.time_s < 300.0)
    assert found.across_m == pytest.approx(12.0 * inside, abs=1e-6)
    assert found.speed_m_s == pytest.approx(1.0)
    assert found.walking_s == pytest.approx(found.time_s - 100.0)
    assert (found.noise_m, found.correlation_s) == (3.0, 60.0)


def test_halts_on_the_leg_are_left_out_of_its_time() -> None:
    def stood(clean, *halts):
        still = sum(np.clip(clean.time_s - begun, 0.0, ended - begun) for begun, ended in halts)
        return clean_of(clean.time_s, np.column_stack([clean.time_s - still, 0.0 * still]))

    clean = stood(along(600, every_s=10.0), (200.0, 230.0), (300.0, 320.0))
    found = seen(clean, halts=[(0.0, 100.0), (200.0, 230.0), (300.0, 320.0), (400.0, 600.0)])
    kept = [t for t in range(110, 400, 10) if not (200 < t < 230 or 300 < t < 320)]
    assert found.time_s.tolist() == kept
    assert found.walking_s[-1] == pytest.approx(290.0 - 30.0 - 20.0)
    assert found.walking_s[kept.index(230)] == found.walking_s[kept.index(200)] == 100.0
    assert found.speed_m_s == pytest.approx(1.0)


def test_of_dense_fixes_one_in_four_seconds_is_looked_at_and_220_in_all() -> None:
    found = seen(along(600))
    assert found.time_s.tolist() == [101.0, *range(104, 400, 4)]
    long = seen(along(2400), (100.0, 2300.0))
    assert np.diff(long.time_s)[1:].tolist() == [10.0] * (len(long.time_s) - 2)


def test_eight_fixes_of_a_walk_are_looked_at() -> None:
    assert seen(along(600, every_s=10.0), (100.0, 190.0)) is not None  # eight, ends left out
    assert seen(along(600, every_s=10.0), (100.0, 180.0)) is None
    assert seen(along(600), (100.0, 125.0)) is None  # of 24 fixes seven are four seconds apart
    creeping = along(600, every_s=10.0)
    for speed_m_s, walked in ((0.25, True), (0.15, False)):
        slow = clean_of(creeping.time_s, np.column_stack(
            [speed_m_s * creeping.time_s, 0.0 * creeping.time_s]))  # fmt: skip
        assert (seen(slow) is not None) is walked


def test_a_step_is_told_as_a_slant_beside_what_is_taken(monkeypatch) -> None:
    steps = [StepAside(begin_s=200.0, end_s=220.0, right_m=9.0),
             StepAside(begin_s=360.0, end_s=370.0, right_m=-7.0)]  # fmt: skip
    monkeypatch.setattr(slants, "find_steps", Mock(return_value=steps))
    clean = along(600, every_s=5.0)
    walk = leg(np.array([100.0, 400.0]), np.array([[5100.0, 7000.0], [5400.0, 7000.0]]))

    def told(*taken):
        made = [
            Bypass(start_s=a, end_s=b, side="right", out_m=9.0, ahead_m=9.0, back_m=9.0,
                   side_sd_m=3.0, equal=True)
            for a, b in taken
        ]  # fmt: skip
        found = find_slants(clean, walk, NO_HALTS, RECEIVER, made, SLANTS)
        return [(one.start_s, one.side, one.out_m, one.ahead_m) for one in found]

    right, left = (
        (200.0, "right", 9.0, pytest.approx(20.0)),
        (360.0, "left", 7.0, pytest.approx(10.0)),
    )
    assert told() == [right, left]
    assert told((180.0, 200.0), (370.0, 390.0)) == [right, left]  # they only touch
    assert told((219.0, 280.0)) == told((150.0, 201.0)) == told((150.0, 280.0)) == [left]
    (one, _) = find_slants(clean, walk, NO_HALTS, RECEIVER, [], SLANTS)
    assert (one.slanted, one.returned, one.equal, one.back_m, one.side_sd_m) == (
        True, False, False, 0.0, 3.0,
    )  # fmt: skip


@pytest.mark.parametrize("end", ["start_error", "claim_error"])
def test_of_a_leg_whose_end_was_reckoned_no_drift_is_told(end) -> None:
    """Bug: the straight line over the silence was taken for the way walked, and made a bend."""
    walk = leg(np.array([0.0, 50.0]), np.array([[0.0, 0.0], [400.0, 0.0]]))
    setattr(walk, end, SimpleNamespace(marked_by="reckoned"))
    assert measure_thirds(None, walk, 3.0, SETTINGS.heading) is None
