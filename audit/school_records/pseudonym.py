"""Names turned into pseudonyms: a keyed hash, so that the records hold no name."""

from __future__ import annotations

import hashlib
import hmac
import re
import unicodedata

SALT_BYTES = 32
_PSEUDONYM = re.compile(r"walker-[0-9a-f]{20}")
_CHECK = "what this salt is told by"


def pseudonym(name: str, salt: bytes) -> str:
    """Give the pseudonym of a name; case, width of letters and spare spaces make no other."""
    told = name.encode(errors="backslashreplace").decode()  # bytes of another encoding
    plain = " ".join(unicodedata.normalize("NFKC", told).casefold().split())
    return f"walker-{_hash(plain, salt)[:20]}"


def is_pseudonym(text: str) -> bool:
    """Tell whether a text is a pseudonym already."""
    return _PSEUDONYM.fullmatch(text) is not None


def salt_of_secret(secret: str) -> bytes:
    """Give the salt that a secret stands for."""
    return hashlib.sha256(secret.strip().encode()).digest()


def salt_check(salt: bytes) -> str:
    """Give what tells one salt from another, and nothing of the salt."""
    return _hash(_CHECK, salt)


def _hash(text: str, salt: bytes) -> str:
    return hmac.new(salt, text.encode(), hashlib.sha256).hexdigest()
