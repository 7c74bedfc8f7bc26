"""Ways held against the ground: areas they end in or cross, bounds, and points they come to."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

import numpy as np

from audit.forecast.leg_forecast import LegForecast
from audit.geodesy.areas_on_grid import GroundArea, GroundAreas
from audit.geodesy.mgrs_references import encode_mgrs
from audit.leg_card import CardLeg, CardPoint, LegCard
from audit.rehearsal.finished_rehearsal import NearPoint, Way, WayEnd
from audit.units import FloatArray, unit_vector
from audit.words import sentence

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry


OUT_OF_BOUNDS = sentence("rehearse-out-of-bounds")


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Surroundings:
    """What lies about a course: areas, and the points of courses beside it, on its grid."""

    areas: GroundAreas = field(default_factory=GroundAreas)
    beside: tuple[tuple[str, CardPoint], ...] = ()


def way_end(
    way: Way, forecast: LegForecast, leg: CardLeg, card: LegCard, around: Surroundings
) -> WayEnd:
    """Give a way with where it ends and what it comes to."""
    end = np.asarray(way.line[-1])
    longitude, latitude = card.grid.to_geographic(float(end[0]), float(end[1]))
    off = end - leg.line[-1]
    toward = forecast.toward_deg
    ends_in, through = _areas(way.line, around.areas)
    ends_outside, leaves = _bounds(way.line, around.areas.bounds)
    return WayEnd(
        way=way,
        east_m=float(end[0]),
        north_m=float(end[1]),
        longitude_deg=longitude,
        latitude_deg=latitude,
        reference=reference_of(longitude, latitude),
        along_m=float(off @ unit_vector(toward)),
        across_m=float(off @ unit_vector(toward + 90.0)),
        ends_in=ends_in,
        through=through,
        ends_outside=ends_outside,
        leaves_bounds=leaves,
        quantile=_quantile(off, forecast),
        near=_near(end, leg, card, around),
    )


def _quantile(off_m: FloatArray, forecast: LegForecast) -> float:
    """Give the share of ordinary walks inside the ellipse through an end."""
    toward = forecast.toward_deg
    middle = forecast.along_m * unit_vector(toward) + forecast.across_m * unit_vector(toward + 90.0)
    away = off_m - middle
    return -math.expm1(-0.5 * float(away @ np.linalg.solve(forecast.covariance_m2, away)))


def planned_through(leg: CardLeg, around: Surroundings) -> tuple[str, ...]:
    """Give the areas that the planned line itself comes into, and "out of bounds"."""
    import shapely  # noqa: PLC0415 (only where there are areas)

    areas, line = around.areas, shapely.LineString(leg.line)
    met = [one.name for one in (*areas.no_go, *areas.hazards) if one.shape.intersects(line)]
    if areas.bounds is not None and not areas.bounds.covers(line):
        met.append(OUT_OF_BOUNDS)
    return tuple(met)


def reference_of(longitude_deg: float, latitude_deg: float) -> str:
    """Give the grid reference of a place to ten metres; degrees beyond the reach of the grid."""
    try:
        return encode_mgrs(longitude_deg, latitude_deg, digits=8)
    except ValueError:
        return f"{latitude_deg:.5f}, {longitude_deg:.5f}"


def _areas(line: FloatArray, areas: GroundAreas) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Give the names of areas that a way ends in, and of those that it only crosses.

    An area around the start is on the planned way as well, and no fault of the mistake.
    """
    import shapely  # noqa: PLC0415 (only where there are areas)

    known: tuple[GroundArea, ...] = (*areas.no_go, *areas.hazards)
    if not known:
        return (), ()
    way = shapely.LineString(line)
    start, end = shapely.Point(line[0]), shapely.Point(line[-1])
    inside = tuple(one.name for one in known if one.shape.intersects(end))
    crossed = tuple(
        one.name
        for one in known
        if one.name not in inside and one.shape.intersects(way) and not one.shape.intersects(start)
    )
    return inside, crossed


def _bounds(line: FloatArray, bounds: BaseGeometry | None) -> tuple[bool, bool]:
    import shapely  # noqa: PLC0415

    if bounds is None:
        return False, False
    outside = not bounds.covers(shapely.Point(line[-1]))
    return outside, outside or not bounds.covers(shapely.LineString(line))


def _near(
    end: FloatArray, leg: CardLeg, card: LegCard, around: Surroundings
) -> tuple[NearPoint, ...]:
    """Give the known points within the arrival radius of where a way ends."""
    own: Sequence[tuple[str, CardPoint]] = [
        ("", point)
        for point in card.points
        if point is not leg.end and point is not leg.start and not point.dead_reckoned
    ]
    found = [
        NearPoint(point=point.name, course=course, distance_m=away)
        for course, point in (*own, *around.beside)
        if (away := math.hypot(point.east_m - end[0], point.north_m - end[1]))
        <= card.arrival_radius_m
        and not _is_end(point, leg, course)
    ]
    return tuple(sorted(found, key=lambda one: one.distance_m))


def _is_end(point: CardPoint, leg: CardLeg, course: str) -> bool:
    """Say whether a point is the leg's own end, which other courses may share."""
    away = math.hypot(point.east_m - leg.end.east_m, point.north_m - leg.end.north_m)
    return away < 1.0 and (not course or point.name == leg.end.name)
