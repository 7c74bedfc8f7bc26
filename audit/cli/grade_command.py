"""`leg-audit grade`: plans, recordings and a roster in, the picture of the class out."""

from __future__ import annotations

import datetime as dt
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from audit.cli.clock_shift import clock_shift
from audit.cli.course_options import (
    ArrivalRadius,
    Date,
    Grid,
    GridMagneticAngle,
    PacesPer100m,
    course_options,
)
from audit.cli.endings import WrongUseError
from audit.cli.options import Traceback, WordsFile, place
from audit.cli.records_options import KeepUntil, RecordsAddress, RecordsSecret

if TYPE_CHECKING:
    from audit.cli.records_files import RecordsWanted

GRADE_EXAMPLE = """\b
Example:
    leg-audit grade lane-1.toml lane-2.toml recordings/ --roster roster.csv --out class

\b
The roster is a CSV with the columns name, lane, device, file, start, attempt, compass;
only name must be there.
"""


def _shift(written: str) -> str:
    try:
        clock_shift(written)
    except ValueError as problem:
        raise typer.BadParameter(str(problem)) from problem
    return written


Files = Annotated[
    list[Path],
    typer.Argument(
        metavar="PLAN... TRACK...",
        help="The plan of each lane and the recordings (GPX), or folders of either, told apart by "
        "what they hold.",
        show_default=False,
    ),
]
RosterFile = Annotated[
    Path | None,
    typer.Option(
        "--roster",
        metavar="ROSTER",
        help="Who walked what, CSV. Left out: each recording is a walker, on the lane it fits.",
    ),
]
StandardFile = Annotated[
    str,
    typer.Option(
        "--standard",
        metavar="STANDARD",
        help="A standard, TOML, or one that comes with the program: day-course, night-course, "
        "practice-circuit.",
    ),
]
PunchFile = Annotated[
    Path | None,
    typer.Option(
        "--punches",
        metavar="CODES",
        help="Codes brought back, CSV: proof before the recording. Rows without a name are the "
        "key.",
    ),
]
ClassFolder = Annotated[
    Path | None,
    typer.Option(
        "--out",
        metavar="DIR",
        help="Where the results go. Left out: the folder class.",
        parser=place,
    ),
]
Jobs = Annotated[
    int | None,
    typer.Option(
        "--jobs", metavar="N", min=1, max=1024, help="Processes. Left out: one a processor."
    ),
]
Shift = Annotated[
    str,
    typer.Option(
        "--shift",
        metavar="TIME|start",
        parser=_shift,
        help="Put the clocks of all recordings forward: +1:00, -90 (seconds), or start: by the "
        "first crossing of the start against the roster.",
    ),
]
ClassName = Annotated[
    str, typer.Option("--name", metavar="TEXT", help="Name of the class.", show_default=False)
]
ClusterAddress = Annotated[
    str | None,
    typer.Option(
        "--cluster",
        metavar="ADDRESS",
        help="Grade on the workers of the Dask scheduler there, such as tcp://host:8786.",
    ),
]
RoadsFile = Annotated[
    Path | None,
    typer.Option(
        "--roads",
        metavar="FILE",
        help="Roads as lines, GeoJSON: asks about walks that were near them for longer than the "
        "standard lets.",
    ),
]
PrivateClass = Annotated[
    bool,
    typer.Option("--private", help="Leave out names, devices, files, and the hours of the day."),
]


def grade(  # noqa: PLR0913 (one parameter an option)
    files: Files,
    *,
    roster: RosterFile = None,
    standard: StandardFile = "day-course",
    punches: PunchFile = None,
    roads: RoadsFile = None,
    out: ClassFolder = None,
    jobs: Jobs = None,
    shift: Shift = "0",
    name: ClassName = "",
    date: Date = None,
    grid: Grid = None,
    grid_magnetic_angle: GridMagneticAngle = None,
    paces_per_100m: PacesPer100m = None,
    arrival_radius: ArrivalRadius = None,
    private: PrivateClass = False,
    cluster: ClusterAddress = None,
    records: RecordsAddress = None,
    keep_until: KeepUntil = None,
    records_secret: RecordsSecret = None,
    words: WordsFile = None,
    traceback: Traceback = False,  # noqa: ARG001 (whoever guards the command reads it)
) -> None:
    """Grade a class: many recordings of one lane or several, by a standard.

    Prints one line a walker and writes class.json, class.csv, class.xlsx and a folder
    with the debrief of each walker. A recording that cannot be used is told of its
    walker, and the class goes on. Nobody is ranked, and a human signs.

    Ctrl-C stops and keeps what is done; the same command goes on from there.
    """
    from audit.cli.class_pool import Processes, processors  # noqa: PLC0415 (help stays quick)

    with Processes(jobs or processors()) as processes:
        processes.load_ahead()
        from audit.cli.grade_files import Asked, grade_files  # noqa: PLC0415

        asked = Asked(
            roster=roster,
            standard=standard,
            punches=punches,
            folder=out or Path("private-class" if private else "class"),
            shift_s=clock_shift(shift),
            name=name,
            private=private,
            cluster=cluster,
            records=_records(records, keep_until, records_secret),
            words=words,
            roads=roads,
        )
        course = course_options(
            None, date, grid, grid_magnetic_angle, paces_per_100m, arrival_radius, None
        )
        grade_files(files, asked, course, processes)


def _records(
    address: str | None, keep_until: dt.date | None, secret: Path | None
) -> RecordsWanted | None:
    """Give where the class is to be kept."""
    if address is None:
        if keep_until or secret:
            message = "--keep-until and --records-secret go with --records ADDRESS."
            raise WrongUseError(message)
        return None
    from audit.cli.records_files import RecordsWanted  # noqa: PLC0415 (help stays quick)

    return RecordsWanted(address=address, secret=secret, keep_until=keep_until)
