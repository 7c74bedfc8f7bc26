"""Grades, times and causes of a class in words."""

from __future__ import annotations

from typing import Literal

from audit.classroom.course_faults import place_words
from audit.classroom.walker_result import LegResult, WalkerResult
from audit.grading.verdicts import PointGrade, WalkVerdict
from audit.guide.cause_names import CANNOT_TELL, WITHIN_SKILL
from audit.reports import digits
from audit.reports.cause_words import cause_words
from audit.words import say, told

WalkOutcome = Literal["pass", "fail", "doubtful", "untold", "no-evidence"]


def point_words(grade: PointGrade) -> str:
    """Say what became of a point."""
    return say(f"class-{grade}")


def outcome(verdict: WalkVerdict) -> WalkOutcome:
    """Give the grade of a walk; "untold" of a doubtful one where nothing is close.

    Close are doubtful points while more are asked for, and a time that is late by no
    more than it may be off. Else evidence is missing: of points, or of the time.
    """
    close = (verdict.doubtful and verdict.found < verdict.needed) or verdict.late_s
    return "untold" if verdict.grade == "doubtful" and not close else verdict.grade


def walk_words(verdict: WalkVerdict) -> str:
    """Say what became of a walk."""
    return say(f"class-verdict-{outcome(verdict)}")


def result_words(verdict: WalkVerdict, elapsed_s: float | None = None) -> str:
    """Say what became of a walk, by how many points, and in what time where that is told."""
    untold = verdict.grade == "doubtful" and verdict.found >= verdict.needed
    late = "untold" if untold and verdict.late_s is None else "none"
    return say(
        "class-result",
        verdict=walk_words(verdict),
        found=str(verdict.found),
        needed=str(verdict.needed),
        hours="none" if elapsed_s is None else hours(elapsed_s),
        late=hours(verdict.late_s) if verdict.late_s else late,
    )


def on_own_legs(walker: WalkerResult) -> str:
    """Say how many points the debrief counts, where that is another number; "" where it is none.

    It counts those reached on their own legs; the class goes by the whole recording, the
    standard and the codes.
    """
    told_of = (leg.point.approach for leg in walker.legs)
    reached = (one.debriefed for one in told_of if one is not None and one.debriefed is not None)
    own = sum(point.verdict == "found" for point in reached)
    untold = walker.verdict.grade == "no-evidence" or own == walker.verdict.found
    return "" if untold else say("class-own-legs", count=own)


def hours(seconds: float | None) -> str:
    """Write hours and minutes: "2:05"; "–" where unknown."""
    if seconds is None:
        return "–"
    minutes = round(seconds / 60)
    return f"{minutes // 60}:{minutes % 60:02d}"


def called(walker: WalkerResult) -> str:
    """Give a walker's name, with the attempt where it is not the first."""
    name = walker.name or walker.ident
    if walker.attempt == 1:
        return name
    return say("class-attempt", name=name, number=str(walker.attempt))


def named_cause(leg: LegResult) -> str | None:
    """Give the mistake that is named of a leg, None where none is."""
    if leg.cause is None or leg.cause in {WITHIN_SKILL, CANNOT_TELL}:
        return None
    return leg.cause if (leg.cause_probability or 0.0) >= leg.named_from else None


def why(leg: LegResult) -> str:
    """Say what a leg's error is consistent with, in a few words; "" where no mistake is named.

    A point left out is told by its name: the leg that leads on from it would be taken for its own.
    """
    cause = named_cause(leg)
    if cause is None:
        return ""
    words = say("leg-left-out", point=leg.left_out) if leg.left_out else cause_words(cause)
    return f"{words} ({digits.percent(leg.cause_probability or 0.0)})"


def vector(east_m: float, north_m: float) -> str:
    """Write where something lies: "86 m east, 72 m south"."""
    return told(place_words(east_m, north_m))
