"""Where the legs of a plan disagree with their own sums."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from audit.geodesy.grids import CourseGrid
from audit.leg_card.azimuth_checks import azimuths_against_each_other, azimuths_against_points
from audit.leg_card.finished_card import CardFinding
from audit.leg_card.leg_check import LegCheck
from audit.leg_card.length_checks import distance_against_points, paces_against_distance
from audit.leg_card.reference_slips import reference_slips
from audit.leg_card.shared_angle import shared_angle
from audit.leg_card.slip_candidate import overlong
from audit.leg_card.via_checks import via_findings
from audit.plan import Plan
from audit.words import sentence
from audit.words.figures import Number


def legs_findings(
    checks: Sequence[LegCheck], plan: Plan, grid: CourseGrid
) -> tuple[CardFinding, ...]:
    """Give every disagreement of the legs: references first, then leg by leg."""
    explained = reference_slips(checks, plan, grid)
    because = {leg: slip.point for slip in explained for leg in slip.legs}
    angle, angle_sentence = shared_angle(checks)
    findings = [*(slip.finding for slip in explained), *angle]
    for check in checks:
        point = because.get(check.leg.name, "")
        told = sentence("finding-reference", point=point) if point else ""
        findings += leg_findings(replace(check, explained=told), angle_sentence)
    return tuple(findings)


def leg_findings(check: LegCheck, angle_sentence: str = "") -> tuple[CardFinding, ...]:
    """Give every disagreement of one leg, azimuths first.

    ``angle_sentence`` is said of a sum that was made with another angle than the plan's.
    """
    return (
        *_length(check),
        *via_findings(check),
        *azimuths_against_points(check),
        *azimuths_against_each_other(check, angle_sentence),
        *distance_against_points(check),
        *paces_against_distance(check),
    )


def _length(check: LegCheck) -> Iterator[CardFinding]:
    """Find a leg that nobody walks in one: one of its points is elsewhere."""
    said = check.said
    if said is None or not overlong(check):
        return
    message = sentence(
        "finding-overlong",
        leg=check.leg.name,
        start=check.start.name,
        end=check.end.name,
        km=Number(value=said.chord_m / 1000.0, decimals=1),
        explained=check.explained,
    )
    yield CardFinding(
        leg=check.leg.name, what="position", given=None, computed=said.chord_m, message=message
    )
