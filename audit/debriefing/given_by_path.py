"""What a caller gives a debrief: records, or beside plan and recording the paths of files."""

from __future__ import annotations

from pathlib import Path

from audit.plan import Plan
from audit.readers.plan_file import read_plan
from audit.readers.walkers_log_file import read_log
from audit.settings import Settings
from audit.track import Track
from audit.walkers_log import WalkersLog


def check_plan_and_track(plan: object, track: object) -> None:
    """Say how to read what is given where it is not read yet.

    Raises
    ------
    TypeError
        For a path, whose plan may need options of its own.
    """
    for name, given, kind, reader in (
        ("plan", plan, Plan, "audit.read_plan"),
        ("track", track, Track, "audit.read_track"),
    ):
        if not isinstance(given, kind):
            message = f"{name} is a {type(given).__name__}; give what {reader} makes of its file"
            raise TypeError(message)


def given_log(log: WalkersLog | str | Path | None, settings: Settings) -> WalkersLog | None:
    """Give the walker's log, read where its path is given."""
    return read_log(log, settings=settings) if isinstance(log, str | Path) else log


def given_card(card: Plan | str | Path | None, plan: Plan, settings: Settings) -> Plan | None:
    """Give the walker's own card; a file may name the plan's points without their positions."""
    if isinstance(card, str | Path):
        return read_plan(card, points=plan.points, grid=plan.grid, settings=settings)
    return card
