"""Whether plan, recording and log are of the same day and the same moments."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence

import numpy as np

from audit.debriefing.doubts import pin_of
from audit.leg_card import LegCard
from audit.matching.leg_match import CleanTrack
from audit.measurement.leg_measures import LegAudit
from audit.settings import QualitySettings
from audit.track import utc_text
from audit.walkers_log import WalkersLog
from audit.words import sentence
from audit.words.figures import Moment, Number

_DAY_S = 86_400.0
_ZONES_S = 14 * 3600.0
"""No clock on earth is further from UTC."""


def notes_of_days(
    card: LegCard,
    clean: CleanTrack,
    log: WalkersLog | None,
    legs: Sequence[LegAudit],
    settings: QualitySettings,
) -> tuple[str, ...]:
    """Say where plan, recording and log do not agree on day or moment."""
    other_day = _other_day(card, clean)
    watches = () if log is None else _watches(log, legs, settings)
    return (*([] if other_day is None else [other_day]), *watches)


def _other_day(card: LegCard, clean: CleanTrack) -> str | None:
    """Say so where the recording is of another day than the plan; None where it is not."""
    if not clean.timed or card.date is None or card.date_source != "plan":
        return None
    first, last = (
        dt.datetime.fromtimestamp(moment_s, dt.UTC).date()
        for moment_s in (clean.time_s[0] - _ZONES_S, clean.time_s[-1] + _ZONES_S)
    )
    if first <= card.date <= last:
        return None
    begun = utc_text(float(clean.time_s[0]))[:10]
    return sentence("recording-other-day", plan=card.date.isoformat(), begun=begun)


def _watches(log: WalkersLog, legs: Sequence[LegAudit], settings: QualitySettings) -> Iterator[str]:
    """Say of each leg that the log ends at another moment than is taken here, and how to settle it.

    A watch without a zone may show any: a quarter of an hour is the finest step between zones,
    so that all legs together say which it showed.
    """
    off_s = dict(_after_claim_s(log, legs))
    if not off_s:
        return
    zone_s = 900.0 * round(float(np.median(list(off_s.values()))) / 900.0)
    for leg in legs:
        claim_s = leg.measures.claim.time_s if leg.measures is not None else None
        if leg.card.name not in off_s or claim_s is None:
            continue
        later_s = off_s[leg.card.name] - zone_s
        if abs(later_s) > settings.watch_off_s:
            there_s = round(claim_s + later_s)
            pin = pin_of("claim", leg.card.name, utc_text(there_s)[11:])
            yield sentence(
                "recording-log-time",
                leg=leg.card.name,
                time=Moment(time_s=there_s),
                minutes=Number(value=abs(later_s) / 60.0, decimals=1),
                side="later" if later_s > 0.0 else "earlier",
                settle=sentence("recording-log-settle", pin=pin),
            )


def _after_claim_s(log: WalkersLog, legs: Sequence[LegAudit]) -> Iterator[tuple[str, float]]:
    """Give, by leg, how long after the claim the log says, within half a day either way."""
    for leg in legs:
        entry = log.entry(leg.card.name)
        claim_s = leg.measures.claim.time_s if leg.measures is not None else None
        if entry is None or entry.arrived is None or claim_s is None:
            continue
        noted = entry.arrived
        if isinstance(noted, dt.datetime) and noted.tzinfo is not None:
            yield leg.card.name, noted.timestamp() - claim_s
            continue
        of_day_s = noted.hour * 3600.0 + noted.minute * 60.0 + noted.second
        off_s = of_day_s - claim_s % _DAY_S
        yield leg.card.name, (off_s + _DAY_S / 2.0) % _DAY_S - _DAY_S / 2.0
