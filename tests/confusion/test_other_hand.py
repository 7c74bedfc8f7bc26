"""Mistakes planted in walks that another hand's simulator makes are named rightly, or not at all."""

from __future__ import annotations

import pytest
from accuracy.seeds import first_seeds
from honesty.other_hand import is_present

from confusion.other_hand import asked, judged, planted_walk
from confusion.table import figures
from confusion.test_confusion_guard import highest_by_chance

WALKS = 12
LEVEL = 2

needs_it = pytest.mark.skipif(
    not is_present(), reason="the other simulator does not lie beside this folder"
)


@pytest.fixture(scope="module")
def table() -> dict:
    return figures([one for seed in first_seeds("guard", WALKS) for one in judged(seed, LEVEL)])


@needs_it
def test_nobody_is_accused(table) -> None:
    assert table["clean_legs"] > 10
    assert table["clean_named"] <= highest_by_chance(0.01, table["clean_legs"])


@needs_it
def test_what_is_named_was_made(table) -> None:
    assert table["named"] > 10
    # A steady turn that happens to equal a known angle is told as that: a walk of eight legs.
    assert table["named"] - table["named_right"] <= highest_by_chance(0.1, table["named"]) + 8


@needs_it
def test_what_is_planted_is_what_was_walked() -> None:
    """A back azimuth leads away from the point, a wrong digit moves the end east or west."""
    seen = set()
    for seed in first_seeds("guard", 60):
        what = asked(seed, LEVEL)
        if what.slip not in ("reciprocal", "digit-wrong") or what.slip in seen or what.whole:
            continue
        seen.add(what.slip)
        _, walk = planted_walk(seed, LEVEL)
        leg = walk.truth.legs[what.leg]
        card_deg = walk.course.card_azimuth_deg[what.leg]
        turn = abs((leg.azimuth_deg - card_deg + 180.0) % 360.0 - 180.0)
        assert {one.cause for one in leg.planted} == {what.slip}
        assert turn > 150.0 if what.slip == "reciprocal" else turn < 150.0
        assert what.slip == "reciprocal" or what.slip_size % 100.0 == 0.0 != what.slip_size
    assert seen == {"reciprocal", "digit-wrong"}
