"""Whether a known weakness is published of a library, where the package index offers that.

    PYTHONPATH=.:tests python tests/dependencies/known_weaknesses.py

Asks, by pip-audit, about what is installed here and about the lower bounds of pyproject.toml.
Without a network, or with an index that does not tell, it says "not checked" and ends well. It
ends with status 1 where a library that users need has a weakness that a later version mends.
"""

from __future__ import annotations

import json
import subprocess
import sys
import tempfile
from dataclasses import dataclass
from importlib.metadata import distributions
from pathlib import Path
from typing import Any

from dependencies.oldest_versions import oldest, requirements

MOST_S = 120


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """What an index tells of a list of libraries."""

    checked: int = 0
    not_checked: int = 0
    weak: tuple[str, ...] = ()
    to_mend: tuple[str, ...] = ()
    why: str = ""


def ask(held: list[str]) -> Told:
    """Ask about libraries as "name==version"."""
    with tempfile.TemporaryDirectory() as passing:
        file = Path(passing) / "held.txt"
        file.write_text("\n".join(held), encoding="utf-8")
        command = [sys.executable, "-m", "pip_audit", "--no-deps", "--disable-pip", "--format",
                   "json", "--progress-spinner", "off", "--timeout", "10",
                   "--requirement", str(file)]  # fmt: skip
        try:
            done = subprocess.run(
                command, capture_output=True, text=True, check=False, timeout=MOST_S
            )
        except subprocess.TimeoutExpired:
            return Told(not_checked=len(held), why="no answer in time")
    try:
        document = json.loads(done.stdout)
    except ValueError:
        said = done.stderr.strip().splitlines() or ["pip-audit said nothing"]
        return Told(not_checked=len(held), why=said[-1][:200])
    return read_answer(document, {one.name.lower() for one in requirements()})


def read_answer(document: dict[str, Any], needed: set[str]) -> Told:
    """Read the document of pip-audit; what users need and could be mended is to mend."""
    checked = not_checked = 0
    weak: list[str] = []
    to_mend: list[str] = []
    for library in document["dependencies"]:
        if "skip_reason" in library:
            not_checked += 1
            continue
        checked += 1
        for weakness in library["vulns"]:
            mended = ", ".join(weakness["fix_versions"])
            told = f"{library['name']} {library['version']}: {weakness['id']}"
            weak.append(f"{told}, mended in {mended}" if mended else f"{told}, not mended yet")
            if mended and library["name"].lower() in needed:
                to_mend.append(library["name"])
    why = "the index tells nothing of them" if not_checked else ""
    return Told(
        checked=checked, not_checked=not_checked, weak=tuple(weak), to_mend=tuple(to_mend), why=why
    )


def main() -> None:
    """Ask about both ends, and say what is known."""
    here = sorted(
        {f"{one.name}=={one.version}" for one in distributions() if one.name != "leg-audit"}
    )
    bounds = [oldest(one) for one in requirements()]
    to_mend: list[str] = []
    for what, held in (("installed here", here), ("the lower bounds", bounds)):
        told = ask(held)
        print(f"Known weaknesses of {what}: {len(told.weak)} of {told.checked} libraries checked")
        print("".join(f"  {line}\n" for line in told.weak), end="")
        if told.not_checked:
            print(f"  not checked: {told.not_checked} ({told.why})")
        to_mend += told.to_mend
    if to_mend:
        sys.exit(f"Raise, or hold at a mended version: {', '.join(to_mend)}.")


if __name__ == "__main__":
    main()
