"""What makes a spike: ways out and back, dashes, runs that touch, loose ends, on paper."""

from __future__ import annotations

import math

import numpy as np
import pytest

from audit.matching import clean_spikes
from audit.matching.clean_fixes import Fixes
from audit.matching.clean_loose_ends import loose_ends
from audit.matching.clean_spikes import spikes
from audit.matching.clean_steps import measure_steps
from audit.settings import CleaningSettings

S = CleaningSettings()


def walked(*steps, every_s=10.0, silent=()):
    """Fixes after steps of (east, north) metres; some of the steps last half an hour."""
    place = np.concatenate([[[3000.0, 8000.0]], np.array(steps, dtype=np.float64)])
    place = np.cumsum(place, axis=0)
    lasts = np.full(len(steps), every_s)
    lasts[list(silent)] = 1800.0
    number = np.arange(len(place))
    fixes = Fixes(
        fix=number, time_s=np.concatenate([[500.0], 500.0 + np.cumsum(lasts)]),
        east_m=place[:, 0], north_m=place[:, 1], segment=0 * number,
    )  # fmt: skip
    return fixes, measure_steps(fixes, S)


WAY = [(12.0, 0.0)] * 20
"""1.2 m/s: the brisk pace is that of a brisk walk, 1.6 m/s, and a step of 31 m is fast."""


def found(*middle, before=WAY, after=WAY, **known):
    fixes, steps = walked(*before, *middle, *after, **known)
    return (spikes(fixes, steps, S) - len(before)).tolist()


def test_a_fix_that_nobody_could_go_to_and_come_back_from_is_a_spike() -> None:
    """Fifteen metres and ten seconds of a brisk pace are 31 m, out and back."""
    assert found((0.0, 33.0), (12.0, -33.0)) == [1]
    assert found((0.0, 28.0), (12.0, -28.0)) == []  # 30.5 m back
    assert found((0.0, -90.0), (2.0, 3.0), (12.0, 87.0)) == [1, 2]
    five = [(0.0, 90.0), *[(2.0, 0.0)] * 4, (12.0, -90.0)]
    assert found(*five) == [1, 2, 3, 4, 5]
    assert found(five[0], (2.0, 0.0), *five[1:]) == []  # six fixes are a place


def test_a_spike_needs_both_sides_to_agree() -> None:
    assert found((0.0, 90.0), (12.0, -40.0)) == []
    assert found((0.0, 90.0)) == []
    # Over a silence within it nothing is known.
    assert found((0.0, 90.0), (2.0, 3.0), (12.0, -93.0), silent=[21]) == []


def test_a_spike_along_the_line_of_march_goes_out_fast_and_comes_back() -> None:
    """Out 50 m and back 26 m: the slower way is over 15 m, and more than six tenths of the pace."""
    assert found((50.0, 0.0), (-26.0, 0.0)) == [1]
    assert found((50.0, 0.0), (-14.0, 0.0)) == []
    assert found((50.0, 0.0), (26.0, 0.0)) == []


RUN = [(30.0, 0.0)] * 20
"""3 m/s: the brisk pace is 3.3 m/s, and a step of 48 m is fast."""


def test_what_just_could_be_walked_is_no_spike_on_either_side() -> None:
    """31 m in ten seconds could; a sixteenth of a metre more could not."""
    for out_m, back_m, spike in ((31.0, 33.0, []), (31.0625, 33.0, [1]), (33.0, 31.0, []),
                                 (33.0, 31.0625, [1])):  # fmt: skip
        # Out due north and back to the east, so that it is not turned back either.
        east_m = math.sqrt(back_m**2 - 36.0)
        steps = (0.0, out_m), (east_m, -6.0)
        lengths = [math.hypot(*step) for step in steps]
        assert lengths == pytest.approx([out_m, back_m], abs=1e-9)
        if back_m == 31.0:  # to the last digit
            steps = (0.0, out_m), (31.0, 0.0)
        if back_m == 31.0625:
            steps = (0.0, out_m), (31.0625, 0.0)
        assert found(*steps) == spike


