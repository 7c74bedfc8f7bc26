"""The one settings file of words: language, terms and units, in TOML."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from audit.readers.file_bytes import decoded_text, file_bytes
from audit.readers.problem_list import ProblemList
from audit.readers.toml_text import toml_document
from audit.settings import Settings
from audit.words.in_other_units import ANGLE_UNITS, LENGTH_UNITS, PACE_UNITS, Units
from audit.words.spoken_words import LANGUAGES, Words, choices_of_terms

_KEYS = ("language", "units", "terms")
_UNITS: dict[str, tuple[str, ...]] = {
    "angle": ANGLE_UNITS,
    "length": LENGTH_UNITS,
    "paces": PACE_UNITS,
    "paces_counted": PACE_UNITS,
}


def read_words(path: str | Path, *, settings: Settings | None = None) -> Words:
    """Give the words that a file chooses; what it leaves out stays as it is.

    Raises
    ------
    InputRefusedError
        With every problem of the file.
    """
    path = Path(path)
    limits = (settings or Settings()).reading
    problems = ProblemList(file=path.name, limits=limits)
    document = toml_document(
        decoded_text(file_bytes(path, "the words", limits), problems), problems
    )
    for key in document:
        if key not in _KEYS:
            problems.unknown("", "setting of words", key, _KEYS)
    language = "en"
    if "language" in document:
        language = _one_of(document["language"], "language", LANGUAGES, problems) or "en"
    known = next(one for one in LANGUAGES if one == language)
    units = _chosen(document, "units", _UNITS, problems)
    terms = _chosen(document, "terms", choices_of_terms(known), problems)
    if "paces_counted" in units and "paces" not in units:
        remedy = 'Give paces too: "single" or "double".'
        problems.add("units, paces_counted", None, "says nothing without paces", remedy)
    problems.stop_if_any()
    return Words(language=known, units=Units(**units), terms=terms)  # type: ignore[arg-type]


def _chosen(
    document: Mapping[str, Any],
    table: str,
    known: Mapping[str, tuple[str, ...] | list[str]],
    problems: ProblemList,
) -> dict[str, str]:
    """Give what a table chooses, each of it one of a few words."""
    stated = document.get(table, {})
    if not isinstance(stated, dict):
        problems.add(table, stated, "is not a table", f"Write [{table}] on a line of its own.")
        return {}
    chosen = {}
    for key, value in stated.items():
        if key not in known:
            problems.unknown(table, f"setting of {table}", key, tuple(known))
            continue
        word = _one_of(value, f"{table}, {key}", known[key], problems)
        if word is not None:
            chosen[key] = word
    return chosen


def _one_of(
    value: object, place: str, known: tuple[str, ...] | list[str], problems: ProblemList
) -> str | None:
    if isinstance(value, str) and value.strip().lower() in known:
        return value.strip().lower()
    remedy = f"Choose from {', '.join(known)}."
    if known is LENGTH_UNITS:
        remedy += " Legs and misses are told in whole ones of these, however long they are."
    problems.add(place, value, "is not known here", remedy)
    return None
