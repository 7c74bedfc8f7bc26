"""The steps at which card, log and walk show that an error entered, as things to practise."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from audit.coaching.explained_steps import bends_so, explains, likeliest, without_explained
from audit.coaching.line_exercise import exercise_of_line
from audit.coaching.ordinary_metres import ordinary_m, part_sd_m
from audit.coaching.steps import Hop, LegSteps, Step
from audit.coaching.task import Task, TaskKind, work_on
from audit.diagnosis.finding import Finding
from audit.diagnosis.walkers_scatter import WalkersScatter
from audit.guide.cause_names import CANNOT_TELL, CAUSE_KINDS, JUDGEMENTS
from audit.guide.pages_on_file import cause_pages
from audit.leg_card.told_numbers import told_legs
from audit.measurement.leg_measures import LegMeasures
from audit.settings import CoachingSettings
from audit.words import Sentence, sentence

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
_ON_THE_GROUND: frozenset[Step] = frozenset({"walked", "paced", "recognised"})
"""Steps that the leg's part of the walk shows, and nothing where that may be another's."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StepsSeen:
    """Steps, measures and findings by the name of the leg; ``sure`` names legs that are the leg's.

    ``told`` has, by leg, the mistakes that are put before the walker already. Within
    ``radius_m`` of his point a walker arrived. By ``scatter`` his ordinary legs scatter.
    """

    steps: Mapping[str, LegSteps]
    walked: Mapping[str, LegMeasures]
    sure: Collection[str]
    causes: Mapping[str, Sequence[Finding]]
    told: Mapping[str, Collection[str]]
    radius_m: float
    scatter: WalkersScatter = field(default_factory=WalkersScatter)


def step_tasks(seen: StepsSeen, settings: CoachingSettings) -> Iterator[Task]:
    """Give the steps to practise, with the legs that show each.

    A step that a mistake of the leg explains is not told beside it, nor again of another leg that
    has the same reference, and who arrived at his point broke off no count: he began off.
    """
    shown: dict[tuple[str, bool], list[tuple[str, Hop]]] = {}
    to_tell = {name: _to_tell(seen, name, of) for name, of in seen.steps.items()}
    explained = {
        hop.sentence
        for name, of in seen.steps.items()
        for hop in of.hops
        if hop.steps == ("given",) and hop.entered and hop not in to_tell[name]
    }
    for name, left in to_tell.items():
        findings = seen.causes.get(name, ())
        doubtful = any(hop.unlikely for hop in left)  # count or portion is another's
        for hop in (hop for hop in left if hop.sentence not in explained):
            told = name in seen.sure or not _ON_THE_GROUND.issuperset(hop.steps)
            told &= not (doubtful and hop.steps == ("paced",))
            if hop.entered and len(hop.steps) == 1 and told:
                by_count = _by_count(hop, seen.walked[name], settings)
                likely = _candidate(findings, hop, seen.walked[name], settings)
                if likely is not None:
                    cause, by_count = likely.cause, False
                else:
                    cause = _cause_of(hop, findings, settings, by_count=by_count)
                if cause == "early-stop" and seen.walked[name].miss_m <= seen.radius_m:
                    continue
                shown.setdefault((cause, by_count), []).append((name, hop))
    for (cause, by_count), hops in shown.items():
        names = list(dict.fromkeys(name for name, _ in hops))
        worst = max(hops, key=lambda one: one[1].off_m)
        yield Task(
            kind=TaskKind.BESIDE,
            metres=sum(hop.off_m for _, hop in hops),
            ordinary_m=ordinary_m(
                _sd_m(hop, seen.walked[name], seen.scatter) for name, hop in hops
            ),
            worst_m=max(seen.walked[name].miss_m for name in names),
            work=work_on(
                cause,
                _evidence(*worst, names, cause, by_count=by_count),
                names,
                certain=bool(worst[1].slips),
            ),
        )


def _sd_m(hop: Hop, walked: LegMeasures, scatter: WalkersScatter) -> float:
    """Give how much of what a step leads off is scatter: none between two written numbers."""
    if hop.written or hop.kind == "point":
        return 0.0
    return part_sd_m("heading" if hop.kind == "direction" else "distance", walked, scatter)


def _candidate(
    findings: Sequence[Finding], hop: Hop, walked: LegMeasures, settings: CoachingSettings
) -> Finding | None:
    """Give the likeliest mistake of a leg where it explains a step, or is the first that may."""
    likely = likeliest(findings)
    candidates = (
        one
        for one in findings
        if one is likely
        or (one.cause not in JUDGEMENTS and one.probability >= settings.candidate_probability)
    )
    return next((one for one in candidates if explains(one, hop, walked)), None)


def _to_tell(seen: StepsSeen, name: str, of: LegSteps) -> Sequence[Hop]:
    """Give the hops that no mistake told of the leg explains.

    Nor, of a leg that is not sure, the likeliest mistake: such a leg is left aside. What stands
    between two written numbers is as sure as they are, whatever part of the walk the leg's is.
    """
    findings, causes = seen.causes.get(name, ()), set(seen.told.get(name, ()))
    left = without_explained(of, causes, findings, seen.walked[name]) if causes else of.hops
    likely = likeliest(findings)
    if likely is None or name in seen.sure:
        return left
    walked = without_explained(of, {likely.cause}, findings, seen.walked[name])
    return tuple(hop for hop in left if hop.written or hop in walked)


def _evidence(worst: str, hop: Hop, names: list[str], cause: str, *, by_count: bool) -> Sentence:
    done = hop.steps[0].replace(" ", "-")
    if done == "walked" and cause in CAUSE_KINDS["Direction"]:
        done = "set-or-walked"  # who sets another azimuth notes what he meant to set
    evidence = sentence(
        "coach-entered",
        legs=told_legs(names, begin=True),
        done=sentence(f"coach-done-{done}"),
        leg=worst,
        said=hop.sentence,
    )
    return sentence("coach-by-count", said=evidence) if by_count else evidence


def _by_count(hop: Hop, walked: LegMeasures, settings: CoachingSettings) -> bool:
    """Tell whether a count was off over a distance that was walked as planned, or less so."""
    if hop.steps != ("paced",) or hop.slips:
        return False
    off_m = walked.distance_error_m
    planned_m = walked.straight_m - off_m
    room_m = max(settings.good_distance_share * planned_m, 2.0 * walked.straight_sd_m)
    return off_m <= room_m if hop.error > 0.0 else off_m >= -room_m


def _line(hop: Hop, findings: Sequence[Finding], settings: CoachingSettings) -> str:
    """Give the exercise for a line that was held otherwise than it was set."""
    return exercise_of_line(
        hop.error, settings, bends=bends_so({one.cause: one for one in findings}, hop)
    )


def _cause_of(
    hop: Hop, findings: Sequence[Finding], settings: CoachingSettings, *, by_count: bool
) -> str:
    named = [slip for slip in hop.slips if slip in cause_pages()]
    if named:
        return named[0]
    if hop.steps == ("walked",):
        return _line(hop, findings, settings)
    most_deg = settings.clicks_off[1] * settings.click_deg + settings.set_azimuth_deg
    if hop.steps == ("set",) and abs(hop.error) > most_deg:
        return CANNOT_TELL
    if hop.steps != ("paced",):
        return _STEP_CAUSES[hop.steps[0]]
    if by_count:  # more paces than the card's for its distance: each carries less
        return "pace-short" if hop.error > 0.0 else "pace-long"
    return "overshoot" if hop.error > 0.0 else "early-stop"
