"""One line of text for a terminal, whatever stands in the names that a file gives."""

from __future__ import annotations


def printable(line: str) -> str:
    """Put a space in place of control characters, which a name in a file may hide."""
    return "".join(letter if letter.isprintable() else " " for letter in line)
