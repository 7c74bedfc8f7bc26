"""Clocks that do not agree with the roster: one question for a batch, and one for who differs."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from audit.classroom.class_result import ClassFinding
from audit.classroom.walker_task import WalkerTask
from audit.settings import GradingSettings
from audit.words import sentence

_HOUR_S = 3600.0
"""Clocks of other zones are off by whole hours, but for a few."""


def clocks_asked(tasks: Sequence[WalkerTask], settings: GradingSettings) -> list[ClassFinding]:
    """Ask about starts that lie far from the roster's, and about those unlike the others.

    A recording that fits another lane better is not asked about here too.
    """
    off_s = {
        task.ident: task.left_s - task.start_s
        for task in tasks
        if task.left_s is not None and task.start_s is not None and task.better_lane is None
    }
    if not off_s:
        return []
    usual_s = float(np.median(list(off_s.values())))
    asked = []
    if abs(usual_s) > settings.clock_off_s:
        asked.append(_batch(usual_s, len(off_s), settings))
    else:
        usual_s = 0.0
    for task in tasks:
        own_s = off_s.get(task.ident)
        if own_s is not None and abs(own_s - usual_s) > settings.clock_off_s:
            asked.append(_single(task, own_s, settings))
    return asked


def _batch(usual_s: float, count: int, settings: GradingSettings) -> ClassFinding:
    message = sentence("shows-batch-clock", count=str(count), **_off(usual_s, settings))
    return ClassFinding(what="clock", message=message, question=True)


def _single(task: WalkerTask, off_s: float, settings: GradingSettings) -> ClassFinding:
    message = sentence("shows-clock", walker=task.name, **_off(off_s, settings))
    return ClassFinding(
        what="clock", message=message, lane=task.lane, walkers=(task.ident,), question=True
    )


def _off(off_s: float, settings: GradingSettings) -> dict[str, str]:
    """Give how far a start is off, which of the two was taken, and which whole hours to add."""
    taken = "roster" if abs(off_s) <= settings.clock_off_s else "both"
    hours = round(off_s / _HOUR_S)
    whole = hours != 0 and abs(off_s - hours * _HOUR_S) <= settings.clock_off_s
    return {
        "hours": f"{-hours:+d}:00" if whole else "none",
        "minutes": f"{abs(off_s) / 60.0:.0f}",
        "later": "yes" if off_s > 0 else "no",
        "taken": "recording" if abs(off_s) > settings.clock_wrong_s else taken,
    }
