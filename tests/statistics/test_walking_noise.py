"""The likelihood of noise on a straight walk, against scipy's normal density in full."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import linalg, stats

from audit.statistics.correlated_noise import covariance
from audit.statistics.integrated_noise import integrated_covariance
from audit.statistics.walking_noise import Wander, log_weight_of_noise


def test_it_is_the_normal_density_of_what_level_and_run_leave() -> None:
    """Restricted maximum likelihood is the density of contrasts that know neither of the two."""
    rng = np.random.default_rng(5)
    time_s = np.cumsum(rng.uniform(5.0, 20.0, 9))
    across = rng.normal(0.0, 4.0, 9)
    noise_m, memories = np.array([1.0, 3.0, 8.0]), np.array([20.0, 90.0])
    wander = Wander(
        speeds_m_s=np.array([0.05, 0.2]), log_prior=np.log([0.3, 0.7]), memories_s=(15.0, 50.0)
    )
    found = log_weight_of_noise(
        time_s, across, noise_m=noise_m, correlation_s=memories, white_share=0.01, wander=wander
    )
    clock = time_s - time_s[0]
    contrasts = linalg.null_space(np.column_stack([np.ones(9), clock]).T)
    expected = np.zeros((3, 2))
    for i, sd in enumerate(noise_m):
        for j, tau in enumerate(memories):
            noise = sd**2 * (covariance(time_s, tau) + 0.01 * np.eye(9))
            for speed, share in ((0.05, 0.3), (0.2, 0.7)):
                for memory in wander.memories_s:
                    whole = noise + speed**2 * integrated_covariance(clock, clock, memory)
                    of = contrasts.T @ whole @ contrasts
                    expected[i, j] += share * stats.multivariate_normal.pdf(
                        contrasts.T @ across, cov=of
                    )
    assert np.isfinite(found).all()
    ratio = found - np.log(expected)
    assert ratio == pytest.approx(np.full((3, 2), ratio[0, 0]), abs=1e-8)


def test_moving_and_turning_the_line_changes_nothing() -> None:
    rng = np.random.default_rng(6)
    time_s, across = np.arange(0.0, 200.0, 10.0), rng.normal(0.0, 3.0, 20)
    known = {
        "noise_m": np.array([1.0, 4.0]),
        "correlation_s": np.array([30.0]),
        "white_share": 0.01,
        "wander": Wander(speeds_m_s=np.array([0.1]), log_prior=np.array([0.0]), memories_s=(20.0,)),
    }
    here = log_weight_of_noise(time_s, across, **known)
    there = log_weight_of_noise(time_s + 500.0, across + 30.0 + 0.2 * time_s, **known)
    assert here == pytest.approx(there, abs=1e-8)
