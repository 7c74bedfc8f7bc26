"""Sets a recorded walk on foot against its planned legs: what was walked, and why it differed.

>>> import audit
>>> plan = audit.read_plan("plan.toml")            # doctest: +SKIP
>>> track = audit.read_track("walk.gpx")           # doctest: +SKIP
>>> audit.debrief(plan, track).legs_frame()        # doctest: +SKIP
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from audit.classroom.class_result import ClassResult
    from audit.classroom.grade_class import grade
    from audit.debriefing.debrief_walk import debrief
    from audit.debriefing.finished_debrief import Debrief, LegDebrief
    from audit.errors import AuditError, InputRefusedError, Problem
    from audit.leg_card.carried_card import CarriedCard, carried_card
    from audit.leg_card.check_plan import PlanCheck, check_plan
    from audit.leg_card.onto_grid import plan_onto_grid
    from audit.pacing.pace_count import PaceCount, pace_count
    from audit.plan import Plan, PlannedLeg, Point
    from audit.readers.gpx_track import read_track
    from audit.readers.plan_file import read_plan
    from audit.readers.punch_file import read_punches
    from audit.readers.roster_file import read_roster
    from audit.readers.standard_file import read_standard
    from audit.readers.walkers_log_file import read_log
    from audit.readers.words_file import read_words
    from audit.roster import PunchList, Roster
    from audit.settings import Settings
    from audit.standard import Standard
    from audit.track import Track
    from audit.words.spoken_words import Words

__all__ = [
    "AuditError",
    "CarriedCard",
    "ClassResult",
    "Debrief",
    "InputRefusedError",
    "LegDebrief",
    "PaceCount",
    "Plan",
    "PlanCheck",
    "PlannedLeg",
    "Point",
    "Problem",
    "PunchList",
    "Roster",
    "Settings",
    "Standard",
    "Track",
    "Words",
    "carried_card",
    "check_plan",
    "debrief",
    "grade",
    "pace_count",
    "plan_onto_grid",
    "read_log",
    "read_plan",
    "read_punches",
    "read_roster",
    "read_standard",
    "read_track",
    "read_words",
]

__version__ = "0.1.0"

_WHERE = {
    "AuditError": "audit.errors",
    "CarriedCard": "audit.leg_card.carried_card",
    "ClassResult": "audit.classroom.class_result",
    "Debrief": "audit.debriefing.finished_debrief",
    "InputRefusedError": "audit.errors",
    "LegDebrief": "audit.debriefing.finished_debrief",
    "PaceCount": "audit.pacing.pace_count",
    "Plan": "audit.plan",
    "PlanCheck": "audit.leg_card.check_plan",
    "PlannedLeg": "audit.plan",
    "Point": "audit.plan",
    "Problem": "audit.errors",
    "PunchList": "audit.roster",
    "Roster": "audit.roster",
    "Settings": "audit.settings",
    "Standard": "audit.standard",
    "Track": "audit.track",
    "Words": "audit.words.spoken_words",
    "carried_card": "audit.leg_card.carried_card",
    "check_plan": "audit.leg_card.check_plan",
    "debrief": "audit.debriefing.debrief_walk",
    "grade": "audit.classroom.grade_class",
    "pace_count": "audit.pacing.pace_count",
    "plan_onto_grid": "audit.leg_card.onto_grid",
    "read_log": "audit.readers.walkers_log_file",
    "read_plan": "audit.readers.plan_file",
    "read_words": "audit.readers.words_file",
    "read_punches": "audit.readers.punch_file",
    "read_roster": "audit.readers.roster_file",
    "read_standard": "audit.readers.standard_file",
    "read_track": "audit.readers.gpx_track",
}


def __getattr__(name: str) -> object:
    """Import a public name when it is first asked for, so that starting stays quick."""
    if name not in _WHERE:
        message = f"module 'audit' has no attribute {name!r}"
        raise AttributeError(message)
    value = getattr(import_module(_WHERE[name]), name)
    globals()[name] = value
    return value


def __dir__() -> list[str]:
    return sorted([*globals(), *__all__])
