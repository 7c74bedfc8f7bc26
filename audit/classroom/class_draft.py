"""The class before anybody is graded: who has which walk of which lane, and what to ask."""

from __future__ import annotations

import dataclasses
import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass, field

from audit.areas import Area
from audit.classroom.batch_clock import BatchClock, by_first_crossing
from audit.classroom.class_result import ClassFinding
from audit.classroom.clocks_asked import clocks_asked
from audit.classroom.days_asked import days_asked
from audit.classroom.each_its_own import HandedIn
from audit.classroom.handed_in import by_file, by_roster, check_roster
from audit.classroom.joined_files import join_parts
from audit.classroom.lane import Lane
from audit.classroom.lane_fit import better_lane
from audit.classroom.lane_names import lane_called
from audit.classroom.punches_of import check_punches, codes_left_over, punches_of
from audit.classroom.standard_fit import lanes_with_fewer, standard_on
from audit.classroom.walk_time import roster_start_s
from audit.classroom.walker_idents import idents
from audit.classroom.walker_result import LaneFit
from audit.classroom.walker_task import WalkerTask
from audit.classroom.walks_in_file import Recording, part_of, put_forward, put_together
from audit.grading.fingerprint import digest
from audit.roster import PunchList, Roster, RosterEntry
from audit.settings import Settings
from audit.standard import Standard
from audit.words import PLAIN_ENGLISH, Words, sentence
from audit.words.figures import Listed, Percent

OTHER_LANE = "other-lane"
"""What the question about a walk that fits another lane better is called."""
PERHAPS_TWO = "perhaps-two-walks"
"""What the question about a walk that may also be two is called."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ClassInputs:
    """What a class is graded from.

    ``shift_s`` is None where the clocks are to be put right by the first crossing of the
    start; ``private`` leaves names out; ``words`` are those of each walker's debrief.
    """

    lanes: tuple[Lane, ...]
    recordings: tuple[Recording, ...]
    standard: Standard
    version: str
    name: str = ""
    roster: Roster | None = None
    punches: PunchList | None = None
    shift_s: float | None = 0.0
    private: bool = False
    roads: tuple[Area, ...] = ()
    words: Words = PLAIN_ENGLISH
    settings: Settings = field(default_factory=Settings)


@dataclass(frozen=True, slots=True, kw_only=True)
class ClassDraft:
    """The tasks of a class, in its order, and what was found before any of them is done."""

    inputs: ClassInputs
    tasks: tuple[WalkerTask, ...]
    findings: tuple[ClassFinding, ...]
    clock: BatchClock
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class _Settled:
    """One attempt with its lane and its clocks."""

    handed: HandedIn
    lane: Lane
    fits: tuple[LaneFit, ...]
    left_s: float | None
    start_s: float | None


def draft_class(inputs: ClassInputs) -> ClassDraft:
    """Give out recordings and lanes, put the clocks right, and make the tasks.

    Raises
    ------
    InputRefusedError
        For a roster or list of codes that does not fit the class, every problem at once.
    """
    names = [(lane.name, lane.card.name) for lane in inputs.lanes]
    findings: list[ClassFinding] = []
    if inputs.roster is None:
        handed = by_file(inputs.recordings)
        handed, findings = join_parts(handed, inputs.lanes, inputs.settings.grading)
        _check_punches(inputs, [one.entry for one in handed])
    else:
        _check_punches(inputs, inputs.roster.entries)
        check_roster(inputs.roster, names, [one.file for one in inputs.recordings])
        handed, findings = by_roster(
            inputs.roster, inputs.recordings, inputs.lanes, inputs.settings.grading
        )
    settled = [_settled(one, inputs) for one in handed]
    clock = _clock(settled, inputs)
    made = idents([(one.entry.name, one.entry.attempt) for one in handed])
    if inputs.private:
        made = [f"walker-{number:02d}" for number in range(1, len(handed) + 1)]
    tasks = tuple(
        _task(one, ident, clock, inputs) for one, ident in zip(settled, made, strict=True)
    )
    to_find = {lane.name: len(lane.card.legs) for lane in inputs.lanes}
    notes = [*inputs.standard.notes, *lanes_with_fewer(to_find, inputs.standard)]
    for source in (inputs.roster, inputs.punches):
        notes += source.notes if source is not None else ()
    if clock.shift_s:
        minutes, seconds = divmod(round(abs(clock.shift_s)), 60)
        later = "yes" if clock.shift_s > 0.0 else "no"
        shifted = {"minutes": minutes, "seconds": seconds, "later": later}
        notes.append(sentence("shows-shifted", **shifted, ground=clock.ground))
    elif inputs.shift_s is None and clock.pairs == 0:
        why = "roster" if inputs.roster is None else "starts"
        notes.append(sentence("shows-not-shifted", why=why))
    findings += _twice(inputs.recordings)
    asked = [*findings, *(asked for task in tasks for asked in _asked(task))]
    asked += [
        _perhaps_two(task)
        for task, one in zip(tasks, handed, strict=True)
        if any(walk.perhaps_two for _, walk in one.parts)
    ]
    asked += clocks_asked(tasks, inputs.settings.grading)
    asked += days_asked(tasks, inputs.lanes)
    asked += _codes_asked(settled, tasks, inputs.punches)
    return ClassDraft(
        inputs=inputs, tasks=tasks, findings=tuple(asked), clock=clock, notes=tuple(notes)
    )


def _check_punches(inputs: ClassInputs, walkers: Sequence[RosterEntry]) -> None:
    if inputs.punches is not None:
        by_roster = inputs.roster is not None
        check_punches(inputs.punches, inputs.lanes, walkers, by_roster=by_roster)


def _settled(handed: HandedIn, inputs: ClassInputs) -> _Settled:
    """Give an attempt its lane: the roster's, else the one that its walk fits."""
    fits = handed.parts[0][1].fits if handed.parts else ()
    if len(handed.parts) > 1:
        fits = _together([part[1].fits for part in handed.parts])
    names = [(lane.name, lane.card.name) for lane in inputs.lanes]
    named = lane_called(handed.entry.lane, names) or (fits[0].lane if fits else names[0][0])
    lane = next(lane for lane in inputs.lanes if lane.name == named)
    left = [at for _, walk in handed.parts if (at := walk.left(lane.name)) is not None]
    left_s = min(left) if left else None
    spans = [walk.span_s[0] for _, walk in handed.parts if walk.span_s is not None]
    near_s = left_s if left_s is not None else min(spans, default=None)
    if near_s is not None:
        near_s += handed.entry.shift_s or 0.0
    return _Settled(
        handed=handed,
        lane=lane,
        fits=fits,
        left_s=left_s,
        start_s=roster_start_s(handed.entry.start, near_s),
    )


