"""Whether a shift of all clocks stands on one walker alone, or against the times of the codes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from audit.classroom.batch_clock import BatchClock
from audit.classroom.class_result import ClassFinding
from audit.classroom.walker_result import LegResult, WalkerResult
from audit.moments import day_aside_s
from audit.settings import GradingSettings
from audit.words import sentence


def shift_asked(
    clock: BatchClock, walkers: Sequence[WalkerResult], settings: GradingSettings
) -> Iterator[ClassFinding]:
    """Ask about a shift that one start alone set, and one that the codes' times disagree with."""
    if clock.pairs == 1 and abs(clock.shift_s) > settings.clock_off_s:
        yield _asked("shows-shift-alone", clock.shift_s)
    off_s = [
        off for walker in walkers for leg in walker.legs if (off := _code_off_s(leg)) is not None
    ]
    if not clock.shift_s or not off_s:
        return
    usual_s = float(np.median(off_s))
    if abs(usual_s) > settings.clock_off_s:
        unshifted = abs(usual_s + clock.shift_s) <= settings.clock_off_s
        told = {"count": str(len(off_s)), "unshifted": "yes" if unshifted else "no"}
        yield _asked("shows-code-times", usual_s, **told)


def _asked(ident: str, off_s: float, **told: str) -> ClassFinding:
    minutes = f"{abs(off_s) / 60.0:.0f}"
    later = "yes" if off_s > 0.0 else "no"
    message = sentence(ident, minutes=minutes, later=later, **told)
    return ClassFinding(what="clock", message=message, question=True)


def _code_off_s(leg: LegResult) -> float | None:
    """Give how much later a code was noted than the walk was at its point; None untold.

    Less than half a day either way: a clock on a wall shows no date.
    """
    punch, approach = leg.point.punch, leg.point.approach
    if punch is None or punch.noted_s is None or punch.right is False:
        return None
    if approach is None or approach.time_s is None:
        return None
    if not approach.in_turn or approach.distance_m > leg.point.radius_m:
        return None
    return day_aside_s(punch.noted_s - approach.time_s)
