"""Means over attempts against another library; scatter against what must hold."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.stats import chi2
from statsmodels.stats.meta_analysis import combine_effects

from audit.school_records.estimates import change_of, log_spread, mean_of, spread_of


@pytest.mark.parametrize("between", [0.0, 0.5, 3.0])
@pytest.mark.parametrize("count", [2, 5, 12])
def test_a_mean_is_that_of_another_library(count, between):
    rng = np.random.default_rng(count)
    errors = rng.uniform(0.5, 2.0, count)
    values = rng.normal(2.0, np.hypot(errors, between))
    ours = mean_of(values, errors, 0.95)
    theirs = combine_effects(values, errors**2, method_re="pm", use_t=True, alpha=0.05)
    assert ours.value == pytest.approx(theirs.mean_effect_re, abs=1e-4)
    # Ours is never narrower than without Knapp and Hartung's factor; theirs may be.
    usual, factored = theirs.sd_eff_w_re, theirs.sd_eff_w_re_hksj
    assert ours.error == pytest.approx(max(usual, factored), rel=2e-3)


def test_a_change_with_exact_figures_is_the_line_through_them():
    step = change_of(np.arange(5.0), 3.0 - 0.5 * np.arange(5.0), np.full(5, 0.1), 0.95)
    assert step.value == pytest.approx(-0.5, abs=1e-12)
    # The variance of a slope, sigma over the root of the sum of squares: any textbook.
    assert step.error == pytest.approx(0.1 / math.sqrt(10.0), rel=1e-9)


def test_intervals_hold_the_truth_as_often_as_they_say():
    rng = np.random.default_rng(7)
    held = []
    for _ in range(600):
        errors = rng.uniform(0.8, 1.6, 6)
        values = 1.5 + 0.3 * np.arange(6) + rng.normal(0.0, np.hypot(errors, 1.0))
        step = change_of(np.arange(6.0), values, errors, 0.95)
        held.append(step.low < 0.3 < step.high)
    assert 0.93 < np.mean(held) <= 1.0  # share; 600 trials have a chance error of 0.009


def test_a_scatter_has_the_interval_of_the_chi_square():
    # S. squared times n over sigma squared is chi-square with n degrees of freedom.
    spread = spread_of(36.0, 9, 0.0, 0.95)
    assert spread.value == spread.seen == pytest.approx(2.0)
    assert spread.low == pytest.approx(math.sqrt(36.0 / chi2.ppf(0.975, 9)))
    assert spread.high == pytest.approx(math.sqrt(36.0 / chi2.ppf(0.025, 9)))
    assert spread_of(36.0, 9, 3.0, 0.95).value == pytest.approx(1.0)
    assert spread_of(36.0, 9, 30.0, 0.95).value == 0.0


def test_the_logarithm_of_a_scatter_is_freed_of_its_bias():
    rng = np.random.default_rng(3)
    samples = rng.normal(0.0, 2.5, (20000, 4))
    spreads = [spread_of(float(((s - s.mean()) ** 2).sum()), 3, 0.0, 0.95) for s in samples]
    logs, errors = np.array([log_spread(one) for one in spreads]).T
    assert logs.mean() == pytest.approx(math.log(2.5), abs=0.015)
    assert logs.std() == pytest.approx(errors[0], rel=0.03)
