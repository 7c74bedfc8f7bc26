"""Steps of a leg that was measured from a wrong plot: the leg before has made that mistake."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import pairwise

from audit.coaching.step_sentences import step_sentences
from audit.coaching.steps import Hop, LegSteps
from audit.diagnosis.carried_over import CarriedOver
from audit.diagnosis.finding_words import far_words, turn_words
from audit.measurement.leg_measures import LegAudit
from audit.settings import CoachingSettings
from audit.units import turn_degrees
from audit.words import sentence


def with_carried(
    steps: Mapping[str, LegSteps],
    legs: Sequence[LegAudit],
    carried: Mapping[str, CarriedOver],
    settings: CoachingSettings,
) -> dict[str, LegSteps]:
    """Give the steps of all legs, those marked by which a leg only inherits the plot before it.

    They are the turn and the length that the plot alone makes, wherever card or log show them,
    and the wrong reference that the card of the leg before has as well.
    """
    told = dict(steps)
    for before, leg in pairwise(legs):
        name = leg.card.name
        if name in carried and name in steps:
            own = steps.get(before.card.name)
            told[name] = _marked(
                steps[name], () if own is None else own.hops, carried[name], leg, settings
            )
    return told


def _marked(
    of: LegSteps,
    before: Sequence[Hop],
    carried: CarriedOver,
    leg: LegAudit,
    settings: CoachingSettings,
) -> LegSteps:
    hops = tuple(
        replace(hop, carried=True)
        if hop.entered and hop in before
        else _inherited(hop)
        if hop.entered and _inherits(hop, carried, leg, settings)
        else hop
        for hop in of.hops
    )
    return replace(of, hops=hops, sentences=step_sentences(hops))


def _inherited(hop: Hop) -> Hop:
    """Say how much is inherited, and of no slip that it fits."""
    off = turn_words(hop.error, 1) if hop.kind == "direction" else far_words(hop.error)
    return replace(hop, carried=True, slips=(), sentence=sentence("step-inherited", off=off))


def _inherits(hop: Hop, carried: CarriedOver, leg: LegAudit, settings: CoachingSettings) -> bool:
    """Tell whether the plot alone makes what a hop adds, to the error of plotting."""
    planned_m, room_m = leg.card.distance_m, settings.carried_room_m
    if hop.kind == "direction":
        room_deg = math.degrees(math.asin(min(1.0, room_m / planned_m)))
        return abs(turn_degrees(carried.turn_deg, hop.error)) <= hop.tolerance + room_deg
    if hop.kind == "distance":
        made_m = planned_m * math.expm1(carried.log_ratio)
        return abs(hop.error - made_m) <= hop.tolerance + room_m
    return False
