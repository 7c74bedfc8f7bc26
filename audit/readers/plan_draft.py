"""A leg as its file tells it, before it is joined to the others."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from itertools import pairwise

from audit.positions import Position
from audit.readers.leg_values import LegValues
from audit.readers.problem_list import ProblemList
from audit.words import sentence


@dataclass(frozen=True, slots=True, kw_only=True)
class DraftLeg:
    """A leg with the names that its file gives; None where it leaves them out.

    ``place`` is where it stands in the file. ``open_end`` allows an end that names no
    point: the place where azimuth and distance lead. ``spoilt`` marks a leg of which a
    problem is put down already: what it lacks may be no second one.
    """

    place: str
    name: str | None = None
    start: str | None = None
    end: str | None = None
    values: LegValues = field(default_factory=LegValues)
    via: tuple[Position, ...] = ()
    note: str = ""
    open_end: bool = False
    spoilt: bool = False


def check_count(count: int, problems: ProblemList) -> None:
    """Refuse a plan of far more points or legs than anyone walks by compass."""
    most = problems.limits.most_points
    if count > most:
        rule = f"holds {count} points or legs; a plan has at most {most}"
        problems.stop("", None, rule, "A recorded track is no plan: keep only its turning points.")


def legs_in_order(names: Iterable[str]) -> list[DraftLeg]:
    """Give a leg for each consecutive pair of points."""
    return [
        DraftLeg(place=sentence("figure-leg", name=str(number)), start=start, end=end)
        for number, (start, end) in enumerate(pairwise(names), start=1)
    ]
