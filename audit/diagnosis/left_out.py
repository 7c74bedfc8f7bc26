"""Legs that were not walked as planned: a point left out, or the points in another order."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from audit.diagnosis.causes import order_changed, point_skipped
from audit.diagnosis.finding import Finding
from audit.diagnosis.order_of_passing import OrdersOfPassing, Passed, PassedPoint
from audit.diagnosis.passages import Passage
from audit.diagnosis.slip_told import slip_between, with_slip
from audit.geodesy.along_line import metres_long, steps_m
from audit.guide.cause_names import CANNOT_TELL
from audit.leg_card import CardPoint, LegCard
from audit.matching.leg_match import CleanTrack, LegMatch, Match
from audit.measurement.leg_measures import LegAudit
from audit.settings import DiagnosisSettings
from audit.words import sentence
from audit.words.figures import Length, Listed, Moment


def explain_left_out(
    legs: Sequence[LegAudit],
    card: LegCard,
    clean: CleanTrack,
    match: Match,
    orders: OrdersOfPassing,
    settings: DiagnosisSettings,
) -> dict[int, tuple[Finding, ...]]:
    """Give the findings of every leg that was skipped, or may have been, adding up to 1.

    A leg is skipped because one of its two points was never gone to, or because they
    were gone to in another order. Which of the two, the passages of the points say: passed
    one after the other as planned, they speak for no mistake; nor does a point that was
    missed by little while no leg was walked, or in place of which the walk went further than
    by way of it, as in looking for it. Of a leg before the recording nothing is known,
    so there is nothing to explain.
    """
    shares = {number: _left_out(match.legs[number]) for number in range(len(legs))}
    left = {
        number: share
        for number, share in shares.items()
        if share is not None and not legs[number].before_recording
    }
    if not left:  # the passages are looked for on every fix
        return {}
    near_m = max(card.arrival_radius_m, settings.passed_m)
    passed, little_m = orders.within(near_m), settings.missed_by_little * near_m
    found: dict[int, tuple[Finding, ...]] = {}
    for number, left_out in left.items():
        leg = legs[number]
        of_leg = passed.of_leg(number)
        if of_leg.turn == "in-turn" or (card.order == "free" and of_leg.turn != "never"):
            found[number] = (_cannot_be_told(of_leg, timed=clean.timed),)
            continue
        missed, _ = _farthest(leg, clean)
        never = of_leg.turn == "never"
        if never and (came_by := orders.within(little_m).come_by(number, missed)):
            found[number] = (_missed_or_left_out(missed, came_by, timed=clean.timed),)
            continue
        sure = settings.left_out_sure * left_out
        if of_leg.turn == "elsewhere" or not _shown(number, legs, card, clean, settings):
            sure *= settings.left_out_unseen
        found[number] = _mistake_or_none(leg, of_leg, sure, clean)
        moments_s = passed.around(missed.name)
        if never and moments_s is not None:
            slipped = slip_between(moments_s, missed, card, clean, match.noise_m, settings)
            if slipped is None and (way := _longer_way(moments_s, missed, card, clean, settings)):
                found[number] = (_looked_for(missed, *way),)
                continue
            found[number] = with_slip(found[number], slipped, missed, settings, timed=clean.timed)
    return found


def _left_out(leg: LegMatch) -> float | None:
    """Give how sure it is that a leg was left out; None where nothing says so."""
    if leg.status == "skipped":
        return leg.confidence
    other = leg.runner_up
    if leg.status == "not-started" and other is not None and other.status == "skipped":
        return other.probability
    return None


def _mistake_or_none(
    leg: LegAudit, passed: Passed, sure: float, clean: CleanTrack
) -> tuple[Finding, ...]:
    """Give the mistake that the passages show, and what is left of doubt, the likelier first."""
    cause, other, point = order_changed.CAUSE, point_skipped.CAUSE, ""
    if passed.turn == "out-of-turn":
        seen_m = max(one.passage.away_m for one in passed.points)
        evidence = sentence("evidence-out-of-turn", passed=passed_words(passed, timed=clean.timed))
    else:
        cause, other = other, cause
        missed, seen_m = _farthest(leg, clean)
        point = missed.name
        evidence = sentence("evidence-never-near", point=point, away=Length(metres=seen_m))
    if passed.turn == "elsewhere":
        point = passed.points[0].point
        where = passed_words(passed, timed=clean.timed)
        evidence = sentence("evidence-passed-elsewhere", passed=where)
    told = Finding(
        cause=cause.name,
        probability=sure,
        evidence=evidence,
        seen=seen_m,
        unit="m",
        made=sure,
        runner_up=other.name,
        settles=cause.settles,
        point=point,
        passed=passed.points if passed.turn == "out-of-turn" else (),
    )
    doubt = Finding(
        cause=CANNOT_TELL,
        probability=1.0 - sure,
        evidence=sentence(
            "evidence-not-recorded" if leg.status == "skipped" else "evidence-gave-up"
        ),
        made=1.0 - sure,
        runner_up=cause.name,
        settles=cause.settles,
    )
    return (told, doubt) if sure >= 0.5 else (doubt, told)


def _cannot_be_told(passed: Passed, *, timed: bool) -> Finding:
    """Give the finding of a leg whose points were passed as planned, or in a free order."""
    words = "evidence-in-turn" if passed.turn == "in-turn" else "evidence-free-turn"
    return _untold(sentence(words, passed=passed_words(passed, timed=timed)))


def _missed_or_left_out(point: CardPoint, came_by: Sequence[Passage], *, timed: bool) -> Finding:
    """Give the finding of a leg of which a point was missed by little, while no leg was walked."""
    nearest = min(came_by, key=lambda passage: passage.away_m)
    passed = Passed(turn="never", points=(PassedPoint(point=point.name, passage=nearest),))
    return _untold(sentence("evidence-missed-by-little", passed=passed_words(passed, timed=timed)))


def _untold(evidence: str) -> Finding:
    """Give the finding of a leg of which nothing tells whether a mistake was made."""
    return Finding(
        cause=CANNOT_TELL,
        probability=1.0,
        evidence=evidence,
        made=1.0,
        settles=sentence("settle-in-turn"),
    )


def _longer_way(
    moments_s: tuple[float, float],
    point: CardPoint,
    card: LegCard,
    clean: CleanTrack,
    settings: DiagnosisSettings,
) -> tuple[float, float] | None:
    """Give metres walked between two moments, and by way of a point; None where not longer."""
    at_s = np.arange(moments_s[0], moments_s[1], settings.looked_for_step_s)
    walked_m = metres_long(clean.places_at(at_s))
    planned_m = sum(leg.distance_m for leg in card.legs if point in (leg.start, leg.end))
    return (walked_m, planned_m) if walked_m > settings.looked_for * planned_m else None


def _looked_for(point: CardPoint, walked_m: float, planned_m: float) -> Finding:
    """Give the finding of a leg in place of which the walk went further than by its points."""
    return _untold(
        sentence(
            "evidence-looked-for",
            point=point.name,
            walked=Length(metres=walked_m),
            planned=Length(metres=planned_m),
        )
    )


def passed_words(passed: Passed, *, timed: bool) -> Listed:
    """Write "P1 at 15:09:48Z and P2 at 15:14:43Z", or the names where nothing has a time."""
    return Listed(
        things=[
            sentence(
                "evidence-passed-at",
                point=one.point,
                time=Moment(time_s=one.passage.nearest_s),
                away=Length(metres=one.passage.away_m),
            )
            if timed
            else one.point
            for one in passed.points
        ]
    )


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
    steps = steps_m(clean.places(slice(first, last + 1)))
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


def _farthest(leg: LegAudit, clean: CleanTrack) -> tuple[CardPoint, float]:
    """Give that point of a leg which the recording comes less near to, and how near."""
    away_m = [
        (float(np.hypot(clean.east_m - point.east_m, clean.north_m - point.north_m).min()), point)
        for point in (leg.card.start, leg.card.end)
    ]
    seen_m, missed = max(away_m, key=lambda pair: pair[0])
    return missed, seen_m
