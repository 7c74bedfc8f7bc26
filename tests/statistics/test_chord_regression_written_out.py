"""The direction of a leg against its whole mixture, written out with full matrices.

Every strength, memory and way of coming back is one normal answer; its weight is the restricted
likelihood (Patterson and Thompson, Biometrika 58, 1971, from memory) times what speaks for it
beforehand, and the interval is that of the mixture's own distribution function.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import product

import numpy as np
import pytest
from scipy.integrate import cumulative_trapezoid
from scipy.interpolate import RegularGridInterpolator
from scipy.optimize import brentq
from scipy.stats import norm

from audit.settings import HeadingSettings
from audit.statistics.chord_regression import Asides, Slope, Step, chord_slope

SETTINGS = replace(
    HeadingSettings(),
    noise_correlations_s=(40.0, 120.0),
    wander_correlations_s=(15.0, 50.0),
    strength_deviates=(-0.8, 0.4, 1.3),
    step_sds=((0.06, 0.7), (0.6, 0.3)),
)
DURATION_S, LENGTH_M, NOISE_M = 300.0, 360.0, 4.0
RNG = np.random.default_rng(11)
TIME_S = np.concatenate([[-40.0, -15.0], np.arange(0.0, 300.0, 23.0)[:13:2], [310.0, 340.0]])
ACROSS_M = np.cumsum(2.5 * RNG.normal(size=len(TIME_S))) + 0.05 * np.clip(TIME_S, 0.0, DURATION_S)


@dataclass(frozen=True)
class Normal:
    log_weight: float
    mean: float
    variance: float


def wander(tau_s: float) -> RegularGridInterpolator:
    """Covariance of the integral of a unit process, summed numerically."""
    grid = np.arange(0.0, DURATION_S + 0.25, 0.5)
    process = np.exp(-np.abs(grid[:, None] - grid) / tau_s)
    once = cumulative_trapezoid(process, grid, axis=0, initial=0.0)
    return RegularGridInterpolator((grid, grid), cumulative_trapezoid(once, grid, initial=0.0))


WANDERS = {tau: wander(tau) for tau in SETTINGS.wander_correlations_s}


def answers(time_s: np.ndarray, across_m: np.ndarray, steps: Sequence[Step]) -> list[Normal]:
    """Give one answer for each strength, memory and way of coming back."""
    s, made = SETTINGS, []
    clock = np.clip(time_s, 0.0, DURATION_S)
    at = np.append(clock, DURATION_S)
    x = np.column_stack([np.ones(len(clock)), clock / DURATION_S])
    wanted = np.array([0.0, 1.0])
    apart = np.abs(time_s[:, None] - time_s)
    returns = s.step_sds if steps else ((1.0, 1.0),)
    for tau, slow, (share, chance), of_noise, of_wander in product(
        s.noise_correlations_s, s.wander_correlations_s, returns,
        s.strength_deviates, s.strength_deviates,
    ):  # fmt: skip
        noise_m = NOISE_M * math.exp(s.noise_log_sd * of_noise)
        drift = LENGTH_M / DURATION_S * math.radians(s.wander_sd_deg)
        drift *= math.exp(s.wander_log_sd * of_wander)
        wandered = drift**2 * WANDERS[slow](tuple(np.meshgrid(at, at, indexing="ij")))
        whole = noise_m**2 * (np.exp(-apart / tau) + s.white_share * np.eye(len(clock)))
        whole = whole + wandered[:-1, :-1]
        for step in steps:
            done = np.clip((time_s - step.begin_s) / (step.end_s - step.begin_s), 0.0, 1.0)
            beside_m = step.out_m * (share if step.returned else 1.0)
            whole = whole + beside_m**2 * np.outer(done, done)
        weight = np.linalg.inv(whole)
        information = x.T @ weight @ x
        coefficient = np.linalg.solve(information, x.T @ weight @ across_m)
        left, to_end = across_m - x @ coefficient, wandered[:-1, -1]
        wanting = wanted - x.T @ weight @ to_end
        memory = math.log(tau / s.usual_correlation_s) / s.usual_correlation_log_sd
        log_weight = (
            math.log(chance)
            + norm.logpdf(memory)
            + norm.logpdf(of_noise)
            + norm.logpdf(of_wander)
            - 0.5 * (np.linalg.slogdet(whole)[1] + np.linalg.slogdet(information)[1])
            - 0.5 * left @ weight @ left
        )
        variance = wandered[-1, -1] - to_end @ weight @ to_end
        variance += wanting @ np.linalg.solve(information, wanting)
        mean = coefficient[1] + to_end @ weight @ left
        made.append(Normal(float(log_weight), float(mean), float(variance)))
    return made


def assert_is_mixture(found: Slope, mixed: list[Normal], asides: Asides) -> None:
    log_weight = np.array([one.log_weight for one in mixed])
    weight = np.exp(log_weight - log_weight.max())
    weight /= weight.sum()
    mean = np.array([one.mean for one in mixed])
    sd = np.sqrt(np.array([one.variance for one in mixed]) + asides.ends_sd_m**2)
    centre = float(weight @ mean)

    def ended(others: tuple[tuple[float, float], ...]) -> list[tuple[float, float]]:
        return [(1.0 - sum(share for share, _ in others), 0.0), *others]

    def spread(others: tuple[tuple[float, float], ...]) -> float:
        """About the likelier end."""
        return math.sqrt(
            sum(s * weight @ (sd**2 + (mean + by - centre) ** 2) for s, by in ended(others))
        )

    def below(place: float) -> float:
        return sum(s * weight @ norm.cdf(place, mean + by, sd) for s, by in ended(every))

    every = asides.other_ends + asides.other_portions
    assert found.centre == pytest.approx(centre / LENGTH_M, abs=1e-5)
    assert found.sd == pytest.approx(spread(every) / LENGTH_M, rel=1e-4)
    assert found.own_sd == pytest.approx(spread(asides.other_ends) / LENGTH_M, rel=1e-4)
    # 201 places stand for each normal curve; about 0.025 they lie 0.085 of its spread apart.
    for end, part in ((found.low, 0.025), (found.high, 0.975)):
        exact = brentq(lambda place, part=part: below(place) - part, -2000.0, 2000.0)
        assert end * LENGTH_M == pytest.approx(exact, abs=0.06 * spread(every))


def slope(time_s: np.ndarray, across_m: np.ndarray, asides: Asides) -> Slope:
    return chord_slope(
        time_s, across_m, duration_s=DURATION_S, length_m=LENGTH_M, noise_m=NOISE_M,
        settings=SETTINGS, asides=asides,
    )  # fmt: skip


@pytest.mark.parametrize(
    "asides",
    [
        Asides(),
        Asides(ends_sd_m=9.0, other_ends=((0.3, 40.0),)),
        Asides(other_ends=((0.1, -25.0), (0.05, 60.0)), other_portions=((0.2, -90.0),)),
    ],
    ids=["alone", "another end", "other ends and another portion"],
)
def test_a_leg_is_the_mixture_of_all_its_answers(asides) -> None:
    found = slope(TIME_S, ACROSS_M, asides)
    assert_is_mixture(found, answers(TIME_S, ACROSS_M, ()), asides)


@pytest.mark.parametrize("returned", [True, False])
def test_bypasses_are_mixed_by_how_the_walker_may_have_come_back(returned) -> None:
    outside = ((TIME_S <= 70.0) | (TIME_S >= 115.0)) & ((TIME_S <= 170.0) | (TIME_S >= 210.0))
    steps = (
        Step(begin_s=70.0, end_s=115.0, out_m=30.0),
        Step(begin_s=170.0, end_s=210.0, out_m=18.0, returned=returned),
    )
    time_s = TIME_S[outside]
    across_m = ACROSS_M[outside] + 7.0 * (time_s > 100.0) - 12.0 * (time_s > 180.0)
    asides = Asides(steps=steps)
    assert_is_mixture(slope(time_s, across_m, asides), answers(time_s, across_m, steps), asides)


def test_an_offset_that_nothing_explains_still_gives_numbers() -> None:
    """Log weights of minus many thousands: their differences alone count."""
    across_m = ACROSS_M.copy()
    across_m[5] += 600.0
    found, mixed = slope(TIME_S, across_m, Asides()), answers(TIME_S, across_m, ())
    assert max(one.log_weight for one in mixed) < -1000.0  # of which e to it is no number
    assert_is_mixture(found, mixed, Asides())
