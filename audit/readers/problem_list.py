"""All that is wrong with one file, gathered so that it is told at once."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from difflib import get_close_matches
from typing import NoReturn

from audit.errors import InputRefusedError, Problem
from audit.readers.plain_text import shown, writable
from audit.readers.position_reading import PositionReading, PositionRefusedError
from audit.readers.position_text import read_position
from audit.settings import ReadingSettings
from audit.words import sentence

_ORDER = ("option", "course", "point", "leg")


@dataclass(slots=True)
class ProblemList:
    """Problems and notes of one file, in the order in which reading meets them.

    ``grid_refused`` says that a grid was named and could not be taken: then what is read
    by the grid can be no second problem. ``limits`` are what a file may say, for whoever
    reads it.
    """

    file: str
    limits: ReadingSettings = field(default_factory=ReadingSettings)
    problems: list[Problem] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    noted: set[str] = field(default_factory=set)
    grid_refused: bool = False

    def add(self, place: str, value: object, rule: str, remedy: str) -> None:
        """Put down a problem; ``value`` None where there is nothing to quote.

        Raises
        ------
        InputRefusedError
            Where there are so many that more would help nobody.
        """
        quoted = "" if value is None else shown(value)
        self.problems.append(
            Problem(file=self.file, place=place, value=quoted, rule=rule, remedy=remedy)
        )
        if len(self.problems) > self.limits.most_problems:
            told = sorted(self.problems[:-1], key=_place_in_file)
            rule = f"holds more problems than these {len(told)}, and was read no further"
            remedy = "Put these right, or give another file."
            last = Problem(file=self.file, place="", value="", rule=rule, remedy=remedy)
            raise InputRefusedError([*told, last])

    def note(self, said: str) -> None:
        """Put down once what reading assumed or left out.

        Raises
        ------
        InputRefusedError
            Where there are more notes than a plan has points and legs.
        """
        if said in self.noted:
            return
        self.noted.add(said)
        self.notes.append(said)
        if len(self.notes) > self.limits.most_notes:
            rule = f"leaves more than {self.limits.most_notes} things to be assumed"
            self.stop("", None, rule, "Write what is missing into the file.")

    def stop(self, place: str, value: object, rule: str, remedy: str) -> NoReturn:
        """Refuse the file for this problem and all before it."""
        self.add(place, value, rule, remedy)
        raise InputRefusedError(sorted(self.problems, key=_place_in_file))

    def stop_if_any(self) -> None:
        """Refuse the file if it has problems."""
        if self.problems:
            raise InputRefusedError(sorted(self.problems, key=_place_in_file))

    def position(self, text: object, place: str, grid: str | None) -> PositionReading | None:
        """Give the place that a value names; put a problem down where it names none."""
        if not isinstance(text, str):
            remedy = 'Write it in quotation marks, like "16S GF 4182 4279" or "36.512, -84.231".'
            self.add(place, text, "is not a position in text", remedy)
            return None
        try:
            reading = read_position(text, grid, self.limits)
        except PositionRefusedError as refused:
            if refused.needs_grid and self.grid_refused:
                return None
            self.add(place, text or None, refused.rule, refused.remedy)
            return None
        if reading.position.reading:
            self.note(
                sentence(
                    "plan-read-with",
                    place=place,
                    text=shown(text),
                    reading=reading.position.reading,
                )
            )
        return reading

    def writable(self, text: str, place: str) -> str:
        """Give the text without signs that no report can hold, noted; see `writable`."""
        clean = writable(text)
        if clean != text:
            where = place or "The name"
            self.note(sentence("plan-signs", place=where, text=shown(text)))
        return clean

    def unknown(self, place: str, what: str, name: str, known: tuple[str, ...]) -> None:
        """Put down a key, column or option that does not exist, with the nearest that does."""
        name = name.strip()
        if _no_north(name.lower()) and any("magnetic_azimuth" in key for key in known):
            remedy = f"Say from which north: {_any_of([f'{n}_azimuth_deg' for n in _NORTHS])}."
            self.add(place, name, f"is no {what}", remedy)
            return
        begun = [key for key in known if name and key.startswith(name.lower())][:1]
        short = [key for key in known if _lacks_words(name.lower(), key)]
        short = [key for key in short if not key.endswith("_mil")] or short
        near = begun or short or get_close_matches(name.lower(), known, n=1, cutoff=0.6)
        remedy = f"Perhaps {_any_of(near)} is meant." if near else f"Known are: {', '.join(known)}."
        self.add(place, name, f"is no {what}", remedy)


_NORTHS = ("grid", "magnetic", "true")
_DIRECTIONS = ("bearing", "heading", "direction", "azimut")
"""What a column of azimuths is called elsewhere, without saying from which north."""


def _no_north(name: str) -> bool:
    """Tell whether a name is that of a direction in the words of somebody else."""
    return name.removesuffix("_deg").removesuffix("_degrees") in _DIRECTIONS


def _lacks_words(name: str, key: str) -> bool:
    """Tell whether a name is a key without some of its words: azimuth_deg lacks its north."""
    parts = iter(key.split("_"))
    return len(name) > 1 and all(part in parts for part in name.split("_"))


def _any_of(names: list[str]) -> str:
    *before, last = [f'"{name}"' for name in names]
    return f"{', '.join(before)} or {last}" if before else last


def _place_in_file(problem: Problem) -> tuple[int, int]:
    """Give a key that puts problems into the order in which a plan is written."""
    found = re.match(r"([a-z]+) ?(\d*)", problem.place)
    if not found:
        return 0, 0
    word = found[1]
    return _ORDER.index(word) if word in _ORDER else len(_ORDER), int(found[2] or 0)
