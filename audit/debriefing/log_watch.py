"""The moments of a walker's log by the clock of the recording: what his watch showed.

The match of the recording alone sets the watch: by it most legs ended when the log says, once the
zone is known, or by how much the watch was fast.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from audit.debriefing.log_moments import CLOCKS_S, seconds_after
from audit.leg_card import LegCard
from audit.matching.leg_match import CleanTrack, LegMatch, Match
from audit.matching.noted_moments import NotedMoment
from audit.moments import day_aside_s
from audit.settings import Settings
from audit.units import FloatArray
from audit.walkers_log import WalkersLog

_HOUR_DEG = 15.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Entry:
    """When the log ends a leg, by its own clock."""

    leg: int
    said_s: float
    zoned: bool


def moments_of_log(
    log: WalkersLog, card: LegCard, match: Match, walk: CleanTrack, settings: Settings
) -> tuple[NotedMoment, ...]:
    """Give the moments of a log within the recording; none where no clock explains enough."""
    entries = list(_entries(log, card, walk))
    moments: list[NotedMoment] = []
    for zoned in (True, False):
        alike = [one for one in entries if one.zoned is zoned]
        clocks = (0.0,) if zoned else _clocks_near(card, settings.quality.zone_off_most_h)
        ahead_s = _ahead_s(alike, clocks, match, walk, settings)
        moments += [] if ahead_s is None else _by_clock(alike, ahead_s, walk)
    return tuple(one for one in moments if walk.holds(one.time_s))


def agrees(noted: NotedMoment, match: Match, walk: CleanTrack, within_s: float) -> bool:
    """Tell whether a match has the walker at the point of a noted moment, or as good as there."""
    leg = match.legs[noted.leg]
    if leg.claim_s is None or leg.status != "walked":
        return False
    if noted.counted:
        return abs(leg.claim_s - noted.time_s) <= within_s
    until_s = min(_starts_after(leg.claim_s, match.legs), default=float(walk.time_s[-1]))
    return leg.claim_s - within_s <= noted.time_s <= until_s + within_s


def agreeing(
    noted: Sequence[NotedMoment], match: Match, walk: CleanTrack, settings: Settings
) -> int:
    """Count the moments that a match agrees with."""
    return sum(agrees(one, match, walk, settings.matching.noted_within_s) for one in noted)


def _starts_after(claim_s: float, legs: Sequence[LegMatch]) -> Iterator[float]:
    return (of.start_s for of in legs if of.start_s is not None and of.start_s >= claim_s)


def _entries(log: WalkersLog, card: LegCard, walk: CleanTrack) -> Iterator[_Entry]:
    middle_s = _middle_s(walk)
    for leg, of_card in enumerate(card.legs):
        entry = log.entry(of_card.name)
        if entry is not None and entry.arrived is not None:
            said_s = middle_s + seconds_after(entry.arrived, middle_s)
            yield _Entry(leg=leg, said_s=said_s, zoned=entry.arrived.utcoffset() is not None)


def _middle_s(walk: CleanTrack) -> float:
    return float(walk.time_s[0] + walk.time_s[-1]) / 2.0


def _by_clock(entries: Sequence[_Entry], ahead_s: float, walk: CleanTrack) -> list[NotedMoment]:
    """Give the moments by a clock, each on the day that is nearest to the walk."""
    middle_s = _middle_s(walk)
    moments = []
    for one in entries:
        time_s = one.said_s - ahead_s
        if not walk.holds(time_s):
            time_s = middle_s + day_aside_s(time_s - middle_s)
        moments.append(NotedMoment(leg=one.leg, time_s=time_s))
    return moments


def _clocks_near(card: LegCard, most_h: float) -> tuple[float, ...]:
    """Give what a watch may be ahead of UTC at the course, the nearest first; UTC is always one."""
    by_sun_h = card.legs[0].start.longitude_deg / _HOUR_DEG
    near = [one for one in CLOCKS_S if abs(one / 3600.0 - by_sun_h) <= most_h]
    return tuple(sorted({0.0, *near}, key=abs))


def _ahead_s(
    entries: Sequence[_Entry],
    clocks: Sequence[float],
    match: Match,
    walk: CleanTrack,
    settings: Settings,
) -> float | None:
    """Give by how much the log's watch is ahead, by the legs that the match agrees on with it.

    A clock that is right, or of a zone, needs one leg, and half of the moments; a watch that is
    fast or slow, two that say the same of their claims, and more than half. None otherwise.
    """
    if not entries:
        return None
    claims = {leg.leg: leg.claim_s for leg in match.legs if leg.claim_s is not None}
    after_s = np.array([one.said_s - claims[one.leg] for one in entries if one.leg in claims])
    kept = {ahead_s: _explained(entries, ahead_s, match, walk, settings) for ahead_s in clocks}
    within_s = settings.matching.noted_within_s
    for own in after_s:
        fast_s = min(abs(day_aside_s(float(own) - one)) for one in clocks)
        alike = int((_apart_s(after_s, float(own)) <= within_s).sum())
        if alike > 1 and 2 * alike > len(entries) and fast_s <= settings.quality.watch_fast_most_s:
            kept.setdefault(float(own), alike)
    # Of clocks that as many legs agree with, the one that comes nearest to the claims.
    off_s = {ahead_s: float(_apart_s(after_s, ahead_s).sum()) for ahead_s in kept}
    ahead_s = max(kept, key=lambda one: (kept[one], -off_s[one]))
    return ahead_s if kept[ahead_s] and 2 * kept[ahead_s] >= len(entries) else None


def _apart_s(after_s: FloatArray, ahead_s: float) -> FloatArray:
    return np.array([abs(day_aside_s(float(one) - ahead_s)) for one in after_s])


def _explained(
    entries: Sequence[_Entry], ahead_s: float, match: Match, walk: CleanTrack, settings: Settings
) -> int:
    """Count the moments that a clock puts where the match has them, or where it may have them."""
    within_s = settings.matching.noted_within_s
    return sum(
        agrees(one, match, walk, within_s) or _is_other(one, match, within_s)
        for one in _by_clock(entries, ahead_s, walk)
    )


def _is_other(noted: NotedMoment, match: Match, within_s: float) -> bool:
    other = match.legs[noted.leg].runner_up
    return (
        other is not None
        and other.claim_s is not None
        and abs(other.claim_s - noted.time_s) <= within_s
    )
