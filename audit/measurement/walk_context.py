"""What the measuring of every leg of a walk shares."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from audit.azimuths import MagneticAzimuth
from audit.leg_card import LegCard
from audit.matching.leg_match import CleanTrack, Match
from audit.matching.walk_layout import SampledWalk
from audit.measurement.claims import SightBend
from audit.measurement.ground_walked import ElevationQuality
from audit.measurement.paces_of_walk import Cadence
from audit.measurement.places import Fixed
from audit.measurement.places_and_headings import Place
from audit.measurement.receiver_noise import ReceiverNoise
from audit.settings import Settings


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WalkContext:
    """A walk, its card and its match, and what was found of the recording as a whole.

    Attributes
    ----------
    match : Match
        With its claims and the ends of searches where measuring puts them.
    bends : dict
        By index of leg, the turn to the point in sight that may have ended it.
    cadence : Cadence or None
    counted_paces, azimuths_set : dict
        By name of leg, what the walker's log says.
    settings : Settings
        Fitted to the noise of the recording.
    """

    clean: CleanTrack
    sampled: SampledWalk
    match: Match
    card: LegCard
    noise: ReceiverNoise
    bends: Mapping[int, SightBend]
    elevation: ElevationQuality
    cadence: Cadence | None
    counted_paces: Mapping[str, float]
    azimuths_set: Mapping[str, MagneticAzimuth]
    settings: Settings


def placed(context: WalkContext, fixed: Fixed) -> Place:
    """Give a place of the walk with its longitude and latitude, and the fix nearest in time."""
    clean = context.clean
    longitude, latitude = context.card.grid.to_geographic(fixed.east_m, fixed.north_m)
    return Place(
        fix=clean.index_at(fixed.time_s),
        time_s=fixed.time_s if clean.timed else None,
        east_m=fixed.east_m,
        north_m=fixed.north_m,
        longitude_deg=float(longitude),
        latitude_deg=float(latitude),
    )
