"""The legs of a course in free order: one for each point after the first, named after it."""

from __future__ import annotations

from itertools import combinations, pairwise

from audit.plan import PlannedLeg
from audit.readers.leg_values import LegValues
from audit.readers.plan_draft import DraftLeg
from audit.readers.point_book import PointBook, same_place
from audit.readers.problem_list import ProblemList
from audit.words import sentence


def free_legs(drafts: list[DraftLeg], book: PointBook, problems: ProblemList) -> list[PlannedLeg]:
    """Give a leg for each point, in the order of the file; where they begin is found later.

    Legs that the file draws may only name their points: an azimuth from one point to
    another says nothing while it is not known that the one was visited after the other.
    """
    for draft in drafts:
        if draft.values != LegValues() or draft.via:
            rule = 'has values of its own, but with order = "free" the legs are found in the walk'
            problems.add(draft.place, None, rule, "Leave them out: positions are enough.")
    return _legs_to(list(book.readings), book, problems)


def freed_legs(drafts: list[DraftLeg], book: PointBook, problems: ProblemList) -> list[PlannedLeg]:
    """Give a leg for each point of a plan whose own legs the caller does not hold to.

    The start is that of its first leg. What its legs say of ways and order is put aside,
    and told; an end that is known by its leg only cannot be looked for.
    """
    for draft in drafts:
        end = draft.end
        if not draft.spoilt and (end is None or end not in (book.readings.keys() | book.unread)):
            rule = "ends at no point with a position, and in free order only points are looked for"
            problems.add(draft.place, end, rule, "Give its end a position, or keep to the order.")
    start = next((draft.start for draft in drafts if draft.start in book.readings), None)
    if any(draft.values != LegValues() or draft.via or draft.name for draft in drafts):
        problems.note(sentence("plan-legs-put-aside", legs=len(drafts)))
    names = sorted(book.readings, key=lambda name: name != start)
    return _legs_to(names, book, problems)


def _legs_to(names: list[str], book: PointBook, problems: ProblemList) -> list[PlannedLeg]:
    """Give a leg to each point after the first."""
    most = problems.limits.most_free_points
    if len(names) - 1 > most:
        rule = f"holds {len(names) - 1} points beside the start; in free order {most} are the most"
        problems.add("", None, rule, 'Write order = "planned", or make two courses of it.')
    for one, other in combinations(names, 2):
        first, second = book.readings[one].position, book.readings[other].position
        if same_place(first, second, problems.limits):
            rule = f'is where "{one}" is, and a point is visited once in free order'
            problems.add(f'point "{other}"', None, rule, "Leave one of them out.")
    problems.note(sentence("plan-any-order"))
    return [PlannedLeg(name=there, start=here, end=there) for here, there in pairwise(names)]
