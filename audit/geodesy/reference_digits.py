"""The digits of a grid reference, and how far slips among them move a coordinate."""

from __future__ import annotations

from collections.abc import Iterator

_PLACES = (10.0, 100.0, 1000.0, 10_000.0)
"""Digits of an 8-figure reference, last first: what one of each is worth in metres."""

LINES_APART_M = 1000.0
"""Grid lines of a sheet 1:25 000 or 1:50 000 stand a kilometre apart."""


def digit_values(metres: float) -> tuple[int, ...]:
    """Give the digits of metres inside the 100 km square, tens of metres first."""
    return tuple(int(metres // place) % 10 for place in _PLACES)


def swapped_digits_m(metres: float) -> Iterator[float]:
    """Give how far each swap of two neighbouring digits moves a coordinate: 9 times a power."""
    digits = digit_values(metres)
    for low in range(len(digits) - 1):
        moved = (digits[low] - digits[low + 1]) * (_PLACES[low + 1] - _PLACES[low])
        if moved:
            yield moved


def wrong_digits_m(metres: float) -> Iterator[float]:
    """Give how far each wrong digit moves a coordinate."""
    for place, digit in zip(_PLACES, digit_values(metres), strict=True):
        for other in range(10):
            if other != digit:
                yield (other - digit) * place


def carried_digits_m(metres: float) -> Iterator[float]:
    """Give how far one square too far, or too near, moves a coordinate that has to carry.

    Nine tens or hundreds read on by one are the next digit's, and none read back by one the
    one's before: no single digit is wrong then, yet it is one wrong reading of a digit. A
    kilometre too far is the next grid line, whatever its digit.
    """
    for place, digit in zip(_PLACES, digit_values(metres), strict=True):
        if place < LINES_APART_M and digit in (0, 9):
            yield place if digit else -place


def exchanged_m(east_m: float, north_m: float) -> tuple[float, float]:
    """Give how far taking easting and northing inside a square for each other moves a point."""
    shift = north_m % LINES_APART_M - east_m % LINES_APART_M
    return shift, -shift


def on_other_tool_m(east_m: float, north_m: float) -> tuple[tuple[float, float], ...]:
    """Give how far a plotting tool for twice, or for half, the map's scale moves a point.

    What is measured from the corner of the square is then doubled, or halved.
    """
    inside = east_m % LINES_APART_M, north_m % LINES_APART_M
    return inside, (-inside[0] / 2.0, -inside[1] / 2.0)
