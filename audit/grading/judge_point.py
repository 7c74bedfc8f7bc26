"""The verdict of a point: proof from the marker first, then the track, with its whole error."""

from __future__ import annotations

import math

from audit.grading.verdicts import Approach, PointGrade, PointVerdict, Proof, Punch
from audit.measurement.leg_details import PointReached
from audit.settings import GradingSettings
from audit.standard import Standard
from audit.words import sentence
from audit.words.figures import Length, Percent


def judge_point(
    approach: Approach | None,
    punch: Punch | None,
    standard: Standard,
    radius_m: float,
    settings: GradingSettings,
    *,
    recorded: bool = False,
) -> PointVerdict:
    """Judge whether a point was found, with the benefit of the doubt.

    By the track it is found where the nearest approach lies within the radius, missed
    only where it lies outside by more than the whole error, and doubtful between, or where
    the debrief of the walk holds it too close to call. A right code is proof before the
    track; a wrong one makes found doubtful, for the walker was at some other marker.
    Nothing at all is no evidence, never a miss. ``recorded`` says that there is a recording:
    where it has no approach the verdict tells that it does not show the way there.
    """
    radius_m = standard.radius_m if standard.radius_m is not None else radius_m
    error_m = _whole_error_m(approach, standard, settings)
    speaks_for: list[str] = []
    against: list[str] = []
    grade: PointGrade = "no-evidence"
    proof: Proof | None = None
    if approach is not None:
        grade, proof = _by_track(approach, radius_m, error_m), "track"
        if standard.order == "planned" and not approach.in_turn and grade == "found":
            grade = "doubtful"
        _tell_track(approach, radius_m, error_m, (speaks_for, against))
        if approach.begins_here:
            speaks_for.append(sentence("judged-begins-here"))
        if standard.order == "planned" and not approach.in_turn:
            against.append(sentence("judged-out-of-turn"))
        grade = _with_debrief(approach.debriefed, grade, (speaks_for, against))
    elif recorded:
        speaks_for.append(sentence("judged-not-recorded"))
    if punch is not None:
        grade, proof = _with_punch(punch, grade, proof, (speaks_for, against))
    if grade == "no-evidence":
        proof = None
    return PointVerdict(
        grade=grade,
        proof=proof,
        radius_m=radius_m,
        error_m=error_m,
        approach=approach,
        punch=punch,
        evidence_for=tuple(speaks_for),
        evidence_against=tuple(against),
    )


def _whole_error_m(
    approach: Approach | None, standard: Standard, settings: GradingSettings
) -> float:
    """Give what a nearest approach may be off: receiver, logging, reference, survey, silences."""
    if approach is None:
        return 0.0
    sd_m = math.hypot(approach.sd_m, standard.survey_sd_m)
    return settings.coverage_factor * sd_m + approach.unseen_m


def _by_track(approach: Approach, radius_m: float, error_m: float) -> PointGrade:
    if approach.distance_m <= radius_m:
        return "found"
    return "missed" if approach.distance_m > radius_m + error_m else "doubtful"


def _tell_track(
    approach: Approach, radius_m: float, error_m: float, told: tuple[list[str], list[str]]
) -> None:
    """Put the nearest approach to what speaks for the walker, and to what speaks against."""
    speaks_for, against = told
    near, radius = Length(metres=approach.distance_m), Length(metres=radius_m)
    if approach.distance_m <= radius_m:
        speaks_for.append(sentence("judged-inside", near=near, radius=radius))
        return
    outside_m = approach.distance_m - radius_m
    outside = Length(metres=outside_m)
    against.append(sentence("judged-outside", near=near, outside=outside, radius=radius))
    if error_m >= outside_m:
        speaks_for.append(sentence("judged-reaches", error=Length(metres=error_m)))
    else:
        against.append(sentence("judged-reaches-not", error=Length(metres=error_m)))
    if approach.fix_m is not None and approach.distance_m - approach.fix_m >= 1.0:
        fix = Length(metres=approach.fix_m)
        speaks_for.append(sentence("judged-fix", fix=fix, near=near))
    if approach.unseen_m >= 1.0:
        speaks_for.append(sentence("judged-unseen", nearer=Length(metres=approach.unseen_m)))


def _with_debrief(
    debriefed: PointReached | None, grade: PointGrade, told: tuple[list[str], list[str]]
) -> PointGrade:
    """Settle the verdict with that of the debrief, so that one page never denies another."""
    speaks_for, against = told
    if debriefed is None:
        return grade
    if debriefed.verdict == "missed" and grade != "missed":
        against.append(sentence("judged-debrief-missed"))
    if debriefed.verdict != "too close to call" or grade != "missed":
        return grade
    elsewhere_m = debriefed.elsewhere_m
    if elsewhere_m is not None and elsewhere_m <= debriefed.radius_m:
        near, doubt = Length(metres=elsewhere_m), Percent(share=debriefed.doubt)
        speaks_for.append(sentence("judged-elsewhere", near=near, doubt=doubt))
    else:
        speaks_for.append(sentence("judged-debrief-close"))
    return "doubtful"


def _with_punch(
    punch: Punch, grade: PointGrade, proof: Proof | None, told: tuple[list[str], list[str]]
) -> tuple[PointGrade, Proof | None]:
    speaks_for, against = told
    if punch.right is False:
        against.append(sentence("judged-code-wrong", code=punch.code))
        if grade == "found":
            return "doubtful", "track"
        return (grade, proof) if grade != "no-evidence" else ("doubtful", "punch")
    known = "judged-code-right" if punch.right else "judged-code-no-key"
    speaks_for.append(sentence(known, code=punch.code))
    return "found", "punch"
