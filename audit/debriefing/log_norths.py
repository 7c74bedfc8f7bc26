"""Azimuths that a walker noted from another north than the needle's."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from audit.azimuths import NorthAngles
from audit.diagnosis.on_paper import OnPaper
from audit.leg_card import LegCard
from audit.leg_card.told_numbers import told_legs
from audit.measurement.leg_measures import LegAudit
from audit.settings import QualitySettings
from audit.units import turn_degrees
from audit.walkers_log import LogEntry, WalkersLog
from audit.words import sentence
from audit.words.figures import Turn


def with_magnetic_azimuths(log: WalkersLog, angles: NorthAngles) -> WalkersLog:
    """Give the log with its grid and true azimuths as what was set on the needle, noted."""
    norths = {
        "grid": any(entry.grid_azimuth for entry in log.entries),
        "true": any(entry.true_azimuth for entry in log.entries),
    }
    notes = [sentence("recording-log-north", north=north) for north, of in norths.items() if of]
    if not notes:
        return log
    entries = tuple(_magnetic(entry, angles) for entry in log.entries)
    return replace(log, entries=entries, notes=(*log.notes, *notes))


def _magnetic(entry: LogEntry, angles: NorthAngles) -> LogEntry:
    grid = entry.grid_azimuth
    if entry.true_azimuth is not None:
        grid = angles.grid_from_true(entry.true_azimuth)
    if grid is None:
        return entry
    return replace(
        entry, magnetic_azimuth=angles.magnetic(grid), grid_azimuth=None, true_azimuth=None
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Noted:
    """A leg with an azimuth in the log: how far that, and the walk, are right of the card's."""

    leg: str
    off_deg: float
    walked_deg: float


def without_another_north(
    log: WalkersLog,
    card: LegCard,
    papers: Mapping[str, OnPaper],
    legs: Sequence[LegAudit],
    settings: QualitySettings,
) -> WalkersLog:
    """Give the log without its azimuths where all are off the card's alike, and the walk is not.

    An adjusted compass shows true north, and one copies the map's azimuth: nobody sets all legs
    wrong by one angle and wanders back by it on every one.
    """
    noted = [*_noted(log, papers, legs)]
    if len(noted) < 2:
        return log
    off_deg = sum(one.off_deg for one in noted) / len(noted)
    alike = all(abs(one.off_deg - off_deg) <= settings.norths_alike_deg for one in noted)
    by_card = sum(one.walked_deg**2 for one in noted)
    by_log = sum((one.walked_deg - off_deg) ** 2 for one in noted)
    off = abs(off_deg) >= settings.another_north_deg
    if not (alike and off and settings.by_card_odds * by_card < by_log):
        return log
    note = sentence(
        "recording-log-other-north",
        legs=told_legs([one.leg for one in noted]),
        size=Turn(degrees=off_deg),
        side="right" if off_deg > 0.0 else "left",
        north=_north(off_deg, card.angles, settings),
    )
    entries = tuple(replace(entry, magnetic_azimuth=None) for entry in log.entries)
    return replace(log, entries=entries, notes=(*log.notes, note))


def _noted(
    log: WalkersLog, papers: Mapping[str, OnPaper], legs: Sequence[LegAudit]
) -> Sequence[_Noted]:
    found = []
    for leg in legs:
        entry = log.entry(leg.card.name)
        if entry is None or entry.magnetic_azimuth is None:
            continue
        if leg.measures is None or len(leg.card.line) > 2:
            continue
        paper = papers.get(leg.card.name)
        on_card_deg = 0.0 if paper is None else paper.turn_deg or 0.0
        set_deg = leg.card.magnetic.turn_to(entry.magnetic_azimuth)
        found.append(
            _Noted(
                leg=leg.card.name,
                off_deg=turn_degrees(on_card_deg, set_deg),
                walked_deg=turn_degrees(on_card_deg, leg.measures.azimuth_error_deg),
            )
        )
    return found


def _north(off_deg: float, angles: NorthAngles, settings: QualitySettings) -> str:
    """Name the north from which the azimuths fit; "other" where none does."""
    g = angles.grid_magnetic_angle_deg
    away_deg = {"true": g + angles.convergence_deg - off_deg, "grid": g - off_deg}
    north = min(away_deg, key=lambda name: abs(away_deg[name]))
    return north if abs(away_deg[north]) <= settings.norths_alike_deg else "other"
