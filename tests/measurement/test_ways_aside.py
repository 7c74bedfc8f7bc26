"""Obstacles passed on one side, the line never regained: walked by hand, worked out on paper."""

from __future__ import annotations

from dataclasses import replace
from math import cos, radians, sin

import numpy as np
import pytest
from measurement.hand_made import HandWalk, card_of, kinds, measure, receiver

from audit.measurement.leg_details import Bypass
from audit.measurement.ways_aside import without_half_seen
from audit.settings import Settings
from audit.units import turn_degrees


def stepped(turn_deg: float, way_m: float, times: int = 1) -> HandWalk:
    """Due east for 180 m, aside, and due east again, so many times; then a halt."""
    walk = HandWalk().halt(60).mark("start").walk(90, 180)
    for _ in range(times):
        walk.walk(90 + turn_deg, way_m).walk(90, 180)
    return walk.mark("claim").halt(60)


def measured(walk: HandWalk, every_s: int = 1, noise=None):
    end = (walk.places[-1][0], walk.places[-1][1])
    found = measure(card_of((0, 0), end), walk.clean(every_s, noise), [walk.portion()], walk.halts)
    return found, found.legs[0].measures


@pytest.mark.parametrize("every_s", [1, 5])
@pytest.mark.parametrize(("turn_deg", "way_m"), [(45, 30), (-45, 30), (90, 40), (-90, 40)])
def test_a_step_out_of_the_line_is_told_and_left_out_of_the_heading(
    turn_deg, way_m, every_s
) -> None:
    found, leg = measured(stepped(turn_deg, way_m), every_s)
    (aside,) = leg.details.bypasses
    assert not aside.returned
    assert not aside.equal
    assert aside.back_m == 0.0
    assert aside.side == ("right" if turn_deg > 0 else "left")
    out_m = way_m * abs(sin(radians(turn_deg)))
    assert aside.out_m == pytest.approx(out_m, abs=0.12 * out_m)
    # He held due east; that his way led aside is no turn but a detour.
    assert abs(turn_degrees(90.0, leg.heading.azimuth.degrees)) < 0.6
    assert leg.ledger.detour[1] == pytest.approx(-np.sign(turn_deg) * out_m, abs=3.0)
    assert ("bypass", 0) in kinds(found)


def test_slants_leave_open_whether_they_were_wandering() -> None:
    """The interval holds both the direction held, and the one from start to claim."""
    walk = stepped(45, 30, times=2)
    chord_deg = float(np.degrees(np.arctan2(*walk.places[-1])))
    both = []
    for seed in range(10):
        _, leg = measured(walk, noise=receiver(seed, 1.5))
        both.append(leg.heading.low_deg < 90.0 < chord_deg < leg.heading.high_deg)
    assert sum(both) >= 8


def test_a_way_right_across_leaves_nothing_open() -> None:
    _, leg = measured(stepped(90, 40))
    assert leg.heading.high_deg - leg.heading.low_deg < 6.0


def test_a_box_is_no_step_aside() -> None:
    walk = HandWalk().halt(60).mark("start").walk(90, 180).walk(180, 30).walk(90, 60).walk(0, 30)
    _, leg = measured(walk.walk(90, 180).mark("claim").halt(60))
    (box,) = leg.details.bypasses
    assert box.returned
    assert box.equal


def test_a_bend_that_goes_on_is_none() -> None:
    """A hundred metres on another bearing is a stretch of its own, not a step."""
    walk = HandWalk().halt(60).mark("start").walk(90, 200).walk(130, 120).walk(90, 200)
    _, leg = measured(walk.mark("claim").halt(60))
    assert leg.details.bypasses == ()


def test_a_receiver_that_wanders_feigns_hardly_any() -> None:
    walk = HandWalk().halt(60).mark("start").walk(70, 500).mark("claim").halt(60)
    card = card_of((0, 0), (500 * sin(radians(70)), 500 * cos(radians(70))))
    feigned = 0
    for seed in range(40):
        clean = walk.clean(2, receiver(seed, 4.5, 40.0))
        feigned += len(
            measure(card, clean, [walk.portion()], walk.halts).legs[0].measures.details.bypasses
        )
    assert feigned <= 1


