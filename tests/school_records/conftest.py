"""Records to keep attempts in: a file, and a database of a real server."""

from __future__ import annotations

import itertools

import pytest
import sqlalchemy as sql
from school_records.servers import server

from audit.school_records.address import read_address

NUMBERS = itertools.count()


@pytest.fixture(scope="session")
def postgres():
    with server() as address:
        yield address


@pytest.fixture(params=["sqlite", "postgresql"])
def address(request, tmp_path):
    """Give the address of records that are not there yet."""
    if request.param == "sqlite":
        return str(tmp_path / "school.db")
    return new_database(request.getfixturevalue("postgres"))


def new_database(postgres):
    name = f"school_{next(NUMBERS)}"
    engine = sql.create_engine(read_address(postgres), isolation_level="AUTOCOMMIT")
    with engine.connect() as connection:
        connection.exec_driver_sql(f"CREATE DATABASE {name}")
    engine.dispose()
    return postgres.replace("/postgres", f"/{name}")
