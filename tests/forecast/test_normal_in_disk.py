"""The chance of lying in a disk, against closed forms and another library."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy import stats

from audit.forecast.normal_in_disk import chance_in_disk, normal_below, normal_deviate


@pytest.mark.parametrize("radius", [0.1, 1.0, 2.0, 5.0])
def test_round_and_centred_is_rayleigh(radius):
    # Rayleigh's law: 1 - exp(-r^2 / 2 s^2).
    found = chance_in_disk(np.zeros(2), 4.0 * np.eye(2), radius)
    assert found == pytest.approx(-math.expm1(-(radius**2) / 8.0), abs=1e-12)


@pytest.mark.parametrize("away", [0.0, 1.0, 3.0, 10.0])
@pytest.mark.parametrize("radius", [0.5, 2.0, 9.0])
def test_round_and_off_centre_is_noncentral_chi_square(away, radius):
    # SciPy's noncentral chi-square with two degrees of freedom.
    sd = 2.5
    found = chance_in_disk(np.array([away, 0.0]), sd**2 * np.eye(2), radius)
    wanted = stats.ncx2.cdf((radius / sd) ** 2, 2, (away / sd) ** 2 + 1e-300)
    assert found == pytest.approx(float(wanted), abs=1e-10)


@pytest.mark.parametrize("turn", [0.0, 30.0, 90.0, 135.0])
def test_long_and_turned_is_what_an_independent_quadrature_gives(turn):
    from scipy.integrate import dblquad

    angle = math.radians(turn)
    turned = np.array([[math.cos(angle), math.sin(angle)], [-math.sin(angle), math.cos(angle)]])
    covariance = turned @ np.diag([60.0**2, 25.0**2]) @ turned.T
    mean = np.array([20.0, -15.0])
    normal = stats.multivariate_normal(mean, covariance)
    wanted, _ = dblquad(
        lambda r, t: r * normal.pdf([r * math.cos(t), r * math.sin(t)]), 0.0, 2 * math.pi, 0.0, 30.0
    )
    assert chance_in_disk(mean, covariance, 30.0) == pytest.approx(wanted, rel=1e-6)


def test_certain_and_impossible_are_just_that():
    tight = np.diag([1e-12, 0.0])
    assert chance_in_disk(np.zeros(2), tight, 1.0) == pytest.approx(1.0, abs=1e-9)
    assert chance_in_disk(np.array([5.0, 0.0]), tight, 1.0) == 0.0
    assert chance_in_disk(np.zeros(2), np.eye(2), 0.0) == 0.0


def test_one_sided_chances():
    # Normal tables: 1.6449 leaves one in twenty above it.
    assert normal_deviate(0.95) == pytest.approx(1.6449, abs=5e-5)
    assert normal_below(1.6449) == pytest.approx(0.95, abs=5e-6)
