"""When the start of a lane was left: once as a rule, again by who came back to it."""

from __future__ import annotations

import numpy as np

from audit.leg_card import CardPoint
from audit.matching.leg_match import CleanTrack
from audit.settings import GradingSettings
from audit.units import FloatArray


def start_leavings(clean: CleanTrack, start: CardPoint, settings: GradingSettings) -> FloatArray:
    """Give each moment at which the start was left to go well away; shape (k,), in order.

    The last fix at the start before one well away, less the time to walk from the start
    to there. Being near the start on the way to another point counts as well.
    """
    away_m = np.hypot(clean.east_m - start.east_m, clean.north_m - start.north_m)
    at_start = np.flatnonzero(away_m <= settings.start_m)
    gone = np.flatnonzero(away_m > settings.start_left_m)
    before = np.searchsorted(at_start, gone) - 1
    last = np.unique(at_start[before[before >= 0]])
    return clean.time_s[last] - away_m[last] / settings.walking_m_s
