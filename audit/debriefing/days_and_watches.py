"""Whether plan, recording and log are of the same day and the same moments."""

from __future__ import annotations

import datetime as dt
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from audit.debriefing.doubts import pin_of
from audit.debriefing.log_moments import ZONES_S, days_off, seconds_after, zone_near_s
from audit.debriefing.noted_by_log import heard_of_log
from audit.leg_card import LegCard
from audit.matching.clean_times import never_set
from audit.matching.leg_match import CleanTrack
from audit.matching.outings import MatchedOuting
from audit.matching.walk_of_day import OfDay, of_day, planned_day
from audit.measurement.leg_measures import LegAudit
from audit.moments import DAY_S, calendar_moment, day_aside_s, utc_text
from audit.settings import QualitySettings
from audit.walkers_log import WalkersLog
from audit.words import sentence
from audit.words.figures import Moment, Number


@dataclass(frozen=True, slots=True, kw_only=True)
class _NotedEnd:
    """The claim of a leg, and how long after it the log says, the day left aside.

    ``stayed_s`` is how long the walker stayed there, which is when he may have noted it.
    ``zoned``: the log says by which clock. ``noted_on``: the day that the log says, where it is
    so many ``days_off`` after the recording's.
    """

    leg: str
    claim_s: float
    after_claim_s: float
    stayed_s: float
    zoned: bool
    noted_on: dt.date | None = None
    days_off: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Watch:
    """Ends that were noted by one clock, the zone it shows, and by how much it was fast."""

    ends: tuple[_NotedEnd, ...]
    zone_s: float
    fast_s: float

    def otherwise(self, settings: QualitySettings) -> Iterator[tuple[_NotedEnd, float]]:
        """Give the ends that it puts elsewhere than the leg's claim, and by how much later."""
        for end in self.ends:
            later_s = day_aside_s(end.after_claim_s - self.zone_s - self.fast_s)
            if not -settings.watch_off_s <= later_s <= end.stayed_s + settings.watch_off_s:
                yield end, later_s


def notes_of_days(
    card: LegCard,
    clean: CleanTrack,
    log: WalkersLog | None,
    legs: Sequence[LegAudit],
    settings: QualitySettings,
    told: Collection[str] = (),
    outing: MatchedOuting | None = None,
) -> tuple[str, ...]:
    """Say where plan, recording and log do not agree on day or moment.

    ``told`` names the legs of which the moment is told already, with what else the log says.
    A recording whose clock was never set agrees with nothing, which its cleaning says. Of one
    of several walks ``outing`` is the one that is taken.
    """
    if clean.timed and never_set(clean.time_s):
        return ()
    if outing is not None:  # what somebody has settled is not asked again
        pinned = (leg.leg for leg in outing.match.legs if "claim" in leg.pinned)
        told = {*told, *(card.legs[leg].name for leg in pinned)}
    other_day = _other_day(card, clean) or _taken_of_other_day(card, clean, outing)
    watches = () if log is None else _watches(log, legs, settings, told)
    days = [] if other_day is None else [other_day]
    return (*days, *watches, *heard_of_log(card, outing, clean, settings))


def _other_day(card: LegCard, clean: CleanTrack) -> str | None:
    """Say so where the recording is of another day than the plan; None where it is not."""
    day = planned_day(card)
    if not clean.timed or day is None:
        return None
    first, last = (
        calendar_moment(moment_s).date()
        for moment_s in (clean.time_s[0] - ZONES_S, clean.time_s[-1] + ZONES_S)
    )
    if first <= day <= last:
        return None
    begun = utc_text(float(clean.time_s[0]))[:10]
    return sentence("recording-other-day", plan=day.isoformat(), begun=begun)


def _taken_of_other_day(
    card: LegCard, clean: CleanTrack, outing: MatchedOuting | None
) -> str | None:
    """Say so where of a recording of several walks one of another day than the plan is taken."""
    day = planned_day(card)
    if outing is None or not outing.of_several or not clean.timed or day is None:
        return None
    if of_day(outing.begun_s, card) is not OfDay.OF_ANOTHER:
        return None
    walked = utc_text(outing.begun_s)[:10]
    return sentence("recording-walk-of-other-day", plan=day.isoformat(), walked=walked)


