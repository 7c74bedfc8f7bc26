"""Whether a point was reached: found, missed, or too close to call."""

from __future__ import annotations

from statistics import NormalDist

import numpy as np

from audit.matching.leg_match import CleanTrack
from audit.measurement.leg_details import PointReached, PointVerdict
from audit.settings import MeasuringSettings
from audit.units import FloatArray


def judge_point(
    nearest_m: float, unseen_m: float, radius_m: float, sd_m: float, settings: MeasuringSettings
) -> PointReached:
    """Judge a nearest approach by the radius and its standard error per axis.

    Benefit of the doubt is the rule: inside the radius is found, and a miss must be
    certain: 97.5 in 100 against the nearest that the walker may have come.
    """
    probability = share_within(nearest_m, radius_m, sd_m)
    possible = share_within(max(nearest_m - unseen_m, 0.0), radius_m, sd_m)
    verdict: PointVerdict
    if nearest_m <= radius_m:
        verdict = "found"
    else:
        verdict = "missed" if possible < settings.certain_miss else "too close to call"
    return PointReached(
        verdict=verdict,
        probability=probability,
        radius_m=radius_m,
        sd_m=sd_m,
        unseen_m=unseen_m,
    )


def share_within(distance_m: float, radius_m: float, sd_m: float) -> float:
    """Give the probability that a place seen at a distance really lies within the radius.

    The error is normal, ``sd_m`` per axis: the circle cut into strips across the line of
    sight, each with its share of the normal plane.
    """
    if sd_m <= 0.0:
        return 1.0 if distance_m <= radius_m else 0.0
    normal = NormalDist()
    # Narrow at the rim, where their height changes fast.
    strips = radius_m * np.sin(np.linspace(-np.pi / 2.0, np.pi / 2.0, 201))
    middle = (strips[1:] + strips[:-1]) / 2.0
    half = np.sqrt(np.maximum(radius_m**2 - middle**2, 0.0)) / sd_m
    share = 0.0
    for low, high, tall in zip(strips[:-1], strips[1:], half, strict=True):
        wide = normal.cdf((high - distance_m) / sd_m) - normal.cdf((low - distance_m) / sd_m)
        share += wide * (2.0 * normal.cdf(float(tall)) - 1.0)
    return float(np.clip(share, 0.0, 1.0))


def unseen_approach(
    clean: CleanTrack,
    times_s: tuple[float, float],
    target: FloatArray,
    nearest_m: float,
    speed_m_s: float,
) -> float:
    """Give by how much nearer than seen the walker may have come in silences of the recording.

    In a silence of T seconds between A and B he can have been at no place X with
    |AX| + |XB| > speed x T; so he came no nearer to the point P than
    (|AP| + |PB| - speed x T) / 2, by the triangle inequality.
    """
    possible = nearest_m
    for gap in clean.gaps:
        if gap.end_s <= times_s[0] or gap.start_s >= times_s[1]:
            continue
        ends = np.array([[clean.east_m[i], clean.north_m[i]] for i in (gap.before, gap.before + 1)])
        way = float(np.hypot(*(ends - target).T).sum())
        possible = min(possible, max((way - speed_m_s * (gap.end_s - gap.start_s)) / 2.0, 0.0))
    return nearest_m - possible
