"""References of places as the map in hand is lettered, and such as read back to the same place."""

from __future__ import annotations

import re

from audit.geodesy.grids import CourseGrid
from audit.geodesy.mgrs_references import decode_mgrs, encode_mgrs
from audit.geodesy.national_letters import LETTERED_GRIDS, decode_national, encode_national
from audit.geodesy.utm_zones import utm_code

DIGITS_OF_HALF_SIDE = {0.5: 10, 5.0: 8, 50.0: 6, 500.0: 4}
"""Digits of a reference, by half the side in metres of the square that it names."""
_USUAL_DIGITS = 8
_SAME_PLACE_M = 0.001


def shown_reference(
    longitude_deg: float, latitude_deg: float, half_square_m: float, grid: CourseGrid
) -> str:
    """Give the reference to look up on the map: lettered where the map is, to 10 m usually.

    A place that is known to a square gets as many digits as name that square, 10 at most.
    """
    finest = max(DIGITS_OF_HALF_SIDE.values())
    usual = finest if 0.0 < half_square_m < min(DIGITS_OF_HALF_SIDE) else _USUAL_DIGITS
    digits = DIGITS_OF_HALF_SIDE.get(half_square_m, usual)
    east_m, north_m = grid.to_grid(longitude_deg, latitude_deg)
    try:
        if grid.code in LETTERED_GRIDS:
            return encode_national(east_m, north_m, grid.code, digits=digits)
        if grid.code == utm_code(longitude_deg, latitude_deg):
            return encode_mgrs(longitude_deg, latitude_deg, digits=digits)
    except ValueError:
        pass  # a place off the lettered squares has its metres still
    return f"{east_m:.0f} {north_m:.0f}"


def exact_reference(
    longitude_deg: float, latitude_deg: float, half_square_m: float, grid: CourseGrid
) -> tuple[str, bool]:
    """Give a reference that reads back to the same place within a millimetre, and its kind.

    The second value tells whether the reference names the square itself, and so carries
    ``half_square_m``; otherwise it is easting and northing on the grid.
    """
    east_m, north_m = grid.to_grid(longitude_deg, latitude_deg)
    if half_square_m in DIGITS_OF_HALF_SIDE:
        written = shown_reference(longitude_deg, latitude_deg, half_square_m, grid)
        if _names(written, east_m, north_m, half_square_m, grid):
            return written, True
    return f"{_metres(east_m)} {_metres(north_m)}", half_square_m == 0.0


def _names(
    written: str, east_m: float, north_m: float, half_square_m: float, grid: CourseGrid
) -> bool:
    """Tell whether a reference names the square whose centre is that place."""
    if not re.search("[A-Z]", written):
        return False
    if grid.code in LETTERED_GRIDS:
        square = decode_national(written, grid.code)
        there, half_m = (square.east_m, square.north_m), square.half_square_m
    else:
        named = decode_mgrs(written)
        there = grid.to_grid(named.longitude_deg, named.latitude_deg)
        half_m = named.half_square_m
    off_m = max(abs(there[0] - east_m), abs(there[1] - north_m))
    return half_m == half_square_m and off_m < _SAME_PLACE_M


def _metres(value_m: float) -> str:
    """Write metres to the millimetre; four decimals where three could be taken for thousands."""
    text = f"{value_m:.4f}" if abs(value_m) < 1000.0 else f"{value_m:.3f}"
    whole, _, decimals = text.partition(".")
    return whole if not int(decimals) else text
