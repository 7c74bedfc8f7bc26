"""Distances out to one side over all legs or nearly all: one thing, of pace, count or ground."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from audit.coaching.explained_steps import named_mistake
from audit.coaching.ordinary_metres import measured_sd_m
from audit.coaching.shown import Shown
from audit.coaching.sure_legs import sure_legs
from audit.coaching.task import Task, TaskKind, work_on
from audit.diagnosis.steady_sizes import STEADY
from audit.guide.cause_names import CAUSE_KINDS
from audit.leg_card.told_numbers import told_legs
from audit.measurement.leg_measures import LegMeasures
from audit.settings import CoachingSettings
from audit.statistics.spread import TWO_SIDED_95
from audit.words import sentence
from audit.words.figures import Percent

_FEWEST = 4
"""Legs that it is read from; three to one side are so by chance once in four walks."""
_LENGTHS = frozenset({*CAUSE_KINDS["Distance"], *CAUSE_KINDS["The point"]}) - STEADY
"""Mistakes that put a distance out by themselves."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """By what share the legs were walked too far, or short (negative), on the average.

    ``half_95`` is its 95 % half interval; ``legs`` are those out to that side, of ``out_of``.
    """

    mean: float
    half_95: float
    legs: Mapping[str, LegMeasures]
    out_of: int


def stretch_over_legs(shown: Shown, settings: CoachingSettings) -> Stretch | None:
    """Give it of the legs whose distance no named mistake put out; None where it may be chance.

    It is no less than is worth a word, and more than its own error.
    """
    legs = {
        name: one
        for name, one in sure_legs(shown.legs, settings).items()
        if name not in {*shown.aside, *shown.under_way, *shown.carried}
        and one.line_followed
        and named_mistake(shown.causes.get(name, ()), settings) not in _LENGTHS
    }
    errors = [one.distance_ratio - 1.0 for one in legs.values()]
    if len(errors) < _FEWEST:
        return None
    mean = sum(errors) / len(errors)
    scatter = sum((error - mean) ** 2 for error in errors) / (len(errors) - 1)
    half_95 = TWO_SIDED_95 * math.sqrt(scatter / len(errors))
    to_side = {name: one for name, one in legs.items() if (one.distance_ratio - 1.0) * mean > 0.0}
    if len(to_side) < settings.leaning_share * len(legs):
        return None
    if len(to_side) < settings.leaning_of_walked * len(shown.walked):
        return None
    if abs(mean) < max(settings.good_distance_share, half_95):
        return None
    return Stretch(mean=mean, half_95=half_95, legs=to_side, out_of=len(errors))


def stretch_task(stretch: Stretch, radius_m: float) -> list[Task]:
    """Give it as an observation: pace, count and ground all make it; none where all arrived."""
    worst_m = max(one.miss_m for one in stretch.legs.values())
    if worst_m <= radius_m:
        return []
    sizes = [math.hypot(*one.ledger.distance) for one in stretch.legs.values()]
    measured = [measured_sd_m("distance", one) for one in stretch.legs.values()]
    by_chance_m = sum(sizes) * stretch.half_95 / abs(stretch.mean)
    evidence = sentence(
        "coach-stretch",
        legs=told_legs(list(stretch.legs)),
        count=stretch.out_of,
        side="far" if stretch.mean > 0.0 else "short",
        mean=Percent(share=abs(stretch.mean), decimals=0),
        error=Percent(share=stretch.half_95, decimals=0),
    )
    cause = "pace-long" if stretch.mean > 0.0 else "pace-short"
    return [
        Task(
            kind=TaskKind.PART,
            metres=sum(sizes),
            ordinary_m=math.hypot(by_chance_m, TWO_SIDED_95 * math.hypot(*measured)),
            worst_m=worst_m,
            work=work_on(cause, evidence, list(stretch.legs), certain=False),
        )
    ]
