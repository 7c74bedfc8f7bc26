"""A bend against none: the odds by scipy's normal densities of the whole set of fixes."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import integrate, stats

from audit.settings import ClaimSettings
from audit.statistics.late_bend import Motion, weigh_bends

S = ClaimSettings()
MOTION = Motion(speed_m_s=1.2, noise_m=3.0, correlation_s=50.0)


def numeric_wander(a_s: float, b_s: float, tau_s: float) -> float:
    value, _ = integrate.dblquad(lambda u, v: np.exp(-abs(u - v) / tau_s), 0, a_s, 0, b_s)
    return value


def test_odds_are_the_ratio_of_two_densities() -> None:
    rng = np.random.default_rng(8)
    time_s = np.array([0.0, 9.0, 21.0, 30.0, 42.0, 55.0])
    end_s = 45.0  # the last fix is of the halt
    place = np.column_stack([1.2 * np.minimum(time_s, end_s), np.zeros(6)])
    place += rng.normal(0.0, 2.0, place.shape)
    candidates_s = np.array([20.0, 33.0])
    found = weigh_bends(time_s, place, candidates_s, end_s=end_s, motion=MOTION, settings=S)
    clock = np.minimum(time_s, end_s)
    apart = np.abs(time_s[:, None] - time_s)
    noise = 9.0 * (np.exp(-apart / 50.0) + S.white_share * np.eye(6))
    wander = np.array([[numeric_wander(a, b, S.wander_s) for b in clock] for a in clock])
    for number, bent_s in enumerate(candidates_s):
        expected = 0.0
        bend = np.maximum(clock - bent_s, 0.0)
        for axis, (mean, sd, drift, even) in enumerate(
            (
                (S.slowing_mean, S.slowing_sd, S.speed_sd, 1.2 * clock),
                (0.0, S.sideways_sd, np.radians(S.wander_deg), 0.0 * clock),
            )
        ):
            straight = noise + (1.2 * drift) ** 2 * (wander + np.outer(clock, clock)) + 100.0**2
            seen = place[:, axis] - place[0, axis] - even
            bent = straight + (1.2 * sd) ** 2 * np.outer(bend, bend)
            expected += stats.multivariate_normal(1.2 * mean * bend, bent).logpdf(seen)
            expected -= stats.multivariate_normal(0.0 * bend, straight).logpdf(seen)
        assert found.log_odds[number] == pytest.approx(expected, abs=1e-5)


@pytest.mark.parametrize("turn", [-70.0, -35.0, 40.0, 80.0])
def test_turn_has_its_side_and_its_size(turn) -> None:
    time_s = np.arange(0.0, 90.0, 3.0)
    end_s, bent_s = 75.0, 51.0
    clock = np.minimum(time_s, end_s)
    after = np.maximum(clock - bent_s, 0.0)
    angle = np.radians(turn)
    place = 1.2 * np.column_stack(
        [np.minimum(clock, bent_s) + after * np.cos(angle), after * np.sin(angle)]
    )
    found = weigh_bends(
        time_s,
        place,
        np.array([45.0, bent_s, 60.0]),
        end_s=end_s,
        motion=Motion(speed_m_s=1.2, noise_m=1.0, correlation_s=50.0),
        settings=S,
    )
    assert int(np.argmax(found.log_odds)) == 1
    assert found.log_odds[1] > 10.0
    assert found.turn_deg[1] == pytest.approx(turn, abs=6.0)  # drawn in by what is usual
    straight = np.column_stack([1.2 * clock, 0.0 * clock])
    none = weigh_bends(time_s, straight, np.array([bent_s]), end_s=end_s, motion=MOTION, settings=S)
    assert none.log_odds[0] < -0.5


def test_speed_after_a_bend_is_what_conditioning_a_normal_law_gives() -> None:
    """Bend and fixes are jointly normal: mean and variance of the one, given the others.

    The second walker nearly stands after the bend and is taken to go on at a tenth of his speed.
    """
    time_s = np.array([0.0, 9.0, 21.0, 30.0, 42.0, 55.0])
    end_s, bent_s, speed = 45.0, 24.0, MOTION.speed_m_s
    clock = np.minimum(time_s, end_s)
    bend = np.maximum(clock - bent_s, 0.0)
    apart = np.abs(time_s[:, None] - time_s)
    noise = 9.0 * (np.exp(-apart / 50.0) + S.white_share * np.eye(6))
    wander = np.array([[numeric_wander(a, b, S.wander_s) for b in clock] for a in clock])
    wander += np.outer(clock, clock)
    for back in (0.3, 3.5):
        place = np.column_stack([speed * (clock - back * bend), speed * 0.4 * bend])
        found = weigh_bends(
            time_s, place, np.array([bent_s]), end_s=end_s, motion=MOTION, settings=S
        )
        after = []
        for seen, mean, sd, drift in (
            (place[:, 0] - speed * clock, S.slowing_mean, S.slowing_sd, S.speed_sd),
            (place[:, 1], 0.0, S.sideways_sd, np.radians(S.wander_deg)),
        ):
            own = (speed * sd) ** 2
            straight = noise + (speed * drift) ** 2 * wander + 100.0**2
            gain = own * bend @ np.linalg.inv(straight + own * np.outer(bend, bend))
            value = speed * mean + gain @ (seen - speed * mean * bend)
            after.append((value, np.sqrt(own - own * gain @ bend)))
        (slower, _), (sideways, sideways_sd) = after
        onward = max(speed + slower, speed / 10.0)
        assert (onward == speed / 10.0) == (back == 3.5)
        assert found.turn_deg[0] == pytest.approx(
            np.degrees(np.arctan(sideways / onward)), abs=1e-4
        )
        ahead = np.hypot(sideways, onward)
        assert found.turn_sd_deg[0] == pytest.approx(np.degrees(sideways_sd / ahead), rel=1e-5)
