"""From graded walkers to the class: lanes, legs over all walkers, findings."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from audit.classroom.class_draft import ClassDraft
from audit.classroom.lane import Lane, lane_result
from audit.classroom.records import (
    ClassFinding,
    ClassLeg,
    ClassResult,
    LaneLeg,
    LaneResult,
    LegResult,
    WalkerResult,
)
from audit.classroom.walker_task import regraded
from audit.grading.fingerprint import fingerprint


def assemble(draft: ClassDraft, walkers: Sequence[WalkerResult]) -> ClassResult:
    """Put the class together from its walkers, in the order of the draft."""
    inputs = draft.inputs
    lanes = tuple(
        _with_climb(lane_result(lane, inputs.standard, inputs.version), walkers)
        for lane in inputs.lanes
    )
    findings = [*draft.findings, *_refused(walkers, draft)]
    left_out = _left_out(findings)
    graded = tuple(
        regraded(walker, left_out.get(walker.lane, frozenset()), inputs.standard)
        for walker in walkers
    )
    names = ", ".join(dict.fromkeys(lane.course for lane in lanes))
    return ClassResult(
        name=inputs.name or names,
        version=inputs.version,
        standard=inputs.standard,
        fingerprint=fingerprint(
            inputs.standard, tuple(lane.plan for lane in inputs.lanes), inputs.version
        ),
        lanes=lanes,
        walkers=graded,
        legs=tuple(leg for lane in inputs.lanes for leg in _legs(lane, graded, findings)),
        findings=tuple(findings),
        shift_s=draft.clock.shift_s,
        shift_from=draft.clock.ground if draft.clock.shift_s else "",
        private=inputs.private,
        notes=draft.notes,
    )


def _left_out(findings: Sequence[ClassFinding]) -> dict[str, frozenset[str]]:
    """Give by lane the legs whose points are left out of the grades."""
    left_out: dict[str, frozenset[str]] = {}
    for finding in findings:
        if finding.leaves_out and finding.lane is not None and finding.leg is not None:
            before = left_out.get(finding.lane, frozenset())
            left_out[finding.lane] = before | {finding.leg}
    return left_out


def _refused(walkers: Sequence[WalkerResult], draft: ClassDraft) -> list[ClassFinding]:
    """Tell of recordings that could be read but not be debriefed."""
    told = {walker for finding in draft.findings for walker in finding.walkers
            if finding.what == "broken-file"}  # fmt: skip
    return [
        ClassFinding(
            what="broken-file",
            message=f"The recording of {walker.name} cannot be used: {walker.problem}",
            lane=walker.lane,
            walkers=(walker.ident,),
        )
        for walker in walkers
        if walker.state == "refused" and walker.ident not in told
    ]


def _with_climb(lane: LaneResult, walkers: Sequence[WalkerResult]) -> LaneResult:
    """Add the climb of each leg: the middle of the walkers' own elevations."""
    mine = [walker for walker in walkers if walker.lane == lane.name]

    def middle(number: int, way: str) -> float | None:
        seen = [getattr(walker.legs[number], way) for walker in mine]
        known = [one for one in seen if one is not None]
        return float(np.median(known)) if known else None

    legs: list[LaneLeg] = [
        replace(leg, climb_m=middle(number, "climb_m"), descent_m=middle(number, "descent_m"))
        for number, leg in enumerate(lane.legs)
    ]
    climbs = [leg.climb_m for leg in legs]
    whole = None if None in climbs else float(sum(one for one in climbs if one is not None))
    return replace(lane, legs=tuple(legs), climb_m=whole)


def _legs(
    lane: Lane, walkers: Sequence[WalkerResult], findings: Sequence[ClassFinding]
) -> list[ClassLeg]:
    mine = [walker for walker in walkers if walker.lane == lane.name]
    told = []
    for number, leg in enumerate(lane.card.legs):
        of_leg = [walker.legs[number] for walker in mine]
        what = [one.what for one in findings if one.lane == lane.name and one.leg == leg.name]
        told.append(_leg(lane.name, leg.name, leg.end.name, of_leg, what[0] if what else None))
    return told


def _leg(
    lane: str, name: str, point: str, legs: Sequence[LegResult], finding: str | None
) -> ClassLeg:
    grades = [leg.point.grade for leg in legs]
    misses = np.array([[leg.miss.east_m, leg.miss.north_m] for leg in legs if leg.miss is not None])
    mean = tuple(float(one) for one in misses.mean(axis=0)) if len(misses) else None
    spread = None
    if len(misses) > 1:
        spread = float(np.sqrt(((misses - misses.mean(axis=0)) ** 2).sum() / (2 * len(misses) - 2)))
    return ClassLeg(
        lane=lane,
        name=name,
        point=point,
        walkers=len(legs),
        walked=sum(leg.status == "walked" for leg in legs),
        found=grades.count("found"),
        missed=grades.count("missed"),
        doubtful=grades.count("doubtful"),
        without_evidence=grades.count("no-evidence"),
        mean_miss=None if mean is None else (mean[0], mean[1]),
        spread_m=spread,
        finding=finding,
    )
