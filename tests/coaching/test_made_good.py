"""Slips that a walk made good are told as that: common sense, no source."""

from __future__ import annotations

from dataclasses import replace

import pytest
from coaching.shown_walk import audits

from audit.coaching.made_good import with_made_good
from audit.coaching.steps import Hop, LegSteps

CONVERTED = Hop(
    steps=("converted",), kind="direction", error=-7.5, tolerance=0.5, off_m=73.0, slips=(),
    written=True, sentence="the card is 7.5 left.",
)  # fmt: skip


@pytest.mark.parametrize(
    ("miss_m", "change", "told"),
    [
        (5.0, {}, True),
        (60.0, {}, False),
        (5.0, {"off_m": 20.0}, False),
        (5.0, {"written": False}, False),
    ],
)
def test_a_card_error_that_another_cancels_is_told_as_luck(miss_m, change, told) -> None:
    """Bug: a leg 7.5 degrees left on the card arrived 5 m off, and no word said that it was luck."""
    walked = {"4": replace(audits()[3].measures, miss_m=miss_m)}
    hop = replace(CONVERTED, **change)
    steps = {"4": LegSteps(leg="4", hops=(hop,), sentences=("as it was",))}
    (said,) = with_made_good(steps, walked, 30.0)["4"].sentences
    assert ("another error took that back" in str(said)) is told
