"""One appeal sheet for each doubtful or missed point: evidence for and against, on one page."""

from __future__ import annotations

from collections.abc import Sequence

from audit.classroom.class_result import ClassResult
from audit.classroom.lane_result import LaneResult
from audit.classroom.walker_result import TrackFacts, WalkerResult
from audit.grading.verdicts import PointGrade, PointVerdict
from audit.reports import class_words, digits
from audit.reports.class_matrix import appeal_name, debrief_page, may_appeal
from audit.reports.class_page import POLICY
from audit.reports.figure_appeal import appeal_key, appeal_specification
from audit.reports.html_report import page_templates
from audit.reports.leg_facts import clock, clock_name
from audit.reports.picture import draw
from audit.words import in_force, say, told
from audit.words.figures import Number


def appeal_sheets(result: ClassResult) -> dict[str, str]:
    """Give the sheets by the names of their files."""
    sheets = {}
    for walker in result.walkers:
        lane = result.lane(walker.lane)
        for leg, one in enumerate(walker.legs):
            if may_appeal(one):
                sheets[appeal_name(walker, leg)] = _sheet(result, lane, walker, leg)
    return sheets


def _sheet(result: ClassResult, lane: LaneResult, walker: WalkerResult, leg: int) -> str:
    planned, one = lane.legs[leg], walker.legs[leg]
    made = appeal_specification(lane, leg, walker)
    title = f"{class_words.called(walker)}, {told(planned.end)}"
    said = say("appeal-about", point=planned.end)
    page = debrief_page(walker)
    return (
        page_templates()
        .get_template("appeal.html.j2")
        .render(
            policy=POLICY,
            title=title,
            grade=one.point.grade,
            words=class_words.point_words(one.point.grade),
            left_out=one.point.left_out,
            language=in_force().language,
            where=say(
                "appeal-where",
                lane=lane.name,
                leg=planned.name,
                start=planned.start,
                end=planned.end,
                standard=", ".join(filter(None, (result.standard.name, result.standard.edition))),
            ),
            facts=_facts(lane, walker, leg),
            picture=None if made is None else draw(made, "appeal", title, said).svg,
            signs=[] if made is None else appeal_key(lane, leg, walker),
            evidence_for=one.point.evidence_for,
            evidence_against=one.point.evidence_against,
            about_class=_class_words(result, lane, walker, leg),
            notes=() if walker.track is None else walker.track.notes,
            fingerprint=lane.fingerprint or result.fingerprint,
            debrief=f"../{page}#leg{leg + 1}" if page else "",
            version=result.version,
        )
    )


def _facts(lane: LaneResult, walker: WalkerResult, leg: int) -> list[tuple[str, str]]:
    one = walker.legs[leg]
    verdict = one.point
    within, beyond = (
        digits.stated_metres(size)
        for size in (verdict.radius_m, verdict.radius_m + verdict.error_m)
    )
    facts = [
        ("found-within", say("appeal-found-within-said", size=within)),
        ("missed-beyond", say("appeal-missed-beyond-said", size=beyond)),
        *_approach(verdict),
    ]
    if one.miss is not None:
        miss = digits.metres(one.miss.distance_m, one.miss.sd_m)
        where = class_words.vector(one.miss.east_m, one.miss.north_m)
        facts.append(("miss", say("appeal-miss-said", size=miss, where=where)))
    facts.append(("proof", _proof(verdict)))
    if walker.track is not None:
        facts.append(("recorded", _recorded(walker.track)))
    named = [(say(f"appeal-{name}"), words) for name, words in facts]
    if why := class_words.why(one):
        named.append((say("class-consistent"), why))
    plan = say("appeal-plan-said", file=lane.plan_file, grid=lane.grid)
    return [*named, (say("appeal-plan"), plan)]


def _approach(verdict: PointVerdict) -> list[tuple[str, str]]:
    approach = verdict.approach
    if approach is None:
        return []
    said = say(
        "appeal-nearest-said",
        size=digits.metres(approach.distance_m, approach.sd_m),
        time=_moment(approach.time_s),
        turn="yes" if approach.in_turn else "no",
    )
    facts = [("nearest", said)]
    if approach.fix_m is not None:
        size = digits.stated_metres(approach.fix_m)
        fix = say("appeal-nearest-fix-said", size=size, time=_moment(approach.fix_s))
        facts.append(("nearest-fix", fix))
    if approach.unseen_m >= 1.0:
        unseen = digits.stated_metres(approach.unseen_m)
        facts.append(("unseen", say("appeal-unseen-said", size=unseen)))
    return facts


def _moment(time_s: float | None) -> str:
    return "none" if time_s is None else f"{clock(time_s)} {clock_name(time_s)}"


def _proof(verdict: PointVerdict) -> str:
    punch = verdict.punch
    if punch is None:
        return say("appeal-proof-none")
    known = {True: "right", False: "wrong", None: "no-key"}[punch.right]
    return say(f"appeal-proof-{known}", code=punch.code)


def _recorded(track: TrackFacts) -> str:
    every = track.median_interval_s
    return say(
        "appeal-recorded-said",
        fixes=str(track.fixes),
        every="none" if every is None else in_force().decimal(f"{every:g}"),
        noise=Number(value=track.noise_m, decimals=1),
    )


def _class_words(
    result: ClassResult, lane: LaneResult, walker: WalkerResult, leg: int
) -> list[str]:
    """Say how the others fared at the point, and what the class shows of it."""
    name = lane.legs[leg].name
    grades = [
        one.legs[leg].point.grade
        for one in result.walkers
        if one.lane == lane.name and one.ident != walker.ident
    ]
    said = [_others(grades)] if grades else []
    said += [
        finding.message
        for finding in result.findings
        if (finding.lane, finding.leg) == (lane.name, name) and not finding.question
    ]
    return said


def _others(grades: Sequence[PointGrade]) -> str:
    return say(
        "appeal-others-said",
        walks=len(grades),
        found=grades.count("found"),
        missed=grades.count("missed"),
        doubtful=grades.count("doubtful"),
        unevidenced=str(grades.count("no-evidence")),
    )
