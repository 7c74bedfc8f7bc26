"""Light and dark at the start and the end of a lane, wherever on the earth it lies."""

from __future__ import annotations

import datetime as dt
import re
from dataclasses import replace

import pytest
from course_setting.lanes import EAST_LANE, GRID, SOUTH, WEST, lane

from audit.course_setting.check_lanes import check_lanes
from audit.course_setting.light_at import light_at
from audit.reports.lanes_words import lane_rows


def at(text: str) -> dt.datetime:
    return dt.datetime.fromisoformat(text).replace(tzinfo=dt.UTC)


def test_a_lane_walked_in_the_dark_has_no_light_left():
    """Bug: a lane from 02:00 to 04:00 had hours of light left, up to the dusk after the day."""
    # There civil dawn is at 11:00 or so and civil dusk at 00:10 UTC.
    found = check_lanes([lane("East", EAST_LANE)], sets_out=dt.time(3, 0))
    (one,) = found.lanes
    assert not one.figures.at_start.light
    assert not one.figures.at_end.light
    assert one.figures.light_left_s < 0.0
    (finding,) = found.findings
    assert finding.kind == "dark-before-the-end"
    assert "all of it in the dark" in finding.message
    said = {name: cells[0] for name, cells in lane_rows(found.lanes)}
    assert said["light at the start"].startswith("dark, ")
    assert said["light at the end"].endswith(" to civil dawn")


def test_dusk_after_midnight_utc_is_that_of_the_evening_there():
    """Bug: where dusk comes after midnight UTC, hours after it counted as before the next one."""
    longitude, latitude = GRID.to_geographic(WEST + 1000.0, SOUTH + 500.0)
    dark = light_at(at("2026-09-20T01:00"), longitude, latitude)
    assert not dark.light
    assert dark.since < at("2026-09-20T00:30") < dark.until
    light = light_at(at("2026-09-20T00:00"), longitude, latitude)
    assert light.light
    assert light.until == dark.since


def test_an_hour_on_another_day_there_is_said():
    """Bug: 02:00 UTC of the plan's date, an evening earlier at the place, was taken in silence."""

    def notes(hour: int) -> list[str]:
        made = check_lanes([lane("East", EAST_LANE)], sets_out=dt.time(hour, 0))
        return [note for note in made.notes if "by the sun there" in note]

    assert notes(14) == []
    (note,) = notes(3)
    assert "03:00 UTC of 2026-09-19" in note
    assert "on 2026-09-18" in note
    assert "--date 2026-09-20" in note


@pytest.mark.parametrize(
    ("moment", "latitude", "light", "changes"),
    [
        ("2026-06-21T00:00", 70.0, True, False),  # the sun does not set
        ("2026-06-21T00:00", 62.0, True, False),  # it sets, but civil twilight lasts
        ("2026-12-21T11:00", 80.0, False, False),  # no twilight at noon
        ("2026-12-21T11:00", 70.0, True, True),  # the sun does not rise, yet there is twilight
        ("2026-12-21T18:00", 70.0, False, True),
    ],
)
def test_polar_day_and_night(moment, latitude, light, changes):
    # By rule: the height of the sun's middle at noon is 90 - latitude + declination.
    found = light_at(at(moment), 15.0, latitude)
    assert found.light == light
    assert (found.until is not None) == changes


@pytest.mark.parametrize(
    ("day", "begins"),
    [
        (dt.date(9999, 12, 31), None),
        (dt.date(9999, 12, 31), dt.time(0, 0)),
        (dt.date(9999, 12, 29), dt.time(23, 30)),
        (dt.date(1, 1, 1), dt.time(12, 0)),
    ],
)
def test_a_day_at_an_end_of_the_calendar_has_no_light_that_can_be_told(day, begins):
    """Bug: the sun's times beyond the last day of the calendar ended the check as a fault."""
    found = check_lanes([lane("East", EAST_LANE, date=day)], sets_out=begins)
    (one,) = found.lanes
    assert one.figures.at_end is None
    (note,) = [note for note in found.notes if "calendar" in note]
    assert note.startswith(f"East: {day.isoformat()} is too near an end of the calendar")
    assert not any("without a date" in note for note in found.notes)


def test_a_start_after_dusk_is_told_by_the_dusk():
    """Bug: an hour after civil dusk a lane was begun "before civil dawn", 13 hours on."""
    # There civil dusk is at 00:10 UTC or so; a lane of which no end is known.
    alone = replace(
        lane("East", EAST_LANE), card=replace(lane("East", EAST_LANE).card, order="free")
    )
    for begins, said in (
        (dt.time(1, 10), r"in the dark, 1 h 0\d min after civil dusk"),
        (dt.time(3, 10, tzinfo=dt.timezone(dt.timedelta(hours=2))), r"1 h 0\d min after civil"),
        (dt.time(9, 0), "before civil dawn"),
    ):
        (finding,) = check_lanes([alone], sets_out=begins).findings
        assert re.search(said, finding.message), finding.message
