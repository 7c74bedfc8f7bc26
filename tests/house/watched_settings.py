"""Settings that tell who reads them: those handed in, or a default that nobody was given."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field, fields, is_dataclass
from importlib import import_module
from pathlib import Path
from pkgutil import iter_modules

import pytest

import audit.settings
from audit.settings import Settings

ROOT = Path(audit.__file__).parent


def _tables() -> tuple[type, ...]:
    """Give every table of settings, the one that holds all among them."""
    found = {Settings}
    for module in iter_modules(audit.settings.__path__, "audit.settings."):
        found |= {one for one in vars(import_module(module.name)).values()
                  if isinstance(one, type) and is_dataclass(one)}  # fmt: skip
    return tuple(found)


TABLES = _tables()
_GIVEN = {table: type(table)(f"Given{table.__name__}", (table,), {"__slots__": ()})
          for table in TABLES}  # fmt: skip
"""Settings made from these by `replace`, as matching does, are of these again."""


def given_settings() -> Settings:
    """Give settings with the usual figures, known from those that code makes for itself."""
    return _given(Settings())


def _given(table):
    values = {one.name: getattr(table, one.name) for one in fields(table)}
    return _GIVEN[type(table)](
        **{name: _given(one) if type(one) in _GIVEN else one for name, one in values.items()}
    )


@dataclass
class Reads:
    """What was read: of the settings given, by table and name; of others, by the line as well."""

    given: set[str] = field(default_factory=set)
    defaults: set[str] = field(default_factory=set)


@contextmanager
def watched() -> Iterator[Reads]:
    """Note each figure that the package reads from now on."""
    reads = Reads()
    with pytest.MonkeyPatch.context() as patch:
        for table in TABLES:
            patch.setattr(table, "__getattribute__", _noting(table, reads), raising=False)
        yield reads


def _noting(table: type, reads: Reads):
    names = {one.name for one in fields(table)}

    def get(self, name: str):
        if name in names:
            figure = f"{table.__name__}.{name}"
            if type(self) is _GIVEN[table]:
                reads.given.add(figure)
            elif type(self) is table:
                code = sys._getframe(1).f_code
                if ROOT in (path := Path(code.co_filename)).parents:
                    reads.defaults.add(f"{path.relative_to(ROOT)}, {code.co_name}: {figure}")
        return object.__getattribute__(self, name)

    return get
