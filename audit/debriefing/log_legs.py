"""The legs that a walker's log names, where a spreadsheet wrote their numbers otherwise."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable
from dataclasses import replace

from audit.leg_card import LegCard
from audit.walkers_log import WalkersLog
from audit.words import sentence
from audit.words.figures import Listed

_NUMBER = re.compile(r"0*(\d+)(?:[.,]0+)?", re.ASCII)


def with_legs_by_number(log: WalkersLog, card: LegCard) -> WalkersLog:
    """Give the log with "1.0" and "01" as the leg "1", noted, where just one leg is meant."""
    names = {leg.name for leg in card.legs}
    legs = {number: name for name, number in _each_once(names)}
    renamed = {
        written: legs[number]
        for written, number in _each_once(entry.leg for entry in log.entries)
        if written not in names and number in legs
    }
    if not renamed:
        return log
    pairs = [
        sentence("recording-log-number", written=written, leg=name)
        for written, name in renamed.items()
    ]
    return replace(
        log,
        entries=tuple(
            replace(entry, leg=renamed.get(entry.leg, entry.leg)) for entry in log.entries
        ),
        notes=(*log.notes, sentence("recording-log-numbers", pairs=Listed(things=pairs))),
    )


def _each_once(names: Iterable[str]) -> list[tuple[str, str]]:
    """Give each name that is a number, with its value in digits, where no other has that value."""
    numbers = {name: found[1] for name in names if (found := _NUMBER.fullmatch(name))}
    count = Counter(numbers.values())
    return [(name, number) for name, number in numbers.items() if count[number] == 1]
