"""All that coaching makes of a walk: the steps of its legs, and the talk after it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

from audit.coaching.carried_steps import with_carried
from audit.coaching.leg_steps import walk_steps
from audit.coaching.made_good import with_made_good
from audit.coaching.ordinary_steps import with_ordinary
from audit.coaching.shown import LogHolds, Shown
from audit.coaching.steady_steps import with_steady_turn
from audit.coaching.steps import LegSteps
from audit.coaching.sure_legs import sure_legs
from audit.coaching.taken_otherwise import out_of_order, taken_otherwise, without_their_steps
from audit.coaching.talk import Coaching
from audit.coaching.to_keep import to_keep
from audit.coaching.to_work_on import with_work
from audit.coaching.walkers_card import OwnCard
from audit.diagnosis.explain import Explanation
from audit.leg_card import LegCard
from audit.measurement.leg_measures import LegAudit
from audit.measurement.measure_walk import WalkMeasures
from audit.settings import Settings
from audit.walkers_log import WalkersLog
from audit.words import sentence

_Of = TypeVar("_Of")


@dataclass(frozen=True, slots=True, kw_only=True)
class AgainstLog:
    """Legs by name that the log does not bear out.

    Attributes
    ----------
    ended : set of str
        By count and time they ended elsewhere than they are taken to.
    disputed : set of str
        Those, and the ones that it ends at another time.
    """

    ended: frozenset[str] = frozenset()
    disputed: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True, kw_only=True)
class TalkedOver:
    """Steps by the name of the leg, the talk, and what laying the cards together assumed."""

    steps: Mapping[str, LegSteps]
    coaching: Coaching
    notes: tuple[str, ...]


def talk_over(
    card: LegCard,
    measured: WalkMeasures,
    explanation: Explanation,
    against: AgainstLog,
    *,
    log: WalkersLog | None,
    own_card: OwnCard | None,
    settings: Settings,
) -> TalkedOver:
    """Lay log and own card beside the walk and what explains it."""
    legs = measured.legs
    own, notes = ({}, ()) if own_card is None else (own_card.legs, own_card.notes)
    causes = _by_name(legs, explanation.findings)
    sure = sure_legs(legs, settings.coaching)
    taken = taken_otherwise(legs, sure, card.arrival_radius_m, settings.coaching)
    aside = out_of_order(legs, taken)
    steps = walk_steps(legs, card, own, log, settings, against.ended)
    carried = _by_name(legs, explanation.carried)
    steps = with_carried(steps, legs, carried, settings.coaching)
    steps = with_steady_turn(steps, causes)
    walked = {leg.card.name: leg.measures for leg in legs if leg.measures is not None}
    steps = with_ordinary(
        steps, causes, walked, explanation.scatter, card.arrival_radius_m, settings.coaching
    )
    steps = with_made_good(steps, walked, card.arrival_radius_m)
    steps = without_their_steps(steps, aside)
    another_way = _another_way(legs)
    steps = _not_beside(steps, _bent(legs) - another_way, "step-line-bent")
    steps = _not_beside(steps, another_way, "step-line-left")
    shown = Shown(
        legs=legs,
        radius_m=card.arrival_radius_m,
        causes=causes,
        one_of=_by_name(legs, explanation.one_of),
        steps=steps,
        taken=taken,
        aside=frozenset({*aside, *another_way}),
        carried=carried,
        logged=log is not None,
        disputed=against.disputed,
        log_holds=log_holds(log),
        under_way=frozenset(
            legs[one.leg].card.name for one in measured.match.legs if one.under_way
        ),
        displaced=explanation.displaced is not None,
        scatter=explanation.scatter,
        shared=_shared(legs, explanation),
    )
    coaching = with_work(to_keep(shown, settings.coaching), shown, settings)
    return TalkedOver(steps=steps, coaching=coaching, notes=notes)


def _shared(legs: Sequence[LegAudit], explanation: Explanation) -> dict[str, list[str]]:
    """Give the legs of what several share, by its cause."""
    return {one.cause: [legs[leg].card.name for leg in one.legs] for one in explanation.stories}


def log_holds(log: WalkersLog | None) -> LogHolds:
    """Say what a log speaks of."""
    if log is None:
        return "nothing"
    if log.azimuths_set():
        return "both" if log.counted_paces() else "set"
    if log.counted_paces():
        return "counted"
    return "ends" if any(entry.arrived for entry in log.entries) else "nothing"


def _another_way(legs: Sequence[LegAudit]) -> set[str]:
    """Give the legs whose via positions were not followed."""
    return {leg.card.name for leg in legs if leg.measures and not leg.measures.line_followed}


def _bent(legs: Sequence[LegAudit]) -> set[str]:
    """Give the legs of several pieces, of which a log has one azimuth and one count."""
    return {leg.card.name for leg in legs if len(leg.card.line) > 2}


def _not_beside(steps: Mapping[str, LegSteps], names: set[str], why: str) -> dict[str, LegSteps]:
    """Lay neither card nor log beside these legs, and say why."""
    return {
        name: replace(of, hops=(), sentences=(sentence(why),)) if name in names else of
        for name, of in steps.items()
    }


def _by_name(legs: Sequence[LegAudit], by_number: Mapping[int, _Of]) -> dict[str, _Of]:
    return {
        leg.card.name: by_number[number] for number, leg in enumerate(legs) if number in by_number
    }
