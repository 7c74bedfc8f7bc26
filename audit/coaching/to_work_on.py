"""What to practise after a walk: named mistakes first, then the largest part of what remains."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from audit.coaching.steps import Hop, LegSteps, Step
from audit.coaching.talk import WorkOn
from audit.diagnosis.finding import Finding
from audit.guide.cause_names import JUDGEMENTS
from audit.guide.pages_on_file import cause_pages, exercise
from audit.leg_card.wording import told_legs
from audit.measurement.leg_measures import LegAudit, LegMeasures
from audit.settings import CoachingSettings
from audit.words import sentence
from audit.words.figures import Length, Percent

_STEP_CAUSES: dict[Step, str] = {
    "given": "digits-transposed",
    "plotted": "wrong-grid-line",
    "measured": "right-angle",
    "converted": "gm-angle-reversed",
    "set": "bezel-clicks",
    "walked": "veer",
    "distance measured": "wrong-ruler",
    "turned into paces": "single-double-pace",
    "paced": "hundred-miscounted",
    "recognised": "passed-unseen",
}
"""Whose exercise to take for a step at which an error entered and no slip is named."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Task:
    """A candidate, heaviest first: by kind (a mistake named, a step shown, a part), then metres."""

    kind: int
    metres: float
    work: WorkOn


def to_work_on(
    legs: Sequence[LegAudit],
    causes: Mapping[str, Sequence[Finding]],
    steps: Mapping[str, LegSteps],
    settings: CoachingSettings,
) -> tuple[WorkOn, ...]:
    """Give the two things that would have brought the walk nearest to its points."""
    walked = {leg.card.name: leg.measures for leg in legs if leg.measures is not None}
    named = list(_named(walked, causes, settings))
    left_out = {name for task in named for name in task.work.legs}
    left_out |= {leg.card.name for leg in legs if leg.confidence < settings.sure_portion}
    rest = {name: one for name, one in walked.items() if name not in left_out}
    tasks = [*named, *_entered(steps), *_parts(rest, settings)]
    chosen: dict[str, WorkOn] = {}
    for task in sorted(tasks, key=lambda task: (task.kind, -task.metres)):
        chosen.setdefault(task.work.cause, task.work)
    return tuple(chosen.values())[: settings.things]


def _named(
    walked: Mapping[str, LegMeasures],
    causes: Mapping[str, Sequence[Finding]],
    settings: CoachingSettings,
) -> Iterator[_Task]:
    """Give the mistakes that the diagnosis names, with the legs that show each."""
    shown: dict[str, list[tuple[str, Finding]]] = {}
    for name, findings in causes.items():
        first = findings[0] if findings else None
        if first is None or first.cause in JUDGEMENTS or name not in walked:
            continue
        if first.probability >= settings.named_probability:
            shown.setdefault(first.cause, []).append((name, first))
    for cause, legs in shown.items():
        names = [name for name, _ in legs]
        worst, finding = max(legs, key=lambda leg: walked[leg[0]].miss_m)
        yield _Task(
            kind=0,
            metres=sum(walked[name].miss_m for name in names),
            work=_work(
                cause,
                sentence(
                    "coach-named",
                    legs=told_legs(names),
                    sure=Percent(share=finding.probability),
                    leg=worst,
                    evidence=finding.evidence,
                ),
                names,
                certain=True,
            ),
        )


def _entered(steps: Mapping[str, LegSteps]) -> Iterator[_Task]:
    """Give the steps at which card, log and walk show that an error entered."""
    shown: dict[str, list[tuple[str, Hop]]] = {}
    for name, of in steps.items():
        for hop in of.hops:
            if hop.entered and len(hop.steps) == 1:
                shown.setdefault(_cause_of(hop), []).append((name, hop))
    for cause, hops in shown.items():
        worst, hop = max(hops, key=lambda one: one[1].off_m)
        names = list(dict.fromkeys(name for name, _ in hops))
        yield _Task(
            kind=1,
            metres=sum(hop.off_m for _, hop in hops),
            work=_work(
                cause,
                sentence(
                    "coach-entered",
                    legs=told_legs(names, begin=True),
                    done=sentence(f"coach-done-{hop.steps[0].replace(' ', '-')}"),
                    leg=worst,
                    said=hop.sentence,
                ),
                names,
                certain=bool(hop.slips),
            ),
        )


def _cause_of(hop: Hop) -> str:
    named = [slip for slip in hop.slips if slip in cause_pages()]
    if not named and hop.steps == ("paced",):
        return "overshoot" if hop.error > 0.0 else "early-stop"
    return named[0] if named else _STEP_CAUSES[hop.steps[0]]


def _parts(walked: Mapping[str, LegMeasures], settings: CoachingSettings) -> Iterator[_Task]:
    """Give the parts of the misses that no mistake is named for, as what to look at next."""
    if not walked:
        return
    turned = {name: math.hypot(*one.ledger.heading) for name, one in walked.items()}
    stretched = {name: math.hypot(*one.ledger.distance) for name, one in walked.items()}
    unseen = {name: one.miss_m for name, one in walked.items() if one.point_verdict == "missed"}
    began = {name: math.hypot(*one.ledger.inherited) for name, one in walked.items()}
    yield _part(_lean(walked), "heading", turned)
    yield _part(_stretch(walked, settings), "distance", stretched)
    if max(began.values()) >= settings.began_off_m:
        yield _part("wrong-start", "start", began)
    if unseen:
        yield _part("passed-unseen", "point", unseen)


def _part(cause: str, part: str, metres: Mapping[str, float]) -> _Task:
    worst = max(metres, key=lambda name: metres[name])
    mean_m = sum(metres.values()) / len(metres)
    evidence = sentence(
        "coach-part",
        part=part,
        mean=Length(metres=mean_m),
        most=Length(metres=metres[worst]),
        leg=worst,
    )
    if part == "point":
        legs = told_legs(list(metres), begin=True)
        evidence = sentence("coach-unreached", legs=legs, count=len(metres))
    return _Task(
        kind=2,
        metres=sum(metres.values()),
        work=_work(cause, evidence, [worst], certain=False),
    )


def _lean(walked: Mapping[str, LegMeasures]) -> str:
    """Give the exercise for azimuths: a lean to one side, or the line itself."""
    errors = [one.azimuth_error_deg for one in walked.values()]
    return "steady-bias" if _leans(errors) else "veer"


def _stretch(walked: Mapping[str, LegMeasures], settings: CoachingSettings) -> str:
    """Give the exercise for distances: a count that is long or short, or the hundreds."""
    errors = [one.distance_ratio - 1.0 for one in walked.values()]
    mean = sum(errors) / len(errors)
    if _leans(errors) and abs(mean) > settings.good_distance_share / 2.0:
        return "pace-long" if mean > 0.0 else "pace-short"
    return "hundred-miscounted"


def _leans(errors: Sequence[float]) -> bool:
    """Tell whether errors lean to one side: their mean over twice its standard error."""
    if len(errors) < 3:
        return False
    mean = sum(errors) / len(errors)
    spread = math.sqrt(sum((error - mean) ** 2 for error in errors) / (len(errors) - 1))
    return abs(mean) > 2.0 * spread / math.sqrt(len(errors))


def _work(cause: str, evidence: str, legs: Sequence[str], *, certain: bool) -> WorkOn:
    return WorkOn(
        cause=cause,
        certain=certain,
        what=cause_pages()[cause].title.partition(": ")[2],
        evidence=evidence,
        exercise=exercise(cause),
        legs=tuple(legs),
    )
