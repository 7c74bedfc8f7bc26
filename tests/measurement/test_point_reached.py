"""Found, missed or too close to call: against scipy's non-central chi-square, and by hand."""

from __future__ import annotations

import numpy as np
import pytest
from measurement.hand_made import HandWalk, clean_of
from scipy import stats

from audit.measurement.point_reached import judge_point, share_within, unseen_approach
from audit.settings import MeasuringSettings

S = MeasuringSettings()


@pytest.mark.parametrize("distance_m", [0.0, 12.0, 30.0, 41.0, 80.0])
@pytest.mark.parametrize("sd_m", [1.0, 6.0, 25.0])
def test_share_within_a_circle_is_the_non_central_chi_square(distance_m, sd_m) -> None:
    expected = stats.ncx2.cdf((30.0 / sd_m) ** 2, 2, (distance_m / sd_m) ** 2)
    assert share_within(distance_m, 30.0, sd_m) == pytest.approx(expected, abs=2e-3)


@pytest.mark.parametrize(
    ("nearest_m", "unseen_m", "verdict"),
    [
        (29.0, 0.0, "found"),  # within the radius: the benefit of the doubt
        (33.0, 0.0, "too close to call"),
        (60.0, 0.0, "missed"),  # six standard errors beyond
        (60.0, 40.0, "too close to call"),  # nobody saw how near he came in a silence
    ],
)
def test_verdicts(nearest_m, unseen_m, verdict) -> None:
    assert judge_point(nearest_m, unseen_m, 30.0, 5.0, S).verdict == verdict


def test_a_silence_lets_the_walker_come_nearer_and_no_nearer_than_he_can() -> None:
    walk = HandWalk().walk(90, 500)
    whole = walk.clean()
    kept = np.flatnonzero((np.arange(401) <= 100) | (np.arange(401) >= 300))
    place = np.column_stack([whole.east_m, whole.north_m])[kept]
    clean = clean_of(whole.time_s[kept], place, gaps=(100,))
    # Silent from 125 m to 375 m, 200 s at up to 1.5 m/s: 300 m of way. A point 100 m aside of
    # the middle is 160.1 m from either end of it: (320.2 - 300) / 2 = 10.1 m at the nearest.
    target = place[0] + np.array([250.0, 100.0])
    times = (float(whole.time_s[0]), float(whole.time_s[-1]))
    unseen = unseen_approach(clean, times, target, 100.0, 1.5)
    assert unseen == pytest.approx(100.0 - 10.08, abs=0.05)
    assert unseen_approach(clean, (times[0], times[0] + 50.0), target, 100.0, 1.5) == 0.0
