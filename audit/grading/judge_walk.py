"""The verdict of a walk: points, time and what cannot be told, with the benefit of the doubt."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from audit.grading.verdicts import PointVerdict, WalkGrade, WalkTime, WalkVerdict
from audit.standard import Standard
from audit.words import sentence
from audit.words.figures import Listed

ScorePart = tuple[str, float | None, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class LegSkill:
    """How a leg was walked, for the coaching score: errors with their standard errors."""

    azimuth_error_deg: float
    azimuth_sd_deg: float
    distance_ratio: float
    ratio_sd: float


@dataclass(frozen=True, slots=True, kw_only=True)
class _Points:
    """The points of a walk counted; those that are left out count for nothing."""

    found: int
    missed: int
    doubtful: int
    without_evidence: int
    left_out: int
    needed: int

    @property
    def possible(self) -> int:
        """The most that can have been found."""
        return self.found + self.doubtful + self.without_evidence

    @property
    def counted(self) -> int:
        return self.possible + self.missed


def judge_walk(
    points: Sequence[PointVerdict],
    time: WalkTime,
    skills: Sequence[LegSkill],
    standard: Standard,
    *,
    evidence: bool = True,
) -> WalkVerdict:
    """Judge a walk by its points and its time.

    It passes where enough points are found for sure and it is in time for sure. It
    fails only where no doubt can help it: too few points even if all doubtful ones
    were found, or late beyond the error of the clocks. Whatever lies between is
    doubtful. Without any evidence there is no verdict.
    """
    counted = _counted(points, standard)
    late_s, time_grade, time_reason = _judge_time(time, _noted(points, standard), standard)
    reasons = _point_reasons(counted, standard)
    grade: WalkGrade
    if not evidence or (counted.counted > 0 and counted.without_evidence == counted.counted):
        grade, late_s = "no-evidence", None
        reasons = [sentence("judged-nothing")]
    else:
        grades = {_points_grade(counted), time_grade}
        grade = next(one for one in ("fail", "doubtful", "pass") if one in grades)
        reasons += time_reason
    parts = _score_parts(counted, late_s, skills, standard) if grade != "no-evidence" else ()
    return WalkVerdict(
        grade=grade,
        reasons=tuple(reasons),
        found=counted.found,
        missed=counted.missed,
        doubtful=counted.doubtful,
        without_evidence=counted.without_evidence,
        needed=counted.needed,
        late_s=late_s,
        score=_score(parts, late_s, standard),
        score_parts=parts,
    )


def _counted(points: Sequence[PointVerdict], standard: Standard) -> _Points:
    kept = [point.grade for point in points if not point.left_out]
    left_out = len(points) - len(kept)
    asked = len(points) if standard.points_to_find is None else standard.points_to_find
    return _Points(
        found=kept.count("found"),
        missed=kept.count("missed"),
        doubtful=kept.count("doubtful"),
        without_evidence=kept.count("no-evidence"),
        left_out=left_out,
        # A point that is left out can cost nobody anything.
        needed=max(min(asked, len(points)) - left_out, 0),
    )


def _points_grade(counted: _Points) -> WalkGrade:
    if counted.found >= counted.needed:
        return "pass"
    return "fail" if counted.possible < counted.needed else "doubtful"


def _point_reasons(counted: _Points, standard: Standard) -> list[str]:
    """Say in a sentence how the points stand against what is asked."""
    others = [
        sentence(f"judged-{what}", count=str(number))
        for number, what in (
            (counted.doubtful, "doubtful"),
            (counted.missed, "missed"),
            (counted.without_evidence, "unevidenced"),
        )
        if number
    ]
    asked = counted.needed + counted.left_out
    reasons: list[str] = [
        sentence(
            "judged-points",
            found=str(counted.found),
            counted=str(counted.counted),
            others=sentence("judged-others", list=Listed(things=others, link="comma"))
            if others
            else "",
            needed=str(counted.needed),
        )
    ]
    if standard.points_to_find is not None and standard.points_to_find > asked:
        stated = str(standard.points_to_find)
        reasons.append(sentence("judged-fewer", asked=stated, has=str(asked)))
    if counted.left_out:
        reasons.append(sentence("judged-left-out", count=str(counted.left_out)))
    return reasons


def _noted(points: Sequence[PointVerdict], standard: Standard) -> str:
    """Give the time that stands beside the code of the last point; "" where none does."""
    last = points[-1].punch if points and standard.order == "planned" else None
    return "" if last is None or last.right is False else last.time


def _judge_time(
    time: WalkTime, noted: str, standard: Standard
) -> tuple[float | None, WalkGrade, list[str]]:
    """Give how late it came in, what that makes, and a sentence where there is one to say."""
    limit_s, grace_s = standard.time_limit_s, standard.late_grace_s
    if limit_s is None:
        return None, "pass", []
    limit = _clock(limit_s)
    if time.elapsed_s is None:
        unknown = sentence("judged-time-unknown", limit=limit)
        told = sentence("judged-time-noted", noted=noted, limit=limit) if noted else unknown
        return None, "doubtful", [told]

    late_s = max(time.elapsed_s - limit_s, 0.0)
    grade, ident = _in_time(time.elapsed_s - limit_s, time.error_s, grace_s)
    if time.from_roster_s is not None:
        other, _ = _in_time(time.from_roster_s - limit_s, time.error_s, grace_s)
        if other != grade:
            both = {"own": _clock(time.elapsed_s), "roster": _clock(time.from_roster_s)}
            return None, "doubtful", [sentence("judged-two-starts", **both, limit=limit)]
    took = {"time": _clock(time.elapsed_s), "limit": limit}
    if ident == "judged-clocks":
        took["error"] = f"±{_clock(time.error_s)}"
    return late_s, grade, [sentence(ident, **took)]


def _in_time(late_s: float, error_s: float, grace_s: float) -> tuple[WalkGrade, str]:
    """Give what so late (below 0: early) makes of a walk, and which sentence tells it."""
    if late_s <= 0.0:
        return "pass", "judged-in-time"
    if late_s <= grace_s:
        return "pass", "judged-grace"
    beyond_s = late_s - grace_s
    return ("doubtful", "judged-clocks") if beyond_s <= error_s else ("fail", "judged-late")


def _score_parts(
    counted: _Points, late_s: float | None, skills: Sequence[LegSkill], standard: Standard
) -> tuple[ScorePart, ...]:
    """Give each part's share; a doubtful point counts half, one without evidence nowhere."""
    weights = standard.weights
    known = counted.counted - counted.without_evidence
    in_time = None
    if standard.time_limit_s is not None and late_s is not None:
        in_time = 1.0 if late_s <= 0.0 else 0.0
    azimuth = distance = None
    if skills and standard.azimuth_tolerance_deg is not None:
        azimuth = sum(
            abs(one.azimuth_error_deg) <= standard.azimuth_tolerance_deg + 2.0 * one.azimuth_sd_deg
            for one in skills
        ) / len(skills)
    if skills and standard.distance_tolerance is not None:
        distance = sum(
            abs(one.distance_ratio - 1.0) <= standard.distance_tolerance + 2.0 * one.ratio_sd
            for one in skills
        ) / len(skills)
    points = (counted.found + 0.5 * counted.doubtful) / known if known else None
    return (
        ("points", points, weights.points),
        ("time", in_time, weights.time),
        ("azimuth", azimuth, weights.azimuth),
        ("distance", distance, weights.distance),
    )


def _score(parts: Sequence[ScorePart], late_s: float | None, standard: Standard) -> float | None:
    """Weigh the parts that can be told, and take off what lateness costs."""
    known = [(share, weight) for _, share, weight in parts if share is not None and weight > 0.0]
    if not known:
        return None
    score = 100.0 * sum(share * weight for share, weight in known) / sum(w for _, w in known)
    late_min = 0 if late_s is None else math.ceil(late_s / 60.0)
    penalty = standard.late_penalty_per_min * late_min
    return max(score - penalty, 0.0)


def _clock(seconds: float) -> str:
    """Give a length of time as hours and minutes, seconds where they matter."""
    minutes, rest = divmod(round(seconds), 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours} h {minutes:02d} min" + (f" {rest:02d} s" if rest else "")
