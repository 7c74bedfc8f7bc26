"""Errors of leaving and of the claim: independent errors add as their squares do."""

from __future__ import annotations

import math

import pytest

from audit.matching.leg_match import Reckoned
from audit.measurement.claims import SightBend
from audit.measurement.cut_errors import cut_error
from audit.measurement.places import Fixed
from audit.settings import ClaimSettings

S = ClaimSettings()
SPEED_M_S, INTERVAL_S = 1.2, 10.0
LOGGING_S = INTERVAL_S / math.sqrt(12.0)  # of a moment anywhere within an interval
ON_THE_WAY = Fixed(time_s=100.0, east_m=0.0, north_m=0.0, sd_m=2.0, halt_s=(100.0, 100.0))
AT_A_HALT = Fixed(time_s=100.0, east_m=0.0, north_m=0.0, sd_m=1.5, halt_s=(100.0, 160.0))


def error(fixed, bend=None, unseen=None):
    return cut_error(fixed, bend, unseen, speed_m_s=SPEED_M_S, interval_s=INTERVAL_S, settings=S)


def bend(probability):
    return SightBend(
        leg=0, probability=probability, turned_s=80.0, turned_sd_s=3.0, arrived_s=100.0
    )


def test_a_cut_on_the_way_is_known_by_what_is_usual_and_by_the_logging() -> None:
    found = error(ON_THE_WAY)
    time_s = math.hypot(8.0, LOGGING_S)
    assert (found.marked_by, found.place_sd_m) == ("way", 2.0)
    assert found.time_sd_s == pytest.approx(time_s)
    assert found.along_sd_m == pytest.approx(time_s * SPEED_M_S)


def test_at_a_halt_the_place_does_not_wait_for_the_moment() -> None:
    found = error(AT_A_HALT)
    assert (found.marked_by, found.place_sd_m) == ("halt", 1.5)
    assert found.time_sd_s == pytest.approx(math.hypot(4.0, LOGGING_S))
    assert found.along_sd_m == pytest.approx(math.hypot(2.5, 0.5 * LOGGING_S * SPEED_M_S))


def test_where_nobody_saw_the_walker_the_place_has_all_of_the_error() -> None:
    unseen = Reckoned(east_m=0.0, north_m=0.0, seen_s=0.0, gone_m=50.0)
    found = error(AT_A_HALT, unseen=unseen)
    assert (found.marked_by, found.place_sd_m, found.along_sd_m) == ("reckoned", 1.5, 0.0)
    assert found.time_sd_s == pytest.approx(1.5 / SPEED_M_S)


@pytest.mark.parametrize("probability", [0.2, 0.5])
def test_a_turn_that_was_hardly_made_leaves_a_doubt(probability) -> None:
    """Yes or no, 20 s apart: a standard deviation of 20 sqrt(p (1 - p))."""
    doubt_s = 20.0 * math.sqrt(probability * (1.0 - probability))
    at_halt, on_way = error(AT_A_HALT, bend(probability)), error(ON_THE_WAY, bend(probability))
    assert (at_halt.marked_by, on_way.marked_by) == ("halt", "way")
    assert at_halt.time_sd_s == pytest.approx(math.hypot(4.0, LOGGING_S, doubt_s))
    assert at_halt.along_sd_m == pytest.approx(
        math.hypot(2.5, 0.5 * LOGGING_S * SPEED_M_S, doubt_s * SPEED_M_S)
    )
    assert on_way.time_sd_s == pytest.approx(math.hypot(8.0, LOGGING_S, doubt_s))


def test_a_turn_that_was_likely_made_marks_the_claim() -> None:
    found = error(AT_A_HALT, bend(0.8))
    time_s = math.hypot(3.0, LOGGING_S, 20.0 * 0.4)
    assert (found.marked_by, found.place_sd_m) == ("turn to the point", 1.5)
    assert found.time_sd_s == pytest.approx(time_s)
    assert found.along_sd_m == pytest.approx(math.hypot(time_s * SPEED_M_S, 2.5))
