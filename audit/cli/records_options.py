"""The options of the commands that keep or read a school's records, each declared once."""

from __future__ import annotations

import datetime as dt
from pathlib import Path
from typing import Annotated

import typer

from audit.cli.options import place


def _day(text: str) -> dt.date:
    """Give the day that a text names."""
    try:
        return dt.date.fromisoformat(text.strip())
    except ValueError:
        message = f'"{text}" is no day like 2027-12-31'
        raise typer.BadParameter(message) from None


_ADDRESS_HELP = "The records: a file (SQLite), or the URL of a PostgreSQL database."

RecordsAddress = Annotated[
    str | None,
    typer.Option(
        "--records", metavar="ADDRESS", help=f"Keep the result there too. {_ADDRESS_HELP}"
    ),
]
RecordsToRead = Annotated[
    str, typer.Option("--records", metavar="ADDRESS", help=_ADDRESS_HELP, show_default=False)
]
RecordsSecret = Annotated[
    Path | None,
    typer.Option(
        "--records-secret",
        metavar="FILE",
        help="What names are hashed with; left out: a salt that the records hold.",
    ),
]
KeepUntil = Annotated[
    dt.date | None,
    typer.Option(
        "--keep-until",
        metavar="YYYY-MM-DD",
        parser=_day,
        help="The last day on which the records keep this; then it is deleted.",
    ),
]
Walker = Annotated[
    str | None,
    typer.Option(
        "--walker", metavar="NAME", help="Whose walk it is; the records hold only a pseudonym."
    ),
]
WalkerAsked = Annotated[
    str,
    typer.Argument(
        metavar="WALKER", help="The name that was kept, or the pseudonym.", show_default=False
    ),
]
WalkerToForget = Annotated[
    str | None,
    typer.Option("--walker", metavar="NAME", help="Delete all of this name or pseudonym."),
]
AttemptToForget = Annotated[
    int | None,
    typer.Option(
        "--attempt",
        metavar="NUMBER",
        min=1,
        help="Of --walker, delete this one only: its number as trend shows it.",
    ),
]
Before = Annotated[
    dt.date | None,
    typer.Option(
        "--before", metavar="YYYY-MM-DD", parser=_day, help="Delete what was walked before."
    ),
]
TrendFolder = Annotated[
    Path | None,
    typer.Option(
        "--out", metavar="DIR", help="Write trend.html and trend.json there too.", parser=place
    ),
]
