"""A leg along via positions is set against its line only where that was walked."""

from __future__ import annotations

import math

import numpy as np
import pytest
from measurement.hand_made import HandWalk, card_of, clean_of, measure

# 600 m north, then 800 m east: 1400 m along the line, 1000 m straight on 053.13 degrees.
BENT = card_of((0, 0), (800, 600), via=((0, 600),), paces_per_100m=65.0)
STRAIGHT_DEG = math.degrees(math.atan2(800, 600))


def measured(walk: HandWalk, gaps=(), every_s: int = 1):
    walk.mark("claim").halt(30)
    (leg,) = measure(BENT, walk.clean(every_s, gaps=gaps), [walk.portion()], walk.halts).legs
    return leg.measures


def begun() -> HandWalk:
    return HandWalk().halt(30).mark("start")


def test_a_line_that_was_walked_is_what_its_distance_is_set_against():
    measures = measured(begun().walk(0, 600).walk(90, 750))
    assert measures.line_followed
    assert measures.distance_error_m == pytest.approx(-50.0, abs=3.0)
    assert measures.paces == pytest.approx(0.65 * measures.path_m)


def test_the_metres_that_were_compared_are_told():
    """Bug: 1350 m along the line were set against 1400 m, and only the chord was told, 960 m."""
    measures = measured(begun().walk(0, 600).walk(90, 750))
    assert measures.made_good_m == pytest.approx(1350.0, abs=3.0)
    assert measures.straight_m == pytest.approx(math.hypot(600.0, 750.0), abs=3.0)
    assert measures.distance_error_m == pytest.approx(measures.made_good_m - 1400.0)
    assert measured(begun().walk(STRAIGHT_DEG, 1000)).made_good_m is None


def test_a_line_that_was_cut_across_is_said_not_to_have_been_followed():
    """Bug: 1000 m straight were told as 1400 m along the line, "as planned"."""
    measures = measured(begun().walk(STRAIGHT_DEG, 1000))
    assert not measures.line_followed
    assert measures.path_m == pytest.approx(1000.0, abs=5.0)
    assert measures.paces == pytest.approx(0.65 * measures.path_m)  # 650, not the line's 910


@pytest.mark.parametrize("north_m", [500.0, 700.0])
def test_a_corner_within_ordinary_error_was_passed(north_m):
    measures = measured(begun().walk(0, north_m).walk(90, 800))
    assert measures.line_followed


def test_who_claims_before_the_corner_has_not_left_the_line():
    assert measured(begun().walk(0, 300)).line_followed


def test_a_silence_that_may_hide_the_corner_accuses_nobody():
    way = begun().walk(0, 100).mark("lost").walk(0, 500).walk(90, 800)
    way.mark("claim").halt(30)
    whole = way.clean()
    lost, found = (round(way.marks[name] - whole.time_s[0]) for name in ("lost", "claim"))
    keep = np.r_[0 : lost + 1, found : len(whole.time_s)]
    place = np.column_stack([whole.east_m, whole.north_m])[keep]
    silent = clean_of(whole.time_s[keep], place, every_s=1.0, gaps=(lost,))
    (leg,) = measure(BENT, silent, [way.portion()], way.halts).legs
    assert leg.measures.line_followed
