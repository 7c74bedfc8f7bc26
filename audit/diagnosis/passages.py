"""When a recording passes a point: the order of passing tells what nearness alone does not."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.geodesy.along_line import nearest_on_steps
from audit.leg_card import CardPoint
from audit.matching.leg_match import CleanTrack
from audit.statistics.runs import runs_of_true


@dataclass(frozen=True, slots=True, kw_only=True)
class Passage:
    """One stretch of a recording within reach of a point, on its time axis.

    ``nearest_s`` is the moment of the nearest approach, of ``away_m`` metres.
    """

    first_s: float
    last_s: float
    nearest_s: float
    away_m: float


def passages(clean: CleanTrack, point: CardPoint, within_m: float) -> tuple[Passage, ...]:
    """Give the passages of a point in order of time, fixes joined by straight lines.

    Across a gap nobody saw the walker: no line is drawn there.
    """
    place = clean.places() - (point.east_m, point.north_m)
    step = np.diff(place, axis=0)
    step[[gap.before for gap in clean.gaps]] = 0.0
    share, away_m = nearest_on_steps(place[:-1], step)
    away_m = np.append(away_m, np.hypot(*place[-1]))
    share = np.append(share, 0.0)
    ends_s = np.append(clean.time_s[1:], clean.time_s[-1])
    ends_s[[gap.before for gap in clean.gaps]] = clean.time_s[[gap.before for gap in clean.gaps]]
    found = []
    for begin, end in runs_of_true(away_m <= within_m).tolist():
        at = begin + int(np.argmin(away_m[begin:end]))
        found.append(
            Passage(
                first_s=float(clean.time_s[begin]),
                last_s=float(ends_s[end - 1]),
                nearest_s=float(clean.time_s[at] + share[at] * (ends_s[at] - clean.time_s[at])),
                away_m=float(away_m[at]),
            )
        )
    return tuple(found)
