"""The guard: the talk after a walk is as right as recorded, on walks of its own.

The record is made anew with ``python -m coached --seeds reporting --rounds N --record``.
"""

from __future__ import annotations

import json

import pytest
from confusion.planted import Sort

from coached.advice import Advice, advice_on
from coached.table import KINDS, RECORD, SEEDS, figures, total

GUARDED = (("", False), ("gm-angle-omitted", True), ("pace-short", True), ("reciprocal", False))


@pytest.fixture(scope="module")
def judged() -> list[Advice]:
    found = []
    for number, (cause, whole) in enumerate(GUARDED):
        kind = Sort(difficulty="ordinary", cause=cause, whole_walk=whole)
        found += advice_on(kind, SEEDS["guard"][number])
    assert len(found) > 10
    return found


@pytest.fixture(scope="module")
def recorded() -> dict:
    assert RECORD.is_file(), "tests/coached/recorded.json is missing: record the table anew"
    return json.loads(RECORD.read_text(encoding="utf-8"))


@pytest.mark.parametrize("kind", ["keep", "named"])
def test_what_is_said_is_true(judged, kind):
    said, right = total(figures(judged)[kind])
    # At most two of few may be wrong by chance.
    assert right >= 0.8 * said - 2.0


def test_the_recorded_table_keeps_the_rule(recorded):
    of = recorded["figures"]
    assert recorded["seeds"] == "reporting"
    assert set(of) == {*KINDS}
    for kind in ("keep", "named"):
        said, right = total(of[kind])
        assert said > 15
        assert right >= 0.8 * said


def test_the_figures_count_as_they_say():
    of = figures(
        [
            Advice(kind="keep", what="azimuth", right=True),
            Advice(kind="keep", what="azimuth", right=False),
            Advice(kind="keep", what="distance", right=True),
            Advice(kind="planted", what="veer", right=False),
        ]
    )
    assert of["keep"]["azimuth"] == {"said": 2, "right": 1}
    assert total(of["keep"]) == (3, 2)
    assert (total(of["planted"]), total(of["part"])) == ((1, 0), (0, 0))
