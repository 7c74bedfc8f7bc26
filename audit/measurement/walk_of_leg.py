"""The walk of one leg from leaving to claim, smoothed, with its ends put where they belong."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from audit.geodesy.along_line import steps_m
from audit.matching.leg_match import CleanTrack, LegMatch, Match, Reckoned
from audit.matching.walk_layout import SampledWalk
from audit.matching.walk_samples import WalkSamples, smoothed
from audit.measurement.claims import SightBend
from audit.measurement.cut_errors import cut_error
from audit.measurement.leg_details import Bypass, CutError
from audit.measurement.places import Around, Fixed, fix_place
from audit.settings import MeasuringSettings, Settings
from audit.units import FloatArray, direction_degrees

_CORNER_CUT = 0.6278
"""What smoothing by a Gaussian cuts off the way round a right angle, in widths of the
Gaussian: the integral of 1 - sqrt(1 - 2 P (1 - P)) with P the normal distribution."""
_WIDER = 1.7
"""A second width of smoothing, to see what the first one lost."""
_UNEVEN = 1.5
"""Samples that lie further apart than so many steps have a silence between them."""
_LINE_BETWEEN_FIXES = 1.0 / np.sqrt(6.0)
"""Straight lines between fixes smooth like a triangle as wide as two intervals: its standard
deviation, in intervals."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WalkOfLeg:
    """Samples between leaving and claim, the places of both among them.

    Attributes
    ----------
    start_error, claim_error : CutError
        How well the moments of leaving and claim are known.
    time_s, position : float arrays, shapes (n,) and (n, 2), n >= 2
    smoothing_s : float
        Width of the Gaussian by which the positions are smoothed.
    path_m : float
        Over the ground, nothing added while halted.
    lost_m : float
        What smoothing may have taken off the path.
    halted_s : float
    until_s : float
        When the walker left for the next leg, or the recording ended.
    """

    leg: int
    start: Fixed
    claim: Fixed
    start_error: CutError
    claim_error: CutError
    time_s: FloatArray
    position: FloatArray
    smoothing_s: float
    path_m: float
    lost_m: float
    halted_s: float
    until_s: float

    @property
    def speed_m_s(self) -> float:
        """Speed while walking."""
        return walking_speed(self.path_m, self.times_s, self.halted_s)

    @property
    def times_s(self) -> tuple[float, float]:
        """When the walker left, and when he claimed to be there."""
        return self.start.time_s, self.claim.time_s

    @property
    def chord_deg(self) -> float:
        """Direction from start to claim."""
        return direction_degrees(
            self.claim.east_m - self.start.east_m, self.claim.north_m - self.start.north_m
        )


def walk_of_leg(
    clean: CleanTrack,
    sampled: SampledWalk,
    match: Match,
    leg: LegMatch,
    noise_m: float,
    bend: SightBend | None,
    settings: Settings,
) -> WalkOfLeg:
    """Cut a leg out of the walk and smooth it as much as its noise asks for."""
    samples, movement, measuring = sampled.samples, sampled.movement, settings.measuring
    likely_m = _likely_noise_m(noise_m, settings)
    turned = bend is not None and bend.probability > 0.5
    around = _around(match, leg, movement.walking_m_s, turned=turned)
    moments, unseen = leg.times_s, (leg.start_unseen, leg.claim_unseen)
    ends = [
        fix_place(clean, match.halts, time_s, likely_m, measuring, near, reckoned)
        for time_s, near, reckoned in zip(moments, around, unseen, strict=True)
    ]
    inside = _seen_within(samples, moments, unseen)
    width_s = _smoothing_s(noise_m, measuring)
    rough = np.vstack([ends[0].place, samples.raw[inside], ends[1].place])
    time_s = np.concatenate([[leg.start_s], samples.time_s[inside], [leg.claim_s]])
    silences = _silences_in(time_s, samples.step_s)
    position = _smoothed_apart(rough, width_s / samples.step_s, silences)
    halted = np.concatenate([[False], movement.halted[inside], [False]])
    interval_s = clean.median_interval_s or 0.0
    path_m, lost_m = _walked_and_lost(rough, halted, samples.step_s, width_s, interval_s, silences)
    halted_s = _halted_within(match.halts, *moments)
    speed = walking_speed(path_m, moments, halted_s)
    errors = [
        cut_error(
            end, of_bend, reckoned, speed_m_s=speed, interval_s=interval_s, settings=settings.claim
        )
        for end, of_bend, reckoned in zip(ends, (None, bend), unseen, strict=True)
    ]
    return WalkOfLeg(
        leg=leg.leg,
        start=replace(ends[0], along_sd_m=errors[0].along_sd_m),
        claim=replace(ends[1], along_sd_m=errors[1].along_sd_m),
        start_error=errors[0],
        claim_error=errors[1],
        time_s=time_s,
        position=position,
        smoothing_s=width_s,
        path_m=path_m,
        lost_m=lost_m,
        halted_s=halted_s,
        until_s=_until(match, leg, float(clean.time_s[-1])),
    )


