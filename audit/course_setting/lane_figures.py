"""What lanes are compared by: length, climb, time by the named rules, chance, light."""

from __future__ import annotations

import datetime as dt

import numpy as np

from audit.course_setting.checked_lanes import Lane, LaneFigures, LightAt
from audit.course_setting.light_at import light_at, light_can_be_told
from audit.forecast.course_forecast import CourseForecast
from audit.leg_card import CardPoint
from audit.leg_card.leg_pieces import walked_m
from audit.leg_card.profiles import Profile, profile, stations, way_of
from audit.moments import calendar_moment
from audit.settings import CarriedCardSettings
from audit.walking_times import WALKING_RULES


def lane_figures(
    lane: Lane,
    forecast: CourseForecast | None,
    twins: int,
    *,
    sets_out: dt.datetime | None,
    settings: CarriedCardSettings,
) -> LaneFigures:
    """Give the figures of one lane; the time that it is expected to end is the slowest rule's."""
    first = lane.card.points[0]
    if forecast is None:
        return _without_legs(twins, _light(sets_out, first))
    legs = lane.legs
    grounds = _profiles(lane, settings)
    known = [ground for ground in grounds if ground is not None]
    whole = lane.heights is not None and len(known) == len(legs)
    ways = [way_of(leg, ground) for leg, ground in zip(legs, grounds, strict=True)]
    times = tuple((rule.name, sum(rule.seconds(way) for way in ways)) for rule in WALKING_RULES)
    longest = max(legs, key=walked_m)
    hardest = min(forecast.legs, key=lambda leg: leg.chance_in_sight)
    slowest_s = max(seconds for _, seconds in times)
    ends_by = None if sets_out is None else calendar_moment(sets_out.timestamp() + slowest_s)
    return LaneFigures(
        legs=len(legs),
        length_m=sum(map(walked_m, legs)),
        longest_m=walked_m(longest),
        longest_leg=longest.name,
        climb_m=sum(ground.climb_m for ground in known) if whole else None,
        descent_m=sum(ground.descent_m for ground in known) if whole else None,
        times_s=times,
        mean_chance=float(np.mean([leg.chance_in_sight for leg in forecast.legs])),
        least_chance=hardest.chance_in_sight,
        least_chance_leg=hardest.leg,
        twins=twins,
        at_start=_light(sets_out, first),
        at_end=_light(ends_by, legs[-1].end),
    )


def _without_legs(twins: int, at_start: LightAt | None) -> LaneFigures:
    """Give the figures of a lane whose points may be visited in any order."""
    return LaneFigures(
        legs=None, length_m=None, longest_m=None, longest_leg=None, climb_m=None, descent_m=None,
        times_s=(), mean_chance=None, least_chance=None, least_chance_leg=None,
        twins=twins, at_start=at_start, at_end=None,
    )  # fmt: skip


def _light(moment: dt.datetime | None, point: CardPoint) -> LightAt | None:
    if moment is None or not light_can_be_told(moment):
        return None
    return light_at(moment, point.longitude_deg, point.latitude_deg)


def _profiles(lane: Lane, settings: CarriedCardSettings) -> list[Profile | None]:
    if lane.heights is None:
        return [None] * len(lane.legs)
    return [
        profile(stations(leg.line, settings.station_m)[0], heights, settings.ripple_m)
        for leg, heights in zip(lane.legs, lane.heights, strict=True)
    ]
