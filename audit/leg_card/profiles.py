"""The ground along a leg: where its height is wanted, and the climb that the heights make."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from audit.geodesy.along_line import metres_along, places_along, steps_m
from audit.leg_card.finished_card import CardLeg
from audit.leg_card.leg_pieces import walked_m
from audit.units import FloatArray
from audit.walking_times import Way


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Profile:
    """Heights along the planned line of a leg.

    Attributes
    ----------
    along_m, height_m : float arrays, shape (n,), n >= 2
    climb_m, descent_m : float
        All that rises, and all that falls, ripples left out; their difference is that of
        the ends.
    """

    along_m: FloatArray
    height_m: FloatArray
    climb_m: float
    descent_m: float


def stations(line: FloatArray, apart_m: float) -> tuple[FloatArray, FloatArray]:
    """Give places along a line, and how far along each lies; the corners are among them.

    ``line`` has shape (k, 2); no two places are further apart than ``apart_m``.
    """
    corners_m = metres_along(line)
    parts = [np.array([0.0])]
    for begin_m, end_m in pairwise(corners_m.tolist()):
        count = max(int(np.ceil((end_m - begin_m) / apart_m)), 1)
        parts.append(np.linspace(begin_m, end_m, count + 1)[1:])
    along_m = np.concatenate(parts)
    return along_m, places_along(line, corners_m, along_m)


def profile(along_m: FloatArray, height_m: FloatArray, ripple_m: float) -> Profile | None:
    """Give the profile; None where a height is missing."""
    if not np.isfinite(height_m).all():
        return None
    rises = np.diff(_turning_heights(height_m.tolist(), ripple_m))
    return Profile(
        along_m=along_m,
        height_m=height_m,
        climb_m=float(rises[rises > 0.0].sum()),
        descent_m=float(-rises[rises < 0.0].sum()),
    )


def way_of(leg: CardLeg, ground: Profile | None) -> Way:
    """Give the way of a leg for the rules of walking time, as long as it is walked.

    The distance of a straight leg that the card states may differ from the points'.
    """
    way = Way(run_m=steps_m(leg.line))
    if ground is not None:
        way = Way(run_m=np.diff(ground.along_m), rise_m=np.diff(ground.height_m))
    run_m: FloatArray = way.run_m * (walked_m(leg) / float(np.sum(way.run_m)))
    return Way(run_m=run_m, rise_m=way.rise_m)


def _turning_heights(heights: list[float], ripple_m: float) -> list[float]:
    """Give the ends, and the tops and hollows between them; less than ``ripple_m`` is none."""
    kept, tip, rising = [heights[0]], heights[0], 0
    for height in heights[1:]:
        if not rising and abs(height - tip) >= ripple_m:
            tip, rising = height, 1 if height > tip else -1
        elif (height - tip) * rising > 0.0:
            tip = height
        elif rising and (tip - height) * rising >= ripple_m:
            kept.append(tip)
            tip, rising = height, -rising
    return [*kept, *([tip] if rising else []), heights[-1]]
