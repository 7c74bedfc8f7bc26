"""Rows of a roster that share recordings: which walk is whose, and what is left over."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from audit.classroom.records import ClassFinding
from audit.classroom.walk_time import roster_start_s
from audit.classroom.walks_in_file import FoundWalk, Recording
from audit.roster import RosterEntry
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
    handed: Sequence[HandedIn], part_gap_s: float
) -> tuple[list[HandedIn], list[ClassFinding]]:
    """Settle rows with several walks: parts of one walk stay together, others go one by one.

    The files that a row names are parts of its one walk, unless another row names them
    too. Of several walks a row has the one that begins nearest to its start, else the
    next in order of time. Walks that nobody has are asked about.
    """
    settled: list[HandedIn] = []
    given: set[tuple[str, float]] = set()
    told: list[ClassFinding] = []
    for one in handed:
        rivals = [other for other in handed if set(other.files) & set(one.files)]
        if len(one.parts) <= 1 or (len(rivals) == 1 and _one_walk(one, part_gap_s)):
            settled.append(one)
            continue
        free = [part for part in one.parts if _mark(part) not in given] or list(one.parts)
        own = min(free, key=lambda part, row=one: _off_s(row.entry, part))  # type: ignore[misc]
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


def _off_s(entry: RosterEntry, part: Part) -> tuple[float, float]:
    """Give how far from the row's start a walk begins, and when, for those without a start."""
    span = part[1].span_s
    if span is None:
        return 0.0, 0.0
    start_s = roster_start_s(entry.start, span[0])
    return (0.0 if start_s is None else abs(start_s - span[0])), span[0]


def _mark(part: Part) -> tuple[str, float]:
    span = part[1].span_s
    return part[0].file, 0.0 if span is None else span[0]


def _left_over(rivals: Sequence[HandedIn], given: set[tuple[str, float]]) -> list[ClassFinding]:
    every = {_mark(part) for row in rivals for part in row.parts}
    left = sorted(every - given)
    if not left:
        return []
    message = sentence(
        "shows-several-walks",
        files=Listed(things=list(dict.fromkeys(file for file, _ in sorted(every)))),
        walks=str(len(every)),
        known=str(len(every) - len(left)),
        rows=", ".join(dict.fromkeys(row.entry.name for row in rivals)),
        left=len(left),
    )
    return [ClassFinding(what="walks-in-one-file", message=message, question=True)]
