"""Walkers by points: one table a lane, in the order of the roster; nobody is ranked."""

from __future__ import annotations

from dataclasses import dataclass

from audit.classroom.class_result import ClassResult
from audit.classroom.lane_result import LaneResult
from audit.classroom.walker_result import LegResult, WalkerResult
from audit.grading.verdicts import WalkVerdict
from audit.reports import class_words, digits
from audit.reports.wording import status_words
from audit.words import told

APPEALS = "appeals"
"""The folder of the sheets, in that of the class."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PointCell:
    """One point of one walker; ``debrief`` and ``appeal`` are links, "" where there is none."""

    point: str
    grade: str
    words: str
    miss: str
    cause: str
    debrief: str
    appeal: str
    left_out: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkerRow:
    """One attempt of one walker; ``number`` is his in all pictures of the class."""

    number: int
    name: str
    debrief: str
    result: str
    own_legs: str
    problem: str
    cells: tuple[PointCell, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LaneTable:
    """The walkers of one lane; a column has the name of its leg, its point, and if it counts."""

    lane: str
    columns: tuple[tuple[str, str, bool], ...]
    rows: tuple[WalkerRow, ...]


def numbered(result: ClassResult) -> list[tuple[int, WalkerResult]]:
    """Give each walker a number, in the order of the roster."""
    return list(enumerate(result.walkers, start=1))


def lane_tables(result: ClassResult) -> list[LaneTable]:
    """Give a table for each lane that somebody walked."""
    tables = []
    for lane in result.lanes:
        rows = [_row(n, one, lane) for n, one in numbered(result) if one.lane == lane.name]
        if not rows:
            continue
        out = {
            leg.name
            for one in result.walkers
            for leg in one.legs
            if one.lane == lane.name and leg.point.left_out
        }
        columns = tuple((leg.name, told(leg.end), leg.name not in out) for leg in lane.legs)
        tables.append(LaneTable(lane=lane.name, columns=columns, rows=tuple(rows)))
    return tables


def debrief_page(walker: WalkerResult) -> str:
    """Give the link to a walker's debrief, "" where there is none."""
    return next((page for page in walker.pages if page.endswith(".html")), "")


def appeal_name(walker: WalkerResult, leg: int) -> str:
    """Give the name of the file of an appeal sheet, in the folder of the sheets."""
    return f"{walker.ident}-leg-{leg + 1}.html"


def may_appeal(leg: LegResult) -> bool:
    """Tell whether a point gets an appeal sheet: doubtful or missed."""
    return leg.point.grade in {"doubtful", "missed"}


def _row(number: int, walker: WalkerResult, lane: LaneResult) -> WalkerRow:
    verdict = walker.verdict
    return WalkerRow(
        number=number,
        name=class_words.called(walker),
        debrief=debrief_page(walker),
        result=class_words.result_words(verdict, walker.time.elapsed_s),
        own_legs=class_words.on_own_legs(walker),
        problem=told(walker.problem or "") or _why_doubtful(verdict),
        cells=tuple(_cell(walker, lane, leg) for leg in range(len(walker.legs))),
    )


def _why_doubtful(verdict: WalkVerdict) -> str:
    """Say why a walk stays doubtful that has points enough; "" of any other."""
    enough = verdict.grade == "doubtful" and verdict.found >= verdict.needed
    return " ".join(map(told, verdict.reasons)) if enough else ""


def _status_words(leg: LegResult) -> str:
    """Say why a leg has no claim; "" of one that was walked.

    What the recording does not reach may have been walked before it began or after it ended.
    """
    status, unseen = leg.status, leg.point.grade == "no-evidence"
    approach = leg.point.approach
    begins_here = approach is not None and approach.begins_here
    if status == "skipped" and (begins_here or unseen):
        return status_words("before-recording")
    if status in {"unfinished", "not-started"} and unseen:
        return status_words("after-recording")
    return status_words(status) if status in {"skipped", "unfinished", "not-started"} else ""


def _cell(walker: WalkerResult, lane: LaneResult, number: int) -> PointCell:
    leg = walker.legs[number]
    page = debrief_page(walker)
    miss = "" if leg.miss is None else digits.metres(leg.miss.distance_m, leg.miss.sd_m)
    miss = _status_words(leg) or miss
    return PointCell(
        point=told(lane.legs[number].end),
        grade=leg.point.grade,
        words=class_words.point_words(leg.point.grade),
        miss=miss,
        cause=class_words.why(leg),
        debrief=f"{page}#leg{number + 1}" if page else "",
        appeal=f"{APPEALS}/{appeal_name(walker, number)}" if may_appeal(leg) else "",
        left_out=leg.point.left_out,
    )
