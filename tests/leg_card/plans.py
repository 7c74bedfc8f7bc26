"""Plans to work out, built in one line."""

from __future__ import annotations

import datetime as dt
from typing import Any

from audit.geodesy.grids import course_grid, utm_code
from audit.geodesy.mgrs_references import decode_mgrs
from audit.plan import Plan, PlannedLeg, Point
from audit.positions import Position

DAY = dt.date(2026, 10, 3)


def mgrs_point(name: str, reference: str) -> Point:
    square = decode_mgrs(reference)
    return Point(
        name=name,
        position=Position(
            longitude_deg=square.longitude_deg,
            latitude_deg=square.latitude_deg,
            half_square_m=square.half_square_m,
            given=reference,
        ),
    )


def place(name: str, longitude_deg: float, latitude_deg: float) -> Point:
    return Point(
        name=name, position=Position(longitude_deg=longitude_deg, latitude_deg=latitude_deg)
    )


def grid_point(name: str, east_m: float, north_m: float, code: str = "EPSG:32616") -> Point:
    return place(name, *course_grid(code).to_geographic(east_m, north_m))


def leg(name: str = "1", start: str = "A", end: str = "B", **values: Any) -> PlannedLeg:
    return PlannedLeg(name=name, start=start, end=end, **values)


def plan(points: tuple[Point, ...], legs: tuple[PlannedLeg, ...] = (leg(),), **values: Any) -> Plan:
    first = points[0].position if points else Position(longitude_deg=-87.0, latitude_deg=32.0)
    grid = utm_code(first.longitude_deg, first.latitude_deg)
    settled = {"name": "A course", "grid": grid, "date": DAY, "source": "plan.toml"} | values
    return Plan(points=points, legs=legs, **settled)


# 1000 m on a grid azimuth of 060: the points of most tests here.
A = grid_point("A", 700_000.0, 3_580_000.0)
B = grid_point("B", 700_866.0254, 3_580_500.0)
