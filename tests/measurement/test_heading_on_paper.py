"""What a walked heading is reckoned from: fixes chosen, stretches left out, other readings."""

from __future__ import annotations

import math
from dataclasses import replace
from types import SimpleNamespace
from unittest.mock import Mock

import numpy as np
import pytest
from measurement.hand_made import SETTINGS, clean_of

from audit.matching.leg_match import LegMatch, RunnerUp
from audit.measurement import walked_heading
from audit.measurement.claims import SightBend
from audit.measurement.leg_details import Bypass, CutError
from audit.measurement.places import Fixed
from audit.statistics.chord_regression import Asides, Step

S = SETTINGS.heading
WIDE_S = 8.0


def fixed(time_s, east_m=0.0, north_m=0.0, sd_m=3.0, halt_s=None) -> Fixed:
    halt_s = halt_s or (time_s, time_s)
    return Fixed(time_s=time_s, east_m=east_m, north_m=north_m, sd_m=sd_m, halt_s=halt_s)


def walked(*corners, every_s=1.0):
    """Fixes of a way through (second, east, north), straight and even between them."""
    known_s, east, north = np.array(corners, dtype=np.float64).T
    time_s = np.arange(known_s[0], known_s[-1] + 1e-9, every_s)
    place = [np.interp(time_s, known_s, axis) for axis in (east, north)]
    return clean_of(time_s, np.column_stack(place))


STANDING = walked((0, 0, 0), (4000, 0, 0))


def test_fixes_are_a_quarter_of_a_minute_apart_from_halt_to_halt() -> None:
    chosen = walked_heading._fixes(
        STANDING, fixed(100.0, halt_s=(40.0, 100.0)), fixed(400.0, halt_s=(400.0, 460.0)), S
    )
    assert chosen.tolist() == list(range(40, 461, 15))
    # Where the averaged part of a halt lies on the leg, the leg begins and ends as it does.
    inner = walked_heading._fixes(
        STANDING, fixed(100.0, halt_s=(110.0, 150.0)), fixed(400.0, halt_s=(350.0, 390.0)), S
    )
    assert inner.tolist() == list(range(100, 401, 15))


def test_no_more_than_forty_fixes_of_a_leg_and_fourteen_of_a_halt() -> None:
    chosen = walked_heading._fixes(
        STANDING, fixed(900.0, halt_s=(0.0, 900.0)), fixed(3000.0, halt_s=(3000.0, 3900.0)), S
    )
    assert (chosen < 900).sum() == (chosen > 3000).sum() == 13  # and the ends, of the leg too
    assert ((chosen >= 900) & (chosen <= 3000)).sum() == 40
    assert (chosen[0], chosen[-1]) == (0, 3900)


def test_a_stretch_without_a_fix_gives_none_and_a_short_one_its_fixes() -> None:
    sparse = walked((0, 0, 0), (600, 600, 0), every_s=60.0)
    assert walked_heading._evenly(sparse, 70.0, 110.0, 5).tolist() == []
    assert walked_heading._evenly(sparse, 60.0, 180.0, 9).tolist() == [1, 2, 3]
    assert walked_heading._evenly(sparse, 60.0, 540.0, 3).tolist() == [1, 5, 9]


def test_fixes_within_a_step_aside_are_left_out_its_ends_kept() -> None:
    aside = Asides(
        steps=(
            Step(begin_s=50.0, end_s=80.0, out_m=10.0),
            Step(begin_s=150.0, end_s=160.0, out_m=10.0),
        )
    )
    index = np.arange(100, 301, 10)
    kept = walked_heading._outside(STANDING, index, 100.0, aside)
    assert kept.tolist() == [*range(100, 151, 10), *range(180, 251, 10), *range(260, 301, 10)]


