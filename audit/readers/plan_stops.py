"""Points in the order of a walk, made into a course: told apart, met again, each pair a leg."""

from __future__ import annotations

from collections.abc import Sequence

from audit.readers.plan_draft import DraftLeg, check_count, legs_in_order
from audit.readers.point_book import PointBook, same_place
from audit.readers.position_reading import PositionReading
from audit.readers.problem_list import ProblemList


def put_stops(
    stops: Sequence[tuple[str | None, PositionReading]], kind: str, problems: ProblemList
) -> tuple[PointBook, list[DraftLeg]]:
    """Give the book of points and the legs between them, in order.

    ``kind`` is the word for a stop in notes. A stop at the place of the one before it
    makes no leg and is left out, noted.
    """
    check_count(len(stops), problems)
    book = PointBook(problems)
    visits: list[str] = []
    last: PositionReading | None = None
    for number, (name, reading) in enumerate(stops, start=1):
        if last is not None and same_place(last.position, reading.position):
            problems.note(
                f'{kind} {number}{f" ({name})" if name else ""} lies where "{visits[-1]}" '
                "before it lies; it was left out."
            )
            continue
        visits.append(book.put(name, reading))
        last = reading
    return book, legs_in_order(visits)
