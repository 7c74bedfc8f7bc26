"""No English sentence for people stands in the code of what speaks to them: all are messages.

Refusals, faults of the program and files for programs stay in plain English.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

import audit

ROOT = Path(audit.__file__).parent
SPEAKING = ("classroom", "coaching", "course_setting", "debriefing", "diagnosis", "forecast", "grading",
            "matching", "measurement", "pacing", "rehearsal", "reports", "school_records")  # fmt: skip
REFUSING = {"refuse", "stop", "add", "InputRefusedError", "OutputRefusedError"}
SENTENCE = re.compile(r"(?:^|\s)[a-z]+(?:,? [a-z]{2,}){2,}")
"""Three words in a row."""
FOR_PROGRAMS = {
    # Written into files that programs read, or refusals from one end to the other.
    "reports/rehearsal_document.py", "reports/rehearsal_gpx.py", "debriefing/pinned_moments.py",
    "debriefing/detail_shape.py", "debriefing/entry_values.py", "classroom/walk_time.py",
    "school_records/address.py", "school_records/layout.py", "school_records/open_records.py",
    "school_records/pseudonym.py",
}  # fmt: skip
NAMES = {
    # Of values in records and documents, and parts of names that a plan is given.
    "too close to call", "halts and straight walking", "number of legs", "order of points",
    "mean chance to end in sight", "end of leg ", "of unknown version", "turn to the point", "turned into paces",
    # Of refusals.
    "is not known in this class", " is new there",
}  # fmt: skip


def texts(tree: ast.AST) -> Iterator[tuple[int, str]]:
    """The strings of a file that are no docstring, no refusal and no error."""
    silent: set[int] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
            silent.add(id(node.value))
        called = node.func if isinstance(node, ast.Call) else None
        name = getattr(called, "attr", getattr(called, "id", ""))
        if isinstance(node, ast.Raise) or name in REFUSING:
            silent |= {id(one) for one in ast.walk(node)}
        if isinstance(node, ast.Assign) and [getattr(one, "id", "") for one in node.targets] in (
            ["message"], ["rule"], ["remedy"],
        ):  # fmt: skip
            silent |= {id(one) for one in ast.walk(node)}
    for node in ast.walk(tree):
        if (
            isinstance(node, ast.Constant)
            and isinstance(node.value, str)
            and id(node) not in silent
        ):
            yield node.lineno, node.value


@pytest.mark.parametrize("package", SPEAKING)
def test_what_is_said_to_people_is_a_message(package):
    found = [
        f"{path.relative_to(ROOT)}:{line}: {text}"
        for path in sorted((ROOT / package).rglob("*.py"))
        if str(path.relative_to(ROOT)) not in FOR_PROGRAMS and "migrations" not in path.parts
        for line, text in texts(ast.parse(path.read_text(encoding="utf-8")))
        if SENTENCE.search(text) and text not in NAMES
    ]
    assert found == []
