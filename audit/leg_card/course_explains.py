"""What the numbers of the legs say once the angle of the course is known for the wrong one."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from audit.geodesy.grids import CourseGrid
from audit.leg_card.finished_card import CardFinding
from audit.leg_card.leg_check import LegCheck
from audit.leg_card.legs_findings import legs_findings
from audit.leg_card.norths import Norths
from audit.leg_card.told_numbers import told_legs
from audit.plan import Plan
from audit.settings import CardSettings
from audit.words import sentence
from audit.words.figures import Listed

_LEAST_LEGS = 2
"""One leg alone may as well be the wrong one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class JudgedLegs:
    """The findings of a course: of its norths, then of its legs, which ``checks`` are of."""

    of_norths: tuple[CardFinding, ...]
    of_legs: tuple[CardFinding, ...]
    checks: tuple[LegCheck, ...]


def judged_legs(
    checks: tuple[LegCheck, ...],
    norths: Norths,
    plan: Plan,
    grid: CourseGrid,
    settings: CardSettings,
) -> JudgedLegs:
    """Find what is wrong with the legs; what a wrong angle of the course explains is told of that.

    An angle with a slip is no measure for a leg. Where the legs agree better with the model's
    they are held against that, as if the plan gave none.
    """
    by_plan = legs_findings(checks, plan, grid)
    instead = norths.instead_of_wrong(settings)
    if instead is None:
        return JudgedLegs(of_norths=norths.findings, of_legs=by_plan, checks=checks)
    angles, doubt_deg = instead
    by_model = legs_findings(
        [replace(check, angles=angles, angle_doubt_deg=doubt_deg) for check in checks], plan, grid
    )
    still = {(one.leg, one.what) for one in by_model}
    gone = {(one.leg, one.what) for one in by_plan} - still
    marked = tuple(
        replace(check, by_course=frozenset(what for leg, what in gone if leg == check.leg.name))
        for check in checks
    )
    names = [check.leg.name for check in marked if check.by_course]
    cleared = {
        what: [check.leg.name for check in marked if what in check.by_course]
        for what in dict.fromkeys(one.what for one in by_plan if (one.leg, one.what) in gone)
    }
    if len(by_model) >= len(by_plan) or len(names) < _LEAST_LEGS:
        return JudgedLegs(of_norths=norths.findings, of_legs=by_plan, checks=checks)
    return JudgedLegs(
        of_norths=_with_legs(norths.findings, cleared), of_legs=by_model, checks=marked
    )


def _with_legs(
    findings: Sequence[CardFinding], cleared: Mapping[str, Sequence[str]]
) -> tuple[CardFinding, ...]:
    """Say with the finding of the angle which numbers of which legs it alone makes differ."""
    told = [
        sentence("finding-angle-cleared", what=what, count=len(names), legs=told_legs(names))
        for what, names in cleared.items()
        if names
    ]
    if not told:
        return tuple(findings)
    return tuple(
        replace(
            one,
            message=sentence("finding-angle-legs", said=one.message, cleared=Listed(things=told)),
        )
        if one.what == "grid_magnetic_angle_deg"
        else one
        for one in findings
    )
