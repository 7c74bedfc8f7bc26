"""Recordings of another day than their plan: one question for a class, one for who differs."""

from __future__ import annotations

import datetime as dt
from collections import Counter
from collections.abc import Mapping, Sequence

import numpy as np

from audit.classroom.class_result import ClassFinding
from audit.classroom.lane import Lane
from audit.classroom.walker_task import WalkerTask
from audit.school_records.day_walked import day_walked
from audit.words import sentence
from audit.words.figures import Listed

OTHER_DAY = "other-day"
"""What the question about one walker's day is called: his may be quite another walk."""


def days_from_plan(lane: Lane, begun_s: float) -> int | None:
    """Give how many days after its plan's day a walk was begun; None where no plan names one."""
    card = lane.card
    if card.date is None or card.date_source == "track":
        return None
    day = day_walked(begun_s, card.points[0].longitude_deg, card.date)
    return None if day is None else (day - card.date).days


def days_asked(tasks: Sequence[WalkerTask], lanes: Sequence[Lane]) -> list[ClassFinding]:
    """Ask about recordings of another day than the plan, and about those unlike the others.

    A plan may be used on many days: what most have is asked about once, of the class. Nobody
    is asked about the day that the roster names for him.
    """
    of = {lane.name: lane for lane in lanes}
    off = {
        task.ident: days
        for task in tasks
        if (begun_s := _begun_s(task)) is not None
        and (days := days_from_plan(of[task.lane], begun_s)) is not None
    }
    if not off:
        return []
    counts = Counter(off.values())
    usual = max(counts, key=lambda days: (counts[days], days == 0))
    # Of a class of one nobody knows whether the plan was used again or the file is another's.
    usual = usual if counts[usual] > 1 else 0
    asked = [_batch(tasks, of, off, usual)] if usual else []
    return asked + [
        _single(task, of[task.lane], off[task.ident], usual)
        for task in tasks
        if task.ident in off and off[task.ident] != usual and not _as_named(task, of[task.lane])
    ]


def _as_named(task: WalkerTask, lane: Lane) -> bool:
    """Tell whether a walk was begun on the day that the roster names for it."""
    if not task.day_named or task.start_s is None:
        return False
    longitude_deg = lane.card.points[0].longitude_deg
    named = day_walked(task.start_s, longitude_deg, None)
    return day_walked(_begun_s(task), longitude_deg, named) == named


def _begun_s(task: WalkerTask) -> float | None:
    """Give when the start was left, else when the recording begins."""
    if task.left_s is not None or task.track is None:
        return task.left_s
    times = task.track.time_s[np.isfinite(task.track.time_s)]
    return float(times.min()) if len(times) else None


def _batch(
    tasks: Sequence[WalkerTask], lanes: Mapping[str, Lane], off: Mapping[str, int], usual: int
) -> ClassFinding:
    planned = {lanes[task.lane].card.date for task in tasks if off.get(task.ident) == usual}
    days = sorted(day for day in planned if day is not None)
    message = sentence(
        "shows-batch-day",
        count=list(off.values()).count(usual),
        planned=Listed(things=[day.isoformat() for day in days]),
        walked="none"
        if tasks[0].private
        else Listed(things=[(day + dt.timedelta(days=usual)).isoformat() for day in days]),
    )
    return ClassFinding(what="day", message=message, question=True)


def _single(task: WalkerTask, lane: Lane, days: int, usual: int) -> ClassFinding:
    planned = lane.card.date or dt.date.min
    message = sentence(
        "shows-day",
        walker=task.name,
        planned=planned.isoformat(),
        walked="none" if task.private else (planned + dt.timedelta(days=days)).isoformat(),
        unlike="others" if usual else "plan",
    )
    return ClassFinding(
        what=OTHER_DAY, message=message, lane=task.lane, walkers=(task.ident,), question=True
    )
