"""British and Irish national grid references with letters into metres and back.

Both grids letter their squares A to Z without I, five by five, row by row from the
north-west. The Irish grid is one such set of 100 km squares; the British one is a set
of 500 km squares, each lettered again inside, with square SV at the origin.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from audit.geodesy.mgrs_references import even_digits

_LETTERS = "ABCDEFGHJKLMNOPQRSTUVWXYZ"
_HUNDRED_KM_M = 100_000.0

_BRITISH = ("EPSG:27700",)
_IRISH = ("EPSG:29900", "EPSG:29901", "EPSG:29902", "EPSG:29903")
LETTERED_GRIDS: frozenset[str] = frozenset(_BRITISH + _IRISH)
"""Codes of the grids whose references may carry letters: Great Britain; Ireland
(TM65 in its withdrawn and its present form, OSNI 1952, TM75), all on one false origin."""

# Hundreds of kilometres that the sheets cover: Great Britain 7 by 13, Ireland 5 by 5.
_BRITISH_EXTENT = (7, 13)
_REFERENCE = {
    "British": re.compile(r"(?P<letters>[A-HJ-Z]{2}) ?(?P<digits>[0-9 ]*)", re.ASCII),
    "Irish": re.compile(r"(?P<letters>[A-HJ-Z]) ?(?P<digits>[0-9 ]*)", re.ASCII),
}
_EXAMPLE = {"British": 'write it as in "NN 166 712"', "Irish": 'write it as in "O 159 346"'}


@dataclass(frozen=True, slots=True, kw_only=True)
class NationalSquare:
    """The square that a lettered reference names: its centre on the grid, and half its side."""

    east_m: float
    north_m: float
    half_square_m: float


def decode_national(text: str, grid_code: str) -> NationalSquare:
    """Give the square of a lettered reference of 0 to 14 digits; spaces and case do not matter.

    Raises
    ------
    ValueError
        With one sentence, for text that is no such reference, for a square off the
        grid, and for a grid without letters.
    """
    nation = _nation(grid_code)
    found = _REFERENCE[nation].fullmatch(" ".join(text.upper().split()))
    if not found:
        message = f'"{text}" is no {nation} national grid reference; {_EXAMPLE[nation]}'
        raise ValueError(message)
    east_squares, north_squares = _south_west_corner(text, found["letters"], nation)
    digits = even_digits(text, found["digits"])
    half = len(digits) // 2
    side_m = 10.0 ** (5 - half)
    return NationalSquare(
        east_m=east_squares * _HUNDRED_KM_M + (int(digits[:half] or 0) + 0.5) * side_m,
        north_m=north_squares * _HUNDRED_KM_M + (int(digits[half:] or 0) + 0.5) * side_m,
        half_square_m=side_m / 2.0,
    )


def encode_national(east_m: float, north_m: float, grid_code: str, *, digits: int) -> str:
    """Give the lettered reference of a place, such as "NN 166 712" for ``digits=6``.

    Digits are cut, not rounded.

    Raises
    ------
    ValueError
        For a place off the lettered squares, a grid without letters, or digits other
        than 0, 2, ... 10.
    """
    nation = _nation(grid_code)
    if digits not in range(0, 11, 2):
        message = f"a grid reference has 0, 2, 4, 6, 8 or 10 digits, not {digits}"
        raise ValueError(message)
    extent = _BRITISH_EXTENT if nation == "British" else (5, 5)
    east_squares, north_squares = int(east_m // _HUNDRED_KM_M), int(north_m // _HUNDRED_KM_M)
    if not (0 <= east_squares < extent[0] and 0 <= north_squares < extent[1]):
        message = (
            f"easting {east_m:.0f}, northing {north_m:.0f} is off the lettered squares "
            f"of the {nation} national grid"
        )
        raise ValueError(message)
    letters = _letter(east_squares % 5, north_squares % 5)
    if nation == "British":
        # The origin, SV, lies two large squares east and one north of the south-west letter.
        letters = _letter(east_squares // 5 + 2, north_squares // 5 + 1) + letters
    half = digits // 2
    side_m = 10.0 ** (5 - half)
    east = f"{int(east_m % _HUNDRED_KM_M // side_m):0{half}d}" if half else ""
    north = f"{int(north_m % _HUNDRED_KM_M // side_m):0{half}d}" if half else ""
    return " ".join(part for part in (letters, east, north) if part)


def _nation(grid_code: str) -> str:
    if grid_code in _BRITISH:
        return "British"
    if grid_code in _IRISH:
        return "Irish"
    message = (
        f"references with national letters belong to the grids {', '.join(sorted(LETTERED_GRIDS))}"
        f", not to {grid_code}"
    )
    raise ValueError(message)


def _south_west_corner(text: str, letters: str, nation: str) -> tuple[int, int]:
    """Give a lettered square's corner in hundreds of kilometres from the origin."""
    east, north = _place(letters[-1])
    if nation == "Irish":
        return east, north
    large_east, large_north = _place(letters[0])
    east, north = east + 5 * (large_east - 2), north + 5 * (large_north - 1)
    if not (0 <= east < _BRITISH_EXTENT[0] and 0 <= north < _BRITISH_EXTENT[1]):
        message = f'"{text}": the British national grid has no square {letters}; check the letters'
        raise ValueError(message)
    return east, north


def _place(letter: str) -> tuple[int, int]:
    """Give a letter's column from the west and row from the south, 0 to 4."""
    row_from_north, column = divmod(_LETTERS.index(letter), 5)
    return column, 4 - row_from_north


def _letter(column: int, row_from_south: int) -> str:
    return _LETTERS[(4 - row_from_south) * 5 + column]
