"""The expressions of charts: the sums and choices of Vega's language that ours use."""

from __future__ import annotations

import math
import operator
import re
from collections.abc import Callable
from functools import lru_cache
from typing import Any, Protocol

from audit.reports.still.beyond import BeyondStillError
from audit.reports.still.expression_functions import CONSTANTS, FUNCTIONS, as_text


class Names(Protocol):
    """What the names of an expression stand for."""

    def signal(self, name: str) -> Any:  # noqa: ANN401 (whatever a chart holds)
        """Give the value of a signal."""

    def domain(self, scale: str) -> tuple[float, float]:
        """Give what a scale shows."""


Row = dict[str, Any]
Meaning = Callable[[Names, Row], Any]

_NUMBER = re.compile(r"\s*(\d+\.?\d*(?:e[+-]?\d+)?)")
_STRING = re.compile(r"""\s*("[^"\\]*"|'[^'\\]*')""")
_NAME = re.compile(r"\s*([A-Za-z_]\w*)")
_PATTERN = re.compile(r"\s*/((?:\[[^\]]*\]|[^/\\])+)/g")
_SIGN = re.compile(r"\s*(===|!==|<=|>=|&&|\|\||[-+*/%()\[\]?:<>!,.])")
_BINDS = {"||": 1, "&&": 2, "===": 3, "!==": 3, "<": 4, "<=": 4, ">": 4, ">=": 4,
          "+": 5, "-": 5, "*": 6, "/": 6, "%": 6}  # fmt: skip


def _plus(left: Any, right: Any) -> Any:  # noqa: ANN401 (numbers or words)
    if isinstance(left, str) or isinstance(right, str):
        return as_text(left) + as_text(right)
    return left + right


_OPERATORS: dict[str, Callable[[Any, Any], Any]] = {
    "===": operator.eq, "!==": operator.ne, "<": operator.lt, "<=": operator.le,
    ">": operator.gt, ">=": operator.ge, "+": _plus, "-": operator.sub,
    "*": operator.mul, "/": operator.truediv, "%": math.fmod,
}  # fmt: skip


@lru_cache(maxsize=512)
def meaning(expression: str) -> Meaning:
    """Give what an expression says, as a function of the signals and of one row.

    Raises
    ------
    BeyondStillError
        Where it says more than our charts do.
    """
    return _Reader(expression).whole()


class _Reader:
    def __init__(self, text: str) -> None:
        self.text, self.place = text, 0

    def whole(self) -> Meaning:
        read = self.choice()
        if self.text[self.place :].strip():
            raise BeyondStillError(self.text)
        return read

    def choice(self) -> Meaning:
        asked = self.joined(1)
        if not self.take("?"):
            return asked
        yes = self.choice()
        self.expect(":")
        no = self.choice()
        return lambda names, row: yes(names, row) if asked(names, row) else no(names, row)

    def joined(self, least: int) -> Meaning:
        left = self.single()
        while True:
            found = _SIGN.match(self.text, self.place)
            sign = found.group(1) if found else ""
            if not found or _BINDS.get(sign, 0) < least:
                return left
            self.place = found.end()
            left = _both(sign, left, self.joined(_BINDS[sign] + 1))

    def single(self) -> Meaning:
        if self.take("-"):
            negated = self.single()
            return lambda names, row: -negated(names, row)
        if self.take("+"):
            return self.single()
        read = self.plain()
        while True:
            if self.take("."):
                read = _part(read, self.match(_NAME))
            elif self.take("["):
                read = _item(read, self.choice())
                self.expect("]")
            else:
                return read

    def plain(self) -> Meaning:
        if self.take("("):
            inner = self.choice()
            self.expect(")")
            return inner
        if (number := self.match(_NUMBER)) is not None:
            return _always(float(number) if re.search(r"[.e]", number) else int(number))
        if (string := self.match(_STRING)) is not None:
            return _always(string[1:-1])
        if (pattern := self.match(_PATTERN)) is not None:
            return _always(re.compile(pattern))
        name = self.match(_NAME)
        if name is None:
            raise BeyondStillError(self.text)
        return self.called(name) if self.take("(") else _named(name)

    def called(self, name: str) -> Meaning:
        given = []
        while not self.take(")"):
            given.append(self.choice())
            self.take(",")
        if name == "domain":
            return lambda names, row: names.domain(given[0](names, row))
        if name not in FUNCTIONS:
            raise BeyondStillError(self.text)
        function = FUNCTIONS[name]
        return lambda names, row: function(*(one(names, row) for one in given))

    def take(self, sign: str) -> bool:
        found = _SIGN.match(self.text, self.place)
        if found is None or found.group(1) != sign:
            return False
        self.place = found.end()
        return True

    def expect(self, sign: str) -> None:
        if not self.take(sign):
            raise BeyondStillError(self.text)

    def match(self, pattern: re.Pattern[str]) -> str | None:
        found = pattern.match(self.text, self.place)
        if found is None:
            return None
        self.place = found.end()
        return found.group(1)


def _both(sign: str, left: Meaning, right: Meaning) -> Meaning:
    if sign == "&&":
        return lambda names, row: left(names, row) and right(names, row)
    if sign == "||":
        return lambda names, row: left(names, row) or right(names, row)
    worked = _OPERATORS[sign]
    return lambda names, row: worked(left(names, row), right(names, row))


def _always(value: object) -> Meaning:
    return lambda _names, _row: value


def _named(name: str) -> Meaning:
    if name == "datum":
        return lambda _names, row: row
    if name in CONSTANTS:
        return _always(CONSTANTS[name])
    return lambda names, _row: names.signal(name)


def _part(whole: Meaning, name: str | None) -> Meaning:
    return lambda names, row: whole(names, row).get(name)


def _item(whole: Meaning, place: Meaning) -> Meaning:
    def item(names: Names, row: Row) -> Any:  # noqa: ANN401
        among, at = whole(names, row), place(names, row)
        return among.get(at) if isinstance(among, dict) else among[at]

    return item
