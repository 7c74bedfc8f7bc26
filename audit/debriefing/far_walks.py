"""Walks of some other place, which no course can be matched to."""

from __future__ import annotations

import numpy as np

from audit.errors import refuse_file
from audit.geodesy.geodesics import geodesic_between
from audit.leg_card import CardPoint, LegCard
from audit.matching.leg_match import CleanTrack
from audit.settings import MatchingSettings
from audit.track import Track


def refuse_far_walk(
    track: Track, clean: CleanTrack, card: LegCard, settings: MatchingSettings
) -> None:
    """Refuse a walk that never comes near the course, and say how far off it stays.

    Raises
    ------
    InputRefusedError
        With the distance from the nearest fix to the nearest point.
    """
    away = [(*_nearest_fix(clean, point), point) for point in card.points]
    nearest_m, fix, point = min(away, key=lambda of: of[0])
    if nearest_m <= settings.far_m:
        return
    # Far from its course a grid shows no true lengths.
    way = geodesic_between(
        float(track.longitude_deg[clean.fix[fix]]),
        float(track.latitude_deg[clean.fix[fix]]),
        point.longitude_deg,
        point.latitude_deg,
    )
    distance_km = way.distance_m / 1000.0
    told = f"{distance_km:.1f}" if distance_km < 100.0 else f"{distance_km:,.0f}"
    raise refuse_file(
        track.source,
        f"this walk comes no nearer than {told} km to the course (nearest point: {point.name})",
        "Give the recording of a walk of this course, or the plan of that walk; "
        "if both are right, check where the points are: latitude and longitude, or zone and "
        "100 km letters.",
    )


def _nearest_fix(clean: CleanTrack, point: CardPoint) -> tuple[float, int]:
    """Give how near the walk comes to a point, and at which fix."""
    away_m = np.hypot(clean.east_m - point.east_m, clean.north_m - point.north_m)
    fix = int(away_m.argmin())
    return float(away_m[fix]), fix
