"""Names that are safe as names of files: they cannot leave the folder, and differ."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable

_OTHER = re.compile(r"[^\w]+")
_LONGEST_BYTES = 60
# Names that Windows keeps for devices.
_RESERVED = re.compile(r"(?:con|prn|aux|nul|com\d|lpt\d)", re.IGNORECASE)


def idents(names: Iterable[tuple[str, int]]) -> list[str]:
    """Give an ident for each (name, attempt): letters, digits, hyphens and low lines only.

    Letters of any script stay; whatever could part a path goes. Idents that a file
    system may take for the same are told apart by a number.
    """
    made: list[str] = []
    seen: set[str] = set()
    for name, attempt in names:
        stem = _plain(name) or "walker"
        wanted = stem if attempt == 1 else f"{stem}-attempt-{attempt}"
        ident, number = wanted, 2
        while ident.casefold() in seen:
            ident, number = f"{wanted}-{number}", number + 1
        seen.add(ident.casefold())
        made.append(ident)
    return made


def _plain(name: str) -> str:
    composed = unicodedata.normalize("NFC", name)
    plain = _OTHER.sub("-", composed).strip("-_")
    while len(plain.encode()) > _LONGEST_BYTES:
        plain = plain[:-1]
    plain = plain.strip("-_")
    return f"walker-{plain}" if _RESERVED.fullmatch(plain) else plain
