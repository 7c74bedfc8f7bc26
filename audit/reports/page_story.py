"""What the walk as a whole tells, as sentences at the head of the page."""

from __future__ import annotations

from audit.debriefing.records import Debrief, LegDebrief
from audit.leg_card.wording import leg_names
from audit.settings import Settings


def story_sentences(debrief: Debrief) -> tuple[str, ...]:
    """Give the sentences that follow the verdict; none where it says all there is to say."""
    unsure = [leg.name for leg in debrief.legs if _is_unsure(leg)]
    if not unsure:
        return ()
    said = (
        f"Which part of the recording belongs to {leg_names(unsure)} is not sure: "
        "look at the map before trusting those figures."
    )
    return (said,)


def _is_unsure(leg: LegDebrief) -> bool:
    measured = leg.audit.measures is not None
    return measured and leg.audit.confidence < Settings().quality.unsure
