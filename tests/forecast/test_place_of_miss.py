"""Where a miss lies among ordinary walks: the quantiles of ordinary walks are even."""

from __future__ import annotations

import numpy as np
import pytest
from forecast.legs import made_leg
from forecast.test_leg_forecast import simulated
from scipy import stats

from audit.forecast.leg_forecast import forecast_leg
from audit.forecast.place_of_miss import MissInForecast, place_miss
from audit.forecast.walker_scatter import ordinary_scatter

LEG = made_leg(500.0, 300.0)
FORECAST = forecast_leg(LEG, ordinary_scatter(), 30.0)


def held(miss, inherited=(0.0, 0.0), plan=(0.0, 0.0), sd: float = 0.0) -> MissInForecast:
    return place_miss(
        FORECAST, miss_m=miss, inherited_m=inherited, plan_m=plan,
        own_sd_m=sd, miss_sd_m=sd, start_sd_m=0.0,
    )  # fmt: skip


def test_ordinary_walks_are_spread_evenly_over_their_quantiles():
    # A law: where the model holds, the probability integral transform is uniform.
    rng = np.random.default_rng(3)
    ends = simulated(LEG, ordinary_scatter(), seed=3)[:3000]
    noisy = ends + rng.normal(0.0, 6.0, ends.shape)
    found = [held(tuple(end), sd=6.0).quantile for end in noisy]
    assert stats.kstest(found, "uniform").statistic < 0.03
    names = [held(tuple(end), sd=6.0).where for end in noisy]
    assert names.count("inside the 50 % ellipse") / 3000 == pytest.approx(0.5, abs=0.03)
    assert names.count("outside the 95 % ellipse") / 3000 == pytest.approx(0.05, abs=0.015)


def test_a_wrong_start_is_not_laid_to_the_walking_of_the_leg():
    perfect = FORECAST.walk_mean_m
    aside = (perfect[0] + 200.0, perfect[1])
    found = held(aside, inherited=(200.0, 0.0))
    assert found.quantile == pytest.approx(0.0, abs=1e-9)
    assert found.where == "inside the 50 % ellipse"
    assert found.began_off_m == pytest.approx(200.0)
    assert found.whole_quantile > 0.99


def test_a_card_that_disagrees_with_its_points_is_not_either():
    perfect = FORECAST.walk_mean_m
    found = held((perfect[0], perfect[1] - 300.0), plan=(0.0, -300.0))
    assert found.quantile == found.whole_quantile == pytest.approx(0.0, abs=1e-9)


def test_a_reciprocal_lies_outside():
    found = held((-1000.0, -600.0))
    assert found.where == "outside the 95 % ellipse"
    assert found.quantile > 0.999
