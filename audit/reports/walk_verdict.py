"""The walk in two or three sentences, the worst error first."""

from __future__ import annotations

from collections.abc import Sequence

from audit.coaching.brought_along import first_off
from audit.coaching.largest_part import MissPart, largest_part, sized_parts
from audit.coaching.made_beside import made_beside
from audit.coaching.sure_legs import is_sure
from audit.debriefing.finished_debrief import Debrief, LegDebrief
from audit.guide.cause_names import CANNOT_TELL, CAUSE_KINDS, WITHIN_SKILL
from audit.leg_card.told_numbers import told_legs
from audit.measurement.leg_measures import LegMeasures
from audit.reports import digits, wording
from audit.reports.cause_words import cause_words
from audit.reports.inherited import inherited
from audit.reports.joint_story import joint_story
from audit.reports.led_astray import beside_shared, leading, led_by
from audit.reports.not_as_planned import not_as_planned
from audit.settings import QualitySettings, Settings
from audit.words import say, says, told
from audit.words.figures import Listed


def verdict(debrief: Debrief) -> tuple[str, ...]:
    """Give the sentences: what legs share, the worst leg and why, what became of the rest.

    Where the worst leg merely began off, the leg that led there is told with its cause before
    what the worst leg added.
    """
    off = [told(one) for one in (debrief.quality.elsewhere, debrief.displaced) if one]
    shared = *off, *joint_story(debrief), *_over_all_legs(debrief)
    walked = [(leg, leg.audit.measures) for leg in debrief.legs if leg.audit.measures is not None]
    if not walked:
        rest = *not_as_planned(debrief), _count(debrief), *_on_no_leg(debrief)
        return *off, say("verdict-nothing"), *rest
    radius_m = debrief.card.arrival_radius_m
    sure = [pair for pair in walked if _is_judged(debrief, pair[0])]
    doubtful = _doubtful_worst(walked, sure, radius_m)
    rest = *_beside(debrief), *doubtful, *_left_lines(walked), *not_as_planned(debrief)
    others = _to_work_on(debrief, max(sure, key=_miss_m)[0]) if sure else []
    lost, counted = _on_no_leg(debrief), _count(debrief)
    tries = [told(one.told) for one in debrief.tried_before]
    # Where most of the walk was of no leg, what is known of the others comes after that.
    shared, rest = ((counted, *lost, *shared), rest) if lost else (shared, (*rest, counted))
    rest = *rest, *tries
    if not sure:
        return *shared, *rest
    worst, measures = max(sure, key=_miss_m)
    if measures.miss_m > radius_m:
        said = _worst(worst, measures, of_sure=bool(doubtful))
        return *shared, said, *_reasons(debrief, worst), *others, *rest
    seen = [pair for pair in sure if not pair[1].ends_reckoned[1]]
    if not seen:
        return *shared, *rest
    return *shared, _arrived(seen, radius_m, _which(len(seen), len(sure), len(walked))), *rest


def _over_all_legs(debrief: Debrief) -> list[str]:
    """Say by what all legs are out to one side, where that is to be worked on and has no name."""
    seen = [one.evidence for one in debrief.coaching.work_on]
    return [told(one) for one in seen if says(one, "coach-lean", "coach-stretch")]


def _is_judged(debrief: Debrief, leg: LegDebrief) -> bool:
    """Tell whether a leg may be called the worst: sure, and not left aside by the talk."""
    aside = debrief.coaching.left_aside
    return is_sure(leg.audit, debrief.settings.coaching) and leg.name not in aside


def _which(seen: int, sure: int, walked: int) -> str:
    """Name the legs of which it is said that they arrived, by how many there are."""
    if seen == walked:
        return "all"
    return "seen" if sure == walked else "sure"


def _miss_m(pair: tuple[LegDebrief, LegMeasures]) -> float:
    return pair[1].miss_m


