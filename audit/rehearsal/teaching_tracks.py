"""Simulated walks of mistakes, second by second: for teaching, and to try the debrief on."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

import numpy as np

from audit.errors import refuse
from audit.geodesy.along_line import metres_along, places_along
from audit.leg_card import LegCard
from audit.moments import in_calendar
from audit.rehearsal.finished_rehearsal import Way
from audit.settings import RehearsalSettings
from audit.units import FloatArray, east_north

_FILE = "the plan"
_START_HOUR = 9
_NO_DATE = dt.date(2000, 1, 1)
"""Of tracks for a plan without a date; a date must be there for times to be."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class MadeTrack:
    """A simulated walk: places on the grid, shape (n, 2), and POSIX seconds, shape (n,)."""

    places: FloatArray
    time_s: FloatArray


def leg_track(card: LegCard, way: Way, settings: RehearsalSettings) -> MadeTrack:
    """Give the walk of one way with a halt at either end.

    Raises
    ------
    InputRefusedError
        Where it would end after the last day of the calendar.
    """
    return _timed(card, _with_halts([np.asarray(way.line)], settings), settings)


def course_track(card: LegCard, number: int, way: Way, settings: RehearsalSettings) -> MadeTrack:
    """Give a walk of the whole course with a mistake on one leg.

    Where the mistake ends the walker halts, then goes to the leg's point, as if somebody had
    told him where it is, and goes on as planned. No receiver noise, no ordinary error.

    Raises
    ------
    InputRefusedError
        Where it would end after the last day of the calendar.
    """
    parts: list[FloatArray] = []
    for place, leg in enumerate(card.legs):
        if place != number:
            parts.append(np.asarray(leg.line))
            continue
        parts += [np.asarray(way.line), np.array([way.line[-1], leg.line[-1]])]
    if way.cause == "point-skipped" and number + 1 < len(card.legs):
        del parts[number + 1 : number + 3]  # he is at the next leg's end already
    return _timed(card, _with_halts(parts, settings), settings)


def _with_halts(parts: list[FloatArray], settings: RehearsalSettings) -> list[tuple[float, float]]:
    """Give a place for every step of time: each part walked, with a halt before and after it."""
    step_m = settings.walking_m_s * settings.fix_s
    halt = max(round(settings.halt_s / settings.fix_s), 1)
    places: list[tuple[float, float]] = []
    for line in parts:
        path = metres_along(line)
        at = np.append(np.arange(0.0, path[-1], step_m), path[-1])
        places += [east_north(line[0])] * halt
        places += [east_north(one) for one in places_along(line, path, at)]
    return [*places, *([places[-1]] * halt)]


def _timed(
    card: LegCard, places: list[tuple[float, float]], settings: RehearsalSettings
) -> MadeTrack:
    day = card.date or _NO_DATE
    begin = dt.datetime(day.year, day.month, day.day, _START_HOUR, tzinfo=dt.UTC).timestamp()
    time_s = begin + settings.fix_s * np.arange(len(places), dtype=np.float64)
    if not in_calendar(float(time_s[-1])):
        hours = (time_s[-1] - begin) / 3600.0
        place = "option date" if card.date_source == "option" else "course, date"
        rule = f"is too near the end of the calendar for a simulated walk of {hours:.0f} hours"
        raise refuse(_FILE, place, day, rule, "Check the year.")
    return MadeTrack(places=np.array(places), time_s=time_s)
