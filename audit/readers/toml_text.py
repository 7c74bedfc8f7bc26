"""A TOML text as tables, with the place of what is wrong in it."""

from __future__ import annotations

import re
import tomllib
from typing import Any

from audit.readers.problem_list import ProblemList

_TEXT_OR_COMMENT = re.compile(r"""#.*|"(?:[^"\\]|\\.)*"?|'[^']*'?""")
_OF_NO_KEY = re.compile(r"[^\w.-]+")
_MOST_BITS = 14_000
_TOO_LONG = "holds a number that is too long"
_WHERE = re.compile(r" \(at (?:line (\d+), column \d+|end of document)\)$")


def toml_document(text: str, problems: ProblemList) -> dict[str, Any]:
    """Give the tables of a text.

    Raises
    ------
    InputRefusedError
        Where it is not TOML.
    """
    # TOML knows no lone carriage return; old editors end lines with it.
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    in_keys = str.count if '"""' in text or "'''" in text else _of_longest_key
    most = problems.limits.most_full_stops
    for number, written in enumerate(text.split("\n"), start=1):
        if in_keys(written, ".") > most:
            rule = f"holds more than {most} full stops"
            problems.stop(f"line {number}", None, rule, "Cut it into several lines.")
    try:
        document = tomllib.loads(text)
    except RecursionError:
        problems.stop("", None, "is nested too deeply", "Keep to the tables of a plan.")
    except tomllib.TOMLDecodeError as error:
        found = _WHERE.search(str(error))
        line = _line(text, found)
        reason = _WHERE.sub("", str(error))
        remedy = "Text stands in quotation marks; numbers take a decimal point."
        problems.stop(f"line {line}" if line else "", None, f"is not TOML: {reason}", remedy)
    except ValueError:
        problems.stop("", None, _TOO_LONG, "Write numbers of a few digits.")
    if _holds_too_long(document):
        problems.stop("", None, _TOO_LONG, "Write numbers of a few digits.")
    return document


def _of_longest_key(line: str, sign: str) -> int:
    """Count a sign in the longest that may be a dotted key: texts and comments are none.

    Only for a line of which no text is left open by the lines before.
    """
    bare = _TEXT_OR_COMMENT.sub(lambda found: "" if found[0][0] == "#" else "k", line)
    return max(key.count(sign) for key in _OF_NO_KEY.split(bare.replace(" ", "").replace("\t", "")))


def _line(text: str, found: re.Match[str] | None) -> int | None:
    """Give the line that the parser names; "the end of the document" is the last one written on."""
    if found is None:
        return None
    return int(found[1]) if found[1] else max(1, len(text.rstrip().splitlines()))


def _holds_too_long(value: object) -> bool:
    """Tell whether a whole number is longer than Python writes in tens, as a hexadecimal may be."""
    if isinstance(value, dict):
        return any(_holds_too_long(one) for one in value.values())
    if isinstance(value, list):
        return any(_holds_too_long(one) for one in value)
    return isinstance(value, int) and value.bit_length() > _MOST_BITS
