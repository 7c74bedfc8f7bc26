"""What a number becomes by one slip: two neighbouring digits swapped, one wrong, one carried."""

from __future__ import annotations

from collections.abc import Iterator

_DIGITS = "0123456789"


def swapped(written: str) -> Iterator[str]:
    """Give the text with each pair of unlike neighbouring digits exchanged.

    A text of three digits, an azimuth, is also given with the outer two exchanged.
    """
    pairs = [(place, place + 1) for place in range(len(written) - 1)]
    if len(written) == 3:
        pairs.append((0, 2))
    for one, other in pairs:
        both = written[one] + written[other]
        if both.isdecimal() and both[0] != both[1]:
            signs = list(written)
            signs[one], signs[other] = signs[other], signs[one]
            yield "".join(signs)


def one_wrong(written: str) -> Iterator[tuple[int, str]]:
    """Give (place of the digit from the left, text) for each other digit at each place."""
    for place, sign in enumerate(written):
        if sign in _DIGITS:
            for digit in _DIGITS:
                if digit != sign:
                    yield place, written[:place] + digit + written[place + 1 :]


def carried(written: str) -> Iterator[tuple[str, str, str]]:
    """Give (digits, what they become, text) for each 9 counted on by one and each 0 back.

    Then the digit before it changes too: 19 is 20. What would lead out of the number is left.
    """
    if not written.isdecimal():
        return
    for place, sign in enumerate(written):
        if sign not in "09":
            continue
        one = 10 ** (len(written) - 1 - place)
        other = int(written) + (one if sign == "9" else -one)
        if 0 <= other < 10 ** len(written):
            text = f"{other:0{len(written)}d}"
            first = next(at for at in range(place) if written[at] != text[at])
            yield written[first : place + 1], text[first : place + 1], text
