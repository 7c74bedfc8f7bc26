"""Slips on paper or at the compass that the walk made good: an arrival that was luck, or sight."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from audit.coaching.step_sentences import step_sentences
from audit.coaching.steps import Hop, LegSteps
from audit.measurement.leg_measures import LegMeasures


def with_made_good(
    steps: Mapping[str, LegSteps], walked: Mapping[str, LegMeasures], radius_m: float
) -> dict[str, LegSteps]:
    """Give the steps of all legs, those marked that would have led past a point that was met."""
    return {
        name: _marked(of, radius_m) if _met(walked[name], radius_m) else of
        for name, of in steps.items()
    }


def _met(one: LegMeasures, radius_m: float) -> bool:
    """Tell whether a leg led from its start to its point: from elsewhere other numbers lead there.

    One that was under way when the recording began started nobody knows where.
    """
    began_off_m = math.hypot(*one.ledger.inherited)
    return max(one.miss_m, began_off_m) <= radius_m and not one.under_way


def _marked(of: LegSteps, radius_m: float) -> LegSteps:
    hops = tuple(
        replace(hop, made_good=True) if _led_past(hop, radius_m) else hop for hop in of.hops
    )
    if hops == of.hops:
        return of
    said = len(step_sentences(of.hops))
    return replace(of, hops=hops, sentences=(*step_sentences(hops), *of.sentences[said:]))


def _led_past(hop: Hop, radius_m: float) -> bool:
    """Tell whether a step between two written numbers leads further off than who arrives ends."""
    return hop.written and hop.entered and hop.off_m > radius_m
