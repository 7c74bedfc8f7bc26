"""A trend is told where it was planted, and not where chance alone was at work."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from school_records.attempts import DAY_S, attempt, leg, walks

from audit.reports.trend_words import attempt_rows, figure_rows
from audit.school_records.legs_that_count import once_each
from audit.school_records.work_out_trend import work_out_trend

SOMEBODY = "walker-00000000000000000000"


def trend(attempts):
    return work_out_trend(SOMEBODY, attempts)


def test_no_change_is_claimed_where_nothing_changes():
    rng = np.random.default_rng(11)
    claims, held = [], []
    for _ in range(200):
        made = walks(rng, 6, 5, bias=2.0)
        made += [
            replace(one, begun_s=one.begun_s + 9e6, ended_s=one.ended_s + 9e6)
            for one in walks(rng, 5, 5, bias=-1.0, light="night")
        ]
        found = trend(made)
        assert found.questions == 10
        day, night = found.lights
        carried = [figure.change.carried for of in (day, night) for figure in of.figures]
        claims.append(any(carried))
        held.append(day.heading.mean.low < 2.0 < day.heading.mean.high)
    assert np.mean(claims) <= 0.05 + 2 * 0.0154  # share of walkers; 0.0154 is its chance error
    assert np.mean(held) > 0.92


def test_a_planted_change_is_found_with_its_size():
    rng = np.random.default_rng(12)
    found = [trend(walks(rng, 10, 6, bias=9.0, drift=-0.9)).lights[0] for _ in range(40)]
    steps = [one.heading.change.step.value for one in found]
    assert np.mean(steps) == pytest.approx(-0.9, abs=0.1)  # deg an attempt
    assert np.mean([one.heading.change.carried for one in found]) > 0.8
    assert np.mean([one.heading_scatter.change.carried for one in found]) <= 0.05


def test_scatter_is_that_planted_less_what_measuring_adds():
    rng = np.random.default_rng(13)
    (day,) = trend(walks(rng, 60, 8, scatter=3.0)).lights
    scatter = day.heading_scatter.spread
    assert scatter.low < 3.0 < scatter.high
    assert scatter.value == pytest.approx(3.0, abs=0.25)  # deg
    assert day.distance_scatter.spread.value == pytest.approx(0.04, abs=0.006)


def test_with_few_attempts_nothing_is_said_of_change():
    rng = np.random.default_rng(14)
    three = trend(walks(rng, 3, 6, bias=10.0, drift=-5.0))
    assert three.lights[0].heading.change is None
    assert three.lights[0].heading.mean is not None
    assert three.questions == 0
    one = trend(walks(rng, 1, 1)).lights[0]
    assert one.heading.mean is None
    assert one.attempts[0].heading_scatter_deg is None
    # One leg: the usual scatter of walkers at large stands in for what it cannot show.
    assert one.attempts[0].heading_deg.error == pytest.approx(3.0, abs=1e-9)
    assert trend([]).lights == ()


def test_day_and_night_are_apart_within_one_walk():
    legs = (
        leg("1", 1.0),
        leg("2", 2.0),
        leg("3", -6.0, light="night"),
        leg("4", -8.0, light="night"),
    )
    day, night = trend([attempt(legs=legs)]).lights
    assert (day.light, night.light) == ("day", "night")
    assert day.attempts[0].heading_deg.value == pytest.approx(1.5)
    assert night.attempts[0].heading_deg.value == pytest.approx(-7.0)
    assert day.attempts[0].paces_per_100m == 65.0
    assert night.attempts[0].paces_per_100m is None


def test_mistakes_and_doubtful_matches_are_left_out_and_told():
    legs = (
        leg("1", 2.0),
        leg("2", 179.0, causes=(("reciprocal", 0.98), ("within-skill", 0.02))),
        leg("3", 1.0, distance_ratio=1.9, causes=(("single-double-pace", 1.0),)),
        leg("4", 3.0, causes=(("steady-bias", 0.9), ("within-skill", 0.1))),
        leg("5", 60.0, confidence=0.4),
        leg("6", 25.0),
        leg("7", None, status="skipped", heading_sd_deg=None, distance_ratio=None),
    )
    (day,) = trend([attempt(legs=legs)]).lights
    assert day.attempts[0].heading_deg.value == pytest.approx(2.0)  # legs 1, 3 and 4
    assert dict(day.left_out) == {
        "distance: not surely matched": 1,
        "distance: a mistake named": 1,
        "heading: not surely matched": 1,
        "heading: too far off for ordinary error": 1,
        "heading: a mistake named": 1,
    }
    counts = {one.cause: one for one in day.causes}
    assert counts["reciprocal"].legs == pytest.approx(0.98)
    assert counts["reciprocal"].error == pytest.approx(np.sqrt(0.98 * 0.02))
    assert sum(one.legs for one in day.causes) == pytest.approx(6.0)


def test_a_walk_done_again_counts_once_by_what_was_kept_last():
    first, again = attempt(), attempt(version="0.2.0", legs=(leg("1", 9.0),))
    other = attempt(number=1)
    found = trend([first, other, again])
    assert found.attempts == 2
    assert found.lights[0].attempts[0].heading_deg.value == pytest.approx(9.0)
    assert "1 more result is of walks that were done again" in found.notes[0]


def test_attempts_stand_in_the_order_of_their_days():
    found = trend([attempt(number=n, course=f"course {n}") for n in (4, 1, 3)])
    assert [one.course for one in found.lights[0].attempts] == ["course 1", "course 3", "course 4"]


def test_two_walks_of_a_day_are_two():
    first = attempt()
    second = replace(first, begun_s=first.ended_s + 60, ended_s=first.ended_s + DAY_S / 8)
    assert trend([first, second]).attempts == 2


def test_pace_counts_are_brought_to_one_pace():
    single = attempt(number=1, paces_per_100m=130.0, paces_sd=2.0, pace_unit="single")
    found = trend([single, attempt(number=2)])
    assert found.pace_unit == "double"
    assert [one.paces_per_100m for one in found.lights[0].attempts] == [65.0, 65.0]
    assert "brought to double paces" in found.notes[0]


def test_attempts_stand_in_the_order_of_their_days_whatever_a_recorder_s_clock_says():
    """Bug: a walk whose clock was 1024 weeks behind, and put right, was the walker's first."""
    first, last = attempt(number=0), attempt(number=60)
    behind_s = 1024.0 * 7.0 * DAY_S
    last = replace(last, begun_s=last.begun_s - behind_s, ended_s=last.ended_s - behind_s)
    assert once_each([last, first]) == (first, last)
    untimed = replace(attempt(number=30), begun_s=None, ended_s=None)
    assert once_each([last, untimed, first]) == (first, untimed, last)


