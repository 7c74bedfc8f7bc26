"""MGRS grid references into places and back."""

from __future__ import annotations

import math
import re
import warnings
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from audit.geodesy.grids import course_grid
from audit.geodesy.utm_bands import BANDS, band_limits, in_band, latitude_text
from audit.geodesy.utm_zones import UPS_NORTH, UPS_SOUTH, check_degrees, utm_zone_code
from audit.settings import ReadingSettings

if TYPE_CHECKING:
    import mgrs

_REFERENCE = re.compile(
    r"(?P<zone>\d{0,2}) ?(?P<band>[A-Z]) ?(?P<square>[A-Z]{2}) ?(?P<digits>[0-9 ]*)", re.ASCII
)
_WITHOUT_ZONE = re.compile(r"[A-Z]{2} ?[0-9 ]*", re.ASCII)
_HAIRS_DEG = ((0.0, 0.0), (2e-8, 0.0), (0.0, 1e-7))
"""East and north, a millimetre and a centimetre. The library rounds a place so little west of a
zone's edge or south of the equator over that line, and names a square that does not exist."""
_METRES_A_DEGREE = 111_195.0
_POLAR_BANDS = {"A": UPS_SOUTH, "B": UPS_SOUTH, "Y": UPS_NORTH, "Z": UPS_NORTH}
MOST_DIGITS = 14
"""A square of a centimetre; the library, and most maps, end at a metre."""
_DIGITS_TO_A_METRE = 5
_EXAMPLE = 'write it as in "16S GF 4182 4279"'


@dataclass(frozen=True, slots=True, kw_only=True)
class MgrsSquare:
    """The square that a grid reference names: its centre, and half its side.

    ``grid_code`` is the grid that the reference is drawn on: its UTM zone or polar grid.
    """

    longitude_deg: float
    latitude_deg: float
    half_square_m: float
    grid_code: str


def decode_mgrs(text: str, settings: ReadingSettings | None = None) -> MgrsSquare:
    """Give the square of an MGRS reference of 0 to 14 digits; spaces and case do not matter.

    Raises
    ------
    ValueError
        With one sentence that says what is wrong and how to write it.
    """
    zone, band, square, written = _parts(text)
    half = len(written) // 2
    east, north = written[:half], written[half:]
    digits = east[:_DIGITS_TO_A_METRE] + north[:_DIGITS_TO_A_METRE]
    if zone is None:
        grid_code, compact = _POLAR_BANDS[band], f"{band}{square}{digits}"
    else:
        grid_code = utm_zone_code(zone, south=band < "N")
        compact = f"{zone}{band}{square}{digits}"
    try:
        with warnings.catch_warnings():
            # Of a square that lies outside its band the library only warns; see below.
            warnings.simplefilter("ignore", RuntimeWarning)
            latitude_deg, longitude_deg = _converter().toLatLon(compact)
    except _mgrs_error():
        named = f"zone {zone}{band}" if zone is not None else f"polar area {band}"
        message = (
            f'"{text}" names no place: {named} has no square {square} there; '
            f"check the zone and the two letters, {_EXAMPLE}"
        )
        raise ValueError(message) from None
    half_square_m = 0.5 * 10.0 ** (_DIGITS_TO_A_METRE - half)
    if half > _DIGITS_TO_A_METRE:
        finer = (east[_DIGITS_TO_A_METRE:], north[_DIGITS_TO_A_METRE:])
        longitude_deg, latitude_deg = _within_metre(grid_code, longitude_deg, latitude_deg, finer)
    if zone is not None:
        slack_deg = (settings or ReadingSettings()).band_slack_deg
        _check_band(text, band, latitude_deg, half_square_m, slack_deg)
    return MgrsSquare(
        longitude_deg=longitude_deg,
        latitude_deg=latitude_deg,
        half_square_m=half_square_m,
        grid_code=grid_code,
    )


def _within_metre(
    grid_code: str, longitude_deg: float, latitude_deg: float, finer: tuple[str, str]
) -> tuple[float, float]:
    """Give the middle of a square that further digits name within a square of one metre."""
    grid = course_grid(grid_code)
    place_m = [
        math.floor(metres) + (int(digits) + 0.5) / 10.0 ** len(digits)
        for metres, digits in zip(grid.to_grid(longitude_deg, latitude_deg), finer, strict=True)
    ]
    return grid.to_geographic(*place_m)


