"""Receiver noise from standing still, against scipy's normal densities and known noise.

The judge of the restricted likelihood is the density of what is left when the mean is
taken out: the fixes turned into contrasts, of which no place remains (Patterson and
Thompson, Biometrika 58, 1971, from memory), by scipy's multivariate normal.
"""

from __future__ import annotations

import numpy as np
import pytest
from measurement.hand_made import receiver
from scipy import linalg, stats

from audit.statistics.noise_fit import NoiseFit, NoiseGrid, fit_noise

PRIOR = NoiseFit(noise_m=4.5, noise_log_sd=0.5, correlation_s=60.0, correlation_log_sd=0.8)
GRID = NoiseGrid(
    noise_m=np.geomspace(0.5, 30.0, 42),
    correlation_s=np.array([8.0, 15.0, 30.0, 60.0, 100.0, 160.0, 260.0, 420.0]),
    prior=PRIOR,
    white_share=0.01,
)


def test_weights_are_those_of_the_contrasts() -> None:
    rng = np.random.default_rng(5)
    stretches = [(np.sort(rng.uniform(0, 90, n)), rng.normal(0, 3, (n, 2))) for n in (7, 4)]
    few = NoiseGrid(
        noise_m=np.array([2.0, 3.5, 6.0]),
        correlation_s=np.array([20.0, 90.0]),
        prior=PRIOR,
        white_share=0.01,
    )
    found = fit_noise(stretches, few)
    log_weight = np.zeros((3, 2))
    for row, noise_m in enumerate(few.noise_m):
        for column, tau_s in enumerate(few.correlation_s):
            log_weight[row, column] = stats.norm.logpdf(
                np.log(noise_m), np.log(4.5), 0.5
            ) + stats.norm.logpdf(np.log(tau_s), np.log(60.0), 0.8)
            for time_s, place in stretches:
                apart = np.abs(time_s[:, None] - time_s)
                whole = noise_m**2 * (np.exp(-apart / tau_s) + 0.01 * np.eye(len(time_s)))
                contrasts = linalg.null_space(np.ones((1, len(time_s)))).T
                density = stats.multivariate_normal(
                    np.zeros(len(contrasts)), contrasts @ whole @ contrasts.T
                )
                log_weight[row, column] += density.logpdf((contrasts @ place).T).sum()
    weight = np.exp(log_weight - log_weight.max())
    weight /= weight.sum()
    noise = weight.sum(axis=1) @ np.log(few.noise_m)
    tau = weight.sum(axis=0) @ np.log(few.correlation_s)
    assert found.noise_m == pytest.approx(np.exp(noise), rel=1e-6)
    assert found.correlation_s == pytest.approx(np.exp(tau), rel=1e-6)
    spread = weight.sum(axis=1) @ (np.log(few.noise_m) - noise) ** 2
    assert found.noise_log_sd == pytest.approx(np.sqrt(spread), rel=1e-6)


def test_nothing_seen_leaves_the_usual_value() -> None:
    found = fit_noise([], GRID)
    assert found.noise_m == pytest.approx(4.5, rel=0.01)
    assert found.noise_log_sd == pytest.approx(0.5, rel=0.02)
    assert found.correlation_s == pytest.approx(60.0, rel=0.15)  # the grid is coarse


@pytest.mark.parametrize("sd_m", [1.5, 4.0, 9.0])
@pytest.mark.parametrize("memory_s", [15.0, 60.0, 150.0])
def test_known_noise_is_found_within_its_errors(sd_m, memory_s) -> None:
    """Four halts of four minutes, 24 times over: the errors that are told are those that are."""
    noise_z, tau_z = [], []
    for seed in range(24):
        stretches = []
        for halt in range(4):
            place = receiver(100 * seed + halt, sd_m, memory_s)(240)[::10]
            stretches.append((np.arange(0.0, 240.0, 10.0), place + 300.0))
        found = fit_noise(stretches, GRID)
        noise_z.append(np.log(found.noise_m / sd_m) / found.noise_log_sd)
        tau_z.append(np.log(found.correlation_s / memory_s) / found.correlation_log_sd)
    for z in (noise_z, tau_z):
        assert np.std(z) < 1.3  # 1 where all is as told; 24 draws: +- 0.15
        assert abs(np.mean(z)) < 1.4  # the prior draws towards 4.5 m and 60 s
    assert np.std(noise_z) > 0.3  # and no error is told far too large


