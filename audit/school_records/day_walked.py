"""The day on which a walk was walked: by the recording, for a plan may be used on many days."""

from __future__ import annotations

import datetime as dt

from audit.moments import DAY_LEEWAY_S, day_by_sun


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
    near = {day_by_sun(begun_s + by_s, longitude_deg) for by_s in (-DAY_LEEWAY_S, DAY_LEEWAY_S)}
    return planned if planned in near else day_by_sun(begun_s, longitude_deg)
