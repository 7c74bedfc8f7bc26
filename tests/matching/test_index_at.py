"""The fix nearest to a moment."""

from __future__ import annotations

import numpy as np
import pytest
from measurement.hand_made import clean_of


@pytest.mark.parametrize(
    ("time_s", "index"),
    [(-50.0, 0), (0.0, 0), (4.0, 0), (6.0, 1), (10.0, 1), (14.0, 1), (26.0, 2), (40.0, 2)],
)
def test_a_moment_has_its_nearest_fix(time_s, index) -> None:
    clean = clean_of(np.array([0.0, 10.0, 30.0]), np.zeros((3, 2)))
    assert clean.index_at(time_s) == index