def _doubtful_worst(
    walked: list[tuple[LegDebrief, LegMeasures]],
    sure: list[tuple[LegDebrief, LegMeasures]],
    radius_m: float,
) -> list[str]:
    """Say of a leg that missed by more than the sure ones that it may not be that part at all."""
    worst, measures = max(walked, key=_miss_m)
    if measures.miss_m <= radius_m or any(leg is worst for leg, _ in sure):
        return []
    if is_sure(worst.audit, worst.settings.coaching):
        end = worst.audit.card.end.name
        words = "verdict-worst-reckoned"
        return [say(words, leg=worst.name, miss=wording.miss(measures), end=end)]
    return [
        say(
            "verdict-worst-unsure",
            leg=worst.name,
            miss=wording.miss(measures),
            end=worst.audit.card.end.name,
            sure=digits.percent(worst.audit.confidence),
        )
    ]


def _left_lines(walked: list[tuple[LegDebrief, LegMeasures]]) -> list[str]:
    """Name the legs along via positions whose line was not followed."""
    names = [leg.name for leg, measures in walked if not measures.line_followed]
    if not names:
        return []
    return [say("verdict-line-left", legs=told_legs(names, begin=True), count=len(names))]


def _arrived(seen: list[tuple[LegDebrief, LegMeasures]], radius_m: float, which: str) -> str:
    """Say so of the sure legs whose ends were seen; of a reckoned end nobody knows."""
    worst, measures = max(seen, key=_miss_m)
    return say(
        f"verdict-{which}-arrived",
        radius=digits.stated_metres(radius_m),
        size=digits.metres(measures.miss_m, measures.miss_sd_m),
        leg=worst.name,
    )


def _worst(leg: LegDebrief, measures: LegMeasures, *, of_sure: bool) -> str:
    """Tell of the worst leg; ``of_sure``: one that is not sure may have missed by more."""
    return say(
        "verdict-worst",
        **_ending(leg, measures),
        of="sure" if of_sure else "all",
        found=_FOUND[measures.point_verdict],
    )


def _ending(leg: LegDebrief, measures: LegMeasures) -> dict[str, str]:
    """Give what is said of a leg's end: whose, how far off, and by what part of the miss."""
    # The legs of a free course are named after the points that they lead to.
    named = leg.name == leg.audit.card.end.name
    return {
        "leg": leg.name,
        "named": "yes" if named else "no",
        "miss": wording.miss(measures),
        "end": leg.audit.card.end.name,
        "part": _main_part(measures, leg.settings),
    }


_FOUND = {"found": "yes", "missed": "no", "too close to call": "close"}


def _main_part(measures: LegMeasures, settings: Settings) -> str:
    """Name the largest part of the ledger, unless it is no larger than its own error.

    With it another that is about as large. Of a leg that was under way when the recording began
    the parts are the recording's.
    """
    if measures.under_way:
        return say("verdict-no-part")
    (largest, most_m), (second, next_m), *_ = sized_parts(measures)
    why, other = (_part(part, measures, settings.quality) for part in (largest, second))
    if not why:
        return say("verdict-no-part")
    if other and next_m >= settings.reports.alike_parts * most_m:
        return say("verdict-partly", why=why, other=other)
    return say("verdict-mostly", why=why)


def _part(part: MissPart, measures: LegMeasures, quality: QualitySettings) -> str:
    """Say what a part of a miss came of; "" where it is no larger than its own error."""
    if part == "heading":
        if wording.azimuth_as_planned(measures) or not wording.azimuth_measured(measures, quality):
            return ""
        return say("verdict-why-azimuth", error=wording.azimuth_error(measures, quality))
    if part == "distance":
        if wording.distance_as_planned(measures) or not measures.line_followed:
            return ""
        return say("verdict-why-distance", error=wording.distance_error(measures))
    return say(f"verdict-why-{part}")


_EXPLAINED_BY = {
    "inherited": frozenset({"wrong-start"}),
    "detour": frozenset({"bypass-unequal", "obstacle-one-side"}),
    "plan": frozenset({"point-misplaced", "datum"}),
}
"""Parts of a miss that are none of the leg's own heading or distance, and what makes them."""


