"""The class in a few sentences, and what there is to ask."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from audit.classroom.class_result import ClassFinding, ClassLeg, ClassResult
from audit.reports.angle_words import east_or_west
from audit.reports.cause_words import cause_words
from audit.reports.class_words import WalkOutcome, named_cause, outcome
from audit.words import say
from audit.words.figures import Listed, Percent

_REST: dict[WalkOutcome, str] = {
    "fail": "not-met", "doubtful": "too-close", "untold": "untold", "no-evidence": "unevidenced"
}  # fmt: skip
_MOST_NAMED = 4
"""So many legs are named that were missed alike; of more nothing is said."""


def class_verdict(result: ClassResult) -> list[str]:
    """Say what became of the class, where it missed, and of what."""
    said = [
        _count(result),
        *_faults(result),
        *plan_angles(result),
        _caught(result),
        _causes(result),
        _asked(result),
    ]
    return [sentence for sentence in said if sentence]


def hardest(result: ClassResult) -> list[ClassLeg]:
    """Give the legs whose point was missed by the largest share; a doubt is no miss."""
    told = [leg for leg in result.legs if leg.missed and leg.finding != "point-misplaced"]
    most = max((leg.missed / leg.walkers for leg in told), default=0.0)
    return [leg for leg in told if leg.missed / leg.walkers == most]


def causes_counted(result: ClassResult) -> list[tuple[str, int, int]]:
    """Give each mistake that was named: on how many legs, of how many walkers."""
    legs: Counter[str] = Counter()
    walkers: dict[str, set[str]] = {}
    for walker in result.walkers:
        for leg in walker.legs:
            cause = named_cause(leg)
            if cause is not None:
                legs[cause] += 1
                walkers.setdefault(cause, set()).add(walker.name)
    ordered = sorted(legs.items(), key=lambda pair: (-pair[1], pair[0]))
    return [(cause, count, len(walkers[cause])) for cause, count in ordered]


def findings_of(result: ClassResult) -> tuple[list[ClassFinding], list[ClassFinding]]:
    """Part what the class shows from what a person is asked."""
    told = [finding for finding in result.findings if not finding.question]
    return told, [finding for finding in result.findings if finding.question]


def _count(result: ClassResult) -> str:
    grades = Counter(outcome(walker.verdict) for walker in result.walkers)
    rest = [
        say(f"class-{name}", count=grades[grade]) for grade, name in _REST.items() if grades[grade]
    ]
    return say(
        "class-met",
        met=grades["pass"],
        walks=len(result.walkers),
        lanes=len(result.lanes),
        rest="".join(rest),
    )


def _faults(result: ClassResult) -> list[str]:
    return [
        say("class-course-fault", point=leg.point, leg=leg.name, lane=leg.lane)
        for leg in result.legs
        if leg.finding == "point-misplaced"
    ]


def plan_angles(result: ClassResult) -> list[str]:
    """Name the lanes whose plan has an angle that is to be put right."""
    return [
        say("class-plan-angle", lane=lane.name, angle=east_or_west(lane.grid_magnetic_angle_deg))
        for lane in result.lanes
        if lane.angle_at_fault
    ]


def _caught(result: ClassResult) -> str:
    legs = hardest(result)
    if not legs:
        doubtful = sum(leg.doubtful for leg in result.legs if leg.finding != "point-misplaced")
        if doubtful:
            return say("class-none-missed", count=doubtful)
        return say("class-all-found")
    if len(legs) > 1:
        return _caught_alike(legs)
    leg = legs[0]
    return say(
        "class-caught",
        leg=leg.name,
        lane=leg.lane,
        point=leg.point,
        found=leg.found,
        walkers=str(leg.walkers),
        missed=leg.missed,
        doubtful=str(leg.doubtful),
        unevidenced=str(leg.without_evidence),
    )


def _caught_alike(legs: Sequence[ClassLeg]) -> str:
    """Name the legs missed alike, lane by lane; "" of too many."""
    if len(legs) > _MOST_NAMED:
        return ""
    by_lane: dict[str, list[str]] = {}
    for leg in legs:
        by_lane.setdefault(leg.lane, []).append(leg.name)
    named = [
        say("class-leg-of", lane=lane, legs=len(names), names=Listed(things=names))
        for lane, names in by_lane.items()
    ]
    share = Percent(share=legs[0].missed / legs[0].walkers)
    return say("class-caught-alike", legs=Listed(things=named), share=share)


def _causes(result: ClassResult) -> str:
    counted = causes_counted(result)
    if not counted:
        return ""
    cause, legs, walkers = counted[0]
    return say("class-commonest", cause=cause_words(cause), legs=legs, walkers=walkers)


def _asked(result: ClassResult) -> str:
    _, questions = findings_of(result)
    return say("class-asked", count=len(questions)) if questions else ""
