"""A walk that is displaced as a whole: the starts of its legs all lie alike off their points."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from audit.diagnosis.causes import wrong_start
from audit.diagnosis.finding import Finding
from audit.diagnosis.finding_words import place_words
from audit.diagnosis.one_of_two import OneOfTwo
from audit.guide.cause_names import CANNOT_TELL
from audit.measurement.leg_measures import LegAudit, LegMeasures
from audit.settings import DiagnosisSettings
from audit.words import Sentence, sentence
from audit.words.figures import Listed

_WITHIN_95 = 2.4477
"""So many standard errors from a place hold 95 in 100 of a plane's normal scatter."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Displaced:
    """What the ends of several legs share: metres east and north of their points.

    ``legs`` are indices of those whose starts lie so.
    """

    east_m: float
    north_m: float
    legs: tuple[int, ...]


def displaced(legs: Sequence[LegAudit], settings: DiagnosisSettings) -> Displaced | None:
    """Find a displacement that half the starts and more share, three at least; or None.

    Who begins from a wrong place and walks on from there is as far off at every start; but
    his own scatter puts each leg out by tens of metres, and points found are found alike.
    """
    began = {
        number: (leg.measures.ledger.inherited, _start_sd_m(leg.measures, settings))
        for number, leg in enumerate(legs)
        if leg.measures is not None and _seen(leg.measures)
    }
    alike = [
        [n for n, (off, sd_m) in began.items() if math.dist(off, about) <= _WITHIN_95 * sd_m]
        for about, _ in began.values()
    ]
    most = max(alike, key=len, default=[])
    if len(most) < settings.displaced_legs or 2 * len(most) < len(began):
        return None
    east_m, north_m = np.mean([began[number][0] for number in most], axis=0).tolist()
    if math.hypot(east_m, north_m) < settings.start_off_m:
        return None
    return Displaced(east_m=east_m, north_m=north_m, legs=tuple(most))


def without_wrong_start(
    findings: Mapping[int, tuple[Finding, ...]], shared: Displaced, names: Sequence[str]
) -> dict[int, tuple[Finding, ...]]:
    """Hold a wrong start back where all the walk lies as far off: that is nobody's start."""
    return {leg: _held_back(found, shared, names) for leg, found in findings.items()}


def pairs_without_wrong_start(pairs: Mapping[int, OneOfTwo]) -> dict[int, OneOfTwo]:
    """Tell no wrong start as one of two mistakes either."""
    start = wrong_start.CAUSE.name
    return {leg: pair for leg, pair in pairs.items() if start not in pair.causes}


def displaced_words(shared: Displaced, names: Sequence[str]) -> Sentence:
    """Say what the starts share, and what that may be; ``names`` are those of all legs."""
    return sentence(
        "evidence-displaced",
        legs=Listed(things=[names[leg] for leg in shared.legs]),
        place=place_words((shared.east_m, shared.north_m)),
    )


def _held_back(
    found: tuple[Finding, ...], shared: Displaced, names: Sequence[str]
) -> tuple[Finding, ...]:
    start = next((one for one in found if one.cause == wrong_start.CAUSE.name), None)
    if start is None:
        return found
    stray = next((one.probability for one in found if one.cause == CANNOT_TELL), 0.0)
    doubt = replace(
        start,
        cause=CANNOT_TELL,
        probability=start.probability + stray,
        made=start.probability + stray,
        evidence=displaced_words(shared, names),
        predicted=None,
        seen=None,
        unit=None,
    )
    rest = [one for one in found if one.cause not in {start.cause, CANNOT_TELL}]
    return tuple(sorted([*rest, doubt], key=lambda one: -one.probability))


def _seen(measures: LegMeasures) -> bool:
    """Tell whether somebody saw where a leg was begun."""
    return not measures.under_way and not measures.ends_reckoned[0]


def _start_sd_m(measures: LegMeasures, settings: DiagnosisSettings) -> float:
    """Give how well a displacement is known: as the miss, and by where at a point one stands."""
    return math.hypot(measures.miss_sd_m, settings.at_the_point_sd_m)
