"""Errors of noise, ledger and points reached, each worked out beside the check."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from measurement.hand_made import BEGIN, SETTINGS, HandWalk, card_of, measure
from scipy.stats import norm

from audit.measurement.ledger_errors import ledger_errors
from audit.measurement.point_reached import share_within
from audit.measurement.receiver_noise import ReceiverNoise, noise_between

NOISE = ReceiverNoise(
    noise_m=4.0, noise_log_sd=0.3, correlation_s=60.0, correlation_log_sd=0.5,
    source="halts", halted_s=300.0, prior_m=4.5, usual_hdop=2.0,
)  # fmt: skip


def test_intervals_hold_the_middle_95_of_100_of_a_log_normal_law() -> None:
    for value, log_sd, interval in (
        (4.0, 0.3, NOISE.interval_m),
        (60.0, 0.5, NOISE.correlation_interval_s),
    ):
        exact = [value * math.exp(log_sd * norm.ppf(part)) for part in (0.025, 0.975)]
        assert interval == pytest.approx(exact, rel=1e-4)


def between(hdop, gap_share=0.0, noise=NOISE) -> float:
    """Noise from 60 to 120 s of a walk whose dilution is told there, and 9 elsewhere."""
    clean = HandWalk().walk(90, 500).clean()
    within = (clean.time_s >= BEGIN + 60.0) & (clean.time_s <= BEGIN + 120.0)
    clean = replace(clean, hdop=np.where(within, hdop, 9.0))
    return noise_between(clean, noise, (BEGIN + 60.0, BEGIN + 120.0), gap_share, SETTINGS.noise)


def test_noise_grows_in_proportion_to_the_dilution_of_precision() -> None:
    """That is the meaning of the dilution; less of it than usual is not taken for better."""
    most = SETTINGS.noise.most_hdop_ratio
    assert most > 1.5
    for hdop, ratio in ((2.0, 1.0), (3.0, 1.5), (1.0, 1.0), (2.0 * most + 2.0, most)):
        assert between(hdop) == pytest.approx(4.0 * ratio)
    assert between(math.nan) == between(0.0) == 4.0  # not told
    assert between(3.0, noise=replace(NOISE, usual_hdop=None)) == 4.0
    assert between(3.0, 0.5) == pytest.approx(6.0 * (1.0 + 0.5 * SETTINGS.noise.gap_noise))


def test_errors_of_the_ledger_by_the_squares_of_its_points() -> None:
    """Anywhere in a square of half side a is a / sqrt(3) per axis (a uniform law)."""
    walk = HandWalk().halt(60).mark("start").walk(95, 400).mark("claim").halt(60)
    card = card_of((0, 0), (500, 0))
    found = measure(card, walk.clean(), [walk.portion()], walk.halts).legs[0].measures
    assert found is not None
    leg = card.legs[0]
    blunt = replace(
        leg, start=replace(leg.start, half_square_m=5.0), end=replace(leg.end, half_square_m=50.0)
    )
    straight = replace(found, ledger=replace(found.ledger, detour=(0.0, 0.0)))
    assert ledger_errors(blunt, straight, 2.0, 3.0).detour_m == 0.0
    aside = replace(found, ledger=replace(found.ledger, detour=(0.0, 1e-3)))
    assert ledger_errors(blunt, aside, 2.0, 3.0).detour_m > 3.0
    errors = ledger_errors(blunt, found, 2.0, 3.0)
    assert errors.inherited_m == pytest.approx(math.hypot(2.0, 5.0 / math.sqrt(3.0)))
    assert errors.plan_m == pytest.approx(math.hypot(5.0, 50.0) / math.sqrt(3.0))
    # The chord of a turn grows by the mean of both lengths for each radian.
    turn_sd = math.radians(found.heading.sd_deg)
    assert errors.heading_m == pytest.approx((500.0 + 400.0) / 2.0 * turn_sd, rel=1e-4)
    assert errors.distance_m == found.straight_sd_m
    assert errors.total_m == found.miss_sd_m
    aside = bool(np.hypot(*found.ledger.detour) > 0.0)
    detour_m = math.hypot(2.0, 3.0, 400.0 * turn_sd) if aside else 0.0
    assert errors.detour_m == pytest.approx(detour_m, rel=1e-3)


@pytest.mark.parametrize("sd_m", [0.02, 0.05, 0.09])
def test_a_small_error_is_an_error(sd_m) -> None:
    """Two hundredths outside a circle that is as good as a straight edge there."""
    assert share_within(30.02, 30.0, sd_m) == pytest.approx(norm.cdf(-0.02 / sd_m), abs=0.01)
    assert share_within(30.02, 30.0, 0.0) == 0.0
    assert share_within(30.0, 30.0, 0.0) == 1.0
