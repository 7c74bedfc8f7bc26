"""The direction of a leg from all its fixes, against a dense regression and simulated legs.

The judge is generalised least squares written out with full matrices (Aitken's
estimator, and the best linear prediction of the wander at the end: Goldberger, JASA 57,
1962, from memory), its covariance of the integrated wander summed numerically.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from scipy import integrate, stats
from scipy.signal import lfilter

from audit.settings import HeadingSettings
from audit.statistics.chord_regression import Asides, Step, chord_slope

S = HeadingSettings()
ONE_STRENGTH = replace(
    S, noise_correlations_s=(60.0,), wander_correlations_s=(50.0,), strength_deviates=(0.0,)
)


def numeric_wander(a_s: float, b_s: float, tau_s: float) -> float:
    """Covariance of the two integrals from 0 of a process with correlation exp(-|u-v|/tau)."""
    low, high = sorted((a_s, b_s))
    if low <= 0.0:
        return 0.0
    both, _ = integrate.dblquad(lambda u, v: np.exp(-(v - u) / tau_s), 0.0, low, 0.0, lambda v: v)
    rest, _ = integrate.dblquad(lambda u, v: np.exp(-(v - u) / tau_s), low, high, 0.0, low)
    return 2.0 * both + rest


def dense(time_s, across_m, duration_s, length_m, noise_m, settings) -> tuple[float, float]:
    """Mean and standard deviation of the slope by full matrices, for one pair of strengths."""
    clock = np.clip(time_s, 0.0, duration_s)
    drift = length_m / duration_s * np.radians(settings.wander_sd_deg)
    (tau_noise,), (tau_wander,) = settings.noise_correlations_s, settings.wander_correlations_s
    apart = np.abs(time_s[:, None] - time_s[None, :])
    noise = noise_m**2 * (np.exp(-apart / tau_noise) + settings.white_share * np.eye(len(time_s)))
    wander = np.array([[numeric_wander(a, b, tau_wander) for b in clock] for a in clock])
    to_end = np.array([numeric_wander(a, duration_s, tau_wander) for a in clock]) * drift**2
    at_end = numeric_wander(duration_s, duration_s, tau_wander) * drift**2
    weight = np.linalg.inv(noise + drift**2 * wander)
    x = np.column_stack([np.ones(len(clock)), clock / duration_s])
    inverse = np.linalg.inv(x.T @ weight @ x)
    coefficient = inverse @ x.T @ weight @ across_m
    mean = coefficient[1] + to_end @ weight @ (across_m - x @ coefficient)
    wanting = np.array([0.0, 1.0]) - x.T @ weight @ to_end
    variance = at_end - to_end @ weight @ to_end + wanting @ inverse @ wanting
    return float(mean / length_m), float(np.sqrt(variance) / length_m)


@pytest.fixture(scope="module")
def leg():
    rng = np.random.default_rng(3)
    time_s = np.concatenate(
        [np.arange(-40.0, 0.0, 9.0), np.arange(0.0, 300.0, 23.0), [310.0, 340.0]]
    )
    across_m = 4.0 * rng.normal(size=len(time_s)) + 0.05 * np.clip(time_s, 0.0, 300.0)
    return time_s, across_m, {"duration_s": 300.0, "length_m": 360.0, "noise_m": 4.0}


def test_one_pair_of_strengths_is_the_dense_regression(leg) -> None:
    time_s, across_m, known = leg
    found = chord_slope(time_s, across_m, settings=ONE_STRENGTH, **known)
    mean, sd = dense(time_s, across_m, *known.values(), ONE_STRENGTH)
    assert found.centre == pytest.approx(mean, abs=1e-7)
    assert found.sd == pytest.approx(sd, rel=1e-6)
    # A single normal answer: its interval is the normal one.
    half = float(stats.norm.ppf(0.975)) * sd
    assert found.low == pytest.approx(mean - half, rel=2e-3)
    assert found.high == pytest.approx(mean + half, rel=2e-3)


def test_several_strengths_are_mixed_by_their_likelihood(leg) -> None:
    """Two strengths: the weights are those of the restricted likelihood, by full matrices."""
    time_s, across_m, known = leg
    several = replace(ONE_STRENGTH, strength_deviates=(-1.0, 1.0))
    found = chord_slope(time_s, across_m, settings=several, **known)
    clock = np.clip(time_s, 0.0, 300.0)
    x = np.column_stack([np.ones(len(clock)), clock / 300.0])
    log_weight, means, variances = [], [], []
    for of_noise in (-1.0, 1.0):
        for of_wander in (-1.0, 1.0):
            noise_m = 4.0 * np.exp(several.noise_log_sd * of_noise)
            wander_deg = several.wander_sd_deg * np.exp(several.wander_log_sd * of_wander)
            one = replace(ONE_STRENGTH, wander_sd_deg=wander_deg)
            mean, sd = dense(time_s, across_m, 300.0, 360.0, noise_m, one)
            apart = np.abs(time_s[:, None] - time_s[None, :])
            noise = np.exp(-apart / 60.0) + several.white_share * np.eye(len(time_s))
            wander = np.array([[numeric_wander(a, b, 50.0) for b in clock] for a in clock])
            whole = noise_m**2 * noise + (1.2 * np.radians(wander_deg)) ** 2 * wander
            information = x.T @ np.linalg.solve(whole, x)
            coefficient = np.linalg.solve(information, x.T @ np.linalg.solve(whole, across_m))
            left = across_m - x @ coefficient
            log_weight.append(
                -0.5 * np.linalg.slogdet(whole)[1]
                - 0.5 * np.linalg.slogdet(information)[1]
                - 0.5 * left @ np.linalg.solve(whole, left)
                - 0.5 * (of_noise**2 + of_wander**2)
            )
            means.append(mean)
            variances.append(sd**2)
    weight = np.exp(np.array(log_weight) - max(log_weight))
    weight /= weight.sum()
    centre = weight @ np.array(means)
    spread = np.sqrt(weight @ (np.array(variances) + (np.array(means) - centre) ** 2))
    assert found.centre == pytest.approx(centre, abs=1e-7)
    assert found.sd == pytest.approx(spread, rel=1e-5)


def test_mirrored_leg_has_the_mirrored_slope(leg) -> None:
    time_s, across_m, known = leg
    right = chord_slope(time_s, across_m, settings=S, **known)
    left = chord_slope(time_s, -across_m, settings=S, **known)
    assert left.centre == pytest.approx(-right.centre, abs=1e-12)
    assert left.low == pytest.approx(-right.high, abs=1e-12)
    assert left.high == pytest.approx(-right.low, abs=1e-12)
    assert left.sd == pytest.approx(right.sd, abs=1e-12)


@pytest.mark.parametrize("unit", [10.0, 0.01])
def test_slope_is_a_ratio_whatever_the_unit_of_length(leg, unit) -> None:
    time_s, across_m, known = leg

    def in_units(of: float):
        asides = Asides(
            steps=(Step(begin_s=70.0, end_s=90.0, out_m=30.0 * of),),
            other_ends=((0.2, 60.0 * of),),
            other_portions=((0.1, -20.0 * of),),
            ends_sd_m=9.0 * of,
        )
        scaled = known | {"length_m": 360.0 * of, "noise_m": 4.0 * of}
        return chord_slope(time_s, of * across_m, settings=S, asides=asides, **scaled)

    metres, others = in_units(1.0), in_units(unit)
    for name in ("centre", "low", "high", "sd", "own_sd"):
        assert getattr(others, name) == pytest.approx(getattr(metres, name), rel=1e-5)


def test_moving_the_line_sideways_changes_nothing(leg) -> None:
    time_s, across_m, known = leg
    here = chord_slope(time_s, across_m, settings=S, **known)
    there = chord_slope(time_s, across_m + 500.0, settings=S, **known)
    assert there.centre == pytest.approx(here.centre, abs=1e-9)
    assert there.sd == pytest.approx(here.sd, rel=1e-6)


def test_line_walked_without_error_is_given_back() -> None:
    time_s = np.arange(0.0, 301.0, 10.0)
    found = chord_slope(
        time_s, 0.1 * 1.2 * time_s, duration_s=300.0, length_m=360.0, noise_m=3.0, settings=S
    )
    assert found.centre == pytest.approx(0.1, abs=1e-9)
    assert found.low < 0.1 < found.high


def test_more_noise_gives_a_wider_interval(leg) -> None:
    time_s, across_m, known = leg
    widths = []
    for noise_m in (2.0, 4.0, 8.0):
        found = chord_slope(time_s, across_m, settings=S, **(known | {"noise_m": noise_m}))
        widths.append(found.high - found.low)
    assert widths == sorted(widths)


def correlated(seconds: int, sd: float, tau_s: float, rng) -> np.ndarray:
    """First-order Gauss-Markov noise, once a second."""
    kept = np.exp(-1.0 / tau_s)
    shocks = rng.normal(0.0, sd * np.sqrt(1.0 - kept**2), seconds)
    shocks[0] = rng.normal(0.0, sd)
    return lfilter([1.0], [1.0, -kept], shocks)


def simulated_leg(rng):
    """A leg with halts at both ends; the walker's heading wanders, the receiver's error too."""
    length_m = float(rng.choice([100, 200, 400, 800]))
    noise_m, speed = float(rng.choice([3, 6, 12])), float(rng.uniform(0.8, 1.4))
    every_s, halt_s = int(rng.choice([1, 5, 20])), int(rng.choice([20, 60, 150]))
    walking_s = round(length_m / speed)
    heading = correlated(
        walking_s, np.radians(rng.choice([3, 7, 12])), rng.choice([10, 25, 50]), rng
    )
    across = np.concatenate([[0.0], np.cumsum(speed * np.sin(heading))])
    along = np.concatenate([[0.0], np.cumsum(speed * np.cos(heading))])
    true = across[-1] / along[-1]
    whole = np.concatenate([np.zeros(halt_s), across, np.full(halt_s, across[-1])])
    fixes = whole + correlated(len(whole), noise_m, float(rng.choice([15, 30, 60])), rng)
    time_s = np.arange(len(whole), dtype=np.float64) - halt_s
    # As measuring does it: up to 14 fixes of each halt and 40 of the leg.
    parts = (time_s < 0, (time_s >= 0) & (time_s <= walking_s), time_s > walking_s)
    chosen = []
    for part, most in zip(parts, (14, 40, 14), strict=True):
        index = np.flatnonzero(part)[::every_s]
        chosen.append(
            index[
                np.unique(np.linspace(0, len(index) - 1, min(most, len(index))).round().astype(int))
            ]
        )
    index = np.concatenate(chosen)
    told_m = noise_m * float(rng.uniform(0.7, 1.2))  # what halts would have told of it
    slope = chord_slope(
        time_s[index], fixes[index],
        duration_s=float(walking_s), length_m=float(along[-1]), noise_m=told_m, settings=S,
    )  # fmt: skip
    return true, slope


def test_interval_holds_the_truth_nineteen_times_in_twenty() -> None:
    rng = np.random.default_rng(2026)
    held, standard = [], []
    for _ in range(500):
        true, slope = simulated_leg(rng)
        held.append(slope.low <= true <= slope.high)
        standard.append((true - slope.centre) / slope.sd)
    # The standard error of a share of 0.95 of 500 legs is 0.01.
    assert 0.93 <= np.mean(held) <= 0.985
    assert abs(np.mean(standard)) < 0.15


def test_step_aside_is_left_out_as_full_matrices_leave_it_out(leg) -> None:
    """A bypass as one more regressor of known spread: by full matrices with its covariance."""
    time_s, across_m, known = leg
    outside = (time_s <= 90.0) | (time_s >= 140.0)
    time_s, across_m = time_s[outside], across_m[outside] + 12.0 * (time_s[outside] > 100.0)
    one = replace(ONE_STRENGTH, step_sds=((0.5, 1.0),))
    asides = Asides(steps=(Step(begin_s=90.0, end_s=140.0, out_m=30.0),))
    found = chord_slope(time_s, across_m, settings=one, asides=asides, **known)
    clock, drift = np.clip(time_s, 0.0, 300.0), 1.2 * np.radians(one.wander_sd_deg)
    step = np.clip((time_s - 90.0) / 50.0, 0.0, 1.0)
    apart = np.abs(time_s[:, None] - time_s[None, :])
    wander = np.array([[numeric_wander(a, b, 50.0) for b in clock] for a in clock])
    to_end = np.array([numeric_wander(a, 300.0, 50.0) for a in clock]) * drift**2
    whole = 16.0 * (np.exp(-apart / 60.0) + one.white_share * np.eye(len(clock)))
    weight = np.linalg.inv(whole + drift**2 * wander + 15.0**2 * np.outer(step, step))
    x = np.column_stack([np.ones(len(clock)), clock / 300.0])
    inverse = np.linalg.inv(x.T @ weight @ x)
    coefficient = inverse @ x.T @ weight @ across_m
    mean = coefficient[1] + to_end @ weight @ (across_m - x @ coefficient)
    wanting = np.array([0.0, 1.0]) - x.T @ weight @ to_end
    at_end = numeric_wander(300.0, 300.0, 50.0) * drift**2
    variance = at_end - to_end @ weight @ to_end + wanting @ inverse @ wanting
    assert found.centre == pytest.approx(mean / 360.0, abs=1e-6)
    assert found.sd == pytest.approx(np.sqrt(variance) / 360.0, rel=1e-5)


def test_another_end_widens_the_interval_and_leaves_the_centre(leg) -> None:
    time_s, across_m, known = leg
    plain = chord_slope(time_s, across_m, settings=S, **known)
    asides = Asides(other_ends=((0.2, 60.0),))
    doubtful = chord_slope(time_s, across_m, settings=S, asides=asides, **known)
    assert doubtful.centre == plain.centre
    assert doubtful.high > plain.high + 30.0 / 360.0  # a fifth of it lies 60 m further right
    assert doubtful.low == pytest.approx(plain.low, abs=3.0 / 360.0)
    # Errors of the ends add to the variance.
    uncertain = chord_slope(time_s, across_m, settings=S, asides=Asides(ends_sd_m=9.0), **known)
    assert uncertain.sd == pytest.approx(np.hypot(plain.sd, 9.0 / 360.0), rel=1e-6)
