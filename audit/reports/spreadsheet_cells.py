"""Texts of people in the cells of spreadsheets: never a formula."""

from __future__ import annotations

_BEGINS_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20")
"""Signs, and their wide forms, that a spreadsheet may take a cell that begins with them for."""


def tame(text: str) -> str:
    """Put an apostrophe before a text that a spreadsheet might take for a formula."""
    bare = text.lstrip(" \u00a0")
    return f"'{text}" if bare.startswith(_BEGINS_FORMULA) else text


def tame_cell(value: object) -> object:
    """Give a cell as it stands, a text tamed, None and absent as nothing."""
    if value is None:
        return ""
    return tame(value) if isinstance(value, str) else value
