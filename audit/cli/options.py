"""The arguments and options of the commands, each declared once."""

from __future__ import annotations

import math
from collections.abc import Callable
from pathlib import Path
from typing import Annotated

import typer

REPORTS = ("json", "csv", "geojson", "html")
PAPERS = ("a4", "letter")
CARD_PAPERS = ("a6", "a5", "a4", "letter")
SCALES = (25_000, 50_000)


def _reports(given: list[str] | None) -> list[str]:
    """Give the reports that are named, one by one or with commas between them."""
    names = [word.strip().lower() for text in given or () for word in text.split(",")]
    for name in names:
        if name not in REPORTS:
            message = (
                f'there is no report "{name}"; choose from {", ".join(REPORTS)}, '
                f"and write several with commas: --only json,csv"
            )
            raise typer.BadParameter(message)
    return names


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
    return _one_of(word, "paper", PAPERS)


def _card_paper(word: str) -> str:
    """Give the paper of a card that a word names."""
    return _one_of(word, "paper", CARD_PAPERS)


def _pace(word: str) -> str:
    """Give the pace that a word names."""
    return _one_of(word, "pace", ("single", "double"))


def place(text: str | Path) -> Path:
    """Give where results go; an empty name would be the folder that one happens to be in."""
    if not str(text).strip():
        message = 'is empty; write where the results go, "." for the folder you are in'
        raise typer.BadParameter(message)
    return Path(text)


_DECIMALS = 'write it with a decimal point and without a unit, like "7.5"'


def number(
    low: float = -math.inf, high: float = math.inf, remedy: str = _DECIMALS
) -> Callable[[str], float]:
    """Give what reads the number of an option, between two limits, and says what to write."""

    def read(text: str) -> float:
        try:
            value = float(text)
        except ValueError:
            message = f'"{text}" is no number; {remedy}'
            raise typer.BadParameter(message) from None
        limited = math.isfinite(low) or math.isfinite(high)
        if limited and not low <= value <= high:
            limits = f"{low:g} to {high:g}" if math.isfinite(high) else f"{low:g} and more"
            message = f"{value:g} is out of range ({limits})"
            raise typer.BadParameter(message)
        return value

    return read


def angle(remedy: str) -> Callable[[str], float]:
    """Give what reads an angle of an option, in degrees or with its minutes and side."""
    degrees = number(remedy=remedy)

    def read(text: str) -> float:
        from audit.readers.degrees_text import written_angle  # noqa: PLC0415 (help stays quick)

        parted = written_angle(text)
        return degrees(text) if parted is None else parted

    return read


def _one_of(word: str, what: str, known: tuple[str, ...]) -> str:
    name = word.strip().lower()
    if name not in known:
        message = f'there is no {what} "{word}"; choose from {", ".join(known)}'
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
        "--out",
        metavar="DIR",
        help="Where the results go. Left out: a folder named after TRACK.",
        parser=place,
    ),
]
DemoFolder = Annotated[
    Path,
    typer.Option("--out", metavar="DIR", help="Where course, walk and debrief go.", parser=place),
]
Only = Annotated[
    list[str] | None,
    typer.Option(
        "--only",
        metavar="|".join(REPORTS),
        callback=_reports,
        help="Write this report and no other; of several: --only json,csv.",
    ),
]
AsJson = Annotated[
    bool, typer.Option("--json", help="Print a document for programs in place of text.")
]
GuideTopic = Annotated[
    str | None,
    typer.Argument(metavar="[TOPIC]", help="A page of the guide, or a cause.", show_default=False),
]
Corridor = Annotated[
    float | None,
    typer.Option(
        "--corridor",
        metavar="METRES",
        help="Either side of the planned line; tells how much of the way lay within. Default 25.",
        parser=number(1.0, 1000.0),
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
    str | None,
    typer.Option(
        "--paper",
        metavar="|".join(PAPERS),
        help="What paper is, with --pdf or --overlay; a4 where left out.",
        parser=_paper,
    ),
]
Pictures = Annotated[
    bool, typer.Option("--pictures", help="Write the pictures alone too, as SVG and PNG.")
]
WordsFile = Annotated[
    Path | None,
    typer.Option(
        "--words",
        metavar="FILE",
        help="Language, terms and units that people are told things in: TOML.",
    ),
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
SlopeHeights = Annotated[
    Path | None,
    typer.Option(
        "--heights",
        metavar="FILE",
        help="A GeoTIFF of elevation for the ground of the legs and what slopes do to a walk, in "
        "place of the recording's.",
    ),
]
OutFile = Annotated[
    Path | None,
    typer.Option(
        "--out", metavar="FILE", help="Where it goes. Left out: to standard output.", parser=place
    ),
]
CardPaperKind = Annotated[
    str,
    typer.Option(
        "--paper", metavar="|".join(CARD_PAPERS), help="What paper is.", parser=_card_paper
    ),
]
Heights = Annotated[
    Path | None,
    typer.Option(
        "--ground", metavar="FILE", help="A GeoTIFF of elevation, for climb and walking times."
    ),
]
CopyFile = Annotated[
    Path,
    typer.Option("--out", metavar="FILE", help="The copy; its name says the form.", parser=place),
]
Onto = Annotated[
    str | None,
    typer.Option("--onto", metavar="GRID", help="A code such as EPSG:27700: the other map's."),
]
TrackFiles = Annotated[
    list[Path],
    typer.Argument(
        metavar="TRACK...", help="Recordings of walked strips: GPX.", show_default=False
    ),
]
CountedPaces = Annotated[
    list[float] | None,
    typer.Option(
        "--paces", metavar="N", help="Paces counted; again for the next recording.", parser=number()
    ),
]
EachStrip = Annotated[
    bool, typer.Option("--each", help="The one count of --paces holds for each recording.")
]
StripLengthGiven = Annotated[
    float | None,
    typer.Option(
        "--strip",
        metavar="METRES",
        help="Length of each strip, if it was measured.",
        parser=number(),
    ),
]
BezelClick = Annotated[
    float | None,
    typer.Option(
        "--bezel-click",
        metavar="DEGREES",
        help="One click of the bezel; usually 3.",
        parser=number(),
    ),
]
Pace = Annotated[
    str | None,
    typer.Option(
        "--pace",
        metavar="single|double",
        help="Which pace is counted, every step or every second one. Left out: by the count.",
        parser=_pace,
    ),
]
Traceback = Annotated[
    bool,
    typer.Option("--traceback", help="If the program fails, say where, for its maintainers."),
]
