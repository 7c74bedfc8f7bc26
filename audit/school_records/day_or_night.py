"""Day, twilight or night, by the height of the sun at a place."""

from __future__ import annotations

from audit.school_records.attempt import Light
from audit.settings import RecordsSettings
from audit.sun import sun_height_deg


def light_of(
    time_s: float | None,
    longitude_deg: float,
    latitude_deg: float,
    settings: RecordsSettings | None = None,
) -> Light:
    """Tell what light a moment has, in seconds since 1970; "unknown" without one."""
    if time_s is None:
        return "unknown"
    limits = settings or RecordsSettings()
    height = sun_height_deg(time_s, longitude_deg, latitude_deg)
    if height > limits.sun_up_deg:
        return "day"
    return "night" if height < limits.civil_dusk_deg else "twilight"


def light_between(
    begun_s: float | None,
    ended_s: float | None,
    longitude_deg: float,
    latitude_deg: float,
    settings: RecordsSettings | None = None,
) -> Light:
    """Tell what light the middle between two moments has; "unknown" where one is."""
    middle_s = None if begun_s is None or ended_s is None else (begun_s + ended_s) / 2.0
    return light_of(middle_s, longitude_deg, latitude_deg, settings)
