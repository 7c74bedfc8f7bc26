"""From the files of one walk to its debrief on the terminal and in a folder."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from audit import __version__, words
from audit.cli.counted_paces import note_step
from audit.cli.endings import WrongUseError
from audit.cli.input_files import read_inputs
from audit.cli.left_from_before import left_from_before
from audit.cli.messages import say_note, say_page, say_written, speak_as, tell
from audit.debriefing.debrief_walk import debrief
from audit.debriefing.finished_debrief import Debrief
from audit.debriefing.privacy import private_debrief
from audit.readers.course_settings import CourseOptions
from audit.readers.ground_file import GroundFrame, read_ground
from audit.readers.ground_heights import heights_at
from audit.reports.map_ground import ground_edges
from audit.reports.shown_paces import counting
from audit.reports.simulated import simulated_notes
from audit.reports.terminal_report import render_terminal
from audit.reports.write import REPORT_KINDS, Wishes, write_reports
from audit.settings import Settings

if TYPE_CHECKING:
    from audit.cli.records_files import OpenedRecords, RecordsWanted
    from audit.school_records.attempt import Attempt


@dataclass(frozen=True, slots=True, kw_only=True)
class Extras:
    """What a debrief can have beside the usual.

    ``ground``, ``heights`` and ``words`` are files to be read; ``records`` is where the walk
    is kept; ``corridor_m`` is to either side of the planned line.
    """

    wishes: Wishes = field(default_factory=Wishes)
    ground: Path | None = None
    heights: Path | None = None
    private: bool = False
    words: Path | None = None
    records: RecordsWanted | None = None
    corridor_m: float | None = None


def debrief_files(  # noqa: PLR0913 (what one command line can ask for)
    plan: Path,
    track: Path,
    *,
    log: Path | None,
    card: Path | None = None,
    folder: Path | None,
    only: Collection[str] | None,
    pins: Mapping[str, Sequence[str]],
    options: CourseOptions,
    extras: Extras | None = None,
) -> None:
    """Debrief one walk, write the reports, tell the short debrief.

    ``pins`` holds, for "from" and "claim", texts like 3=09:15.

    Raises
    ------
    AuditError
        Where an input is refused or the reports cannot be written.
    """
    extras = extras or Extras()
    speak_as(extras.words)
    starts, claims = (_one_a_leg(end, pins.get(end, ())) for end in ("from", "claim"))
    inputs = read_inputs(plan, track, log, options, card)
    kinds = [kind for kind in REPORT_KINDS if not only or kind in only]
    records = _opened(extras.records)
    finished = debrief(
        inputs.plan,
        inputs.track,
        log=inputs.log,
        own_card=inputs.card,
        starts=starts,
        claims=claims,
        heights=None if extras.heights is None else partial(heights_at, extras.heights),
        settings=_settings(extras),
    )
    attempt = None if records is None else _attempt(finished, records, private=extras.private)
    if extras.private:
        finished = private_debrief(finished)
    wishes = _with_ground(extras, finished)
    usual = Path("private-debrief") if extras.private else _folder_for(track)
    written = write_reports(
        finished,
        folder or usual,
        kinds,
        wishes,
        made_from=[one for one in (plan, track, log, card, *_files(extras)) if one],
    )
    tell(render_terminal(finished))
    with counting(finished.card.pace):
        _say_notes(finished)
    say_written(written[0].parent, _listed(written))
    if extras.private:
        _say_left_beside(written)
    for page in (one for one in written if one.name == "debrief.html"):
        say_page(page)
    if records is not None and attempt is not None:
        records.keep([attempt])


def _settings(extras: Extras) -> Settings:
    """Give the usual thresholds, with the corridor that was asked for."""
    usual = Settings()
    if extras.corridor_m is None:
        return usual
    return replace(usual, measuring=replace(usual.measuring, corridor_m=extras.corridor_m))


def _files(extras: Extras) -> tuple[Path | None, ...]:
    return extras.ground, extras.heights, extras.words


def _attempt(finished: Debrief, records: OpenedRecords, *, private: bool) -> Attempt:
    """Give what the records keep of a debrief; of a private one no time of the day."""
    # Only records need what a class is made with.
    from audit.classroom.attempt_of_debrief import attempt_of_debrief  # noqa: PLC0415

    walker = records.pseudonym(records.wanted.walker)
    attempt = attempt_of_debrief(finished, walker, __version__)
    return attempt.without_clock if private else attempt


def _opened(wanted: RecordsWanted | None) -> OpenedRecords | None:
    """Open the records before the walk is debriefed, so that what is wrong there is said first."""
    if wanted is None:
        return None
    from audit.cli.records_files import open_records  # noqa: PLC0415 (an extra)

    return open_records(wanted)


def _listed(written: Sequence[Path]) -> str:
    """List the files, pictures only by their number."""
    pictures = [path for path in written if path.suffix in {".svg", ".png"}]
    named = [path.name for path in written if path not in pictures]
    return ", ".join(
        [*named, *([words.say("terminal-pictures", count=len(pictures))] if pictures else [])]
    )


def _say_left_beside(written: Sequence[Path]) -> None:
    """Say what else stands in the folder of a private debrief: nobody made that private."""
    folder = written[0].parent
    names = {path.relative_to(folder).parts[0] for path in written}
    left = left_from_before(names, folder)
    if left:
        many = "yes" if len(left) > 1 else "no"
        files = ", ".join(left)
        say_note(words.say("terminal-left-beside", folder=str(folder), files=files, many=many))


def _with_ground(extras: Extras, finished: Debrief) -> Wishes:
    """Read the picture of the ground, now that it is known which ground is shown."""
    if extras.ground is None:
        return extras.wishes
    west_m, south_m, east_m, north_m = ground_edges(finished)
    frame = GroundFrame(
        grid=finished.card.grid.code,
        west_m=west_m,
        south_m=south_m,
        east_m=east_m,
        north_m=north_m,
    )
    ground = read_ground(extras.ground, frame)
    if extras.private:
        ground = replace(ground, source="")
    return replace(extras.wishes, ground=ground)


def _one_a_leg(end: str, pins: Sequence[str]) -> dict[str, str]:
    """Give the pins by leg; each leg can have one only."""
    times: dict[str, str] = {}
    for pin in pins:
        name, _, time = (part.strip() for part in pin.rpartition("="))
        if name in times:
            message = f"--{end}: leg {name} has two times, {times[name]} and {time}. Give one."
            raise WrongUseError(message)
        times[name] = time
    return times


def _folder_for(track: Path) -> Path:
    """Give the folder for a recording's results: walk-debrief for walk.gpx and walk.gpx.gz."""
    name = track.name
    for suffix in (".gz", ".gpx", ".xml"):
        if name.lower().endswith(suffix):
            name = name[: -len(suffix)]
    return Path(f"{name}-debrief")


def _say_notes(finished: Debrief) -> None:
    """Say what was assumed, dropped or doubtful, as the page and debrief.json do."""
    told = simulated_notes(finished)
    for note in (*finished.card.notes, *finished.quality.notes):
        if note not in told:
            say_note(note)
    note_step(finished.card.paces_per_100m, words.in_force().units.paces_counted)
