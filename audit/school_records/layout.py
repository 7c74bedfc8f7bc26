"""The layout of the tables: made where there is none, brought up to date, or refused."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import sqlalchemy as sql

from audit.school_records.address import refuse_records, sqlite_file
from audit.school_records.tables import LAYOUT_TABLE

if TYPE_CHECKING:
    from alembic.config import Config

_LOCK = 7_262_094_481
"""Of PostgreSQL's advisory locks, the one under which the layout is made; chosen at random."""
_OLDER = (
    "is laid out for an older version",
    "Run leg-audit debrief or grade with --records once, which brings the records up to date.",
)


def make_layout(connection: sql.Connection) -> None:
    """Bring the tables to this program's layout, within the transaction of the connection.

    Raises
    ------
    InputRefusedError
        Where a newer version laid them out, or the file is that of another program.
    """
    if connection.dialect.name == "postgresql":
        # Held until the transaction ends: of writers that come at once, one makes the tables.
        connection.execute(sql.select(sql.func.pg_advisory_xact_lock(_LOCK)))
    found = _found(connection)
    _refuse_what_is_not_ours(connection, found)
    if found != newest():
        _migrate(connection)


def check_layout(connection: sql.Connection) -> None:
    """Refuse records that cannot be read as they are laid out.

    Raises
    ------
    InputRefusedError
        Where there are none, or they are of another layout.
    """
    found = _found(connection)
    _refuse_what_is_not_ours(connection, found)
    if found is None:
        rule = "holds no records yet"
        remedy = "Keep an attempt first: leg-audit debrief or grade with --records."
        raise refuse_records(connection.engine.url, rule, remedy)
    if found != newest():
        raise refuse_records(connection.engine.url, *_OLDER)


def newest() -> str:
    """Give the number of the last migration that this program knows."""
    return known()[-1]


def known() -> tuple[str, ...]:
    """Give the numbers of all migrations, the first one first."""
    from alembic.script import ScriptDirectory  # noqa: PLC0415 (slow to import)

    revisions = ScriptDirectory.from_config(_config()).walk_revisions()
    return tuple(one.revision for one in revisions)[::-1]


def _found(connection: sql.Connection) -> str | None:
    """Give the number of the layout that is there; None where there is none."""
    if not sql.inspect(connection).has_table(LAYOUT_TABLE):
        return None
    table = sql.table(LAYOUT_TABLE, sql.column("version_num", sql.String))
    number: str | None = connection.execute(sql.select(table.c.version_num)).scalar()
    return number


def _refuse_what_is_not_ours(connection: sql.Connection, found: str | None) -> None:
    url = connection.engine.url
    if found is not None and found not in known():
        rule = f"was laid out by a newer version of leg-audit (layout {found})"
        remedy = f"Update leg-audit; this one knows layouts up to {newest()}."
        raise refuse_records(url, rule, remedy)
    # A database server may hold the tables of others beside ours; a file is of one program.
    if found is None and sqlite_file(url) and sql.inspect(connection).get_table_names():
        rule = "is the database of another program"
        raise refuse_records(url, rule, "Name a file of its own for the records.")


def _migrate(connection: sql.Connection) -> None:
    from alembic import command  # noqa: PLC0415 (slow to import)

    config = _config()
    config.attributes["connection"] = connection
    command.upgrade(config, "head")


def _config() -> Config:
    from alembic.config import Config  # noqa: PLC0415

    config = Config()
    folder = Path(__file__).with_name("migrations")
    config.set_main_option("script_location", str(folder).replace("%", "%%"))
    return config
