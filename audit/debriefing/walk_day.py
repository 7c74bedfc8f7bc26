"""The day of a recording, which fixes the declination where the plan has none."""

from __future__ import annotations

import datetime as dt

import numpy as np

from audit.errors import refuse
from audit.matching.clean_times import GPS_BEGAN_S, never_set
from audit.moments import utc_text
from audit.plan import Plan
from audit.track import Track


def track_date(track: Track) -> dt.date | None:
    """Give the day (UTC) of the middle fix whose time says one; None where none does.

    A clock that was never set says no day, whatever it shows.
    """
    times = track.time_s[np.isfinite(track.time_s)]
    times = times[times >= GPS_BEGAN_S]
    if len(times) == 0 or never_set(track.time_s):
        return None
    return dt.date.fromisoformat(utc_text(float(np.sort(times)[len(times) // 2]))[:10])


def refuse_unset_day(plan: Plan, track: Track) -> None:
    """Refuse a recording of no day where the angle of the plan can only be had for a day.

    Raises
    ------
    InputRefusedError
        Where the clock of the recording was never set, and the plan has neither.
    """
    if plan.date is None and plan.grid_magnetic_angle_deg is None and never_set(track.time_s):
        shown = utc_text(float(np.nanmin(track.time_s)))[:10]
        rule = "is from a clock that was never set, and the plan has no date for its declination"
        remedy = "Give the day of the walk as date (option --date)."
        raise refuse(track.source, "date", shown, rule, remedy)