def _together(fits: Sequence[tuple[LaneFit, ...]]) -> tuple[LaneFit, ...]:
    """Give the fit of parts to each lane: a point passed in any of them is passed."""
    whole = []
    for of_lane in fits[0]:
        same = [next(fit for fit in part if fit.lane == of_lane.lane) for part in fits]
        passed = min(sum(fit.passed for fit in same), 1.0)
        whole.append(LaneFit(lane=of_lane.lane, passed=passed, cost=min(f.cost for f in same)))
    return tuple(sorted(whole, key=lambda fit: (fit.cost, -fit.passed)))


def _clock(settled: Sequence[_Settled], inputs: ClassInputs) -> BatchClock:
    if inputs.shift_s is not None:
        return BatchClock(shift_s=inputs.shift_s, ground=sentence("shows-shift-asked"))
    pairs = [
        (one.start_s, one.left_s)
        for one in settled
        if one.start_s is not None
        and one.left_s is not None
        # A clock that has its own shift says nothing of those of the others.
        and one.handed.entry.shift_s is None
    ]
    return by_first_crossing(pairs) or BatchClock(ground=sentence("shows-shift-nothing"))


def _task(one: _Settled, ident: str, clock: BatchClock, inputs: ClassInputs) -> WalkerTask:
    entry, lane, grading = one.handed.entry, one.lane, inputs.settings.grading
    shift_s = clock.shift_s if entry.shift_s is None else entry.shift_s
    tracks = [
        part_of(recording.track, walk.part)
        for recording, walk in one.handed.parts
        if recording.track is not None
    ]
    track = put_forward(put_together(tracks), shift_s) if tracks else None
    notes = []
    if inputs.roster is not None and not entry.lane:
        notes.append(sentence("shows-lane-fitted", lane=lane.name))
    if entry.shift_s is not None and track is not None:
        later = "yes" if entry.shift_s > 0.0 else "no"
        minutes, seconds = divmod(round(abs(entry.shift_s)), 60)
        notes.append(sentence("shows-own-shift", minutes=minutes, seconds=seconds, later=later))
    if one.handed.problem is not None and track is not None:
        notes.append(sentence("shows-another-unusable", problem=one.handed.problem))
    task = WalkerTask(
        ident=ident,
        name=ident.replace("-", " ").capitalize() if inputs.private else entry.name,
        lane=lane.name,
        plan=lane.plan,
        standard=standard_on(lane.plan, inputs.standard),
        settings=inputs.settings,
        attempt=entry.attempt,
        device="" if inputs.private else entry.device,
        compass=entry.compass,
        tracks=one.handed.files,
        track=track,
        problem=one.handed.problem if track is None else None,
        left_s=None if one.left_s is None else one.left_s + shift_s,
        start_s=one.start_s,
        shift_s=shift_s if track is not None else 0.0,
        day_named=isinstance(entry.start, dt.datetime),
        punches=punches_of(entry, lane, inputs.punches),
        own_lane_fit=next((fit for fit in one.fits if fit.lane == lane.name), None),
        better_lane=better_lane(one.fits, lane.name, grading) if one.fits else None,
        notes=tuple(notes),
        private=inputs.private,
        day=lane.card.date,
        roads=inputs.roads,
        words=inputs.words,
    )
    return dataclasses.replace(task, key=digest("walker", task, inputs.version, task.tracks))


