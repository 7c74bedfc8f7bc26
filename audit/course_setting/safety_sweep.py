"""Whether a safety bearing leads out of the bounds from everywhere, without a no-go area.

The ground is turned so that the bearing points up, and cut into upright strips at every
corner of the outlines. Inside one strip no outlines cross, so that the bounds fall into
pieces of which each is walked up from its lower to its upper edge; whatever lies below an
area in such a piece leads into it. No place is sampled: the ground found is exact, up to
the rounding of a double.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

import numpy as np

from audit.units import FloatArray, unit_vector

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class UnsafeGround:
    """Ground from which a bearing leads into an area before it leaves the bounds.

    Attributes
    ----------
    shape : geometry
        In grid metres; the area itself is not part of it.
    share : float
        Of the ground inside the bounds and outside the area.
    furthest_m : (east, north)
        A place well inside it.
    """

    shape: BaseGeometry
    area_m2: float
    share: float
    furthest_m: tuple[float, float]


def unsafe_ground(
    bounds: BaseGeometry, area: BaseGeometry, azimuth_deg: float, least_m2: float
) -> UnsafeGround | None:
    """Give the ground from which the bearing leads into the area; None where there is none.

    Parameters
    ----------
    bounds, area : geometry
        In grid metres; the area may be lines.
    azimuth_deg : float
        The bearing, from grid north.
    least_m2 : float
        Less ground than this is rounding.
    """
    import shapely  # noqa: PLC0415 (only where there are areas)

    upright = _turn(azimuth_deg)
    turned = shapely.transform(bounds, lambda corners: corners @ upright.T)
    within = shapely.intersection(shapely.transform(area, lambda c: c @ upright.T), turned)
    if within.is_empty:
        return None
    edges = np.unique(shapely.get_coordinates([turned, within])[:, 0])
    swept = [
        part
        for left, right in pairwise(edges.tolist())
        if right - left > 1e-9
        for part in _strip(turned, within, left, right)
    ]
    below = shapely.difference(shapely.union_all(swept), within)
    if below.area < least_m2:
        return None
    shape = shapely.transform(below, lambda corners: corners @ upright)
    free_m2 = turned.area - within.area
    largest = max(shapely.get_parts(shape), key=lambda part: part.area)
    inside = largest.representative_point()
    return UnsafeGround(
        shape=shape,
        area_m2=float(below.area),
        share=float(below.area / free_m2) if free_m2 > 0.0 else 1.0,
        furthest_m=(float(inside.x), float(inside.y)),
    )


def _turn(azimuth_deg: float) -> FloatArray:
    """Give the matrix that turns (east, north) so that the azimuth points along the second axis."""
    return np.array([unit_vector(azimuth_deg + 90.0), unit_vector(azimuth_deg)])


def _strip(
    bounds: BaseGeometry, area: BaseGeometry, left: float, right: float
) -> list[BaseGeometry]:
    """Give the parts of one strip that lie below the area, piece by piece of the bounds."""
    import shapely  # noqa: PLC0415

    low, high = shapely.bounds(bounds)[[1, 3]]
    strip = shapely.box(left, low - 1.0, right, high + 1.0)
    found = []
    inside = shapely.intersection(area, strip)
    for piece in shapely.get_parts(shapely.intersection(bounds, strip)):
        here = shapely.intersection(inside, piece)
        if piece.area <= 0.0 or here.is_empty:
            continue
        for part in shapely.get_parts(here):
            below = _below(part, low - 1.0)
            if below is not None:
                found.append(shapely.intersection(below, piece))
    return found


def _below(part: BaseGeometry, floor: float) -> BaseGeometry | None:
    """Give all that lies under a part of an area, whose outline is straight within the strip."""
    import shapely  # noqa: PLC0415

    corners = shapely.get_coordinates(part)
    if np.ptp(corners[:, 0]) <= 1e-9:
        return None
    down = np.column_stack([corners[:, 0], np.full(len(corners), floor)])
    return shapely.convex_hull(shapely.MultiPoint(np.vstack([corners, down])))
