"""When a walk came to its last point: on arriving, however long the walker rests there."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from audit.debriefing.finished_debrief import Debrief
from audit.grading.verdicts import PointVerdict
from audit.leg_card import CardPoint
from audit.settings import GradingSettings


@dataclass(frozen=True, slots=True, kw_only=True)
class Arrival:
    """A moment in seconds since 1970, and by how much it may be off."""

    time_s: float
    error_s: float


def last_arrival(
    debrief: Debrief,
    points: Sequence[PointVerdict],
    since_s: Sequence[float],
    settings: GradingSettings,
) -> Arrival | None:
    """Give when the walk of a course ended: on coming to its last point; None untold.

    Where the points may be visited in any order, that is the last one visited: one left out
    of the way has no moment, and takes none from the others. Where the last that may have
    been visited is doubtful, the error reaches back to the last one found. A point of which
    the recording tells nothing may have been visited after it ended.
    """
    if debrief.card.order != "free":
        return arrival(debrief, points[-1], since_s[-1], settings)
    if any(point.approach is None for point in points):
        return None
    came: list[tuple[Arrival, bool]] = []
    for number, (point, since) in enumerate(zip(points, since_s, strict=True)):
        arrived = arrival(debrief, point, since, settings, number=number)
        if arrived is not None:
            came.append((arrived, point.grade == "found"))
    if not came:
        return None
    last, found = max(came, key=lambda one: one[0].time_s)
    sure_s = [arrived.time_s for arrived, sure in came if sure]
    if found or not sure_s:
        return last
    return replace(last, error_s=last.error_s + last.time_s - max(sure_s))


def arrival(
    debrief: Debrief,
    verdict: PointVerdict,
    since_s: float,
    settings: GradingSettings,
    *,
    number: int = -1,
) -> Arrival | None:
    """Give when the walker came to the end of a leg, the last one; None where he did not.

    That is the first moment within the radius after ``since_s``; where he stayed outside
    and may have been inside all the same, within his nearest approach and its error. Where
    he stayed outside for sure there is no moment: a code proved the point, or another part
    of the recording may have been the way to it. Who passed the point, claimed it elsewhere
    and came back arrived when he came back, or in passing: the error covers both. A
    timekeeper at the point may have noted the moment later by the way from the rim; the
    receiver and the logging count in as well.
    """
    approach, leg = verdict.approach, debrief.legs[number]
    if approach is None or verdict.grade not in ("found", "doubtful") or not debrief.clean.timed:
        return None
    if approach.distance_m > verdict.radius_m + verdict.error_m:
        return None
    measures, portion, claim_s = leg.audit.measures, leg.portion, None
    if approach.in_turn and measures is not None and portion is not None:
        since_s, claim_s = portion.start_s or since_s, portion.claim_s
    within_m = verdict.radius_m
    if approach.distance_m > within_m:
        within_m = approach.distance_m + settings.coverage_factor * approach.sd_m
    entered = _entered(debrief, leg.audit.card.end, since_s, within_m)
    if entered is None:
        return None
    off_m = verdict.radius_m + settings.coverage_factor * approach.sd_m
    came_s, error_s = entered
    if claim_s is not None and claim_s > came_s:
        back_s, _ = _entered(debrief, leg.audit.card.end, claim_s, within_m) or entered
        if back_s > claim_s:
            came_s, error_s = back_s, error_s + back_s - came_s
    return Arrival(time_s=came_s, error_s=error_s + off_m / settings.walking_m_s)


def _entered(
    debrief: Debrief, point: CardPoint, since_s: float, within_m: float
) -> tuple[float, float] | None:
    """Give the first moment within a circle, and the seconds between the fixes about it."""
    clean = debrief.clean
    place = np.array([point.east_m, point.north_m])
    first = max(int(np.searchsorted(clean.time_s, since_s, side="right")) - 1, 0)
    time_s = clean.time_s[first:]
    offset = clean.places(slice(first, None)) - place
    if np.hypot(*offset[0]) <= within_m:
        return max(float(time_s[0]), since_s), float(np.diff(time_s[:2]).sum())
    step = np.diff(offset, axis=0)
    # |offset + share * step| = within, the smaller share: where the way enters the circle.
    square = np.maximum((step**2).sum(axis=1), 1e-12)
    half = (offset[:-1] * step).sum(axis=1)
    under = half**2 - square * ((offset[:-1] ** 2).sum(axis=1) - within_m**2)
    share = np.where(under >= 0.0, (-half - np.sqrt(np.maximum(under, 0.0))) / square, np.inf)
    inside = np.flatnonzero((share >= 0.0) & (share <= 1.0))
    if not len(inside):
        return None
    here = int(inside[0])
    between_s = float(time_s[here + 1] - time_s[here])
    return float(time_s[here] + share[here] * between_s), between_s
