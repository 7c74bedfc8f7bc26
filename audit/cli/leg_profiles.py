"""The heights along every leg of a card, out of an elevation raster."""

from __future__ import annotations

from pathlib import Path

import numpy as np

from audit.leg_card.finished_card import LegCard
from audit.leg_card.profiles import Profile, profile, stations
from audit.readers.ground_heights import heights_at
from audit.settings import CarriedCardSettings


def leg_profiles(
    card: LegCard, ground: Path, settings: CarriedCardSettings | None = None
) -> dict[str, Profile | None]:
    """Give the profile of each leg by its name; None where heights are missing.

    Raises
    ------
    InputRefusedError
        Where the raster cannot be used for this course.
    """
    settings = settings or CarriedCardSettings()
    places = [stations(leg.line, settings.station_m) for leg in card.legs]
    heights = heights_at(ground, card.grid.code, np.vstack([place for _, place in places]))
    ends = np.cumsum([len(along) for along, _ in places])[:-1]
    return {
        leg.name: profile(along, part, settings.ripple_m)
        for leg, (along, _), part in zip(card.legs, places, np.split(heights, ends), strict=True)
    }
