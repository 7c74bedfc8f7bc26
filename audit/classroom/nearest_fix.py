"""The fix that lies nearest to a point, as it was recorded: nothing cleaned, whenever it was."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from audit.debriefing.finished_debrief import Debrief
from audit.grading.verdicts import Approach
from audit.leg_card import CardPoint
from audit.track import Track
from audit.units import FloatArray


def with_nearest_fixes(
    approaches: tuple[Approach | None, ...], debrief: Debrief, track: Track
) -> tuple[Approach | None, ...]:
    """Add to the approach to the end of each leg the nearest fix of the whole recording."""
    places = np.column_stack(debrief.card.grid.to_grid(track.longitude_deg, track.latitude_deg))
    time_s = track.time_s if debrief.clean.timed else np.full(len(track), np.nan)
    return tuple(
        None if one is None else _with_fix(one, places, time_s, leg.audit.card.end)
        for one, leg in zip(approaches, debrief.legs, strict=True)
    )


def _with_fix(
    approach: Approach, places: FloatArray, time_s: FloatArray, point: CardPoint
) -> Approach:
    away_m = np.hypot(*(places - [point.east_m, point.north_m]).T)
    if np.isnan(away_m).all():
        return approach
    nearest = int(np.nanargmin(away_m))
    at_s = float(time_s[nearest])
    return replace(approach, fix_m=float(away_m[nearest]), fix_s=None if np.isnan(at_s) else at_s)
