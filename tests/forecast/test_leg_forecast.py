"""Forecasts against ten thousand simulated walkers, and against laws that must hold."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from forecast.legs import made_card, made_leg
from scipy import stats
from shapely import Polygon, contains_xy

from audit.azimuths import NorthAngles
from audit.forecast.leg_forecast import Ellipse, clicked_turns_deg, forecast_leg, walk_moments
from audit.forecast.walker_scatter import WalkerScatter, ordinary_scatter
from audit.leg_card import CardLeg
from audit.leg_card.leg_pieces import leg_pieces

ANGLES = NorthAngles(grid_magnetic_angle_deg=-7.5, convergence_deg=0.0)
"""Of the courses that are made here, as far as a leg asks."""
WALKERS = 10_000
WITHIN = 0.03
"""The figure asked for: forecasts against 10,000 simulated walkers within 3 %."""
SKILLED = WalkerScatter(turn_deg=0.0, turn_sd_deg=1.5, log_ratio=-0.01, log_ratio_sd=0.03)
BIASED = WalkerScatter(turn_deg=4.0, turn_sd_deg=2.5, log_ratio=0.05, log_ratio_sd=0.05)
NOVICE = WalkerScatter(turn_deg=-2.0, turn_sd_deg=6.0, log_ratio=-0.03, log_ratio_sd=0.09)


def simulated(
    leg: CardLeg, scatter: WalkerScatter, seed: int, squares: float = 0.0, *, alike: bool = False
) -> np.ndarray:
    """Walk a leg many times, step by step, knowing nothing of the formulae; from the point.

    ``alike`` rounds to clicks by anything up to half a click, not by what the azimuth leaves.
    """
    rng = np.random.default_rng(seed)
    place = np.tile(leg.line[0], (WALKERS, 1))
    ratio = np.exp(rng.normal(scatter.log_ratio, scatter.log_ratio_sd, WALKERS))
    for begin, end in zip(leg.line, leg.line[1:], strict=False):
        azimuth = math.atan2(end[0] - begin[0], end[1] - begin[1])
        turn = rng.normal(scatter.turn_deg, scatter.turn_sd_deg, WALKERS)
        if scatter.click_deg and alike:
            turn += rng.uniform(-0.5, 0.5, WALKERS) * scatter.click_deg
        elif scatter.click_deg:
            magnetic = math.degrees(azimuth) + 7.5
            clicks = np.round(magnetic / scatter.click_deg)
            turn += clicks * scatter.click_deg - magnetic
        walked = ratio * np.hypot(*(end - begin))
        bearing = azimuth + np.radians(turn)
        place = place + walked[:, None] * np.column_stack([np.sin(bearing), np.cos(bearing)])
    if squares:
        place = place + rng.uniform(-squares, squares, place.shape)  # where the start stands
        place = place - rng.uniform(-squares, squares, place.shape)  # and the point
    return place - leg.line[-1]


def inside(ends: np.ndarray, middle: np.ndarray, ellipse: Ellipse) -> float:
    """Give the share of ends inside an ellipse, by its axes alone."""
    angle = math.radians(ellipse.major_deg)
    major = np.array([math.sin(angle), math.cos(angle)])
    minor = np.array([math.cos(angle), -math.sin(angle)])
    away = ends - middle
    size = (away @ major / ellipse.major_m) ** 2 + (away @ minor / ellipse.minor_m) ** 2
    return float((size <= 1.0).mean())


@pytest.mark.parametrize("scatter", [ordinary_scatter(), SKILLED, BIASED, NOVICE])
@pytest.mark.parametrize(("east", "north"), [(30.0, 500.0), (300.0, -400.0), (-900.0, 100.0)])
@pytest.mark.parametrize("click", [0.0, 3.0])
def test_a_leg_against_simulated_walkers(scatter, east, north, click):
    leg, scatter = made_leg(east, north), replace(scatter, click_deg=click)
    forecast = forecast_leg(leg, scatter, 30.0, aim_off_m=-50.0)
    ends = simulated(leg, scatter, seed=round(1000 * click + east + 2000))
    toward = math.radians(forecast.toward_deg)
    ahead = np.array([math.sin(toward), math.cos(toward)])
    right = np.array([math.cos(toward), -math.sin(toward)])
    along, across = ends @ ahead, ends @ right
    assert forecast.along_sd_m == pytest.approx(along.std(), rel=WITHIN)
    assert forecast.across_sd_m == pytest.approx(across.std(), rel=WITHIN)
    assert forecast.along_m == pytest.approx(along.mean(), abs=0.05 * along.std())
    assert forecast.across_m == pytest.approx(across.mean(), abs=0.05 * across.std())
    middle = forecast.along_m * ahead + forecast.across_m * right
    assert inside(ends, middle, forecast.near) == pytest.approx(0.5, abs=WITHIN)
    assert inside(ends, middle, forecast.far) == pytest.approx(0.95, abs=WITHIN)
    seen = (np.hypot(*ends.T) <= 30.0).mean()
    assert forecast.chance_in_sight == pytest.approx(seen, abs=WITHIN)
    off = forecast.aimed_off
    assert off.chance_of_side == pytest.approx((across - 50.0 < 0.0).mean(), abs=WITHIN)
    aside = (np.hypot(*(ends - 50.0 * right).T) <= 30.0).mean()
    assert off.chance_in_sight == pytest.approx(aside, abs=WITHIN)


def test_references_widen_the_forecast_as_their_squares_do():
    leg = made_leg(0.0, 400.0)
    leg = replace(
        leg, start=replace(leg.start, half_square_m=50.0), end=replace(leg.end, half_square_m=50.0)
    )
    forecast = forecast_leg(leg, ordinary_scatter(), 30.0)
    ends = simulated(leg, ordinary_scatter(), seed=5, squares=50.0)
    assert forecast.along_sd_m == pytest.approx(ends[:, 1].std(), rel=WITHIN)
    assert forecast.across_sd_m == pytest.approx(ends[:, 0].std(), rel=WITHIN)
    seen = (np.hypot(*ends.T) <= 30.0).mean()
    assert forecast.chance_in_sight == pytest.approx(seen, abs=WITHIN)
    assert np.trace(forecast.walk_covariance_m2) < np.trace(forecast.covariance_m2)


def bent_leg(**changed) -> CardLeg:
    """Give a leg over a corner: 316 m north by east, then 500 m east."""
    leg = made_card((600.0, 300.0)).legs[0]
    bent = np.array([[0.0, 0.0], [100.0, 300.0], [600.0, 300.0]]) + leg.line[0]
    length = float(np.hypot(*np.diff(bent, axis=0).T).sum())
    return replace(leg, **({"line": bent, "distance_m": length} | changed))


@pytest.mark.parametrize("angles", [ANGLES, None])
def test_a_leg_along_a_line_against_simulated_walkers(angles):
    """Bug: each piece of such a leg was rounded to clicks as if its azimuth were not known."""
    leg, scatter = bent_leg(), replace(NOVICE, click_deg=3.0)
    forecast = forecast_leg(leg, scatter, 40.0, angles=angles)
    ends = simulated(leg, scatter, seed=11, alike=angles is None)
    assert forecast.across_m == pytest.approx(-ends.mean(axis=0)[1], abs=2.0)
    assert forecast.along_m == pytest.approx(ends.mean(axis=0)[0], abs=2.0)
    assert forecast.covariance_m2 == pytest.approx(np.cov(ends.T), rel=0.06, abs=60.0)
    assert forecast.toward_deg == pytest.approx(90.0)
    seen = (np.hypot(*ends.T) <= 40.0).mean()
    assert forecast.chance_in_sight == pytest.approx(seen, abs=WITHIN)


def test_a_leg_along_a_line_is_walked_by_its_pieces_whatever_length_the_plan_states():
    """Bug: a plan that gave the straight 671 m had its pieces of 816 m walked too short."""
    stated, drawn = (
        forecast_leg(leg, SKILLED, 40.0) for leg in (bent_leg(distance_m=671.0), bent_leg())
    )
    assert (stated.along_m, stated.across_m) == pytest.approx((drawn.along_m, drawn.across_m))
    assert stated.along_m == pytest.approx(0.0, abs=10.0)


def test_a_leg_along_a_line_is_aimed_off_by_a_turn_of_its_last_piece():
    """Bug: 30 m to the right of the point were a turn of the whole 816 m, 2.1 for 3.4 degrees."""
    off = forecast_leg(bent_leg(), SKILLED, 40.0, aim_off_m=30.0).aimed_off
    assert off.offset_deg == pytest.approx(math.degrees(math.atan(30.0 / 500.0)))


def test_the_moments_are_exact_however_wide_the_scatter():
    # A law: for a normal turn E[cos h] = exp(-s^2 / 2), so a full circle of scatter leads nowhere.
    wild = WalkerScatter(turn_deg=0.0, turn_sd_deg=400.0, log_ratio=0.0, log_ratio_sd=0.0)
    mean, covariance = walk_moments(np.array([[0.0, 100.0]]), wild)
    assert mean == pytest.approx([0.0, 0.0], abs=1e-6)
    assert covariance == pytest.approx(np.diag([5000.0, 5000.0]), abs=1e-6)


def test_ellipses_hold_what_the_chi_square_law_says():
    # Semi-axes over standard deviation: 1.1774 and 2.4477 (Rayleigh; NSSDA uses 2.4477).
    forecast = forecast_leg(made_leg(0.0, 500.0), SKILLED, 30.0)
    assert forecast.near.major_m / forecast.along_sd_m == pytest.approx(1.17741, abs=2e-3)
    assert forecast.far.major_m / forecast.along_sd_m == pytest.approx(2.44775, abs=2e-3)
    assert stats.chi2.cdf(2.44775**2, 2) == pytest.approx(0.95, abs=1e-5)


def test_a_degree_is_seventeen_and_a_half_metres_in_a_thousand():
    # FM 3-25.26, deliberate offset: 17 or 18 m for each degree over 1000 m; exactly 17.455 m.
    off = forecast_leg(made_leg(0.0, 1000.0), SKILLED, 30.0, aim_off_m=17.455).aimed_off
    assert off.offset_deg == pytest.approx(1.0, abs=1e-4)


def test_an_offset_of_the_size_advised_is_sure_of_its_side():
    leg = made_leg(-700.0, 700.0)
    forecast = forecast_leg(leg, ordinary_scatter(), 30.0)
    aimed = forecast_leg(leg, ordinary_scatter(), 30.0, aim_off_m=forecast.sure_offset_m)
    assert aimed.aimed_off.chance_of_side == pytest.approx(0.95, abs=1e-6)
    other = forecast_leg(leg, ordinary_scatter(), 30.0, aim_off_m=-forecast.sure_offset_m)
    assert other.aimed_off.chance_of_side == pytest.approx(0.95, abs=1e-6)
    assert aimed.aimed_off.chance_in_sight < forecast.chance_in_sight


def test_an_offset_is_sure_of_its_side_for_a_walker_who_drifts_aside():
    leg = made_leg(0.0, 700.0)
    forecast = forecast_leg(leg, BIASED, 30.0)
    assert abs(forecast.across_m) > 40.0  # four degrees of 700 m
    sides = [
        forecast_leg(leg, BIASED, 30.0, aim_off_m=offset).aimed_off.chance_of_side
        for offset in (forecast.sure_offset_m, -forecast.sure_offset_m)
    ]
    # With the drift it is more than sure; against it, as sure as was asked for.
    assert min(sides) == pytest.approx(0.95, abs=1e-3)


@pytest.mark.parametrize(("east", "north"), [(300.0, -400.0), (-900.0, 100.0)])
def test_the_outline_holds_nineteen_in_twenty_of_the_places_drawn(east, north):
    leg = made_leg(east, north)
    forecast = forecast_leg(leg, BIASED, 30.0)
    outline = forecast.far_outline(corners=360)
    assert outline[0] == pytest.approx(outline[-1])
    ends = simulated(leg, BIASED, seed=3)
    assert contains_xy(Polygon(outline), *ends.T).mean() == pytest.approx(0.95, abs=0.01)


def test_a_click_turns_the_leg_by_what_rounding_leaves():
    # Common practice, no source: 289.5 on clicks of 3 degrees is set as 288 or as 291.
    leg = made_leg(500.0, 500.0)  # grid 045, magnetic 052.5: 51 or 54
    clicked = replace(SKILLED, click_deg=3.0)
    pieces = leg_pieces(leg, ANGLES, None)
    assert abs(clicked_turns_deg(pieces, clicked)) == pytest.approx([1.5], abs=1e-6)
    assert clicked_turns_deg(pieces, SKILLED) is None
