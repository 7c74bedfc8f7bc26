"""Counts in a walker's log that nobody paces: left out, and told."""

from __future__ import annotations

from dataclasses import replace

from audit.leg_card import LegCard
from audit.settings import ReadingSettings
from audit.walkers_log import WalkersLog
from audit.words import sentence
from audit.words.figures import Paces


def without_slips_of_the_pen(
    log: WalkersLog, card: LegCard, settings: ReadingSettings
) -> WalkersLog:
    """Leave out counts that come to so many paces, or so few, as no plan may state either.

    A walker may stop at half the way or walk twice as far: so far the limits are widened.
    """
    distance_m = {leg.name: leg.distance_m for leg in card.legs}
    entries, notes = [], []
    for entry in log.entries:
        planned_m = distance_m.get(entry.leg)
        if entry.paces and planned_m:
            rate = 100.0 * entry.paces / planned_m
            low, high = 0.5 * settings.paces_per_100m_low, 2.0 * settings.paces_per_100m_high
            if not low <= rate <= high:
                notes.append(
                    sentence(
                        "recording-log-count",
                        leg=entry.leg,
                        paces=Paces(counted=entry.paces),
                        rate=Paces(counted=rate),
                    )
                )
                entry = replace(entry, paces=None)  # noqa: PLW2901 (the entry that is kept)
        entries.append(entry)
    return replace(log, entries=tuple(entries), notes=(*log.notes, *notes))
