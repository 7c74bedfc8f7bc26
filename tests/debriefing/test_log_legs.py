"""Legs of a log whose numbers a spreadsheet wrote in its own way."""

from __future__ import annotations

from dataclasses import fields, replace

import pytest
from leg_card.plans import A, B, grid_point, leg, plan
from walks import make_walk

import audit
from audit.debriefing.log_legs import with_legs_by_number
from audit.leg_card import work_out_card
from audit.track import Track
from audit.walkers_log import LogEntry, WalkersLog
from audit.words import says

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


def test_figures_of_a_leg_that_the_recording_does_not_show_are_said_to_be_put_aside():
    """Bug: what the log has of a leg that was not recorded went without a word."""
    walk = make_walk(3, "trained")
    kept = walk.track.time_s < walk.truth.legs[1].claim_s + 60.0
    columns = [one.name for one in fields(Track) if one.name not in ("notes", "source")]
    early = replace(
        walk.track, **{name: getattr(walk.track, name)[kept].copy() for name in columns}
    )
    names = [leg.name for leg in walk.plan.legs]
    log = WalkersLog(
        entries=(
            LogEntry(leg=names[0], paces=120.0),
            LogEntry(leg=names[-2], note="a marsh"),
            LogEntry(leg=names[-1], paces=130.0),
        )
    )
    notes = audit.debrief(walk.plan, early, log=log).quality.notes
    (told,) = [str(note) for note in notes if says(note, "recording-log-unseen")]
    assert f"figures for leg {names[-1]}, which this recording does not show walked" in told
