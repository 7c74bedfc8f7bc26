"""Which of the points that were passed on no leg of the match were passed in their turn."""

from __future__ import annotations

from audit.debriefing.on_no_leg import OnNoLeg
from audit.diagnosis.passages import Passage


def come_to_in_turn(walked: OnNoLeg) -> dict[int, Passage]:
    """Give, by leg, the passage of its end that is one of a row in the order of the plan.

    The longest row there is: where two points were taken in each other's place, one of them
    is out of its turn.
    """
    rows: list[dict[int, Passage]] = [{}]  # by their length, the one that ends first
    for end in walked.passed:
        longer = list(rows)
        for length, row in enumerate(rows):
            since_s = max((one.nearest_s for one in row.values()), default=-float("inf"))
            after = [one for one in end.passages if one.nearest_s > since_s]
            if not after:
                continue
            first = min(after, key=lambda one: one.nearest_s)
            if length + 1 == len(longer):
                longer.append(row | {end.leg: first})
            elif first.nearest_s < _ends_s(longer[length + 1]):
                longer[length + 1] = row | {end.leg: first}
        rows = longer
    return rows[-1]


def _ends_s(row: dict[int, Passage]) -> float:
    return max(one.nearest_s for one in row.values())
