"""`leg-audit lanes`: whether lanes are alike, apart from each other, and safe."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from audit.cli.course_options import (
    Date,
    Grid,
    GridMagneticAngle,
    SafetyGridAzimuth,
    SafetyMagneticAzimuth,
)
from audit.cli.options import AsJson, Traceback, WordsFile, place

LANES_EXAMPLE = """\b
Example:
    leg-audit lanes lane1.toml lane2.toml lane3.toml
    leg-audit lanes *.toml --areas ground.geojson --ground heights.tif --start 13:30 --out lanes

\b
Exit status: 0 nothing to look at, 1 findings, 2 wrong use, 3 input refused.
"""

Plans = Annotated[
    list[Path],
    typer.Argument(
        metavar="PLAN...", help="The lanes, one plan each: TOML, CSV, GPX or GeoJSON.",
        show_default=False,
    ),
]  # fmt: skip
Areas = Annotated[
    Path | None,
    typer.Option(
        "--areas",
        metavar="FILE",
        help="GeoJSON polygons whose kind is bounds, no-go or hazard.",
    ),
]
Heights = Annotated[
    Path | None,
    typer.Option("--ground", metavar="FILE", help="A GeoTIFF of elevation: climb and times."),
]
Start = Annotated[
    str | None,
    typer.Option(
        "--start",
        metavar="HH:MM",
        help="When the lanes are begun, on the plan's date: UTC, or with an offset.",
    ),
]
Folder = Annotated[
    Path | None,
    typer.Option(
        "--out", metavar="DIR", help="Write lanes.html, lanes.csv and lanes.json too.", parser=place
    ),
]


def lanes(  # noqa: PLR0913 (one parameter an option)
    plans: Plans,
    *,
    areas: Areas = None,
    ground: Heights = None,
    start: Start = None,
    safety_grid_azimuth: SafetyGridAzimuth = None,
    safety_magnetic_azimuth: SafetyMagneticAzimuth = None,
    out: Folder = None,
    json: AsJson = False,
    date: Date = None,
    grid: Grid = None,
    grid_magnetic_angle: GridMagneticAngle = None,
    words: WordsFile = None,
    traceback: Traceback = False,  # noqa: ARG001 (whoever guards the command reads it)
) -> int:
    """Hold lanes against each other and against the ground, before anyone walks.

    Length, legs, climb, time by the named rules, the chance to find the points, twin
    points, sun and darkness, side by side, and what stands out; legs through no-go areas
    and hazards or out of bounds; and whether the safety bearing leads out of the bounds
    from everywhere without crossing one.
    """
    from audit.cli.lanes_files import LanesAsked, check_lane_files  # noqa: PLC0415 (help is quick)

    return check_lane_files(
        plans,
        LanesAsked(areas=areas, ground=ground, start=start, folder=out, as_json=json, words=words),
        options={
            "date": date,
            "grid": grid,
            "grid_magnetic_angle_deg": grid_magnetic_angle,
            "safety_grid_azimuth_deg": safety_grid_azimuth,
            "safety_magnetic_azimuth_deg": safety_magnetic_azimuth,
        },
    )