def test_on_the_line_of_march_both_ways_together_are_longer_than_could_be_walked() -> None:
    """46 m out and 16 m back are 62 m, as twenty seconds allow; the lesser is over 15 m."""
    assert found((46.0, 0.0), (-16.0, 0.0)) == []
    assert found((46.0, 0.0), (-16.0625, 0.0)) == [1]
    assert found((48.0, 0.0), (-15.0, 0.0)) == []
    assert found((48.0, 0.0), (-15.0625, 0.0)) == [1]
    # Of a run at 3 m/s the lesser way is at least six tenths of 3.3 m/s.
    assert found((90.0, 0.0), (-19.5, 0.0), before=RUN, after=RUN) == []
    assert found((90.0, 0.0), (-20.0, 0.0), before=RUN, after=RUN) == [1]
    # Turned back is more than 120 degrees: here cosines of -0.4 and -0.6, 20 m back.
    assert found((46.0, 0.0), (-8.0, 18.33)) == []
    assert found((46.0, 0.0), (-12.0, 16.0)) == [1]


def worth(*middle, length):
    fixes, steps = walked(*WAY, *middle, *WAY)
    runs = clean_spikes._runs(fixes, steps, length, S)
    return dict(zip((runs.anchor - 20).tolist(), runs.worth_m.tolist(), strict=True)), runs.length


def test_a_spike_is_worth_what_goes_with_it_less_ten_metres_a_fix_more() -> None:
    """Beyond 31 m a step: 59 and 62 m, then 42 and 44 m with steps of 33 and 29 m between."""
    told, lengths = worth((0.0, 90.0), (0.0, -93.0), length=1)
    assert told == {0: pytest.approx(59.0 + 62.0)}
    assert lengths.tolist() == [1]
    told, lengths = worth((0.0, 73.0), (33.0, 0.0), (29.0, 0.0), (0.0, -75.0), length=3)
    assert told == {0: pytest.approx(42.0 + 2.0 + 44.0 - 2 * S.spike_fix_m)}
    assert lengths.tolist() == [3]
    # Along the march what one way has to spare is taken off.
    told, _ = worth((50.0, 0.0), (-26.0, 0.0), length=1)
    assert told == {0: pytest.approx(19.0)}


def dash(*steps, anchor, back):
    _, made = walked(*WAY, *steps, *WAY)
    at, home = np.array([anchor + 20]), np.array([back + 20])
    return bool(clean_spikes._dash(made, at, home, S)[0])


def test_who_runs_out_and_back_is_no_spike() -> None:
    """Two steps on and two steps home, about as fast and about as straight."""
    out, back = (0.0, 60.0), (0.0, -60.0)
    assert dash(out, out, back, back, anchor=1, back=2)
    assert not dash(out, back, anchor=0, back=1)
    assert not dash((0.0, 20.0), out, back, back, anchor=1, back=2)  # it jumps out at once
    assert not dash((60.0, 0.0), out, back, back, anchor=1, back=2)  # on in another direction
    assert not dash(out, out, back, (60.0, 0.0), anchor=1, back=2)
    fast = (0.0, 401.0), (0.0, -401.0)  # over 40 m/s
    assert not dash(fast[0], fast[0], fast[1], fast[1], anchor=1, back=2)
    limit = (0.0, 400.0), (0.0, -400.0)
    assert not dash(limit[0], limit[0], limit[1], limit[1], anchor=1, back=2)
    near = (0.0, 399.0), (0.0, -399.0)
    assert dash(near[0], near[0], near[1], near[1], anchor=1, back=2)
    # A longer run may go on beyond its first step.
    assert dash(out, out, (5.0, 0.0), back, back, anchor=0, back=4)


@pytest.mark.parametrize(("turn_deg", "goes_on"), [(0.0, True), (44.0, True), (46.0, False)])
@pytest.mark.parametrize(("speed", "keeps"), [(1.0, True), (0.51, True), (0.49, False)])
def test_a_step_goes_on_within_45_degrees_at_half_the_speed(
    turn_deg, goes_on, speed, keeps
) -> None:
    angle = math.radians(turn_deg)
    beside = (60.0 * speed * math.cos(angle), 60.0 * speed * math.sin(angle))
    _, made = walked((60.0, 0.0), beside)
    assert bool(clean_spikes._goes_on(made, np.array([0]), 1, S)[0]) is (goes_on and keeps)
    _, made = walked(beside, (60.0, 0.0))
    assert bool(clean_spikes._goes_on(made, np.array([1]), -1, S)[0]) is (goes_on and keeps)
    _, made = walked((60.0, 0.0), (30.0, 0.0))
    assert not clean_spikes._goes_on(made, np.array([0]), 1, S)[0]
    # Beside the first and the last there is none.
    ends = (
        clean_spikes._goes_on(made, np.array([0]), -1, S),
        clean_spikes._goes_on(made, np.array([1]), 1, S),
    )
    assert not any(bool(end[0]) for end in ends)


