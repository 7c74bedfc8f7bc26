"""Match a walk anew where its log says that a leg had ended when the match has it still walked.

The match of the recording alone comes first, for by it the log's watch is set. Then the moments
of the log count as what they are: evidence that one note in so many is wrong.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np

from audit.debriefing.log_moments import CLOCKS_S, days_off, seconds_after
from audit.geodesy.along_line import metres_long
from audit.leg_card import LegCard
from audit.matching.clean_times import never_set
from audit.matching.leg_match import CleanTrack, LegMatch, Match
from audit.matching.match_walk import match_walk
from audit.matching.noted_moments import NotedMoment
from audit.matching.outings import MatchedOuting
from audit.matching.pins import Pin
from audit.moments import DAY_S
from audit.settings import MatchingSettings, QualitySettings, Settings
from audit.walkers_log import WalkersLog
from audit.words import sentence
from audit.words.figures import Moment


@dataclass(frozen=True, slots=True, kw_only=True)
class _Entry:
    """When the log ends a leg, by its own clock set on the recording's day."""

    leg: int
    said_s: float
    zoned: bool


def matched_with_log(
    outing: MatchedOuting,
    card: LegCard,
    log: WalkersLog | None,
    settings: Settings,
    pins: Sequence[Pin] = (),
) -> MatchedOuting:
    """Give the walk matched with the moments of its log, where that agrees with more of them.

    Legs that are at odds with the log all the same are told as less sure, if their count does
    not speak for them.
    """
    walk = outing.sampled.clean
    if log is None or not walk.timed or never_set(walk.time_s):
        return outing
    noted = noted_moments(log, card, outing.match, walk, settings)
    kept = _kept(noted, outing.match, settings.matching)
    if kept == len(noted):
        return outing
    match = match_walk(walk, card, settings.matching, pins, noted)
    if _kept(noted, match, settings.matching) <= kept:
        return replace(outing, match=_at_odds(outing.match, noted, log, card, walk, settings))
    told = _at_odds(match, noted, log, card, walk, settings)
    return replace(outing, match=told, without_log=outing.match)


def _at_odds(
    match: Match,
    noted: Sequence[NotedMoment],
    log: WalkersLog,
    card: LegCard,
    walk: CleanTrack,
    settings: Settings,
) -> Match:
    """Tell the legs as less sure that end at another moment than the log says, or at another's.

    So are those left out that the log says were walked.
    """
    then_s = settings.matching.noted_just_then_s
    legs = list(match.legs)
    for leg in match.legs:
        if "claim" in leg.pinned:
            continue
        own = [one for one in noted if one.leg == leg.leg]
        agrees = all(_agrees(one, match.legs, settings.matching.noted_within_s) for one in own)
        others = (one.time_s for one in noted if one.leg != leg.leg)
        claim_s = np.nan if leg.claim_s is None else leg.claim_s
        if agrees and not any(abs(claim_s - other_s) <= then_s for other_s in others):
            continue
        count = _counted(leg.leg, log, card, match, walk, settings)
        if count is None or count.claimed_m > count.ordinary_m:
            right = leg.confidence * settings.quality.log_at_odds
            sure = right / max(right + 1.0 - leg.confidence, 1e-12)
            legs[leg.leg] = replace(leg, confidence=sure)
    return replace(match, legs=tuple(legs))


def heard_of_log(
    card: LegCard, outing: MatchedOuting | None, settings: QualitySettings
) -> Iterator[str]:
    """Say of each leg that the moments of the log changed how the recording alone has it."""
    if outing is None or outing.without_log is None:
        return
    for leg, alone in zip(outing.match.legs, outing.without_log.legs, strict=True):
        if _is_same(leg, alone, settings.ends_alike_s):
            continue
        yield sentence(
            "recording-log-heard",
            leg=card.legs[leg.leg].name,
            now="claimed" if leg.claim_s is not None else "not",
            alone="claimed" if alone.claim_s is not None else "not",
            time=None if alone.claim_s is None else Moment(time_s=alone.claim_s),
        )


def _is_same(leg: LegMatch, alone: LegMatch, within_s: float) -> bool:
    ends = ((leg.start_s, alone.start_s), (leg.claim_s, alone.claim_s))
    return leg.status == alone.status and all(_is_near(*both, within_s) for both in ends)


def _is_near(now: float | None, before: float | None, within_s: float) -> bool:
    if now is None or before is None:
        return now is before
    return abs(now - before) <= within_s


