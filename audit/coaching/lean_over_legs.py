"""A heading error to one side over all legs or nearly all: one thing to look at, of many makers."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from audit.coaching.explained_steps import named_mistake
from audit.coaching.shown import Shown
from audit.coaching.sure_legs import sure_legs
from audit.coaching.task import Task, TaskKind, work_on
from audit.diagnosis.steady_sizes import STEADY
from audit.leg_card.told_numbers import told_legs
from audit.measurement.leg_measures import LegMeasures
from audit.settings import CoachingSettings
from audit.statistics.spread import TWO_SIDED_95
from audit.words import sentence
from audit.words.figures import Turn

_FEWEST = 3
"""Legs that a lean is read from; two to one side are so by chance every other time."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lean:
    """What the legs lean by on the average, clockwise positive, and its 95 % half interval.

    ``legs`` are those out to that side, of ``out_of`` legs that it is the average of.
    """

    mean_deg: float
    half_95_deg: float
    legs: Mapping[str, LegMeasures]
    out_of: int


def lean_over_legs(shown: Shown, settings: CoachingSettings) -> Lean | None:
    """Give the lean of the legs of which no mistake is named; None where it may be chance.

    It is no less than is worth a word, and more than its own error.
    """
    legs = {
        name: one
        for name, one in sure_legs(shown.legs, settings).items()
        if name not in {*shown.aside, *shown.under_way}
        and one.line_followed
        and abs(one.azimuth_error_deg) <= settings.wandered_deg
        and named_mistake(shown.causes.get(name, ()), settings) in {None, *STEADY}
    }
    alike = _alike(legs)
    if len(alike) < _FEWEST:
        return None
    mean_deg = _mean_deg(alike)
    half_deg = TWO_SIDED_95 * _standard_error_deg(list(alike.values()), mean_deg)
    to_side = [name for name, one in legs.items() if one.azimuth_error_deg * mean_deg > 0.0]
    leaning = {name: alike[name] for name in to_side if name in alike}
    if len(to_side) < settings.leaning_share * len(legs):
        return None
    if len(leaning) < settings.leaning_of_walked * len(shown.walked):
        return None
    if abs(mean_deg) < max(settings.lean_deg, half_deg):
        return None
    return Lean(
        mean_deg=mean_deg,
        half_95_deg=half_deg,
        legs=leaning,
        out_of=len(alike),
    )


def _alike(legs: Mapping[str, LegMeasures]) -> dict[str, LegMeasures]:
    """Leave out legs that are out by more than twice the average: another thing put them out."""
    left = dict(legs)
    while left:
        worst = max(left, key=lambda name: abs(left[name].azimuth_error_deg))
        if abs(left[worst].azimuth_error_deg) <= 2.0 * abs(_mean_deg(left)):
            break
        del left[worst]
    return left


def _mean_deg(legs: Mapping[str, LegMeasures]) -> float:
    return sum(one.azimuth_error_deg for one in legs.values()) / len(legs)


def lean_task(lean: Lean) -> Task:
    """Give it as an observation: the angle, the compass and the walker all make such a lean."""
    evidence = sentence(
        "coach-lean",
        legs=told_legs(list(lean.legs)),
        count=lean.out_of,
        side="right" if lean.mean_deg > 0.0 else "left",
        mean=Turn(degrees=lean.mean_deg),
        error=Turn(degrees=lean.half_95_deg),
    )
    sizes = [math.hypot(*one.ledger.heading) for one in lean.legs.values()]
    return Task(
        kind=TaskKind.PART,
        metres=sum(sizes),
        ordinary_m=sum(sizes) * lean.half_95_deg / abs(lean.mean_deg),
        worst_m=max(one.miss_m for one in lean.legs.values()),
        work=work_on("steady-bias", evidence, list(lean.legs), certain=False),
    )


def _standard_error_deg(legs: Sequence[LegMeasures], mean_deg: float) -> float:
    """Give that of the mean: from the scatter of the legs, and no less than the receiver's."""
    scatter = sum((one.azimuth_error_deg - mean_deg) ** 2 for one in legs) / (len(legs) - 1)
    measured = sum(one.heading.own_sd_deg**2 for one in legs) / len(legs)
    return math.sqrt(max(scatter, measured) / len(legs))
