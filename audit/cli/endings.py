"""How a command ends: the exit statuses, and the one place that turns errors into them."""

from __future__ import annotations

import traceback as tracebacks
from collections.abc import Callable
from enum import IntEnum
from functools import wraps
from typing import ParamSpec

import typer

from audit.cli.messages import problem_line, say
from audit.errors import AuditError, InputRefusedError, OutputRefusedError
from audit.words import PLAIN_ENGLISH, spoken

P = ParamSpec("P")


class ExitStatus(IntEnum):
    """What the process ends with."""

    DONE = 0
    FINDINGS = 1
    """Done, and a check found something to put right."""
    WRONG_USE = 2
    """Also for results that cannot be put where they were asked for."""
    INPUT_REFUSED = 3
    FAULT = 4
    INTERRUPTED = 130
    """As a shell reports a process that Ctrl-C ended: 128 and the number of the signal."""
    BROKEN_PIPE = 141


class WrongUseError(AuditError):
    """The command line asks for something that makes no sense."""


def guarded(command: Callable[P, int | None]) -> Callable[P, None]:
    """Give the command so that whatever happens in it ends in sentences and an exit status."""

    @wraps(command)
    def run(*arguments: P.args, **options: P.kwargs) -> None:
        traceback = bool(options.get("traceback"))
        with spoken(PLAIN_ENGLISH):  # a command that is given other words puts them in force
            raise typer.Exit(_status(lambda: command(*arguments, **options), traceback=traceback))

    return run


def _status(command: Callable[[], int | None], *, traceback: bool) -> ExitStatus:
    try:
        status = command()
    except AuditError as refused:
        return _say_refusal(refused)
    except BrokenPipeError:
        return ExitStatus.BROKEN_PIPE
    except KeyboardInterrupt:
        return ExitStatus.INTERRUPTED
    except MemoryError:
        say(
            "There is not enough memory for this. End other programs, cut the recording to the "
            "walk, or grade with --jobs 1; then run the same again."
        )
        return ExitStatus.FAULT
    except Exception as fault:  # noqa: BLE001 (whatever it is, no traceback unless asked for)
        _say_fault(fault, traceback=traceback)
        return ExitStatus.FAULT
    return ExitStatus(status or ExitStatus.DONE)


def _say_refusal(refused: AuditError) -> ExitStatus:
    """Say what is wrong, one line a problem, and tell whose it is: a file's or the command's."""
    if not isinstance(refused, InputRefusedError):
        say(str(refused))
        wrong = isinstance(refused, WrongUseError | OutputRefusedError)
        return ExitStatus.WRONG_USE if wrong else ExitStatus.INPUT_REFUSED
    for problem in refused.problems:
        say(problem_line(problem))
    wrong = all(problem.place.startswith("option ") for problem in refused.problems)
    return ExitStatus.WRONG_USE if wrong else ExitStatus.INPUT_REFUSED


def _say_fault(fault: Exception, *, traceback: bool) -> None:
    if traceback:
        for line in "".join(tracebacks.format_exception(fault)).splitlines():
            say(line)
    what = f"{type(fault).__name__}: {fault}".rstrip(": ")
    say(f"This is a fault of the program, not of your files: {what}")
    if not traceback:
        say("Run the same again with --traceback and send the maintainers what it says.")
