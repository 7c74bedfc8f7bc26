"""The plan that the maker of a course hands out."""

from __future__ import annotations

import datetime as dt

from audit.azimuths import GridAzimuth
from audit.plan import Plan, PlannedLeg, Point
from audit.positions import Position
from walks.courses import Course, to_geographic


def plan_of(course: Course, day: dt.date, older_deg: float = 0.0) -> Plan:
    """Write the plan that the maker of a course hands out, its angle out of date by so much."""
    transformer = to_geographic(course.grid)
    points, names = [], []
    for index, site in enumerate(course.site):
        name = "Start" if site == 0 else f"Point {site}"
        names.append(name)
        if site in course.site[:index]:
            continue
        longitude, latitude = transformer.transform(*course.points_m[index])
        place = Position(longitude_deg=float(longitude), latitude_deg=float(latitude))
        points.append(Point(name=name, position=place))
    legs = [
        PlannedLeg(
            name=str(leg + 1),
            start=names[leg],
            end=names[leg + 1],
            grid_azimuth=GridAzimuth(course.card_azimuth_deg[leg]) if course.stated else None,
            distance_m=course.card_m[leg] if course.stated else None,
        )
        for leg in range(course.leg_count)
    ]
    return Plan(
        name="Made course",
        grid=course.grid,
        points=tuple(points),
        legs=tuple(legs),
        date=day,
        grid_magnetic_angle_deg=course.grid_magnetic_angle_deg - older_deg,
        paces_per_100m=65.0,
    )
