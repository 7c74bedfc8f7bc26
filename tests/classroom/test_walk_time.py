"""How long a walk took where roster and recording tell different starts."""

from __future__ import annotations

import pytest

from audit.classroom.arrival import Arrival
from audit.classroom.walk_time import walk_time
from audit.grading.judge_walk import judge_walk
from audit.grading.verdicts import PointVerdict
from audit.settings import GradingSettings
from audit.standard import Standard

SETTINGS = GradingSettings()
TWO_HOURS = Standard(name="test", points_to_find=1, time_limit_s=7200.0)
FOUND = PointVerdict(grade="found", proof="track", radius_m=30.0, error_m=10.0)


def taken(off_s, needed_s):
    """Of a walk that leaves the start so long after the roster's, and needs so long."""
    arrived = Arrival(time_s=off_s + needed_s, error_s=30.0)
    return walk_time((off_s,), 0.0, arrived, 1.0, SETTINGS)


@pytest.mark.parametrize(
    ("off_s", "needed_s", "grade"),
    [
        (120.0, 7000.0, "pass"),
        (415.0, 7143.0, "doubtful"),
        (-415.0, 7343.0, "doubtful"),
        (415.0, 7900.0, "fail"),
        (3700.0, 7143.0, "pass"),
    ],
)
def test_a_watch_that_is_wrong_fails_nobody(off_s, needed_s, grade):
    """Bug: the roster's start was taken from a clock that the same output questioned."""
    time = taken(off_s, needed_s)
    verdict = judge_walk([FOUND], time, (), TWO_HOURS)
    assert verdict.grade == grade
    if abs(off_s) > SETTINGS.clock_off_s:
        assert time.elapsed_s == pytest.approx(needed_s)


def test_a_time_in_doubt_between_two_starts_tells_both():
    reason = judge_walk([FOUND], taken(415.0, 7143.0), (), TWO_HOURS).reasons[-1]
    assert "1 h 59 min 03 s" in reason
    assert "2 h 05 min 58 s" in reason
