"""Steps that say again, in other words, what the likeliest mistake of a leg says already."""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping, Sequence

from audit.coaching.steps import Hop, LegSteps, Step
from audit.diagnosis.finding import Finding
from audit.guide.cause_names import CAUSE_KINDS, JUDGEMENTS
from audit.measurement.leg_measures import LegMeasures
from audit.settings import CoachingSettings
from audit.units import turn_degrees

_DIRECTION = frozenset(CAUSE_KINDS["Direction"])
_LINE = frozenset(CAUSE_KINDS["Holding the line"])
_DISTANCE = frozenset(CAUSE_KINDS["Distance"])
_PLACE = frozenset(CAUSE_KINDS["The point"]) - {"wrong-start"}
"""Who made for another place set another azimuth and counted another distance; who only began
elsewhere did neither."""
_REFERENCE = frozenset(
    {"digits-transposed", "digit-wrong", "easting-northing-swapped", "wrong-grid-line"}
)
"""Slips of one reference, of which two may lead to the same place or near each other."""
_TO_A_PLACE: frozenset[Step] = frozenset(
    {"measured", "set", "walked", "distance measured", "paced"}
)
_ON_PAPER: frozenset[Step] = frozenset(
    {"given", "plotted", "measured", "converted", "distance measured", "turned into paces"}
)


def named_mistake(findings: Sequence[Finding], settings: CoachingSettings) -> str | None:
    """Give the likeliest mistake of a leg by its name, where it is likely enough to be named."""
    first = likeliest(findings)
    return first.cause if first and first.probability >= settings.named_probability else None


def likeliest(findings: Sequence[Finding]) -> Finding | None:
    """Give the likeliest finding of a leg where it is a mistake."""
    return findings[0] if findings and findings[0].cause not in JUDGEMENTS else None


def without_explained(
    of: LegSteps, causes: Collection[str], findings: Sequence[Finding], walked: LegMeasures
) -> tuple[Hop, ...]:
    """Give the hops of a leg that none of its mistakes explains.

    A turn or a length explains one hop, the one that names it or comes nearest to it; another
    place explains azimuth and distance alike. What the walker's own card shows by a slip of its
    own stays.
    """
    left = list(of.hops)
    for finding in findings:
        if finding.cause not in causes:
            continue
        fitting = [hop for hop in left if hop.entered and explains(finding, hop, walked)]
        if finding.cause not in _PLACE:
            fitting = sorted(fitting, key=lambda hop: _left_over(finding, hop, walked))
            named = [hop for hop in fitting if finding.cause in hop.slips]
            fitting = (named or fitting)[:1]
        left = [hop for hop in left if hop not in fitting]
    return tuple(left)


def explains(finding: Finding, hop: Hop, walked: LegMeasures) -> bool:
    """Tell whether a mistake, had it been made, leaves less of a hop than there is."""
    if finding.cause in hop.slips or _leads_there(finding, hop):
        return True
    if len(hop.steps) != 1 or (hop.slips and _ON_PAPER.issuperset(hop.steps)):
        return False
    if finding.cause in _PLACE:
        return hop.kind != "point" and _TO_A_PLACE.issuperset(hop.steps)
    if hop.kind == "direction":
        of_turn = finding.cause in _DIRECTION
        of_turn |= finding.cause in _LINE and hop.steps == ("walked",)
        return of_turn and _left_over(finding, hop, walked) < abs(hop.error)
    if hop.kind == "distance":
        return finding.cause in _DISTANCE and _left_over(finding, hop, walked) < abs(hop.error)
    return False


def read_otherwise(finding: Finding, of: LegSteps | None) -> bool:
    """Tell whether the walker's card shows the slip of a reference to be another, near this one.

    What stands on paper is exact, and the walk, which led to the one, led as well to the other.
    """
    given = [hop for hop in ([] if of is None else of.hops) if hop.steps == ("given",)]
    return any(
        hop.entered
        and hop.slips
        and not (finding.cause in hop.slips or _leads_there(finding, hop))
        and _short_of(finding, hop) <= 0.5 * hop.error
        for hop in given
    )


def _leads_there(finding: Finding, hop: Hop) -> bool:
    """Tell whether a slip leads as far off as the reference lies that the card gives."""
    return _short_of(finding, hop) <= hop.tolerance


def _short_of(finding: Finding, hop: Hop) -> float:
    """Give by how much a slip misses what the card's reference is off by; endless if it is none."""
    if hop.steps != ("given",) or finding.cause not in _REFERENCE or finding.predicted is None:
        return math.inf
    return abs(finding.predicted - hop.error)


def bends_so(findings: Mapping[str, Finding], hop: Hop) -> bool:
    """Tell whether the line bends by most of what was walked off the azimuth."""
    veer = findings.get("veer")
    if veer is None or veer.predicted is None:
        return False
    return abs(turn_degrees(veer.predicted, hop.error)) <= 0.5 * abs(hop.error)


def _left_over(finding: Finding, hop: Hop, walked: LegMeasures) -> float:
    """Give what a mistake leaves of a hop, in its unit; without a number for it, nothing."""
    predicted = finding.predicted
    if predicted is None:
        return 0.0
    if hop.kind == "direction":
        return abs(turn_degrees(predicted, hop.error)) if finding.unit == "deg" else 0.0
    if finding.unit == "ratio":
        planned_m = walked.straight_m - walked.distance_error_m
        return abs(hop.error - (predicted - 1.0) * planned_m)
    return abs(hop.error - predicted) if finding.unit == "m" else 0.0
