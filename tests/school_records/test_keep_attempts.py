"""Records keep each attempt whole and once, whoever writes beside them, and let it go in time."""

from __future__ import annotations

import datetime as dt
import multiprocessing
import sqlite3
from concurrent.futures import ProcessPoolExecutor
from contextlib import closing
from dataclasses import replace

import pytest
import sqlalchemy as sql
from school_records.attempts import attempt, leg, write

from audit.school_records.keep_attempts import (
    attempts_of,
    delete_before,
    delete_overdue,
    delete_walker,
    keep,
)
from audit.school_records.open_records import open_to_read, open_to_write
from audit.school_records.tables import ATTEMPT, CAUSE, LEG

TODAY = dt.date(2026, 6, 1)
SOMEBODY = "walker-00000000000000000000"


def rows(address, table):
    with open_to_read(address).reading() as connection:
        return connection.execute(sql.select(sql.func.count()).select_from(table)).scalar()


def test_what_is_kept_is_read_again_to_the_last_bit(address):
    untold = leg("4", None, heading_sd_deg=None, distance_ratio=1 / 3, causes=(), status="skipped")
    walk = attempt(noise_m=0.1 + 0.2, legs=(*attempt().legs, untold), course="Größe ✓; DROP TABLE")
    records = open_to_write(address)
    assert keep(records, [walk]) == 1
    assert attempts_of(records, SOMEBODY, TODAY) == (walk,)
    assert attempts_of(open_to_read(address), SOMEBODY, TODAY)[0].content_key == walk.content_key


def test_the_same_result_is_kept_once_and_any_other_beside_it(address):
    records = open_to_write(address)
    later = replace(attempt(), version="0.2.0")
    assert keep(records, [attempt(), attempt(), later]) == 2
    assert keep(records, [later, attempt()]) == 0
    assert (rows(address, ATTEMPT), rows(address, LEG), rows(address, CAUSE)) == (2, 6, 12)


def test_many_writers_lose_nothing_and_double_nothing(address):
    # Every attempt is written by three of the eight, who all come to records not yet there.
    numbers = list(range(60))
    shares = [[n for n in numbers if n % 8 in {k, (k + 1) % 8, (k + 5) % 8}] for k in range(8)]
    context = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(8, mp_context=context) as pool:
        kept = [one for of in pool.map(write, [address] * 8, shares) for one in of]
    assert sum(kept) == len(numbers)
    assert (rows(address, ATTEMPT), rows(address, LEG), rows(address, CAUSE)) == (60, 180, 360)
    found = attempts_of(open_to_read(address), SOMEBODY, TODAY)
    assert {one.content_key for one in found} == {attempt(number=n).content_key for n in numbers}
    assert all(len(one.legs) == 3 for one in found)


def test_a_writer_that_dies_in_the_middle_leaves_nothing_of_the_attempt(address):
    records = open_to_write(address)
    broken = replace(attempt(), legs=(leg("1", 1.0), leg("2", 1.0, causes=((None, 0.5),))))
    with pytest.raises(Exception, match="cannot be used"):
        keep(records, [broken])
    assert (rows(address, ATTEMPT), rows(address, LEG)) == (0, 0)


def test_what_is_overdue_is_not_shown_and_then_deleted_with_its_legs(address):
    records = open_to_write(address)
    keep(records, [attempt(number=1)], keep_until=TODAY - dt.timedelta(days=1))
    keep(records, [attempt(number=2)], keep_until=TODAY)
    keep(records, [attempt(number=3)])
    assert len(attempts_of(records, SOMEBODY, TODAY)) == 2
    assert delete_overdue(records, TODAY) == 1
    assert (rows(address, ATTEMPT), rows(address, LEG), rows(address, CAUSE)) == (2, 6, 12)
    assert delete_overdue(records, TODAY) == 0


def test_a_date_given_later_holds_for_what_is_kept_already(address):
    records = open_to_write(address)
    keep(records, [attempt()])
    keep(records, [attempt()], keep_until=TODAY)
    keep(records, [attempt()])
    assert delete_overdue(records, TODAY + dt.timedelta(days=1)) == 1


def test_a_walker_or_a_year_can_be_deleted(address):
    records = open_to_write(address)
    other = "walker-11111111111111111111"
    keep(records, [attempt(number=n) for n in range(3)] + [attempt(other, n) for n in range(3)])
    assert delete_walker(records, other) == 3
    assert attempts_of(records, other, TODAY) == ()
    assert delete_before(records, dt.date(2026, 3, 9)) == 2
    assert len(attempts_of(records, SOMEBODY, TODAY)) == 1


def test_a_walker_before_a_day_is_that_walker_alone(address):
    """Bug: both asked for together deleted all of the walker, and others before the day."""
    records = open_to_write(address)
    other = "walker-11111111111111111111"
    keep(records, [attempt(number=n) for n in range(3)] + [attempt(other, n) for n in range(3)])
    assert delete_before(records, dt.date(2026, 3, 9), other) == 2
    assert len(attempts_of(records, other, TODAY)) == 1
    assert len(attempts_of(records, SOMEBODY, TODAY)) == 3


def test_what_is_deleted_is_no_more_in_the_file(tmp_path):
    file = tmp_path / "school.db"
    records = open_to_write(str(file))
    keep(records, [attempt(course="a course that nobody else has")])
    assert b"a course that nobody else has" in file.read_bytes()
    delete_walker(records, SOMEBODY)
    assert b"a course that nobody else has" not in file.read_bytes()


def test_a_reader_sees_one_state_while_another_writes(tmp_path):
    file = str(tmp_path / "school.db")
    records = open_to_write(file)
    keep(records, [attempt()])
    with records.reading() as connection:
        before = connection.execute(sql.select(ATTEMPT.c.number)).all()
        with closing(sqlite3.connect(file, timeout=0.1)) as other:
            other.execute("DELETE FROM leg_audit_attempt")
            with pytest.raises(sqlite3.OperationalError, match="locked"):
                other.commit()
        assert connection.execute(sql.select(ATTEMPT.c.number)).all() == before
