"""A sentence that remembers how it was made, so that it can be told in other words."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Self

from audit.words.spoken_words import PLAIN_ENGLISH


class Sentence(str):
    """Plain English text, with the name of its message and the values in it.

    Whoever knows nothing of words has a string; files for programs hold that.

    Attributes
    ----------
    ident : str
        Of the message.
    values : mapping
        What stands in it: figures, names, further sentences.
    """

    __slots__ = ("ident", "values")

    ident: str
    values: Mapping[str, object]

    def __new__(cls, ident: str, values: Mapping[str, object]) -> Self:
        """Make the text at once, so that a missing value is met where the sentence is made."""
        made = super().__new__(cls, PLAIN_ENGLISH.say(ident, **values))
        made.ident, made.values = ident, values
        return made

    def __getnewargs__(self) -> tuple[str, Mapping[str, object]]:  # type: ignore[override]
        return self.ident, self.values


def says(text: object, *idents: str) -> bool:
    """Whether a text is one of these messages or holds one, whatever the names in it read."""
    if not isinstance(text, Sentence):
        things = getattr(text, "things", ())  # of a list of sentences
        return any(says(one, *idents) for one in things)
    return text.ident in idents or any(says(one, *idents) for one in text.values.values())


def sentence(ident: str, **values: object) -> Sentence:
    """Give a sentence for a record: plain English, and whatever else a reader wants."""
    return Sentence(ident, values)
