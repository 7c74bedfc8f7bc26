"""How long the strip was over which paces were counted, and how well that is known."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

import numpy as np

from audit.measurement.places import fix_place
from audit.pacing.recorded_walk import RecordedWalk
from audit.settings import PacingSettings, Settings


@dataclass(frozen=True, slots=True, kw_only=True)
class StripLength:
    """The length of a strip.

    Attributes
    ----------
    by : "given", "ends" or "path"
        Stated beforehand; from end to end of a straight strip; along a smoothed path.
    duration_s : float or None
        From setting out to stopping; None for a recording without times.
    """

    metres: float
    sd_m: float
    by: Literal["given", "ends", "path"]
    duration_s: float | None


def strip_length(walk: RecordedWalk, given_m: float | None, settings: Settings) -> StripLength:
    """Give the length walked between setting out and stopping.

    A straight strip is as long as its ends are apart. Both ends carry the receiver's
    error; as far as it is still the same error at the other end, it falls out:
    variance = s1^2 + s2^2 - 2 s1 s2 exp(-T / tau), with T the time between them.
    """
    timed, pacing = walk.clean.timed, settings.pacing
    begin_s, end_s = (float(walk.samples.time_s[one]) for one in (walk.first, walk.last))
    duration_s = end_s - begin_s if timed else None
    if given_m is not None:
        sd_m = pacing.given_strip_sd * given_m
        return StripLength(metres=given_m, sd_m=sd_m, by="given", duration_s=duration_s)
    noise_m = walk.noise.noise_m
    ends = [
        fix_place(walk.clean, walk.halts, moment, noise_m, settings.measuring)
        for moment in (begin_s, end_s)
    ]
    chord = ends[1].place - ends[0].place
    chord_m = float(np.hypot(*chord))
    shared = math.exp(-(end_s - begin_s) / walk.noise.correlation_s) if timed else 0.0
    one, other = ends[0].sd_m, ends[1].sd_m
    ends_sd_m = math.sqrt(max(one**2 + other**2 - 2.0 * one * other * shared, 0.0))
    path_m = float(walk.step_m[walk.first : walk.last].sum()) - walk.ridden_m
    if _is_straight(walk, ends[0].place, chord, path_m, pacing):
        return StripLength(metres=chord_m, sd_m=ends_sd_m, by="ends", duration_s=duration_s)
    path_sd_m = math.hypot(ends_sd_m, settings.measuring.path_sd * path_m)
    return StripLength(metres=path_m, sd_m=path_sd_m, by="path", duration_s=duration_s)


def _is_straight(
    walk: RecordedWalk,
    start: np.ndarray,
    chord: np.ndarray,
    path_m: float,
    pacing: PacingSettings,
) -> bool:
    """Tell whether the walk kept to the straight line from end to end, as far as noise shows."""
    chord_m = float(np.hypot(*chord))
    if (
        chord_m <= 0.0
        or path_m > (1.0 + pacing.straight_longer) * chord_m + 2.0 * walk.noise.noise_m
    ):
        return False
    off = walk.place[walk.first : walk.last + 1] - start
    aside = np.abs(off[:, 0] * chord[1] - off[:, 1] * chord[0]) / chord_m
    room_m = max(pacing.straight_noise * walk.noise.noise_m, pacing.straight_aside * chord_m)
    return bool(aside.max() <= room_m)
