"""`leg-audit debrief`: a plan and a recording in, the debrief out."""

from __future__ import annotations

import datetime as dt
from pathlib import Path
from typing import TYPE_CHECKING

import typer

from audit.cli.course_options import (
    AnyOrder,
    ArrivalRadius,
    Date,
    Grid,
    GridMagneticAngle,
    Name,
    PacesPer100m,
    Route,
    course_options,
)
from audit.cli.endings import WrongUseError
from audit.cli.options import (
    REPORTS,
    CardFile,
    Claim,
    Corridor,
    From,
    Gpx,
    Ground,
    LogFile,
    Only,
    OutFolder,
    OverlayScale,
    PaperKind,
    Pdf,
    Pictures,
    PlanFile,
    Private,
    SlopeHeights,
    Traceback,
    TrackFile,
    WordsFile,
)
from audit.cli.records_options import KeepUntil, RecordsAddress, RecordsSecret, Walker

if TYPE_CHECKING:
    from audit.cli.debrief_files import Extras
    from audit.cli.records_files import RecordsWanted
    from audit.reports.write import Wishes

DEBRIEF_EXAMPLE = """\b
Example:
    leg-audit debrief plan.toml walk.gpx --log log.csv --out debrief

\b
With a plan from a spreadsheet, whose settings stand in the options:
    leg-audit debrief plan.csv walk.gpx --date 2026-10-03 --grid-magnetic-angle -7
"""


def debrief(  # noqa: PLR0913 (one parameter an option)
    context: typer.Context,
    plan: PlanFile,
    track: TrackFile,
    *,
    log: LogFile = None,
    card: CardFile = None,
    out: OutFolder = None,
    only: Only = None,
    name: Name = None,
    date: Date = None,
    grid: Grid = None,
    grid_magnetic_angle: GridMagneticAngle = None,
    paces_per_100m: PacesPer100m = None,
    arrival_radius: ArrivalRadius = None,
    route: Route = None,
    any_order: AnyOrder = False,
    corridor: Corridor = None,
    from_: From = None,
    claim: Claim = None,
    ground: Ground = None,
    heights: SlopeHeights = None,
    pdf: Pdf = False,
    overlay: OverlayScale = None,
    paper: PaperKind = None,
    pictures: Pictures = False,
    gpx: Gpx = False,
    private: Private = False,
    words: WordsFile = None,
    records: RecordsAddress = None,
    walker: Walker = None,
    keep_until: KeepUntil = None,
    records_secret: RecordsSecret = None,
    traceback: Traceback = False,  # noqa: ARG001 (whoever guards the command reads it)
) -> None:
    """Set a recorded walk against its plan, leg by leg.

    Prints the short debrief and writes debrief.html (the page), debrief.json, legs.csv
    and debrief.geojson. Other files of the folder stay.

    The settings of the course (from --name to --any-order) are for plans that cannot carry
    them, and come before the plan's own.

    Where a leg was matched to the wrong part of the walk, --from and --claim settle it.
    """
    from audit.cli.debrief_files import debrief_files  # noqa: PLC0415 (help stays quick)

    wishes = _wishes(paper, overlay, gpx=gpx, pdf=pdf, pictures=pictures)
    kept = _records(records, walker, keep_until, records_secret)
    debrief_files(
        plan,
        track,
        log=log,
        card=card,
        folder=out,
        only=_reports(only or [], context.args),
        pins={"from": from_ or [], "claim": claim or []},
        extras=_extras(wishes, kept, (ground, heights, words), corridor, private=private),
        options={
            **course_options(
                name, date, grid, grid_magnetic_angle, paces_per_100m, arrival_radius, route
            ),
            "order": "free" if any_order else None,
        },
    )


def _reports(only: list[str], spare: list[str]) -> list[str]:
    """Give the reports that are asked for; those behind the recording belong to --only too."""
    for word in spare:
        if not only or word.lower() not in REPORTS:
            message = (
                f'"{word}" is one too many: a debrief takes one plan and one recording. '
                "Several reports are written --only json,csv."
            )
            raise WrongUseError(message)
    return [*only, *(word.lower() for word in spare)]


def _extras(
    wishes: Wishes,
    records: RecordsWanted | None,
    files: tuple[Path | None, Path | None, Path | None],
    corridor_m: float | None,
    *,
    private: bool,
) -> Extras:
    """Give what a debrief is to have beside the usual; files of ground, heights and words."""
    from audit.cli.debrief_files import Extras  # noqa: PLC0415 (help stays quick)

    ground, heights, words = files
    return Extras(
        wishes=wishes,
        ground=ground,
        heights=heights,
        private=private,
        words=words,
        records=records,
        corridor_m=corridor_m,
    )


def _records(
    address: str | None, walker: str | None, keep_until: dt.date | None, secret: Path | None
) -> RecordsWanted | None:
    """Give where the walk is to be kept; whose it is must be said."""
    if address is None:
        if walker or keep_until or secret:
            message = "--walker, --keep-until and --records-secret go with --records ADDRESS."
            raise WrongUseError(message)
        return None
    if not walker or not walker.strip():
        message = "--records: whose walk is it? Add --walker NAME; only a pseudonym is kept."
        raise WrongUseError(message)
    from audit.cli.records_files import RecordsWanted  # noqa: PLC0415 (help stays quick)

    return RecordsWanted(address=address, walker=walker, secret=secret, keep_until=keep_until)


def _wishes(
    paper: str | None, overlay: str | None, *, gpx: bool, pdf: bool, pictures: bool
) -> Wishes:
    """Give what is to be written beside the usual reports."""
    if paper and not (pdf or overlay):
        message = "--paper goes with --pdf or --overlay."
        raise WrongUseError(message)
    from audit.reports.paper_sizes import PAPERS  # noqa: PLC0415 (help stays quick)
    from audit.reports.write import Wishes  # noqa: PLC0415

    sheet = next(one for one in PAPERS if one == (paper or "a4"))
    scale = int(overlay) if overlay else None
    return Wishes(gpx=gpx, pdf=pdf, pictures=pictures, overlay_scale=scale, paper=sheet)
