"""The last step of reading, shared by all formats: legs joined, grid known, notes complete."""

from __future__ import annotations

from audit.geodesy.grids import course_grid, utm_code
from audit.geodesy.utm_zones import UPS_NORTH, UPS_SOUTH
from audit.plan import Plan, PlannedLeg, Point
from audit.positions import Position
from audit.readers.course_settings import CourseSettings
from audit.readers.free_legs import free_legs, freed_legs
from audit.readers.leg_joining import joined_legs
from audit.readers.plain_text import writable
from audit.readers.plan_draft import DraftLeg
from audit.readers.point_book import PointBook
from audit.readers.position_reading import PositionReading
from audit.readers.problem_list import ProblemList
from audit.units import turn_degrees
from audit.words import sentence

_ANGLE_PLACES = 2
"""Decimals of a degree: finer than any map prints a declination."""


def finished_plan(
    settings: CourseSettings, book: PointBook, drafts: list[DraftLeg], problems: ProblemList
) -> Plan:
    """Give the plan with its legs joined and its grid known, or refuse with all problems."""
    if settings.frees_legs:
        legs = freed_legs(drafts, book, problems)
    elif settings.order == "free":
        legs = free_legs(drafts, book, problems)
    else:
        legs = joined_legs(drafts, book, problems)
    book.borrow(name for leg in legs for name in (leg.start, leg.end))
    problems.stop_if_any()
    if not legs:
        problems.stop(
            "",
            None,
            f"holds {len(book.readings)} point{'s' * (len(book.readings) != 1)} and no leg",
            "A plan needs two points, or one point and a leg with azimuth and distance.",
        )
    grid = _grid(settings.grid, next(iter(book.readings.values())), problems)
    points = book.points()
    _check_on_grid(grid, points, legs, problems)
    _note_points(points, legs, problems)
    problems.stop_if_any()
    return Plan(
        name=settings.name,
        grid=grid,
        points=points,
        legs=tuple(legs),
        date=settings.date,
        date_from=settings.date_from,
        grid_magnetic_angle_deg=_angle_deg(settings, grid, points[0], problems),
        grid_magnetic_angle_date=settings.grid_magnetic_angle_date,
        grid_magnetic_angle_year_only=settings.grid_magnetic_angle_year_only,
        sheet=settings.sheet,
        paces_per_100m=settings.paces_per_100m,
        arrival_radius_m=settings.arrival_radius_m,
        order=settings.order,
        safety_azimuth=settings.safety_azimuth,
        safety_note=settings.safety_note,
        notes=tuple(problems.notes),
        source=writable(problems.file),
    )


def _angle_deg(
    settings: CourseSettings, grid: str, first: Point, problems: ProblemList
) -> float | None:
    """Give the grid-magnetic angle; of a declination what the convergence leaves of it."""
    declination_deg = settings.declination_deg
    if declination_deg is None:
        return settings.grid_magnetic_angle_deg
    place = first.position
    convergence_deg = course_grid(grid).convergence_deg(place.longitude_deg, place.latitude_deg)
    angle_deg = round(turn_degrees(convergence_deg, declination_deg), _ANGLE_PLACES)
    problems.note(
        sentence(
            "plan-declination",
            declination=f"{declination_deg:.2f}",
            convergence=f"{convergence_deg:.2f}",
            point=first.name,
            angle=f"{angle_deg:.2f}",
        )
    )
    return angle_deg


def _grid(stated: str | None, first: PositionReading, problems: ProblemList) -> str:
    """Give the code of the course grid; "auto" is the zone of the first point."""
    if stated is not None:
        return stated
    if first.grid_code is not None:
        problems.note(sentence("plan-grid-of-reference", grid=first.grid_code))
        return first.grid_code
    code = utm_code(first.position.longitude_deg, first.position.latitude_deg)
    polar = code in (UPS_NORTH, UPS_SOUTH)
    problems.note(sentence("plan-grid-polar" if polar else "plan-grid-of-zone", grid=code))
    return code


def _check_on_grid(
    grid: str, points: tuple[Point, ...], legs: list[PlannedLeg], problems: ProblemList
) -> None:
    """Refuse a grid that does not reach the course, or that stretches it out of shape.

    A grid for the whole Earth reaches everywhere, and its lengths are true nowhere but there.
    """
    places = [(f'point "{point.name}"', point.position) for point in points]
    places += [(f"leg {leg.name}, via", position) for leg in legs for position in leg.via]
    slack = problems.limits.grid_scale_slack
    lost = [(place, position) for place, position in places if not _on_grid(grid, position, slack)]
    if lost:
        place, position = lost[0]
        others = f" (so do {len(lost) - 1} more)" * (len(lost) > 1)
        rule = f"lies far outside the course grid {grid}{others}"
        remedy = 'Check the position and the grid; grid = "auto" takes the UTM zone.'
        longer = _longer_within(grid, position)
        if longer is not None:
            rule = f"lies where the grid {grid} draws lengths {longer:.0%} too long{others}"
            remedy = 'Name the grid of the map; grid = "auto" takes the UTM zone.'
        problems.add(place, position.given or None, rule, remedy)


def _on_grid(grid: str, position: Position, slack: float) -> bool:
    """Tell whether the grid's lengths at a place are those on the ground, but for a little."""
    try:
        scale = course_grid(grid).scale_factor(position.longitude_deg, position.latitude_deg)
    except ValueError:
        return False
    return abs(scale - 1.0) <= slack


def _longer_within(grid: str, position: Position) -> float | None:
    """Give by what share a grid draws lengths too long in its own area; None outside it."""
    place = (position.longitude_deg, position.latitude_deg)
    try:
        found = course_grid(grid)
        longer = found.scale_factor(*place) - 1.0
        within = found.degrees_outside(*place) == 0.0
    except ValueError:
        return None
    return longer if within and longer > 0.0 else None


def _note_points(points: tuple[Point, ...], legs: list[PlannedLeg], problems: ProblemList) -> None:
    used = {name for leg in legs for name in (leg.start, leg.end)}
    for point in points:
        half_m = point.position.half_square_m
        if half_m >= problems.limits.coarse_half_square_m:
            problems.note(
                sentence(
                    "plan-coarse",
                    point=point.name,
                    half=f"{half_m:g}",
                    given=point.position.given,
                    square=f"{2.0 * half_m:g}",
                )
            )
        if point.name not in used:
            problems.note(sentence("plan-on-no-leg", point=point.name))
