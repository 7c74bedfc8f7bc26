"""Every threshold is read somewhere, and says what it is and where it is from."""

from __future__ import annotations

import ast
from collections.abc import Iterator
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
