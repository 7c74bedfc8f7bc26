"""The mistakes that the diagnosis names, and those of which it can only say: one of two."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from audit.coaching.explained_steps import read_otherwise
from audit.coaching.made_beside import put_out_beside_m
from audit.coaching.shown import Shown
from audit.coaching.sure_legs import is_sure
from audit.coaching.talk import WorkOn
from audit.coaching.task import Task, TaskKind, title_of, work_on
from audit.diagnosis.finding import Finding
from audit.diagnosis.one_of_two import OneOfTwo
from audit.guide.cause_names import JUDGEMENTS
from audit.guide.pages_on_file import exercise
from audit.leg_card.told_numbers import told_legs
from audit.measurement.leg_measures import LegMeasures
from audit.settings import CoachingSettings
from audit.words import Sentence, sentence
from audit.words.figures import Listed, Share


def mistake_tasks(shown: Shown, settings: CoachingSettings) -> Iterator[Task]:
    """Give the mistakes to work on, with the legs that show each.

    What a part of the walk shows that may not be the leg's is put before nobody, nor a slip of a
    reference of which the walker's card shows that it was another: the card's is told.
    """
    walked, one_of = shown.walked, shown.one_of
    sure = {leg.card.name for leg in shown.legs if is_sure(leg, settings)}
    first = {
        name: of[0]
        for name, of in shown.causes.items()
        if of
        and name in walked
        and name in sure
        and name not in shown.aside
        and not read_otherwise(of[0], shown.steps.get(name))
    }
    if shown.taken:
        yield _another_order(shown)
    yield from _not_gone_to(shown, sure, settings)
    named = {
        name: one.cause
        for name, one in first.items()
        if one.cause not in JUDGEMENTS and one.probability >= settings.named_probability
    }
    # One that is a little likelier than not is not named alone: the other was made about as likely.
    paired = {name: frozenset(one_of[name].causes) for name in one_of if name in first}
    for pair in dict.fromkeys(paired.values()):
        names = [name for name, other in paired.items() if other == pair]
        yield _one_of_two(names, walked, first, one_of)
    alone = {name: cause for name, cause in named.items() if name not in paired}
    for cause in dict.fromkeys(alone.values()):
        leading = [name for name in alone if alone[name] == cause]
        beside = _made_beside(
            cause, [name for name in first if name not in leading], shown, settings
        )
        yield _named(cause, leading, beside, walked, first)


def _another_order(shown: Shown) -> Task:
    """Give points taken in another order once, and not the mistakes that would lead to each."""
    walked, names = shown.walked, list(shown.taken)
    ends = {leg.card.name: leg.card.end.name for leg in shown.legs}
    went = [
        sentence("coach-went", leg=name, point=shown.taken[name].name, planned=ends[name])
        for name in names
    ]
    evidence = sentence("coach-order", legs=told_legs(names), went=Listed(things=went))
    work = work_on("order-changed", evidence, names, certain=False)
    return Task(kind=TaskKind.NAMED, metres=_missed_m(names, walked), work=work)


def _not_gone_to(shown: Shown, sure: set[str], settings: CoachingSettings) -> Iterator[Task]:
    """Give the mistakes of legs that were not walked: a point left out, another order.

    They weigh as much as the legs were long: so far the walk was of no course.
    """
    found: dict[str, dict[str, Finding]] = {}
    for leg in shown.legs:
        one = next(iter(shown.causes.get(leg.card.name, ())), None)
        if one is None or leg.measures is not None or leg.card.name not in sure:
            continue
        if (one.point or one.passed) and one.probability >= settings.named_probability:
            found.setdefault(one.cause, {})[leg.card.name] = one
    metres = {leg.card.name: leg.card.distance_m for leg in shown.legs}
    for cause, of in found.items():
        names = list(of)
        evidence = _seen_on("coach-named", names, names[0], of[names[0]], of[names[0]].probability)
        work = work_on(cause, evidence, names, certain=True)
        yield Task(kind=TaskKind.NAMED, metres=sum(metres[name] for name in names), work=work)


def _made_beside(
    cause: str, names: Sequence[str], shown: Shown, settings: CoachingSettings
) -> dict[str, Finding]:
    """Give the other legs that share a mistake, or on which it was likely made beside another."""
    shared = shown.shared.get(cause, ())
    found = {name: one for name in names for one in shown.causes[name] if one.cause == cause}
    return {
        name: one
        for name, one in found.items()
        if name in shared or (one.made or 0.0) >= settings.made_probability
    }


def _named(
    cause: str,
    leading: Sequence[str],
    beside: Mapping[str, Finding],
    walked: Mapping[str, LegMeasures],
    first: Mapping[str, Finding],
) -> Task:
    """Give a mistake with all its legs: those that it chiefly put out, and those beside another."""
    worst = _worst(leading, walked)
    names = [name for name in walked if name in leading or name in beside]
    evidence = _seen_on("coach-named", names, worst, first[worst], first[worst].probability)
    put_out_m = sum(put_out_beside_m(one, walked[name]) for name, one in beside.items())
    return Task(
        kind=TaskKind.NAMED,
        metres=_missed_m(leading, walked) + put_out_m,
        work=work_on(cause, evidence, names, certain=True),
    )


def _one_of_two(
    names: Sequence[str],
    walked: Mapping[str, LegMeasures],
    first: Mapping[str, Finding],
    one_of: Mapping[str, OneOfTwo],
) -> Task:
    """Give both mistakes as one task: what proves the one clears the other."""
    worst = _worst(names, walked)
    one, other = one_of[worst].causes
    evidence = _seen_on("coach-one-of", names, worst, first[worst], one_of[worst].probability)
    work = WorkOn(
        cause=one,
        certain=False,
        what=sentence("coach-either", one=title_of(one), other=title_of(other)),
        evidence=evidence,
        exercise=sentence("coach-exercises", one=exercise(one), other=exercise(other)),
        legs=tuple(names),
        one_of=(one, other),
    )
    return Task(kind=TaskKind.NAMED, metres=_missed_m(names, walked), work=work)


def _worst(names: Sequence[str], walked: Mapping[str, LegMeasures]) -> str:
    return max(names, key=lambda name: walked[name].miss_m)


_OF_ONE_LEG = {"coach-named": "coach-named-one", "coach-one-of": "coach-one-of-one"}


def _seen_on(
    ident: str, names: Sequence[str], worst: str, finding: Finding, probability: float
) -> Sentence:
    """Say on which legs it was seen, and how sure and by what figures on the worst."""
    if len(names) == 1:
        return sentence(
            _OF_ONE_LEG[ident],
            legs=told_legs(names),
            sure=Share(share=probability),
            evidence=finding.evidence,
        )
    return sentence(
        ident,
        legs=told_legs(names),
        sure=Share(share=probability),
        leg=worst,
        evidence=finding.evidence,
    )


def _missed_m(names: Sequence[str], walked: Mapping[str, LegMeasures]) -> float:
    return sum(walked[name].miss_m for name in names)
