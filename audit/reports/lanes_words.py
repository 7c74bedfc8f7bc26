"""The table of lanes, cell by cell, in words."""

from __future__ import annotations

import datetime as dt

from audit.course_setting.records import CheckedLane, Daylight
from audit.reports import digits, wording
from audit.settings import CourseSettingSettings
from audit.track import utc_text

NOT_KNOWN = "not known"


def lane_rows(lanes: tuple[CheckedLane, ...]) -> list[tuple[str, list[str]]]:
    """Give the rows of the table: a name, and a cell for each lane."""
    columns = [_cells(one) for one in lanes]
    return [(name, [column[name] for column in columns]) for name in columns[0]]


def method_words() -> str:
    """Say how it is judged that a lane stands out."""
    rules = CourseSettingSettings()
    return (
        "A lane stands out where its figure is off the middle (median) of the other lanes by more "
        f"than {rules.uneven_share:.0%} (climb: {rules.uneven_climb_share:.0%} and "
        f"{digits.whole(rules.uneven_least_climb_m)} m; legs: more than one; mean chance in "
        f"sight: {rules.uneven_chance:.0%}); from {rules.robust_least_lanes} lanes on it must also "
        f"lie beyond {rules.robust_sds:g} robust standard deviations (1.4826 times the median "
        "absolute deviation) of them. Times are without rests, each by the rule named."
    )


def _cells(one: CheckedLane) -> dict[str, str]:
    figures = one.figures
    return {
        "legs": str(figures.legs),
        "length": f"{digits.whole(figures.length_m)} m",
        "longest leg": f"{digits.whole(figures.longest_m)} m (leg {figures.longest_leg})",
        "climb": _metres(figures.climb_m),
        "descent": _metres(figures.descent_m),
        **{f"time, {rule}": wording.reckoned_time(seconds) for rule, seconds in figures.times_s},
        "mean chance in sight": digits.percent(figures.mean_chance),
        "hardest leg": (
            f"leg {figures.least_chance_leg}, {digits.percent(figures.least_chance)} in sight"
        ),
        "twin points": str(figures.twins),
        **_sun(one.daylight),
        "ends by": NOT_KNOWN if figures.ends_by is None else f"{_clock(figures.ends_by)} UTC",
        "light left at the end": _left(figures.light_left_s),
    }


def _metres(value_m: float | None) -> str:
    return NOT_KNOWN if value_m is None else f"{digits.whole(value_m)} m"


def _sun(light: Daylight | None) -> dict[str, str]:
    if light is None:
        return {"sunrise, sunset": NOT_KNOWN, "civil twilight": NOT_KNOWN}
    sun = f"{_clock(light.sunrise)} to {_clock(light.sunset)} UTC"
    if light.always:
        sun = "the sun does not set" if light.always == "light" else "the sun does not rise"
    twilight = f"{_clock(light.civil_dawn)} to {_clock(light.civil_dusk)} UTC"
    return {"sunrise, sunset": sun, "civil twilight": twilight if light.civil_dawn else "none"}


def _left(seconds: float | None) -> str:
    if seconds is None:
        return NOT_KNOWN
    words = wording.reckoned_time(abs(seconds))
    return f"{words} to civil dusk" if seconds >= 0.0 else f"dark since {words}"


def _clock(moment: dt.datetime | None) -> str:
    return "none" if moment is None else utc_text(round(moment.timestamp() / 60.0) * 60.0)[11:16]
