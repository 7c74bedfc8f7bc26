"""Areas hatched with strokes, so that kinds differ where there is no colour."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy as np

from audit.units import FloatArray, unit_vector

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry


def hatching(
    shapes: Sequence[BaseGeometry], seen: BaseGeometry, azimuth_deg: float, apart_m: float
) -> list[FloatArray]:
    """Give strokes inside areas, each from end to end, in grid metres.

    Parameters
    ----------
    shapes
        Areas; lines among them have nothing to hatch.
    seen
        The ground in the picture: nothing is hatched outside.
    azimuth_deg
        Of the strokes. Strokes of one azimuth lie on the same lines in all areas.
    apart_m
        From stroke to stroke.
    """
    import shapely  # noqa: PLC0415 (only where there are areas)

    along, across = unit_vector(azimuth_deg), unit_vector(azimuth_deg + 90.0)
    strokes: list[FloatArray] = []
    for shape in shapes:
        area = shapely.intersection(shape, seen)
        if area.area <= 0.0:
            continue
        corners = shapely.get_coordinates(area)
        reach, side = corners @ along, corners @ across
        ends = np.array([reach.min() - 1.0, reach.max() + 1.0])
        sides = np.arange(np.ceil(side.min() / apart_m), side.max() / apart_m) * apart_m
        lines = [[end * along + off * across for end in ends] for off in sides]
        cut = shapely.intersection(shapely.MultiLineString(lines), area)
        strokes += [
            shapely.get_coordinates(part)
            for part in shapely.get_parts(cut)
            if part.geom_type == "LineString"
        ]
    return strokes