def _twice(recordings: Sequence[Recording]) -> list[ClassFinding]:
    """Ask about recordings that are one and the same under two names."""
    by_content: dict[str, list[str]] = {}
    for one in recordings:
        if one.digest:
            by_content.setdefault(one.digest, []).append(one.file)
    return [
        ClassFinding(
            what="same-recording",
            message=sentence("shows-twice", files=Listed(things=files)),
            question=True,
        )
        for files in by_content.values()
        if len(files) > 1
    ]


def _asked(task: WalkerTask) -> list[ClassFinding]:
    """Give what is asked about one attempt: its lane, its file."""
    asked = []
    if task.better_lane is not None and task.own_lane_fit is not None:
        own, better = task.own_lane_fit, task.better_lane
        message = sentence(
            "shows-other-lane",
            walker=task.name,
            better=better.lane,
            lane=task.lane,
            passed=Percent(share=better.passed),
            own=Percent(share=own.passed),
        )
        asked.append(_finding(OTHER_LANE, task, message, question=True))
    if task.problem is not None:
        message = sentence("shows-unusable", walker=task.name, problem=task.problem)
        asked.append(_finding("broken-file", task, message))
    elif task.track is None:
        brought = "shows-codes-alone" if task.punches else "shows-no-recording"
        message = sentence(brought, walker=task.name)
        asked.append(_finding("no-recording", task, message))
    return asked


def _codes_asked(
    settled: Sequence[_Settled], tasks: Sequence[WalkerTask], punches: PunchList | None
) -> list[ClassFinding]:
    """Ask about codes of an attempt, or of a lane, that their walker is not graded on."""
    attempts = [(one.handed.entry, one.lane) for one in settled]
    left = () if punches is None else codes_left_over(attempts, punches)
    asked = []
    for name in dict.fromkeys(one.name.casefold() for one in left):
        lines = [str(one.line) for one in left if one.name.casefold() == name]
        task = next(
            task
            for (entry, _), task in zip(attempts, tasks, strict=True)
            if entry.name.casefold() == name
        )
        rows = {"count": len(lines), "lines": Listed(things=lines)}
        message = sentence("shows-codes-left-over", walker=task.name, **rows)
        asked.append(_finding("codes-left-over", task, message, question=True))
    return asked


def _perhaps_two(task: WalkerTask) -> ClassFinding:
    message = sentence("shows-perhaps-two", walker=task.name)
    return _finding(PERHAPS_TWO, task, message, question=True)


def _finding(what: str, task: WalkerTask, message: str, *, question: bool = False) -> ClassFinding:
    return ClassFinding(
        what=what, message=message, lane=task.lane, walkers=(task.ident,), question=question
    )
