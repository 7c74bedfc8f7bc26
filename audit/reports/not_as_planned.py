"""What was done in place of the plan, for the head: another order, points left out."""

from __future__ import annotations

from audit.debriefing.finished_debrief import Debrief
from audit.diagnosis.finding import Finding
from audit.reports import digits, wording
from audit.words import say
from audit.words.figures import Listed


def not_as_planned(debrief: Debrief) -> list[str]:
    """Give a sentence each; none where every leg was gone to in its turn, or may have been."""
    named = [one for leg in debrief.legs if (one := wording.named_mistake(leg)) is not None]
    return [*_other_order(named), *_left_out(named)]


def _other_order(named: list[Finding]) -> list[str]:
    """Give the points of all legs that were out of turn, in the order of passing."""
    passed = {(point.passage.nearest_s, point.point): one for one in named for point in one.passed}
    if not passed:
        return []
    names = Listed(things=[name for _, name in sorted(passed)], link="comma")
    return [say("verdict-other-order", points=names, sure=_least(list(passed.values())))]


def _left_out(named: list[Finding]) -> list[str]:
    missed = [one for one in named if one.point]
    names = list(dict.fromkeys(one.point for one in missed))
    if not names:
        return []
    points = Listed(things=names)
    return [say("verdict-left-out", points=points, count=len(names), sure=_least(missed))]


def _least(found: list[Finding]) -> str:
    return digits.percent(min(one.probability for one in found))
