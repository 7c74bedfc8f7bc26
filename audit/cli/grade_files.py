"""From the files of a class to its grades on the terminal and in a folder."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from contextlib import AbstractContextManager, nullcontext
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from threading import Thread
from typing import TYPE_CHECKING

import audit
from audit import words
from audit.classroom.assemble import assemble
from audit.classroom.attempt_of_walker import attempts_of_class, whose_walk_is_asked
from audit.classroom.class_draft import ClassDraft, ClassInputs, draft_class
from audit.classroom.class_result import ClassResult
from audit.classroom.harder_legs import load_model
from audit.classroom.lane import Lane
from audit.classroom.lane_names import lane_names
from audit.classroom.private_class import private_class
from audit.classroom.standard_fit import lanes_with_fewer
from audit.classroom.walker_result import WalkerResult
from audit.classroom.walks_in_file import Recording
from audit.cli.class_papers import ClassPapers, lanes_of, read_papers
from audit.cli.class_pool import Processes, Progress
from audit.cli.earlier_class import earlier_class
from audit.cli.endings import WrongUseError
from audit.cli.kept_walkers import (
    forget_kept,
    forget_others,
    put_by,
    taken_up,
)
from audit.cli.left_from_before import left_from_before
from audit.cli.messages import say, say_note, speak_as, tell
from audit.cli.plans_and_tracks import Sorted, labels, sort_files
from audit.cli.walker_work import look, work
from audit.readers.course_settings import CourseOptions
from audit.readers.plain_text import writable
from audit.reports.appeal_sheets import appeal_sheets
from audit.reports.class_files import class_texts
from audit.reports.class_matrix import APPEALS
from audit.reports.class_terminal import render_class_terminal
from audit.reports.write import write_texts
from audit.settings import Settings
from audit.words import in_force, told
from audit.words.figures import Listed

if TYPE_CHECKING:
    from audit.cli.cluster import Cluster
    from audit.cli.records_files import OpenedRecords, RecordsWanted


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What one command line asks of a class beside its files."""

    roster: Path | None
    standard: str
    punches: Path | None
    folder: Path
    shift_s: float | None
    name: str
    private: bool
    cluster: str | None = None
    records: RecordsWanted | None = None
    words: Path | None = None
    roads: Path | None = None


def grade_files(
    files: Sequence[Path], asked: Asked, options: CourseOptions, processes: Processes
) -> ClassResult:
    """Grade a class in these processes, write everything, tell the short picture.

    Raises
    ------
    AuditError
        Where a plan, the roster, the standard or the codes are refused, or the results
        cannot be written. A recording that cannot be used ends nothing.
    """
    speak_as(asked.words)
    records = _opened(asked)
    sorted_files = _sorted(files, asked)
    papers = read_papers(
        sorted_files.plans, options, standard=asked.standard, roster=asked.roster,
        punches=asked.punches, roads=asked.roads,
    )  # fmt: skip
    _say_what_begins(papers, len(sorted_files.tracks))
    fewer = _say_where_points_lack(papers)
    _say_of_roads(papers, asked)
    with _workers(asked, processes) as workers:
        draft = _drafted(sorted_files.tracks, papers, asked, processes)
        if earlier := earlier_class(asked.folder, draft):
            say_note(earlier)
        _load_meanwhile(draft, processes)
        walkers = _graded(draft, asked.folder, workers)
    result = assemble(draft, walkers)
    attempts = [] if records is None else attempts_of_class(result, draft, records.pseudonym)
    asked_of = whose_walk_is_asked(result)
    if asked.private:
        result = private_class(result, draft)
        forget_kept(asked.folder)
    forget_others([task.key for task in draft.tasks], asked.folder)
    written = write_texts(asked.folder, class_texts(result), _made_from(files, asked))
    sheets = appeal_sheets(result)
    if sheets:
        write_texts(asked.folder / APPEALS, sheets)
    tell(render_class_terminal(result))
    for note in (*result.notes, *_notes_on(asked.folder, result, sheets)):
        if note not in fewer:
            say_note(note)
    say(
        words.say(
            "class-terminal-written",
            folder=str(asked.folder),
            files=", ".join(path.name for path in written),
            sheets=len(sheets),
            appeals=APPEALS,
        )
    )
    if records is not None:
        records.keep(attempts)
        _say_who_is_not_kept(result, asked_of)
    return result


def _made_from(files: Sequence[Path], asked: Asked) -> list[Path]:
    """Give the files that the results are made from, which no result may be written over."""
    beside = (asked.roster, asked.punches, asked.standard, asked.words, asked.roads)
    return [Path(one) for one in (*files, *beside) if one]


def _say_who_is_not_kept(result: ClassResult, asked_of: Collection[str]) -> None:
    """Say of whom the records keep nothing, for it is asked whose walk it is."""
    names = [one.name for one in result.walkers
             if one.state == "graded" and one.ident in asked_of]  # fmt: skip
    if names:
        walkers = Listed(things=list(dict.fromkeys(names))).shown(words.in_force())
        say_note(words.say("class-terminal-not-kept", walkers=walkers))


def _say_of_roads(papers: ClassPapers, asked: Asked) -> None:
    """Say where roads and the standard's rule for them do not come together."""
    if asked.roads is not None and not papers.roads:
        say_note(words.say("class-terminal-no-roads", file=asked.roads.name))
    if papers.roads and papers.standard.road_rule == "none":
        say_note(words.say("class-terminal-no-road-rule", standard=papers.standard.name))


