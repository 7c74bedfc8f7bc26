"""Whether a leg along via positions was walked along them, or by another way."""

from __future__ import annotations

import numpy as np

from audit.geodesy.along_line import metres_along, off_line_m
from audit.matching.leg_match import CleanTrack
from audit.measurement.leg_measures import CrossTrack
from audit.measurement.nearest_approach import nearest_approach
from audit.measurement.point_reached import unseen_approach
from audit.measurement.walk_context import WalkContext
from audit.measurement.walk_of_leg import WalkOfLeg
from audit.units import FloatArray


def line_followed(
    context: WalkContext, walk: WalkOfLeg, lines: tuple[FloatArray, FloatArray], own: CrossTrack
) -> bool:
    """Tell whether a line was followed; what a silence of the recording may hide counts as so.

    A straight one has no corners: how it was kept is told otherwise.

    A corner of the line that the walk had come as far as is passed by where the walk keeps
    off it by more than ordinary error, and by a good part of what it lies off the way
    straight from start to claim.

    Parameters
    ----------
    lines : tuple of float arrays, shape (k, 2)
        The planned line, and the same from where the walker really began.
    own : CrossTrack
        The walk against the second.
    """
    planned, begun = lines
    settings = context.settings.measuring
    speed_m_s = settings.gap_speed * context.sampled.movement.walking_m_s
    ends = np.array([walk.start.place, walk.claim.place])
    come_m = max(float(own.along_m.max()), walk.path_m)
    along_m = metres_along(planned)
    for corner in range(1, len(planned) - 1):
        to_it_m = float(along_m[corner])
        if to_it_m > come_m:
            break
        missed_m = min(
            _missed_m(context.clean, walk, line[corner], speed_m_s) for line in (planned, begun)
        )
        aside_m = off_line_m(begun[corner], ends)
        most_m = max(settings.line_left_m, settings.line_left_share * to_it_m)
        if missed_m > max(most_m, settings.line_left_aside * aside_m):
            return False
    return True


def _missed_m(clean: CleanTrack, walk: WalkOfLeg, corner: FloatArray, speed_m_s: float) -> float:
    """Give the least that the walk can have kept off a corner."""
    nearest_m, _ = nearest_approach(clean, walk.times_s, corner)
    return nearest_m - unseen_approach(clean, walk.times_s, corner, nearest_m, speed_m_s)
