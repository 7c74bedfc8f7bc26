"""What the walk as a whole tells, as sentences at the head of the page."""

from __future__ import annotations

from audit.coaching.sure_legs import is_sure
from audit.debriefing.finished_debrief import Debrief, LegDebrief
from audit.leg_card import LegCard
from audit.reports.angle_words import east_or_west
from audit.reports.wording import leg_names
from audit.words import say


def story_sentences(debrief: Debrief) -> tuple[str, ...]:
    """Give the sentences that follow the verdict; none where it says all there is to say."""
    unsure = [leg.name for leg in debrief.legs if _is_unsure(leg)]
    said = [say("verdict-unsure", legs=leg_names(unsure))] if unsure else []
    return (*said, *plan_angle(debrief.card))


def plan_angle(card: LegCard) -> tuple[str, ...]:
    """Say that the plan's angle is to be put right: errors of its size lie with the plan."""
    if not card.angle_at_fault:
        return ()
    angle = east_or_west(card.angles.grid_magnetic_angle_deg)
    return (say("verdict-plan-angle", angle=angle),)


def _is_unsure(leg: LegDebrief) -> bool:
    return leg.audit.measures is not None and not is_sure(leg.audit, leg.settings.coaching)
