"""Where a stay ends, looked for outward, is where a look at all fixes says."""

from __future__ import annotations

import numpy as np
import pytest

from audit.diagnosis.turning_places import _left


@pytest.mark.parametrize("stay", [1, 63, 64, 65, 191, 192, 193, 700])
def test_a_stay_ends_at_the_first_fix_further_off(stay):
    """Bug: each fix was measured against all that follow, with the square of their number."""
    place = np.zeros((800, 2))
    place[5 + stay :, 0] = 30.0
    assert _left(place, 5, 25.0) == 5 + stay
    assert _left(place, 5, 30.0) == 800


def test_a_wandering_stay_ends_where_a_look_at_all_fixes_says():
    place = np.cumsum(np.random.default_rng(5).normal(0.0, 2.0, (600, 2)), axis=0)
    for first in range(0, 600, 7):
        away_m = np.hypot(*(place[first:] - place[first]).T)
        left = np.flatnonzero(away_m > 25.0)
        assert _left(place, first, 25.0) == (first + left[0] if len(left) else 600)
