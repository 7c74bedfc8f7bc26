"""The fixes of a cleaned track: the one nearest to a moment, and where they lie."""

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


def test_fixes_lie_where_the_track_was_laid_all_of_them_or_some() -> None:
    place = np.array([[1.0, 2.0], [3.0, 4.0], [5.0, 6.0]])
    clean = clean_of(np.array([0.0, 10.0, 30.0]), place)
    assert clean.places().tolist() == place.tolist()
    assert clean.places(slice(1, None)).tolist() == place[1:].tolist()
    assert clean.places(np.array([True, False, True])).tolist() == place[[0, 2]].tolist()
    assert clean.places(np.array([2, 0])).tolist() == place[[2, 0]].tolist()