@pytest.mark.parametrize("turn_deg", [45, -45])
def test_a_way_round_at_a_slant_is_one_bypass(turn_deg) -> None:
    """Bug: out and back round a bush were two steps aside, "and not back to the line"."""
    walk = HandWalk().halt(60).mark("start").walk(90, 180).walk(90 + turn_deg, 30)
    walk.walk(90, 20).walk(90 - turn_deg, 30).walk(90, 180).mark("claim").halt(60)
    _, leg = measured(walk)
    (round_it,) = leg.details.bypasses
    assert round_it.returned
    assert round_it.side == ("right" if turn_deg > 0 else "left")
    out_m = 30.0 * sin(radians(45.0))
    assert round_it.out_m == pytest.approx(out_m, abs=0.15 * out_m)
    assert round_it.back_m == pytest.approx(out_m, abs=0.15 * out_m)
    assert abs(turn_degrees(90.0, leg.heading.azimuth.degrees)) < 0.6
    assert abs(leg.ledger.detour[1]) < 3.0
    # Back far on, it is two things passed, each on one side.
    far = HandWalk().halt(60).mark("start").walk(90, 180).walk(90 + turn_deg, 30)
    far.walk(90, 150).walk(90 - turn_deg, 30).walk(90, 180).mark("claim").halt(60)
    assert [one.returned for one in measured(far)[1].details.bypasses] == [False, False]


def test_back_some_eighty_metres_on_is_the_same_way_round() -> None:
    """Bug: out round a pond and back 80 m on was told as two things passed on one side."""
    walk = HandWalk().halt(60).mark("start").walk(90, 180).walk(135, 30).walk(90, 80)
    _, leg = measured(walk.walk(45, 30).walk(90, 180).mark("claim").halt(60))
    (round_it,) = leg.details.bypasses
    assert round_it.returned


def test_a_receiver_that_wanders_about_a_halt_leads_nobody_aside() -> None:
    """Bug: 20 m of wander at a map halt were "20 m aside over 2 m, and not back to the line"."""
    walk = HandWalk().halt(60).mark("start").walk(90, 300).mark("map").halt(100)
    walk = walk.walk(90, 300).mark("claim").halt(60)

    def wander(seconds: int) -> np.ndarray:
        """20 m north over the halt, and slowly back after it."""
        second = np.arange(seconds) - (walk.marks["map"] - walk.marks["start"] + 60.0)
        north = np.interp(second, [0.0, 100.0, 330.0], [0.0, 20.0, 0.0])
        return np.column_stack([np.zeros(seconds), north])

    found = measure(card_of((0, 0), (600, 0)), walk.clean(1, wander), [walk.portion()], ())
    assert found.legs[0].measures.details.bypasses == ()


@pytest.mark.parametrize(
    ("silence_s", "kept"),
    [
        ((100.0, 250.0), False),  # long enough for the way out, and ends 10 s before
        ((100.0, 120.0), True),  # over before, and too short
        ((230.0, 250.0), True),  # near, but nobody walks 40 m in it
        ((400.0, 600.0), True),  # begins long after
    ],
)
def test_a_way_back_out_of_a_silence_is_no_obstacle_passed_on_one_side(silence_s, kept) -> None:
    """Bug: a way out in a silence and the way back after it turned a straight leg by 7 degrees."""
    way_back = Bypass(
        start_s=260.0, end_s=300.0, side="right", out_m=40.0, ahead_m=10.0, back_m=0.0,
        side_sd_m=4.0, equal=False, returned=False,
    )  # fmt: skip
    settings = Settings().aside
    assert bool(without_half_seen([way_back], [silence_s], 1.2, settings)) is kept
    boxed = replace(way_back, returned=True)
    assert without_half_seen([boxed], [silence_s], 1.2, settings) == [boxed]
