"""Recordings of several days: the outing that fits the course is the walk."""

from __future__ import annotations

import numpy as np
import pytest
from measurement.hand_made import SETTINGS, HandWalk, card_of, clean_of, receiver

from audit.matching.outings import match_outings, split_outings

S = SETTINGS.matching
HOUR_S = 3600.0


def two_days(first: HandWalk, second: HandWalk, apart_s: float):
    """Record two walks and join them with a silence between."""
    return joined(first.clean(1, receiver(1, 3.0)), second.clean(1, receiver(2, 3.0)), apart_s)


def joined(one, two, apart_s: float):
    """Join two recordings with a silence between them; also when the second begins."""
    begun = float(one.time_s[-1]) + apart_s
    time_s = np.concatenate([one.time_s, two.time_s - two.time_s[0] + begun])
    east = np.concatenate([one.east_m, two.east_m])
    north = np.concatenate([one.north_m, two.north_m])
    return clean_of(time_s, np.column_stack([east, north]), every_s=1.0), begun


def course() -> HandWalk:
    walk = HandWalk().halt(60).walk(90, 400).halt(60).walk(0, 300).halt(60)
    return walk


def elsewhere() -> HandWalk:
    return HandWalk().halt(60).walk(200, 350).halt(30).walk(130, 500).halt(60)


@pytest.mark.parametrize(("hours", "outings"), [(1, 1), (7, 2)])
def test_a_night_parts_outings_and_a_long_rest_does_not(hours, outings) -> None:
    clean, _ = two_days(course(), elsewhere(), hours * HOUR_S)
    parts = split_outings(clean, S)
    assert len(parts) == outings
    assert sum(len(part) for part in parts) == len(clean)


@pytest.mark.parametrize("course_is_second", [False, True])
def test_the_outing_that_fits_is_taken(course_is_second) -> None:
    days = (elsewhere(), course()) if course_is_second else (course(), elsewhere())
    clean, begun = two_days(*days, 20 * HOUR_S)
    found = match_outings(clean, card_of((0, 0), (400, 0), (400, 300)), S)
    assert found.outings == 2
    assert [leg.status for leg in found.match.legs] == ["walked", "walked"]
    assert all((leg.start_s >= begun) is course_is_second for leg in found.match.legs)
