"""The walk of one leg from leaving to claim, smoothed, with its ends put where they belong."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.matching.leg_match import CleanTrack, LegMatch, Match
from audit.matching.walk_layout import WalkLaidOut
from audit.matching.walk_samples import smoothed
from audit.measurement.places import Fixed, fix_place
from audit.settings import MeasuringSettings
from audit.units import FloatArray, direction_degrees


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WalkOfLeg:
    """Samples between leaving and claim, the places of both among them.

    Attributes
    ----------
    time_s, position : float arrays, shapes (n,) and (n, 2), n >= 2
    path_m : float
        Over the ground, nothing added while halted.
    halted_s : float
    until_s : float
        When the walker left for the next leg, or the recording ended.
    """

    leg: int
    start: Fixed
    claim: Fixed
    time_s: FloatArray
    position: FloatArray
    path_m: float
    halted_s: float
    until_s: float

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
    laid_out: WalkLaidOut,
    match: Match,
    leg: LegMatch,
    noise_m: float,
    settings: MeasuringSettings,
) -> WalkOfLeg:
    """Cut a leg out of the walk and smooth it as much as its noise asks for."""
    if leg.start_s is None or leg.claim_s is None:
        message = "only a leg that was walked can be cut out"
        raise ValueError(message)
    samples, movement = laid_out.samples, laid_out.movement
    start = fix_place(clean, match.halts, leg.start_s, noise_m, settings)
    claim = fix_place(clean, match.halts, leg.claim_s, noise_m, settings)
    inside = np.flatnonzero((samples.time_s > leg.start_s) & (samples.time_s < leg.claim_s))
    width_s = float(
        np.clip(
            settings.path_smoothing_s_per_m * noise_m,
            settings.path_smoothing_least_s,
            settings.path_smoothing_most_s,
        )
    )
    ends = np.array([[start.east_m, start.north_m], [claim.east_m, claim.north_m]])
    rough = np.vstack([ends[:1], samples.raw[inside], ends[1:]])
    position = smoothed(rough, width_s / samples.step_s)
    time_s = np.concatenate([[leg.start_s], samples.time_s[inside], [leg.claim_s]])
    halted = np.concatenate([[False], movement.halted[inside], [False]])
    step = np.hypot(*np.diff(position, axis=0).T)
    still = halted[1:] & halted[:-1]
    straight = float(np.hypot(*(ends[1] - ends[0])))
    return WalkOfLeg(
        leg=leg.leg,
        start=start,
        claim=claim,
        time_s=time_s,
        position=position,
        # What smoothing cuts off corners never makes a way shorter than the straight one.
        path_m=max(float(step[~still].sum()), straight),
        halted_s=_halted_within(match.halts, leg.start_s, leg.claim_s),
        until_s=_until(match, leg, float(clean.time_s[-1])),
    )


def _halted_within(halts: FloatArray, start_s: float, claim_s: float) -> float:
    overlap = np.minimum(halts[:, 1], claim_s) - np.maximum(halts[:, 0], start_s)
    return float(np.maximum(overlap, 0.0).sum())


def _until(match: Match, leg: LegMatch, end_s: float) -> float:
    claim_s = leg.claim_s or end_s
    later = [
        other.start_s
        for other in match.legs
        if other.start_s is not None and other.start_s >= claim_s and other.leg != leg.leg
    ]
    return min(later, default=end_s)
