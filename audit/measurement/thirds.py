"""The first and the last third of a leg apart, to see a heading drift."""

from __future__ import annotations

import numpy as np

from audit.geodesy.along_line import metres_along
from audit.matching.leg_match import CleanTrack
from audit.measurement.leg_details import Thirds
from audit.measurement.leg_measures import Heading
from audit.measurement.places import place_between
from audit.measurement.walk_of_leg import WalkOfLeg
from audit.measurement.walked_heading import measure_heading
from audit.settings import HeadingSettings


def measure_thirds(
    clean: CleanTrack, walk: WalkOfLeg, noise_m: float, settings: HeadingSettings
) -> Thirds | None:
    """Measure both thirds of the distance over the ground; None for a leg too short for it.

    Nor has a leg any that begins or ends where that was reckoned: nobody saw it walked there.
    """
    if "reckoned" in (walk.start_error.marked_by, walk.claim_error.marked_by):
        return None
    path = metres_along(walk.position)
    if path[-1] < settings.shortest_thirds_m:
        return None
    begin, end = walk.times_s
    first_s, last_s = np.interp([path[-1] / 3.0, 2.0 * path[-1] / 3.0], path, walk.time_s)
    first = stretch_heading(clean, (begin, float(first_s)), noise_m, settings)
    last = stretch_heading(clean, (float(last_s), end), noise_m, settings)
    return Thirds(
        first=first,
        last=last,
        drift_deg=first.azimuth.turn_to(last.azimuth),
        drift_sd_deg=float(np.hypot(first.sd_deg, last.sd_deg)),
    )


def stretch_heading(
    clean: CleanTrack, times_s: tuple[float, float], noise_m: float, settings: HeadingSettings
) -> Heading:
    """Measure the heading between two moments on the way, by the fixes between them alone."""
    ends = [place_between(clean, time_s, noise_m) for time_s in times_s]
    return measure_heading(clean, ends[0], ends[1], noise_m, settings)
