"""What went well on a walk, with the figures that show it."""

from __future__ import annotations

from collections.abc import Iterator
from collections.abc import Set as AbstractSet
from dataclasses import dataclass

from audit.coaching.largest_part import blamed
from audit.coaching.lean_over_legs import lean_over_legs
from audit.coaching.shown import Shown
from audit.coaching.stretch_over_legs import stretch_over_legs
from audit.coaching.sure_legs import spoilt_legs, sure_legs, unlike_legs
from audit.coaching.talk import Keep, Skill
from audit.coaching.went_about import went_about
from audit.guide.cause_names import CANNOT_TELL, CAUSE_KINDS
from audit.leg_card.told_numbers import told_legs
from audit.measurement.leg_measures import LegMeasures
from audit.settings import CoachingSettings
from audit.words import Sentence, sentence
from audit.words.figures import Length, Percent, Turn

_TURNS = frozenset({*CAUSE_KINDS["Direction"], *CAUSE_KINDS["Holding the line"]})
_LENGTHS = frozenset(CAUSE_KINDS["Distance"])


@dataclass(frozen=True, slots=True, kw_only=True)
class _Praise:
    """A candidate; ``weight`` is the share of legs that show it, and how much that says."""

    weight: float
    keep: Keep


def to_keep(shown: Shown, settings: CoachingSettings) -> tuple[Keep, ...]:
    """Give the two things that the figures praise most; fewer where there are no two.

    Nothing is praised on a part of the walk that may not be the leg's, or that the log disputes,
    nor where an end was reckoned and not seen, nor an azimuth that the recording shows no nearer
    than it is praised for, or of a way that it shows little of. An azimuth or a distance that a
    mistake has likely put out, or of a leg that nothing explains, at whose steps card and log show
    an error, to which the head of the debrief puts the worst miss, or by which all legs are out to
    one side, is not praised however near it came, nor is a count on a leg that went about, nor a
    point at the end of a leg that was not walked as the card has it.
    """
    sure = sure_legs(shown.legs, settings)
    in_order = _without(sure, shown.aside | shown.disputed)
    untold = spoilt_legs(shown.causes, frozenset({CANNOT_TELL}), settings)
    turned = spoilt_legs(shown.causes, _TURNS, settings) | shown.entered("direction") | shown.bent
    turned |= untold | blamed(sure, "heading", shown.radius_m)
    lean = lean_over_legs(shown, settings)
    turned |= frozenset() if lean is None else lean.legs.keys()
    stretched = (
        spoilt_legs(shown.causes, _LENGTHS, settings) | shown.entered("distance") | shown.under_way
    )
    stretched |= untold | blamed(sure, "distance", shown.radius_m)
    stretch = stretch_over_legs(shown, settings)
    stretched |= frozenset() if stretch is None else stretch.legs.keys()
    unlike = unlike_legs(shown.causes, settings)
    about = went_about(sure, settings)
    walked, legs = len(shown.walked), len(shown.legs)
    praises = [
        *_azimuths(_without(in_order, turned), walked, settings),
        *_distances(_without(in_order, stretched | about), walked, settings),
        *_points(_without(in_order, unlike | about), legs, shown.radius_m, settings),
        *_recoveries(_without(in_order, unlike), walked, shown.radius_m, settings),
        *_through(_without(in_order, unlike), legs, settings),
        *_records(shown, len(sure), legs, settings),
    ]
    best = sorted(praises, key=lambda praise: -praise.weight)
    return tuple(praise.keep for praise in best[: settings.things])


def _without(sure: dict[str, LegMeasures], left_out: AbstractSet[str]) -> dict[str, LegMeasures]:
    return {name: one for name, one in sure.items() if name not in left_out}


def _azimuths(
    right: dict[str, LegMeasures], walked: int, settings: CoachingSettings
) -> Iterator[_Praise]:
    errors = {
        name: abs(one.azimuth_error_deg)
        for name, one in right.items()
        if one.heading.told_half_95_deg <= settings.held_azimuth_deg and _seen(one, settings)
    }
    good = _half_within(errors, settings.held_azimuth_deg, walked)
    if good:
        worst = max(errors[name] for name in good)
        evidence = sentence(
            "coach-azimuth",
            legs=told_legs(good),
            worst=Turn(degrees=worst),
            standard=Turn(degrees=settings.held_azimuth_deg, degrees_decimals=0),
        )
        keep = Keep(
            what=sentence("coach-keep-azimuth"),
            evidence=evidence,
            skill="azimuth",
            legs=tuple(good),
        )
        yield _Praise(weight=settings.praised_azimuth + len(good) / walked, keep=keep)


