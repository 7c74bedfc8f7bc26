"""Steps aside in walks that are laid down on paper, and in walks that have none."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from audit.settings import SlantSettings
from audit.statistics.steps_aside import WalkAcross, find_steps

SETTINGS = SlantSettings()
CLOCK_S = np.arange(0.0, 401.0, 4.0)


def walk(across_m, noise_m: float = 2.0) -> WalkAcross:
    return WalkAcross(
        time_s=1000.0 + CLOCK_S,
        walking_s=CLOCK_S,
        across_m=across_m,
        speed_m_s=1.2,
        noise_m=noise_m,
        correlation_s=60.0,
    )


def way(begin_s: float, last_s: float, right_m: float):
    return right_m * np.clip((CLOCK_S - begin_s) / last_s, 0.0, 1.0)


@pytest.mark.parametrize("right_m", [12.0, -12.0])
def test_a_step_on_a_straight_line_is_found_where_it_is(right_m) -> None:
    (step,) = find_steps(walk(0.05 * CLOCK_S + way(180.0, 12.0, right_m)), SETTINGS)
    assert step.begin_s == pytest.approx(1180.0, abs=4.0)
    assert step.end_s == pytest.approx(1192.0, abs=4.0)
    assert step.right_m == pytest.approx(right_m, rel=0.1)


def test_two_steps_are_two() -> None:
    steps = find_steps(walk(way(100.0, 12.0, 14.0) + way(280.0, 12.0, 14.0)), SETTINGS)
    assert [step.begin_s for step in steps] == pytest.approx([1100.0, 1280.0], abs=4.0)


@pytest.mark.parametrize(
    "across_m",
    [
        np.zeros_like(CLOCK_S),
        0.3 * CLOCK_S,
        way(150.0, 80.0, 60.0),
        way(200.0, 200.0, 90.0),
    ],
    ids=["straight", "another azimuth", "80 s on another bearing", "a bend for good"],
)
def test_what_is_no_step_is_none(across_m) -> None:
    assert find_steps(walk(across_m), SETTINGS) == []


def test_noise_and_wandering_as_they_are_told_feign_hardly_any() -> None:
    """Drawn from the very model: five standard errors among some thousand tries."""
    rng = np.random.default_rng(11)
    apart = np.abs(CLOCK_S[:, None] - CLOCK_S)
    noise = np.linalg.cholesky(np.exp(-apart / 60.0) + 0.01 * np.eye(len(CLOCK_S)))
    heading = np.linalg.cholesky(np.exp(-apart / 25.0) + 1e-9 * np.eye(len(CLOCK_S)))
    feigned = 0
    for _ in range(100):
        wander = np.cumsum(1.2 * 4.0 * np.radians(7.0) * (heading @ rng.standard_normal(101)))
        feigned += len(
            find_steps(walk(2.0 * (noise @ rng.standard_normal(101)) + wander), SETTINGS)
        )
    assert feigned <= 2


def test_a_step_must_stand_out_from_a_worse_receiver() -> None:
    across_m = way(180.0, 12.0, 9.0)
    assert len(find_steps(walk(across_m, noise_m=1.0), SETTINGS)) == 1
    assert find_steps(walk(across_m, noise_m=10.0), SETTINGS) == []


def test_fewer_standard_errors_find_more() -> None:
    across_m = way(180.0, 12.0, 9.0)
    assert find_steps(walk(across_m, noise_m=6.0), replace(SETTINGS, least_sds=1.0))


def test_between_fixes_far_apart_the_shortest_step_stands_for_all() -> None:
    clock_s = np.concatenate([np.arange(0.0, 200.0, 4.0), np.arange(220.0, 420.0, 4.0)])
    (step,) = find_steps(
        WalkAcross(
            time_s=clock_s,
            walking_s=clock_s,
            across_m=np.where(clock_s > 200.0, 15.0, 0.0),
            speed_m_s=1.2,
            noise_m=1.0,
            correlation_s=60.0,
        ),
        SETTINGS,
    )
    assert step.end_s - step.begin_s == pytest.approx(SETTINGS.lasts_s[0])
