"""How long a walk took by the clock, and what the two moments rest on."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence

from audit.grading.verdicts import PointVerdict, WalkTime
from audit.moments import calendar_moment
from audit.settings import GradingSettings

NO_TIME = WalkTime(
    begun_s=None, ended_s=None, begun_from="", ended_from="", elapsed_s=None, error_s=0.0
)


def walk_time(
    left_s: float | None,
    let_go_s: float | None,
    points: Sequence[PointVerdict],
    interval_s: float | None,
    settings: GradingSettings,
) -> WalkTime:
    """Give the time from the start to the last point.

    The roster's start counts; where the recording left the start at quite another time,
    one of the clocks is wrong, and the recording's own is taken for both moments.
    """
    if interval_s is None:
        return NO_TIME
    begun_s, begun_from = left_s, "the recording: the start was left"
    if let_go_s is not None:
        wrong = left_s is not None and abs(left_s - let_go_s) > settings.clock_wrong_s
        if not wrong:
            begun_s, begun_from = let_go_s, "the roster"
    last = points[-1] if points else None
    ended_s, ended_from = None, ""
    if last is not None and last.approach is not None and _may_be_there(last):
        ended_s, ended_from = last.approach.time_s, "the recording: the last point was reached"
    elapsed_s = None
    if begun_s is not None and ended_s is not None and ended_s > begun_s:
        elapsed_s = ended_s - begun_s
    return WalkTime(
        begun_s=begun_s,
        ended_s=ended_s,
        begun_from=begun_from if begun_s is not None else "",
        ended_from=ended_from,
        elapsed_s=elapsed_s,
        error_s=2.0 * interval_s,
    )


def _may_be_there(point: PointVerdict) -> bool:
    """Tell whether a point was reached, if it was, at the moment of the nearest approach."""
    if point.approach is None or point.grade == "found":
        return point.approach is not None
    near = point.approach.distance_m <= point.radius_m + point.error_m
    return near and point.grade == "doubtful"


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
