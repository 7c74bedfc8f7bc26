"""Legs that were not walked as planned: a point left out, or the points in another order."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from audit.diagnosis.causes import order_changed, point_skipped
from audit.diagnosis.finding import Finding
from audit.leg_card import CardPoint, LegCard
from audit.matching.leg_match import CleanTrack
from audit.measurement.leg_measures import LegAudit
from audit.settings import DiagnosisSettings
from audit.words import Sentence, sentence
from audit.words.figures import Length


def explain_left_out(
    legs: Sequence[LegAudit], card: LegCard, clean: CleanTrack, settings: DiagnosisSettings
) -> dict[int, tuple[Finding, ...]]:
    """Give the findings of every leg that was skipped, adding up to 1.

    A leg is skipped because one of its two points was never gone to, or because they
    were gone to in another order. Which of the two, the nearest approaches say. Of a leg
    before the recording nothing is known, so there is nothing to explain.
    """
    away = _nearest_m(card, clean)
    found: dict[int, tuple[Finding, ...]] = {}
    for number, leg in enumerate(legs):
        if leg.status != "skipped" or leg.before_recording:
            continue
        ends = (leg.card.start.name, leg.card.end.name)
        missed = max(ends, key=lambda name: away[name])
        reached = away[missed] <= max(card.arrival_radius_m, settings.passed_m)
        cause, other = (order_changed, point_skipped) if reached else (point_skipped, order_changed)
        sure = settings.left_out_sure * leg.confidence
        if not _shown(number, legs, card, clean, settings):
            sure *= settings.left_out_unseen
        found[number] = (
            Finding(
                cause=cause.CAUSE.name,
                probability=sure,
                evidence=_sentence(missed, away[missed], reached=reached),
                predicted=None,
                seen=float(away[missed]),
                unit="m",
                made=sure,
                runner_up=other.CAUSE.name,
                settles=cause.CAUSE.settles,
            ),
            Finding(
                cause="cannot-tell",
                probability=1.0 - sure,
                evidence=sentence("evidence-not-recorded"),
                made=1.0 - sure,
                runner_up=cause.CAUSE.name,
                settles=cause.CAUSE.settles,
            ),
        )
        if sure < 0.5:
            found[number] = found[number][::-1]
    return found


def _shown(
    number: int,
    legs: Sequence[LegAudit],
    card: LegCard,
    clean: CleanTrack,
    settings: DiagnosisSettings,
) -> bool:
    """Say whether the recording shows what the walker did in place of a leg.

    It does where legs before and after it were walked, or he set out from the first point
    or came to a later one, and most of the way from one to the other was recorded.
    """
    before = [leg.measures for leg in legs[:number] if leg.measures is not None]
    after = [leg.measures for leg in legs[number + 1 :] if leg.measures is not None]
    first = before[-1].claim.fix if before else None
    if after:
        last: int | None = after[0].start.fix
        first = _at_the_start(card, clean, after[0].start.fix, settings) if first is None else first
    else:
        last = _at_a_later_point(number, card, clean, first, settings)
    if first is None or last is None:
        return False
    if last <= first:
        return True
    part = slice(first, last + 1)
    steps = np.hypot(np.diff(clean.east_m[part]), np.diff(clean.north_m[part]))
    unseen = sum(
        float(steps[gap.before - first]) for gap in clean.gaps if first <= gap.before < last
    )
    return unseen <= settings.left_out_gaps * float(steps.sum())


def _at_the_start(
    card: LegCard, clean: CleanTrack, until: int, settings: DiagnosisSettings
) -> int | None:
    """Give the fix at which the walker was at the first point; None where he never was."""
    return _fix_nearest(card.legs[0].start, card, clean, slice(0, until + 1), settings)


def _at_a_later_point(
    number: int, card: LegCard, clean: CleanTrack, since: int | None, settings: DiagnosisSettings
) -> int | None:
    """Give the fix at which the walker came nearest to the end of a leg or a later point."""
    part = slice(since, None)
    at = [_fix_nearest(leg.end, card, clean, part, settings) for leg in card.legs[number:]]
    return next((fix for fix in at if fix is not None), None)


def _fix_nearest(
    point: CardPoint, card: LegCard, clean: CleanTrack, part: slice, settings: DiagnosisSettings
) -> int | None:
    """Give the fix, of a part of the recording, nearest to a point; None where none is near."""
    east_m, north_m = clean.east_m[part], clean.north_m[part]
    away_m = np.hypot(east_m - point.east_m, north_m - point.north_m)
    nearest = int(np.argmin(away_m))
    if away_m[nearest] > max(card.arrival_radius_m, settings.passed_m):
        return None
    return (part.start or 0) + nearest


def _nearest_m(card: LegCard, clean: CleanTrack) -> dict[str, float]:
    """Give how near the recording comes to each point."""
    return {
        point.name: float(
            np.hypot(clean.east_m - point.east_m, clean.north_m - point.north_m).min()
        )
        for point in card.points
    }


def _sentence(missed: str, away_m: float, *, reached: bool) -> Sentence:
    away = Length(metres=away_m)
    if reached:
        return sentence("evidence-not-in-turn", away=away)
    return sentence("evidence-never-near", point=missed, away=away)
