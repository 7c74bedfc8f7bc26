"""All that coaching makes of a walk: the steps of its legs, and the talk after it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from audit.coaching.leg_steps import walk_steps
from audit.coaching.ordinary_steps import with_ordinary
from audit.coaching.steps import LegSteps
from audit.coaching.talk import Coaching
from audit.coaching.to_keep import to_keep
from audit.coaching.to_work_on import to_work_on
from audit.coaching.walkers_card import own_legs
from audit.diagnosis.finding import Finding
from audit.leg_card import LegCard
from audit.measurement.leg_measures import LegAudit
from audit.plan import Plan
from audit.settings import CoachingSettings
from audit.walkers_log import WalkersLog
from audit.words import sentence

_UNUSED = ("the name of its file", "arrival_radius_m", "grid: ", "Course grid", "names no ")
"""Notes on reading a card that the comparison makes no use of: its name, its grid, its ends."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TalkedOver:
    """Steps by the name of the leg, the talk, and what laying the cards together assumed."""

    steps: Mapping[str, LegSteps]
    coaching: Coaching
    notes: tuple[str, ...]


def talk_over(
    plan: Plan,
    card: LegCard,
    legs: Sequence[LegAudit],
    findings: Mapping[int, Sequence[Finding]],
    *,
    log: WalkersLog | None,
    own_card: Plan | None,
    settings: CoachingSettings,
) -> TalkedOver:
    """Lay log and own card beside the walk; ``findings`` are by the number of the leg."""
    own, notes = own_legs(card, own_card, plan) if own_card is not None else ({}, ())
    causes = {
        leg.card.name: findings[number] for number, leg in enumerate(legs) if number in findings
    }
    steps = with_ordinary(walk_steps(legs, card, own, log, settings), causes, settings)
    coaching = Coaching(
        keep=to_keep(
            legs, causes, card.arrival_radius_m, logged=log is not None, settings=settings
        ),
        work_on=to_work_on(legs, causes, steps, settings),
    )
    if own_card is not None:
        read = (note for note in own_card.notes if not any(word in note for word in _UNUSED))
        notes = (*notes, *(sentence("plan-card-note", note=note) for note in read))
    return TalkedOver(steps=steps, coaching=coaching, notes=notes)