@pytest.mark.parametrize(("begin_s", "end_s"), [(100.0, 200.0), (-50.0, 100.0), (200.0, 999.0)])
def test_the_pace_of_straight_walking_is_that_outside_of_steps_aside(begin_s, end_s) -> None:
    """A metre a second for 200 s, and 30 m on in the 100 s of the step: 300 m, had it been none."""
    first_s, last_s = max(begin_s, 0.0), min(end_s, 300.0)
    clean = walked((1000, 0, 0), (1000 + first_s + 1e-6, first_s, 0),
                   (1000 + last_s, first_s + 30, 0), (1300 + 1e-6, 230, 0))  # fmt: skip
    length_m = walked_heading._at_the_pace_of_straight_walking(
        clean, fixed(1000.0), 230.0, np.array([1.0, 0.0]), 300.0,
        Asides(steps=(Step(begin_s=begin_s, end_s=end_s, out_m=10.0),)),
    )  # fmt: skip
    assert length_m == pytest.approx(300.0, abs=1e-3)


def test_where_all_was_aside_half_the_usual_pace_is_the_least() -> None:
    clean = walked((1000, 0, 0), (1300, 230, 0))
    for steps, length_m in (((), 230.0), ((Step(begin_s=0.0, end_s=300.0, out_m=10.0),), 115.0)):
        assert walked_heading._at_the_pace_of_straight_walking(
            clean, fixed(1000.0), 230.0, np.array([1.0, 0.0]), 300.0, Asides(steps=steps)
        ) == pytest.approx(length_m)


def headed(clean, start, claim):
    return walked_heading.measure_heading(clean, start, claim, 3.0, S)


def test_places_nearer_than_ten_metres_have_no_heading() -> None:
    clean = walked((0, 0, 0), (600, 600, 0))
    for length_m, duration_s, known in ((10.0, 100.0, True), (9.9, 100.0, False),
                                        (400.0, 0.0, False)):  # fmt: skip
        found = headed(clean, fixed(100.0), fixed(100.0 + duration_s, east_m=length_m))
        assert (found.sd_deg == pytest.approx(180.0 / math.sqrt(3.0), abs=0.1)) is not known
        if not known:
            assert (found.low_deg, found.high_deg) == (0.0, pytest.approx(360.0, abs=1e-6))
            assert found.azimuth.degrees == 90.0


@pytest.mark.parametrize("fixes", ["few", "at one end"])
def test_with_hardly_a_fix_between_the_ends_alone_show_the_direction(fixes) -> None:
    """Errors of 3 and 4 m at the ends are 5 m across the chord of 500 m."""
    clean = walked((0, 0, 0), (400, 300, 400), every_s=150.0)
    start, claim = fixed(0.0, sd_m=3.0), fixed(400.0, 300.0, 400.0, sd_m=4.0)
    if fixes == "at one end":
        clean = walked((0, 0, 0), (150, 30, 40))
    found = headed(clean, start, claim)
    chord_deg, sd_deg = math.degrees(math.atan2(3, 4)), math.degrees(5.0 / 500.0)
    assert found.azimuth.degrees == pytest.approx(chord_deg)
    assert found.sd_deg == pytest.approx(sd_deg)
    assert found.low_deg == pytest.approx(chord_deg - 1.96 * sd_deg)
    assert found.high_deg == pytest.approx(chord_deg + 1.96 * sd_deg)


@pytest.mark.parametrize("turn_deg", [0.0, 90.0, 200.0])
@pytest.mark.parametrize("away_m", [0.0, 5000.0])
def test_fixes_to_the_right_of_the_chord_turn_the_heading_to_the_right(turn_deg, away_m) -> None:
    """He held so much to the right, then his end turned out to lie on the chord; wherever it was."""
    angle = math.radians(turn_deg)

    def place(along, right):
        return (away_m + along * math.sin(angle) + right * math.cos(angle),
                2.0 * away_m + along * math.cos(angle) - right * math.sin(angle))  # fmt: skip

    bent = walked((600, *place(0, 0)), (750, *place(150, 6)), (900, *place(300, 12)))
    found = headed(bent, fixed(600.0, *place(0, 0)), fixed(900.0, *place(300, 0)))

    def turned(azimuth_deg):
        return (azimuth_deg - turn_deg + 180.0) % 360.0 - 180.0

    held = turned(found.azimuth.degrees)
    assert held == pytest.approx(math.degrees(math.atan2(12, 300)), abs=0.3)
    # As much is left open to either side.
    assert held - turned(found.low_deg) == pytest.approx(1.96 * found.sd_deg, rel=0.15)
    assert turned(found.high_deg) - held == pytest.approx(1.96 * found.sd_deg, rel=0.15)


