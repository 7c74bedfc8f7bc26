"""Where the log speaks against the match: by count and time, a leg ended before its claim.

The recording alone may take a stop short of the point, the search from there and the way on to
it as one leg. Either number that the walker noted may be wrong; both meet one place of the walk
by chance seldom. The portion stays as it was matched, and is told as no surer than that allows.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from audit.debriefing.log_count import LogCount, log_count
from audit.debriefing.log_moments import CLOCKS_S, days_off, seconds_after
from audit.geodesy.along_line import metres_long
from audit.leg_card import LegCard
from audit.matching.clean_times import never_set
from audit.matching.leg_match import CleanTrack, LegMatch, Match, RunnerUp
from audit.moments import DAY_S
from audit.settings import Settings
from audit.units import FloatArray
from audit.walkers_log import WalkersLog


@dataclass(frozen=True, slots=True, kw_only=True)
class EndedByLog:
    """Where a leg ended by count and time of the log, before it is taken to have ended.

    Attributes
    ----------
    paces, counted_m : float
        What was counted, and the distance it stands for.
    ended_s : float
        The moment that the log says, put into the halt about it where there is one.
    away_m : float
        From where the leg began to where the walker was then, straight.
    """

    leg: int
    paces: float
    counted_m: float
    ended_s: float
    away_m: float


@dataclass(frozen=True, slots=True, kw_only=True)
class _Noted:
    """A leg whose log has count and time."""

    leg: int
    paces: float
    count: LogCount
    claim_s: float
    arrived: dt.time | dt.datetime

    @property
    def zoned(self) -> bool:
        """Whether the log says by which clock."""
        return self.arrived.utcoffset() is not None

    @property
    def after_s(self) -> float:
        """How long after the claim the log ends the leg, the day left aside."""
        after_s = seconds_after(self.arrived, self.claim_s)
        return after_s - DAY_S * days_off(after_s, zoned=self.zoned)


def ended_by_log(
    log: WalkersLog | None, card: LegCard, match: Match, clean: CleanTrack, settings: Settings
) -> dict[int, EndedByLog]:
    """Give, by number of leg, where it ended by the log, where that is not where it is taken to."""
    if log is None or not clean.timed or never_set(clean.time_s):
        return {}
    noted = list(_noted(log, card, match, clean, settings))
    found: dict[int, EndedByLog] = {}
    for zoned in (True, False):
        alike = [one for one in noted if one.zoned is zoned]
        ahead_s = _ahead_s(alike, match.halts, clean, settings, zoned=zoned)
        ended = (_ended(one, ahead_s, match.halts, clean, settings) for one in alike)
        found |= {one.leg: one for one in ended if one is not None}
    return found


def told_less_sure(match: Match, ended: Mapping[int, EndedByLog], settings: Settings) -> Match:
    """Give the match with what the log speaks against told as no surer than it allows."""
    legs = (
        _less_sure(leg, ended[leg.leg], settings) if leg.leg in ended else leg for leg in match.legs
    )
    return replace(match, legs=tuple(legs))


def _less_sure(leg: LegMatch, by_log: EndedByLog, settings: Settings) -> LegMatch:
    most = settings.quality.against_log_most
    other = RunnerUp(
        status="walked",
        start_s=leg.start_s,
        claim_s=by_log.ended_s,
        probability=1.0 - most - settings.diagnosis.log_wrong_share,
    )
    return replace(leg, confidence=min(leg.confidence, most), runner_up=other)


def _noted(
    log: WalkersLog, card: LegCard, match: Match, clean: CleanTrack, settings: Settings
) -> Iterator[_Noted]:
    for leg, of_card in zip(match.legs, card.legs, strict=True):
        entry, claim_s = log.entry(of_card.name), _seen_claim_s(leg)
        count = log_count(leg.leg, log, card, match, clean, settings)
        if entry is None or entry.arrived is None or not entry.paces:
            continue
        if count is None or claim_s is None:
            continue
        yield _Noted(
            leg=leg.leg,
            paces=entry.paces,
            count=count,
            claim_s=claim_s,
            arrived=entry.arrived,
        )


def _seen_claim_s(leg: LegMatch) -> float | None:
    """Give the claim of a leg that was seen whole; None of any other.

    What somebody has settled needs no log; and in a silence of the recorder nobody saw where the
    walker was.
    """
    unseen = leg.under_way or leg.start_unseen is not None or leg.claim_unseen is not None
    if leg.status != "walked" or unseen or "claim" in leg.pinned:
        return None
    return leg.claim_s


def _away_m(clean: CleanTrack, start_s: float, time_s: float) -> float:
    """Give how far from where a leg began the walker was at a moment, straight."""
    return metres_long(clean.places_at((start_s, time_s)))


def _ahead_s(
    noted: Sequence[_Noted],
    halts: FloatArray,
    clean: CleanTrack,
    settings: Settings,
    *,
    zoned: bool,
) -> float:
    """Give by how much the log's watch is ahead: what legs whose count leads to the claim say.

    Where none does, a watch that says its zone is right, and any other shows the zone by which
    most legs end at their claim or where their count says; at their claim, where as many do.
    """
    kept = [one.after_s for one in noted if one.count.speaks_for_claim]
    if kept:
        return float(np.median(kept))
    if zoned or not noted:
        return 0.0

    def legs_met(zone_s: float) -> tuple[int, int]:
        at_claim = sum(abs(one.after_s - zone_s) <= settings.quality.watch_off_s for one in noted)
        before = [_ended(one, zone_s, halts, clean, settings) for one in noted]
        return at_claim + sum(one is not None for one in before), at_claim

    return max(sorted(CLOCKS_S, key=abs), key=legs_met)


def _ended(
    noted: _Noted, ahead_s: float, halts: FloatArray, clean: CleanTrack, settings: Settings
) -> EndedByLog | None:
    """Give where the log ends a leg; None where count or time lead to the claim, or elsewhere.

    Who only walked on, however far, was not there so much longer than the way takes.
    """
    off_s = settings.quality.watch_off_s
    said_s = noted.claim_s + noted.after_s - ahead_s
    count = noted.count
    if count.speaks_for_claim or not count.start_s < said_s < noted.claim_s - off_s:
        return None
    stood_s = np.clip(said_s, halts[:, 0], halts[:, 1])
    near = stood_s[(np.abs(stood_s - said_s) <= off_s) & (stood_s < noted.claim_s)]
    ended_s = float(min(near, key=lambda one: abs(one - said_s), default=said_s))
    away_m = _away_m(clean, count.start_s, ended_s)
    if abs(away_m - count.metres) > min(count.most_m, count.claimed_m):
        return None
    took_s = (ended_s - count.start_s) * _away_m(clean, ended_s, noted.claim_s) / max(away_m, 1.0)
    if noted.claim_s - ended_s < settings.quality.looked_about * took_s:
        return None
    return EndedByLog(
        leg=noted.leg,
        paces=noted.paces,
        counted_m=count.metres,
        ended_s=ended_s,
        away_m=away_m,
    )