def _watches(
    log: WalkersLog, legs: Sequence[LegAudit], settings: QualitySettings, told: Collection[str]
) -> Iterator[str]:
    """Say of each leg that the log ends at another moment than is taken here, and how to settle it.

    A watch without a zone may show any; all legs together say which it showed, and whether it was
    fast or slow: that is told once, and settles no leg. Of the legs that are ``told`` the moment
    is told already, and the day is not.
    """
    yield from (
        _day_off(end.leg, end.noted_on, end.days_off)
        for end in _ends(log, legs)
        if end.noted_on is not None and end.days_off
    )
    for watch in _by_watch(log, legs, settings):
        if watch.fast_s:
            yield _watch_off(watch.fast_s, len(watch.ends), watch.zone_s)
        for end, later_s in watch.otherwise(settings):
            if end.leg not in told:
                yield _otherwise(end, later_s)


def _fast_s(later_s: Sequence[float], settings: QualitySettings) -> float:
    """Give by how much a watch was fast, where most legs of several say the same; else 0.

    One leg may have ended elsewhere than it is taken to; not most of them by as much.
    """
    fast_s = float(np.median(later_s)) if len(later_s) > 1 else 0.0
    near = [after_s for after_s in later_s if abs(after_s - fast_s) <= settings.watches_alike_s]
    most = 3 * len(near) >= 2 * len(later_s)
    return fast_s if most and abs(fast_s) > settings.watch_off_s else 0.0


def _watch_off(fast_s: float, count: int, zone_s: float) -> str:
    return sentence(
        "recording-log-watch",
        count=count,
        minutes=Number(value=abs(fast_s) / 60.0, decimals=1),
        side="later" if fast_s > 0.0 else "earlier",
        clock=_clock(zone_s) if zone_s else "utc",
    )


def _clock(zone_s: float) -> str:
    """Write a clock: "UTC+1:00"."""
    minutes = round(abs(zone_s) / 60.0)
    return f"UTC{'+' if zone_s > 0.0 else '-'}{minutes // 60}:{minutes % 60:02d}"


def _otherwise(end: _NotedEnd, later_s: float) -> str:
    there_s = round(end.claim_s + later_s)
    pin = pin_of("claim", end.leg, utc_text(there_s)[11:])
    return sentence(
        "recording-log-time",
        leg=end.leg,
        time=Moment(time_s=there_s),
        minutes=Number(value=abs(later_s) / 60.0, decimals=1),
        side="later" if later_s > 0.0 else "earlier",
        settle=sentence("recording-log-settle", pin=pin),
    )


def ended_at_another_time(
    clean: CleanTrack,
    log: WalkersLog | None,
    legs: Sequence[LegAudit],
    settings: QualitySettings,
) -> frozenset[str]:
    """Name the legs that the log ends at another moment than they are taken to."""
    if log is None or not clean.timed or never_set(clean.time_s):
        return frozenset()
    watches = _by_watch(log, legs, settings)
    return frozenset(end.leg for watch in watches for end, _ in watch.otherwise(settings))


def _by_watch(
    log: WalkersLog, legs: Sequence[LegAudit], settings: QualitySettings
) -> Iterator[_Watch]:
    """Give the noted ends by whether they say their clock, with what their watch shows."""
    ends = list(_ends(log, legs))
    for zoned in (True, False):
        alike = tuple(end for end in ends if end.zoned is zoned)
        after_s = [end.after_claim_s for end in alike]
        zone_s = zone_near_s(float(np.median(after_s))) if alike and not zoned else 0.0
        fast_s = _fast_s([day_aside_s(one - zone_s) for one in after_s], settings)
        yield _Watch(ends=alike, zone_s=zone_s, fast_s=fast_s)


def _day_off(leg: str, noted_on: dt.date, days_off: int) -> str:
    walked_on = noted_on - dt.timedelta(days=days_off)
    return sentence(
        "recording-log-day", leg=leg, noted=noted_on.isoformat(), walked=walked_on.isoformat()
    )


def _ends(log: WalkersLog, legs: Sequence[LegAudit]) -> Iterator[_NotedEnd]:
    """Give the ends of legs that the log has a moment for."""
    begun = (leg.measures.start.time_s for leg in legs if leg.measures is not None)
    starts_s = [start_s for start_s in begun if start_s is not None]
    for leg in legs:
        entry = log.entry(leg.card.name)
        claim_s = leg.measures.claim.time_s if leg.measures is not None else None
        if entry is None or entry.arrived is None or claim_s is None:
            continue
        zoned = entry.arrived.utcoffset() is not None
        after_s = seconds_after(entry.arrived, claim_s)
        days = days_off(after_s, zoned=zoned)
        yield _NotedEnd(
            leg=leg.card.name,
            claim_s=claim_s,
            after_claim_s=after_s - days * DAY_S,
            stayed_s=min((one for one in starts_s if one >= claim_s), default=claim_s) - claim_s,
            zoned=zoned,
            noted_on=entry.arrived.date() if isinstance(entry.arrived, dt.datetime) else None,
            days_off=days,
        )
