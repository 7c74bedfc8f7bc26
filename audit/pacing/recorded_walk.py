"""A recording on its own, without a plan: where it moved, how far, and how good that is."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from audit.errors import refuse
from audit.geodesy.grids import course_grid, utm_code
from audit.matching.clean_track import clean_track
from audit.matching.halts import Movement, find_movement
from audit.matching.leg_match import CleanTrack
from audit.matching.walk_samples import WalkSamples, sample_walk
from audit.measurement.ground_walked import ElevationQuality, judge_elevation
from audit.measurement.receiver_noise import ReceiverNoise, measure_noise
from audit.pacing.path_length import steps_over_ground
from audit.settings import Settings
from audit.track import Track
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class RecordedWalk:
    """A recording cleaned and put on even steps; arrays of steps have shape (n - 1,).

    Attributes
    ----------
    halts : float array, shape (k, 2)
        Start and end of each halt in seconds.
    place : float array, shape (n, 2)
        Smoothed positions, on the UTM grid of the first fix.
    step_m : float array
        From sample to sample over the ground, nothing while the walker stands.
    on_foot : bool array
        Steps that were walked: moving, recorded, and no faster than anybody walks.
    first, last : int
        Sample at which the walker set out, and at which he stopped for good.
    ridden_m, silent_m : float
        Left out of what was walked: faster than on foot, and across silences.
    """

    source: str
    clean: CleanTrack
    samples: WalkSamples
    movement: Movement
    noise: ReceiverNoise
    elevation: ElevationQuality
    halts: FloatArray
    place: FloatArray
    step_m: FloatArray
    on_foot: NDArray[np.bool_]
    first: int
    last: int
    ridden_m: float
    silent_m: float

    @property
    def walked_m(self) -> float:
        """Metres on foot."""
        return float(self.step_m[self.on_foot].sum())


def recorded_walk(track: Track, settings: Settings) -> RecordedWalk:
    """Look at a recording.

    Raises
    ------
    InputRefusedError
        Where it holds no two places that can be used.
    """
    longitude, latitude = (
        float(one[np.isfinite(one)][0]) for one in (track.longitude_deg, track.latitude_deg)
    )
    grid = course_grid(utm_code(longitude, latitude))
    clean = clean_track(track, grid, settings.cleaning)
    if len(clean) < 2:
        rule = "holds fewer than two places that can be used, so it shows no walk"
        raise refuse(track.source or "track", "", None, rule, "Record a strip as you walk it.")
    samples = sample_walk(clean, settings.matching)
    movement = find_movement(samples, settings.matching)
    halts = samples.time_s[movement.halts]
    noise = measure_noise(clean, halts, settings.noise)
    steps = steps_over_ground(samples, movement, noise, settings.pacing)
    step = steps.over_ground_m.copy()
    still = movement.halted[1:] & movement.halted[:-1]
    if not clean.timed:
        still[:] = False
    step[still] = 0.0
    # A silence says nothing of how fast, nor does a break.
    fast = steps.even_m / np.diff(samples.time_s) > settings.matching.fastest_walk_m_s
    if not clean.timed:
        fast[:] = False
    silent = samples.in_gap[1:] | samples.in_gap[:-1] | (np.diff(samples.stretch) > 0)
    moving = np.flatnonzero(~still & ~silent)
    return RecordedWalk(
        source=track.source,
        clean=clean,
        samples=samples,
        movement=movement,
        noise=noise,
        elevation=judge_elevation(clean, halts, settings.ground),
        halts=halts,
        place=steps.place,
        step_m=step,
        on_foot=~still & ~fast & ~silent,
        first=int(moving[0]) if len(moving) else 0,
        last=int(moving[-1]) + 1 if len(moving) else len(samples) - 1,
        ridden_m=float(step[fast & ~silent].sum()),
        silent_m=float(step[silent].sum()),
    )
