"""What one process does for a class: look through a recording, and grade one walker.

Both are pure and can be sent anywhere: to another process here, or to another machine.
"""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from audit.classroom.lane import Lane, lane_of
from audit.classroom.walker_result import WalkerResult
from audit.classroom.walker_task import WalkerTask, grade_walker, refused_walker
from audit.classroom.walks_in_file import Recording, look_through
from audit.debriefing.privacy import private_debrief
from audit.debriefing.walk_day import track_date
from audit.errors import InputRefusedError
from audit.readers.gpx_track import read_track
from audit.reports.write import Wishes, report_texts
from audit.settings import Settings


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkerWork:
    """The result of one walker, and the files of his debrief by their names."""

    result: WalkerResult
    files: dict[str, str | bytes] = field(default_factory=dict)


def look(path: Path, label: str, lanes: Sequence[Lane], settings: Settings) -> Recording:
    """Read one recording and find the walks in it; what cannot be read is told in it."""
    try:
        before = _digest(path)
        track = read_track(path)
        digest = _digest(path)
    except InputRefusedError as refused:
        return Recording(file=label, problem=" ".join(str(one) for one in refused.problems))
    if digest != before:  # its result would be kept as that of another recording
        return Recording(file=label, problem=f"{label}: changed while it was read. Grade it again.")
    try:
        return replace(look_through(label, track, lanes, settings), digest=digest)
    except Exception as fault:  # noqa: BLE001 (one recording must not end a class)
        return Recording(file=label, problem=_fault(label, fault), digest=digest)


def _digest(path: Path) -> str:
    """Give what tells the content of a file; nothing for one that cannot be read."""
    try:
        with path.open("rb") as file:
            return hashlib.file_digest(file, "sha256").hexdigest()
    except OSError:
        return ""


def work(task: WalkerTask) -> WalkerWork:
    """Grade one walker and make the files of his debrief.

    A fault of the program on one recording is told of that walker; the class goes on.
    """
    own_day = None if task.track is None else track_date(task.track)
    lane = lane_of(task.lane, task.plan, own_day or task.day, task.settings)
    try:
        result, found = grade_walker(task, lane)
        if found is None:
            return WalkerWork(result=result)
        if task.private:
            found = private_debrief(found)
        files = report_texts(found, wishes=Wishes(words=task.words))
    except Exception as fault:  # noqa: BLE001 (one walker must not end a class)
        return WalkerWork(result=refused_walker(task, lane, _fault(task.name, fault)))
    pages = tuple(f"{result.folder}/{name}" for name in sorted(files))
    return WalkerWork(result=replace(result, pages=pages), files=files)


def _fault(whose: str, fault: Exception) -> str:
    return (
        f"{whose}: the program failed ({type(fault).__name__}: {fault}). Please tell its "
        "maintainers; nothing is held against the walker."
    )
