"""The arguments and options of the commands, each declared once."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

REPORTS = ("json", "csv", "geojson", "html")
PAPERS = ("a4", "letter")
SCALES = (25_000, 50_000)


def _report(word: str) -> str:
    """Give the report that a word names."""
    name = word.strip().lower()
    if name not in REPORTS:
        message = f'there is no report "{word}"; choose from {", ".join(REPORTS)}'
        raise typer.BadParameter(message)
    return name


def _pin(text: str) -> str:
    """Give the text of a pinned boundary, which names a leg and a time."""
    name, equals, time = (part.strip() for part in text.rpartition("="))
    if not (name and equals and time):
        message = f'"{text}" is not the name of a leg, "=" and a time, like 3=09:15:30'
        raise typer.BadParameter(message)
    return text


def _scale(word: str) -> str:
    """Give the scale that a word names: 25000, 1:25000 or 1:25 000."""
    scale = word.removeprefix("1:").replace(" ", "").replace(",", "")
    if scale not in {str(one) for one in SCALES}:
        message = f'an overlay is made at 1:25000 or 1:50000, not at "{word}"'
        raise typer.BadParameter(message)
    return scale


def _paper(word: str) -> str:
    """Give the paper that a word names."""
    name = word.strip().lower()
    if name not in PAPERS:
        message = f'there is no paper "{word}"; choose from {", ".join(PAPERS)}'
        raise typer.BadParameter(message)
    return name


PlanFile = Annotated[
    Path,
    typer.Argument(
        metavar="PLAN", help="The planned legs: TOML, CSV, GPX or GeoJSON.", show_default=False
    ),
]
TrackFile = Annotated[
    Path,
    typer.Argument(metavar="TRACK", help="The recorded walk: GPX.", show_default=False),
]
LogFile = Annotated[
    Path | None,
    typer.Option(
        "--log", metavar="LOG", help="The walker's own log of azimuths, paces, times: CSV."
    ),
]
CardFile = Annotated[
    Path | None,
    typer.Option(
        "--card",
        metavar="CARD",
        help="The plan as the walker wrote it, in any form: says which step went wrong.",
    ),
]
OutFolder = Annotated[
    Path | None,
    typer.Option(
        "--out", metavar="DIR", help="Where the results go. Left out: a folder named after TRACK."
    ),
]
DemoFolder = Annotated[
    Path,
    typer.Option("--out", metavar="DIR", help="Where course, walk and debrief go."),
]
Only = Annotated[
    list[str] | None,
    typer.Option(
        "--only",
        metavar="|".join(REPORTS),
        parser=_report,
        help="Write this report and no other; give it again for a second one.",
    ),
]
AsJson = Annotated[
    bool, typer.Option("--json", help="Print a document for programs in place of text.")
]
GuideTopic = Annotated[
    str | None,
    typer.Argument(metavar="[TOPIC]", help="A page of the guide, or a cause.", show_default=False),
]
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
    ),
]
PacesPer100m = Annotated[
    float | None,
    typer.Option("--paces-per-100m", metavar="PACES", help="In the pace that the walker counts."),
]
ArrivalRadius = Annotated[
    float | None,
    typer.Option("--arrival-radius", metavar="METRES", help="Nearer than this is arrived."),
]
Route = Annotated[
    str | None,
    typer.Option(
        "--route", metavar="ROUTE", help="Name or number of the route in a GPX plan with several."
    ),
]
From = Annotated[
    list[str] | None,
    typer.Option(
        "--from",
        metavar="NAME=TIME",
        parser=_pin,
        help="Leg NAME was left for at TIME, a clock time of that day in UTC (09:15:30) or ISO "
        "8601; the rest is matched around it. Give it again for another leg.",
    ),
]
Claim = Annotated[
    list[str] | None,
    typer.Option(
        "--claim",
        metavar="NAME=TIME",
        parser=_pin,
        help="The end of leg NAME was claimed at TIME; else as --from.",
    ),
]
Ground = Annotated[
    Path | None,
    typer.Option(
        "--ground",
        metavar="FILE",
        help="A GeoTIFF to lie under the map: a picture, or elevation, which is shaded.",
    ),
]
Pdf = Annotated[bool, typer.Option("--pdf", help="Write debrief.pdf too, for paper.")]
OverlayScale = Annotated[
    str | None,
    typer.Option(
        "--overlay",
        metavar="|".join(str(scale) for scale in SCALES),
        help="Write overlay.pdf too: plan and walk at 1 to this, to be laid on the map.",
        parser=_scale,
    ),
]
PaperKind = Annotated[
    str,
    typer.Option("--paper", metavar="|".join(PAPERS), help="What paper is.", parser=_paper),
]
Pictures = Annotated[
    bool, typer.Option("--pictures", help="Write the pictures alone too, as SVG and PNG.")
]
Gpx = Annotated[
    bool,
    typer.Option("--gpx", help="Write debrief.gpx too: the plan, the portions, the claims."),
]
Private = Annotated[
    bool,
    typer.Option(
        "--private", help="Leave out names and the way there and back; count times from the start."
    ),
]
Traceback = Annotated[
    bool,
    typer.Option("--traceback", help="If the program fails, say where, for its maintainers."),
]
