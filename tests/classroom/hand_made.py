"""Lanes and tracks laid out by hand: places on the grid that are walked through as they stand."""

from __future__ import annotations

import datetime as dt

import numpy as np

from audit.classroom.lane import Lane, lane_of
from audit.geodesy.grids import course_grid
from audit.plan import Plan, PlannedLeg, Point
from audit.positions import Position
from audit.track import Track

GRID = "EPSG:32616"
GATE = (748_325.0, 4_058_285.0)
BEGIN_S = 1_789_819_200.0
"""2026-09-19T12:00:00Z."""


def lane(name: str, *places_m: tuple[float, float], date: dt.date | None = None) -> Lane:
    """Give a lane from the gate through places (east, north of it) in order."""
    grid = course_grid(GRID)
    at = [(GATE[0] + east, GATE[1] + north) for east, north in ((0.0, 0.0), *places_m)]
    longitude, latitude = grid.to_geographic(*(np.array(axis) for axis in zip(*at, strict=True)))
    names = [f"{name}{number}" for number in range(len(at))]
    points = tuple(
        Point(name=one, position=Position(longitude_deg=float(x), latitude_deg=float(y)))
        for one, x, y in zip(names, longitude, latitude, strict=True)
    )
    legs = tuple(
        PlannedLeg(name=str(number), start=names[number - 1], end=names[number])
        for number in range(1, len(names))
    )
    plan = Plan(
        name=f"Lane {name}", grid=GRID, points=points, legs=legs,
        grid_magnetic_angle_deg=-7.0, date=date, source=f"{name}.toml",
    )  # fmt: skip
    return lane_of(name, plan, None)


def track(*places_m: tuple[float, float], begin_s: float = BEGIN_S, source: str = "t.gpx",
          step_s: float = 5.0, halt_s: float = 60.0) -> Track:  # fmt: skip
    """Give the recording of a walk at 1.2 m/s through places, with a halt at each."""
    rng = np.random.default_rng(len(places_m))
    time_s, east, north, now = [], [], [], begin_s
    for start, end in zip(places_m, (*places_m[1:], places_m[-1]), strict=True):
        for _ in range(int(halt_s / step_s)):
            time_s.append(now)
            east.append(start[0])
            north.append(start[1])
            now += step_s
        way = np.hypot(end[0] - start[0], end[1] - start[1])
        for done in np.arange(6.0, way, 1.2 * step_s):
            time_s.append(now)
            east.append(start[0] + (end[0] - start[0]) * done / way)
            north.append(start[1] + (end[1] - start[1]) * done / way)
            now += step_s
    grid = course_grid(GRID)
    noise = rng.normal(0.0, 1.0, (2, len(east)))
    longitude, latitude = grid.to_geographic(
        GATE[0] + np.array(east) + noise[0], GATE[1] + np.array(north) + noise[1]
    )
    count = len(time_s)
    return Track(
        time_s=np.array(time_s), longitude_deg=longitude, latitude_deg=latitude,
        elevation_m=np.full(count, np.nan), hdop=np.full(count, np.nan),
        cadence_per_min=np.full(count, np.nan), segment=np.zeros(count, dtype=np.int64),
        source=source,
    )  # fmt: skip
