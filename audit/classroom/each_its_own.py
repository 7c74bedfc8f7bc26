"""Rows of a roster that share recordings: which walk is whose, and what is left over."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import partial
from itertools import pairwise

from audit.classroom.class_result import ClassFinding
from audit.classroom.days_asked import days_from_plan
from audit.classroom.lane import Lane
from audit.classroom.lane_fit import better_lane
from audit.classroom.lane_names import lane_called
from audit.classroom.walk_time import roster_start_s
from audit.classroom.walks_in_file import FoundWalk, Recording
from audit.roster import RosterEntry
from audit.settings import GradingSettings
from audit.words import sentence
from audit.words.figures import Listed

Part = tuple[Recording, FoundWalk]


@dataclass(frozen=True, slots=True, kw_only=True)
class HandedIn:
    """One attempt with the recordings, and the walks in them, that are its own.

    ``parts`` holds (recording, walk): several where one walk lies in two files, none
    where nothing was handed in.
    """

    entry: RosterEntry
    parts: tuple[tuple[Recording, FoundWalk], ...] = ()
    problem: str | None = None
    files: tuple[str, ...] = ()


def each_its_own(
    handed: Sequence[HandedIn], lanes: Sequence[Lane], settings: GradingSettings
) -> tuple[list[HandedIn], list[ClassFinding]]:
    """Settle rows with several walks: parts of one walk stay together, others go one by one.

    The files that a row names are parts of its one walk, unless another row names them
    too. Of several walks a row has one of its plan's day, where there is any; of those the
    one that begins at its start, else one that fits no other lane better, else the next in
    order of time. Walks that nobody has are asked about.
    """
    settled: list[HandedIn] = []
    given: set[tuple[str, float]] = set()
    told: list[ClassFinding] = []
    for one in handed:
        rivals = [other for other in handed if set(other.files) & set(one.files)]
        if len(one.parts) <= 1 or (len(rivals) == 1 and _one_walk(one, settings.part_gap_s)):
            settled.append(one)
            continue
        free = [part for part in one.parts if _mark(part) not in given] or list(one.parts)
        own = min(free, key=partial(_unlike, one.entry, lanes=lanes, settings=settings))
        given.add(_mark(own))
        settled.append(replace(one, parts=(own,), files=(own[0].file,)))
        if one is rivals[-1]:
            told += _left_over(rivals, given)
    return settled, told


def _one_walk(one: HandedIn, part_gap_s: float) -> bool:
    """Tell whether several walks are parts of one: files that were named, or that go on."""
    if any(walk.part is not None for _, walk in one.parts):
        return False
    if one.entry.files:
        return True
    spans = [walk.span_s for _, walk in one.parts]
    if None in spans:
        return False
    known = sorted(span for span in spans if span is not None)
    return all(0.0 <= later[0] - first[1] <= part_gap_s for first, later in pairwise(known))


def _unlike(
    entry: RosterEntry, part: Part, lanes: Sequence[Lane], settings: GradingSettings
) -> tuple[float, ...]:
    """Give what speaks against a walk being that of a row, what weighs most first.

    A clock time returns each day, so that the plan's day comes before it; but of a plan that
    was used again no day is nearer than another. Next to it the walk that begins then,
    whatever its lane: a lane may have been taken wrongly, and is asked about.
    """
    walk = part[1]
    if walk.span_s is None:
        return (0.0,)
    begun_s = walk.span_s[0]
    own = lane_called(entry.lane, [(lane.name, lane.card.name) for lane in lanes])
    start_s = roster_start_s(entry.start, begun_s)
    off_s = 0.0 if start_s is None else abs(start_s - begun_s)
    elsewhere = own is not None and better_lane(walk.fits, own, settings) is not None
    days_off = _days_off(entry, own, begun_s, lanes)
    return (
        days_off != 0,
        off_s > settings.clock_wrong_s,
        elsewhere,
        off_s,
        days_off,
        begun_s,
    )


def _days_off(entry: RosterEntry, own: str | None, begun_s: float, lanes: Sequence[Lane]) -> int:
    """Give how many days from its plan's a walk is; 0 where the row's start names the day."""
    if isinstance(entry.start, dt.datetime):
        return 0
    planned = {days_from_plan(lane, begun_s) for lane in lanes if own in (None, lane.name)}
    return min((abs(days) for days in planned if days is not None), default=0)


def _mark(part: Part) -> tuple[str, float]:
    """Give what a walk is known by: a copy of its recording under another name holds the same."""
    span = part[1].span_s
    return part[0].digest or part[0].file, 0.0 if span is None else span[0]


def _left_over(rivals: Sequence[HandedIn], given: set[tuple[str, float]]) -> list[ClassFinding]:
    every = {_mark(part) for row in rivals for part in row.parts}
    left = sorted(every - given)
    if not left:
        return []
    message = sentence(
        "shows-several-walks",
        files=Listed(things=sorted({part[0].file for row in rivals for part in row.parts})),
        walks=str(len(every)),
        known=str(len(every) - len(left)),
        rows=", ".join(dict.fromkeys(row.entry.name for row in rivals)),
        left=len(left),
    )
    return [ClassFinding(what="walks-in-one-file", message=message, question=True)]
