"""Attempts kept, read again, and deleted when their time is over."""

from __future__ import annotations

import dataclasses
import datetime as dt
from collections.abc import Iterable, Sequence
from itertools import groupby
from typing import Any

import sqlalchemy as sql
from sqlalchemy.dialects import postgresql, sqlite

from audit.school_records.attempt import Attempt, LegOfAttempt
from audit.school_records.open_records import Records
from audit.school_records.tables import ATTEMPT, CAUSE, LEG

_OF_ATTEMPT = [one.name for one in dataclasses.fields(Attempt) if one.name != "legs"]
_OF_LEG = [one.name for one in dataclasses.fields(LegOfAttempt) if one.name != "causes"]


def keep(records: Records, attempts: Iterable[Attempt], keep_until: dt.date | None = None) -> int:
    """Keep attempts, each whole or not at all, and give how many were new.

    One that is kept already is not doubled, whoever keeps it at the same moment; its date
    of deletion becomes ``keep_until`` where one is given.
    """
    return sum(_keep_one(records, attempt, keep_until) for attempt in attempts)


def _keep_one(records: Records, attempt: Attempt, keep_until: dt.date | None) -> bool:
    key = attempt.content_key
    row = {name: getattr(attempt, name) for name in _OF_ATTEMPT}
    row |= {"content_key": key, "keep_until": keep_until}
    with records.writing() as connection:
        number = connection.execute(_insert_unless_there(connection), row).scalar()
        if number is None:
            if keep_until is not None:
                there = sql.update(ATTEMPT).where(ATTEMPT.c.content_key == key)
                connection.execute(there.values(keep_until=keep_until))
            return False
        legs, causes = _rows_of_legs(attempt, number)
        if legs:
            connection.execute(sql.insert(LEG), legs)
        if causes:
            connection.execute(sql.insert(CAUSE), causes)
    return True


def _insert_unless_there(connection: sql.Connection) -> sql.Executable:
    dialect = postgresql if connection.dialect.name == "postgresql" else sqlite
    insert: Any = dialect.insert(ATTEMPT)
    unless: sql.Executable = insert.on_conflict_do_nothing(
        index_elements=[ATTEMPT.c.content_key]
    ).returning(ATTEMPT.c.number)
    return unless


def _rows_of_legs(attempt: Attempt, number: int) -> tuple[list[dict[str, Any]], ...]:
    legs: list[dict[str, Any]] = []
    causes: list[dict[str, Any]] = []
    for place, leg in enumerate(attempt.legs):
        legs.append({"attempt": number, "place": place} | {n: getattr(leg, n) for n in _OF_LEG})
        causes += [
            {"attempt": number, "leg": place, "place": rank, "cause": name, "probability": chance}
            for rank, (name, chance) in enumerate(leg.causes)
        ]
    return legs, causes


def attempts_of(records: Records, walker: str, today: dt.date) -> tuple[Attempt, ...]:
    """Give the attempts of a pseudonym in the order in which they were kept.

    Those whose date of deletion has passed are not given, even where the records cannot
    be written and still hold them.
    """
    return tuple(attempt for _, attempt in numbered_attempts_of(records, walker, today))


def numbered_attempts_of(
    records: Records, walker: str, today: dt.date
) -> tuple[tuple[int, Attempt], ...]:
    """Give the same, each with its number in the records."""
    due = (ATTEMPT.c.keep_until.is_(None)) | (ATTEMPT.c.keep_until >= today)
    mine = sql.select(ATTEMPT).where(ATTEMPT.c.walker == walker, due).order_by(ATTEMPT.c.number)
    with records.reading() as connection:
        rows = connection.execute(mine).mappings().all()
        numbers = [row["number"] for row in rows]
        legs = _by_attempt(connection, LEG, numbers, LEG.c.place)
        causes = _by_attempt(connection, CAUSE, numbers, CAUSE.c.leg, CAUSE.c.place)
    return tuple(
        (
            int(row["number"]),
            _attempt(row, legs.get(row["number"], []), causes.get(row["number"], [])),
        )
        for row in rows
    )


def _by_attempt(
    connection: sql.Connection, table: sql.Table, numbers: list[int], *order: sql.Column[Any]
) -> dict[int, list[sql.RowMapping]]:
    wanted = sql.select(table).where(table.c.attempt.in_(numbers))
    rows = connection.execute(wanted.order_by(table.c.attempt, *order)).mappings().all()
    return {number: list(of) for number, of in groupby(rows, key=lambda row: int(row["attempt"]))}


def _attempt(
    row: sql.RowMapping, legs: list[sql.RowMapping], causes: list[sql.RowMapping]
) -> Attempt:
    of_leg: dict[int, list[tuple[str, float]]] = {}
    for cause in causes:
        of_leg.setdefault(cause["leg"], []).append((cause["cause"], cause["probability"]))
    return Attempt(
        **{name: row[name] for name in _OF_ATTEMPT},
        legs=tuple(
            LegOfAttempt(
                **{name: leg[name] for name in _OF_LEG},
                causes=tuple(of_leg.get(leg["place"], ())),
            )
            for leg in legs
        ),
    )


def delete_overdue(records: Records, today: dt.date) -> int:
    """Delete the attempts whose date of deletion has passed, and give how many."""
    return _delete(records, ATTEMPT.c.keep_until < today)


def delete_walker(records: Records, walker: str) -> int:
    """Delete everything of one pseudonym, and give how many attempts that was."""
    return _delete(records, ATTEMPT.c.walker == walker)


def delete_numbered(records: Records, numbers: Sequence[int]) -> int:
    """Delete the attempts of these numbers in the records, and give how many there were."""
    return _delete(records, ATTEMPT.c.number.in_(numbers))


def delete_before(records: Records, day: dt.date, walker: str | None = None) -> int:
    """Delete the attempts walked before a day, of one pseudonym or of all; give how many."""
    which = ATTEMPT.c.walked_on < day
    return _delete(records, which if walker is None else which & (ATTEMPT.c.walker == walker))


def _delete(records: Records, which: sql.ColumnElement[bool]) -> int:
    with records.writing() as connection:
        return int(connection.execute(sql.delete(ATTEMPT).where(which)).rowcount)
