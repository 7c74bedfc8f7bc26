"""What the walk as a whole tells, as sentences at the head of the page."""

from __future__ import annotations

from audit.coaching.sure_legs import is_sure
from audit.debriefing.finished_debrief import Debrief, LegDebrief
from audit.reports.wording import leg_names
from audit.settings import Settings
from audit.words import say


def story_sentences(debrief: Debrief) -> tuple[str, ...]:
    """Give the sentences that follow the verdict; none where it says all there is to say."""
    unsure = [leg.name for leg in debrief.legs if _is_unsure(leg)]
    if not unsure:
        return ()
    return (say("verdict-unsure", legs=leg_names(unsure)),)


def _is_unsure(leg: LegDebrief) -> bool:
    return leg.audit.measures is not None and not is_sure(leg.audit, Settings().coaching)
