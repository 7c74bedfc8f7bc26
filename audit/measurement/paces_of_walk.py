"""Paces of a leg and of the course: predicted, counted, and by the recording's cadence."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np

from audit.matching.leg_match import CleanTrack
from audit.measurement.leg_details import Ground, GroundWalked, LegPaces
from audit.measurement.walk_of_leg import WalkOfLeg
from audit.settings import PaceSettings
from audit.units import FloatArray

GROUNDS: tuple[Ground, ...] = ("uphill", "level", "downhill")


@dataclass(frozen=True, slots=True, kw_only=True)
class PaceRate:
    """Paces for 100 m over the ground, with standard error and the metres it rests on."""

    per_100m: float
    sd: float
    metres: float


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkPaces:
    """Pace counts of the whole course, in whichever pace the walker counts.

    Attributes
    ----------
    unit : "double" or "single"
        By the plan's pace count: under 90 to 100 m is taken as every second step.
    counted : PaceRate or None
        From the walker's log, over all legs that it has a count for.
    counted_on : dict
        The same by kind of ground, where elevations can be trusted.
    by_cadence, by_cadence_on
        From the cadence of the recording.
    """

    unit: Literal["double", "single"]
    counted: PaceRate | None
    counted_on: dict[Ground, PaceRate]
    by_cadence: PaceRate | None
    by_cadence_on: dict[Ground, PaceRate]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Cadence:
    """Cadence at each kept fix in the walker's own paces a minute; NaN where unknown."""

    per_min: FloatArray


def read_cadence(
    cadence_per_min: FloatArray | None,
    unit: Literal["double", "single"],
    settings: PaceSettings,
) -> Cadence | None:
    """Bring a recording's cadence into the walker's paces; None where it has none.

    Some devices write steps of one foot a minute, some of both: nobody walks 80 double
    paces a minute, nor 80 steps.
    """
    if cadence_per_min is None:
        return None
    moving = cadence_per_min[np.isfinite(cadence_per_min) & (cadence_per_min > 0.0)]
    if len(moving) < settings.least_cadences:
        return None
    both_feet = float(np.median(moving)) > settings.both_feet_from_per_min
    factor = (0.5 if both_feet else 1.0) * (2.0 if unit == "single" else 1.0)
    return Cadence(per_min=cadence_per_min * factor)


def leg_paces(
    clean: CleanTrack,
    walk: WalkOfLeg,
    *,
    predicted: float | None,
    counted: float | None,
    path_sd_m: float,
    cadence: Cadence | None,
    settings: PaceSettings,
) -> LegPaces:
    """Set the paces of a leg side by side."""
    rate = rate_sd = None
    if counted is not None and walk.path_m > 0.0:
        rate = 100.0 * counted / walk.path_m
        rate_sd = rate * float(np.hypot(settings.count_sd, path_sd_m / walk.path_m))
    begin, end = walk.times_s
    return LegPaces(
        predicted=predicted,
        counted=counted,
        per_100m=rate,
        per_100m_sd=rate_sd,
        by_cadence=None if cadence is None else paces_between(clean, cadence, begin, end, settings),
    )


def paces_between(
    clean: CleanTrack, cadence: Cadence, begin_s: float, end_s: float, settings: PaceSettings
) -> float | None:
    """Add up a cadence between two moments; None where too much of it is missing."""
    middle = (clean.time_s[1:] + clean.time_s[:-1]) / 2.0
    inside = (middle >= begin_s) & (middle <= end_s)
    step_s = np.diff(clean.time_s)
    rate = (cadence.per_min[1:] + cadence.per_min[:-1]) / 2.0
    known = inside & np.isfinite(rate)
    total_s = float(step_s[inside].sum())
    known_s = float(step_s[known].sum())
    if known_s <= 0.0 or known_s < settings.cadence_known_share * total_s:
        return None
    return float((rate[known] * step_s[known]).sum() / 60.0 * (end_s - begin_s) / known_s)


def walk_paces(
    legs: list[tuple[LegPaces, GroundWalked, float]],
    unit: Literal["double", "single"],
    settings: PaceSettings,
) -> WalkPaces:
    """Pool the paces of all legs: each with its ground and its metres over the ground."""
    counted = [(p.counted, g, m) for p, g, m in legs if p.counted is not None]
    cadence = [(p.by_cadence, g, m) for p, g, m in legs if p.by_cadence is not None]
    return WalkPaces(
        unit=unit,
        counted=_pooled(counted, settings),
        counted_on=rates_by_ground(counted, settings),
        by_cadence=_pooled(cadence, settings),
        by_cadence_on=rates_by_ground(cadence, settings),
    )


def _pooled(
    legs: list[tuple[float, GroundWalked, float]], settings: PaceSettings
) -> PaceRate | None:
    """Give all paces over all metres; the error from how the legs differ, and a usual one."""
    metres = float(sum(m for _, _, m in legs))
    if metres <= 0.0:
        return None
    rate = sum(count for count, _, _ in legs) / metres
    left = np.array([count - rate * m for count, _, m in legs])
    # With few legs the usual error of a count stands in for what they cannot show.
    usual = settings.count_sd * rate * np.array([m for _, _, m in legs])
    square = float((left**2).sum() + (usual**2).mean()) * (len(legs) + 1) / max(len(legs), 1)
    return PaceRate(
        per_100m=100.0 * rate, sd=100.0 * float(np.sqrt(square)) / metres, metres=metres
    )


def rates_by_ground(
    legs: list[tuple[float, GroundWalked, float]], settings: PaceSettings
) -> dict[Ground, PaceRate]:
    """Fit one rate for each kind of ground to the counts of whole legs.

    Least squares with a prior: on any ground the rate is the walker's usual one to
    within some fifteen in a hundred. Grounds that the legs do not tell apart keep it.
    """
    known = [(count, ground) for count, ground, _ in legs if ground.trusted]
    if not known:
        return {}
    metres = np.array([[g.uphill_m, g.level_m, g.downhill_m] for _, g in known], dtype=np.float64)
    if metres.sum() <= 0.0:  # legs whose walker never moved
        return {}
    counts = np.array([count for count, _ in known])
    usual = float(counts.sum() / metres.sum())
    spread = settings.ground_sd * usual
    noise = settings.count_sd * np.maximum(counts, 1.0)
    scaled = metres / noise[:, None]
    precision = scaled.T @ scaled + np.eye(3) / spread**2
    cover = np.linalg.inv(precision)
    rate = cover @ (scaled.T @ (counts / noise) + usual / spread**2)
    return {
        name: PaceRate(
            per_100m=100.0 * float(rate[number]),
            sd=100.0 * float(np.sqrt(cover[number, number])),
            metres=float(metres[:, number].sum()),
        )
        for number, name in enumerate(GROUNDS)
        if metres[:, number].sum() >= settings.least_ground_m
    }
