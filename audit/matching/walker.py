"""What is supposed of a walker on all legs alike."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Walker:
    """What is supposed of this walker on all legs alike.

    Attributes
    ----------
    bias_deg : float
        Turn of the walked directions off the planned ones.
    pace_scale : float
        Distance walked over distance planned.
    heading_sd_deg, distance_sd : float
        Scatter from leg to leg, in degrees and in the logarithm of distance.
    finds : float
        Share of legs that end at their point because it was seen, whatever was reckoned.
    distance_factor : float
        About which his pace scale lies: 1, or half or twice the distance on every leg.
    """

    bias_deg: float
    pace_scale: float
    heading_sd_deg: float
    distance_sd: float
    finds: float
    distance_factor: float = 1.0
