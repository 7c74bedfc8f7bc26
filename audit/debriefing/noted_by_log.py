"""Match a walk anew with the moments of its log, where these may change anything.

The match of the recording alone comes first, for by it the log's watch is set. Then the moments
count as what they are: evidence, of which one note in so many is wrong.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from audit.debriefing.doubts import end_to_settle
from audit.debriefing.log_count import log_count
from audit.debriefing.log_watch import agreeing, agrees, moments_of_log
from audit.leg_card import LegCard
from audit.matching.clean_times import never_set
from audit.matching.leg_match import CleanTrack, LegMatch, Match, RunnerUp
from audit.matching.match_walk import match_walk
from audit.matching.noted_moments import NotedMoment
from audit.matching.outings import MatchedOuting
from audit.matching.pins import Pin
from audit.settings import QualitySettings, Settings
from audit.walkers_log import WalkersLog
from audit.words import sentence
from audit.words.figures import Moment


def matched_with_log(
    outing: MatchedOuting,
    card: LegCard,
    log: WalkersLog | None,
    settings: Settings,
    pins: Sequence[Pin] = (),
) -> MatchedOuting:
    """Give the walk matched with the moments of its log.

    Where they agree with the match of the recording alone, and no leg is in doubt, nothing is to
    be gained. A match that agrees with fewer of them is not believed. Legs to which count and
    time of the log both speak against all the same are told as less sure.
    """
    walk = outing.sampled.clean
    if log is None or not walk.timed or never_set(walk.time_s):
        return outing
    noted = _with_counts(log, card, outing.match, walk, settings)
    kept = agreeing(noted, outing.match, walk, settings)
    known = all(leg.confidence >= settings.quality.unsure for leg in outing.match.legs)
    if not noted or (kept == len(noted) and known):
        return outing
    match = match_walk(walk, card, settings.matching, pins, noted)
    if agreeing(noted, match, walk, settings) < kept:
        match = outing.match
    told = _at_odds(match, noted, log, card, walk, settings)
    return replace(outing, match=told, without_log=outing.match)


def _with_counts(
    log: WalkersLog, card: LegCard, match: Match, walk: CleanTrack, settings: Settings
) -> tuple[NotedMoment, ...]:
    """Give the moments of a log, with whether the counts of their legs lead to them."""
    moments = []
    for one in moments_of_log(log, card, match, walk, settings):
        count = log_count(one.leg, log, card, match, walk, settings)
        counted = count is not None and count.leads_to(one, walk)
        moments.append(replace(one, counted=counted))
    return tuple(moments)


def _at_odds(
    match: Match,
    noted: Sequence[NotedMoment],
    log: WalkersLog,
    card: LegCard,
    walk: CleanTrack,
    settings: Settings,
) -> Match:
    """Tell legs as less sure that end at another moment than noted, and by another count.

    So are those that end where another leg was noted, and those left out that the log says were
    walked: what may have been done there no match has weighed.
    """
    legs = list(match.legs)
    for leg in match.legs:
        if "claim" in leg.pinned or not _is_at_odds(leg, noted, match, walk, settings):
            continue
        count = log_count(leg.leg, log, card, match, walk, settings)
        if leg.claim_s is None or (count is not None and count.speaks_against_claim):
            legs[leg.leg] = _less_sure(leg, noted, settings.quality)
    return replace(match, legs=tuple(legs))


def _is_at_odds(
    leg: LegMatch,
    noted: Sequence[NotedMoment],
    match: Match,
    walk: CleanTrack,
    settings: Settings,
) -> bool:
    within_s, then_s = settings.matching.noted_within_s, settings.matching.noted_just_then_s
    own = (one for one in noted if one.leg == leg.leg)
    others = (one for one in noted if one.leg != leg.leg)
    return not all(agrees(one, match, walk, within_s) for one in own) or (
        leg.claim_s is not None and any(abs(leg.claim_s - one.time_s) <= then_s for one in others)
    )


def _less_sure(leg: LegMatch, noted: Sequence[NotedMoment], settings: QualitySettings) -> LegMatch:
    right = leg.confidence * settings.log_at_odds
    sure = right / max(right + 1.0 - leg.confidence, 1e-12)
    other = leg.runner_up
    said_s = next((one.time_s for one in noted if one.leg == leg.leg), None)
    if said_s is not None and leg.start_s is not None and leg.start_s < said_s:
        other = RunnerUp(
            status="walked", start_s=leg.start_s, claim_s=said_s, probability=(1.0 - sure) / 2.0
        )
    return replace(leg, confidence=sure, runner_up=other)


def heard_of_log(
    card: LegCard, outing: MatchedOuting | None, clean: CleanTrack, settings: QualitySettings
) -> Iterator[str]:
    """Say of each leg that the moments of the log changed how the recording alone has it."""
    if outing is None or outing.without_log is None:
        return
    for leg, alone in zip(outing.match.legs, outing.without_log.legs, strict=True):
        name, within_s = card.legs[leg.leg].name, settings.ends_alike_s
        ends_alike = _is_near(leg.claim_s, alone.claim_s, within_s)
        if leg.status == alone.status and ends_alike:
            unknown = leg.start_s is None or alone.start_s is None
            if unknown or _is_near(leg.start_s, alone.start_s, within_s):
                continue
            now_s, before_s, moved = leg.start_s, alone.start_s, "from"
        else:
            now_s, before_s, moved = leg.claim_s, alone.claim_s, "claim"
        yield sentence(
            "recording-log-heard",
            leg=name,
            moved=moved,
            now="not" if now_s is None else "known",
            alone="not" if before_s is None else "known",
            time=None if now_s is None else Moment(time_s=now_s),
            before=None if before_s is None else Moment(time_s=before_s),
            pin="" if before_s is None else end_to_settle(moved, name, before_s, clean),
        )


def _is_near(now: float | None, before: float | None, within_s: float) -> bool:
    if now is None or before is None:
        return now is before
    return abs(now - before) <= within_s
