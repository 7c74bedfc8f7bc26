"""The whole check of one or more lanes on one piece of ground."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence

from audit.course_setting.checked_lanes import (
    CheckedLane,
    Lane,
    LaneFinding,
    LanesCheck,
)
from audit.course_setting.dark_lanes import dark_lanes, other_days
from audit.course_setting.daylight import daylight
from audit.course_setting.fairness import uneven_lanes
from audit.course_setting.lane_figures import lane_figures
from audit.course_setting.legs_and_areas import legs_and_areas, placed_finding
from audit.course_setting.light_at import light_can_be_told
from audit.course_setting.safety_findings import safety_findings
from audit.course_setting.twin_points import TwinPoints, twin_points
from audit.course_setting.walks_and_areas import walks_and_areas
from audit.forecast.course_forecast import forecast_course
from audit.forecast.walker_scatter import WalkerScatter
from audit.geodesy.areas_on_grid import GroundAreas
from audit.settings import Settings
from audit.words import sentence
from audit.words.figures import Listed

_NOON = dt.time(12)


def check_lanes(
    lanes: Sequence[Lane],
    areas: GroundAreas | None = None,
    *,
    sets_out: dt.time | None = None,
    scatter: WalkerScatter | None = None,
    settings: Settings | None = None,
) -> LanesCheck:
    """Check lanes that stand on one grid.

    Parameters
    ----------
    lanes
        With their cards on the same grid.
    areas
        Bounds, no-go areas and hazards; without them nothing is said of them.
    sets_out
        Time of day at which the lanes are begun, in UTC unless it has a zone.
    scatter
        Of the walkers; an ordinary one where left out.
    """
    settings = settings or Settings()
    areas = areas or GroundAreas()
    twins = tuple(twin_points(lanes, settings.course_setting))
    checked = tuple(_checked(lane, twins, sets_out, scatter, settings) for lane in lanes)
    names = [lane.name for lane in lanes]
    findings = (
        *uneven_lanes(names, [one.figures for one in checked], settings.course_setting),
        *_twins_told(lanes, twins),
        *(finding for lane in lanes for finding in legs_and_areas(lane, areas)),
        *(
            finding
            for one in checked
            for finding in walks_and_areas(one.lane, one.forecast, areas, settings.forecast)
        ),
        *safety_findings(lanes, areas, settings.course_setting),
        *dark_lanes(checked, settings.course_setting),
    )
    return LanesCheck(
        lanes=checked,
        findings=findings,
        notes=tuple(_notes(checked, areas)),
        settings=settings.course_setting,
    )


def _checked(
    lane: Lane,
    twins: Sequence[TwinPoints],
    sets_out: dt.time | None,
    scatter: WalkerScatter | None,
    settings: Settings,
) -> CheckedLane:
    forecast = None
    if lane.legs:
        forecast = forecast_course(lane.card, scatter, settings=settings.forecast)
    first, day = lane.card.points[0], lane.card.date
    light = begun = None
    if day is not None and light_can_be_told(_at(day, _NOON)):
        light = daylight(day, first.longitude_deg, first.latitude_deg)
    if day is not None and sets_out is not None:
        begun = _at(day, sets_out)
    figures = lane_figures(
        lane,
        forecast,
        sum(lane.name in twin.lanes for twin in twins),
        sets_out=begun,
        settings=settings.carried_card,
    )
    return CheckedLane(lane=lane, figures=figures, forecast=forecast, daylight=light)


def _at(day: dt.date, hour: dt.time) -> dt.datetime:
    return dt.datetime.combine(day, hour, tzinfo=hour.tzinfo or dt.UTC).astimezone(dt.UTC)


def _twins_told(lanes: Sequence[Lane], twins: Sequence[TwinPoints]) -> Iterator[LaneFinding]:
    cards = {lane.name: lane.card for lane in lanes}
    for twin in twins:
        point = twin.points[0]
        what = f"{point.name}, {twin.points[1].name}"
        at = (cards[twin.lanes[0]], (point.east_m, point.north_m))
        yield placed_finding("twin-points", twin.lanes[0], what, twin.message, at)


def _notes(checked: Sequence[CheckedLane], areas: GroundAreas) -> Iterator[str]:
    """Say what could not be looked at."""
    if areas.bounds is None:
        yield sentence("lanes-note-bounds")
    if not areas.no_go and not areas.hazards:
        yield sentence("lanes-note-areas")
    if all(one.lane.card.safety is None for one in checked):
        yield sentence("lanes-note-safety")
    free = [one.lane.name for one in checked if not one.lane.legs]
    if free:
        yield sentence("lanes-note-any-order", lanes=Listed(things=free), count=len(free))
    if any(one.figures.climb_m is None for one in checked if one.lane.legs):
        yield sentence("lanes-note-heights")
    if len(checked) < 2:
        yield sentence("lanes-note-one")
    yield from other_days(checked)
    yield from _no_light(checked)


def _no_light(checked: Sequence[CheckedLane]) -> Iterator[str]:
    """Say of which lanes no light can be told, and why."""
    if any(one.lane.card.date is None for one in checked):
        yield sentence("lanes-note-date")
    for one in checked:
        card, start, end = one.lane.card, one.figures.at_start, one.figures.at_end
        dark = one.daylight is None or (start is not None and end is None and one.lane.legs)
        if card.date is not None and dark:
            yield sentence("lanes-note-calendar", lane=one.lane.name, date=card.date.isoformat())