def context_of(clean, *, bend=None, runner_up=None, samples=None):
    leg = LegMatch(leg=0, status="walked", start_s=0.0, claim_s=0.0, runner_up=runner_up)
    return SimpleNamespace(
        clean=clean,
        bends={} if bend is None else {0: bend},
        match=SimpleNamespace(legs=[leg]),
        settings=SETTINGS,
        sampled=SimpleNamespace(samples=samples),
    )


def walk_to(east_m, north_m, *, time_s=420.0, errors=("halt", "halt"), sds_s=(4.0, 4.0)):
    made = [
        CutError(marked_by=by, time_sd_s=sd_s, along_sd_m=0.0, place_sd_m=3.0)
        for by, sd_s in zip(errors, sds_s, strict=True)
    ]
    return SimpleNamespace(
        leg=0,
        start=fixed(0.0),
        claim=fixed(time_s, east_m, north_m),
        chord_deg=math.degrees(math.atan2(east_m, north_m)) % 360.0,
        start_error=made[0],
        claim_error=made[1],
        smoothing_s=WIDE_S,
    )


HOOK = walked((0, 0, 0), (400, 400, 0), (420, 400, -20), (1000, 400, -20))
"""400 m east, then 20 m south to the point."""


def bend_at(probability):
    return SightBend(
        leg=0, probability=probability, turned_s=400.0, turned_sd_s=3.0, arrived_s=420.0
    )


def test_a_turn_to_the_point_that_is_less_probable_shifts_the_end_across() -> None:
    """Had he turned at 400 m, his end would lie left of the chord by 20 m, and seen from it
    by its length times tan(atan(20 / 400))."""
    chord_m = math.hypot(400.0, 20.0)
    hook, straight = walk_to(400.0, -20.0), walk_to(400.0, 0.0, time_s=400.0)
    (ends, portions) = walked_heading._other_ends(context_of(HOOK, bend=bend_at(0.3)), hook)
    assert portions == ()
    assert ends == ((0.3, pytest.approx(-chord_m * 20.0 / 400.0)),)
    # The other way round where the turn is the more probable one.
    (ends, _) = walked_heading._other_ends(context_of(HOOK, bend=bend_at(0.6)), straight)
    assert ends == ((pytest.approx(0.4), pytest.approx(400.0 * 20.0 / 400.0)),)
    (ends, _) = walked_heading._other_ends(context_of(HOOK, bend=bend_at(0.5)), hook)
    assert ends == ((0.5, pytest.approx(-chord_m * 20.0 / 400.0)),)


@pytest.mark.parametrize(("chance", "told"), [(0.02, True), (0.01, False), (0.99, False)])
def test_what_is_less_probable_than_one_in_fifty_is_left_out(chance, told) -> None:
    (ends, _) = walked_heading._other_ends(
        context_of(HOOK, bend=bend_at(chance)), walk_to(400.0, -20.0)
    )
    assert bool(ends) is told


def other(start_s, claim_s, probability=0.2):
    return RunnerUp(status="walked", start_s=start_s, claim_s=claim_s, probability=probability)


@pytest.mark.parametrize("away_m", [0.0, 3000.0])
def test_the_runner_up_of_the_match_is_another_portion(away_m) -> None:
    hook = replace(HOOK, east_m=HOOK.east_m + away_m, north_m=HOOK.north_m - away_m)
    walk = walk_to(400.0, 0.0, time_s=400.0)
    walk.start, walk.claim = fixed(0.0, away_m, -away_m), fixed(400.0, 400.0 + away_m, -away_m)

    def portions(runner_up):
        return walked_heading._other_ends(context_of(hook, runner_up=runner_up), walk)[1]

    assert portions(other(0.0, 420.0)) == ((0.2, pytest.approx(20.0)),)
    assert portions(other(0.0, 420.0, 0.7)) == ((0.5, pytest.approx(20.0)),)  # as likely at most
    assert portions(other(None, None)) == ()
    assert portions(other(420.0, 900.0)) == ()  # standing has no direction
    # South, and back west: beyond a right angle it is anywhere on that side.
    most_m = 400.0 * math.tan(math.radians(80.0))
    assert portions(other(400.0, 420.0)) == ((0.2, pytest.approx(most_m)),)
    assert portions(other(420.0, 0.0)) == ((0.2, pytest.approx(-most_m)),)