def _of_the_rest(worst: LegDebrief) -> str:
    """Say "yes" where the likeliest cause is not that of the part which was called the largest."""
    measures = worst.audit.measures
    explained_by = None if measures is None else _EXPLAINED_BY.get(largest_part(measures))
    cause = worst.causes[0].cause if worst.causes else ""
    if cause == WITHIN_SKILL and inherited(worst):
        return "no"  # its words say so themselves
    return "no" if explained_by is None or cause in explained_by else "yes"


def _reasons(debrief: Debrief, worst: LegDebrief) -> list[str]:
    """Say what the worst leg is consistent with; where it merely began off, the one before."""
    first = None
    if not debrief.displaced:
        legs = [leg.audit for leg in debrief.legs]
        first = first_off(legs, debrief.legs.index(worst), debrief.settings.coaching)
    leg = None if first is None else debrief.legs[first]
    measures = None if leg is None or not _is_judged(debrief, leg) else leg.audit.measures
    # A leg that arrived led nobody astray.
    if leg is None or measures is None or measures.miss_m <= debrief.card.arrival_radius_m:
        return [*_why(debrief, worst, _of_the_rest(worst))]
    led = say("verdict-led-there", **_ending(leg, measures))
    said = [led, *_why(debrief, leg, _of_the_rest(leg))]
    named = wording.named_mistake(leg)
    if named is not None and _same_cause(worst, named.cause):  # named with it already
        return said
    return [*said, *_why(debrief, worst, "own")]


def _why(debrief: Debrief, leg: LegDebrief, rest: str) -> list[str]:
    """Say what a leg is consistent with, and what that leaves over."""
    said, left = _consistent(debrief, leg, rest), wording.left_over(leg)
    return [said, say("verdict-left-over", leg=leg.name, left=left)] if left else [said]


def _consistent(debrief: Debrief, leg: LegDebrief, rest: str) -> str:
    """Say what a leg is consistent with, and which other legs share that.

    ``rest``: of the whole miss ("no"), of what its largest part leaves ("yes"), or of what
    the leg itself added to where it began ("own").
    """
    own = rest == "own"
    about = {"rest": rest, "leg": wording.leg_names([leg.name])}
    named, cause = wording.named_mistake(leg), wording.cause(leg, own=own)
    if named is None:
        if not leg.causes or leg.causes[0].cause == CANNOT_TELL:
            return (
                led_by(debrief, leg)
                or beside_shared(debrief, leg)
                or say("verdict-no-why", **about)
            )
        if wording.is_undecided(leg):
            return say("verdict-undecided", cause=cause, **about)
        return say("verdict-consistent", cause=cause, **about)
    also = [one.name for one in debrief.legs if one is not leg and _same_cause(one, named.cause)]
    if any(story.cause == named.cause for story in debrief.stories):
        also = []  # the story has told them
    if not also:
        return say("verdict-consistent", cause=cause, **about)
    return say(
        "verdict-consistent-shared",
        cause=cause,
        many="yes" if len(also) > 1 else "no",
        legs=wording.leg_names(also),
        **about,
    )


def _same_cause(leg: LegDebrief, cause: str) -> bool:
    named = wording.named_mistake(leg)
    return named is not None and named.cause == cause


def _beside(debrief: Debrief) -> list[str]:
    """Name what was likely made beside larger mistakes, and is named of no leg and in no story."""
    named = [one.cause for leg in debrief.legs if (one := wording.named_mistake(leg)) is not None]
    told_of = {*named, *(story.cause for story in debrief.stories)}
    judged = {leg.name: leg.causes for leg in debrief.legs if _is_judged(debrief, leg)}
    found = made_beside(judged, told_of, debrief.settings.coaching)
    return [
        _beside_words(
            [cause], list(on), digits.percent(min(one.made or 0.0 for one in on.values()))
        )
        for cause, on in found.items()
    ]


