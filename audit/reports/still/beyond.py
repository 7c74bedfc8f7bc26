"""What a still picture cannot show."""

from __future__ import annotations

from collections.abc import Collection, Iterable


class BeyondStillError(Exception):
    """A chart asks for something that is only drawn by the library."""


def only(given: Iterable[str], known: Collection[str], where: str) -> None:
    """Refuse what is not known, rather than draw without it.

    Raises
    ------
    BeyondStillError
        Where something else is given.
    """
    beyond = set(given).difference(known)
    if beyond:
        message = f"{where}: {', '.join(sorted(beyond))}"
        raise BeyondStillError(message)
