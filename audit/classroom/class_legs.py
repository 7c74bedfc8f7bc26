"""Each leg of each lane over all its walkers."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from audit.classroom.class_result import ClassFinding, ClassLeg
from audit.classroom.lane_result import LaneResult
from audit.classroom.shared_miss import middle_of
from audit.classroom.walker_result import WalkerResult


def class_legs(
    lanes: Sequence[LaneResult], walkers: Sequence[WalkerResult], faults: Sequence[ClassFinding]
) -> tuple[ClassLeg, ...]:
    """Count and average each leg; ``faults`` are what the class shows of single legs."""
    whats = {(one.lane, one.leg): one.what for one in reversed(faults) if one.leg is not None}
    return tuple(
        _leg(lane, number, walkers, whats.get((lane.name, leg.name)))
        for lane in lanes
        for number, leg in enumerate(lane.legs)
    )


def _leg(
    lane: LaneResult, number: int, walkers: Sequence[WalkerResult], finding: str | None
) -> ClassLeg:
    on_it = [one.legs[number] for one in walkers if one.lane == lane.name]
    grades = [leg.point.grade for leg in on_it]
    misses = [(leg.miss.east_m, leg.miss.north_m) for leg in on_it if leg.miss is not None]
    middle = middle_of(np.array(misses).reshape(-1, 2))
    mean = misses[0] if len(misses) == 1 else None
    return ClassLeg(
        lane=lane.name,
        name=lane.legs[number].name,
        point=lane.legs[number].end,
        walkers=len(on_it),
        walked=sum(leg.status == "walked" for leg in on_it),
        found=grades.count("found"),
        missed=grades.count("missed"),
        doubtful=grades.count("doubtful"),
        without_evidence=grades.count("no-evidence"),
        mean_miss=mean if middle is None else middle.mean_m,
        spread_m=None if middle is None else middle.scatter_m,
        finding=finding,
    )
