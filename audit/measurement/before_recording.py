"""Legs that the recording cannot show: it begins where a later one does, or on it."""

from __future__ import annotations

import numpy as np

from audit.leg_card import LegCard
from audit.matching.leg_match import CleanTrack, Match
from audit.settings import DiagnosisSettings


def legs_before_recording(
    clean: CleanTrack, match: Match, card: LegCard, settings: DiagnosisSettings
) -> frozenset[int]:
    """Give the legs that lie before the first fix, by number.

    They are those before the first leg walked, where the walker was nowhere else before he
    set out on it. Of a leg whose first point he was at, the recording shows that it was left out.
    """
    begun = next(((leg.leg, leg.start_s) for leg in match.legs if leg.start_s is not None), None)
    if begun is None or begun[1] is None:
        return frozenset()
    before = slice(0, clean.index_at(begun[1]) + 1)
    east_m, north_m = clean.east_m[before], clean.north_m[before]
    near_m = max(card.arrival_radius_m, settings.passed_m)
    if np.hypot(east_m - east_m[-1], north_m - north_m[-1]).max() > near_m:
        return frozenset()
    away_m = (
        np.hypot(east_m - leg.start.east_m, north_m - leg.start.north_m).min()
        for leg in card.legs[: begun[0]]
    )
    return frozenset(leg for leg, away in enumerate(away_m) if away > near_m)
