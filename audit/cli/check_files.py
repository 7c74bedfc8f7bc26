"""From the file of a plan to its findings and worked sums."""

from __future__ import annotations

from pathlib import Path

from audit.cli.counted_paces import note_step
from audit.cli.endings import ExitStatus
from audit.cli.messages import say_note, speak_as, tell
from audit.leg_card.check_plan import check_plan
from audit.readers.course_settings import CourseOptions
from audit.readers.plan_file import read_plan
from audit.reports.check_report import render_check, render_check_json
from audit.reports.shown_paces import counting
from audit.words import in_force


def check_file(
    plan: Path, *, as_json: bool, options: CourseOptions, words: Path | None = None
) -> ExitStatus:
    """Tell what is to be put right in a plan; the status says whether anything is.

    Raises
    ------
    InputRefusedError
        Where the plan cannot be read, or no card can be made of it.
    """
    speak_as(words)
    checked = check_plan(read_plan(plan, **options))
    if as_json:
        tell(render_check_json(checked))
    else:
        tell(render_check(checked))
        with counting(checked.card.pace):
            for note in checked.card.notes:
                say_note(note)
        note_step(checked.card.paces_per_100m, in_force().units.paces_counted)
    return ExitStatus.FINDINGS if checked.findings else ExitStatus.DONE
