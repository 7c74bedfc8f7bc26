"""The class in a few sentences, and what there is to ask."""

from __future__ import annotations

from collections import Counter

from audit.classroom.records import ClassFinding, ClassLeg, ClassResult
from audit.grading.verdicts import WalkGrade
from audit.reports.cause_words import cause_words
from audit.reports.class_words import named_cause
from audit.words import say

_REST: dict[WalkGrade, str] = {
    "fail": "not-met", "doubtful": "too-close", "no-evidence": "unevidenced"
}  # fmt: skip


def class_verdict(result: ClassResult) -> list[str]:
    """Say what became of the class, where it was caught, and of what."""
    said = [_count(result), *_faults(result), _caught(result), _causes(result), _asked(result)]
    return [sentence for sentence in said if sentence]


def hardest(result: ClassResult) -> ClassLeg | None:
    """Give the leg whose point was found by the smallest share; None where all were found."""
    told = [leg for leg in result.legs if leg.found + leg.missed + leg.doubtful]
    told = [leg for leg in told if leg.finding != "point-misplaced" and leg.missed + leg.doubtful]
    return max(told, key=lambda leg: (leg.missed + leg.doubtful) / leg.walkers, default=None)


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
    grades = Counter(walker.verdict.grade for walker in result.walkers)
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


def _caught(result: ClassResult) -> str:
    leg = hardest(result)
    if leg is None:
        return say("class-all-found")
    return say(
        "class-caught",
        leg=leg.name,
        lane=leg.lane,
        point=leg.point,
        found=leg.found,
        walkers=str(leg.walkers),
        missed=leg.missed,
        doubtful=str(leg.doubtful),
    )


def _causes(result: ClassResult) -> str:
    counted = causes_counted(result)
    if not counted:
        return ""
    cause, legs, walkers = counted[0]
    return say("class-commonest", cause=cause_words(cause), legs=legs, walkers=walkers)


def _asked(result: ClassResult) -> str:
    _, questions = findings_of(result)
    return say("class-asked", count=len(questions)) if questions else ""
