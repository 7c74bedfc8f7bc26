"""Plans and recordings told apart by what they are, whatever their order."""

from __future__ import annotations

import contextlib
import re
import zlib
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from audit.cli.endings import WrongUseError
from audit.errors import InputRefusedError, Problem
from audit.readers.gpx_bytes import pieces_of
from audit.readers.plain_text import writable
from audit.readers.plan_file import holds_plan
from audit.settings import ReadingSettings
from audit.words import Sentence, sentence

_POINT = re.compile(rb"<(?:\w+:)?(trkpt|rtept|wpt)\b")
_LONGEST_TAG = 40
_RECORDINGS = (".gpx", ".gpx.gz", ".xml")


@dataclass(frozen=True, slots=True, kw_only=True)
class Sorted:
    """What the files were taken for, and what is to be said of it."""

    plans: tuple[Path, ...]
    tracks: tuple[Path, ...]
    said: tuple[Sentence, ...]


def sort_files(paths: Sequence[Path]) -> Sorted:
    """Tell plans from recordings; a folder stands for its recordings, else for its plans.

    A GPX file with track points is a recording, unless it also holds a route, and comes
    before any other plan or recording: then it is the plan.

    Raises
    ------
    InputRefusedError
        With every file that is not there.
    WrongUseError
        Where there is no plan.
    """
    plans: list[Path] = []
    tracks: list[Path] = []
    files, said = _each(paths)
    for path in files:
        kind, why = _kind(path, first=not plans and not tracks)
        (plans if kind == "plan" else tracks).append(path)
        if why:
            said.append(sentence("class-terminal-taken", file=path.name, kind=kind, why=why))
    if not plans:
        message = (
            "There is no plan among these files. Give the plan of each lane, then the "
            "recordings: leg-audit grade lane.toml recordings/*.gpx"
        )
        raise WrongUseError(message)
    return Sorted(plans=tuple(plans), tracks=tuple(tracks), said=tuple(said))


def labels(paths: Sequence[Path]) -> list[str]:
    """Name recordings by their files, with their folders where two are called the same.

    Signs that no report can hold are replaced, as they are in the cells of a roster.
    """
    times = Counter(path.name for path in paths)
    return [
        writable(path.name if times[path.name] == 1 else f"{path.parent.name}/{path.name}")
        for path in paths
    ]


def _each(paths: Sequence[Path]) -> tuple[list[Path], list[Sentence]]:
    """Give every file once, and what is to be said of the folders.

    A folder stands for the recordings in it, in order of their names; one without any for
    its plans.
    """
    files: list[Path] = []
    said: list[Sentence] = []
    problems = []
    named = {path.resolve() for path in paths}
    for path in paths:
        if path.is_dir():
            inside = [one for one in sorted(path.iterdir()) if one.is_file()]
            found = [one for one in inside if one.name.lower().endswith(_RECORDINGS)]
            plans = [one for one in inside if one not in found and holds_plan(one)]
            beside = [one.name for one in plans if one.resolve() not in named]
            if found and beside:
                said.append(
                    sentence("class-terminal-aside", folder=path.name, plans=", ".join(beside))
                )
            if not found and not plans:
                rule = "is a folder without a plan or a recording"
                problems.append(_problem(path, rule, "Give the files, or the folder they are in."))
            files += found or plans
        elif path.exists():
            files.append(path)
        else:
            problems.append(_problem(path, "there is no such file", "Check the name."))
    if problems:
        raise InputRefusedError(problems)
    once = list({path.resolve(): path for path in reversed(files)}.values())[::-1]
    return once, said


def _problem(path: Path, rule: str, remedy: str) -> Problem:
    return Problem(file=str(path), place="", value="", rule=rule, remedy=remedy)


def _kind(path: Path, *, first: bool) -> tuple[str, str]:
    """Give plan or recording, and why where that may be asked, as the message calls it."""
    points = _points(path)
    if points is None:
        return "plan", ""
    if "trkpt" in points:
        if "rtept" in points and first:
            return "plan", "both-first"
        return "recording", "route-aside" if "rtept" in points else ""
    if points:
        return "plan", "no-track"
    return "recording", "no-points"


def _points(path: Path) -> set[str] | None:
    """Give the kinds of points that a GPX file holds; None where it is no GPX at all."""
    kinds: set[str] = set()
    before, is_markup = b"", None
    with contextlib.suppress(InputRefusedError, zlib.error):  # whoever reads it says why
        for piece in pieces_of(path, ReadingSettings()):
            if is_markup is None:
                is_markup = piece.lstrip(b"\xef\xbb\xbf \t\r\n").startswith((b"<", b"\xff\xfe"))
                if not is_markup and not path.name.lower().endswith(_RECORDINGS):
                    return None
            kinds |= {one.decode() for one in _POINT.findall(before + piece)}
            if "trkpt" in kinds:
                break  # by the schema, routes and waypoints come before tracks
            before = piece[-_LONGEST_TAG:]
    return kinds
