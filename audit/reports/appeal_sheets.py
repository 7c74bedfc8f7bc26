"""One appeal sheet for each doubtful or missed point: evidence for and against, on one page."""

from __future__ import annotations

from audit.classroom.records import ClassLeg, ClassResult, LaneResult, WalkerResult
from audit.reports import class_words, digits
from audit.reports.class_matrix import appeal_name, debrief_page, may_appeal
from audit.reports.class_page import POLICY
from audit.reports.class_words import number
from audit.reports.figure_appeal import appeal_specification
from audit.reports.html_report import page_templates
from audit.reports.picture import draw
from audit.track import utc_text

LIMIT = (
    "A recording may raise a question; it does not decide alone. Proof at the marker (code, punch, "
    "a person who sat there) comes first, and doubt speaks for the walker."
)


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
    title = f"{class_words.called(walker)}, {planned.end}"
    said = f"The walk about {planned.end}, grid north up."
    page = debrief_page(walker)
    return (
        page_templates()
        .get_template("appeal.html.j2")
        .render(
            policy=POLICY,
            title=title,
            grade=one.point.grade,
            words=class_words.POINT_WORDS[one.point.grade],
            left_out=one.point.left_out,
            where=f"{lane.name}, leg {planned.name}: {planned.start} to {planned.end}",
            facts=_facts(lane, walker, leg),
            picture=None if made is None else draw(made, "appeal", title, said).svg,
            evidence_for=one.point.evidence_for,
            evidence_against=one.point.evidence_against,
            about_class=_class_words(result, lane, leg),
            notes=() if walker.track is None else walker.track.notes,
            standard=result.standard,
            limit=LIMIT,
            fingerprint=lane.fingerprint or result.fingerprint,
            debrief=f"../{page}#leg{leg + 1}" if page else "",
            version=result.version,
        )
    )


def _facts(lane: LaneResult, walker: WalkerResult, leg: int) -> list[tuple[str, str]]:
    one = walker.legs[leg]
    verdict, approach, punch = one.point, one.point.approach, one.point.punch
    facts = [("Found within", f"{verdict.radius_m:.0f} m of the point")]
    facts.append(
        ("Missed beyond", f"{verdict.radius_m + verdict.error_m:.0f} m (whole error added)")
    )
    if approach is not None:
        words = digits.metres(approach.distance_m, approach.sd_m)
        if approach.time_s is not None:
            words += f", {utc_text(approach.time_s)}"
        facts.append(("Nearest approach", words + ("" if approach.in_turn else ", out of turn")))
        if approach.unseen_m >= 1.0:
            words = f"{approach.unseen_m:.0f} m nearer at most, in silences of the recording"
            facts.append(("Unseen", words))
    if one.miss is not None:
        miss = digits.metres(one.miss.distance_m, one.miss.sd_m)
        where = class_words.vector(one.miss.east_m, one.miss.north_m)
        facts.append(("Miss at the claim", f"{miss} ({where})"))
    facts.append(
        ("Proof brought back", "none" if punch is None else _punch_words(punch.right, punch.code))
    )
    if walker.track is not None:
        every = walker.track.median_interval_s
        rate = "without times" if every is None else f"one every {every:g} s"
        noise = f"receiver noise {walker.track.noise_m:.1f} m"
        facts.append(("Recording", f"{walker.track.fixes} fixes, {rate}, {noise}"))
    why = class_words.why(one)
    if why:
        facts.append(("Consistent with", why))
    facts.append(("Plan", f"{lane.plan_file}, grid {lane.grid}"))
    return facts


def _punch_words(right: bool | None, code: str) -> str:  # noqa: FBT001 (as the record has it)
    said = {
        True: "the right one",
        False: "not that of the point",
        None: "no key to hold it against",
    }
    return f"code {code}, {said[right]}"


def _class_words(result: ClassResult, lane: LaneResult, leg: int) -> list[str]:
    """Say how the others fared at the point, and what the class shows of it."""
    name = lane.legs[leg].name
    said = [_others(one) for one in result.legs if (one.lane, one.name) == (lane.name, name)]
    said += [
        finding.message
        for finding in result.findings
        if (finding.lane, finding.leg) == (lane.name, name) and not finding.question
    ]
    return said


def _others(leg: ClassLeg) -> str:
    return (
        f"Of {number(leg.walkers, 'walk')} of the lane {leg.found} found the point, {leg.missed} "
        f"missed it, {leg.doubtful} are doubtful; of {leg.without_evidence} there is no evidence."
    )