def _to_work_on(debrief: Debrief, worst: LegDebrief) -> list[str]:
    """Name the mistakes to work on that the head has not told with the worst leg.

    So head and talk name the same, though the leg that missed by most may be ordinary.
    """
    audits = [leg.audit for leg in debrief.legs]
    first = first_off(audits, debrief.legs.index(worst), debrief.settings.coaching)
    headed = [worst] if first is None else [worst, debrief.legs[first]]
    headed += [before for leg in headed if (before := leading(debrief, leg)) is not None]
    named = [wording.named_mistake(leg) for leg in headed]
    told_of = {one.cause for one in named if one is not None}
    either = [leg.one_of for leg, one in zip(headed, named, strict=True) if one is None]
    told_of |= {cause for pair in either if pair is not None for cause in pair.causes}
    told_of |= {story.cause for story in debrief.stories} | set(CAUSE_KINDS["Behaviour"])
    legs = {leg.name: leg for leg in debrief.legs if _is_judged(debrief, leg)}
    said = []
    for work in debrief.coaching.work_on:
        causes = work.one_of or (work.cause,)
        on = {
            name: sure for name in work.legs if name in legs and (sure := _sure(legs[name], causes))
        }
        if on and not told_of & set(causes):
            said.append(_beside_words(causes, list(on), digits.percent(max(on.values()))))
    return said


def _sure(leg: LegDebrief, causes: Sequence[str]) -> float:
    """Give how sure a mistake is, or one of two, on a leg that tells of it; 0 where none does."""
    if len(causes) > 1:
        either = leg.one_of
        return either.probability if either is not None and {*either.causes} == {*causes} else 0.0
    named = wording.named_mistake(leg)
    return named.probability if named is not None and named.cause == causes[0] else 0.0


def _beside_words(causes: Sequence[str], legs: Sequence[str], sure: str) -> str:
    """Name a mistake beside the worst leg's, or one of two."""
    words = [cause_words(cause) for cause in causes]
    said = words[0] if len(words) == 1 else say("coach-either", one=words[0], other=words[1])
    return say("verdict-beside", legs=told_legs(legs), cause=said, sure=sure)


def _count(debrief: Debrief) -> str:
    """Say how many legs were walked, how many points reached on them, and what was left out.

    A class counts points by the whole recording: what it may count more is named, in the order
    of the plan.
    """
    legs = debrief.legs
    measured = [leg.audit.measures for leg in legs if leg.audit.measures is not None]
    reached = sum(measures.found for measures in measured)
    rest = [
        say("verdict-rest", legs=wording.leg_names(names), status=wording.status_words(status))
        for status in ("before-recording", "skipped", "unfinished", "not-started")
        if (names := [leg.name for leg in legs if wording.status_told(leg.audit) == status])
    ]
    aside = debrief.on_no_leg
    seen = {*(one.point for one in aside.passed), *aside.elsewhere}
    passed = [point for point in _points(debrief) if point in seen]
    if passed:
        points = Listed(things=passed)
        rest.insert(0, say("verdict-also-passed", points=points, count=len(passed)))
    close = sum(measures.point_verdict == "too close to call" for measures in measured)
    if close:
        rest.insert(0, say("verdict-too-close", count=close))
    return say(
        "verdict-count",
        walked=len(measured),
        legs=len(legs),
        reached=reached,
        rest="".join(rest),
    )


def _points(debrief: Debrief) -> list[str]:
    """Name the points of the course, each once."""
    ends = [name for leg in debrief.card.legs for name in (leg.start.name, leg.end.name)]
    return list(dict.fromkeys(ends))


def _on_no_leg(debrief: Debrief) -> tuple[str, ...]:
    """Give the doubt about what was walked on no leg; none where it is little."""
    doubt = debrief.on_no_leg.doubt
    return (told(doubt),) if doubt else ()
