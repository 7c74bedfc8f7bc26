"""The truth of every leg, and what of it a recording can know."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from audit.units import direction_degrees
from walks.difficulties import Difficulty
from walks.outings import LegRecord, Outing
from walks.seconds import Seconds
from walks.truth import LegStatus, LegTruth


def leg_truths(outing: Outing, seconds: Seconds) -> tuple[LegTruth, ...]:
    first_s = float(seconds.time_s[0])
    last_begun = max(outing.records, default=-1)
    truths = []
    for leg in range(outing.course.leg_count):
        walked = outing.records.get(leg)
        if walked is not None:
            truths.append(_leg_truth(outing, seconds, walked, first_s))
            continue
        aimed_later = any(target > leg for target in outing.order)
        status: LegStatus = "skipped" if leg < last_begun or aimed_later else "not-started"
        truths.append(LegTruth(leg=leg, status=status))
    return tuple(truths)


def _leg_truth(outing: Outing, seconds: Seconds, walked: LegRecord, first_s: float) -> LegTruth:
    chord = seconds.places_m[walked.claim] - seconds.places_m[walked.start]
    return LegTruth(
        leg=walked.leg,
        status="walked" if walked.finished else "unfinished",
        start_s=first_s + walked.start,
        claim_s=first_s + walked.claim,
        search_end_s=first_s + walked.search_end,
        attempts=tuple((first_s + a, first_s + b) for a, b in walked.attempts),
        azimuth_deg=direction_degrees(float(chord[0]), float(chord[1])),
        length_m=float(np.hypot(*chord)),
        set_azimuth_deg=walked.set_azimuth_deg,
        count_m=walked.count_m,
        pace_factor=walked.pace_factor,
        found=walked.found,
        planted=(*outing.shared.planted, *walked.planted),
    )


def recording_window(
    rng: np.random.Generator,
    difficulty: Difficulty,
    seconds: Seconds,
    legs: tuple[LegTruth, ...],
    outing: Outing,
) -> tuple[float, float]:
    """Give the first and last second that the receiver ran."""
    begin, end = float(seconds.time_s[0]), float(seconds.time_s[-1])
    walked = [leg for leg in legs if leg.status == "walked"]
    late, early = rng.random() < difficulty.starts_late, rng.random() < difficulty.ends_early
    if late and outing.order and legs[0].status == "walked":
        first = legs[0]
        begin = np.floor(first.start_s + rng.uniform(0.1, 0.6) * (first.claim_s - first.start_s))
    if early and len(walked) >= 3:
        last = walked[int(rng.integers(len(walked) // 2, len(walked)))]
        least = float(np.clip(60.0 / last.length_m, 0.3, 0.9))
        end = np.floor(last.start_s + rng.uniform(least, 0.95) * (last.claim_s - last.start_s))
    return begin, end


def seen_by_recording(leg: LegTruth, window: tuple[float, float]) -> LegTruth:
    """Give the truth about a leg that a recording of this window can know."""
    if leg.start_s is None or leg.claim_s is None or leg.search_end_s is None:
        return leg
    begin, end = window
    if leg.start_s >= end:
        return LegTruth(leg=leg.leg, status="not-started")
    start, claim = max(leg.start_s, begin), min(leg.claim_s, end)
    if start == leg.start_s and claim == leg.claim_s:
        return replace(leg, search_end_s=min(leg.search_end_s, end))
    return replace(
        leg,
        status="unfinished" if claim < leg.claim_s else leg.status,
        start_s=start,
        claim_s=claim,
        search_end_s=max(claim, min(leg.search_end_s, end)),
        attempts=((start, claim),),
        cut_by_recording=True,
    )
