"""A candidate for what to work on, and how such candidates are weighed against each other."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import IntEnum

from audit.coaching.talk import WorkOn
from audit.guide.pages_on_file import cause_pages, exercise
from audit.words import sentence


class TaskKind(IntEnum):
    """What shows that there is something to practise, the surer first."""

    NAMED = 0
    """A mistake that the diagnosis names, or one of two."""
    BESIDE = 1
    """One made beside it, or a step that the card or the log shows."""
    PART = 2
    """A part of the misses that no mistake explains."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """Something to practise, with its weight.

    Attributes
    ----------
    kind : TaskKind
        Of what costs alike the surer comes before the others.
    metres : float
        What it put into the misses.
    work : WorkOn
    ordinary_m : float
        How much of that the walker's ordinary scatter and the error of measuring may be; 0 where
        that has been weighed, as of a mistake, or is not in the numbers.
    worst_m : float
        The largest miss of its legs, where it is a step or a part of the misses.
    """

    kind: TaskKind
    metres: float
    work: WorkOn
    ordinary_m: float = 0.0
    worst_m: float = 0.0

    @property
    def beyond_m(self) -> float:
        """Give what it cost beyond ordinary error; 0 where it is no more than that."""
        return max(self.metres - self.ordinary_m, 0.0)


def in_order(tasks: Iterable[Task], radius_m: float) -> list[Task]:
    """Give what cost most beyond ordinary error first, and nothing ordinary beside it.

    What costs less than the arrival radius beyond that loses nobody his point. Where all is
    ordinary, the leg that missed by most comes first: the head names it.
    """
    found = list(tasks)
    larger = [
        task
        for task in found
        if task.kind is TaskKind.NAMED or task.ordinary_m == 0.0 or task.beyond_m >= radius_m
    ]
    if larger:
        return sorted(larger, key=lambda task: (-task.beyond_m, task.kind))
    return sorted(found, key=lambda task: -task.worst_m)


def work_on(cause: str, evidence: str, legs: Sequence[str], *, certain: bool) -> WorkOn:
    """Give one cause with the exercise of its page in the guide.

    It has the title of that page only where it is named; else it is what to look at next.
    """
    return WorkOn(
        cause=cause,
        certain=certain,
        what=title_of(cause) if certain else sentence("coach-next"),
        evidence=evidence,
        exercise=exercise(cause),
        legs=tuple(legs),
    )


def title_of(cause: str) -> str:
    """Give what a cause is, as the title of its page says it."""
    return cause_pages()[cause].title.partition(": ")[2]
