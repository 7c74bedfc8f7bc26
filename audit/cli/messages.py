"""What is said to people: results to standard output, messages to standard error."""

from __future__ import annotations

import os
import shlex
import sys
from contextlib import suppress
from pathlib import Path
from typing import TextIO

import typer

from audit import words
from audit.errors import OutputRefusedError, Problem
from audit.reports.printable import printable
from audit.words import told


def command_line(*arguments: str | Path) -> str:
    """Write a command of this program so that a shell takes it as it stands, blanks and all."""
    return shlex.join(["leg-audit", *map(str, arguments)])


def tell(text: str) -> None:
    """Write a result, which is printable already, to standard output.

    Raises
    ------
    OutputRefusedError
        Where standard output takes no more.
    BrokenPipeError
        Where whoever read it has gone, which is no reason to say anything.
    """
    try:
        typer.echo(text, nl=False)
    except OSError as problem:
        _send_nowhere(sys.stdout)
        if isinstance(problem, BrokenPipeError):
            raise
        message = f"standard output cannot be written: {problem.strerror}. Send it elsewhere."
        raise OutputRefusedError(message) from problem


def _send_nowhere(stream: TextIO) -> None:
    """Let what is left in the buffer, and the interpreter's own last flush, go nowhere."""
    with suppress(OSError, ValueError, AttributeError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())


def say(message: str) -> None:
    """Write one line to standard error; nothing that a file's name may hide gets through."""
    say_as_it_stands(printable(message) + "\n")


def say_as_it_stands(text: str) -> None:
    """Write to standard error; where it takes no more, or nobody reads it, the work goes on."""
    try:
        typer.echo(text, nl=False, err=True)
    except OSError:
        _send_nowhere(sys.stderr)


def say_note(note: str) -> None:
    """Say what was assumed, dropped or doubtful, in the words in force."""
    say(words.say("terminal-note", note=told(note)))


def say_written(place: object, files: str = "") -> None:
    """Say where results went, and which files."""
    named = words.say("terminal-written-to", place=str(place))
    say(words.say("terminal-written-files", place=str(place), files=files) if files else named)


def say_page(page: object) -> None:
    """Say which page to open."""
    say(words.say("terminal-open", page=str(page)))


def speak_as(file: Path | None) -> None:
    """Put the words of a file in force for the rest of the command.

    Raises
    ------
    InputRefusedError
        Where the file cannot be used.
    """
    if file is not None:
        from audit.readers.words_file import read_words  # noqa: PLC0415 (help stays quick)

        words.speak(read_words(file))


def problem_line(problem: Problem) -> str:
    """Give a problem as one line; one with an option is put in the words of the command line."""
    if not problem.place.startswith("option "):
        return str(problem).replace("the option route", "--route")
    value = f"{problem.value} " if problem.value else ""
    return f"{_flag(problem.place)}: {value}{problem.rule}. {problem.remedy}"


def _flag(place: str) -> str:
    """Give the option of the command line for one of the library: grid_magnetic_angle_deg."""
    name = place.removeprefix("option ").removesuffix("_deg").removesuffix("_m")
    return "--" + name.replace("_", "-")
