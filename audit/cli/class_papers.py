"""What a class is graded by, read from its files, and the lanes worked out of it."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import TypeVar

from audit.areas import Area
from audit.classroom.lane import Lane, lane_of
from audit.classroom.lane_names import lane_names
from audit.debriefing.walk_day import track_date
from audit.errors import InputRefusedError, Problem
from audit.plan import Plan
from audit.readers.areas_file import read_areas
from audit.readers.course_settings import CourseOptions
from audit.readers.gpx_track import read_track
from audit.readers.plan_file import read_plan
from audit.readers.punch_file import read_punches
from audit.readers.roster_file import read_roster
from audit.readers.standard_file import read_standard
from audit.roster import PunchList, Roster
from audit.settings import Settings
from audit.standard import Standard

Read = TypeVar("Read")


@dataclass(frozen=True, slots=True, kw_only=True)
class ClassPapers:
    """What a class is graded by: a plan a lane, the standard, and what came with them."""

    plans: tuple[Plan, ...]
    standard: Standard
    roster: Roster | None
    punches: PunchList | None
    roads: tuple[Area, ...] = ()


def read_papers(
    plans: Sequence[Path],
    options: CourseOptions,
    *,
    standard: str,
    roster: Path | None,
    punches: Path | None,
    roads: Path | None,
) -> ClassPapers:
    """Read what the class is graded by.

    Raises
    ------
    InputRefusedError
        With the problems of all the files at once.
    """
    problems: list[Problem] = []

    def attempt(read: Callable[[], Read]) -> Read | None:
        try:
            return read()
        except InputRefusedError as refused:
            problems.extend(refused.problems)
            return None

    planned = [attempt(partial(read_plan, path, **options)) for path in plans]
    by = attempt(lambda: read_standard(standard))
    walkers = attempt(partial(read_roster, roster)) if roster else None
    codes = attempt(partial(read_punches, punches)) if punches else None
    areas = attempt(partial(read_areas, roads)) if roads else None
    if problems or by is None:
        raise InputRefusedError(problems)
    return ClassPapers(
        plans=tuple(plan for plan in planned if plan is not None),
        standard=by,
        roster=walkers,
        punches=codes,
        roads=tuple(one for one in areas or () if one.kind == "road"),
    )


def lanes_of(plans: Sequence[Plan], tracks: Sequence[Path], settings: Settings) -> tuple[Lane, ...]:
    """Work the lanes out; a plan without a day takes that of the first recording with times."""
    day = None if all(plan.date is not None for plan in plans) else _first_day(tracks)
    return tuple(
        lane_of(name, plan, day, settings)
        for name, plan in zip(lane_names(plans), plans, strict=True)
    )


def _first_day(tracks: Sequence[Path]) -> dt.date | None:
    for path in tracks:
        try:
            day = track_date(read_track(path))
        except InputRefusedError:
            continue
        if day is not None:
            return day
    return None
