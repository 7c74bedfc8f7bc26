"""A scatter that a few far ones do not move."""

from __future__ import annotations

from statistics import NormalDist

import numpy as np
import pytest
from scipy.stats import median_abs_deviation

from audit.statistics.spread import robust_sd


def test_it_is_the_standard_deviation_of_a_normal_law():
    places = np.array([NormalDist(sigma=7.0).inv_cdf((n + 0.5) / 20_001) for n in range(20_001)])
    assert robust_sd(places) == pytest.approx(7.0, rel=1e-3)


def test_a_few_far_ones_do_not_move_it():
    near = np.linspace(-1.0, 1.0, 41)
    far = np.concatenate([near[:-2], [900.0, -900.0]])
    assert robust_sd(far) == pytest.approx(robust_sd(near), rel=0.1)


def test_it_agrees_with_a_general_library():
    values = np.random.default_rng(3).normal(size=99)
    ours = robust_sd(values - np.median(values))
    assert ours == pytest.approx(median_abs_deviation(values, scale="normal"), rel=1e-4)
