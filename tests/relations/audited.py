"""A walk audited on its grid, and the same walk turned, mirrored, shifted or thinned."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from walks import make_walk

from audit.azimuths import NorthAngles
from audit.debriefing.walk_day import track_date
from audit.leg_card import LegCard, work_out_card
from audit.matching.clean_track import clean_track
from audit.matching.leg_match import CleanTrack, Match
from audit.matching.match_walk import match_laid_out
from audit.matching.walk_layout import lay_out
from audit.measurement.measure_walk import WalkMeasures, measure_walk
from audit.settings import Settings

SETTINGS = Settings()


@dataclass(frozen=True)
class Audited:
    """Plan and recording on the grid of the course, and what came of them."""

    clean: CleanTrack
    card: LegCard
    match: Match
    measures: WalkMeasures


def audit_on_grid(clean: CleanTrack, card: LegCard) -> Audited:
    laid_out = lay_out(clean, card, SETTINGS.matching)
    match = match_laid_out(laid_out, card, SETTINGS.matching)
    return Audited(clean, card, match, measure_walk(clean, laid_out, match, card, SETTINGS))


def made(seed: int, difficulty: str) -> tuple[CleanTrack, LegCard]:
    walk = make_walk(seed, difficulty)
    card = work_out_card(walk.plan, track_date=track_date(walk.track))
    return clean_track(walk.track, card.grid, SETTINGS.cleaning), card


def mapped(clean: CleanTrack, card: LegCard, move, turn) -> tuple[CleanTrack, LegCard]:
    """Send every place through ``move`` (n, 2) -> (n, 2) and every azimuth through ``turn``."""

    def point(old):
        east, north = move(np.array([[old.east_m, old.north_m]]))[0]
        return replace(old, east_m=float(east), north_m=float(north))

    def azimuth(old):
        return type(old)(turn(old.degrees))

    legs = tuple(
        replace(
            leg,
            start=point(leg.start),
            end=point(leg.end),
            azimuth=azimuth(leg.azimuth),
            magnetic=azimuth(leg.magnetic),
            true=azimuth(leg.true),
            line=move(leg.line),
        )
        for leg in card.legs
    )
    places = move(np.column_stack([clean.east_m, clean.north_m]))
    moved = replace(clean, east_m=places[:, 0].copy(), north_m=places[:, 1].copy())
    return moved, replace(card, points=tuple(point(p) for p in card.points), legs=legs)


def middle(card: LegCard) -> np.ndarray:
    return np.concatenate([leg.line for leg in card.legs]).mean(axis=0)


def turned(clean: CleanTrack, card: LegCard, degrees: float) -> tuple[CleanTrack, LegCard]:
    """Turn plan and track clockwise about the middle of the course."""
    angle, centre = np.radians(degrees), middle(card)
    matrix = np.array([[np.cos(angle), np.sin(angle)], [-np.sin(angle), np.cos(angle)]])
    return mapped(clean, card, lambda xy: (xy - centre) @ matrix.T + centre, lambda a: a + degrees)


def mirrored(clean: CleanTrack, card: LegCard) -> tuple[CleanTrack, LegCard]:
    """Look at plan and track from behind: east is west, every angle the other way."""
    centre = middle(card)
    flip = np.array([-1.0, 1.0])
    there, flipped = mapped(clean, card, lambda xy: (xy - centre) * flip + centre, lambda a: -a)
    angles = NorthAngles(
        grid_magnetic_angle_deg=-card.angles.grid_magnetic_angle_deg,
        convergence_deg=-card.angles.convergence_deg,
    )
    return there, replace(flipped, angles=angles)


def shifted(clean: CleanTrack, card: LegCard, by_m, by_s: float = 0.0):
    """Move plan and track on the grid, and the clock of the recording."""
    moved, there = mapped(clean, card, lambda xy: xy + np.asarray(by_m), lambda a: a)
    gaps = tuple(
        replace(gap, start_s=gap.start_s + by_s, end_s=gap.end_s + by_s) for gap in moved.gaps
    )
    return replace(moved, time_s=moved.time_s + by_s, gaps=gaps), there


def thinned(clean: CleanTrack, every: int) -> CleanTrack:
    """Keep every so many-th fix and the last one; gaps stay what they are."""
    keep = np.unique(np.append(np.arange(0, len(clean), every), len(clean) - 1))
    columns = ("time_s", "east_m", "north_m", "elevation_m", "hdop", "fix")
    kept = {name: getattr(clean, name)[keep] for name in columns}
    interval = float(np.median(np.diff(kept["time_s"])))
    gaps = tuple(
        replace(gap, before=int(np.searchsorted(keep, gap.before, side="right")) - 1)
        for gap in clean.gaps
    )
    return replace(clean, **kept, gaps=gaps, median_interval_s=interval)
