"""Lanes that are begun or walked in the dark, and hours that fall on another day there."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence

from audit.course_setting.checked_lanes import CheckedLane, LaneFinding, LightAt
from audit.moments import calendar_moment, utc_minute
from audit.settings import CourseSettingSettings
from audit.words import sentence
from audit.words.figures import Number


def dark_lanes(
    checked: Sequence[CheckedLane], settings: CourseSettingSettings | None = None
) -> Iterator[LaneFinding]:
    """Tell lanes begun in the dark, or that the slowest rule ends after civil dusk or just before.

    A lane just done by dusk leaves no light for a slow walker, nor for looking for one.
    """
    chosen = settings or CourseSettingSettings()
    for one in checked:
        start, end = one.figures.at_start, one.figures.at_end
        if start is None:
            continue
        lasts = end is None or start.until is None or end.moment <= start.until
        if not (start.light and lasts):
            yield LaneFinding(
                kind="dark-before-the-end", lane=one.lane.name, what="daylight",
                message=_dark_words(one.lane.name, start, end),
            )  # fmt: skip
        elif end is not None:
            yield from _short_light(one, start, end, chosen)


def _short_light(
    one: CheckedLane, start: LightAt, end: LightAt, settings: CourseSettingSettings
) -> Iterator[LaneFinding]:
    left_s = one.figures.light_left_s
    walking_s = (end.moment - start.moment).total_seconds()
    least_s = max(settings.least_light_left_s, settings.least_light_share * walking_s)
    if left_s is None or left_s >= least_s:
        return
    message = sentence(
        "lanes-light-short",
        lane=one.lane.name,
        begins=_hour(start.moment),
        ends=_hour(end.moment),
        minutes=Number(value=left_s / 60.0),
        dusk=_hour(end.until),
    )
    yield LaneFinding(
        kind="dark-soon-after-the-end", lane=one.lane.name, what="daylight", message=message
    )


def _dark_words(lane: str, start: LightAt, end: LightAt | None) -> str:
    hours = {"lane": lane, "begins": _hour(start.moment)}
    if start.light and end is not None:
        return sentence(
            "lanes-after-dusk", **hours, ends=_hour(end.moment), dusk=_hour(start.until)
        )
    if start.until is None:
        return sentence("lanes-night", lane=lane)
    dawn = _hour(start.until)
    if end is not None and end.moment <= start.until:
        return sentence("lanes-all-dark", **hours, ends=_hour(end.moment), dawn=dawn)
    gone_s = None if start.since is None else (start.moment - start.since).total_seconds()
    if gone_s is not None and gone_s < (start.until - start.moment).total_seconds():
        gone_h, gone_min = divmod(round(gone_s / 60.0), 60)
        told = {"hours": str(gone_h), "minutes": f"{gone_min:02d}", "dusk": _hour(start.since)}
        return sentence("lanes-begun-after-dusk", **hours, **told)
    return sentence("lanes-before-dawn", **hours, dawn=dawn)


def _hour(moment: dt.datetime | None) -> str:
    return "" if moment is None else utc_minute(moment.timestamp())


def other_days(checked: Sequence[CheckedLane]) -> Iterator[str]:
    """Say where the hour of the start is on another day by the sun there than the plan's day."""
    for one in checked:
        start, card = one.figures.at_start, one.lane.card
        if start is None or card.date is None:
            continue
        there = calendar_moment(start.moment.timestamp() + 240.0 * card.points[0].longitude_deg)
        if there.date() == card.date:
            continue
        meant = card.date + (card.date - there.date())
        yield sentence(
            "lanes-note-other-day",
            lane=one.lane.name,
            begins=_hour(start.moment),
            date=str(card.date),
            there=f"{there:%H:%M}",
            day=str(there.date()),
            meant=str(meant),
        )
