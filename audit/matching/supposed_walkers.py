"""The walkers that are supposed at first, and what the legs then say of the real one."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

import numpy as np

from audit.leg_card import LegCard
from audit.matching.walk_evidence import Evidence
from audit.matching.walker import Walker
from audit.matching.ways import EdgeOdds
from audit.settings import MatchingSettings
from audit.statistics.spread import robust_sd
from audit.units import FloatArray, direction_degrees, turn_degrees

DISTANCE_FACTORS = (0.5, 2.0)
"""Distance walked over distance planned, of who measured every leg with the wrong ruler, or
counted single paces for double ones or the other way round."""


def angle_slips_deg(card: LegCard) -> tuple[float, ...]:
    """Give the turns of who leaves the card's angle out, takes it the wrong way, or twice."""
    angle = card.angles.grid_magnetic_angle_deg
    return angle, 2.0 * angle, -angle


def prior_cost(walker: Walker, card: LegCard, settings: MatchingSettings) -> float:
    """Cost of a walker's turn before he is looked at: a habit of his, or a slip with the angle.

    Where the angle is large a slip with it turns further than any habit. Half or twice the
    planned distance on every leg is no habit either.
    """
    factor = 0.0 if walker.distance_factor == 1.0 else settings.cost_distance_factor
    habit = 0.5 * (walker.bias_deg / settings.bias_sd_deg) ** 2
    off = min(abs(walker.bias_deg - slip) for slip in angle_slips_deg(card))
    slip = settings.cost_angle_slip + 0.5 * (off / settings.bias_of_slip_sd_deg) ** 2
    return min(habit, slip) + factor


def fan_of_walkers(card: LegCard, settings: MatchingSettings) -> list[Walker]:
    """Suppose walkers with different common turns, the card's angle left out among them."""
    turns = list(settings.bias_fan_deg)
    for turn in angle_slips_deg(card):
        if min(abs(turn - other) for other in turns) > settings.fan_distinct_deg:
            turns.append(turn)
    return _turned(turns, settings.heading_sd_deg, settings.distance_sd, settings)


def walkers_of_half_or_twice(settings: MatchingSettings) -> list[Walker]:
    """Suppose walkers, not turned, who walk half or twice the distance on every leg."""
    (level,) = _turned([0.0], settings.heading_sd_deg, settings.distance_sd, settings)
    return [
        replace(level, pace_scale=factor, distance_factor=factor) for factor in DISTANCE_FACTORS
    ]


def broad_walkers(card: LegCard, settings: MatchingSettings) -> list[Walker]:
    """Suppose walkers of whom nothing is known, to see which portions are in play at all.

    One turned by a slip with a large angle is looked at apart: the first would not see him.
    """
    slips = [turn for turn in angle_slips_deg(card) if abs(turn) > settings.broad_reach_deg]
    turns = (0.0, *slips)
    return _turned(turns, settings.broad_heading_sd_deg, settings.broad_distance_sd, settings)


def _turned(
    turns: Iterable[float], heading_sd_deg: float, distance_sd: float, settings: MatchingSettings
) -> list[Walker]:
    """Suppose one walker a turn, of the pace that the card takes; none is turned without end."""
    return [
        Walker(
            bias_deg=turn,
            pace_scale=1.0,
            heading_sd_deg=heading_sd_deg,
            distance_sd=distance_sd,
            finds=settings.found_directly_share,
        )
        for turn in turns
        if abs(turn) <= settings.bias_most_deg
    ]


def known_better(
    walker: Walker, odds: list[EdgeOdds], evidence: Evidence, settings: MatchingSettings
) -> Walker:
    """Estimate the walker anew from the legs as they are now weighed."""
    turns, ratios, close = _leg_errors(odds, evidence)
    count = len(turns)
    if count < 2:
        return walker
    middle = float(np.median(turns))
    scatter = robust_sd(turns - middle)
    factor = walker.distance_factor
    scale = factor * float(np.exp(np.median(ratios - np.log(factor)) * count / (count + 1.5)))
    bias = middle * count / (count + 1.0)
    least, most = (factor * of for of in (settings.pace_scale_least, settings.pace_scale_most))
    if abs(bias) > settings.bias_most_deg or not least < scale < most:
        return walker
    prior = settings.scatter_prior_legs
    sd = np.sqrt((count * scatter**2 + prior * settings.heading_scatter_deg**2) / (count + prior))
    spread = robust_sd(ratios - np.median(ratios))
    distance_sd = np.sqrt(
        (count * spread**2 + prior * settings.distance_scatter**2) / (count + prior)
    )
    return Walker(
        bias_deg=bias,
        pace_scale=scale,
        heading_sd_deg=float(
            np.clip(sd, settings.heading_sd_least_deg, settings.heading_sd_most_deg)
        ),
        distance_sd=float(np.clip(distance_sd, settings.distance_sd_least, settings.distance_sd)),
        finds=_finds(close, settings),
        distance_factor=factor,
    )


def _finds(close: FloatArray, settings: MatchingSettings) -> float:
    """Estimate how often this walker's legs end at the point itself."""
    prior = settings.finds_prior_legs
    share = (close.sum() + prior * settings.found_directly_share) / (len(close) + prior)
    return float(min(share, settings.finds_most))


def _leg_errors(
    odds: list[EdgeOdds], evidence: Evidence
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Give turn, log distance ratio and nearness to its point of each leg's likeliest portion."""
    best: dict[int, tuple[float, float, float, float]] = {}
    near_m = float(np.hypot(evidence.settings.found_arrival_sd_m, evidence.noise_m))
    for edge in odds:
        if edge.edge.kind != "leg" or edge.edge.leg is None or len(edge.log_odds) == 0:
            continue
        top = int(np.argmax(edge.log_odds))
        log_share = float(edge.log_odds[top])
        known = best.get(edge.edge.leg)
        if log_share < np.log(0.02) or (known is not None and known[0] >= log_share):
            continue
        chord = evidence.cuts.position[edge.second[top]] - evidence.cuts.position[edge.first[top]]
        azimuth = direction_degrees(float(chord[0]), float(chord[1]))
        turn = turn_degrees(edge.edge.azimuth_deg, azimuth)
        ratio = float(np.log(np.hypot(*chord) / edge.edge.distance_m))
        close = float(evidence.to_point_m[edge.second[top], edge.edge.target] <= near_m)
        best[edge.edge.leg] = (log_share, turn, ratio, close)
    values = np.array([item[1:] for item in best.values()]).reshape(-1, 3)
    return values[:, 0], values[:, 1], values[:, 2]
