"""Grid references with letters: MGRS, and the national ones of Great Britain and Ireland."""

from __future__ import annotations

import re

from audit.geodesy.grids import course_grid
from audit.geodesy.mgrs_references import MOST_DIGITS, MgrsSquare, decode_mgrs
from audit.geodesy.national_letters import LETTERED_GRIDS, decode_national
from audit.positions import Position
from audit.readers.position_reading import PositionReading, PositionRefusedError
from audit.settings import ReadingSettings

_MGRS = re.compile(r"(\d{0,2}) ?([A-Z]) ?([A-Z]) ?([A-Z]) ?([\d ]*)", re.ASCII)
_LETTER_FOR_DIGIT = re.compile(r"\d{1,2} ?[A-Z] ?[A-Z] ?[A-Z] ?[\dOIL ]+", re.ASCII)
_NATIONAL = re.compile(r"([A-Z]{1,2}) ?([\d ]*)", re.ASCII)
_EXAMPLE = re.compile(r"[,;] write it as in .*")
_LIKE_THIS = 'Write it like "16S GF 4182 4279"'


def read_mgrs(text: str, limits: ReadingSettings) -> PositionReading | None:
    """Give the square of an MGRS reference; None where the text is not shaped like one.

    ``text`` is plain and in capitals.

    Raises
    ------
    PositionRefusedError
        For an MGRS reference that names no square.
    """
    spaced = re.sub(r"[ ,/:-]+", " ", text)
    found = _MGRS.fullmatch(spaced)
    if not found:
        if _LETTER_FOR_DIGIT.fullmatch(spaced):
            rule = "has a letter among its digits"
            raise PositionRefusedError(rule, "Write 0 and 1 for O and I.")
        return None
    zone, *letters, digits = found.groups()
    if not zone and letters[0] not in "ABYZ":
        if len(digits) < 4:
            return None
        rule = "is an MGRS reference without its grid zone number"
        raise PositionRefusedError(rule, f"{_LIKE_THIS}: zone, band, square, easting, northing.")
    reference = zone.zfill(2) * bool(zone) + "".join(letters) + even_halves(digits)
    try:
        square = _square(reference, limits)
    except PositionRefusedError:
        if zone or digits:
            raise
        return None  # three letters that name no square at a pole are no reference at all
    position = Position(
        longitude_deg=square.longitude_deg,
        latitude_deg=square.latitude_deg,
        half_square_m=square.half_square_m,
    )
    return PositionReading(position=position, grid_code=square.grid_code)


def _square(reference: str, limits: ReadingSettings) -> MgrsSquare:
    try:
        return decode_mgrs(reference, limits)
    except ValueError as error:
        rule, _, check = _rule(error, reference).partition("; ")
        remedy = f"{_LIKE_THIS}."
        if check.startswith("check"):
            remedy = f"{check[:1].upper()}{check[1:]}. {remedy}"
        elif check:
            rule = f"{rule}; {check}"
        raise PositionRefusedError(rule, remedy) from None


def read_national(text: str, grid: str | None) -> PositionReading | None:
    """Give the square of a British or Irish reference; None where the text is not one.

    Raises
    ------
    PositionRefusedError
        For letters that the course grid does not have, and for squares that are none.
    """
    found = _NATIONAL.fullmatch(re.sub(r"[ ,/]+", " ", text))
    if not found:
        return None
    letters, digits = found.groups()
    if grid not in LETTERED_GRIDS:
        if len(letters) == 1 or not digits:
            return None
        rule = "is a grid reference without its grid zone"
        remedy = (
            f'Write zone and band before it, like "16S {letters} {digits}"; for a British '
            'reference set grid = "EPSG:27700".'
        )
        raise PositionRefusedError(rule, remedy, needs_grid=True)
    reference = letters + even_halves(digits)
    try:
        square = decode_national(reference, grid)
        longitude_deg, latitude_deg = course_grid(grid).to_geographic(square.east_m, square.north_m)
    except ValueError as error:
        remedy = 'Write it like "NN 166 712" in Great Britain, "O 159 346" in Ireland.'
        raise PositionRefusedError(_rule(error, reference), remedy) from None
    position = Position(
        longitude_deg=longitude_deg, latitude_deg=latitude_deg, half_square_m=square.half_square_m
    )
    return PositionReading(position=position, grid_code=grid)


def even_halves(written: str) -> str:
    """Give the digits run together, as many for the easting as for the northing.

    Raises
    ------
    PositionRefusedError
        Where the two halves differ, which is how a lost leading zero shows.
    """
    groups = written.split()
    digits = "".join(groups)
    half = len(digits) // 2
    cuts = {sum(len(group) for group in groups[:count]) for count in range(len(groups) + 1)}
    if len(digits) % 2 or (len(groups) > 1 and half not in cuts):
        counts = " and ".join(str(len(group)) for group in groups)
        rule = f"has {counts} digits, but the easting needs as many as the northing"
        remedy = "Look for a missing digit; spreadsheets drop leading zeros (418 for 0418)."
        raise PositionRefusedError(rule, remedy)
    if len(digits) > MOST_DIGITS:
        rule = f"has {len(digits)} digits, but {MOST_DIGITS} (a square of 1 cm) are the most"
        raise PositionRefusedError(rule, "Leave the last digits of each half out.")
    return digits


def _rule(error: ValueError, reference: str) -> str:
    """Give a decoder's sentence without the value that the message quotes anyway."""
    sentence = str(error).removeprefix(f'"{reference}"').lstrip(": ")
    return _EXAMPLE.sub("", sentence)
