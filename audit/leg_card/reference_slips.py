"""Which one slip in a point's reference would make the legs around it agree with the plan."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from audit.geodesy.grids import CourseGrid
from audit.leg_card.finished_card import CardFinding, CardPoint
from audit.leg_card.leg_check import LegCheck
from audit.leg_card.legs import leg_line, points_say
from audit.leg_card.slip_candidate import (
    Candidate,
    explains_itself,
    fits_ill,
    fits_well,
    misfits,
    overlong,
)
from audit.leg_card.told_numbers import told_legs
from audit.leg_card.via_slips import via_slips
from audit.leg_card.written_degrees import WrittenDegrees, written_degrees
from audit.leg_card.written_reference import ReferenceSlip, WrittenReference, written_reference
from audit.plan import Plan, Point
from audit.words import sentence


@dataclass(frozen=True, slots=True, kw_only=True)
class ExplainedLegs:
    """A slip in the reference of a point, and the names of the legs that it explains."""

    finding: CardFinding
    point: str
    legs: frozenset[str]


def reference_slips(
    checks: Sequence[LegCheck], plan: Plan, grid: CourseGrid
) -> tuple[ExplainedLegs, ...]:
    """Give, point by point, the slip that explains all that is wrong around it.

    A leg is explained once: the slip that clears most legs comes first.
    """
    found: list[Candidate] = []
    for point in plan.points:
        around = [check for check in checks if point.name in {check.start.name, check.end.name}]
        if not any(fits_ill(check) for check in around):
            continue
        written = written_reference(point.position, grid) or written_degrees(point.position)
        if written is not None:
            found += _candidates(around, point, written, grid)
    for check in checks:
        found += via_slips(check, grid)
    explained: list[ExplainedLegs] = []
    told: set[str] = set()
    for best in sorted(found, key=lambda one: one.key):
        if not best.legs & told:
            told |= best.legs
            rivals = [one for one in found if one.legs == best.legs and one is not best]
            explained.append(_explained(best, _other_reading(best, rivals), plan))
    return tuple(explained)


def _candidates(
    around: Sequence[LegCheck],
    of: Point,
    written: WrittenReference | WrittenDegrees,
    grid: CourseGrid,
) -> Iterator[Candidate]:
    """Give the slips of one point after which every leg around it agrees with the plan."""
    before = sum(off > 1.0 for check in around for off in misfits(check))
    long_before = any(overlong(check) for check in around)
    if not long_before and (before == 1 and any(map(explains_itself, around))):
        return
    # One number alone speaks for slips with few outcomes only: some digit would always fit.
    slips = [slip for slip in written.slips() if long_before or before > 1 or slip.rank == 0]
    if long_before:
        slips += _other_squares(around, of.name, written)
    for slip in slips:
        moved = [(_moved(check, of.name, slip, grid), check) for check in around]
        after = [one for one, check in moved if one is not None and fits_well(one, check)]
        if len(after) < len(around):
            continue
        offs = [off for check in after for off in misfits(check)]
        length_m = sum(check.said.chord_m for check in after if check.said is not None)
        misfit = math.sqrt(sum(off**2 for off in offs) / len(offs)) if offs else 0.0
        yield Candidate(
            name=of.name,
            given=of.position.given,
            slip=slip,
            legs=frozenset(check.leg.name for check in around if fits_ill(check)),
            key=(-before, slip.rank + misfit, length_m if not offs else 0.0),
        )


def _other_squares(
    around: Sequence[LegCheck], name: str, written: WrittenReference | WrittenDegrees
) -> Iterator[ReferenceSlip]:
    for check in around:
        other = check.end if check.start.name == name else check.start
        yield from written.elsewhere(other.longitude_deg, other.latitude_deg)


def _placed(check: LegCheck, name: str, slip: ReferenceSlip, grid: CourseGrid) -> CardPoint:
    """Give the point where the reference without the slip has it.

    Raises
    ------
    ValueError
        Where the grid does not reach it.
    """
    point = check.start if check.start.name == name else check.end
    east_m, north_m = grid.to_grid(slip.longitude_deg, slip.latitude_deg)
    return replace(
        point,
        east_m=east_m,
        north_m=north_m,
        longitude_deg=slip.longitude_deg,
        latitude_deg=slip.latitude_deg,
    )


def _moved(check: LegCheck, name: str, slip: ReferenceSlip, grid: CourseGrid) -> LegCheck | None:
    """Give a leg with one of its points where the slip taken back has it."""
    if check.said is None:
        return check
    try:
        point = _placed(check, name, slip, grid)
        ends = {"start": check.start, "end": check.end}
        ends |= {end: point for end, at in ends.items() if at.name == name}
        line = leg_line(check.leg, ends["start"], ends["end"], grid)
    except ValueError:
        return None
    said = points_say(check.leg, ends["start"], ends["end"], line, check.settings)
    if said.chord_m < check.settings.shortest_leg_m:
        return None
    return replace(check, start=ends["start"], end=ends["end"], said=said)


def _other_reading(best: Candidate, rivals: Sequence[Candidate]) -> Candidate | None:
    """Give the next best slip of another kind or point that clears the same legs."""
    others = [
        one
        for one in rivals
        if (one.name, one.slip.name) != (best.name, best.slip.name)
        and one.slip.rank == best.slip.rank
    ]
    return min(others, key=lambda one: one.key, default=None)


def _explained(best: Candidate, other: Candidate | None, plan: Plan) -> ExplainedLegs:
    legs = sorted(best.legs, key=[leg.name for leg in plan.legs].index)
    also: str = ""
    if other is not None:
        also = sentence(
            "finding-so-would",
            text=other.slip.text,
            point=other.name,
            what=other.slip.what,
        )
    message = sentence(
        "finding-reference-slip",
        point=best.name,
        given=best.given,
        what=best.slip.what,
        text=best.slip.text,
        legs=told_legs(legs),
        also=also,
    )
    return ExplainedLegs(
        finding=CardFinding(
            leg=None,
            what="position",
            given=best.given,
            computed=best.slip.text,
            message=message,
            slips=tuple(one.slip.name for one in (best, other) if one is not None),
        ),
        point=best.name,
        legs=best.legs,
    )