def contrast_density(time_s, place, noise_m, tau_s):
    """Give the log density of what is left of a stretch when its place is taken out."""
    apart = np.abs(time_s[:, None] - time_s)
    whole = noise_m**2 * (np.exp(-apart / tau_s) + 0.01 * np.eye(len(time_s)))
    contrasts = linalg.null_space(np.ones((1, len(time_s)))).T
    density = stats.multivariate_normal(np.zeros(len(contrasts)), contrasts @ whole @ contrasts.T)
    return density.logpdf((contrasts @ place).T).sum()


def test_each_stretch_may_be_moved_about_on_and_differ() -> None:
    """Three values stand for a normal one (Gauss and Hermite), as numpy has them too."""
    rng = np.random.default_rng(9)
    stretches = [
        (np.sort(rng.uniform(0, 90, n)), rng.normal(0, sd, (n, 2)))
        for n, sd in [(6, 3.0), (5, 9.0)]
    ]
    nodes, weights = np.polynomial.hermite_e.hermegauss(3)
    weights = weights / weights.sum()
    moved = ((0.0, 0.7), (8.0, 0.3))
    few = NoiseGrid(
        noise_m=np.array([2.0, 3.5, 6.0]),
        correlation_s=np.array([20.0, 90.0]),
        prior=PRIOR,
        white_share=0.01,
        differs_log_sd=0.4,
        moved_m=moved,
    )
    found = fit_noise(stretches, few)
    log_weight = np.zeros((3, 2))
    for row, noise_m in enumerate(few.noise_m):
        for column, tau_s in enumerate(few.correlation_s):
            log_weight[row, column] = stats.norm.logpdf(
                np.log(noise_m), np.log(4.5), 0.5
            ) + stats.norm.logpdf(np.log(tau_s), np.log(60.0), 0.8)
            for time_s, place in stretches:
                log_weight[row, column] += np.logaddexp.reduce(
                    [
                        np.log(weight * chance)
                        + contrast_density(
                            time_s, place, np.hypot(noise_m * np.exp(0.4 * node), moved_m), tau_s
                        )
                        for node, weight in zip(nodes, weights, strict=True)
                        for moved_m, chance in moved
                    ]
                )
    weight = np.exp(log_weight - log_weight.max())
    weight /= weight.sum()
    assert found.noise_m == pytest.approx(
        np.exp(weight.sum(axis=1) @ np.log(few.noise_m)), rel=1e-6
    )
    assert found.correlation_s == pytest.approx(
        np.exp(weight.sum(axis=0) @ np.log(few.correlation_s)), rel=1e-6
    )


def test_standing_and_walking_may_each_be_out() -> None:
    """Two normal log likelihoods, blurred: their middles weighed by what is left of each."""
    fine = NoiseGrid(
        noise_m=np.geomspace(0.05, 300.0, 400),
        correlation_s=np.array([60.0]),
        prior=NoiseFit(noise_m=4.5, noise_log_sd=50.0, correlation_s=60.0, correlation_log_sd=0.8),
        white_share=0.01,
        kinds_differ_log_sd=0.35,
    )
    rng = np.random.default_rng(2)
    stretch = (np.arange(0.0, 3000.0, 50.0), rng.normal(0.0, 2.0, (60, 2)))
    alone = fit_noise([stretch], fine)
    walking = stats.norm.logpdf(np.log(fine.noise_m), np.log(8.0), 0.2)[:, None]
    assert fit_noise([], fine, [walking]).noise_m == pytest.approx(8.0, rel=1e-3)
    assert fit_noise([], fine, [walking]).noise_log_sd == pytest.approx(0.2, rel=1e-3)
    both = fit_noise([stretch], fine, [walking])
    variances = np.array([alone.noise_log_sd**2, 0.2**2]) + 0.35**2
    middle = np.average(np.log([alone.noise_m, 8.0]), weights=1.0 / variances)
    assert np.log(both.noise_m) == pytest.approx(middle, abs=0.01)
    assert both.noise_log_sd == pytest.approx(np.sqrt(1.0 / (1.0 / variances).sum()), rel=0.02)
