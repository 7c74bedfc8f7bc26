"""The moments of a walker's log, beside those of the recording: by which clock, on which day."""

from __future__ import annotations

import datetime as dt

from audit.moments import DAY_S, day_aside_s

ZONES_S = 14 * 3600.0
"""No clock on earth is further from UTC."""
_HOUR_S = 3600.0
_PART_HOURS = (-9.5, -3.5, -2.5, 3.5, 4.5, 5.5, 5.75, 6.5, 8.75, 9.5, 10.5, 12.75, 13.75)
CLOCKS_S: tuple[float, ...] = tuple(_HOUR_S * hours for hours in (*range(-12, 15), *_PART_HOURS))
"""What clocks are ahead of UTC: whole hours, and the few zones of half and quarter hours that there
are, in summer too (tz database, from memory)."""


def seconds_after(noted: dt.time | dt.datetime, moment_s: float) -> float:
    """Give how long after a moment of the recording the log says; the nearest, without a day.

    Without a time zone it is what a watch showed, taken as UTC.
    """
    zone = noted.utcoffset() or dt.timedelta()
    if isinstance(noted, dt.datetime):
        return noted.replace(tzinfo=dt.timezone(zone)).timestamp() - moment_s
    of_day_s = noted.hour * 3600.0 + noted.minute * 60.0 + noted.second - zone.total_seconds()
    return day_aside_s(of_day_s - moment_s)


def days_off(after_s: float, *, zoned: bool) -> int:
    """Give how many days a moment is off; the hours of a watch without a zone are none."""
    within_s = DAY_S / 2.0 if zoned else ZONES_S
    return 0 if abs(after_s) <= within_s else round(after_s / DAY_S)


def zone_near_s(after_s: float) -> float:
    """Give the time zone nearest to what a watch is ahead by; no clock shows 1:15."""
    by_s = {abs(ahead_s - after_s): ahead_s for ahead_s in CLOCKS_S}
    return by_s[min(by_s)]
