"""From the files of lanes, areas and heights to the check of the lanes."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from audit import words
from audit.cli.endings import ExitStatus, WrongUseError
from audit.cli.messages import say_note, say_written, speak_as, tell
from audit.cli.right_plans import put_right_first
from audit.course_setting.check_lanes import check_lanes
from audit.course_setting.checked_lanes import Lane
from audit.errors import InputRefusedError, Problem
from audit.geodesy.areas_on_grid import GroundAreas, areas_on_grid
from audit.geodesy.grids import CourseGrid
from audit.leg_card import LegCard, work_out_card
from audit.leg_card.profiles import stations
from audit.plan import Plan
from audit.readers.areas_file import read_areas
from audit.readers.clock_time import clock_moment
from audit.readers.course_settings import CourseOptions
from audit.readers.ground_heights import heights_at
from audit.readers.plain_text import writable
from audit.readers.plan_file import read_plan
from audit.reports.lanes_report import (
    render_lanes,
    render_lanes_csv,
    render_lanes_html,
    render_lanes_json,
)
from audit.reports.write import write_texts
from audit.settings import Settings
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class LanesAsked:
    """What the command line asks of a check of lanes."""

    areas: Path | None = None
    ground: Path | None = None
    start: str | None = None
    folder: Path | None = None
    as_json: bool = False
    words: Path | None = None


def check_lane_files(
    plans: Sequence[Path], asked: LanesAsked, *, options: CourseOptions
) -> ExitStatus:
    """Tell the check of lanes; the status says whether there is anything to look at.

    Raises
    ------
    InputRefusedError
        With the problems of all files.
    WrongUseError
        Where --start is no time of day.
    """
    speak_as(asked.words)
    sets_out = _time(asked.start)
    read = read_plans(plans, options, any_order=True)
    cards = [work_out_card(plan) for plan in read]
    first = put_right_first(zip(plans, read, strict=True))
    areas = read_ground_areas(asked.areas, cards[0].grid)
    files = [writable(str(plan)) for plan in plans]
    lanes = [
        Lane(name=name, source=file, card=card, heights=leg_heights(asked.ground, card))
        for name, file, card in zip(_names(cards, plans), files, cards, strict=True)
    ]
    checked = check_lanes(lanes, areas, sets_out=sets_out)
    if asked.as_json:
        for note in first:
            say_note(note)
        tell(render_lanes_json(checked))
    else:
        tell(render_lanes(checked, first))
        for note in checked.notes:
            say_note(note)
    if asked.folder is not None:
        texts = {
            "lanes.json": render_lanes_json(checked),
            "lanes.csv": render_lanes_csv(checked),
            "lanes.html": render_lanes_html(checked, areas, first),
        }
        written = write_texts(asked.folder, texts)
        say_written(asked.folder, ", ".join(path.name for path in written))
    return ExitStatus.FINDINGS if checked.findings or first else ExitStatus.DONE


def read_plans(
    plans: Sequence[Path], options: CourseOptions, *, any_order: bool = False
) -> list[Plan]:
    """Give plans that stand on one grid; of a free order only where it may be."""
    read: list[Plan] = []
    problems: list[Problem] = []
    for path in plans:
        try:
            read.append(read_plan(path, **options))
        except InputRefusedError as refused:
            problems += refused.problems
    if problems:
        raise InputRefusedError(problems)
    for path, plan in zip(plans, read, strict=True):
        if plan.order == "free" and not any_order:
            message = f"{path}: its points may be visited in any order, so it has no legs yet."
            raise WrongUseError(message)
    for path, plan in zip(plans, read, strict=True):
        if plan.grid != read[0].grid:
            message = (
                f"{path} is on the grid {plan.grid} and {plans[0]} on {read[0].grid}. Give all one "
                "grid with --grid."
            )
            raise WrongUseError(message)
    return read


def read_ground_areas(path: Path | None, grid: CourseGrid) -> GroundAreas:
    """Give the areas of a file on a grid; none without a file."""
    if path is None:
        return GroundAreas()
    areas = areas_on_grid(read_areas(path), grid)
    if areas.roads:
        say_note(words.say("terminal-roads", count=len(areas.roads)))
    return areas


def leg_heights(path: Path | None, card: LegCard) -> tuple[FloatArray, ...] | None:
    """Give the heights at the stations of every leg; None without a file, or without legs."""
    if path is None or card.order == "free":
        return None
    apart_m = Settings().carried_card.station_m
    return tuple(
        heights_at(path, card.grid.code, stations(leg.line, apart_m)[1]) for leg in card.legs
    )


def _names(cards: Sequence[LegCard], plans: Sequence[Path]) -> list[str]:
    """Give each lane a name of its own: its course's, or its file's where names are shared."""
    names = [card.name for card in cards]
    if len(set(names)) == len(names):
        return names
    files = [writable(path.stem) for path in plans]
    return files if len(set(files)) == len(files) else [writable(str(path)) for path in plans]


def _time(text: str | None) -> dt.time | None:
    """Give the time of day that --start says, in whatever zone it says; UTC where it says none."""
    found = None if text is None else clock_moment(text)
    if text is not None and not isinstance(found, dt.time):
        message = (
            f'--start: "{text}" is no time of day. Write it like 13:30, in UTC, or like '
            "14:30+01:00 by another clock."
        )
        raise WrongUseError(message)
    return found if isinstance(found, dt.time) else None
