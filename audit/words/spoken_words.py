"""A language with the terms and the units of a tradition: what turns messages into sentences."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from importlib.resources import files
from typing import Literal, get_args

from audit.words.figures import Figure
from audit.words.filled_pattern import filled
from audit.words.fluent_text import Entry, Placeable, entries
from audit.words.in_other_units import ANGLE_SIGN, Units

Language = Literal["en", "de"]
LANGUAGES: tuple[Language, ...] = get_args(Language)
_DECIMAL_SIGN: dict[Language, str] = {"en": ".", "de": ","}
_MIL: dict[Language, str] = {"en": "mil", "de": "Strich"}
_TERMS = "terms"


@dataclass(frozen=True, slots=True, kw_only=True)
class Words:
    """How people are spoken to.

    Attributes
    ----------
    language : str
        "en" or "de".
    units : Units
        What figures are shown in.
    terms : mapping
        By the name of a term the word of it that the tradition uses, as in
        {"azimuth": "bearing"}; see `choices_of_terms`.
    """

    language: Language = "en"
    units: Units = field(default_factory=Units)
    terms: Mapping[str, str] = field(default_factory=dict)

    def say(self, ident: str, **values: object) -> str:
        """Give a message with its values filled in.

        Raises
        ------
        KeyError
            Where there is no such message, or a value is missing.
        """
        pattern = _message(self.language, ident).pattern
        shown: dict[str, str | int] = {
            name: value if type(value) is int else self.shown(value)
            for name, value in values.items()
        }
        return filled(pattern, shown, self._chosen_terms(), self.language)

    def shown(self, value: object) -> str:
        """Write one value: a figure in these units, a sentence in these words."""
        if isinstance(value, Figure):
            return value.shown(self)
        if isinstance(value, str) and hasattr(value, "ident"):
            return self.told(value)
        return str(value)

    def told(self, text: str) -> str:
        """Tell a sentence in these words; any other text, as names are, stays as it is."""
        ident = getattr(text, "ident", None)
        if ident is None or self == PLAIN_ENGLISH:
            return str(text)
        return self.say(ident, **text.values)  # type: ignore[attr-defined]

    def decimal(self, number: str) -> str:
        """Write a number with the decimal sign of the language."""
        return number.replace(".", _DECIMAL_SIGN[self.language])

    def angle_sign(self) -> str:
        """Give what stands behind an angle: "°", " mil", " Strich"."""
        return ANGLE_SIGN[self.units.angle].replace("mil", _MIL[self.language])

    def _chosen_terms(self) -> Mapping[str, Entry]:
        chosen = {**self.terms}
        if self.units.paces is not None:
            chosen["pace"] = f"{self.units.paces}-pace"
        return _terms(self.language, tuple(sorted(chosen.items())))


def choices_of_terms(language: Language) -> dict[str, list[str]]:
    """Give, by the name of each term, the words that a tradition may choose for it.

    The file of terms names such a word after both: "-point-checkpoint" beside "-point".
    """
    names = list(_file(language, _TERMS))
    return {
        name[1:]: [one.removeprefix(f"{name}-") for one in names if one.startswith(f"{name}-")]
        for name in names
        if any(one.startswith(f"{name}-") for one in names)
    }


def message_names(language: Language) -> dict[str, str]:
    """Give every message of a language with the topic (the file) that it stands in."""
    return {name: topic for topic in _topics(language) for name in _file(language, topic)}


def has_message(ident: str) -> bool:
    """Tell whether there is such a message."""
    return ident in _file("en", ident.partition("-")[0])


def message(language: Language, ident: str) -> Entry:
    """Give a message as it stands in the file of its topic."""
    return _message(language, ident)


@lru_cache(maxsize=64)
def _terms(language: Language, chosen: tuple[tuple[str, str], ...]) -> Mapping[str, Entry]:
    terms = _file(language, _TERMS)
    asked = {f"-{name}": terms[f"-{name}-{word}"] for name, word in chosen}
    # The usual word of a term stands as a reference to the term itself.
    usual = {name for name, entry in asked.items() if entry.pattern == (_itself(name),)}
    return {**terms, **{name: entry for name, entry in asked.items() if name not in usual}}


def _itself(name: str) -> Placeable:
    return Placeable(term=name.removeprefix("-"))


@lru_cache(maxsize=4096)
def _message(language: Language, ident: str) -> Entry:
    """Look where a message stands: its topic is the part of its name before the first "-"."""
    return _file(language, ident.partition("-")[0])[ident]


@lru_cache(maxsize=64)
def _file(language: Language, topic: str) -> dict[str, Entry]:
    place = files("audit.words").joinpath(language, f"{topic}.ftl")
    return entries(place.read_text(encoding="utf-8"))


def _topics(language: Language) -> list[str]:
    folder = files("audit.words").joinpath(language)
    return sorted(one.name.removesuffix(".ftl") for one in folder.iterdir())


PLAIN_ENGLISH = Words()
"""What stands in files for programs, whatever people are told."""