def _distances(
    right: dict[str, LegMeasures], walked: int, settings: CoachingSettings
) -> Iterator[_Praise]:
    errors = {name: abs(one.distance_ratio - 1.0) for name, one in right.items()}
    good = _half_within(errors, settings.good_distance_share, walked)
    if good:
        worst = max(errors[name] for name in good)
        share = Percent(share=worst, decimals=1)
        evidence = sentence("coach-distance", legs=told_legs(good), worst=share)
        keep = Keep(
            what=sentence("coach-keep-distance"),
            evidence=evidence,
            skill="distance",
            legs=tuple(good),
        )
        yield _Praise(weight=settings.praised_distance + len(good) / walked, keep=keep)


def _seen(one: LegMeasures, settings: CoachingSettings) -> bool:
    """Tell whether enough of the way was recorded to say how it was walked."""
    return one.gap_share <= settings.unseen_most


def _half_within(errors: dict[str, float], most: float, out_of: int) -> list[str]:
    """Give the legs within a limit, where they are half of all at least."""
    good = [name for name, error in errors.items() if error <= most]
    return good if 2 * len(good) >= out_of else []


def _points(
    right: dict[str, LegMeasures], legs: int, radius_m: float, settings: CoachingSettings
) -> Iterator[_Praise]:
    straight = [name for name, one in right.items() if one.miss_m <= radius_m]
    if 2 * len(straight) < legs or not straight:
        return
    mean_m = sum(right[name].miss_m for name in straight) / len(straight)
    yield _Praise(
        weight=settings.praised_arriving + len(straight) / legs,
        keep=Keep(
            what=sentence("coach-keep-arriving"),
            evidence=sentence(
                "coach-arriving",
                legs=told_legs(straight),
                count=len(straight),
                mean=Length(metres=mean_m),
            ),
            skill="arriving",
            legs=tuple(straight),
        ),
    )


def _recoveries(
    right: dict[str, LegMeasures], walked: int, radius_m: float, settings: CoachingSettings
) -> Iterator[_Praise]:
    """Praise searches; who was further off found out where he was, and then walked there."""
    found = [
        name
        for name, one in right.items()
        if one.found
        and radius_m < one.miss_m <= settings.searched_m
        and one.came_back(radius_m)
        and not one.at_the_edge(radius_m)
    ]
    if found:
        farthest_m = max(right[name].miss_m for name in found)
        yield _Praise(
            weight=settings.praised_finding + settings.praised_finding_share * len(found) / walked,
            keep=Keep(
                what=sentence("coach-keep-finding"),
                evidence=sentence(
                    "coach-finding",
                    legs=told_legs(found),
                    count=len(found),
                    farthest=Length(metres=farthest_m),
                ),
                skill="finding",
                legs=tuple(found),
            ),
        )


def _through(
    right: dict[str, LegMeasures], legs: int, settings: CoachingSettings
) -> Iterator[_Praise]:
    """Praise having walked it all, where every leg is known to have been walked as planned.

    Who reached few of the points may have gone to them in another order.
    """
    if legs and len(right) == legs and 2 * sum(one.found for one in right.values()) >= legs:
        yield _habit(settings.praised_through, "through", sentence("coach-through", count=legs))


def _records(
    shown: Shown, measured: int, legs: int, settings: CoachingSettings
) -> Iterator[_Praise]:
    """Praise what the talk itself goes by; it comes last."""
    misnoted = any(hop.noted for of in shown.steps.values() for hop in of.hops)
    holds = shown.log_holds
    if shown.logged and holds != "nothing" and shown.walked and not misnoted:
        yield _habit(settings.praised_log, "log", sentence("coach-log", holds=holds))
    if measured and 2 * measured >= len(shown.walked):
        told = sentence("coach-recording", count=measured, legs=legs)
        yield _habit(settings.praised_recording, "recording", told)


def _habit(weight: float, skill: Skill, evidence: Sentence) -> _Praise:
    what = sentence(f"coach-keep-{skill}")
    return _Praise(weight=weight, keep=Keep(what=what, evidence=evidence, skill=skill))
