"""From graded walkers to the class: lanes, legs over all walkers, findings."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from audit.classroom.class_draft import ClassDraft
from audit.classroom.class_legs import class_legs
from audit.classroom.class_result import ClassFinding, ClassResult
from audit.classroom.class_shows import class_shows
from audit.classroom.course_faults import course_faults
from audit.classroom.lane import lane_result
from audit.classroom.lane_result import LaneLeg, LaneResult
from audit.classroom.roads_used import asked_of_roads
from audit.classroom.shift_asked import shift_asked
from audit.classroom.standard_fit import standard_on
from audit.classroom.walker_result import WalkerResult
from audit.classroom.walker_task import regraded
from audit.grading.fingerprint import fingerprint
from audit.words import sentence

OTHER_COURSE = "other-course"
"""What the question is called whether a recording is of another course."""


def assemble(draft: ClassDraft, walkers: Sequence[WalkerResult]) -> ClassResult:
    """Put the class together from its walkers, in the order of the draft."""
    inputs, forecast = draft.inputs, draft.inputs.settings.forecast
    lanes = tuple(
        _with_climb(lane_result(lane, inputs.standard, inputs.version, forecast), walkers)
        for lane in inputs.lanes
    )
    findings = [*draft.findings, *_refused(walkers, draft), *_of_another_course(walkers)]
    findings += shift_asked(draft.clock, walkers, inputs.settings.grading)
    findings += asked_of_roads(walkers, inputs.standard)
    asks = inputs.settings.class_shows
    faults = course_faults(lanes, walkers, asks)
    left_out = _left_out([*findings, *faults])
    standards = {lane.name: standard_on(lane.plan, inputs.standard) for lane in inputs.lanes}
    graded = tuple(
        regraded(walker, left_out.get(walker.lane, frozenset()), standards[walker.lane])
        for walker in walkers
    )
    shows = class_shows(lanes, graded, faults, asks)
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
        legs=class_legs(lanes, graded, [*findings, *shows.findings]),
        findings=(*findings, *shows.findings),
        shift_s=draft.clock.shift_s,
        shift_from=draft.clock.ground if draft.clock.shift_s else "",
        private=inputs.private,
        notes=(*draft.notes, *shows.notes),
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
            message=sentence("shows-unusable", walker=walker.name, problem=walker.problem),
            lane=walker.lane,
            walkers=(walker.ident,),
        )
        for walker in walkers
        if walker.state == "refused" and walker.ident not in told
    ]


def _of_another_course(walkers: Sequence[WalkerResult]) -> list[ClassFinding]:
    """Ask about recordings that may be of another course, which no lane of the class fits."""
    return [
        ClassFinding(
            what=OTHER_COURSE,
            message=sentence(
                "shows-other-course", walker=walker.name, elsewhere=walker.track.elsewhere
            ),
            lane=walker.lane,
            walkers=(walker.ident,),
            question=True,
        )
        for walker in walkers
        if walker.track is not None and walker.track.elsewhere and walker.better_lane is None
    ]


def _with_climb(lane: LaneResult, walkers: Sequence[WalkerResult]) -> LaneResult:
    """Add the climb of each leg: the middle of the walkers' own elevations.

    To a point that may be visited in any order everybody climbs from another.
    """
    if lane.is_free:
        return lane
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
