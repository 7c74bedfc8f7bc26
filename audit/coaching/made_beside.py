"""Mistakes that were made beside larger ones: no leg's likeliest cause, and likely all the same."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence

from audit.coaching.task import Task, TaskKind, work_on
from audit.diagnosis.finding import Finding
from audit.guide.cause_names import JUDGEMENTS
from audit.leg_card.told_numbers import told_legs
from audit.measurement.leg_measures import LegMeasures
from audit.settings import CoachingSettings
from audit.units import turned_aside_m
from audit.words import sentence
from audit.words.figures import Share


def made_beside(
    causes: Mapping[str, Sequence[Finding]], told: Collection[str], settings: CoachingSettings
) -> dict[str, dict[str, Finding]]:
    """Give, by mistake and by leg, those likely made that are ``told`` nowhere."""
    found: dict[str, dict[str, Finding]] = {}
    for name, findings in causes.items():
        for one in findings:
            if one.cause in JUDGEMENTS or one.cause in told:
                continue
            if one.made is not None and one.made >= settings.made_probability:
                found.setdefault(one.cause, {})[name] = one
    return found


def beside_tasks(
    causes: Mapping[str, Sequence[Finding]],
    told: Collection[str],
    walked: Mapping[str, LegMeasures],
    settings: CoachingSettings,
) -> Iterator[Task]:
    """Give them to work on after the larger ones, with the legs that show each."""
    for cause, on in made_beside(causes, told, settings).items():
        sizes = {name: put_out_beside_m(one, walked[name]) for name, one in on.items()}
        worst = max(sizes, key=lambda name: sizes[name])
        evidence = sentence(
            "coach-beside",
            legs=told_legs(list(on)),
            sure=Share(share=on[worst].made or 0.0),
            leg=worst,
            evidence=on[worst].evidence,
        )
        yield Task(
            kind=TaskKind.BESIDE,
            metres=sum(sizes.values()),
            work=work_on(cause, evidence, list(on), certain=True),
        )


def _put_out_m(one: Finding, walked: LegMeasures) -> float:
    """Give how far a mistake alone leads off, by the number that it predicts."""
    planned_m = walked.straight_m - walked.distance_error_m
    if one.predicted is None:
        return 0.0
    if one.unit == "ratio":
        return abs(one.predicted - 1.0) * planned_m
    if one.unit == "deg":
        return turned_aside_m(planned_m, one.predicted)
    return abs(one.predicted)


def put_out_beside_m(one: Finding, walked: LegMeasures) -> float:
    """Give the same, but no more than the leg missed by: what it was made beside cost that."""
    return min(_put_out_m(one, walked), walked.miss_m)
