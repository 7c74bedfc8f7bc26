"""What the functions of chart expressions do; numbers are written as d3 writes them."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from decimal import ROUND_HALF_UP, Decimal
from typing import Any

from audit.reports.still.beyond import BeyondStillError

CONSTANTS: dict[str, object] = {"PI": math.pi, "LN10": math.log(10.0), "null": None}
_MINUS = "\N{MINUS SIGN}"
_PRECISE = 6
"""Digits after the point of a format that says none."""


def as_text(value: object) -> str:
    """Write a value as it joins words: whole numbers without a point."""
    if isinstance(value, float) and value.is_integer():
        return str(int(value))
    return str(value)


def rounded(value: float) -> int:
    """Round half up, as scripts of pages do."""
    return math.floor(value + 0.5)


def written(value: float, form: str) -> str:
    """Write a number in one of the forms that our charts ask for.

    Raises
    ------
    BeyondStillError
        For another form.
    """
    if form == "02d":
        text = f"{rounded(value):02d}"
    elif form == "~f":
        text = f"{_to_digits(value, _PRECISE):f}".rstrip("0").rstrip(".")
    elif fixed := re.fullmatch(r"0?\d*,?\.(\d+)f", form):
        text = format(_to_digits(value, int(fixed.group(1))), form)
    else:
        raise BeyondStillError(form)
    return text.replace("-", _MINUS)


def _to_digits(value: float, digits: int) -> Decimal:
    """Round a half away from nought."""
    return Decimal(value).quantize(Decimal(1).scaleb(-digits), ROUND_HALF_UP)


def _is_valid(value: object) -> bool:
    return value is not None and not (isinstance(value, float) and math.isnan(value))


def _sequence(start: float, stop: float, step: float) -> list[float]:
    return [start + step * number for number in range(max(0, math.ceil((stop - start) / step)))]


FUNCTIONS: dict[str, Callable[..., Any]] = {
    "abs": abs,
    "ceil": math.ceil,
    "floor": math.floor,
    "format": written,
    "isFinite": math.isfinite,
    "isValid": _is_valid,
    "log": math.log,
    "max": max,
    "min": min,
    "pow": math.pow,
    "replace": lambda text, pattern, new: pattern.sub(new, as_text(text)),
    "round": rounded,
    "sequence": _sequence,
}
