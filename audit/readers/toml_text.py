"""A TOML text as tables, with the place of what is wrong in it."""

from __future__ import annotations

import re
import tomllib
from typing import Any

from audit.readers.problem_list import ProblemList

_MOST_DOTS = 100
_WHERE = re.compile(r" \(at (?:line (\d+), column \d+|end of document)\)$")


def toml_document(text: str, problems: ProblemList) -> dict[str, Any]:
    """Give the tables of a text.

    Raises
    ------
    InputRefusedError
        Where it is not TOML.
    """
    # The parser takes time with the square of a dotted key: 95 s for one of 100 kB.
    for number, written in enumerate(text.splitlines(), start=1):
        if written.count(".") > _MOST_DOTS:
            rule = f"holds more than {_MOST_DOTS} full stops"
            problems.stop(f"line {number}", None, rule, "Cut it into several lines.")
    try:
        # TOML knows no lone carriage return; old editors end lines with it.
        return tomllib.loads(text.replace("\r\n", "\n").replace("\r", "\n"))
    except RecursionError:
        problems.stop("", None, "is nested too deeply", "Keep to the tables of a plan.")
    except ValueError as error:
        found = _WHERE.search(str(error))
        line = found[1] if found else None
        reason = _WHERE.sub("", str(error))
        remedy = "Text stands in quotation marks; numbers take a decimal point."
        problems.stop(f"line {line}" if line else "", None, f"is not TOML: {reason}", remedy)
