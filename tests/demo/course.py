"""The invented course of the demo, on real ground."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
from pyproj import Transformer

from audit.units import FloatArray, direction_degrees, wrap_degrees

GRID = "EPSG:32616"
SQUARE = "16S GF"
SQUARE_CORNER_M = np.array([700_000.0, 4_000_000.0])
GRID_MAGNETIC_ANGLE_DEG = -7.5
"""To the nearest half degree, as maps print it; WMM-2025 less convergence is -7.7 here."""
PACES_PER_100M = 65

# Easting and northing in the square, in tens of metres: what the plan says.
POINTS = {
    "Gate": ("4832", "5828"),
    "Beech Knoll": ("4865", "5865"),
    "Stone Ford": ("4908", "5915"),
    "Spring Head": ("4925", "5990"),
    "Fern Rise": ("4982", "5988"),
    "Flat Rock": ("4970", "5915"),
    "Two Pines": ("4905", "5860"),
}
ORDER = ("Gate", "Beech Knoll", "Stone Ford", "Spring Head", "Fern Rise", "Flat Rock",
         "Two Pines", "Gate")  # fmt: skip
NOTES = (
    "",
    "",
    "step round the marsh in the valley, counting out and back",
    "",
    "",
    "open woods, nothing to steer by",
    "",
)
CAR_PARK = np.array([747_980.0, 4_058_120.0])


def place_m(name: str) -> FloatArray:
    """Give a point's place on the grid: the centre of the square that its reference names."""
    return SQUARE_CORNER_M + 10.0 * np.array([float(half) for half in POINTS[name]]) + 5.0


def card() -> list[dict[str, float]]:
    """Give what the card says of each leg: azimuths to half a degree, distance to ten metres."""
    legs = []
    for start, end in pairwise(ORDER):
        east, north = place_m(end) - place_m(start)
        azimuth = round(2.0 * direction_degrees(float(east), float(north))) / 2.0
        distance = 10.0 * round(float(np.hypot(east, north)) / 10.0)
        legs.append(
            {
                "grid": azimuth,
                "magnetic": wrap_degrees(azimuth - GRID_MAGNETIC_ANGLE_DEG),
                "distance": distance,
                "paces": float(round(distance * PACES_PER_100M / 100.0)),
            }
        )
    return legs


def to_geographic(places_m: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Give longitude and latitude of places on the grid, shape (n, 2)."""
    transformer = Transformer.from_crs(GRID, "EPSG:4326", always_xy=True)
    longitude, latitude = transformer.transform(places_m[:, 0], places_m[:, 1])
    return np.asarray(longitude), np.asarray(latitude)
