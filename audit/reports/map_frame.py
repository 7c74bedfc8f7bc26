"""The frame of the map: what ground it shows, at what scale, with how many grid lines."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.debriefing.finished_debrief import Debrief
from audit.units import FloatArray

_NARROWEST_PX, _WIDEST_PX = 460, 600
_LEGS_IN_NARROWEST, _PX_A_LEG = 5, 30
"""A course of more legs gets a wider map, with its words smaller beside the ground."""

MARGIN_STRIP_PX = 44
"""Below the map: scale bar and norths."""

_EDGE_SHARE = 0.1
_SMALLEST_GROUND_M = 120.0
_FLATTEST, _TALLEST = 0.5, 1.05
MOST_LINES, MOST_LABELS = 31, 8
"""Grid lines, and numbers on them, to a side."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MapFrame:
    """Ground shown, in grid metres; one scale east and north.

    Attributes
    ----------
    width_px : int
        Of the map alone, without the numbers beside it.
    """

    width_px: float

    west_m: float
    east_m: float
    south_m: float
    north_m: float
    metres_per_pixel: float

    @property
    def height_px(self) -> float:
        """Height of the map without the strip below it."""
        return (self.north_m - self.south_m) / self.metres_per_pixel

    @property
    def foot_m(self) -> float:
        """Northing of the lower edge of the strip below the map."""
        return self.south_m - MARGIN_STRIP_PX * self.metres_per_pixel


def map_frame(debrief: Debrief) -> MapFrame:
    """Frame the course and the legs walked on it, but not the way there and back."""
    shown = shown_ground(debrief)
    radius_m = debrief.card.arrival_radius_m
    low, high = shown.min(axis=0) - radius_m, shown.max(axis=0) + radius_m
    middle = (low + high) / 2
    size = np.maximum((high - low) * (1 + 2 * _EDGE_SHARE), _SMALLEST_GROUND_M)
    width = max(size[0], size[1] / _TALLEST)
    height = max(size[1], width * _FLATTEST)
    more_legs = len(debrief.legs) - _LEGS_IN_NARROWEST
    width_px = min(_WIDEST_PX, max(_NARROWEST_PX, _NARROWEST_PX + _PX_A_LEG * more_legs))
    return MapFrame(
        width_px=width_px,
        west_m=float(middle[0] - width / 2),
        east_m=float(middle[0] + width / 2),
        south_m=float(middle[1] - height / 2),
        north_m=float(middle[1] + height / 2),
        metres_per_pixel=float(width / width_px),
    )


def shown_ground(debrief: Debrief) -> FloatArray:
    """Give every place of the course and of the legs walked on it; shape (n, 2)."""
    parts = [np.array([[point.east_m, point.north_m] for point in debrief.points])]
    parts += [leg.audit.card.line for leg in debrief.legs]
    where = debrief.clean.places()
    parts += [where[s.first : s.last + 1] for s in debrief.spans if s.leg is not None]
    return np.vstack(parts)
