"""The walk moment by moment, for the time cursor: where, on which leg, how far off its line."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

import numpy as np

from audit.debriefing.finished_debrief import Debrief
from audit.measurement.leg_measures import LegMeasures
from audit.measurement.speed_and_direction import SpeedAndDirection
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class LegPassage:
    """From which kept fix to which a leg was walked, and how it ended off its line.

    Where start or claim were reckoned into a silence, ``first`` and ``last`` are the fixes at
    which the walker was seen on the leg: none, and ``last`` before ``first``, where all of it
    lies in one silence. ``start_s`` and ``claim_s`` are the moments themselves on the CleanTrack's
    axis, of ends that were seen those of their fixes.
    """

    leg: int
    first: int
    last: int
    start_s: float
    claim_s: float
    start_m: float
    end_m: float
    reckoned: tuple[bool, bool]


def legs_of_walk(debrief: Debrief) -> list[LegPassage]:
    """Give the legs that were walked, from leaving to the claim, in the order of the plan."""
    return [
        _passage(number, measures, debrief.clean.time_s)
        for number, leg in enumerate(debrief.legs)
        if (measures := leg.audit.measures) is not None
    ]


def _passage(number: int, measures: LegMeasures, time_s: FloatArray) -> LegPassage:
    first, last = measures.start.fix, measures.claim.fix
    start_s, claim_s = float(time_s[first]), float(time_s[last])
    unseen_start, unseen_claim = measures.ends_reckoned
    if unseen_start:
        start_s = float(measures.curve_time_s[0])
        first = int(np.searchsorted(time_s, start_s))
    if unseen_claim:
        claim_s = float(measures.curve_time_s[-1])
        last = int(np.searchsorted(time_s, claim_s, side="right")) - 1
    return LegPassage(
        leg=number,
        first=first,
        last=last,
        start_s=start_s,
        claim_s=claim_s,
        start_m=float(measures.cross_track.offset_m[0]),
        end_m=measures.cross_track.end_m,
        reckoned=measures.ends_reckoned,
    )


def offset_over_time(debrief: Debrief) -> FloatArray:
    """Give the offset from the planned line at each kept fix; NaN between the legs."""
    return _over_time(debrief, "offset_m")


def along_over_time(debrief: Debrief) -> FloatArray:
    """Give the distance along the planned line at each kept fix; NaN between the legs."""
    return _over_time(debrief, "along_m")


def moments(debrief: Debrief, moved: SpeedAndDirection) -> dict[str, Any]:
    """Give columns of equally long lists, one entry a moment that the cursor can stand at.

    ``t`` seconds since the start, ``x``, ``y`` grid metres, ``o``, ``d`` right of and along
    the planned line, ``v`` km/h, ``h`` metres high, ``a`` grid direction of travel,
    ``l`` number of the leg; None where there is none.
    """
    clean = debrief.clean
    which = _shown(debrief)
    leg = np.full(len(clean), np.nan)
    for one in legs_of_walk(debrief):
        leg[one.first : one.last + 1] = one.leg
    return {
        "t": _column(clean.time_s - clean.time_s[0], which, 0),
        "x": _column(clean.east_m, which, 1),
        "y": _column(clean.north_m, which, 1),
        "o": _column(offset_over_time(debrief), which, 1),
        "d": _column(along_over_time(debrief), which, 1),
        "v": _column(moved.speed_m_s * 3.6, which, 1),
        "h": _column(clean.elevation_m, which, 0),
        "a": _column(moved.direction_deg, which, 0),
        "l": _column(leg, which, 0),
    }


def moment_step_s(debrief: Debrief) -> float:
    """Give the longest time between two moments next to each other, gaps left out."""
    steps = np.diff(debrief.clean.time_s[_shown(debrief)])
    return float(np.median(steps)) if len(steps) else 0.0


def _shown(debrief: Debrief) -> FloatArray:
    """Choose kept fixes evenly, the last one and every claim among them."""
    count = len(debrief.clean)
    step = math.ceil(count / debrief.settings.reports.cursor_moments)
    ends = [place for leg in legs_of_walk(debrief) for place in (leg.first, leg.last)]
    return np.unique(np.r_[0:count:step, count - 1, np.array(ends, dtype=int)])


def _over_time(debrief: Debrief, column: str) -> FloatArray:
    time_s = debrief.clean.time_s
    values = np.full(len(time_s), np.nan)
    for one in legs_of_walk(debrief):
        measures = debrief.legs[one.leg].audit.measures
        if measures is None:
            continue
        part = slice(one.first, one.last + 1)
        curve = getattr(measures.cross_track, column)
        values[part] = np.interp(time_s[part], measures.curve_time_s, curve)
    return values


def _column(values: FloatArray, which: FloatArray, places: int) -> list[float | int | None]:
    rounded = np.round(values[which], places)
    if places == 0:
        return [None if math.isnan(one) else int(one) for one in rounded.tolist()]
    return [None if math.isnan(one) else one for one in rounded.tolist()]
