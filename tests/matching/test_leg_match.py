"""What a leg's match says of itself, and the legs of a walk one after another."""

from __future__ import annotations

import pytest
from measurement.hand_made import match_with

from audit.matching.leg_match import LegMatch


def test_a_walked_leg_has_a_start_and_a_claim_even_at_nought() -> None:
    leg = LegMatch(leg=0, status="walked", start_s=0.0, claim_s=60.0)
    assert leg.times_s == (0.0, 60.0)


def test_a_leg_that_was_not_walked_has_neither() -> None:
    with pytest.raises(ValueError, match="only a leg that was walked"):
        _ = LegMatch(leg=0, status="skipped").times_s


def test_legs_come_in_the_order_of_time_and_those_not_walked_in_none() -> None:
    legs = (
        LegMatch(leg=0, status="walked", start_s=500.0, claim_s=900.0),
        LegMatch(leg=1, status="skipped"),
        LegMatch(leg=2, status="walked", start_s=0.0, claim_s=400.0),
        LegMatch(leg=3, status="unfinished", start_s=950.0, claim_s=990.0),
    )
    assert [leg.leg for leg in match_with(*legs).walked_in_turn()] == [2, 0, 3]
