"""How long a walk took by the clock, from its start to its last point."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence

from audit.classroom.arrival import Arrival
from audit.grading.verdicts import WalkTime
from audit.moments import calendar_moment
from audit.settings import GradingSettings
from audit.words import sentence

NO_TIME = WalkTime(begun_s=None, ended_s=None, elapsed_s=None, error_s=0.0)


def walk_time(
    left: Sequence[float],
    let_go_s: float | None,
    arrived: Arrival | None,
    interval_s: float | None,
    settings: GradingSettings,
) -> WalkTime:
    """Give the time from the start to the last point.

    ``left`` are the moments at which the start was left before the first leg's claim: of
    several the first counts, and the last is in the error. The roster's start counts. Where
    the recording left the start at another time, the start was late or a clock is wrong: then
    both moments are the recording's own, for no time is the difference of two clocks that
    disagree, and the time from the roster's start is told beside it while it may be right.
    """
    if interval_s is None:
        return NO_TIME
    begun_s, error_s, late_start = None, interval_s, False
    if left:
        begun_s = left[0]
        error_s += left[-1] - left[0] + settings.start_m / settings.walking_m_s / 2.0
    if let_go_s is not None:
        off_s = 0.0 if begun_s is None else abs(begun_s - let_go_s)
        late_start = settings.clock_off_s < off_s <= settings.clock_wrong_s
        if off_s <= settings.clock_off_s:
            begun_s, error_s = let_go_s, interval_s
    ended_s = None if arrived is None else arrived.time_s
    from_roster_s = None
    if late_start and ended_s is not None and let_go_s is not None:
        from_roster_s = ended_s - let_go_s
    elapsed_s = None
    if begun_s is not None and ended_s is not None and ended_s > begun_s:
        elapsed_s = ended_s - begun_s
    return WalkTime(
        begun_s=begun_s,
        ended_s=ended_s,
        elapsed_s=elapsed_s,
        error_s=error_s + (0.0 if arrived is None else arrived.error_s),
        from_roster_s=from_roster_s,
    )


def left_again(left: Sequence[float], time: WalkTime) -> tuple[str, ...]:
    """Say that the start was left more than once, where the recording's own start counts."""
    if len(left) < 2 or time.begun_s != left[0]:
        return ()
    minutes = f"{(left[-1] - left[0]) / 60.0:.0f}"
    return (sentence("shows-left-again", times=str(len(left)), minutes=minutes),)


def roster_start_s(start: dt.datetime | dt.time | None, near_s: float | None) -> float | None:
    """Give the roster's start in seconds since 1970; a clock time is of the nearest day.

    UTC, unless it says otherwise.
    """
    if start is None:
        return None
    if isinstance(start, dt.datetime):
        return (start if start.tzinfo else start.replace(tzinfo=dt.UTC)).timestamp()
    if near_s is None:
        return None
    today = calendar_moment(near_s).toordinal()
    zone = start.tzinfo or dt.UTC
    last = dt.date.max.toordinal()
    days = [dt.date.fromordinal(day) for day in (today - 1, today, today + 1) if 1 <= day <= last]
    moments = [dt.datetime.combine(one, start.replace(tzinfo=zone)).timestamp() for one in days]
    return min(moments, key=lambda one: abs(one - near_s))
