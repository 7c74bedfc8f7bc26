"""Noise that forgets itself exponentially, against direct sums and worked-out values.

The slope of a least-squares line through correlated offsets scatters by
sigma^2 x'Rx / (x'x)^2 (x centred, R the correlations): the standard result for linear
estimates. The rows ``heading_se_ar1`` and ``heading_se_small`` of the table of check
values hold it worked out, one of them also by 4000 simulated runs.
"""

from __future__ import annotations

import numpy as np
import pytest
from scipy import integrate
from truth.check_values import CheckValue, check_values, each

from audit.statistics.correlated_noise import (
    covariance,
    variance_about_mean,
    variance_of_mean,
)


def slope_variance(time_s: np.ndarray, x: np.ndarray, tau_s: float) -> float:
    centred = x - x.mean()
    return float(centred @ covariance(time_s, tau_s) @ centred / (centred @ centred) ** 2)


@each("heading_se_ar1")
def test_heading_of_a_correlated_walk_scatters_as_worked_out(value: CheckValue) -> None:
    fixes = int(value.given("n"))
    tau_s = float(value.given("tau").removesuffix(" s"))
    sigma_m = float(value.given("sigma_crosstrack").removesuffix(" m"))
    length_m = float(value.given("leg").split()[0])
    time_s = np.arange(fixes, dtype=np.float64)
    along_m = np.linspace(0.0, length_m, fixes)
    degrees = np.degrees(sigma_m * np.sqrt(slope_variance(time_s, along_m, tau_s)))
    assert degrees == pytest.approx(float(value.wanted("exact_ols")), abs=float(value.tolerance))


@each("heading_se_ar1")
def test_fixes_that_forget_at_once_scatter_as_independent_ones(value: CheckValue) -> None:
    fixes = int(value.given("n"))
    sigma_m = float(value.given("sigma_crosstrack").removesuffix(" m"))
    along_m = np.linspace(0.0, float(value.given("leg").split()[0]), fixes)
    variance = slope_variance(np.arange(fixes, dtype=np.float64), along_m, 1e-3)
    degrees = np.degrees(sigma_m * np.sqrt(variance))
    assert degrees == pytest.approx(float(value.wanted("iid")), abs=float(value.tolerance))


@each("heading_se_small")
def test_slope_through_five_fixes_scatters_as_by_hand(value: CheckValue) -> None:
    # rho = 0.5 from one second to the next
    tau_s = -1.0 / np.log(float(value.given("rho")))
    time_s = np.arange(5, dtype=np.float64)
    x = np.arange(-2.0, 3.0)
    expected = float(value.expected)
    assert slope_variance(time_s, x, tau_s) == pytest.approx(expected, abs=float(value.tolerance))


def test_covariance_counts_time_and_not_places() -> None:
    uneven_s = np.array([0.0, 1.0, 30.0, 31.0])
    found = covariance(uneven_s, 30.0)
    for row, first in enumerate(uneven_s):
        for column, second in enumerate(uneven_s):
            assert found[row, column] == pytest.approx(np.exp(-abs(second - first) / 30.0))


@pytest.mark.parametrize("tau_s", [5.0, 20.0, 60.0, 400.0])
@pytest.mark.parametrize("length_s", [1.0, 30.0, 120.0, 1800.0])
def test_variance_of_a_mean_is_the_mean_of_all_covariances(length_s: float, tau_s: float) -> None:
    # The continuous mean is the double integral; scipy does it here.
    total, _ = integrate.dblquad(
        lambda u, v: np.exp(-(v - u) / tau_s), 0.0, length_s, 0.0, lambda v: v
    )
    expected = 2.0 * total / length_s**2  # by symmetry: twice the triangle below the diagonal
    assert variance_of_mean(length_s, tau_s) == pytest.approx(expected, rel=1e-8)


def test_variance_of_the_mean_of_many_fixes_is_the_direct_double_sum() -> None:
    # 720 fixes a second apart, forgotten over a minute: 110.003 times that of independent
    # ones (the exact variance of a mean, Berthouex and Brown, Statistics for Environmental
    # Engineers, p 292). The continuous formula is its limit for dense fixes.
    direct = covariance(np.arange(720.0), 60.0).mean()
    assert direct * 720 == pytest.approx(110.003, abs=0.001)
    assert variance_of_mean(720.0, 60.0) == pytest.approx(direct, rel=1e-3)


def test_mean_over_no_time_is_one_fix() -> None:
    assert variance_of_mean(0.0, 30.0) == 1.0
    assert variance_of_mean(1e-9, 30.0) == pytest.approx(1.0)


def test_variance_of_the_mean_is_smooth_where_the_formula_changes() -> None:
    # 1 - x/3 is the series of the formula
    for x in (0.5e-6, 2e-6, 1e-5, 1e-4):
        assert variance_of_mean(30.0 * x, 30.0) == pytest.approx(1.0 - x / 3.0, abs=2e-5)


def test_spread_about_the_own_mean_is_what_simulated_halts_show() -> None:
    rng = np.random.default_rng(5)
    tau_s, seconds = 30.0, 90
    factor = np.linalg.cholesky(covariance(np.arange(float(seconds)), tau_s))
    halts = factor @ rng.normal(size=(seconds, 4000))
    seen = halts.var(axis=0).mean()
    # standard error of the 4000 halts' mean variance: about 0.01
    assert variance_about_mean(float(seconds), tau_s) == pytest.approx(seen, abs=0.03)


def test_trap_7_the_effective_number_of_fixes_is_no_short_cut_for_a_short_leg() -> None:
    # 200 m, 144 fixes, noise of 3 m forgotten over 60 s: the short cut of multiplying the
    # independent variance by (1 + rho) / (1 - rho) promises twice the error that there is.
    (value,) = [
        one for one in check_values("heading_se_ar1") if one.given("leg").startswith("200 m")
    ]
    fixes = int(value.given("n"))
    along_m = np.linspace(0.0, 200.0, fixes)
    rho = float(value.given("rho"))
    centred = along_m - along_m.mean()
    short_cut = 3.0 * np.sqrt((1.0 + rho) / (1.0 - rho) / (centred @ centred))
    exact = 3.0 * np.sqrt(slope_variance(np.arange(fixes, dtype=np.float64), along_m, 60.0))
    assert np.degrees(short_cut) == pytest.approx(float(value.wanted("neff_shortcut")), abs=1e-4)
    assert np.degrees(exact) == pytest.approx(float(value.wanted("exact_ols")), abs=1e-4)
    assert short_cut > 2.0 * exact
