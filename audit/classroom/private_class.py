"""A class without names: of people, devices and files, and without the hours of the day."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from audit.classroom.class_draft import ClassDraft
from audit.classroom.class_result import ClassResult
from audit.classroom.handed_in import stem_of
from audit.classroom.walker_result import LegResult, Trace, WalkerResult
from audit.track import calls_itself_simulated
from audit.words import Sentence, sentence
from audit.words.figures import Listed


def private_class(result: ClassResult, draft: ClassDraft) -> ClassResult:
    """Give the class as it may be shown: walkers by number, times from each one's start.

    Traces are cropped to the legs. Compass numbers stay: they are the school's.
    """
    called = _pseudonyms(draft)
    return replace(
        result,
        walkers=tuple(_private(walker, called) for walker in result.walkers),
        findings=tuple(
            replace(finding, message=_told(finding.message, called)) for finding in result.findings
        ),
        notes=tuple(_told(note, called) for note in result.notes),
    )


def _pseudonyms(draft: ClassDraft) -> dict[str, str]:
    """Give what stands for each name, the longest first, so that no part of a name is left."""
    called = {
        recording.file: f"recording {number}"
        for number, recording in enumerate(draft.inputs.recordings, start=1)
    }
    entries = draft.inputs.roster.entries if draft.inputs.roster is not None else ()
    if not entries:
        called |= {stem_of(file): told for file, told in called.items()}
    for entry, task in zip(entries, draft.tasks, strict=False):
        called.setdefault(entry.name, task.name)
        called |= {entry.device: "a device"} if entry.device else {}
    for entry in entries:
        called |= {file: "a recording" for file in entry.files if file not in called}
    return dict(sorted(called.items(), key=lambda pair: -len(pair[0])))


def _told(text: str, called: Mapping[str, str]) -> str:
    """Put what stands for it in place of each name, where it is no part of a longer word."""
    if not called:
        return text
    if isinstance(text, Sentence):
        return sentence(
            text.ident, **{name: _told_value(one, called) for name, one in text.values.items()}
        )
    names = "|".join(re.escape(name) for name in called)
    return re.sub(rf"(?<!\w)(?:{names})(?!\w)", lambda found: called[found[0]], text)


def _told_value(value: object, called: Mapping[str, str]) -> object:
    """Do so in what a sentence holds; its figures name nobody."""
    if isinstance(value, str):
        return _told(value, called)
    if isinstance(value, Listed):
        return replace(value, things=[_told_value(one, called) for one in value.things])
    return value


def _private(walker: WalkerResult, called: Mapping[str, str]) -> WalkerResult:
    trace, first = _cropped(walker)
    return replace(
        walker,
        device="",
        tracks=(),
        start_s=None,
        problem=None if walker.problem is None else _told(walker.problem, called),
        notes=tuple(_told(note, called) for note in walker.notes),
        time=replace(walker.time, begun_s=None, ended_s=None),
        track=None
        if walker.track is None
        else replace(
            walker.track, start_s=None, end_s=None, notes=calls_itself_simulated(walker.track.notes)
        ),
        trace=trace,
        legs=tuple(_leg(leg, first) for leg in walker.legs),
    )


def _cropped(walker: WalkerResult) -> tuple[Trace | None, int]:
    """Give the trace from leaving the start to the last claim, its times from its own start."""
    trace = walker.trace
    if trace is None:
        return None, 0
    firsts = [leg.trace_from for leg in walker.legs if leg.trace_from is not None]
    lasts = [leg.trace_to for leg in walker.legs if leg.trace_to is not None]
    if not firsts:
        return None, 0
    part = slice(min(firsts), max(lasts))
    time_s = None
    if trace.time_s is not None:
        time_s = tuple(one - trace.time_s[part.start] for one in trace.time_s[part])
    return (
        Trace(time_s=time_s, east_m=trace.east_m[part], north_m=trace.north_m[part]),
        part.start,
    )


def _leg(leg: LegResult, first: int) -> LegResult:
    point = leg.point
    if point.approach is not None:
        point = replace(point, approach=replace(point.approach, time_s=None, fix_s=None))
    if point.punch is not None:
        point = replace(point, punch=replace(point.punch, time="", noted_s=None))
    return replace(
        leg,
        point=point,
        started_s=None,
        claimed_s=None,
        trace_from=None if leg.trace_from is None else leg.trace_from - first,
        trace_to=None if leg.trace_to is None else leg.trace_to - first,
    )