def noted_moments(
    log: WalkersLog, card: LegCard, match: Match, walk: CleanTrack, settings: Settings
) -> tuple[NotedMoment, ...]:
    """Give the moments of a log by the clock of the recording, those beside it left out."""
    middle_s = float(walk.time_s[0] + walk.time_s[-1]) / 2.0
    entries = []
    for leg, of_card in enumerate(card.legs):
        entry = log.entry(of_card.name)
        if entry is None or entry.arrived is None:
            continue
        zoned = entry.arrived.utcoffset() is not None
        after_s = seconds_after(entry.arrived, middle_s)
        said_s = middle_s + after_s - DAY_S * days_off(after_s, zoned=zoned)
        entries.append(_Entry(leg=leg, said_s=said_s, zoned=zoned))
    moments: list[NotedMoment] = []
    for zoned in (True, False):
        alike = [one for one in entries if one.zoned is zoned]
        ahead_s = _ahead_s(alike, match, settings.matching, zoned=zoned)
        moments += [] if ahead_s is None else _by_clock(alike, ahead_s)
    return tuple(
        replace(one, counted=_is_counted(one, log, card, match, walk, settings))
        for one in moments
        if walk.holds(one.time_s)
    )


def _is_counted(
    noted: NotedMoment,
    log: WalkersLog,
    card: LegCard,
    match: Match,
    walk: CleanTrack,
    settings: Settings,
) -> bool:
    """Tell whether a leg's count leads to where the walker was at a moment, not to its claim."""
    count = _counted(noted.leg, log, card, match, walk, settings)
    if count is None or count.start_s >= noted.time_s:
        return False
    there_m = count.out_m(walk, noted.time_s)
    return there_m <= count.most_m and count.claimed_m > max(count.ordinary_m, there_m)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Counted:
    """The count of a leg, what one may be out by, and what it is of the claim, all in metres."""

    start_s: float
    metres: float
    ordinary_m: float
    most_m: float
    claimed_m: float

    def out_m(self, walk: CleanTrack, time_s: float) -> float:
        """Give how far the count is out where the walker was at a moment."""
        return abs(metres_long(walk.places_at((self.start_s, time_s))) - self.metres)


def _counted(
    number: int, log: WalkersLog, card: LegCard, match: Match, walk: CleanTrack, settings: Settings
) -> _Counted | None:
    """Give the count of a walked leg; None where none was noted, or it is no distance.

    A count is told as a distance straight from the start: along a line that bends it is none.
    """
    leg, of_card = match.legs[number], card.legs[number]
    entry, start_s, claim_s = log.entry(of_card.name), leg.start_s, leg.claim_s
    if entry is None or not entry.paces or not card.paces_per_100m or len(of_card.line) > 2:
        return None
    if start_s is None or claim_s is None:
        return None
    metres, noise_m = 100.0 * entry.paces / card.paces_per_100m, 2.0 * match.noise_m
    count = _Counted(
        start_s=start_s,
        metres=metres,
        ordinary_m=settings.coaching.pace_length_share * metres + noise_m,
        most_m=settings.quality.counted_out_most * metres + noise_m,
        claimed_m=0.0,
    )
    return replace(count, claimed_m=count.out_m(walk, claim_s))


def _by_clock(entries: Sequence[_Entry], ahead_s: float) -> list[NotedMoment]:
    return [NotedMoment(leg=one.leg, time_s=one.said_s - ahead_s) for one in entries]


def _ahead_s(
    entries: Sequence[_Entry], match: Match, settings: MatchingSettings, *, zoned: bool
) -> float | None:
    """Give by how much the log's watch is ahead, by the legs that the match agrees on with it.

    A clock that is right, or of a zone, needs one leg; a watch that is fast or slow, two that
    say the same of their claims. None where no clock explains half of the moments.
    """
    clocks = [0.0] if zoned else sorted(CLOCKS_S, key=abs)
    claims = {leg.leg: leg.claim_s for leg in match.legs if leg.claim_s is not None}
    after_s = np.array([one.said_s - claims[one.leg] for one in entries if one.leg in claims])
    kept = {ahead_s: _kept(_by_clock(entries, ahead_s), match, settings) for ahead_s in clocks}
    for own in after_s:
        alike = int((abs(after_s - own) <= settings.noted_within_s).sum())
        if alike > 1:
            kept.setdefault(float(own), alike)
    # Of clocks that as many legs agree with, the one that comes nearest to the claims.
    off_s = {ahead_s: float(abs(after_s - ahead_s).sum()) for ahead_s in kept}
    ahead_s = max(kept, key=lambda one: (kept[one], -off_s[one]))
    return ahead_s if 2 * kept[ahead_s] >= max(len(entries), 1) else None


def _kept(noted: Sequence[NotedMoment], match: Match, settings: MatchingSettings) -> int:
    """Count the moments at which the match has the walker at the point, or as good as there."""
    return sum(_agrees(one, match.legs, settings.noted_within_s) for one in noted)


def _agrees(noted: NotedMoment, legs: Sequence[LegMatch], within_s: float) -> bool:
    leg = legs[noted.leg]
    if leg.claim_s is None or leg.status != "walked":
        return False
    if noted.counted:
        return abs(leg.claim_s - noted.time_s) <= within_s
    later = [of.start_s for of in legs if of.start_s is not None and of.start_s >= leg.claim_s]
    until_s = min(later, default=float("inf"))
    return leg.claim_s - within_s <= noted.time_s <= until_s + within_s