def _notes_on(folder: Path, result: ClassResult, sheets: Collection[str]) -> list[str]:
    """Say what an earlier run has left in the folder; it stays, for nobody asked to drop it."""
    now = {"debriefs": {walker.ident for walker in result.walkers}, APPEALS: set(sheets)}
    return [
        words.say("class-terminal-old", folder=str(folder / part), count=str(len(left)))
        for part, names in now.items()
        if (left := left_from_before(names, folder / part))
    ]


def _opened(asked: Asked) -> OpenedRecords | None:
    """Open the records before the work, so that what is wrong there is said first."""
    if asked.records is None:
        return None
    if asked.private and asked.roster is None:
        message = "--records with --private needs a roster, which says whose walks they are."
        raise WrongUseError(message)
    from audit.cli.records_files import open_records  # noqa: PLC0415 (an extra)

    return open_records(asked.records)


def _workers(asked: Asked, processes: Processes) -> AbstractContextManager[Processes | Cluster]:
    """Give who grades: the processes here, or the machines of a cluster."""
    if asked.cluster is None:
        return nullcontext(processes)
    from audit.cli.cluster import Cluster  # noqa: PLC0415 (an extra)

    return Cluster(asked.cluster)


def _sorted(files: Sequence[Path], asked: Asked) -> Sorted:
    """Tell plans from recordings; a class without any has a roster at least."""
    found = sort_files(files)
    for line in found.said:
        say(told(line))
    if not found.tracks and asked.roster is None:
        message = (
            "There is no recording among these files, and no roster says who walked. Give GPX "
            "files, or the folder they are in, after the plans."
        )
        raise WrongUseError(message)
    return found


def _say_what_begins(papers: ClassPapers, recordings: int) -> None:
    say(
        words.say(
            "class-terminal-begun",
            lanes=len(papers.plans),
            names=", ".join(lane_names(papers.plans)),
            recordings=recordings,
            standard=papers.standard.name,
        )
    )


def _say_where_points_lack(papers: ClassPapers) -> list[str]:
    """Say before the work, and give, which lanes cannot have the points of the standard."""
    named = zip(lane_names(papers.plans), papers.plans, strict=True)
    notes = list(lanes_with_fewer({name: len(plan.legs) for name, plan in named}, papers.standard))
    for note in notes:
        say_note(note)
    return notes


def _load_meanwhile(draft: ClassDraft, processes: Processes) -> None:
    """Load the model of the legs while this process only waits for others to grade."""
    least = draft.inputs.settings.class_shows.least_leg_walkers
    if processes.jobs > 1 and len(draft.tasks) >= least:
        Thread(target=load_model, name="model of the legs", daemon=True).start()


def _drafted(
    tracks: Sequence[Path], papers: ClassPapers, asked: Asked, processes: Processes
) -> ClassDraft:
    settings = Settings()
    lanes = lanes_of(papers.plans, tracks, settings)
    return draft_class(
        ClassInputs(
            lanes=lanes,
            recordings=_look_through(tracks, lanes, settings, processes),
            standard=papers.standard,
            version=audit.__version__,
            name=writable(asked.name),
            roster=papers.roster,
            punches=papers.punches,
            shift_s=asked.shift_s,
            private=asked.private,
            roads=papers.roads,
            words=in_force(),
            settings=settings,
        )
    )


def _look_through(
    tracks: Sequence[Path], lanes: tuple[Lane, ...], settings: Settings, processes: Processes
) -> tuple[Recording, ...]:
    """Read all recordings and find the walks in them, in the order of the command."""
    items = list(zip(tracks, labels(tracks), strict=True))
    found: dict[int, Recording] = {}
    progress = Progress("class-terminal-looked-through", len(items))
    for place, recording in processes.over_all(
        partial(_look_at, lanes=lanes, settings=settings), items
    ):
        found[place] = recording
        progress.step(recording.file)
    progress.end()
    return tuple(found[place] for place in range(len(items)))


def _look_at(item: tuple[Path, str], lanes: tuple[Lane, ...], settings: Settings) -> Recording:
    return look(item[0], item[1], lanes, settings)


def _graded(draft: ClassDraft, folder: Path, workers: Processes | Cluster) -> list[WalkerResult]:
    """Grade all walkers, those that an earlier run has kept left as they are."""
    done = {
        place: kept
        for place, task in enumerate(draft.tasks)
        if (kept := taken_up(task, folder)) is not None
    }
    if done:
        say(words.say("class-terminal-kept", done=str(len(done)), all=str(len(draft.tasks))))
    left = [place for place in range(len(draft.tasks)) if place not in done]
    progress = Progress("class-terminal-graded", len(draft.tasks), len(done))
    try:
        for number, finished in workers.over_all(work, [draft.tasks[place] for place in left]):
            put_by(finished, folder)
            done[left[number]] = finished.result
            progress.step(finished.result.name)
    except KeyboardInterrupt:
        progress.end()
        done_of = {"done": str(len(done)), "all": str(len(draft.tasks))}
        say(words.say("class-terminal-stopped", folder=str(folder), **done_of))
        raise
    progress.end()
    return [done[place] for place in range(len(draft.tasks))]
