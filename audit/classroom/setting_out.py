"""When a walker set out from the start: once as a rule, again by who came back to it."""

from __future__ import annotations

import numpy as np

from audit.debriefing.finished_debrief import Debrief
from audit.settings import GradingSettings
from audit.units import FloatArray


def away_since_s(debrief: Debrief, settings: GradingSettings) -> float | None:
    """Give when the walker was well away from the start for the first time; None if never.

    Where the recording shows him at the start before, counted from then.
    """
    clean, away_m = debrief.clean, _from_start_m(debrief)
    at_start = np.flatnonzero(away_m <= settings.start_m)
    begins = int(at_start[0]) if start_seen(debrief, settings) else 0
    gone = np.flatnonzero(away_m[begins:] > settings.start_left_m)
    return float(clean.time_s[begins + gone[0]]) if len(gone) else None


def start_seen(debrief: Debrief, settings: GradingSettings) -> bool:
    """Tell whether the recording was at the start before any leg was walked.

    The first leg leaves it; a later one may come back to it, so it must have been seen before.
    """
    walked = numbers_walked(debrief)
    portion = debrief.legs[walked[0]].portion if walked and walked[0] > 0 else None
    until_s = portion.start_s if portion is not None else None
    early = debrief.clean.time_s <= (_first_claim_s(debrief) if until_s is None else until_s)
    return bool((_from_start_m(debrief)[early] <= settings.start_m).any())


def left_before_first_leg(
    debrief: Debrief, left_s: float | None, settings: GradingSettings
) -> tuple[float, ...]:
    """Give when the start was left: first ``left_s``, then by who came back before his first leg.

    Where no leg was walked nobody can tell which leaving was for the course.
    """
    if left_s is None:
        return ()
    if not numbers_walked(debrief):
        return (left_s,)
    left = _leavings(debrief, settings)
    again = left[(left > left_s + settings.start_again_s) & (left < _first_claim_s(debrief))]
    return (left_s, *(float(one) for one in again))


def numbers_walked(debrief: Debrief) -> list[int]:
    """Give the numbers of the legs that were walked, in the order of the plan."""
    return [n for n, leg in enumerate(debrief.legs) if leg.audit.measures is not None]


def _leavings(debrief: Debrief, settings: GradingSettings) -> FloatArray:
    """Give each moment at which the start was left to go well away; shape (k,), in order.

    The last fix at the start before one well away, less the time to walk from the start
    to there. Being near the start on the way to another point counts as well.
    """
    away_m = _from_start_m(debrief)
    at_start = np.flatnonzero(away_m <= settings.start_m)
    gone = np.flatnonzero(away_m > settings.start_left_m)
    before = np.searchsorted(at_start, gone) - 1
    last = np.unique(at_start[before[before >= 0]])
    return debrief.clean.time_s[last] - away_m[last] / settings.walking_m_s


def _from_start_m(debrief: Debrief) -> FloatArray:
    clean, start = debrief.clean, debrief.card.legs[0].start
    return np.hypot(clean.east_m - start.east_m, clean.north_m - start.north_m)


def _first_claim_s(debrief: Debrief) -> float:
    claims = [
        leg.portion.claim_s
        for leg in debrief.legs
        if leg.audit.measures is not None and leg.portion is not None and leg.portion.claim_s
    ]
    return min(claims, default=float(debrief.clean.time_s[-1]))
