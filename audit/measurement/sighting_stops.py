"""Halts on the way, as a walker makes them to sight his azimuth anew."""

from __future__ import annotations

from itertools import pairwise

import numpy as np

from audit.matching.leg_match import CleanTrack
from audit.measurement.leg_details import Bypass, SightingStop
from audit.measurement.thirds import stretch_heading
from audit.settings import Settings
from audit.units import FloatArray


def find_sighting_stops(
    clean: CleanTrack,
    halts: FloatArray,
    times_s: tuple[float, float],
    bypasses: tuple[Bypass, ...],
    noise_m: float,
    settings: Settings,
) -> tuple[SightingStop, ...]:
    """Give the halts between leaving and claim, none of them at its ends or at a bypass.

    The turn at a stop is from the heading since the stop before to the heading until
    the stop after.
    """
    measuring = settings.measuring
    begin, end = times_s
    stops = [
        (float(first), float(last))
        for first, last in halts
        if first > begin + measuring.stop_apart_s
        and last < end - measuring.stop_apart_s
        and not any(b.start_s <= last and b.end_s >= first for b in bypasses)
    ]
    if not stops:
        return ()
    marks = [(begin, begin), *stops, (end, end)]
    headings = [
        stretch_heading(clean, (before[1], after[0]), noise_m, settings.heading)
        for before, after in pairwise(marks)
    ]
    return tuple(
        SightingStop(
            start_s=first,
            end_s=last,
            turn_deg=before.azimuth.turn_to(after.azimuth),
            turn_sd_deg=float(np.hypot(before.sd_deg, after.sd_deg)),
        )
        for (first, last), (before, after) in zip(stops, pairwise(headings), strict=True)
    )
