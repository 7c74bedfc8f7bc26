"""Obstacles passed at a slant: a short step out of the line, told from wandering."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from audit.matching.leg_match import CleanTrack
from audit.measurement.leg_details import Bypass
from audit.measurement.receiver_noise import ReceiverNoise
from audit.measurement.walk_of_leg import WalkOfLeg
from audit.settings import SlantSettings
from audit.statistics.runs import runs_of_one
from audit.statistics.steps_aside import StepAside, WalkAcross, find_steps
from audit.units import FloatArray, unit_vector


def find_slants(
    clean: CleanTrack,
    walk: WalkOfLeg,
    halts: FloatArray,
    noise: ReceiverNoise,
    taken: Sequence[Bypass],
    settings: SlantSettings,
) -> list[Bypass]:
    """Find the steps aside on a leg that are no part of another way round something."""
    seen = _seen_across(clean, walk, halts, noise, settings)
    if seen is None:
        return []
    asides = [
        _told(step, seen)
        for step in find_steps(seen, settings)
        if not any(one.start_s < step.end_s and one.end_s > step.begin_s for one in taken)
    ]
    return _joined(sorted(asides, key=lambda one: one.start_s), seen, settings)


def _joined(asides: list[Bypass], seen: WalkAcross, settings: SlantSettings) -> list[Bypass]:
    """Join a step aside and the like one back soon after: both are one way round something."""
    joined: list[Bypass] = []
    for one in asides:
        out = joined[-1] if joined and not joined[-1].returned else None
        if out is not None and _leads_back(out, one, seen, settings):
            joined[-1] = replace(
                out,
                end_s=one.end_s,
                ahead_m=seen.speed_m_s * (one.end_s - out.start_s),
                back_m=one.out_m,
                equal=True,
                returned=True,
            )
        else:
            joined.append(one)
    return joined


def _leads_back(out: Bypass, back: Bypass, seen: WalkAcross, settings: SlantSettings) -> bool:
    """Tell whether a step leads back from another: to the other hand, soon and as far."""
    ahead_m = seen.speed_m_s * (back.start_s - out.end_s)
    unlike_m = settings.back_unlike_share * max(out.out_m, back.out_m) + seen.noise_m
    alike = abs(out.out_m - back.out_m) <= unlike_m
    return out.side != back.side and ahead_m <= settings.back_within_m and alike


def _told(step: StepAside, seen: WalkAcross) -> Bypass:
    return Bypass(
        start_s=step.begin_s,
        end_s=step.end_s,
        side="right" if step.right_m > 0.0 else "left",
        out_m=abs(step.right_m),
        ahead_m=seen.speed_m_s * (step.end_s - step.begin_s),
        back_m=0.0,
        side_sd_m=seen.noise_m,
        equal=False,
        returned=False,
        slanted=True,
    )


def _seen_across(
    clean: CleanTrack,
    walk: WalkOfLeg,
    halts: FloatArray,
    noise: ReceiverNoise,
    settings: SlantSettings,
) -> WalkAcross | None:
    """Look at the fixes of a leg across its chord, halts left out; None where they are few."""
    begin_s, end_s = walk.times_s
    first = np.searchsorted(clean.time_s, begin_s, side="right")
    index = np.arange(first, np.searchsorted(clean.time_s, end_s))
    for from_s, to_s in halts[(halts[:, 1] > begin_s) & (halts[:, 0] < end_s)]:
        index = index[(clean.time_s[index] <= from_s) | (clean.time_s[index] >= to_s)]
    if len(index) < settings.least_fixes:
        return None
    apart_s = max(settings.spacing_s, (end_s - begin_s) / settings.most_fixes)
    cell = np.floor((clean.time_s[index] - begin_s) / apart_s)
    index = index[runs_of_one(cell)[:, 0]]
    if len(index) < settings.least_fixes:
        return None
    time_s = clean.time_s[index]
    inner = halts[(halts[:, 0] > begin_s) & (halts[:, 1] < end_s)]
    halted_s = np.clip(time_s[:, None] - inner[:, 0], 0.0, inner[:, 1] - inner[:, 0]).sum(axis=1)
    ahead = unit_vector(walk.chord_deg)
    place = clean.places(index) - walk.start.place
    walking_s = time_s - begin_s - halted_s
    speed_m_s = float(np.ptp(place @ ahead) / max(np.ptp(walking_s), 1.0))
    if speed_m_s < settings.least_m_s:
        return None
    return WalkAcross(
        time_s=time_s,
        walking_s=walking_s,
        across_m=place @ np.array([ahead[1], -ahead[0]]),
        speed_m_s=speed_m_s,
        noise_m=noise.noise_m,
        correlation_s=noise.correlation_s,
    )
