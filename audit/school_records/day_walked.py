"""The day on which a walk was walked: by the recording, for a plan may be used on many days."""

from __future__ import annotations

import datetime as dt

from audit.moments import calendar_moment

_DAY_S = 86_400.0
_LEEWAY_S = 6.0 * 3600.0
"""A night course goes on past midnight, and the clock of a place may differ from its sun."""


def day_walked(
    begun_s: float | None, longitude_deg: float, planned: dt.date | None
) -> dt.date | None:
    """Give the day on which a walk was begun, by the sun of the place.

    Parameters
    ----------
    begun_s : float or None
        Seconds since 1970, UTC; without it the planned day is all there is.
    longitude_deg : float
        East positive.
    planned : date or None
        The day of the plan, which counts where the walk was begun within six hours of it.
    """
    if begun_s is None:
        return planned
    by_sun_s = begun_s + longitude_deg / 360.0 * _DAY_S
    near = {_day(by_sun_s + by_s) for by_s in (-_LEEWAY_S, _LEEWAY_S)}
    return planned if planned in near else _day(by_sun_s)


def _day(moment_s: float) -> dt.date:
    return calendar_moment(moment_s).date()