def best(*runs):
    """The best apart of (anchor, length, worth) runs."""
    anchor, length, worth = (np.array(column) for column in zip(*runs, strict=True))
    made = clean_spikes._Runs(anchor=anchor, length=length, worth_m=worth.astype(float))
    return clean_spikes._best_apart(made, 40).tolist()


def test_of_runs_that_touch_the_one_worth_most_is_taken() -> None:
    assert best((3, 1, 50), (10, 2, 20)) == [0, 1]
    assert best((3, 1, 50), (4, 1, 60)) == [1]
    assert best((3, 2, 50), (6, 1, 40)) == [0]  # the fix after the one is before the other
    assert best((3, 1, 50), (6, 1, 40)) == [0, 1]
    assert best((3, 1, 50), (3, 1, 50)) == [0]
    # One that is beaten still beats what it touches: it is looked at again afterwards.
    assert best((3, 2, 90), (6, 2, 60), (9, 2, 30)) == [0]


def test_runs_begin_before_a_fast_step_or_end_with_one() -> None:
    lengths = [(12.0, 0.0)] * 12
    lengths[5] = (90.0, 0.0)
    _, steps = walked(*lengths)
    for length, anchors in ((1, [4, 5]), (3, [2, 5]), (5, [0, 5]), (7, [])):
        assert clean_spikes._anchors(steps, length).tolist() == anchors
    assert clean_spikes._span(np.array([2, 7]), 2).tolist() == [[2, 3, 4], [7, 8, 9]]


def strays(*steps, silent=()):
    fixes, made = walked(*steps, silent=silent)
    return loose_ends(fixes, made, S).tolist()


def test_a_few_fixes_before_a_leap_at_the_start_or_after_one_at_the_end_are_strays() -> None:
    """Ten seconds at six metres a second, and fifteen metres: 75 m."""
    leap, short = (0.0, 200.0), (0.0, 74.0)
    assert strays(leap, *WAY) == [0]
    assert strays((3.0, 0.0), leap, *WAY) == [0, 1]
    assert strays(*WAY, leap) == [21]
    assert strays(*WAY, leap, (3.0, 0.0)) == [21, 22]
    assert strays(short, *WAY) == strays(*WAY, short) == []
    five = [(3.0, 0.0)] * 4
    assert strays(*five, leap, *WAY) == [0, 1, 2, 3, 4]
    assert strays(*five, (3.0, 0.0), leap, *WAY) == []  # six
    # The rest must be many: three times the longest run of strays.
    assert strays(leap, *WAY[:14]) == [0]
    assert strays(leap, *WAY[:13]) == []


def test_a_ride_that_goes_straight_on_is_none() -> None:
    leap = (0.0, 200.0)
    assert strays((0.0, 150.0), (0.0, 150.0), leap, *WAY) == []
    assert strays((0.0, 90.0), (0.0, 90.0), leap, *WAY) != []  # under half as fast
    assert strays((150.0, 0.0), (-150.0, 0.0), leap, *WAY) != []  # to and fro
    # Of 450 m walked there lead 270 m on, which is not four fifths; 390 m are.
    assert strays((150.0, 0.0), (-30.0, 146.97), (150.0, 0.0), leap, *WAY) != []
    assert strays((150.0, 0.0), (90.0, 120.0), (150.0, 0.0), leap, *WAY) == []
    # Nor where the next steps are half as fast as the leap.
    assert strays(leap, *[(0.0, 101.0)] * 6, *WAY) == []


def test_fixes_about_a_silence_are_strays_where_they_lie_far_from_its_other_side() -> None:
    leap = (0.0, 200.0)
    ends = len(WAY)
    assert strays(*WAY, leap, (900.0, 0.0), *WAY, silent=[ends + 1]) == [ends + 1]
    assert strays(*WAY, leap, (10.0, 0.0), *WAY, silent=[ends + 1]) == []
    assert strays(*WAY, (900.0, 0.0), leap, *WAY, silent=[ends]) == [ends + 1]
    assert strays(*WAY, (10.0, 0.0), leap, *WAY, silent=[ends]) == []
