"""What a compiled chart says: its signals, scales and rows."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from typing import Any

from audit.reports.still.beyond import BeyondStillError, only
from audit.reports.still.expressions import Row, meaning

Spec = Mapping[str, Any]
Channel = Callable[[Row], Any]
Size = tuple[float, float]
Placing = Callable[[float], float]

_VALID = re.compile(r'isValid\(datum\["(\w+)"\]\) && isFinite\(\+datum\["\1"\]\)')
_NUMBER = re.compile(r'toNumber\(datum\["(\w+)"\]\)')
_SCALE_SAYS = {"name", "type", "domain", "domainRaw", "range", "nice", "zero", "reverse"}


def fields_asked(test: str) -> list[str]:
    """Give the fields that must hold numbers by a test that asks nothing else.

    Raises
    ------
    BeyondStillError
        Where it asks something else too.
    """
    if _VALID.sub("", test).replace("&&", "").strip():
        raise BeyondStillError(test)
    return _VALID.findall(test)


def holds(row: Row, asked: Sequence[str]) -> bool:
    """Tell whether a row has something in each of some fields."""
    return all(row.get(one) is not None for one in asked)


class Scene:
    """One compiled chart: the names in its expressions, its scales and its rows."""

    def __init__(self, vega: Spec) -> None:
        self.vega = vega
        self._signals = {one["name"]: one for one in vega["signals"]}
        self._scales = {one["name"]: one for one in vega.get("scales", ())}
        self._data = {one["name"]: one for one in vega["data"]}
        self._values: dict[str, Any] = {key: vega.get(key) for key in ("width", "height")}
        self._placings: dict[str, Placing] = {}

    def signal(self, name: str) -> Any:  # noqa: ANN401 (whatever a chart holds)
        """Give the value of a signal as it stands before anybody moves the chart."""
        if name not in self._values:
            said = self._signals.get(name)
            if said is None:
                raise BeyondStillError(name)
            value = said.get("value")
            self._values[name] = self.work_out(said["update"]) if "update" in said else value
        return self._values[name]

    def work_out(self, expression: str) -> Any:  # noqa: ANN401
        """Give the value of an expression that asks for no row."""
        return meaning(expression)(self, {})

    def number(self, given: Any) -> Any:  # noqa: ANN401 (a value, or what gives one)
        """Give a value that may be said by an expression."""
        return self.work_out(given["signal"]) if isinstance(given, Mapping) else given

    def domain(self, scale: str) -> tuple[float, float]:
        """Give what a scale shows."""
        low, high = (self.number(one) for one in self._scales[scale]["domain"])
        return low, high

    def placing(self, scale: str) -> Placing:
        """Give the pixels of values on a scale, to the last digit as the library has them."""
        if scale not in self._placings:
            said = self._scales[scale]
            only(said, _SCALE_SAYS, "scale")
            if said["type"] != "linear":
                raise BeyondStillError(said["type"])
            low, high = self.domain(scale)
            first, last = (float(self.number(one)) for one in said["range"])
            if said.get("reverse"):
                first, last = last, first
            if high == low:
                raise BeyondStillError(scale)
            whole = high - low

            def placed(value: float) -> float:
                share = (value - low) / whole
                return first * (1 - share) + last * share

            self._placings[scale] = placed
        return self._placings[scale]

    def rows(self, name: str) -> Sequence[Row]:
        """Give the rows of a data set."""
        said = self._data[name]
        only(said, {"name", "values", "source", "transform", "format"}, "data")
        given: Sequence[Row] = said.get("values") or ()
        if "source" in said:
            given = self.rows(said["source"])
        for step in said.get("transform", ()):
            if step["type"] == "filter":
                asked = fields_asked(step["expr"])
                given = [row for row in given if holds(row, asked)]
            elif step["type"] != "formula" or _NUMBER.sub(r"\1", step["expr"]) != step["as"]:
                raise BeyondStillError(step["type"])  # rows hold numbers from the start
        return given

    def channel(self, said: Any, group: Size) -> Channel:  # noqa: ANN401 (an entry or several)
        """Give a channel as a function of a row."""
        if isinstance(said, list):
            return self._chosen(said, group)
        only(said, {"value", "scale", "field", "signal", "mult"}, "channel")
        read = self._read(said, group)
        times = said.get("mult")
        return read if times is None else lambda row: read(row) * times

    def _read(self, said: Spec, group: Size) -> Channel:
        if "signal" in said:
            found = meaning(said["signal"])
            return lambda row: found(self, row)
        field = said.get("field")
        if isinstance(field, Mapping):
            size = {"width": group[0], "height": group[1]}[field["group"]]
            return lambda _row: size
        if field is None:
            value = said["value"]
            return lambda _row: value
        if "scale" not in said:
            return lambda row: row.get(field)
        placed = self.placing(said["scale"])
        return lambda row: None if row.get(field) is None else placed(row[field])

    def _chosen(self, said: Sequence[Spec], group: Size) -> Channel:
        tests = [meaning(one["test"]) if "test" in one else None for one in said]
        channels = [
            self.channel({key: part for key, part in one.items() if key != "test"}, group)
            for one in said
        ]

        def chosen(row: Row) -> Any:  # noqa: ANN401
            for test, channel in zip(tests, channels, strict=True):
                if test is None or test(self, row):
                    return channel(row)
            return None

        return chosen
