"""What the card to carry, and a pace count, go by."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class CarriedCardSettings:
    """The card that the walker takes along."""

    click_deg: float = 3.0
    """A click of the bezel: 120 to the circle (FM 3-25.26, 9-2b)."""
    station_m: float = 25.0
    """Heights are taken this far apart along a leg; chosen: a cell of the rasters in use, and
    short enough for the slopes of the walking rules."""
    ripple_m: float = 2.0
    """Less rise or fall than this between two turns of the ground is none; chosen: above what
    rasters ripple, below a contour."""
