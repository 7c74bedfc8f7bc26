"""A place on the ground, as its file gave it and where that lies."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Position:
    """A place, in degrees on WGS 84, with the precision of its reference.

    Attributes
    ----------
    longitude_deg, latitude_deg : float
        East and north positive.
    half_square_m : float
        Half the side of the square that the reference names (MGRS to 10 m: 5);
        0 where the reference is a point.
    given : str
        The reference as it was written.
    reading : str
        How it was read, when that was not the only thinkable way; otherwise "".
    """

    longitude_deg: float
    latitude_deg: float
    half_square_m: float = 0.0
    given: str = ""
    reading: str = ""
