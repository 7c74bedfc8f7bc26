"""The records opened: one engine, transactions that wait for each other, and plain refusals."""

from __future__ import annotations

import secrets
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Any

import sqlalchemy as sql
from sqlalchemy.exc import DBAPIError, OperationalError, SQLAlchemyError
from sqlalchemy.pool import NullPool

from audit.errors import InputRefusedError
from audit.school_records.address import read_address, refuse_records, sqlite_file
from audit.school_records.layout import check_layout, make_layout
from audit.school_records.pseudonym import SALT_BYTES, pseudonym, salt_check, salt_of_secret
from audit.school_records.tables import SALT
from audit.settings import RecordsSettings

_REASONS = {
    "readonly": ("cannot be written", "Make the file and its folder writable, or name another."),
    "not a database": ("is no SQLite database", "Name the file of the records, or a new one."),
    "unable to open": ("cannot be opened", "Name a file in a folder that is there and writable."),
    "locked": ("is held by another program", "Let that one end, then run the same again."),
    "disk": ("cannot be written: the disk is full or fails", "Make room, then run it again."),
    "authentication": ("refuses the user or the password", "Put them right in the URL."),
    "does not exist": ("is not there on that server", "Put user and database right in the URL."),
    "permission denied": ("does not let this user", "Have the user allowed to make tables there."),
}
"""By what the database says: the rule and the remedy."""
_NO_ANSWER = (
    "cannot be reached",
    "See that the server runs and that host and port in the URL are right.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Records:
    """Records that were opened; ``salt`` turns names into pseudonyms."""

    engine: sql.Engine
    salt: bytes

    def pseudonym(self, name: str) -> str:
        """Give the pseudonym of a name in these records."""
        return pseudonym(name, self.salt)

    @contextmanager
    def reading(self) -> Iterator[sql.Connection]:
        """Give a connection that sees one state of the records, whoever writes meanwhile."""
        with _said_plainly(self.engine.url), _one_state(self.engine) as connection:
            yield connection

    @contextmanager
    def writing(self) -> Iterator[sql.Connection]:
        """Give a connection in one transaction: all of it is kept, or nothing."""
        with _said_plainly(self.engine.url), _transaction(self.engine) as connection:
            yield connection


def open_to_write(
    address: str, secret: str | None = None, settings: RecordsSettings | None = None
) -> Records:
    """Open records to write, made and brought up to date where needed.

    ``secret`` is what names are hashed with; without one a salt is kept in the records.

    Raises
    ------
    InputRefusedError
        Where they cannot be reached, written, or read as they are laid out, or are kept
        with another secret.
    """
    engine = _engine(read_address(address), settings or RecordsSettings())
    with _said_plainly(engine.url), _transaction(engine) as connection:
        make_layout(connection)
        _add_salt(connection, secret)
        salt = _salt(connection, secret)
        # A file that cannot be written says so to a writer only: better now than after the walks.
        connection.execute(sql.update(SALT).values(salt_check=SALT.c.salt_check))
    return Records(engine=engine, salt=salt)


def open_to_read(
    address: str, secret: str | None = None, settings: RecordsSettings | None = None
) -> Records:
    """Open records to read; nothing is made or changed.

    Raises
    ------
    InputRefusedError
        As for writing, and where there are no records.
    """
    url = refuse_missing(address)
    engine = _engine(url, settings or RecordsSettings())
    with _said_plainly(engine.url), engine.connect() as connection:
        check_layout(connection)
        salt = _salt(connection, secret)
    return Records(engine=engine, salt=salt)


def refuse_missing(address: str) -> sql.URL:
    """Give the address of records that are there; a server tells that itself.

    Raises
    ------
    InputRefusedError
        Where there is no such file.
    """
    url = read_address(address)
    file = sqlite_file(url)
    if file is not None and not file.exists():
        raise refuse_records(url, "is not there", "Name the file that --records was given before.")
    return url


def _engine(url: sql.URL, settings: RecordsSettings) -> sql.Engine:
    is_file = sqlite_file(url) is not None
    wait: dict[str, Any] = {"connect_timeout": settings.answer_s}
    if is_file:
        # No transaction is begun behind our back: sqlite3 would begin it too late to wait.
        wait = {"timeout": settings.wait_for_others_s, "isolation_level": None}
    try:
        # No connection outlives its use, so that worker processes never share one.
        engine = sql.create_engine(url, connect_args=wait, poolclass=NullPool)
    except ImportError as missing:
        rule = "needs a library that is not installed here"
        remedy = 'Install it: pip install "leg-audit[records]".'
        raise refuse_records(url, rule, remedy) from missing
    if is_file:
        sql.event.listen(engine, "connect", _prepare_file)
    return engine


def _prepare_file(connection: sqlite3.Connection, _: object) -> None:
    connection.execute("PRAGMA foreign_keys = ON")
    connection.execute("PRAGMA secure_delete = ON")  # what is deleted is overwritten too


@contextmanager
def _transaction(engine: sql.Engine) -> Iterator[sql.Connection]:
    """Give a connection in a transaction; on a file, the only one that writes."""
    with engine.connect() as connection, connection.begin():
        if connection.dialect.name == "sqlite":
            connection.exec_driver_sql("BEGIN IMMEDIATE")
        yield connection


@contextmanager
def _one_state(engine: sql.Engine) -> Iterator[sql.Connection]:
    with engine.connect() as connection:
        if connection.dialect.name == "sqlite":
            connection.exec_driver_sql("BEGIN")
        else:
            connection.execution_options(isolation_level="REPEATABLE READ")
        yield connection


def _add_salt(connection: sql.Connection, secret: str | None) -> None:
    """Keep a salt, or what tells the secret, in records that have neither yet."""
    if connection.execute(sql.select(SALT.c.number)).first() is not None:
        return
    salt = salt_of_secret(secret) if secret else secrets.token_bytes(SALT_BYTES)
    row = {"number": 1, "salt": None if secret else salt, "salt_check": salt_check(salt)}
    connection.execute(sql.insert(SALT), row)


def _salt(connection: sql.Connection, secret: str | None) -> bytes:
    url = connection.engine.url
    row = connection.execute(sql.select(SALT.c.salt, SALT.c.salt_check)).one()
    if row.salt is not None:
        if secret:
            rule = "keeps its own salt, and was begun without a secret"
            raise refuse_records(url, rule, "Leave out --records-secret.")
        return bytes(row.salt)
    if not secret:
        rule = "was begun with a secret that names are hashed with"
        raise refuse_records(url, rule, "Give its file with --records-secret.")
    salt = salt_of_secret(secret)
    if salt_check(salt) != row.salt_check:
        raise refuse_records(url, "was begun with another secret", "Give the file of that one.")
    return salt


@contextmanager
def _said_plainly(url: sql.URL) -> Iterator[None]:
    """Turn what a database says into one sentence."""
    try:
        yield
    except InputRefusedError:
        raise
    except DBAPIError as problem:
        said = " ".join(str(problem.orig).split())
        for words, (rule, remedy) in _REASONS.items():
            if words in said.lower():
                raise refuse_records(url, rule, remedy) from problem
        if isinstance(problem, OperationalError) and sqlite_file(url) is None:
            raise refuse_records(url, *_NO_ANSWER) from problem
        rule = f"cannot be used: {said}"
        raise refuse_records(url, rule, "Put that right, then run it again.") from problem
    except (UnicodeDecodeError, SQLAlchemyError) as problem:
        rule = "is damaged: what it holds cannot be read"
        raise refuse_records(url, rule, "Take the last copy of it that is whole.") from problem
