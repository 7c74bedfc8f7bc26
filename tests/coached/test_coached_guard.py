"""The guard: what is said after a walk is right, on walks of its own."""

from __future__ import annotations

import pytest
from confusion.planted import Sort

from coached.advice import Advice, advice_on
from coached.table import SEEDS, figures, total

GUARDED = (("", False), ("gm-angle-omitted", True), ("pace-short", True), ("reciprocal", False))


@pytest.fixture(scope="module")
def judged() -> list[Advice]:
    found = []
    for number, (cause, whole) in enumerate(GUARDED):
        kind = Sort(difficulty="ordinary", cause=cause, whole_walk=whole)
        found += advice_on(kind, SEEDS["guard"][number])
    assert len(found) > 10
    return found


@pytest.mark.parametrize("kind", ["keep", "named"])
def test_what_is_said_is_true(judged, kind):
    said, right = total(figures(judged)[kind])
    # At most two of few may be wrong by chance.
    assert right >= 0.8 * said - 2.0


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
