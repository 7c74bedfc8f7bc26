"""Whether two plans are the same plan, whatever form they were written in."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from audit.geodesy.grids import course_grid
from audit.plan import AnyAzimuth, Plan, PlannedLeg
from audit.positions import Position
from audit.units import turn_degrees

_SAME_PLACE_M = 0.001
_SAME_DEG = 1e-6
_SAME_LENGTH = 1e-6
_COURSE = (
    "name", "grid", "date", "grid_magnetic_angle_dated", "order", "arrival_radius_m",
    "paces_per_100m", "grid_magnetic_angle_deg", "safety_note",
)  # fmt: skip

_OF_LEG = (
    "name", "start", "end", "distance_m", "paces", "note", "grid_azimuth_half_step_deg",
    "distance_half_step_m",
)  # fmt: skip


def plan_differences(plan: Plan, other: Plan) -> tuple[str, ...]:
    """Give what differs, in words; nothing where they are the same within a millimetre."""
    return (*_course(plan, other), *_points(plan, other), *_legs(plan, other))


def _course(plan: Plan, other: Plan) -> Iterator[str]:
    for name in _COURSE:
        if not _same(getattr(plan, name), getattr(other, name)):
            yield name
    if not _same_azimuth(plan.safety_azimuth, other.safety_azimuth):
        yield "safety bearing"
    corners = plan.sheet or (), other.sheet or ()
    if len(corners[0]) != len(corners[1]) or any(
        _apart_m(plan, one, two) > _SAME_PLACE_M for one, two in zip(*corners, strict=True)
    ):
        yield "sheet"


def _points(plan: Plan, other: Plan) -> Iterator[str]:
    here, there = ({point.name: point for point in each.points} for each in (plan, other))
    if here.keys() != there.keys():
        yield "points"
    elif list(here) != list(there):
        yield "order of points"
    for one, two in ((here[name], there[name]) for name in here if name in there):
        if _apart_m(plan, one.position, two.position) > _SAME_PLACE_M:
            yield f"position of {one.name}"
        if one.position.half_square_m != two.position.half_square_m:
            yield f"precision of {one.name}"


def _legs(plan: Plan, other: Plan) -> Iterator[str]:
    if len(plan.legs) != len(other.legs):
        yield "number of legs"
        return
    for one, two in zip(plan.legs, other.legs, strict=True):
        for name in _differing(plan, one, two):
            yield f"leg {one.name}: {name}"


def _differing(plan: Plan, one: PlannedLeg, two: PlannedLeg) -> Iterator[str]:
    for name in _OF_LEG:
        if not _same(getattr(one, name), getattr(two, name)):
            yield name
    for name in ("grid_azimuth", "magnetic_azimuth", "true_azimuth"):
        if not _same_azimuth(getattr(one, name), getattr(two, name)):
            yield name
    if len(one.via) != len(two.via) or any(
        _apart_m(plan, here, there) > _SAME_PLACE_M
        for here, there in zip(one.via, two.via, strict=True)
    ):
        yield "via"


def _same(one: object, two: object) -> bool:
    if isinstance(one, float) and isinstance(two, float):
        return abs(one - two) <= _SAME_LENGTH * max(1.0, abs(one))
    return one == two


def _same_azimuth(one: AnyAzimuth | None, two: AnyAzimuth | None) -> bool:
    if one is None or two is None or type(one) is not type(two):
        return one is two
    return abs(turn_degrees(one.degrees, two.degrees)) <= _SAME_DEG


def _apart_m(plan: Plan, one: Position, two: Position) -> float:
    grid = course_grid(plan.grid)
    here, there = (
        np.array(grid.to_grid(each.longitude_deg, each.latitude_deg)) for each in (one, two)
    )
    return float(np.hypot(*(there - here)))
