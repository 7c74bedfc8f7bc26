"""What goes wrong, said in one clear sentence each: file, place, value, rule, remedy."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """One thing that an input file says and that cannot be taken.

    ``place`` is a table, row, line or field in the reader's own words ("leg 3,
    distance_m"); ``value`` is what stands there, ``rule`` what is wanted,
    ``remedy`` what to write instead.
    """

    file: str
    place: str
    value: str
    rule: str
    remedy: str

    def __str__(self) -> str:
        where = f"{self.file}, {self.place}" if self.place else self.file
        value = f"{self.value} " if self.value else ""
        return f"{where}: {value}{self.rule}. {self.remedy}"


class AuditError(Exception):
    """Base of everything that this package raises on purpose."""


class InputRefusedError(AuditError):
    """An input file cannot be used; carries every problem found in it.

    Attributes
    ----------
    problems : tuple of Problem
        In the order of the file; never empty.
    """

    def __init__(self, problems: Sequence[Problem]) -> None:
        self.problems = tuple(problems)
        super().__init__("\n".join(str(problem) for problem in self.problems))


class OutputRefusedError(AuditError):
    """A result cannot be written where it was asked for; nothing was changed there."""


def refuse(file: str, place: str, value: object, rule: str, remedy: str) -> InputRefusedError:
    """Give the error for a single problem, ready to raise."""
    shown = "" if value is None else str(value)
    return InputRefusedError(
        [Problem(file=file, place=place, value=shown, rule=rule, remedy=remedy)]
    )


def refuse_file(file: str, rule: str, remedy: str) -> InputRefusedError:
    """Give the error for a file that is no use as a whole, ready to raise."""
    return InputRefusedError([Problem(file=file, place="", value="", rule=rule, remedy=remedy)])
