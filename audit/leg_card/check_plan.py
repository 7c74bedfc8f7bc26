"""The plan's own arithmetic, checked before anyone walks: findings and worked sums."""

from __future__ import annotations

from dataclasses import dataclass, replace

from audit.leg_card.finished_card import CardFinding, LegCard
from audit.leg_card.reference_precision import reference_precision
from audit.leg_card.work_out import worked_out
from audit.leg_card.worked_sums import LegSums, worked_sums
from audit.plan import Plan
from audit.settings import Settings

_ANY_LENGTH_M = 1e8
"""Longer than the way round the Earth: a leg of any length is to be told, not refused."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanCheck:
    """A plan worked out, with all that is to be put right.

    Attributes
    ----------
    findings : tuple of CardFinding
        Those of the card, and legs whose references are too coarse.
    sums : tuple of LegSums
        Leg by leg.
    """

    source: str
    card: LegCard
    findings: tuple[CardFinding, ...]
    sums: tuple[LegSums, ...]


def check_plan(plan: Plan, *, settings: Settings | None = None) -> PlanCheck:
    """Check a plan: azimuths, distances, paces, references, and the angle itself.

    Raises
    ------
    InputRefusedError
        Where no card can be made of the plan at all.
    """
    settings = settings or Settings()
    of_card = replace(settings.card, longest_leg_m=_ANY_LENGTH_M)
    card, checks = worked_out(plan, settings=replace(settings, card=of_card))
    coarse = [
        finding for check in checks for finding in reference_precision(check, card.arrival_radius_m)
    ]
    disputed: dict[str, set[str]] = {}
    for finding in card.findings:
        if finding.leg is not None:
            disputed.setdefault(finding.leg, set()).add(finding.what)
    return PlanCheck(
        source=plan.source,
        card=card,
        findings=(*card.findings, *coarse),
        sums=tuple(
            worked_sums(check, leg, disputed.get(check.leg.name, ()))
            for check, leg in zip(checks, card.legs, strict=True)
        ),
    )
