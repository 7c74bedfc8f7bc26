"""Sentences in Project Fluent's open format (.ftl), as far as this project writes it.

Read are messages, terms with attributes, placeables with variables, terms and quoted
text, and choices. Line breaks inside a sentence are spaces. The library that the format
comes with takes longer to start than a page takes to write; a test holds every message
of this reader against it.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

_ENTRY = re.compile(r"^(-?[a-zA-Z][\w-]*) *=", re.MULTILINE)
_ATTRIBUTE = re.compile(r"^ +\.([a-zA-Z][\w-]*) *=", re.MULTILINE)
_TEXT = re.compile(r"[^{}\n]+|\n(?!\s*(?:\*?\[|\}))")
_PLACEABLE = re.compile(
    r"""\{\s*(?:"(?P<text>[^"]*)"|\$(?P<variable>[\w-]+)
    |-(?P<term>[\w-]+)(?:\.(?P<attribute>[\w-]+))?(?:\((?P<arguments>[^)]*)\))?)\s*(?P<choice>->)?""",
    re.VERBOSE,
)
_ARGUMENT = re.compile(r'([\w-]+):\s*"([^"]*)"')
_VARIANT = re.compile(r"\s*(\*?)\[\s*([\w-]+)\s*\]")
_END = re.compile(r"\s*\}")
_SPACES = re.compile(r"\s+")


@dataclass(frozen=True, slots=True, kw_only=True)
class Placeable:
    """Something to put in: quoted text, a variable, or a term with what is asked of it.

    ``variants`` are the patterns to choose from, by what the placeable comes to;
    ``otherwise`` names the one taken where none fits.
    """

    text: str = ""
    variable: str = ""
    term: str = ""
    attribute: str = ""
    arguments: Mapping[str, str] = field(default_factory=dict)
    variants: Mapping[str, Pattern] = field(default_factory=dict)
    otherwise: str = ""


Pattern = tuple[str | Placeable, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """A message or a term (whose name begins with "-"), with its attributes."""

    pattern: Pattern
    attributes: Mapping[str, Pattern] = field(default_factory=dict)


def entries(text: str) -> dict[str, Entry]:
    """Give the entries of a file by name.

    Raises
    ------
    ValueError
        Where the text is not Fluent as it is written here.
    """
    bare = re.sub(r"^#.*$", "", text, flags=re.MULTILINE)
    found = list(_ENTRY.finditer(bare))
    ends = [one.start() for one in found[1:]] + [len(bare)]
    return {
        one.group(1): _entry(bare[one.end() : end]) for one, end in zip(found, ends, strict=True)
    }


def _entry(body: str) -> Entry:
    found = list(_ATTRIBUTE.finditer(body))
    ends = [one.start() for one in found] + [len(body)]
    attributes = {
        one.group(1): _whole(body[one.end() : end])
        for one, end in zip(found, ends[1:], strict=True)
    }
    return Entry(pattern=_whole(body[: ends[0]]), attributes=attributes)


def _whole(text: str) -> Pattern:
    pattern, end = _pattern(text.strip(), 0)
    if end != len(text.strip()):
        message = f"this is not Fluent: {text.strip()[end : end + 40]!r}"
        raise ValueError(message)
    return pattern


def _pattern(text: str, place: int) -> tuple[Pattern, int]:
    """Read up to the end, or up to the next variant or the end of a choice."""
    parts: list[str | Placeable] = []
    while place < len(text):
        plain = _TEXT.match(text, place)
        if plain:
            joined = plain.group()
            parts.append(joined)
            place = plain.end()
        elif text[place] == "{":
            placeable, place = _placeable(text, place)
            parts.append(placeable)
        else:
            break
    return _tidy(parts), place


def _tidy(parts: list[str | Placeable]) -> Pattern:
    """Join the pieces of text, with one space where lines were broken, none at the ends."""
    joined: list[str | Placeable] = []
    for part in parts:
        if isinstance(part, str) and joined and isinstance(joined[-1], str):
            joined[-1] += part
        else:
            joined.append(part)
    spaced = [_SPACES.sub(" ", one) if isinstance(one, str) else one for one in joined]
    if spaced and isinstance(spaced[0], str):
        spaced[0] = spaced[0].lstrip()
    if spaced and isinstance(spaced[-1], str):
        spaced[-1] = spaced[-1].rstrip()
    return tuple(one for one in spaced if one != "")


def _placeable(text: str, place: int) -> tuple[Placeable, int]:
    found = _PLACEABLE.match(text, place)
    if found is None:
        message = f"no such placeable: {text[place : place + 40]!r}"
        raise ValueError(message)
    variants, otherwise, place = (
        _variants(text, found.end()) if found["choice"] else ({}, "", found.end())
    )
    end = _END.match(text, place)
    if end is None:
        message = f"a placeable without an end: {text[found.start() : found.start() + 40]!r}"
        raise ValueError(message)
    made = Placeable(
        text=found["text"] or "",
        variable=found["variable"] or "",
        term=found["term"] or "",
        attribute=found["attribute"] or "",
        arguments=dict(_ARGUMENT.findall(found["arguments"] or "")),
        variants=variants,
        otherwise=otherwise,
    )
    return made, end.end()


def _variants(text: str, place: int) -> tuple[dict[str, Pattern], str, int]:
    variants: dict[str, Pattern] = {}
    otherwise = ""
    while found := _VARIANT.match(text, place):
        variants[found[2]], place = _pattern(text, found.end())
        if found[1]:
            otherwise = found[2]
    if not otherwise:
        message = f"a choice without a usual variant: {text[place - 40 : place]!r}"
        raise ValueError(message)
    return variants, otherwise, place
