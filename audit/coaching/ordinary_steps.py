"""Steps and causes made to say the same: what the walk as a whole calls ordinary is no error."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from audit.coaching.step_sentences import step_sentences
from audit.coaching.steps import Hop, LegSteps, Step
from audit.diagnosis.finding import Finding
from audit.guide.cause_names import WITHIN_SKILL
from audit.settings import CoachingSettings

_ON_FOOT: frozenset[Step] = frozenset({"walked", "paced"})
"""Steps that only the ground shows, with the walker's scatter in them. What stands on paper, was
set or was counted by the log is exact, and no scatter excuses it."""


def with_ordinary(
    steps: Mapping[str, LegSteps],
    causes: Mapping[str, Sequence[Finding]],
    settings: CoachingSettings,
) -> dict[str, LegSteps]:
    """Give the steps of all legs, those on foot called ordinary where the causes say so."""
    return {
        name: _judged(of) if _ordinary(causes.get(name, ()), settings) else of
        for name, of in steps.items()
    }


def _ordinary(findings: Sequence[Finding], settings: CoachingSettings) -> bool:
    return any(
        one.cause == WITHIN_SKILL and one.probability >= settings.ordinary_probability
        for one in findings
    )


def _judged(of: LegSteps) -> LegSteps:
    hops = tuple(replace(hop, ordinary=True) if _scatters(hop) else hop for hop in of.hops)
    return replace(of, hops=hops, sentences=step_sentences(hops))


def _scatters(hop: Hop) -> bool:
    return hop.entered and not hop.written and _ON_FOOT.issuperset(hop.steps)
