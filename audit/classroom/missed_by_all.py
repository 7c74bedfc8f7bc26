"""Points that nobody found though most found the others: to be asked about, not decided.

Where they are missed to one place or one side, that is a fault of the course and told as such.
Where the walks do not say where the point stands instead, somebody has to go and look.
"""

from __future__ import annotations

from collections.abc import Sequence

from audit.classroom.class_result import ClassFinding
from audit.classroom.each_walk_once import each_walk_once
from audit.classroom.lane_result import LaneResult
from audit.classroom.places_left import able_walkers
from audit.classroom.walker_result import WalkerResult
from audit.settings.class_shows import ClassShowsSettings
from audit.words import sentence
from audit.words.figures import Length


def missed_by_all(
    lanes: Sequence[LaneResult],
    walkers: Sequence[WalkerResult],
    faults: Sequence[ClassFinding],
    settings: ClassShowsSettings,
) -> list[ClassFinding]:
    """Ask about each point that no able walker found; of those in ``faults`` all is said."""
    told = {(fault.lane, fault.leg) for fault in faults}
    asked = []
    for lane in lanes:
        graded = each_walk_once(
            [one for one in walkers if one.lane == lane.name and one.state == "graded"]
        )
        for number, leg in enumerate(lane.legs):
            question = _question(lane, graded, number, settings)
            if question is not None and (lane.name, leg.name) not in told:
                asked.append(question)
    return asked


def _question(
    lane: LaneResult, walkers: Sequence[WalkerResult], leg: int, settings: ClassShowsSettings
) -> ClassFinding | None:
    able = [
        one
        for one in able_walkers(walkers, leg, settings)
        if one.legs[leg].point.grade != "no-evidence"
    ]
    missed = [one for one in able if one.legs[leg].point.grade == "missed"]
    if len(able) < settings.least_walkers or len(missed) < settings.alike_share * len(able):
        return None
    if any(one.legs[leg].point.grade == "found" for one in able):
        return None
    planned = lane.legs[leg]
    approaches = [one.legs[leg].point.approach for one in missed]
    nearest_m = min(one.distance_m for one in approaches if one is not None)
    return ClassFinding(
        what="point-missed-by-all",
        message=sentence(
            "shows-missed-by-all",
            lane=lane.name,
            point=planned.end,
            leg=planned.name,
            walkers=str(len(able)),
            missed=str(len(missed)),
            near=Length(metres=nearest_m),
        ),
        lane=lane.name,
        leg=planned.name,
        walkers=tuple(one.ident for one in missed),
        question=True,
    )
