"""Legs on which the walk went about: its end is where it was found, not where a count ended."""

from __future__ import annotations

from collections.abc import Mapping

from audit.measurement.leg_measures import LegMeasures
from audit.settings import CoachingSettings


def went_about(legs: Mapping[str, LegMeasures], settings: CoachingSettings) -> set[str]:
    """Give the legs whose path is longer by more than a share than what was made on them.

    A search within a leg makes it so. The way out and back about an obstacle does not: it is
    told by having come ahead along it.
    """
    return {
        name
        for name, one in legs.items()
        if one.path_m - _about_obstacles_m(one)
        > settings.path_most * (one.made_good_m or one.path_m)
    }


def _about_obstacles_m(leg: LegMeasures) -> float:
    bypasses = () if leg.details is None else leg.details.bypasses
    return sum(one.out_m + one.back_m for one in bypasses if one.returned and one.ahead_m > 0.0)
