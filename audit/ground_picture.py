"""A picture of the ground that lies under the map: a scanned map, a photograph, shaded relief."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True, slots=True, kw_only=True)
class GroundPicture:
    """A picture true to the grid of the course, grid north up.

    Attributes
    ----------
    jpeg : bytes
        Ready to be shown; pale, so that lines on it can be read.
    west_m, south_m, east_m, north_m : float
        Its edges on the grid.
    what : "picture" or "elevation"
        Elevation is shaded with light from the north-west.
    source : str
        Name of the file, without its folder.
    """

    jpeg: bytes
    west_m: float
    south_m: float
    east_m: float
    north_m: float
    what: Literal["picture", "elevation"]
    source: str
