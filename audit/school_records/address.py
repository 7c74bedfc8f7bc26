"""Where the records lie: a file, or the URL of a database; nothing else, said in a sentence."""

from __future__ import annotations

from pathlib import Path

import sqlalchemy as sql
from sqlalchemy.exc import ArgumentError

from audit.errors import InputRefusedError, refuse

_OPTION = "--records"
_FORMS = "Give the name of a file (SQLite), sqlite:///FILE, or postgresql://USER@HOST/DATABASE."
_DRIVERS = {
    "sqlite": "sqlite+pysqlite",
    "postgresql": "postgresql+psycopg",
    "postgres": "postgresql+psycopg",
}


def read_address(text: str) -> sql.URL:
    """Give the URL of a database; a text without "://" is the name of a SQLite file.

    Raises
    ------
    InputRefusedError
        Where it is no URL, or that of another kind of database.
    """
    if not text.strip():
        raise refuse(_OPTION, "", '""', "names no file", _FORMS)
    if "://" not in text:
        return sql.URL.create("sqlite+pysqlite", database=text)
    try:
        url = sql.make_url(text)
    except (ArgumentError, ValueError) as problem:
        raise refuse(_OPTION, "", None, "is not the URL of a database", _FORMS) from problem
    kind = url.drivername.partition("+")[0]
    if kind not in _DRIVERS:
        rule = "is a kind of database that the records are not kept in"
        raise refuse(_OPTION, "", kind, rule, _FORMS)
    if kind == "sqlite" and not url.database:
        raise refuse(_OPTION, "", "sqlite://", "names no file", _FORMS)
    return url.set(drivername=_DRIVERS[kind])


def shown(url: sql.URL) -> str:
    """Give the address as it may be shown: without a password."""
    if sqlite_file(url) is not None:
        return str(url.database)
    return url.set(drivername="postgresql").render_as_string(hide_password=True)


def sqlite_file(url: sql.URL) -> Path | None:
    """Give the file of a SQLite database; None for a server."""
    is_file = url.get_backend_name() == "sqlite"
    return Path(str(url.database)) if is_file else None


def refuse_records(url: sql.URL, rule: str, remedy: str) -> InputRefusedError:
    """Give the refusal of records, whose password is not shown."""
    return refuse(shown(url), "", None, rule, remedy)
