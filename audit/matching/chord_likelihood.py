"""How likely a walker comes so far, and in such a direction, as the chord of a portion says."""

from __future__ import annotations

import numpy as np

from audit.matching.edge_evidence import PortionLooks
from audit.matching.route import Edge
from audit.matching.walker import Walker
from audit.settings import MatchingSettings
from audit.units import FloatArray, turn_degrees

_ROOT_TAU = float(np.sqrt(2.0 * np.pi))


def heading_likelihood(
    looks: PortionLooks,
    expected_deg: float | FloatArray,
    walker: Walker,
    settings: MatchingSettings,
) -> FloatArray:
    """Likelihood of each chord's direction, against an even one."""
    share = settings.stray_heading_share
    turn = turn_degrees(expected_deg, looks.chord_deg)
    sd = np.hypot(walker.heading_sd_deg, looks.chord_sd_deg)
    density = np.exp(-0.5 * (turn / sd) ** 2) / (sd * _ROOT_TAU)
    return np.asarray((1.0 - share) * 360.0 * density + share)


def distance_likelihood(
    edge: Edge,
    looks: PortionLooks,
    walker: Walker,
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
    walker: Walker,
    place_sd_m: float,
    settings: MatchingSettings,
) -> FloatArray:
    """Likelihood of a length, lost hundreds and single for double paces among the likely."""
    scale = walker.pace_scale
    sd = float(np.hypot(walker.distance_sd, place_sd_m / planned_m))
    ratios = {scale: 1.0 - settings.stray_distance_share}
    for hundred in (-100.0, 100.0):
        if planned_m * scale + hundred > settings.shortest_partial_m:
            ratios[scale + hundred / planned_m] = settings.hundred_share
    for factor in (0.5, 2.0):
        ratios[scale * factor] = settings.factor_two_share
    density = np.zeros(len(log_chord))
    for ratio, share in ratios.items():
        expected = float(np.log(ratio * planned_m))
        density += share * np.exp(-0.5 * ((log_chord - expected) / sd) ** 2)
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
    walker: Walker,
    place_sd_m: float,
    settings: MatchingSettings,
) -> FloatArray:
    """Likelihood of lengths that slips put to ``planned_m``, by the logarithm of what was walked.

    Other slips beside, such as a lost hundred, are not among the likely.
    """
    sd = np.hypot(walker.distance_sd, place_sd_m / planned_m)
    density = np.exp(-0.5 * (log_ratio / sd) ** 2) * (3.0 / (sd * _ROOT_TAU))
    return np.asarray(density + settings.stray_distance_share)
