"""The options that say of a course what its plan does not, each declared once."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from audit.cli.options import angle, number

if TYPE_CHECKING:
    from audit.readers.course_settings import CourseOptions

_WEST = 'east is positive and west negative: write "-7.5" for 7.5 degrees west'

Name = Annotated[str | None, typer.Option("--name", metavar="TEXT", help="Name of the course.")]
Date = Annotated[
    str | None,
    typer.Option(
        "--date", metavar="YYYY-MM-DD", help="Day of the walk, which fixes the declination."
    ),
]
Grid = Annotated[
    str | None,
    typer.Option("--grid", metavar="GRID", help='"auto" (UTM) or a code such as EPSG:27700.'),
]
GridMagneticAngle = Annotated[
    float | None,
    typer.Option(
        "--grid-magnetic-angle",
        metavar="DEGREES",
        help="As printed on the map in hand, east positive.",
        parser=angle(_WEST),
    ),
]
PacesPer100m = Annotated[
    float | None,
    typer.Option(
        "--paces-per-100m",
        metavar="PACES",
        help="In the pace that the walker counts.",
        parser=number(),
    ),
]
ArrivalRadius = Annotated[
    float | None,
    typer.Option(
        "--arrival-radius", metavar="METRES", help="Nearer than this is arrived.", parser=number()
    ),
]
Route = Annotated[
    str | None,
    typer.Option(
        "--route", metavar="ROUTE", help="Name or number of the route in a GPX plan with several."
    ),
]
AnyOrder = Annotated[
    bool,
    typer.Option(
        "--any-order",
        help="The points may have been visited in any order, whatever the plan says; the first "
        "is the start.",
    ),
]
SafetyGridAzimuth = Annotated[
    float | None,
    typer.Option(
        "--safety-grid-azimuth",
        metavar="DEGREES",
        help="The safety bearing, from grid north.",
        parser=number(),
    ),
]
SafetyMagneticAzimuth = Annotated[
    float | None,
    typer.Option(
        "--safety-magnetic-azimuth",
        metavar="DEGREES",
        help="The safety bearing, from magnetic north.",
        parser=number(),
    ),
]
SafetyNote = Annotated[
    str | None,
    typer.Option("--safety-note", metavar="TEXT", help="Where it leads, and what to do there."),
]


def course_options(
    name: str | None,
    date: str | None,
    grid: str | None,
    grid_magnetic_angle_deg: float | None,
    paces_per_100m: float | None,
    arrival_radius_m: float | None,
    route: str | None,
) -> CourseOptions:
    """Give the settings of the course as readers of plans take them, from those of a command."""
    return {
        "name": name,
        "date": date,
        "grid": grid,
        "grid_magnetic_angle_deg": grid_magnetic_angle_deg,
        "paces_per_100m": paces_per_100m,
        "arrival_radius_m": arrival_radius_m,
        "route": route,
    }
