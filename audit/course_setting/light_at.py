"""Whether it is light at a place at a moment, and until when."""

from __future__ import annotations

import datetime as dt

from audit.course_setting.checked_lanes import LightAt
from audit.course_setting.daylight import CIVIL_DEG, daylight
from audit.moments import in_calendar
from audit.sun import sun_height_deg

_DAYS = 2
"""Solar days looked at on either side: dusk may come after midnight UTC, and a day late."""
_ROOM_DAYS = _DAYS + 2
"""The sun's times of a solar day lie within two days of its midnight UTC."""


def light_can_be_told(moment: dt.datetime) -> bool:
    """Tell whether the calendar has the days that the light of a moment is looked for in."""
    return in_calendar(moment.timestamp(), days_around=_ROOM_DAYS)


def light_at(moment: dt.datetime, longitude_deg: float, latitude_deg: float) -> LightAt:
    """Tell the light of a moment in UTC, from the dawns and dusks on either side of it.

    Where there are none for days, as in polar day and night, the height of the sun decides.
    """
    found = _dawns_and_dusks(moment.date(), longitude_deg, latitude_deg)
    before = [one for one in found if one[0] <= moment]
    after = [one for one in found if one[0] > moment]
    if before:
        light = before[-1][1]
    elif after:
        light = not after[0][1]
    else:
        light = sun_height_deg(moment.timestamp(), longitude_deg, latitude_deg) > CIVIL_DEG
    return LightAt(
        moment=moment,
        light=light,
        since=before[-1][0] if before else None,
        until=next((at for at, dawn in after if dawn != light), None),
    )


def _dawns_and_dusks(
    day: dt.date, longitude_deg: float, latitude_deg: float
) -> list[tuple[dt.datetime, bool]]:
    """Give the civil dawns (True) and dusks (False) around a day, in their order."""
    days = [day + dt.timedelta(days=shift) for shift in range(-_DAYS, _DAYS + 1)]
    lights = [daylight(one, longitude_deg, latitude_deg) for one in days]
    found = [(one.civil_dawn, True) for one in lights] + [(one.civil_dusk, False) for one in lights]
    return sorted((at, dawn) for at, dawn in found if at is not None)
