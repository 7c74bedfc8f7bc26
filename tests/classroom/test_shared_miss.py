"""A point that all miss alike is told with its evidence; ordinary misses are not."""

from __future__ import annotations

import numpy as np
import pytest

from audit.classroom.shared_miss import gathered, middle_of, missed_alike, stands_elsewhere
from audit.settings.class_shows import ClassShowsSettings

SETTINGS = ClassShowsSettings()
RADIUS_M = 30.0


def leaving(rng, n, shift, lost=0):
    """Give where n walkers left from: a marker seen from near, some of them lost."""
    places = np.array(shift) + rng.normal(0.0, 5.0, (n, 2))
    places[:lost] += rng.normal(0.0, 150.0, (lost, 2))
    return places


def test_mean_and_its_error_are_those_of_the_textbook():
    place = middle_of(np.array([[3.0, 0.0], [5.0, 2.0], [7.0, -2.0]]))
    assert place.mean_m == (5.0, 0.0)
    assert place.scatter_m == pytest.approx(2.0)  # variances 4 and 4, n - 1 below
    assert place.error_m == pytest.approx(2.0 / 3**0.5)
    assert middle_of(np.zeros((1, 2))) is None


@pytest.mark.parametrize("seed", range(20))
def test_a_marker_that_stands_elsewhere_is_found(seed):
    rng = np.random.default_rng(seed)
    places = leaving(rng, 12, (85.0, -70.0), lost=3)
    place = gathered(places, np.full(12, 4.0), SETTINGS)
    assert place.mean_m == pytest.approx((85.0, -70.0), abs=6.0)
    assert stands_elsewhere(place, places, RADIUS_M, SETTINGS)


def test_a_marker_in_its_place_is_never_said_to_stand_elsewhere():
    told = 0
    for seed in range(500):
        rng = np.random.default_rng(seed)
        lost = int(rng.integers(0, 8))
        places = leaving(rng, 14, (0.0, 0.0), lost)
        place = gathered(places, np.full(14, 4.0), SETTINGS)
        told += place is not None and stands_elsewhere(place, places, RADIUS_M, SETTINGS)
    assert told == 0


def test_half_at_another_marker_is_no_fault_of_the_point():
    """Some took the marker of another lane for theirs; the others found the right one."""
    rng = np.random.default_rng(4)
    places = np.concatenate([leaving(rng, 8, (90.0, 0.0)), leaving(rng, 6, (0.0, 0.0))])
    place = gathered(places, np.full(14, 4.0), SETTINGS)
    assert place.mean_m == pytest.approx((90.0, 0.0), abs=8.0)
    assert not stands_elsewhere(place, places, RADIUS_M, SETTINGS)


def test_scattered_walkers_have_no_place_in_common():
    rng = np.random.default_rng(1)
    assert gathered(rng.normal(0.0, 120.0, (15, 2)), np.full(15, 4.0), SETTINGS) is None


def test_too_few_walkers_say_nothing():
    places = np.tile([90.0, 0.0], (SETTINGS.least_walkers - 1, 1))
    assert gathered(places, np.full(len(places), 4.0), SETTINGS) is None
    assert missed_alike(places, RADIUS_M, SETTINGS) is None


def test_claims_that_all_lie_to_one_side_are_told():
    rng = np.random.default_rng(2)
    place = missed_alike(rng.normal((70.0, 20.0), 30.0, (15, 2)), RADIUS_M, SETTINGS)
    assert place.mean_m == pytest.approx((70.0, 20.0), abs=4 * place.error_m)
    assert place.sharing >= 14


def test_claims_about_the_point_are_hardly_ever_told():
    told = 0
    for seed in range(2000):
        rng = np.random.default_rng(seed)
        claims = rng.standard_t(3, (10, 2)) * 45.0  # heavier tails than walkers have
        told += missed_alike(claims, RADIUS_M, SETTINGS) is not None
    assert told <= 6  # once in some 300; four standard errors, and at most so far off by chance
