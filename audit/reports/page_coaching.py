"""What to keep and what to work on, as sentences."""

from __future__ import annotations

from audit.debriefing.records import Debrief
from audit.reports import page_legs, wording

_MOST = 2


def to_keep(debrief: Debrief) -> list[str]:
    """Give what went well, at most two sentences."""
    walked = [(leg, leg.audit.measures) for leg in debrief.legs if leg.audit.measures is not None]
    held = [leg.name for leg, one in walked if wording.azimuth_error(one) == wording.AS_PLANNED]
    counted = [leg.name for leg, one in walked if wording.distance_error(one) == wording.AS_PLANNED]
    said = []
    if held:
        said.append(f"The azimuth was held as planned on {wording.leg_names(held)}.")
    if counted:
        said.append(f"The distance was walked as planned on {wording.leg_names(counted)}.")
    return said[:_MOST]


def to_work_on(debrief: Debrief) -> list[str]:
    """Give what to practise, the worst leg first, at most two sentences."""
    legs = sorted(
        (leg for leg in debrief.legs if leg.audit.measures is not None),
        key=lambda leg: -(leg.audit.measures.miss_m if leg.audit.measures else 0.0),
    )
    advised: dict[str, list[str]] = {}
    for leg in legs:
        advice = page_legs.advice(leg)
        if advice:
            advised.setdefault(advice, []).append(leg.name)
    return [f"{advice} ({wording.leg_names(sorted(names))})" for advice, names in advised.items()][
        :_MOST
    ]
