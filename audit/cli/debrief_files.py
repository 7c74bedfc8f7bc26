"""From the files of one walk to its debrief on the terminal and in a folder."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from pathlib import Path

from audit.cli.endings import WrongUseError
from audit.cli.input_files import read_inputs
from audit.cli.messages import say, tell
from audit.debriefing.debrief_walk import debrief
from audit.debriefing.records import Debrief
from audit.readers.course_settings import CourseOptions
from audit.reports.simulated import simulated_notes
from audit.reports.terminal_report import render_terminal
from audit.reports.write import REPORT_KINDS, write_reports


def debrief_files(
    plan: Path,
    track: Path,
    *,
    log: Path | None,
    folder: Path | None,
    only: Collection[str] | None,
    pins: Mapping[str, Sequence[str]],
    options: CourseOptions,
) -> None:
    """Debrief one walk, write the reports, tell the short debrief.

    ``pins`` holds, for "from" and "claim", texts like 3=09:15.

    Raises
    ------
    AuditError
        Where an input is refused or the reports cannot be written.
    """
    starts, claims = (_one_a_leg(end, pins.get(end, ())) for end in ("from", "claim"))
    inputs = read_inputs(plan, track, log, options)
    kinds = [kind for kind in REPORT_KINDS if not only or kind in only]
    finished = debrief(inputs.plan, inputs.track, log=inputs.log, starts=starts, claims=claims)
    written = write_reports(finished, folder or _folder_for(track), kinds)
    tell(render_terminal(finished))
    _say_notes(finished)
    say(f"Written to {written[0].parent}: {', '.join(path.name for path in written)}")
    if "html" in kinds:
        say(f"Open the page in a browser: {written[-1]}")


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
            say(f"note: {note}")
