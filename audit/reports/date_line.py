"""Lines in longitude and latitude, cut where they cross the date line (RFC 7946, 3.1.9)."""

from __future__ import annotations

from typing import Any

import numpy as np

from audit.units import FloatArray

_DECIMALS = 7
"""A hundredth of a metre, finer than any receiver."""


def position(longitude_deg: float, latitude_deg: float) -> list[float]:
    """Give a GeoJSON position."""
    return [round(float(longitude_deg), _DECIMALS), round(float(latitude_deg), _DECIMALS)]


def line_geometry(longitude_deg: FloatArray, latitude_deg: FloatArray) -> dict[str, Any]:
    """Give a LineString, or a MultiLineString of parts on either side of the date line.

    A line of one place is that place twice, since a LineString has two positions or
    more (RFC 7946, 3.1.4).
    """
    parts = _parts(longitude_deg, latitude_deg)
    lines = [_positions(part if len(part) > 1 else np.repeat(part, 2, axis=0)) for part in parts]
    if len(lines) == 1:
        return {"type": "LineString", "coordinates": lines[0]}
    return {"type": "MultiLineString", "coordinates": lines}


def _parts(longitude_deg: FloatArray, latitude_deg: FloatArray) -> list[FloatArray]:
    """Cut a line; each part ends on the date line at the latitude of the crossing."""
    places = np.column_stack([longitude_deg, latitude_deg])
    parts, begin = [], 0
    head: list[list[float]] = []
    for last in np.flatnonzero(np.abs(np.diff(longitude_deg)) > 180.0):
        edge_deg = 180.0 if longitude_deg[last] > 0.0 else -180.0
        here, beyond = places[last], places[last + 1] + (2.0 * edge_deg, 0.0)
        share = (edge_deg - here[0]) / (beyond[0] - here[0]) if beyond[0] != here[0] else 0.0
        latitude = here[1] + share * (beyond[1] - here[1])
        parts.append(_joined(head, places[begin : last + 1], [[edge_deg, latitude]]))
        head, begin = [[-edge_deg, latitude]], int(last) + 1
    return [*parts, _joined(head, places[begin:], [])]


def _joined(head: list[list[float]], middle: FloatArray, tail: list[list[float]]) -> FloatArray:
    return np.vstack([part for part in (head, middle, tail) if len(part)])


def _positions(part: FloatArray) -> list[list[float]]:
    rounded: list[list[float]] = np.round(part, _DECIMALS).tolist()
    return rounded
