"""Legs that the recording cannot show: it begins where a later one does, or on it."""

from __future__ import annotations

import numpy as np

from audit.leg_card import LegCard
from audit.matching.leg_match import CleanTrack, Match
from audit.measurement.cross_track import measure_cross_track
from audit.measurement.lines_of_leg import line_length_m, planned_line
from audit.settings import DiagnosisSettings
from audit.units import FloatArray


def legs_before_recording(
    clean: CleanTrack, match: Match, card: LegCard, settings: DiagnosisSettings
) -> frozenset[int]:
    """Give the legs that lie before the first fix, by number.

    They are those before the first leg walked, where the walker was nowhere else before he
    set out on it, or only where the legs before it had led him. Of a leg whose first point he
    was at, the recording shows that it was left out.
    """
    begun = next(((leg.leg, leg.start_s) for leg in match.legs if leg.start_s is not None), None)
    if begun is None or begun[1] is None:
        return frozenset()
    before = slice(0, clean.index_at(begun[1]) + 1)
    east_m, north_m = clean.east_m[before], clean.north_m[before]
    near_m = max(card.arrival_radius_m, settings.passed_m)
    if np.hypot(east_m - east_m[-1], north_m - north_m[-1]).max() > near_m:
        return _legs_behind(np.column_stack([east_m, north_m]), card, begun[0], near_m, settings)
    away_m = (
        np.hypot(east_m - leg.start.east_m, north_m - leg.start.north_m).min()
        for leg in card.legs[: begun[0]]
    )
    return frozenset(leg for leg, away in enumerate(away_m) if away > near_m)


def _legs_behind(
    place: FloatArray, card: LegCard, first: int, near_m: float, settings: DiagnosisSettings
) -> frozenset[int]:
    """Give the legs that end before where a recording begins, as its way to the first leg shows.

    On the way along the leg before, or about its point as in a search, the walker had more
    than one leg behind him. Who comes from elsewhere, was at one of their points, or would
    have left out one point only, may have left it out in truth.

    Parameters
    ----------
    place : float array, shape (n, 2)
        Where the walker was up to his leaving for the first leg walked.
    """
    starts = np.array([[leg.start.east_m, leg.start.north_m] for leg in card.legs[:first]])
    if first < 2 or min(np.hypot(*(place - start).T).min() for start in starts) <= near_m:
        return frozenset()
    under_way = card.legs[first - 1]
    length_m = line_length_m(under_way)
    point = np.array([under_way.end.east_m, under_way.end.north_m])
    about = np.hypot(*(place - point).T) <= min(settings.late_about_m, length_m / 2.0)
    if about.all():
        return frozenset(range(first))
    held = measure_cross_track(planned_line(under_way), place)
    side_m = np.maximum(settings.late_side_m, settings.late_side_share * held.along_m)
    along = (held.along_m > 0.0) & (held.along_m < length_m) & (np.abs(held.offset_m) <= side_m)
    return frozenset(range(first - 1)) if (about | along).all() else frozenset()