def _seen_within(
    samples: WalkSamples,
    moments: tuple[float, float],
    unseen: tuple[Reckoned | None, Reckoned | None],
) -> NDArray[np.int64]:
    """Give the samples between two moments, without those of a silence that either lies in.

    They lie straight between its ends, and not where it was reckoned that the walker was.
    """
    begin = samples.time_s > moments[0] if unseen[0] is None else samples.time_s >= unseen[0].seen_s
    end = samples.time_s < moments[1] if unseen[1] is None else samples.time_s <= unseen[1].seen_s
    return np.flatnonzero(begin & end)


def _silences_in(time_s: FloatArray, step_s: float) -> NDArray[np.int64]:
    """Give the places that are the first after a silence."""
    return np.flatnonzero(np.diff(time_s) > _UNEVEN * step_s) + 1


def _smoothed_apart(
    rough: FloatArray, width: float, silences: Sequence[int] | NDArray[np.int64]
) -> FloatArray:
    """Smooth what was seen before and after each silence by itself.

    Smoothed over it, the last that was seen would be drawn out into it, towards a place that
    is only reckoned.
    """
    return np.concatenate([smoothed(part, width) for part in np.split(rough, silences)])


def _around(
    match: Match, leg: LegMatch, speed_m_s: float, *, turned: bool
) -> tuple[Around, Around | None]:
    """Give the walk about start and claim, as far as the other ends of the legs that meet there.

    Who turned to his point in sight was there a few seconds later: no way on to lay a
    line through.
    """
    start_s, claim_s = leg.times_s
    starts = [one.start_s for one in match.legs if one.start_s is not None]
    claims = [one.claim_s for one in match.legs if one.claim_s is not None]
    before_s = max((one for one in starts if one < start_s), default=-np.inf)
    after_s = min((one for one in claims if one > claim_s), default=np.inf)
    start = Around(from_s=before_s, to_s=claim_s, speed_m_s=speed_m_s)
    claim = Around(from_s=start_s, to_s=after_s, speed_m_s=speed_m_s)
    return start, None if turned else claim


def _walked_and_lost(
    rough: FloatArray,
    halted: NDArray[np.bool_],
    step_s: float,
    width_s: float,
    interval_s: float,
    silences: Sequence[int] | NDArray[np.int64] = (),
) -> tuple[float, float]:
    """Give the smoothed path, and what smoothing may have taken off it.

    What corners lose goes with the width of the Gaussian, so that a wider one shows how
    much. Straight lines between fixes widen it, and what they took is given back: the
    path is to be the same whatever the logging rate.
    """
    moving = ~(halted[1:] & halted[:-1])
    widths_s = np.array([1.0, _WIDER]) * width_s
    ways = (_smoothed_apart(rough, width / step_s, silences) for width in widths_s)
    paths = [float(steps_m(way)[moving].sum()) for way in ways]
    blurred_s = np.hypot(widths_s, _LINE_BETWEEN_FIXES * interval_s)
    lost_m_per_s = max(float((paths[0] - paths[1]) / (blurred_s[1] - blurred_s[0])), 0.0)
    path_m = paths[0] + lost_m_per_s * float(blurred_s[0] - width_s)
    # What smoothing cuts off corners never makes a way shorter than the straight one.
    return max(path_m, float(np.hypot(*(rough[-1] - rough[0])))), lost_m_per_s * width_s


def _likely_noise_m(noise_m: float, settings: Settings) -> float:
    """Give the root of the mean square of a noise that is known within a factor, log-normal."""
    return noise_m * float(np.exp(settings.heading.noise_log_sd**2))


def _smoothing_s(noise_m: float, settings: MeasuringSettings) -> float:
    """Give the width that the noise asks for."""
    return float(
        np.clip(
            settings.path_smoothing_s_per_m * noise_m,
            settings.path_smoothing_least_s,
            settings.path_smoothing_most_s,
        )
    )


def with_corners(walk: WalkOfLeg, bypasses: Sequence[Bypass]) -> WalkOfLeg:
    """Give back to the path what smoothing cut off the corners of its bypasses.

    A bypass has four right angles, two at the way out and two at the way back.
    """
    width_m = walk.speed_m_s * walk.smoothing_s
    longer = 0.0
    for bypass in bypasses:
        for side in (bypass.out_m, bypass.back_m):
            # Corners near each other are cut together, by less.
            longer += 2.0 * _CORNER_CUT * width_m * min(1.0, side / (2.5 * width_m))
    return replace(walk, path_m=walk.path_m + longer, lost_m=max(walk.lost_m - longer, 0.0))


def walking_speed(path_m: float, times_s: tuple[float, float], halted_s: float) -> float:
    """Give metres a second while walking."""
    return path_m / max(times_s[1] - times_s[0] - halted_s, 1.0)


def _halted_within(halts: FloatArray, start_s: float, claim_s: float) -> float:
    overlap = np.minimum(halts[:, 1], claim_s) - np.maximum(halts[:, 0], start_s)
    return float(np.maximum(overlap, 0.0).sum())


def _until(match: Match, leg: LegMatch, end_s: float) -> float:
    claim_s = leg.times_s[1]
    later = [
        other.start_s
        for other in match.legs
        if other.start_s is not None and other.start_s >= claim_s and other.leg != leg.leg
    ]
    return min(later, default=end_s)
