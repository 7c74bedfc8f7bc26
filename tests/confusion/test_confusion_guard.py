"""The guard: mistakes are named as rightly as recorded, on walks of its own.

The record is made anew with ``python -m confusion --seeds reporting --rounds N --record``.
"""

from __future__ import annotations

import json
import math

import pytest
from walks import make_walk

from confusion.planted import LEG_CAUSES, SEEDS, WALK_CAUSES, Sort, sorts, sorts_made_for
from confusion.table import RECORD, figures
from confusion.verdicts import Verdict, verdicts

GUARDED = (
    ("gm-angle-omitted", True),
    ("gm-angle-reversed", True),
    ("reciprocal", False),
    ("hundred-miscounted", False),
    ("pace-short", True),
    ("digit-wrong", False),
)
WALKS = 3
"""Walks of every guarded sort."""


def highest_by_chance(share: float, out_of: int) -> float:
    """Count that chance exceeds less than once in 700 (three standard errors, one at least)."""
    return out_of * share + 3.0 * math.sqrt(max(out_of * share * (1.0 - share), 1.0))


@pytest.fixture(scope="module")
def judged() -> list[Verdict]:
    found = []
    seeds = iter(SEEDS["guard"])
    for cause, whole in GUARDED:
        kind = Sort(difficulty="ordinary", cause=cause, whole_walk=whole)
        for _ in range(WALKS):
            found += verdicts(kind, make_walk(next(seeds), kind.family()))
    assert len(found) > 60
    return found


@pytest.fixture(scope="module")
def recorded() -> dict:
    assert RECORD.is_file(), "tests/confusion/recorded.json is missing: record the table anew"
    return json.loads(RECORD.read_text(encoding="utf-8"))


def test_walkers_without_a_mistake_are_not_accused(judged):
    of = figures(judged)
    # The aim: no more than 1 clean leg in 100.
    assert of["clean_named"] <= highest_by_chance(0.01, of["clean_legs"])


def test_mistakes_that_are_named_were_made(judged):
    of = figures(judged)
    # The aim: nine in ten of them. Legs of one walk stand or fall together.
    assert of["named"] - of["named_right"] <= highest_by_chance(0.1, of["named"]) + 4


def test_mistakes_are_found_as_often_as_recorded(judged, recorded):
    mine, kept = figures(judged)["by_cause"], recorded["figures"]["by_cause"]
    found = sum(row["found"] for row in mine.values())
    expected = sum(
        row["separable"] * kept[cause]["found"] / max(kept[cause]["separable"], 1)
        for cause, row in mine.items()
        if cause in kept
    )
    # A third of it may go to chance: few walks, whose legs go together.
    assert found >= expected / 3.0 - 3.0


def test_the_recorded_table_keeps_the_rule(recorded):
    of = recorded["figures"]
    assert recorded["seeds"] == "reporting"
    assert of["clean_named"] <= 0.01 * of["clean_legs"]
    assert of["named_right"] >= 0.9 * of["named"]
    assert of["named"] > 100


def test_every_mistake_that_shows_in_a_track_is_planted():
    from audit.diagnosis.causes import CAUSES

    planted = {*LEG_CAUSES, *WALK_CAUSES} - {"pace-short-uphill"}
    needs_a_class = {"datum", "point-misplaced"}
    in_the_order_of_points = {"point-skipped", "order-changed"}
    assert {cause.name for cause in CAUSES} == planted | needs_a_class | in_the_order_of_points


def test_no_seed_serves_two_purposes():
    used = [seed for seeds in SEEDS.values() for seed in (seeds.start, seeds.stop)]
    assert used == sorted(used) or len(set(used)) == len(used)
    assert len(sorts(("trained",))) == len(LEG_CAUSES) + len(WALK_CAUSES)


def test_courses_are_made_for_every_guarded_mistake_that_most_courses_hide():
    made = sorts_made_for(("ordinary",))
    assert {(kind.cause, kind.whole_walk) for kind in made} == {*GUARDED} - {("pace-short", True)}
    for kind in made:
        course = make_walk(SEEDS["guard"][-1], kind.family()).course
        assert course.leg_count >= 4
        if kind.whole_walk:
            assert abs(course.grid_magnetic_angle_deg) > 5.0
        else:
            assert max(course.card_m) < 500.0


def a_leg(named: str | None, planted: str = "", separable: bool = True, either=()) -> Verdict:
    made = frozenset({planted} - {""})
    return Verdict(
        difficulty="ordinary",
        cause=planted,
        planted=made,
        also=frozenset(),
        separable=made if separable else frozenset(),
        shares={named: 0.9} if named else {"within-skill": 0.9},
        made={named: 0.95} if named else {},
        either=frozenset(either),
    )


def test_the_figures_count_as_they_say():
    judged = [
        a_leg("veer", "veer"),
        a_leg(None, "veer"),
        a_leg("handrail", "veer"),
        a_leg("veer", "veer", separable=False),
        a_leg(None),
        a_leg("veer"),
        a_leg(None, "veer", either=("veer", "handrail")),
        a_leg(None, either=("veer", "handrail")),
    ]
    of = figures(judged)
    assert (of["clean_legs"], of["clean_named"]) == (3, 1)
    assert (of["pairs"], of["pairs_right"], of["clean_pairs"]) == (2, 1, 1)
    assert (of["named"], of["named_right"]) == (4, 2)
    row = of["by_cause"]["veer"]
    assert (row["legs"], row["separable"], row["found"], row["wrong"]) == (5, 4, 1, 1)
    assert row["told"] == 2
    assert of["taken_for"] == {"veer": {"handrail": 1}, "nothing": {"veer": 1}}
    (band,) = of["reliability"]
    assert (band["count"], band["said"], band["right"]) == (4, 0.9, 0.5)
    (band,) = of["reliability_made"]
    assert (band["count"], band["said"], band["right"]) == (4, 0.95, 0.5)
