"""The grid-magnetic angle treated in one wrong way by most of a class.

One walker who leaves it out has made a slip. Most of a class did what they were told, or
what plan, card or map made of it: that is told of the class, and blames nobody.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from audit.classroom.class_result import ClassFinding
from audit.classroom.each_walk_once import each_walk_once
from audit.classroom.lane_result import LaneResult
from audit.classroom.places_left import usual_turn_deg
from audit.classroom.walker_result import LegResult, WalkerResult
from audit.settings.class_shows import ClassShowsSettings
from audit.words import sentence
from audit.words.figures import Turn

_MISTAKES = (
    "gm-angle-omitted",
    "gm-angle-reversed",
    "gm-angle-doubled",
    "declination-for-gm-angle",
)


def angles_alike(
    lanes: Sequence[LaneResult], walkers: Sequence[WalkerResult], settings: ClassShowsSettings
) -> list[ClassFinding]:
    """Tell of each lane on which most walkers' debriefs show one mistake with the angle."""
    told = []
    for lane in lanes:
        walked = each_walk_once(
            [one for one in walkers if one.lane == lane.name and any(_measured(one))]
        )
        for mistake in _MISTAKES:
            sharing = [one for one in walked if _shows(one, mistake, settings)]
            enough = max(settings.least_walkers, settings.alike_share * len(walked))
            if len(sharing) >= enough:
                told.append(_finding(lane, mistake, sharing, len(walked)))
    return told


def _measured(walker: WalkerResult) -> list[LegResult]:
    return [leg for leg in walker.legs if leg.azimuth_error_deg is not None]


def _shows(walker: WalkerResult, mistake: str, settings: ClassShowsSettings) -> bool:
    """Tell whether a mistake is the likeliest cause on enough of the legs that were walked."""
    legs = _measured(walker)
    return sum(leg.cause == mistake for leg in legs) >= settings.walkers_mistake_share * len(legs)


def _finding(
    lane: LaneResult, mistake: str, sharing: Sequence[WalkerResult], walkers: int
) -> ClassFinding:
    legs = [leg for one in sharing for leg in _measured(one)]
    turn_deg = float(np.median([usual_turn_deg(one) for one in sharing]))
    return ClassFinding(
        what="angle-treated-alike",
        message=sentence(
            "shows-angle-alike",
            lane=lane.name,
            sharing=str(len(sharing)),
            walkers=str(walkers),
            mistake=sentence(f"cause-{mistake}"),
            named=str(sum(leg.cause == mistake for leg in legs)),
            legs=str(len(legs)),
            size=Turn(degrees=abs(turn_deg)),
            side="right" if turn_deg > 0 else "left",
            angle=Turn(degrees=abs(lane.grid_magnetic_angle_deg)),
            east="yes" if lane.grid_magnetic_angle_deg >= 0 else "no",
        ),
        lane=lane.name,
        walkers=tuple(one.ident for one in sharing),
    )
