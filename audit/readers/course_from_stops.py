"""Points in the order of a walk, made into a course: told apart, met again, each pair a leg."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from audit.positions import Position
from audit.readers.plan_draft import DraftLeg, check_count, legs_in_order
from audit.readers.point_book import PointBook, same_place
from audit.readers.position_reading import PositionReading
from audit.readers.problem_list import ProblemList

VIA = "via"
"""The type of a point that a leg only passes, and that is none of the course."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stop:
    """A place in the order of a walk; one that is ``via`` shapes the leg and ends none."""

    name: str | None
    reading: PositionReading
    via: bool = False


def put_stops(
    stops: Sequence[Stop], kind: str, problems: ProblemList
) -> tuple[PointBook, list[DraftLeg]]:
    """Give the book of points and the legs between them, in order.

    ``kind`` is the word for a stop in notes. A stop at the place of the one before it
    makes no leg and is left out, noted.
    """
    check_count(len(stops), problems)
    book = PointBook(problems)
    visits: list[str] = []
    vias: dict[int, list[Position]] = {}
    last: PositionReading | None = None
    for number, stop in enumerate(stops, start=1):
        name, reading = stop.name, stop.reading
        if stop.via:
            vias.setdefault(len(visits), []).append(reading.position)
            continue
        if last is not None and same_place(last.position, reading.position, problems.limits):
            problems.note(
                f'{kind} {number}{f" ({name})" if name else ""} lies where "{visits[-1]}" '
                "before it lies; it was left out."
            )
            continue
        visits.append(book.put(name, reading))
        last = reading
    if vias.pop(0, None) or vias.pop(len(visits), None):
        problems.note(f'A {kind} of the type "{VIA}" on no leg was left out.')
    legs = legs_in_order(visits)
    return book, [replace(leg, via=tuple(vias.get(n, ()))) for n, leg in enumerate(legs, 1)]
