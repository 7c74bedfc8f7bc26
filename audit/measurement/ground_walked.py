"""Climb, slope and kind of ground along a leg, by the recording's own elevations."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.geodesy.along_line import metres_along
from audit.matching.leg_match import CleanTrack
from audit.measurement.leg_details import GroundWalked
from audit.measurement.walk_of_leg import WalkOfLeg
from audit.read_only import read_only
from audit.settings import GroundSettings
from audit.units import FloatArray
from audit.words import sentence
from audit.words.figures import Percent


@dataclass(frozen=True, slots=True, kw_only=True)
class ElevationQuality:
    """Whether the elevations of a recording can be trusted, and how far.

    ``sd_m`` is how much they scatter about their own mean while the walker stands.
    """

    trusted: bool
    why_not: str
    sd_m: float


def judge_elevation(
    clean: CleanTrack, halts: FloatArray, settings: GroundSettings
) -> ElevationQuality:
    """Judge the elevations of a whole recording by its halts and by how steep they make it."""
    known = np.isfinite(clean.elevation_m)
    if not clean.timed or known.mean() < settings.least_known_share:
        return ElevationQuality(trusted=False, why_not=sentence("pace-few-elevations"), sd_m=np.inf)
    time_s, elevation = clean.time_s[known], clean.elevation_m[known]
    square, count = settings.usual_sd_m**2, 1.0
    for start_s, end_s in halts:
        still = elevation[(time_s >= start_s) & (time_s <= end_s)]
        if len(still) >= 3:
            looks = max((end_s - start_s) / settings.memory_s, 0.2)
            square += looks * float(still.var(ddof=1))
            count += looks
    sd_m = float(np.sqrt(square / count))
    if sd_m > settings.most_sd_m:
        why = sentence("pace-scattered", scatter=f"{sd_m:.0f}")
        return ElevationQuality(trusted=False, why_not=why, sd_m=sd_m)
    steep = _steep_share(clean, known, settings)
    if steep > settings.most_steep_share:
        why = sentence("pace-too-steep", share=Percent(share=steep))
        return ElevationQuality(trusted=False, why_not=why, sd_m=sd_m)
    return ElevationQuality(trusted=True, why_not="", sd_m=sd_m)


def measure_ground(
    clean: CleanTrack, walk: WalkOfLeg, quality: ElevationQuality, settings: GroundSettings
) -> GroundWalked:
    """Measure climb, slope distance and kinds of ground of one leg."""
    nothing = read_only(np.empty(0))
    begin, end = walk.times_s
    on_leg = (clean.time_s >= begin) & (clean.time_s <= end)
    known = on_leg & np.isfinite(clean.elevation_m)
    why = quality.why_not
    if not why and known.sum() < max(settings.least_known_share * on_leg.sum(), 2):
        why = sentence("pace-few-on-leg")
    if why:
        return GroundWalked(trusted=False, why_not=why, along_m=nothing, elevation_m=nothing)
    along = metres_along(walk.position)
    stretches = max(int(np.ceil(along[-1] / settings.stretch_m)), 1)
    marks = np.linspace(0.0, along[-1], stretches + 1)
    moments = np.interp(marks, along, walk.time_s)
    height = smoothed_heights(clean.time_s[known], clean.elevation_m[known], moments, settings)
    rise, run = np.diff(height), np.diff(marks)
    climb, descent = _climb(height, settings.climb_sds * quality.sd_m)
    kind = kinds_of_ground(rise, run, settings)
    # The path is what its own rule says; the curve of places may be a little shorter.
    scale = walk.path_m / along[-1] if along[-1] > 0.0 else 1.0
    by_kind = {
        name: float(run[kind == name].sum() * scale) for name in ("uphill", "level", "downhill")
    }
    return GroundWalked(
        trusted=True,
        why_not="",
        along_m=read_only(marks),
        elevation_m=read_only(height),
        climb_m=climb,
        descent_m=descent,
        elevation_sd_m=float(np.sqrt(2.0) * quality.sd_m),
        slope_m=float(np.hypot(run * scale, rise).sum()),
        uphill_m=by_kind["uphill"],
        level_m=by_kind["level"],
        downhill_m=by_kind["downhill"],
    )


def kinds_of_ground(rise: FloatArray, run: FloatArray, settings: GroundSettings) -> np.ndarray:
    """Call each stretch "uphill", "level" or "downhill" by its slope."""
    slope = np.divide(rise, run, out=np.zeros_like(rise), where=run > 0.0)
    return np.where(
        slope > settings.level_slope,
        "uphill",
        np.where(slope < -settings.level_slope, "downhill", "level"),
    )


def _climb(height: FloatArray, least_m: float) -> tuple[float, float]:
    """Add up rises and falls, each counted once it is more than error can feign.

    A rise goes on to its highest: what comes back from there by less is part of it.
    """
    low = high = float(height[0])
    turns, hand, furthest = [low], 0, low
    for here in height.tolist():
        if hand == 0:
            low, high = min(low, here), max(high, here)
            if high - low >= least_m:
                hand, furthest = (1, high) if here == high else (-1, low)
                turns = [low if hand > 0 else high]
        elif hand * (here - furthest) >= 0.0:
            furthest = here
        elif hand * (furthest - here) >= least_m:
            turns.append(furthest)
            hand, furthest = -hand, here
    runs = np.diff([*turns, furthest])
    return float(runs[runs > 0.0].sum()), float(-runs[runs < 0.0].sum())


def smoothed_heights(
    time_s: FloatArray, elevation: FloatArray, moments: FloatArray, settings: GroundSettings
) -> FloatArray:
    """Give elevations at moments: means of the known ones, weighted by a Gaussian in time."""
    apart = (moments[:, None] - time_s[None, :]) / settings.smoothing_s
    weight = np.exp(-0.5 * np.minimum(apart**2, 400.0))
    total = weight.sum(axis=1)
    smooth = weight @ elevation / np.maximum(total, 1e-300)
    between = np.interp(moments, time_s, elevation)
    return np.where(total > 1e-3, smooth, between)


def _steep_share(clean: CleanTrack, known: np.ndarray, settings: GroundSettings) -> float:
    """Give the share of the way that the elevations make steeper than anybody walks."""
    path = metres_along(clean.places(known))
    if path[-1] < settings.stretch_m:
        return 0.0
    marks = np.arange(0.0, path[-1], settings.stretch_m)
    moments = np.interp(marks, path, clean.time_s[known])
    height = np.interp(moments, clean.time_s[known], clean.elevation_m[known])
    steep = np.abs(np.diff(height)) > settings.steepest_slope * settings.stretch_m
    return float(steep.mean()) if len(steep) else 0.0
