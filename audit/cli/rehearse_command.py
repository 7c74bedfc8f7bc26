"""`leg-audit rehearse`: every mistake walked down every leg, before anyone else does it."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from audit.cli.course_options import (
    ArrivalRadius,
    Date,
    Grid,
    GridMagneticAngle,
    Name,
    PacesPer100m,
    Route,
    course_options,
)
from audit.cli.lanes_command import Areas
from audit.cli.options import PlanFile, Traceback, WordsFile, place

REHEARSE_EXAMPLE = """\b
Example:
    leg-audit rehearse plan.toml --out rehearsal
    leg-audit rehearse plan.toml --areas ground.geojson --beside lane2.toml --ground heights.tif
    leg-audit rehearse plan.toml --walk 6=gm-angle-omitted
"""

Folder = Annotated[
    Path | None,
    typer.Option(
        "--out",
        metavar="DIR",
        help="Where the results go. Left out: a folder named after PLAN.",
        parser=place,
    ),
]
Beside = Annotated[
    list[Path] | None,
    typer.Option(
        "--beside", metavar="PLAN", help="Another course on the same ground; give it again."
    ),
]
Heights = Annotated[
    Path | None,
    typer.Option("--ground", metavar="FILE", help="A GeoTIFF of elevation: what slopes do."),
]
Walk = Annotated[
    list[str] | None,
    typer.Option(
        "--walk",
        metavar="LEG=CAUSE",
        help="Write a simulated walk of the whole course with this mistake on that leg, to try "
        "a debrief on; give it again for another.",
    ),
]


def rehearse(  # noqa: PLR0913 (one parameter an option)
    plan: PlanFile,
    *,
    out: Folder = None,
    areas: Areas = None,
    beside: Beside = None,
    ground: Heights = None,
    walk: Walk = None,
    name: Name = None,
    date: Date = None,
    grid: Grid = None,
    grid_magnetic_angle: GridMagneticAngle = None,
    paces_per_100m: PacesPer100m = None,
    arrival_radius: ArrivalRadius = None,
    route: Route = None,
    words: WordsFile = None,
    traceback: Traceback = False,  # noqa: ARG001 (whoever guards the command reads it)
) -> None:
    """Walk every mistake of the catalogue down every leg, on paper.

    Where each ends, what it leads into, which other point it comes to, and which two
    mistakes a leg cannot tell apart, with the small change of the leg that would. Writes
    rehearsal.html (the page), rehearsal.json, rehearsal.csv, and simulated tracks for
    teaching into the folder tracks.
    """
    from audit.cli.rehearse_files import Asked, rehearse_files  # noqa: PLC0415 (help stays quick)

    rehearse_files(
        plan,
        Asked(
            folder=out, areas=areas, beside=tuple(beside or ()), ground=ground,
            walks=tuple(walk or ()), words=words,
        ),
        options=course_options(
            name, date, grid, grid_magnetic_angle, paces_per_100m, arrival_radius, route
        ),
    )  # fmt: skip
