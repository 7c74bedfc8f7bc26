"""What went well on a walk, with the figures that show it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from audit.coaching.talk import Keep, Skill
from audit.diagnosis.causes import CAUSES
from audit.diagnosis.finding import Finding
from audit.leg_card.wording import told_legs
from audit.measurement.leg_measures import LegAudit, LegMeasures
from audit.settings import CoachingSettings
from audit.words import Sentence, sentence
from audit.words.figures import Length, Percent, Turn

_TURNS = frozenset(cause.name for cause in CAUSES if cause.kind == "turn")
_LENGTHS = frozenset(cause.name for cause in CAUSES if cause.kind == "length")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Praise:
    """A candidate; ``weight`` is the share of legs that show it, and how much that says."""

    weight: float
    keep: Keep


def to_keep(
    legs: Sequence[LegAudit],
    causes: Mapping[str, Sequence[Finding]],
    radius_m: float,
    *,
    logged: bool,
    settings: CoachingSettings,
) -> tuple[Keep, ...]:
    """Give the two things that the figures praise most; one where there are no two.

    An azimuth or a distance that a mistake has likely put out is not praised, however
    near it came, nor is one on a part of the walk that may not be the leg's, nor one of
    which an end was reckoned and not seen.
    """
    walked = {leg.card.name: leg.measures for leg in legs if leg.measures is not None}
    if not walked:
        return ()
    doubtful = {leg.card.name for leg in legs if leg.confidence < settings.sure_portion}
    sure = {
        name: one
        for name, one in walked.items()
        if name not in doubtful and not any(one.ends_reckoned)
    }
    praises = [
        *_azimuths(_without(sure, causes, _TURNS, settings), walked, settings),
        *_distances(_without(sure, causes, _LENGTHS, settings), walked, settings),
        *_points(legs, walked, radius_m),
        *_recoveries(walked, radius_m),
        *_habits(legs, walked, logged=logged),
    ]
    best = sorted(praises, key=lambda praise: -praise.weight)
    return tuple(praise.keep for praise in best[: settings.things])


def _without(
    walked: dict[str, LegMeasures],
    causes: Mapping[str, Sequence[Finding]],
    mistakes: frozenset[str],
    settings: CoachingSettings,
) -> dict[str, LegMeasures]:
    """Give the legs of which none of these mistakes is likelier than not."""
    spoilt = {
        name
        for name, findings in causes.items()
        if sum(one.probability for one in findings if one.cause in mistakes)
        >= settings.spoilt_probability
    }
    return {name: one for name, one in walked.items() if name not in spoilt}


def _azimuths(
    right: dict[str, LegMeasures], walked: dict[str, LegMeasures], settings: CoachingSettings
) -> Iterator[_Praise]:
    errors = {name: abs(one.azimuth_error_deg) for name, one in right.items()}
    good = _half_within(errors, settings.held_azimuth_deg, len(walked))
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
        yield _Praise(weight=1.0 + len(good) / len(walked), keep=keep)


def _distances(
    right: dict[str, LegMeasures], walked: dict[str, LegMeasures], settings: CoachingSettings
) -> Iterator[_Praise]:
    errors = {name: abs(one.distance_ratio - 1.0) for name, one in right.items()}
    good = _half_within(errors, settings.good_distance_share, len(walked))
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
        yield _Praise(weight=0.95 + len(good) / len(walked), keep=keep)


def _half_within(errors: dict[str, float], most: float, out_of: int) -> list[str]:
    """Give the legs within a limit, where they are half of all at least."""
    good = [name for name, error in errors.items() if error <= most]
    return good if 2 * len(good) >= out_of else []


def _points(
    legs: Sequence[LegAudit], walked: dict[str, LegMeasures], radius_m: float
) -> Iterator[_Praise]:
    straight = [
        name for name, one in walked.items() if one.miss_m <= radius_m and not one.ends_reckoned[1]
    ]
    if 2 * len(straight) < len(legs) or not straight:
        return
    mean_m = sum(walked[name].miss_m for name in straight) / len(straight)
    yield _Praise(
        weight=0.9 + len(straight) / len(legs),
        keep=Keep(
            what=sentence("coach-keep-arriving"),
            evidence=sentence(
                "coach-arriving", legs=told_legs(straight), mean=Length(metres=mean_m)
            ),
            skill="arriving",
            legs=tuple(straight),
        ),
    )


def _recoveries(walked: dict[str, LegMeasures], radius_m: float) -> Iterator[_Praise]:
    found = [
        name
        for name, one in walked.items()
        if one.found and one.miss_m > radius_m and one.came_back(radius_m)
    ]
    if found:
        farthest_m = max(walked[name].miss_m for name in found)
        yield _Praise(
            weight=1.2 + 0.5 * len(found) / len(walked),
            keep=Keep(
                what=sentence("coach-keep-finding"),
                evidence=sentence(
                    "coach-finding", legs=told_legs(found), farthest=Length(metres=farthest_m)
                ),
                skill="finding",
                legs=tuple(found),
            ),
        )


def _habits(
    legs: Sequence[LegAudit], walked: dict[str, LegMeasures], *, logged: bool
) -> Iterator[_Praise]:
    """Give what can be said of nearly any walk that was finished; it comes last."""
    habits: list[tuple[float, Skill, Sentence]] = []
    # Who reached few of the points may have gone to them in another order.
    if len(walked) == len(legs) and 2 * sum(one.found for one in walked.values()) >= len(legs):
        habits.append((0.6, "through", sentence("coach-through", count=len(legs))))
    if logged:
        habits.append((0.5, "log", sentence("coach-log")))
    habits.append((0.1, "recording", sentence("coach-recording", count=len(walked))))
    for weight, skill, text in habits:
        what = sentence(f"coach-keep-{skill}")
        yield _Praise(weight=weight, keep=Keep(what=what, evidence=text, skill=skill))
