"""The guard: steps are told as rightly as recorded, on walks of its own.

The record is made anew with ``python -m steps_told --seeds reporting --rounds N --record``.
"""

from __future__ import annotations

import json

import pytest
from confusion.planted import Sort
from walks import make_walk

from steps_told.own_cards import STEPS
from steps_told.table import ON_FOOT, RECORD, SEEDS, WHOLE_WALK, Told, figures, told

GUARDED = (
    "digit-wrong", "reciprocal", "gm-angle-omitted", "bezel-clicks", "hundred-miscounted",
    "wrong-ruler",
)  # fmt: skip


@pytest.fixture(scope="module")
def judged() -> list[Told]:
    found = []
    for number, cause in enumerate(GUARDED):
        sort = Sort(difficulty="ordinary", cause=cause, whole_walk=cause in WHOLE_WALK)
        found += told(make_walk(SEEDS["guard"][number], sort.family()), cause, number)
    assert len(found) > 20
    return found


@pytest.fixture(scope="module")
def recorded() -> dict:
    assert RECORD.is_file(), "tests/steps_told/recorded.json is missing: record the table anew"
    return json.loads(RECORD.read_text(encoding="utf-8"))


def test_slips_on_paper_are_told_at_their_step(judged):
    rows = figures(judged)["steps"].values()
    planted = sum(row["planted"] for row in rows)
    right = sum(row["told"] + row["told_among_others"] for row in rows)
    assert planted >= 5
    assert right >= 0.8 * planted


def test_a_right_card_is_told_nothing(judged):
    of = figures(judged)
    assert of["clean_told_on_paper"] <= 0.02 * of["clean_legs"] + 2


def test_the_recorded_table_keeps_the_rule(recorded):
    of = recorded["figures"]
    assert recorded["seeds"] == "reporting"
    assert of["clean_told_on_paper"] <= 0.02 * of["clean_legs"]
    on_paper = [row for step, row in of["steps"].items() if step not in ON_FOOT]
    for row in on_paper:
        assert row["told"] + row["told_among_others"] >= 0.9 * row["planted"]


def test_every_step_is_planted():
    planted = {step for steps in STEPS.values() for step in steps}
    assert planted == {
        "given", "plotted", "measured", "converted", "set", "walked", "distance measured",
        "turned into paces", "paced",
    }  # fmt: skip


def test_the_figures_count_as_they_say():
    of = figures(
        [
            Told(cause="veer", step="walked", told=("walked",), among=frozenset()),
            Told(cause="veer", step="walked", told=("set",), among=frozenset()),
            Told(cause="veer", step=None, told=("paced",), among=frozenset()),
            Told(cause="digit-wrong", step="plotted", told=(), among=frozenset({"plotted"})),
        ]
    )
    assert (of["legs"], of["clean_legs"], of["clean_told_on_foot"]) == (4, 1, 1)
    assert of["steps"]["walked"] == {
        "planted": 2, "told": 1, "told_among_others": 0, "others_on_paper": {"set": 1},
    }  # fmt: skip
    assert of["steps"]["plotted"]["told_among_others"] == 1
