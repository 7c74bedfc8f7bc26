"""What people type and paste, brought down to the keyboard's own characters."""

from __future__ import annotations

import re
import unicodedata

_COUSINS = str.maketrans(
    {
        "º": "°", "˚": "°", "ᵒ": "°", "⁰": "°",
        "′": "'", "’": "'", "‘": "'", "´": "'", "`": "'", "ʹ": "'", "ʼ": "'",
        "″": '"', "”": '"', "“": '"', "„": '"', "ʺ": '"',
        "−": "-", "–": "-", "—": "-", "‐": "-", "‑": "-", "﹣": "-", "－": "-", "＋": "+",
        "，": ",", "；": ";", "．": ".", "：": ":", "٫": ".",
        # Marks without width that pages and messengers put around pasted text.
        "\u200b": None, "\u200c": None, "\u200d": None, "\u200e": None, "\u200f": None,
        "\u202a": None, "\u202b": None, "\u202c": None, "\u2066": None, "\u2069": None,
        "\ufeff": None, "\u00ad": None,
    }
)  # fmt: skip

_UNWRITABLE = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")
"""What no XML document may hold (XML 1.0, section 2.2) or should (its note there), as the page and
its pictures are such, and what steers a terminal (C0 and C1 of ECMA-48, and delete)."""


_TURNS_THE_LINE = re.compile("[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]")
"""Signs that no one sees and that change the order in which the others are shown
(Unicode Standard Annex 9, table 4)."""


def writable(text: str) -> str:
    """Put a space in place of each sign that no report can hold, and show what turns the line."""
    escaped = _TURNS_THE_LINE.sub(lambda sign: f"\\u{ord(sign[0]):04x}", text)
    return _UNWRITABLE.sub(" ", escaped)


def plain_text(text: str) -> str:
    """Give the text with typographic signs, spaces and digits as a keyboard writes them.

    Two single quotes in a row become the sign of seconds; runs of spaces become one.
    """
    text = text.translate(_COUSINS)
    if not text.isascii():
        text = "".join(
            str(unicodedata.decimal(sign)) if not sign.isascii() and sign.isdecimal() else sign
            for sign in text
        )
    return " ".join(text.replace("''", '"').split())


def shown(value: object, longest: int = 60) -> str:
    """Give a value as a message quotes it: text in quotation marks, long ones shortened."""
    if isinstance(value, bool):
        return "true" if value else "false"
    text = f'"{" ".join(value.split())}"' if isinstance(value, str) else str(value)
    text = "".join(sign if sign.isprintable() else "?" for sign in text)
    if len(text) <= longest:
        return text
    return text[: longest - 4] + ('..."' if isinstance(value, str) else "...")
