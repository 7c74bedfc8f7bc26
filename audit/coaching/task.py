"""A candidate for what to work on, and how such candidates are weighed against each other."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from audit.coaching.talk import WorkOn
from audit.guide.pages_on_file import cause_pages, exercise


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """Something to practise, with its weight.

    Attributes
    ----------
    kind : 0, 1 or 2
        A mistake named (or one of two); one made beside it, or a step shown; a part of the
        misses: the first comes before the others however small.
    metres : float
        What it put into the misses.
    work : WorkOn
    """

    kind: Literal[0, 1, 2]
    metres: float
    work: WorkOn


def work_on(cause: str, evidence: str, legs: Sequence[str], *, certain: bool) -> WorkOn:
    """Give one cause with the title and the exercise of its page in the guide."""
    return WorkOn(
        cause=cause,
        certain=certain,
        what=title_of(cause),
        evidence=evidence,
        exercise=exercise(cause),
        legs=tuple(legs),
    )


def title_of(cause: str) -> str:
    """Give what a cause is, as the title of its page says it."""
    return cause_pages()[cause].title.partition(": ")[2]