@pytest.mark.parametrize("hand", [1.0, -1.0])
@pytest.mark.parametrize("turn_deg", [0.0, 30.0, 250.0])
def test_an_end_on_a_bend_lies_across_by_what_its_moment_leaves_open(hand, turn_deg) -> None:
    """He comes across to the start, walks 400 m a metre a second and goes across from the claim,
    half as fast: the place so much earlier or later, sqrt(3) errors of time, counts a sixth, which is half the
    variance of a walk across at that speed."""
    angle = math.radians(turn_deg)
    time_s = np.arange(-100.0, 501.0)
    along = np.clip(time_s, 0.0, 400.0)
    right = 0.5 * hand * (np.minimum(time_s, 0.0) + np.maximum(time_s - 400.0, 0.0))
    east = 7000.0 + along * math.sin(angle) + right * math.cos(angle)
    north = 5000.0 + along * math.cos(angle) - right * math.sin(angle)
    samples = SimpleNamespace(time_s=time_s, smooth=np.column_stack([east, north]))
    context = context_of(STANDING, samples=samples)
    for errors, square in (
        (("way", "halt"), 36.0), (("halt", "way"), 64.0), (("way", "way"), 100.0),
        (("way", "turn to the point"), 100.0), (("halt", "halt"), 0.0),
    ):  # fmt: skip
        end = (400.0 * math.sin(angle), 400.0 * math.cos(angle))
        walk = walk_to(*end, time_s=400.0, errors=errors, sds_s=(6.0, 8.0))
        found_m = walked_heading._ends_sd(context, walk)
        assert found_m == pytest.approx(0.5 * math.sqrt(square / 2.0), abs=1e-9)


def aside(start_s, end_s, out_m, side="right", *, slanted=False) -> Bypass:
    return Bypass(
        start_s=start_s, end_s=end_s, side=side, out_m=out_m, ahead_m=20.0, back_m=0.0,
        side_sd_m=3.0, equal=False, returned=False, slanted=slanted,
    )  # fmt: skip


def test_slants_may_have_been_wandering_or_as_many_were_not_seen() -> None:
    right, left = aside(0, 10, 10.0, slanted=True), aside(50, 60, 4.0, "left", slanted=True)
    plain = aside(90, 99, 50.0)
    assert walked_heading._slants_left((right, left, plain), 0.2) == ((0.2, 6.0), (0.2, -6.0))
    assert walked_heading._slants_left((left,), 0.2) == ((0.2, -4.0), (0.2, 4.0))
    assert walked_heading._slants_left((plain,), 0.2) == ()


def test_a_bypass_is_left_out_with_what_smoothing_blurs_of_it(monkeypatch) -> None:
    asked = Mock()
    monkeypatch.setattr(walked_heading, "measure_heading", asked)
    walk = walk_to(400.0, -20.0)
    walk.start = fixed(30.0)
    context = context_of(HOOK, bend=bend_at(0.3), runner_up=other(0.0, 300.0, 0.1))
    slant = aside(130.0, 150.0, 10.0, slanted=True)
    walked_heading.walked_heading(context, walk, 4.0, (slant,))
    asides = asked.call_args.args[5]
    (step,) = asides.steps
    assert (step.begin_s, step.end_s, step.out_m) == (
        92.0,
        128.0,
        10.0,
    )  # 130 - 8 - 30, 150 + 8 - 30
    # A quarter of what is not given to other ends, to either reading of the slant.
    chances = [chance for chance, _ in asides.other_ends]
    assert chances == pytest.approx([0.3, 0.6 * 0.25, 0.6 * 0.25])
