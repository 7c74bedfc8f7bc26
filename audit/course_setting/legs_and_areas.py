"""Points in areas, legs through them, and legs that leave the bounds."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Literal

import numpy as np

from audit.course_setting.checked_lanes import FindingKind, Lane, LaneFinding
from audit.geodesy.areas_on_grid import GroundArea, GroundAreas
from audit.leg_card import CardLeg, CardPoint, LegCard
from audit.words import sentence
from audit.words.figures import Length

if TYPE_CHECKING:
    import shapely
    from shapely.geometry.base import BaseGeometry

_OF_AREA: dict[Literal["no-go", "hazard"], tuple[FindingKind, FindingKind]] = {
    "no-go": ("point-in-no-go", "leg-through-no-go"),
    "hazard": ("point-in-hazard", "leg-through-hazard"),
}


def legs_and_areas(lane: Lane, areas: GroundAreas) -> Iterator[LaneFinding]:
    """Give what is wrong with where points lie and where legs lead."""
    for area in areas.no_go:
        yield from _in_area(lane, area, "no-go")
    for area in areas.hazards:
        yield from _in_area(lane, area, "hazard")
    if areas.bounds is not None:
        yield from _out_of_bounds(lane, areas.bounds)


def _in_area(
    lane: Lane, area: GroundArea, kind: Literal["no-go", "hazard"]
) -> Iterator[LaneFinding]:
    of_point, of_leg = _OF_AREA[kind]
    inside = {
        point.name: point for point in lane.card.points if area.shape.intersects(_place(point))
    }
    for point in inside.values():
        message = sentence(
            "lanes-point-in", lane=lane.name, point=point.name, kind=kind, area=area.name
        )
        yield _finding(of_point, lane, point.name, message, point)
    for leg in lane.legs:
        if leg.start.name in inside or leg.end.name in inside:
            continue  # told of the point
        line = _line(leg)
        if not area.shape.intersects(line):
            continue
        crossing = area.shape.intersection(line)
        middle = _first_place(crossing, line)
        message = sentence(
            "lanes-leg-through",
            **_leg_named(lane, leg),
            kind=kind,
            area=area.name,
            over=Length(metres=crossing.length) if crossing.length >= 1.0 else "none",
            **{"from": Length(metres=line.project(middle))},
        )
        yield _at(of_leg, lane, f"leg {leg.name}", message, (middle.x, middle.y))


def _out_of_bounds(lane: Lane, bounds: BaseGeometry) -> Iterator[LaneFinding]:
    outside = {point.name: point for point in lane.card.points if not bounds.covers(_place(point))}
    for point in outside.values():
        message = sentence("lanes-point-out", lane=lane.name, point=point.name)
        yield _finding("point-out-of-bounds", lane, point.name, message, point)
    for leg in lane.legs:
        if leg.start.name in outside or leg.end.name in outside:
            continue
        line = _line(leg)
        beyond = line.difference(bounds)
        if beyond.length < 1e-6:
            continue
        middle = _first_place(beyond, line)
        message = sentence(
            "lanes-leg-out",
            **_leg_named(lane, leg),
            over=Length(metres=beyond.length),
            **{"from": Length(metres=line.project(middle))},
        )
        yield _at("leg-out-of-bounds", lane, f"leg {leg.name}", message, (middle.x, middle.y))


def _leg_named(lane: Lane, leg: CardLeg) -> dict[str, str]:
    return {"lane": lane.name, "leg": leg.name, "start": leg.start.name, "end": leg.end.name}


def _place(point: CardPoint) -> shapely.Point:
    import shapely  # noqa: PLC0415 (only where there are areas)

    return shapely.Point(point.east_m, point.north_m)


def _line(leg: CardLeg) -> shapely.LineString:
    import shapely  # noqa: PLC0415

    return shapely.LineString(np.asarray(leg.line))


def _first_place(crossing: BaseGeometry, line: shapely.LineString) -> shapely.Point:
    """Give the first place of a crossing along the leg."""
    import shapely  # noqa: PLC0415

    corners = [shapely.Point(*corner) for corner in shapely.get_coordinates(crossing)]
    return min(corners, key=line.project)


def _finding(
    kind: FindingKind, lane: Lane, what: str, message: str, point: CardPoint
) -> LaneFinding:
    return _at(kind, lane, what, message, (point.east_m, point.north_m))


def _at(
    kind: FindingKind, lane: Lane, what: str, message: str, place: tuple[float, float]
) -> LaneFinding:
    return placed_finding(kind, lane.name, what, message, (lane.card, place))


def placed_finding(
    kind: FindingKind,
    lane: str,
    what: str,
    message: str,
    at: tuple[LegCard, tuple[float, float]],
) -> LaneFinding:
    """Give a finding with its place in degrees, from (east, north) on the grid of a card."""
    longitude, latitude = at[0].grid.to_geographic(*at[1])
    return LaneFinding(
        kind=kind,
        lane=lane,
        what=what,
        message=message,
        longitude_deg=longitude,
        latitude_deg=latitude,
    )
