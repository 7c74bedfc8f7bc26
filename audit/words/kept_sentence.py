"""Sentences as plain data, so that a kept record can tell them in any words again."""

from __future__ import annotations

from dataclasses import fields
from functools import lru_cache
from typing import Any

from audit.words import figures
from audit.words.sentence import Sentence, sentence
from audit.words.spoken_words import message_names

_MESSAGE, _FIGURE = "message", "figure"


def plain_data(value: Any) -> Any:  # noqa: ANN401 (whatever a record or a sentence holds)
    """Give a value with every sentence and figure in it as plain data, for JSON."""
    if isinstance(value, Sentence):
        return {_MESSAGE: value.ident, "values": plain_data(dict(value.values))}
    if isinstance(value, figures.Figure):
        held = {one.name: plain_data(getattr(value, one.name)) for one in fields(value)}  # type: ignore[arg-type]
        return {_FIGURE: type(value).__name__, **held}
    if isinstance(value, dict):
        return {name: plain_data(one) for name, one in value.items()}
    if isinstance(value, list | tuple):
        return [plain_data(one) for one in value]
    return value


def from_plain_data(told: Any) -> Any:  # noqa: ANN401 (as above)
    """Give what `plain_data` was given, lists in place of tuples.

    Raises
    ------
    KeyError, TypeError, AttributeError
        Where a message or a figure is not known here.
    """
    if isinstance(told, list):
        return [from_plain_data(one) for one in told]
    if not isinstance(told, dict):
        return told
    held = {name: from_plain_data(one) for name, one in told.items()}
    if told.keys() == {_MESSAGE, "values"}:
        if held[_MESSAGE] not in _messages():
            raise KeyError(held[_MESSAGE])
        return sentence(held[_MESSAGE], **held["values"])
    if _FIGURE in told:
        kind = getattr(figures, held.pop(_FIGURE))
        if not (isinstance(kind, type) and issubclass(kind, figures.Figure)):
            raise TypeError(kind)
        return kind(**held)
    return held


@lru_cache(maxsize=1)
def _messages() -> frozenset[str]:
    """Give the names of all messages; a kept text may come from another version."""
    return frozenset(message_names("en"))
