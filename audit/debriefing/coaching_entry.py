"""Steps, what-ifs and coaching as the document gives them."""

from __future__ import annotations

from audit.coaching.steps import LegSteps
from audit.coaching.talk import Coaching
from audit.coaching.what_if import OtherEnd, WhatIf
from audit.debriefing.coaching_shape import (
    CoachingEntry,
    OtherEndEntry,
    StepsEntry,
    WhatIfEntry,
)


def steps_entry(steps: LegSteps | None) -> StepsEntry | None:
    """Give the steps of a leg, None where nothing speaks of them."""
    if steps is None:
        return None
    return {
        "entered": list(steps.entered),
        "sentences": list(steps.sentences),
        "hops": [
            {
                "steps": list(hop.steps),
                "kind": hop.kind,
                "error": float(hop.error),
                "tolerance": float(hop.tolerance),
                "off_m": float(hop.off_m),
                "entered": hop.entered,
                "slips": list(hop.slips),
                "sentence": hop.sentence,
            }
            for hop in steps.hops
        ],
    }


def what_if_entry(what_if: WhatIf | None) -> WhatIfEntry | None:
    """Give where a leg would have ended, None for a leg not walked."""
    if what_if is None:
        return None
    return {
        "planned_azimuth": _end(what_if.planned_azimuth),
        "planned_distance": _end(what_if.planned_distance),
    }


def coaching_entry(coaching: Coaching) -> CoachingEntry:
    """Give what to keep and what to work on."""
    return {
        "keep": [
            {
                "what": one.what,
                "evidence": one.evidence,
                "skill": one.skill,
                "legs": list(one.legs),
            }
            for one in coaching.keep
        ],
        "work_on": [
            {
                "cause": one.cause,
                "certain": one.certain,
                "what": one.what,
                "evidence": one.evidence,
                "exercise": one.exercise,
                "legs": list(one.legs),
                "one_of": list(one.one_of),
            }
            for one in coaching.work_on
        ],
        "left_aside": list(coaching.left_aside),
    }


def _end(end: OtherEnd) -> OtherEndEntry:
    return {"miss": [end.east_m, end.north_m], "miss_m": end.miss_m, "sd_m": end.sd_m}
