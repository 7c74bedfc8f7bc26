"""The class in a few sentences, and what there is to ask."""

from __future__ import annotations

from collections import Counter

from audit.classroom.records import ClassFinding, ClassLeg, ClassResult
from audit.reports.cause_words import cause_words
from audit.reports.class_words import named_cause, number


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
    lanes = number(len(result.lanes), "lane")
    parts = [
        f"{grades['pass']} of {number(len(result.walkers), 'walk')} on {lanes} met the standard"
    ]
    if grades["fail"]:
        parts.append(f"{grades['fail']} did not")
    if grades["doubtful"]:
        parts.append(f"{grades['doubtful']} are too close to call")
    if grades["no-evidence"]:
        parts.append(f"of {grades['no-evidence']} there is no evidence, which is no fail")
    return f"{'; '.join(parts)}."


def _faults(result: ClassResult) -> list[str]:
    return [
        f"{leg.point} (leg {leg.name} of {leg.lane}) is the course's fault and is left out of the "
        "grades: see below."
        for leg in result.legs
        if leg.finding == "point-misplaced"
    ]


def _caught(result: ClassResult) -> str:
    leg = hardest(result)
    if leg is None:
        return "Every point was found by everybody of whom there is evidence."
    return (
        f"Leg {leg.name} of {leg.lane} to {leg.point} caught most: {leg.found} of {leg.walkers} "
        f"found it, {leg.missed} missed it"
        + (f", {leg.doubtful} doubtful." if leg.doubtful else ".")
    )


def _causes(result: ClassResult) -> str:
    counted = causes_counted(result)
    if not counted:
        return ""
    cause, legs, walkers = counted[0]
    return (
        f"The commonest named mistake is {cause_words(cause)}: on {number(legs, 'leg')} of "
        f"{number(walkers, 'walker')}."
    )


def _asked(result: ClassResult) -> str:
    _, questions = findings_of(result)
    if not questions:
        return ""
    wait = "waits" if len(questions) == 1 else "wait"
    return f"{number(len(questions), 'question')} below {wait} for a person."
