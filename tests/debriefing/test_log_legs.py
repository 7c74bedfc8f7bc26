"""Legs of a log whose numbers a spreadsheet wrote in its own way."""

from __future__ import annotations

import pytest
from leg_card.plans import A, B, grid_point, leg, plan

from audit.debriefing.log_legs import with_legs_by_number
from audit.leg_card import work_out_card
from audit.walkers_log import LogEntry, WalkersLog

C = grid_point("C", 701_000.0, 3_580_900.0)


def legs_of_log(*written, named=("1", "2")):
    first, second = named
    card = work_out_card(plan((A, B, C), (leg(first), leg(second, "B", "C"))))
    log = WalkersLog(entries=tuple(LogEntry(leg=one) for one in written))
    taken = with_legs_by_number(log, card)
    return [entry.leg for entry in taken.entries], taken.notes


@pytest.mark.parametrize("written", [("1.0", "2.0"), ("01", "02"), ("1,0", "2,00"), ("1", "2.0")])
def test_numbers_of_a_spreadsheet_are_the_legs_of_those_numbers_and_noted(written):
    """Bug: a log with "1.0" and "2.0" lost every row."""
    legs, notes = legs_of_log(*written)
    assert legs == ["1", "2"]
    assert f'"{written[1]}" as "2"' in notes[0]


@pytest.mark.parametrize(
    ("written", "named"),
    [
        (("1", "2"), ("1", "2")),  # as they are
        (("1.0", "01"), ("1", "2")),  # which of the two?
        (("1", "1.0"), ("1", "2")),  # leg 1 has its row
        (("1.0", "3"), ("01", "1")),  # which leg?
        (("1.5", "A"), ("1", "2")),
    ],
)
def test_a_name_stays_where_no_single_leg_is_meant(written, named):
    assert legs_of_log(*written, named=named) == (list(written), ())
