"""Counts of paces of which the kind is known, in those that the reader counts in."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace

from audit.leg_card.pace_kind import PaceKind
from audit.reports import digits
from audit.words import in_force, spoken
from audit.words.in_other_units import METRES


def pace_shown(counted: PaceKind) -> PaceKind:
    """Give the pace that is told: the one that the words in force choose, else that counted."""
    return in_force().units.paces or counted


def in_paces_shown(count: float, counted: PaceKind) -> float:
    """Give a count in the pace that is told."""
    if pace_shown(counted) == counted:
        return count
    return count * 2.0 if counted == "double" else count / 2.0


def hundred() -> str:
    """Write the length that paces are counted to: a hundred of the lengths that are shown."""
    return digits.stated_metres(100.0 * METRES[in_force().units.length])


@contextmanager
def counting(kind: PaceKind | None) -> Iterator[None]:
    """Call counts by their kind, as the card does, unless the words in force chose a pace."""
    words = in_force()
    if kind is None or words.units.paces is not None or "pace" in words.terms:
        yield
        return
    with spoken(replace(words, terms={**words.terms, "pace": f"{kind}-pace"})):
        yield
