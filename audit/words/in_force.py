"""The words in which reports are written just now."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar

from audit.words.spoken_words import PLAIN_ENGLISH, Words

_IN_FORCE: ContextVar[Words] = ContextVar("words", default=PLAIN_ENGLISH)


@contextmanager
def spoken(words: Words | None) -> Iterator[None]:
    """Write everything inside in these words; None leaves those in force."""
    token = _IN_FORCE.set(words or in_force())
    try:
        yield
    finally:
        _IN_FORCE.reset(token)


def speak(words: Words) -> None:
    """Write everything from here on in these words, until the `spoken` around it ends."""
    _IN_FORCE.set(words)


def in_force() -> Words:
    """Give the words in force: plain English where nobody chose others."""
    return _IN_FORCE.get()


def say(ident: str, **values: object) -> str:
    """Give a message in the words in force."""
    return in_force().say(ident, **values)


def told(text: str) -> str:
    """Tell the sentence of a record in the words in force."""
    return in_force().told(text)
