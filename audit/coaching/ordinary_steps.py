"""Steps and causes made to say the same: what the walk as a whole calls ordinary is no error."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace

from audit.coaching.explained_steps import likeliest, without_explained
from audit.coaching.step_sentences import step_sentences
from audit.coaching.steps import Hop, LegSteps, Step
from audit.diagnosis.finding import Finding
from audit.diagnosis.walkers_scatter import WalkersScatter
from audit.guide.cause_names import WITHIN_SKILL
from audit.measurement.leg_measures import LegMeasures
from audit.settings import CoachingSettings
from audit.statistics.spread import TWO_SIDED_95

_ON_FOOT: frozenset[Step] = frozenset({"walked", "paced"})
"""Steps that only the ground shows, with the walker's scatter in them. What stands on paper, was
set or was counted by the log is exact, and no scatter excuses it."""


def with_ordinary(
    steps: Mapping[str, LegSteps],
    causes: Mapping[str, Sequence[Finding]],
    walked: Mapping[str, LegMeasures],
    scatter: WalkersScatter,
    radius_m: float,
    settings: CoachingSettings,
) -> dict[str, LegSteps]:
    """Give the steps of all legs, those on foot called ordinary where the causes say so.

    On a leg with a mistake so is what the mistake leaves over, where it is no more than twice
    what this walker's legs scatter by and are measured to.
    """
    told = {}
    for name, of in steps.items():
        findings = causes.get(name, ())
        scattered = [hop for hop in of.hops if _scatters(hop)]
        if not _ordinary(findings, settings):
            scattered = [
                hop
                for hop in _left_over(of, findings, walked[name])
                if hop in scattered and abs(hop.error) <= _room(hop, walked[name], scatter)
            ]
        seen = [hop for hop in scattered if _in_sight(hop, walked[name], radius_m, scatter)]
        told[name] = _judged(of, scattered, seen) if scattered else of
    return told


def _ordinary(findings: Sequence[Finding], settings: CoachingSettings) -> bool:
    return any(
        one.cause == WITHIN_SKILL and one.probability >= settings.ordinary_probability
        for one in findings
    )


def _left_over(of: LegSteps, findings: Sequence[Finding], walked: LegMeasures) -> Sequence[Hop]:
    """Give the hops that the likeliest mistake does not explain; none where that is no mistake."""
    likely = likeliest(findings)
    return () if likely is None else without_explained(of, {likely.cause}, findings, walked)


def _room(hop: Hop, walked: LegMeasures, scatter: WalkersScatter) -> float:
    """Give what is ordinary of a hop on foot, in its unit: 95 % of scatter and of measuring."""
    if hop.kind == "direction":
        return math.hypot(TWO_SIDED_95 * scatter.turn_deg, walked.heading.told_half_95_deg)
    return TWO_SIDED_95 * math.hypot(scatter.log_ratio * walked.straight_m, walked.straight_sd_m)


def _in_sight(hop: Hop, walked: LegMeasures, radius_m: float, scatter: WalkersScatter) -> bool:
    """Tell whether a walk ended at its point by more short of its count than the walker scatters.

    Who sees the point goes to it, and notes the count of his card.
    """
    short = hop.steps == ("paced",) and hop.error < -_room(hop, walked, scatter)
    return short and walked.miss_m <= radius_m


def _judged(of: LegSteps, ordinary: Sequence[Hop], in_sight: Sequence[Hop]) -> LegSteps:
    hops = tuple(
        replace(hop, ordinary=True, in_sight=hop in in_sight) if hop in ordinary else hop
        for hop in of.hops
    )
    return replace(of, hops=hops, sentences=step_sentences(hops))


def _scatters(hop: Hop) -> bool:
    return hop.entered and not hop.written and _ON_FOOT.issuperset(hop.steps)
