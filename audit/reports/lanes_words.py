"""The table of lanes, cell by cell, in words."""

from __future__ import annotations

import datetime as dt

from audit.course_setting.checked_lanes import CheckedLane, Daylight, LightAt
from audit.moments import utc_minute
from audit.reports import digits, wording
from audit.reports.time_words import rule_name
from audit.settings import CourseSettingSettings
from audit.walking_times import WALKING_RULES
from audit.words import say
from audit.words.figures import Percent


def lane_rows(lanes: tuple[CheckedLane, ...]) -> list[tuple[str, list[str]]]:
    """Give the rows of the table: a name, and a cell for each lane."""
    columns = [_cells(one) for one in lanes]
    return [(name, [column[name] for column in columns]) for name in columns[0]]


def method_words(rules: CourseSettingSettings) -> str:
    """Say how it is judged that a lane stands out."""
    return say(
        "lanes-method",
        share=Percent(share=rules.uneven_share),
        climb_share=Percent(share=rules.uneven_climb_share),
        climb=f"{digits.whole(rules.uneven_least_climb_m)} m",
        chance=Percent(share=rules.uneven_chance),
        lanes=str(rules.robust_least_lanes),
        sds=f"{rules.robust_sds:g}",
    )


def _cells(one: CheckedLane) -> dict[str, str]:
    figures, times_s = one.figures, dict(one.figures.times_s)
    start, end = figures.at_start, figures.at_end
    cells = {
        "legs": str(figures.legs),
        "length": _length(figures.length_m),
        "longest": say(
            "lanes-longest-said",
            size=_length(figures.longest_m),
            leg=str(figures.longest_leg),
        ),
        "climb": _height(figures.climb_m),
        "descent": _height(figures.descent_m),
    }
    times = {
        say("lanes-time", rule=rule_name(rule.name)): wording.reckoned_time(
            times_s.get(rule.name, 0.0)
        )
        for rule in WALKING_RULES
    }
    chances = {
        "chance": _share(figures.mean_chance),
        "hardest": say(
            "lanes-hardest-said",
            leg=str(figures.least_chance_leg),
            chance=_share(figures.least_chance),
        ),
    }
    rest = {
        "twins": str(figures.twins),
        **_sun(one.daylight),
        "light-begins": _light(start),
        "ends-by": _unknown() if end is None else say("lanes-hour", at=_clock(end.moment)),
        "light-left": _light(end),
    }
    of_legs = {**_named(cells), **times, **_named(chances)}
    if figures.legs is None:
        of_legs = dict.fromkeys(of_legs, say("lanes-any-order"))
    return {**of_legs, **_named(rest)}


def _named(cells: dict[str, str]) -> dict[str, str]:
    return {say(f"lanes-{name}"): words for name, words in cells.items()}


def _unknown() -> str:
    return say("lanes-not-known")


def _length(value_m: float | None) -> str:
    return _unknown() if value_m is None else digits.stated_metres(value_m)


def _share(share: float | None) -> str:
    return _unknown() if share is None else digits.percent(share)


def _height(value_m: float | None) -> str:
    return _unknown() if value_m is None else f"{digits.whole(value_m)} m"


def _sun(light: Daylight | None) -> dict[str, str]:
    if light is None:
        return {"sun": _unknown(), "twilight": _unknown()}
    sun = _hours(light.sunrise, light.sunset)
    if light.always:
        sun = say("lanes-no-sunset" if light.always == "light" else "lanes-no-sunrise")
    dawn = light.civil_dawn
    return {"sun": sun, "twilight": _hours(dawn, light.civil_dusk) if dawn else say("lanes-none")}


def _hours(begin: dt.datetime | None, end: dt.datetime | None) -> str:
    return say("lanes-hours", to=_clock(end), **{"from": _clock(begin)})


def _light(at: LightAt | None) -> str:
    """Say that it is light or dark, and how long to the civil dusk or dawn that ends it."""
    if at is None:
        return _unknown()
    name = "light" if at.light else "dark"
    if at.until is None:
        return say(f"lanes-{name}-on")
    to_s = (at.until - at.moment).total_seconds()
    return say(f"lanes-{name}-to", time=wording.reckoned_time(to_s))


def _clock(moment: dt.datetime | None) -> str:
    if moment is None:
        return say("lanes-none")
    return utc_minute(moment.timestamp())
