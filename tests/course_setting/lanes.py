"""Lanes on one piece of invented ground, right in everything, and areas round them."""

from __future__ import annotations

import datetime as dt
import json
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import numpy as np
import shapely
from leg_card.plans import grid_point, leg, plan

from audit.azimuths import MagneticAzimuth
from audit.course_setting.checked_lanes import Lane
from audit.geodesy.areas_on_grid import GroundArea, GroundAreas
from audit.geodesy.grids import course_grid
from audit.leg_card import work_out_card
from audit.plan import Plan

DAY = dt.date(2026, 9, 19)
WEST, SOUTH = 700_000.0, 3_580_000.0
GRID = course_grid("EPSG:32616")

# (name, east, north) from the corner of the bounds; lanes run through them in order.
EAST_LANE = [
    ("Gate", 1000, 500),
    ("Alder", 1500, 700),
    ("Birch", 1900, 1300),
    ("Cedar", 1400, 1800),
    ("Dogwood", 900, 1500),
]
WEST_LANE = [
    ("Gate", 1000, 500),
    ("Elm", 500, 700),
    ("Fir", 300, 1300),
    ("Gorse", 700, 1900),
    ("Hazel", 200, 2050),
]

# Dogwood 49 m from Gorse of the other lane, and else as long as that.
TWIN_LANE = [
    ("Gate", 1000, 500),
    ("Alder", 1500, 700),
    ("Birch", 1700, 1300),
    ("Cedar", 1200, 1700),
    ("Dogwood", 745, 1920),
]


def lane_plan(name: str, places: list[tuple[str, float, float]], **values) -> Plan:
    points = tuple(grid_point(n, WEST + east, SOUTH + north) for n, east, north in places)
    legs = tuple(
        leg(str(number), begin.name, end.name)
        for number, (begin, end) in enumerate(pairwise(points), start=1)
    )
    settled = {
        "name": name, "date": DAY, "grid_magnetic_angle_deg": -7.5,
        "safety_azimuth": MagneticAzimuth(187.5),
    } | values  # fmt: skip
    return plan(points, legs, **settled)


def lane(name: str, places: list[tuple[str, float, float]], **values) -> Lane:
    planned = lane_plan(name, places, **values)
    return Lane(name=name, source=f"{name}.toml", card=work_out_card(planned))


def box(west: float, south: float, east: float, north: float) -> shapely.Polygon:
    return shapely.box(WEST + west, SOUTH + south, WEST + east, SOUTH + north)


def sound_ground() -> GroundAreas:
    """Give bounds, a pond beside the lanes with the boundary south of it, and a quarry."""
    return GroundAreas(
        bounds=box(0, 0, 2200, 2200),
        no_go=(GroundArea(name="Old Quarry", shape=box(2050, 2080, 2200, 2200)),),
        hazards=(),
    )


def with_lake(areas: GroundAreas, *corners: float) -> GroundAreas:
    lake = GroundArea(name="Long Lake", shape=box(*corners))
    return replace(areas, no_go=(*areas.no_go, lake))


def faulty_ground() -> GroundAreas:
    """Give the ground with a marsh on leg 3 of the eastern lane and a lake to the south.

    Nobody comes to the marsh from the north: it reaches the bounds there.
    """
    areas = with_lake(sound_ground(), 1600, 200, 2000, 300)
    marsh = GroundArea(name="Black Marsh", shape=box(1400, 1450, 1450, 2200))
    return replace(areas, no_go=(*areas.no_go, marsh))


def write_plan(path: Path, name: str, places: list[tuple[str, float, float]]) -> None:
    """Write a lane as a plan in TOML."""
    made = lane_plan(name, places)
    lines = [
        "[course]", f'name = "{name}"', f"date = {DAY}", 'grid = "EPSG:32616"',
        "grid_magnetic_angle_deg = -7.5", "safety_magnetic_azimuth_deg = 187.5",
    ]  # fmt: skip
    for point in made.points:
        where = f"{point.position.latitude_deg:.8f}, {point.position.longitude_deg:.8f}"
        lines += ["", "[[point]]", f'name = "{point.name}"', f'position = "{where}"']
    path.write_text("\n".join(lines) + "\n")


def write_areas(path: Path, areas: GroundAreas) -> None:
    """Write areas as GeoJSON in degrees."""
    shapes = [(one.name, "no-go", one.shape) for one in areas.no_go]
    shapes += [(one.name, "hazard", one.shape) for one in areas.hazards]
    shapes += [("Ground", "bounds", areas.bounds)] if areas.bounds else []
    features = []
    for name, kind, shape in shapes:
        corners = shapely.get_coordinates(shape)
        degrees = np.column_stack(GRID.to_geographic(corners[:, 0].copy(), corners[:, 1].copy()))
        features.append({
            "type": "Feature",
            "properties": {"name": name, "kind": kind},
            "geometry": {"type": "Polygon", "coordinates": [degrees.tolist()]},
        })  # fmt: skip
    path.write_text(json.dumps({"type": "FeatureCollection", "features": features}))
