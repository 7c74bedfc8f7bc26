"""The check of a plan: for people, findings and worked sums; for programs, a document."""

from __future__ import annotations

import json
from collections.abc import Iterator

from audit.debriefing.course_entry import course_entry, plan_finding_entries, point_entries
from audit.leg_card.check_plan import PlanCheck
from audit.leg_card.told_numbers import told_distance
from audit.leg_card.worked_sums import LegSums, SumLine
from audit.reports import digits
from audit.reports.angle_words import angle_sentences
from audit.reports.cause_words import cause_words, has_words
from audit.reports.printable import printable
from audit.reports.shown_paces import counting
from audit.units import mils_from_degrees
from audit.words import Words, in_force, say, spoken, told
from audit.words.figures import Azimuth, Paces

CHECK_FORMAT = 1
"""Number of the shape of the document of a check."""

_AZIMUTHS = ("grid_azimuth_deg", "magnetic_azimuth_deg", "back_magnetic_azimuth_deg",
             "true_azimuth_deg", "grid_from_true_deg")  # fmt: skip


def render_check(checked: PlanCheck, words: Words | None = None) -> str:
    """Give plain text that ends with a line feed: what to put right, then the worked sums."""
    with spoken(words), counting(checked.card.pace):
        return _text(checked)


def _text(checked: PlanCheck) -> str:
    lines = [checked.card.name, *_verdict(checked), ""]
    for number, finding in enumerate(checked.findings, start=1):
        lines.append(f"{number:>2}. {told(finding.message)}")
    if checked.findings:
        lines.append("")
    lines += angle_sentences(checked.card)
    shown = [line for sums in checked.sums for line in _all_lines(sums)]
    width = max((len(told(line.working)) for line in shown), default=0)
    for sums in checked.sums:
        lines += ["", _title(sums), *_leg_lines(sums, width)]
    return "\n".join(printable(line).rstrip() for line in lines) + "\n"


def _all_lines(sums: LegSums) -> Iterator[SumLine]:
    yield from sums.lines
    for piece in sums.pieces:
        yield from piece.lines


def _leg_lines(sums: LegSums, width: int) -> Iterator[str]:
    """Give the lines of a leg; one along via positions is worked piece by piece.

    Its straight azimuths are shown only where the plan states one: nobody walks there.
    """
    if not sums.pieces:
        yield from (_line(line, width) for line in sums.lines)
        return
    for piece in sums.pieces:
        ends = (_place(sums, place) for place in (piece.first, piece.last))
        yield f"  {say('figure-range', **dict(zip(('low', 'high'), ends, strict=True)))}"
        yield from (_line(line, width) for line in piece.lines)
    across = [line for line in sums.lines if line.what in _AZIMUTHS]
    if any(line.given is not None for line in across):
        yield f"  {say('check-across')}"
        yield from (_line(line, width) for line in across)
    yield f"  {say('check-whole-leg')}"
    yield from (_line(line, width) for line in sums.lines if line.what not in _AZIMUTHS)


def _place(sums: LegSums, place: int) -> str:
    """Name a place of a leg's line: its start, a via position, its end."""
    if place == 0:
        return sums.start
    last = sums.pieces[-1].last
    return sums.end if place == last else say("card-via", number=place)


def render_check_json(checked: PlanCheck) -> str:
    """Give the document of a check: course, points, findings, worked sums."""
    document = {
        "format": CHECK_FORMAT,
        "plan": checked.source,
        "course": course_entry(checked.card),
        "points": point_entries(checked.card),
        "findings": plan_finding_entries(checked.findings),
        "legs": [_leg_entry(sums) for sums in checked.sums],
    }
    return json.dumps(document, indent=1, ensure_ascii=False, allow_nan=False) + "\n"


def _verdict(checked: PlanCheck) -> list[str]:
    count = len(checked.findings)
    if not count:
        return [say("check-agrees")]
    return [say("check-things", count=count), *_shared(checked)]


def _title(sums: LegSums) -> str:
    ends = say("figure-range", low=sums.start, high=sums.end)
    return say("page-leg-title", leg=sums.leg, ends=ends)


def _shared(checked: PlanCheck) -> list[str]:
    """Name each slip that several legs share: a way of working, not a slip of the pen."""
    legs: dict[str, dict[str, None]] = {}
    for finding in checked.findings:
        if finding.leg is not None and finding.slips:
            legs.setdefault(finding.slips[0], {})[finding.leg] = None
    shared = []
    for slip, names in legs.items():
        if len(names) > 1 and has_words(slip):
            words = cause_words(slip)
            begun = f"{words[:1].upper()}{words[1:]}"
            shared.append(say("check-shared", slip=begun, names=", ".join(names)))
    return shared


def _line(line: SumLine, width: int) -> str:
    computed, given = _figure(line, line.computed), ""
    if line.given is not None:
        differs = "check-course-mark" if line.by_course else "check-differs-mark"
        mark = say("check-agrees-mark" if line.agrees else differs)
        given = f"   {say('check-plan')} {_stated(line, line.given):>7}  {mark}{_mils(line)}"
    name = say(f"check-{line.what.replace('_', '-')}")
    return f"  {name:<16}  {told(line.working):<{width}}  = {computed:>7}{given}"


def _mils(line: SumLine) -> str:
    """Add the mils in which the plan says an azimuth, where other units are shown."""
    if not line.in_mils or line.given is None or in_force().units.angle == "mil6400":
        return ""
    return f" ({say('check-mils', given=f'{mils_from_degrees(line.given):.0f}')})"


def _stated(line: SumLine, value: float) -> str:
    """Write what the plan says: of a distance in decimals none is dropped."""
    if line.what == "distance_m":
        return say("figure-length", size=told_distance(value))
    return _figure(line, value)


def _figure(line: SumLine, value: float) -> str:
    if line.what in _AZIMUTHS:
        return Azimuth(degrees=value, of_card=True).shown(in_force())
    if line.what == "distance_m":
        return digits.stated_metres(value)
    return Paces(counted=value).shown(in_force())


def _leg_entry(sums: LegSums) -> dict[str, object]:
    return {
        "name": sums.leg,
        "from": sums.start,
        "to": sums.end,
        "sums": [_line_entry(line) for line in sums.lines],
        "pieces": [
            {
                "from": _place(sums, piece.first),
                "to": _place(sums, piece.last),
                "sums": [_line_entry(line) for line in piece.lines],
            }
            for piece in sums.pieces
        ],
    }


def _line_entry(line: SumLine) -> dict[str, object]:
    return {
        "what": line.what,
        "working": line.working,
        "computed": line.computed,
        "given": line.given,
        "agrees": line.agrees,
    }
