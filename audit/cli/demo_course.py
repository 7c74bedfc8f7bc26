"""The demo course set out in a folder, and its walk debriefed there."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path

from audit import words
from audit.cli.debrief_files import debrief_files
from audit.cli.messages import command_line, say
from audit.errors import OutputRefusedError
from audit.reports.write import write_texts

COURSE_FILES = ("plan.toml", "walk.gpx", "log.csv")


def set_out_demo(folder: Path) -> None:
    """Put the demo's files into a folder and debrief them there.

    Raises
    ------
    OutputRefusedError
        Where the folder cannot be written, or holds files of those names that are not
        the demo's: somebody's work is not written over.
    """
    course = files("audit").joinpath("demo_course")
    texts = {name: course.joinpath(name).read_bytes() for name in COURSE_FILES}
    for name, text in texts.items():
        _refuse_other(folder / name, text)
    write_texts(folder, texts)
    plan, track, log = (folder / name for name in COURSE_FILES)
    say(words.say("terminal-demo", folder=str(folder)))
    say(command_line("debrief", plan, track, "--log", log, "--out", folder))
    debrief_files(plan, track, log=log, folder=folder, only=None, pins={}, options={})


def _refuse_other(path: Path, text: bytes) -> None:
    if path.is_file() and path.read_bytes() != text:
        message = (
            f"{path} is not as the demo writes it, so it is left alone. Name another folder "
            "with --out, or take the file away."
        )
        raise OutputRefusedError(message)