def _check_band(
    text: str, band: str, latitude_deg: float, half_square_m: float, slack_deg: float
) -> None:
    """Raise ValueError for a square that lies outside the band that its reference names."""
    # A square on the edge of its band may have its centre outside, by half its diagonal.
    slack_deg += 1.5 * half_square_m / _METRES_A_DEGREE
    if not in_band(band, latitude_deg, slack_deg):
        low, high = (latitude_text(edge) for edge in band_limits(band))
        message = (
            f'"{text}" names no square: band {band} ({low} to {high}) has none with these '
            f"letters; check the band letter and the two letters of the square, {_EXAMPLE}"
        )
        raise ValueError(message)


def encode_mgrs(longitude_deg: float, latitude_deg: float, *, digits: int) -> str:
    """Give the MGRS reference of a place, such as "16S GF 4182 4279" for ``digits=8``.

    Digits are cut, not rounded, as the standard has it (FGDC-STD-011-2001).

    Raises
    ------
    ValueError
        For a place outside the range of degrees, or digits other than 0, 2, ... 10.
    """
    check_degrees(longitude_deg, latitude_deg)
    if digits not in range(0, 11, 2):
        message = f"a grid reference has 0, 2, 4, 6, 8 or 10 digits, not {digits}"
        raise ValueError(message)
    compact = _existing_square(longitude_deg, latitude_deg, digits // 2)
    head, tail = compact[: len(compact) - digits], compact[len(compact) - digits :]
    half = digits // 2
    parts = (head[:-2].lstrip("0"), head[-2:], tail[:half], tail[half:])
    return " ".join(part for part in parts if part)


def _existing_square(longitude_deg: float, latitude_deg: float, precision: int) -> str:
    """Give the library's reference of a place, moved by a hair where it could not be read."""
    for east_deg, north_deg in _HAIRS_DEG:
        compact = _converter().toMGRS(
            latitude_deg + north_deg, longitude_deg + east_deg, MGRSPrecision=precision
        )
        try:
            _converter().toLatLon(compact)
        except _mgrs_error():
            continue
        return str(compact)
    message = f"{latitude_deg}, {longitude_deg} has no MGRS reference"
    raise ValueError(message)


def _parts(text: str) -> tuple[int | None, str, str, str]:
    """Give zone (None in polar areas), band, square letters and digits, each checked."""
    written = " ".join(text.upper().split())
    found = _REFERENCE.fullmatch(written)
    if not found:
        hint = f"is no MGRS reference; {_EXAMPLE}"
        if _WITHOUT_ZONE.fullmatch(written):
            hint = f"lacks its grid zone; {_EXAMPLE}"
        message = f'"{text}" {hint}'
        raise ValueError(message)
    band, square = found["band"], found["square"]
    zone = int(found["zone"]) if found["zone"] else None
    bands = BANDS if zone is not None else "".join(_POLAR_BANDS)
    if zone is not None and not 1 <= zone <= 60:
        message = f'"{text}": {zone} is no UTM zone; zones run from 1 to 60'
    elif band not in bands:
        need = "C to X after a zone number" if zone is not None else "A, B, Y or Z at the poles"
        message = f'"{text}": {band} is no band; it is one of {need}, never I or O; {_EXAMPLE}'
    elif set(square) & {"I", "O"}:
        message = f'"{text}": squares are never lettered I or O; look for 1 and 0, {_EXAMPLE}'
    else:
        return zone, band, square, even_digits(text, found["digits"])
    raise ValueError(message)


def even_digits(text: str, written: str) -> str:
    """Give the digits of a grid reference without spaces: as many east as north, at most 7 each.

    Raises
    ------
    ValueError
        Where they do not split into two halves, or are written as unequal halves:
        "418 42790" has an even count when run together but is a slip of the pen.
    """
    groups = written.split()
    digits = "".join(groups)
    if len(digits) % 2 or (len(groups) == 2 and len(groups[0]) != len(groups[1])):
        message = (
            f'"{text}" has {" and ".join(str(len(group)) for group in groups)} digits; '
            "a grid reference has as many for east as for north"
        )
        raise ValueError(message)
    if len(digits) > MOST_DIGITS:
        message = (
            f'"{text}" has {len(digits)} digits; {MOST_DIGITS} (a square of 1 cm) are the most'
        )
        raise ValueError(message)
    if len(groups) > 2:
        message = f'"{text}" has its digits in {len(groups)} groups; write east, then north'
        raise ValueError(message)
    return digits


@lru_cache(maxsize=1)
def _converter() -> mgrs.MGRS:
    import mgrs  # noqa: PLC0415

    return mgrs.MGRS()


def _mgrs_error() -> type[Exception]:
    import mgrs.core  # noqa: PLC0415

    error: type[Exception] = mgrs.core.MGRSError
    return error
