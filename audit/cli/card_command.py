"""`leg-audit card`: the leg card to carry, before the walk."""

from __future__ import annotations

from audit.cli.course_options import (
    ArrivalRadius,
    Date,
    Grid,
    GridMagneticAngle,
    Name,
    PacesPer100m,
    Route,
    SafetyGridAzimuth,
    SafetyMagneticAzimuth,
    SafetyNote,
    course_options,
)
from audit.cli.options import (
    BezelClick,
    CardPaperKind,
    Heights,
    OutFile,
    Pace,
    PlanFile,
    Traceback,
    WordsFile,
)

CARD_EXAMPLE = """\b
Example:
    leg-audit card plan.toml
    leg-audit card plan.toml --out card.pdf --paper a6 --ground elevation.tif
    leg-audit card plan.csv --date 2026-10-03 --grid-magnetic-angle -7 --out card.html
"""


def card(  # noqa: PLR0913 (one parameter an option)
    plan: PlanFile,
    *,
    out: OutFile = None,
    paper: CardPaperKind = "a6",
    ground: Heights = None,
    bezel_click: BezelClick = None,
    pace: Pace = None,
    safety_grid_azimuth: SafetyGridAzimuth = None,
    safety_magnetic_azimuth: SafetyMagneticAzimuth = None,
    safety_note: SafetyNote = None,
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
    """Make the leg card to carry.

    References, azimuths and back azimuths, distances, paces, bezel clicks and what
    rounding them costs, climb, times by named rules, the safety bearing, and room for
    what was really walked. The name of --out says what is made: card.html, card.pdf or
    card.txt. Black on white, to be read by red light.
    """
    from audit.cli.card_files import CardWishes, card_file  # noqa: PLC0415 (help stays quick)

    card_file(
        plan,
        CardWishes(
            out=out, paper=paper, ground=ground, click_deg=bezel_click, pace=pace, words=words
        ),
        options={
            **course_options(
                name, date, grid, grid_magnetic_angle, paces_per_100m, arrival_radius, route
            ),
            "safety_grid_azimuth_deg": safety_grid_azimuth,
            "safety_magnetic_azimuth_deg": safety_magnetic_azimuth,
            "safety_note": safety_note,
        },
    )
