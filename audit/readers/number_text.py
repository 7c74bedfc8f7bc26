"""Every way in which a written number can be meant: point or comma, with or without thousands."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

_GROUPED = r"[1-9]\d{{0,2}}(?:{mark}\d{{3}})+"
_COMMA, _POINT, _SPACE = (
    _GROUPED.format(mark=","),
    _GROUPED.format(mark=r"\."),
    (_GROUPED.format(mark=" ")),
)
_FORMS = tuple(
    (re.compile(rf"([+-]?)({pattern})", re.ASCII), decimal, group)
    for pattern, decimal, group in (
        (r"\d+", "", ""),
        (r"\d+\.\d*|\.\d+", ".", ""),
        (r"\d+,\d+", ",", ""),
        (_COMMA, "", ","),
        (_COMMA + r"\.\d+", ".", ","),
        (_POINT, "", "."),
        (_POINT + r",\d+", ",", "."),
        (_SPACE, "", " "),
        (_SPACE + r"\.\d+", ".", " "),
        (_SPACE + r",\d+", ",", " "),
    )
)


@dataclass(frozen=True, slots=True, kw_only=True)
class NumberReading:
    """One value that a written number can have.

    ``decimal_mark`` and ``group_mark`` say which sign was taken as what: "", "." ","
    or, between thousands, " ".
    """

    value: float
    decimal_mark: str
    group_mark: str

    def agrees_with(self, other: NumberReading) -> bool:
        """Tell whether one hand would have written both numbers this way."""
        decimals = {self.decimal_mark, other.decimal_mark} - {""}
        groups = {self.group_mark, other.group_mark} - {""}
        if len(decimals) > 1 or len(groups) > 1 or decimals & groups:
            return False
        # Who groups one number groups every number that is long enough.
        return not groups or all(n.group_mark or abs(n.value) < 1000.0 for n in (self, other))


def number_readings(text: str) -> tuple[NumberReading, ...]:
    """Give all readings of a number, such as 1.25 and 1250 for "1,250"; empty for no number."""
    text = text.replace("'", " ").strip()
    readings = []
    for form, decimal, group in _FORMS:
        found = form.fullmatch(text)
        if not found:
            continue
        digits = found[2].replace(group, "") if group else found[2]
        value = float(found[1] + (digits.replace(decimal, ".") if decimal else digits))
        if math.isfinite(value):
            readings.append(NumberReading(value=value, decimal_mark=decimal, group_mark=group))
    return tuple(readings)
