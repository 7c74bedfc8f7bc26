"""Plan, recording and log from their files, with every problem of all three told at once."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TypeVar

from audit.cli.endings import WrongUseError
from audit.cli.messages import command_line
from audit.errors import InputRefusedError
from audit.plan import Plan
from audit.readers.course_settings import CourseOptions
from audit.readers.gpx_track import read_track
from audit.readers.plan_file import read_plan
from audit.readers.walkers_log_file import read_log
from audit.track import Track
from audit.walkers_log import WalkersLog

Read = TypeVar("Read")


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs:
    """What a debrief is made from."""

    plan: Plan
    track: Track
    log: WalkersLog | None
    card: Plan | None = None


def read_inputs(
    plan: Path, track: Path, log: Path | None, options: CourseOptions, card: Path | None = None
) -> Inputs:
    """Give what the files hold.

    Raises
    ------
    InputRefusedError
        With the problems of all the files.
    WrongUseError
        Where plan and recording stand in each other's place.
    """
    refusals: list[InputRefusedError] = []
    planned = _attempt(lambda: read_plan(plan, **options), refusals)
    walked = _attempt(lambda: read_track(track), refusals)
    noted = _attempt(lambda: read_log(log), refusals) if log else None
    own = None
    if card is not None and planned is not None:
        own = _attempt(lambda: read_plan(card, points=planned.points, grid=planned.grid), refusals)
    if planned is not None and walked is not None and not refusals:
        return Inputs(plan=planned, track=walked, log=noted, card=own)
    if planned is None or walked is None:
        _refuse_swapped(plan, track)
    raise InputRefusedError([problem for refused in refusals for problem in refused.problems])


def _attempt(read: Callable[[], Read], refusals: list[InputRefusedError]) -> Read | None:
    try:
        return read()
    except InputRefusedError as refused:
        refusals.append(refused)
        return None


def _refuse_swapped(plan: Path, track: Path) -> None:
    """Say so where the two files would do the other way round."""
    refusals: list[InputRefusedError] = []
    _attempt(lambda: read_plan(track), refusals)
    _attempt(lambda: read_track(plan), refusals)
    if not refusals:
        message = (
            f"The two files are swapped: {track} holds the plan and {plan} the recording. "
            f"Write: {command_line('debrief', track, plan)}"
        )
        raise WrongUseError(message)
