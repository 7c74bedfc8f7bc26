"""A course of two legs and a good walk of it, laid out by hand, as plan and recording."""

from __future__ import annotations

import datetime as dt

import numpy as np
from leg_card.plans import grid_point
from measurement.hand_made import BEGIN, ORIGIN, HandWalk

from audit.geodesy.grids import course_grid
from audit.plan import Plan, PlannedLeg
from audit.track import Track

GRID = course_grid("EPSG:32616")
COURSE = ((0.0, 0.0), (400.0, 0.0), (400.0, 300.0))


def plan_of(*points, **values) -> Plan:
    """A plan of points (east, north) in metres from the origin, one leg after another."""
    made = tuple(grid_point(f"P{n}", *(ORIGIN + place)) for n, place in enumerate(points))
    legs = tuple(
        PlannedLeg(name=str(n + 1), start=f"P{n}", end=f"P{n + 1}") for n in range(len(points) - 1)
    )
    settled = {"date": dt.date(2026, 10, 3), "grid_magnetic_angle_deg": -7.0} | values
    return Plan(name="By hand", grid="EPSG:32616", points=made, legs=legs, **settled)


def track_of(time_s, place) -> Track:
    """A recording of places in metres from the origin, shape (n, 2)."""
    place = np.asarray(place, dtype=np.float64) + ORIGIN
    longitude, latitude = GRID.to_geographic(place[:, 0], place[:, 1])
    nothing = np.full(len(place), np.nan)
    return Track(
        time_s=np.array(time_s, dtype=np.float64),
        longitude_deg=longitude,
        latitude_deg=latitude,
        elevation_m=nothing.copy(),
        hdop=nothing.copy(),
        cadence_per_min=nothing.copy(),
        segment=np.zeros(len(place), dtype=np.int64),
        source="walk.gpx",
    )


def good_walk() -> HandWalk:
    """Both legs walked as planned, with a rest of a minute at every point."""
    return HandWalk().halt(60).walk(90, 400).halt(60).walk(0, 300).halt(60)


WALK = np.array(good_walk().places)
TIME_S = BEGIN + np.arange(len(WALK))
NO_TIMES = np.full(len(WALK), np.nan)
