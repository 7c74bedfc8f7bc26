"""A pattern with its variables and terms filled in, and which variables it asks for."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from audit.words.fluent_text import Entry, Pattern, Placeable

Values = Mapping[str, str | int]

_PLURALS: dict[str, Callable[[int], str]] = {
    # Unicode CLDR, plural rules for cardinals: whole numbers, English and German alike.
    "en": lambda count: "one" if count == 1 else "other",
    "de": lambda count: "one" if count == 1 else "other",
}


def filled(pattern: Pattern, values: Values, terms: Mapping[str, Entry], language: str) -> str:
    """Give the sentence.

    Raises
    ------
    KeyError
        Where a variable or a term is missing.
    """
    return "".join(
        part if isinstance(part, str) else _filled(part, values, terms, language)
        for part in pattern
    )


def _filled(one: Placeable, values: Values, terms: Mapping[str, Entry], language: str) -> str:
    value = _value(one, values, terms, language)
    if not one.variants:
        return str(value)
    key = str(value)
    if key not in one.variants and isinstance(value, int):
        key = _PLURALS[language](value)
    return filled(one.variants.get(key, one.variants[one.otherwise]), values, terms, language)


def _value(one: Placeable, values: Values, terms: Mapping[str, Entry], language: str) -> str | int:
    if one.variable:
        return values[one.variable]
    if not one.term:
        return one.text
    entry = terms[f"-{one.term}"]
    pattern = entry.attributes[one.attribute] if one.attribute else entry.pattern
    # A term sees nothing but what is asked of it; without that it takes its usual form.
    return filled(pattern, {"form": "", **one.arguments}, terms, language)


def variables(pattern: Pattern) -> Iterator[str]:
    """Give the variables that a pattern asks for in any of its choices."""
    for part in pattern:
        if isinstance(part, Placeable):
            if part.variable:
                yield part.variable
            for variant in part.variants.values():
                yield from variables(variant)
