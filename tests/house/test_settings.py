"""Every threshold is read somewhere, and says what it is and where it is from."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2] / "audit"
SETTINGS = sorted((ROOT / "settings").glob("*.py"))


def tables() -> Iterator[tuple[list[str], ast.ClassDef]]:
    """The lines of the file and the class, for each of the settings but the one that holds all."""
    for path in SETTINGS:
        text = path.read_text(encoding="utf-8")
        for node in ast.parse(text).body:
            if isinstance(node, ast.ClassDef) and node.name != "Settings":
                yield text.splitlines(), node


def fields(table: ast.ClassDef) -> Iterator[ast.AnnAssign]:
    return (one for one in table.body if isinstance(one, ast.AnnAssign))


def test_every_threshold_is_read_somewhere():
    """Bug: three thresholds of the diagnosis were read by nobody, and could be changed in vain."""
    read = {
        node.attr
        for path in ROOT.rglob("*.py")
        if path not in SETTINGS
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Attribute)
    }
    unread = [f"{table.name}.{one.target.id}" for _, table in tables() for one in fields(table)
              if one.target.id not in read]  # fmt: skip
    assert unread == []


def test_every_threshold_has_words():
    """Bug: costs of the matching stood without a word; words may be for a group of lines."""
    wordless = []
    for lines, table in tables():
        waiting: list[str] = []
        for node in table.body:
            if not isinstance(node, ast.AnnAssign):
                waiting = []
                continue
            above = lines[node.lineno - 2].strip()
            if not above or above.startswith("#"):
                wordless += waiting
                waiting = []
            waiting.append(f"{table.name}.{node.target.id}")
        wordless += waiting
    assert wordless == []


CHOSEN = {
    "audit/classroom/punches_of.py: _NAMES_TOLD",  # how many are listed in a sentence
    "audit/leg_card/told_numbers.py: _MOST_ONE_BY_ONE",
    "audit/matching/broad_look.py: _BESIDE_NATS",  # bounds the work, and changes no digit
    "audit/matching/end_looks.py: AROUND_S",  # the learnt trees ask for them
    "audit/matching/end_looks.py: NEAREST_WITHIN_S",
    "audit/matching/other_legs.py: FOUND_WITHIN_CUTS",
    "audit/matching/other_legs.py: NEXT_TO_S",
    "audit/matching/signs.py: _STRAIGHT, _WINDING",  # the learnt curves go by it
    "audit/measurement/places_and_headings.py: _WIDENED",  # of a record, which knows no settings
    "audit/matching/ways.py: _ABREAST_MOST",  # bounds memory, and changes no digit
    "audit/school_records/layout.py: _LOCK",  # any number does
    "audit/words/in_other_units.py: CIRCLE",  # what armies print
}
"""Choices that are no thresholds."""


def test_what_is_chosen_stands_in_the_settings():
    """Bug: ages of maps, weights of praise and limits of files stood beside what used them.

    A constant says of itself that it was chosen. How pictures are drawn is no threshold.
    """
    found = set()
    for path in sorted(ROOT.rglob("*.py")):
        if {"settings", "reports"} & {*path.relative_to(ROOT).parts}:
            continue
        body = ast.parse(path.read_text(encoding="utf-8")).body
        for node, words in pairwise(body):
            if isinstance(node, ast.Assign | ast.AnnAssign) and of_words(words) & SAYS_SO:
                target = node.targets[0] if isinstance(node, ast.Assign) else node.target
                if not holds_number(node):
                    continue
                name = ast.unparse(target).strip("()")
                found.add(f"{path.relative_to(ROOT.parent).as_posix()}: {name}")
    assert found == CHOSEN


SAYS_SO = {"chosen", "practice"}


def holds_number(node: ast.stmt) -> bool:
    """Tell whether a constant is a number, or holds one."""
    return any(
        isinstance(one, ast.Constant) and isinstance(one.value, int | float)
        for one in ast.walk(node)
    )


def of_words(node: ast.stmt) -> set[str]:
    """Give the words of what stands below a constant, where that is its docstring."""
    if not (isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)):
        return set()
    return set(re.findall(r"[a-z]+", str(node.value.value).lower()))


def test_no_cause_is_held_against_a_bare_number():
    """Bug: how small a slip still counts stood in the causes: 4 degrees, 30, 40 and 50 metres."""
    whole = {0, 1, 2, 100, 360}  # a hundred that is lost, the circle
    found = {
        f"{path.stem}: {number.value}"
        for path in sorted((ROOT / "diagnosis" / "causes").glob("*.py"))
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Compare)
        for number in ast.walk(node)
        if isinstance(number, ast.Constant)
        and isinstance(number.value, int | float)
        and number.value not in whole
    }
    assert found == set()
