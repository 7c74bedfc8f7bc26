"""Which recording is whose: the roster against the files, and what does not come out even."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field

from audit.classroom.class_result import ClassFinding
from audit.classroom.each_its_own import HandedIn, each_its_own
from audit.classroom.lane import Lane
from audit.classroom.lane_names import lane_called
from audit.classroom.walks_in_file import Recording
from audit.errors import InputRefusedError, Problem
from audit.roster import Roster, RosterEntry
from audit.settings import GradingSettings
from audit.words import sentence
from audit.words.figures import Listed, Percent

_SUFFIX = re.compile(r"\.(?:gpx|xml)(?:\.gz)?$|\.gz$", re.IGNORECASE)


@dataclass(slots=True)
class _Sorting:
    """What is known while files are given out."""

    recordings: dict[str, Recording]
    handed: list[HandedIn] = field(default_factory=list)
    findings: list[ClassFinding] = field(default_factory=list)
    taken: set[str] = field(default_factory=set)


def stem_of(file: str) -> str:
    """Give the name of a recording without what says that it is one."""
    return _SUFFIX.sub("", file)


def check_roster(roster: Roster, lanes: Sequence[tuple[str, str]], files: Sequence[str]) -> None:
    """Refuse a roster that names lanes or files that nobody gave, with all of them at once.

    Raises
    ------
    InputRefusedError
        With every such row.
    """
    problems = []
    for entry in roster.entries:
        if entry.lane and lane_called(entry.lane, lanes) is None:
            rule = "is no lane of this class"
            remedy = f"Lanes are named after their plans: {', '.join(name for name, _ in lanes)}."
            problems.append(_problem(roster, entry, "lane", entry.lane, rule, remedy))
        for file in entry.files:
            if len(_called(file, files)) > 1:
                rule = "is the name of several recordings that were given"
                remedy = "Give the recordings different names."
                problems.append(_problem(roster, entry, "file", file, rule, remedy))
    if problems:
        raise InputRefusedError(problems)


def _problem(
    roster: Roster, entry: RosterEntry, column: str, value: str, rule: str, remedy: str
) -> Problem:
    return Problem(
        file=roster.source,
        place=f"line {entry.line}, {column}",
        value=f'"{value}"',
        rule=rule,
        remedy=remedy,
    )


def by_roster(
    roster: Roster,
    recordings: Sequence[Recording],
    lanes: Sequence[Lane],
    settings: GradingSettings,
) -> tuple[list[HandedIn], list[ClassFinding]]:
    """Give each row its recordings; what is left over, or missing, is told."""
    sorting = _Sorting(recordings={one.file: one for one in recordings})
    for entry in roster.entries:
        names = entry.files or _by_device(entry, list(sorting.recordings))
        files = [file for name in names for file in _called(name, list(sorting.recordings))]
        missing = [name for name in entry.files if not _called(name, list(sorting.recordings))]
        if missing:
            sorting.findings.append(_file_missing(entry, missing))
        sorting.taken.update(files)
        sorting.handed.append(_handed_in(entry, [sorting.recordings[one] for one in files]))
    for file, recording in sorting.recordings.items():
        if file not in sorting.taken:
            sorting.findings.append(_nobodys(recording))
    handed, asked = each_its_own(sorting.handed, lanes, settings)
    return handed, [*sorting.findings, *asked]


def by_file(recordings: Sequence[Recording]) -> list[HandedIn]:
    """Give each walk in each recording an entry named after its file."""
    handed = []
    for recording in recordings:
        name = stem_of(recording.file)
        if recording.problem is not None:
            entry = RosterEntry(name=name)
            handed.append(HandedIn(entry=entry, problem=recording.problem, files=(recording.file,)))
        for number, walk in enumerate(recording.walks, start=1):
            entry = RosterEntry(name=name, attempt=number)
            handed.append(
                HandedIn(entry=entry, parts=((recording, walk),), files=(recording.file,))
            )
    return handed


def _called(name: str, files: Sequence[str]) -> list[str]:
    """Give the files of a name, whatever its capitals, with or without its suffix."""
    wanted = name.casefold()
    exact = [file for file in files if file.casefold() == wanted]
    return exact or [file for file in files if stem_of(file).casefold() == wanted]


def _by_device(entry: RosterEntry, files: Sequence[str]) -> tuple[str, ...]:
    """Give the files whose name holds the number of the device as a word of its own."""
    if not entry.device:
        return ()
    word = re.compile(rf"(?<![^\W_]){re.escape(entry.device)}(?![^\W_])", re.IGNORECASE)
    return tuple(file for file in files if word.search(stem_of(file)))


def _handed_in(entry: RosterEntry, recordings: Sequence[Recording]) -> HandedIn:
    problems = [one.problem for one in recordings if one.problem is not None]
    return HandedIn(
        entry=entry,
        parts=tuple((one, walk) for one in recordings for walk in one.walks),
        problem=problems[0] if len(problems) == 1 else " ".join(problems) or None,
        files=tuple(one.file for one in recordings),
    )


def _file_missing(entry: RosterEntry, missing: Sequence[str]) -> ClassFinding:
    files = Listed(things=missing)
    message = sentence("shows-file-missing", walker=entry.name, files=files)
    return ClassFinding(what="recording-missing", message=message, lane=entry.lane or None)


def _nobodys(recording: Recording) -> ClassFinding:
    fits = ""
    if recording.walks:
        best = recording.walks[0].fits[0]
        fits = sentence("shows-fits", lane=best.lane, passed=Percent(share=best.passed))
    message = sentence("shows-nobodys", file=recording.file, fits=fits)
    return ClassFinding(what="recording-without-walker", message=message, question=True)
