"""How likely a walker comes so far, and in such a direction, as the chord of a portion says."""

from __future__ import annotations

import numpy as np

from audit.matching.edge_evidence import PortionLooks
from audit.matching.route import Edge
from audit.matching.walker import Walkers
from audit.settings import MatchingSettings
from audit.units import FloatArray, turn_degrees

_ROOT_TAU = float(np.sqrt(2.0 * np.pi))


def heading_likelihood(
    looks: PortionLooks,
    expected_deg: float | FloatArray,
    walker: Walkers,
    settings: MatchingSettings,
) -> FloatArray:
    """Likelihood of each chord's direction, against an even one."""
    heading_sd_deg = np.asarray(walker.heading_sd_deg, dtype=np.float32)  # as the looks are
    share = settings.stray_heading_share
    turn = turn_degrees(expected_deg, looks.chord_deg)
    sd = np.hypot(heading_sd_deg, looks.chord_sd_deg)
    density = np.exp(-0.5 * (turn / sd) ** 2) / (sd * _ROOT_TAU)
    return np.asarray((1.0 - share) * 360.0 * density + share)


def distance_likelihood(
    edge: Edge,
    looks: PortionLooks,
    walker: Walkers,
    place_sd_m: float,
    settings: MatchingSettings,
) -> FloatArray:
    """Likelihood of each chord's length, by the card and by the points where they differ."""
    by_card = length_likelihood(looks.log_chord, edge.distance_m, walker, place_sd_m, settings)
    if edge.points_distance_m is None:
        return by_card
    by_points = length_likelihood(
        looks.log_chord, edge.points_distance_m, walker, place_sd_m, settings
    )
    return np.asarray((by_card + by_points) / 2.0)


def length_likelihood(
    log_chord: FloatArray,
    planned_m: float,
    walker: Walkers,
    place_sd_m: float,
    settings: MatchingSettings,
) -> FloatArray:
    """Likelihood of a length, lost hundreds and single for double paces among the likely."""
    scale = walker.pace_scale
    sd = np.hypot(walker.distance_sd, place_sd_m / planned_m)
    half, twice = scale * 0.5, scale * 2.0
    ratios: list[tuple[float | FloatArray, float | FloatArray]]
    ratios = [(scale, 1.0 - settings.stray_distance_share)]
    for hundred in (-100.0, 100.0):
        ratio = scale + hundred / planned_m
        long_enough = planned_m * scale + hundred > settings.shortest_partial_m
        # A hundred more or less that is twice or half the distance is told once.
        told = long_enough & (ratio != half) & (ratio != twice)
        ratios.append((np.where(told, ratio, scale), np.where(told, settings.hundred_share, 0.0)))
    ratios += [(half, settings.factor_two_share), (twice, settings.factor_two_share)]
    density = sum(
        share * np.exp(-0.5 * ((log_chord - np.log(ratio * planned_m)) / sd) ** 2)
        for ratio, share in ratios
    )
    return np.asarray(density * (3.0 / (sd * _ROOT_TAU)) + settings.stray_distance_share)


def going_on_so_far(log_ratio: FloatArray, settings: MatchingSettings) -> FloatArray:
    """Give the share of walkers who go on for so much of their distance, their point unseen.

    ``log_ratio`` is the logarithm of distance walked over expected. Nobody who counts goes on
    for twice his distance: who comes straight to a point from so far away had first stopped,
    and then found out where he was.
    """
    most = settings.going_on_most
    off = (np.log(most) - log_ratio) / settings.going_on_soft
    share = settings.going_on_share
    return np.asarray(share + (1.0 - share) * 0.5 * (1.0 + np.tanh(off)))


def slipped_likelihood(
    log_ratio: FloatArray,
    planned_m: FloatArray,
    walker: Walkers,
    place_sd_m: float,
    settings: MatchingSettings,
) -> FloatArray:
    """Likelihood of lengths that slips put to ``planned_m``, by the logarithm of what was walked.

    Other slips beside, such as a lost hundred, are not among the likely.
    """
    sd = np.hypot(walker.distance_sd, place_sd_m / planned_m)
    density = np.exp(-0.5 * (log_ratio / sd) ** 2) * (3.0 / (sd * _ROOT_TAU))
    return np.asarray(density + settings.stray_distance_share)
