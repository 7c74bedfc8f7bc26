"""Names to which a plan gives two places: one of them may be a slip of the pen.

Names that differ in capitals only are one name to whoever hears them or takes them down.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping

from audit.geodesy.grids import CourseGrid
from audit.leg_card.finished_card import CardFinding, CardPoint
from audit.leg_card.told_numbers import told_legs
from audit.leg_card.written_degrees import WrittenDegrees, written_degrees
from audit.leg_card.written_reference import ReferenceSlip, WrittenReference, written_reference
from audit.plan import Plan
from audit.positions import Position
from audit.words import sentence
from audit.words.figures import Length


def namesake_findings(
    plan: Plan, points: Mapping[str, CardPoint], grid: CourseGrid
) -> Iterator[CardFinding]:
    """Find each name that stands for two places, with the slip that parts them, if one does.

    Which of the two is right the plan cannot tell: both stay, and the finding names both.
    """
    for name, other_name in plan.namesakes:
        first, other = plan.position(name), plan.position(other_name)
        if first is None or other is None:
            continue
        slip = _slip_between(other, first, grid)
        of_leg, of_others = _legs_at(plan, other_name), _legs_at(plan, name)
        if not (of_leg and of_others):
            continue  # what lies on no leg is told already
        in_capitals = other_name.casefold() == name.casefold()
        message = sentence(
            "finding-namesake-in-capitals" if in_capitals else "finding-namesake",
            point=name,
            given=other.given,
            legs=told_legs(of_leg),
            other=first.given,
            others=told_legs(of_others),
            apart=Length(metres=_apart_m(points[name], points[other_name])),
            slip="" if slip is None else sentence("finding-parted-by", what=slip.what),
            name=other_name,
        )
        yield CardFinding(
            leg=of_leg[0],
            what="position",
            given=other.given,
            computed=first.given,
            message=message,
            slips=() if slip is None else (slip.name,),
        )


def _legs_at(plan: Plan, name: str) -> list[str]:
    return [leg.name for leg in plan.legs if name in {leg.start, leg.end}]


def _slip_between(one: Position, other: Position, grid: CourseGrid) -> ReferenceSlip | None:
    """Give the slip that makes the one reference of the other, figure by figure."""
    written, meant = _written(one, grid), _written(other, grid)
    if written is None or meant is None:
        return None
    found = [slip for slip in written.slips() if slip.text == meant.text]
    return min(found, key=lambda slip: slip.rank, default=None)


def _written(position: Position, grid: CourseGrid) -> WrittenReference | WrittenDegrees | None:
    return written_reference(position, grid) or written_degrees(position)


def _apart_m(one: CardPoint, other: CardPoint) -> float:
    return math.hypot(other.east_m - one.east_m, other.north_m - one.north_m)