def test_a_private_result_has_no_time_of_the_day_and_is_known_again_all_the_same():
    """Bug: begin and end stood in the records to the second under --private too."""
    plain = attempt()
    private = plain.without_clock
    assert (private.begun_s, private.ended_s) == (None, None)
    assert private.walked_on == plain.walked_on
    again = replace(private, version="0.2.0")
    assert once_each([plain, private, again]) == (again,)
    other = replace(private, legs=tuple(leg(str(n), 8.0 + n) for n in (1, 2, 3)))
    assert once_each([private, other]) == (private, other)


def test_a_leg_with_a_mistake_that_is_only_likely_counts_for_the_lean():
    """Bug: legs were dropped with "angle left out" at 31 to 43 %, and the lean shrank."""
    likely = (("gm-angle-omitted", 0.43), ("within-skill", 0.4))
    either = (("gm-angle-omitted", 0.5), ("declination-used", 0.4))
    legs = (
        leg("1", -6.7, causes=likely),
        leg("2", -2.3),
        leg("3", -2.7),
        leg("4", -7.3, causes=likely),
        leg("5", -7.5, causes=(("gm-angle-omitted", 0.9),)),
        leg("6", -7.5, causes=either),
    )
    (day,) = trend([attempt(legs=legs)]).lights
    assert day.attempts[0].heading_legs == 4
    assert day.attempts[0].heading_deg.value == pytest.approx(-4.75)
    assert "(4 of 6)" in attempt_rows(day)[0].heading


def test_a_distance_that_comes_nearer_to_the_plan_is_told_so():
    """Bug: 9.8 % short becoming 1.0 % short was "1.4 % too far an attempt"."""
    shares = [-0.10 + 0.012 * number for number in range(8)]
    walked = [
        attempt(
            number=number,
            legs=tuple(leg(str(n), -4.0, distance_ratio=1.0 + share) for n in range(4)),
        )
        for number, share in enumerate(shares)
    ]
    found = trend(walked)
    rows = {row.name: row for row in figure_rows(found, found.lights[0])}
    assert "from 10.0 % short to 1.6 % short" in rows["distance"].change
    assert "nearer to the plan" in rows["distance"].change
    assert "+1.2 % an attempt" in rows["distance"].change
    assert "left in 8 of 8" in rows["heading bias"].value
    assert "short in 8 of 8" in rows["distance"].value
