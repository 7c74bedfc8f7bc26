"""A log whose azimuths were noted from another north than the needle's."""

from __future__ import annotations

import pytest
from debriefing.hand_walked import COURSE, TIME_S, WALK, plan_of, track_of

import audit
from audit.azimuths import GridAzimuth, MagneticAzimuth, TrueAzimuth
from audit.walkers_log import LogEntry, WalkersLog

RIGHT_DEG = (97.0, 7.0)
"""What the card says to set for due east and due north on the grid, by an angle of -7 degrees."""


def debriefed(*entries):
    named = tuple(LogEntry(leg=str(n + 1), **entry) for n, entry in enumerate(entries))
    return audit.debrief(plan_of(*COURSE), track_of(TIME_S, WALK), log=WalkersLog(entries=named))


def told(debrief) -> list[str]:
    return [note for note in debrief.quality.notes if note.startswith("The walker's log: its")]


@pytest.mark.parametrize(("off_deg", "north"), [(-7.0, "from grid north"), (5.0, "otherwise")])
def test_azimuths_off_alike_where_the_walk_goes_by_the_card_are_left_out_and_told(
    off_deg, north
) -> None:
    """Bug: a right walk with a log in true azimuths was "the grid-magnetic angle left out"."""
    settings = [MagneticAzimuth((right + off_deg) % 360.0) for right in RIGHT_DEG]
    found = debriefed(*({"magnetic_azimuth": one} for one in settings))
    assert north in told(found)[0]
    assert [leg.causes[0].cause for leg in found.legs] == ["within-skill"] * 2
    assert all(leg.steps is None or not leg.steps.entered for leg in found.legs)


def test_a_log_of_the_card_and_one_leg_off_stay() -> None:
    for off in (0.0, 7.0):
        settings = (MagneticAzimuth(RIGHT_DEG[0] + off), MagneticAzimuth(RIGHT_DEG[1]))
        assert told(debriefed(*({"magnetic_azimuth": one} for one in settings))) == []


@pytest.mark.parametrize("north", ["grid", "true"])
def test_azimuths_of_another_north_are_turned_by_the_cards_angles_and_told(north) -> None:
    of_card = debriefed({}, {}).card
    grid = [leg.azimuth for leg in of_card.legs]
    given = grid if north == "grid" else [of_card.angles.true(one) for one in grid]
    found = debriefed(*({f"{north}_azimuth": one} for one in given))
    (note,) = told(found)
    assert f"its {north} azimuths were turned into magnetic ones by the card's angles" in note
    setting = found.legs[0].audit.measures.details.setting
    assert setting.set_turn_deg == pytest.approx(0.0, abs=1e-6)
    assert isinstance(given[0], GridAzimuth | TrueAzimuth)
