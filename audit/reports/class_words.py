"""Grades, times and causes of a class in words."""

from __future__ import annotations

from audit.classroom.records import LegResult, WalkerResult
from audit.grading.verdicts import PointGrade, WalkGrade
from audit.reports import digits
from audit.reports.cause_words import CANNOT_TELL, WITHIN_SKILL, cause_words
from audit.settings import Settings

POINT_WORDS: dict[PointGrade, str] = {
    "found": "found",
    "doubtful": "doubtful",
    "missed": "missed",
    "no-evidence": "no evidence",
}
WALK_WORDS: dict[WalkGrade, str] = {
    "pass": "standard met",
    "fail": "standard not met",
    "doubtful": "too close to call",
    "no-evidence": "no evidence",
}


def hours(seconds: float | None) -> str:
    """Write hours and minutes: "2:05"; "–" where unknown."""
    if seconds is None:
        return "–"
    minutes = round(seconds / 60)
    return f"{minutes // 60}:{minutes % 60:02d}"


def called(walker: WalkerResult) -> str:
    """Give a walker's name, with the attempt where it is not the first."""
    name = walker.name or walker.ident
    return name if walker.attempt == 1 else f"{name}, attempt {walker.attempt}"


def named_cause(leg: LegResult) -> str | None:
    """Give the mistake that is named of a leg, None where none is."""
    least = Settings().reports.named_cause_probability
    if leg.cause is None or leg.cause in {WITHIN_SKILL, CANNOT_TELL}:
        return None
    return leg.cause if (leg.cause_probability or 0.0) >= least else None


def why(leg: LegResult) -> str:
    """Say what a leg's error is consistent with, in a few words; "" where no mistake is named."""
    cause = named_cause(leg)
    if cause is None:
        return ""
    return f"{cause_words(cause)} ({digits.percent(leg.cause_probability or 0.0)})"


def vector(east_m: float, north_m: float) -> str:
    """Write where something lies: "86 m east, 72 m south"."""
    return (
        f"{abs(east_m):.0f} m {'east' if east_m >= 0 else 'west'}, "
        f"{abs(north_m):.0f} m {'north' if north_m >= 0 else 'south'}"
    )


def number(count: int, noun: str) -> str:
    """Write "1 point", "2 points"."""
    return f"{count} {noun}" if count == 1 else f"{count} {noun}s"
