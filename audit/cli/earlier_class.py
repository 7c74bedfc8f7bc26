"""The class that stands in the folder of a class already, where it is another one."""

from __future__ import annotations

import json
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

from audit import words
from audit.classroom.class_draft import ClassDraft
from audit.grading.fingerprint import fingerprint
from audit.moments import utc_text
from audit.track import Track

_DOCUMENT = "class.json"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Class:
    """What tells one class from another.

    ``days`` are those on which its walks were begun, by the document; by the recordings all
    that they reach over, since the moment of setting out is not known yet.
    """

    name: str
    fingerprint: str
    planned: tuple[str, ...]
    walkers: frozenset[str]
    days: frozenset[str]

    def is_like(self, other: _Class) -> bool:
        """Tell whether it is the same class again, perhaps with a corrected file."""
        same = (self.name, self.fingerprint, self.planned, self.walkers) == (
            other.name, other.fingerprint, other.planned, other.walkers
        )  # fmt: skip
        return same and not (self.days and other.days and self.days.isdisjoint(other.days))


def earlier_class(folder: Path, draft: ClassDraft) -> str | None:
    """Say which class in a folder is about to be replaced by quite another; None where none is."""
    document = folder / _DOCUMENT
    if not document.is_file():
        return None
    try:
        earlier = _of_document(json.loads(document.read_text(encoding="utf-8")))
    except (OSError, ValueError, LookupError, TypeError, AttributeError):
        return words.say("class-terminal-replaced-unknown", file=str(document))
    if earlier.is_like(_of_draft(draft)):
        return None
    days = sorted(earlier.days) or list(earlier.planned)
    return words.say(
        "class-terminal-replaced",
        folder=str(folder),
        name=earlier.name,
        days=", ".join(days) or "none",
        walkers=len(earlier.walkers),
        fingerprint=earlier.fingerprint,
    )


def _of_document(told: dict[str, Any]) -> _Class:
    lanes, walkers = told["course"]["lanes"], told["walkers"]
    return _Class(
        name=str(told["name"]),
        fingerprint=str(told["fingerprint"]),
        planned=_in_order(lane["date"] for lane in lanes),
        walkers=frozenset(str(one["ident"]) for one in walkers),
        days=frozenset(str(one["began"])[:10] for one in walkers if one["began"]),
    )


def _of_draft(draft: ClassDraft) -> _Class:
    inputs = draft.inputs
    tracks = [task.track for task in draft.tasks if task.track is not None]
    days = {day for track in tracks for day in _days(track)}
    dates = [lane.card.date for lane in inputs.lanes]
    return _Class(
        name=inputs.name or ", ".join(dict.fromkeys(lane.card.name for lane in inputs.lanes)),
        fingerprint=fingerprint(
            inputs.standard, tuple(lane.plan for lane in inputs.lanes), inputs.version
        ),
        planned=_in_order(None if date is None else date.isoformat() for date in dates),
        walkers=frozenset(task.ident for task in draft.tasks),
        days=frozenset() if inputs.private else frozenset(days),
    )


def _days(track: Track) -> tuple[str, ...]:
    """Give the days (UTC) of the first and the last fix: a walk may go on past midnight."""
    times = track.time_s[np.isfinite(track.time_s)]
    if len(times) == 0:
        return ()
    return tuple(utc_text(float(moment_s))[:10] for moment_s in (times.min(), times.max()))


def _in_order(dates: Iterable[str | None]) -> tuple[str, ...]:
    return tuple(sorted({date for date in dates if date}))
