"""A written position, in any of the forms of a plan, as a place on the ground."""

from __future__ import annotations

import re
from dataclasses import replace

from audit.geodesy.grids import course_grid
from audit.positions import Position
from audit.readers.degrees_text import DegreePair, degree_pairs
from audit.readers.grid_reference_text import read_mgrs, read_national
from audit.readers.metres_text import MetrePair, metre_pairs
from audit.readers.plain_text import plain_text
from audit.readers.position_reading import PositionReading, PositionRefusedError, two_readings
from audit.readers.utm_text import read_utm
from audit.settings import ReadingSettings

_FORM_NAMES = re.compile(r"(?:MGRS|UTM|WGS ?84)[ :]+")
_SPREADSHEET = re.compile(r"(?<![\d.,])\d(?:[.,]\d+)?E[+-]\d{2}(?![\d.,°])", re.ASCII)
"""4.86E+03; degrees east of Greenwich have no sign behind their letter and more than two digits."""
_FORMS = (
    'Write a grid reference ("16S GF 4182 4279"), UTM ("16S 441820 4142790") '
    'or degrees ("36.512, -84.231").'
)


def read_position(
    text: str, grid: str | None = None, settings: ReadingSettings | None = None
) -> PositionReading:
    """Give the place that a text names, with its grid where the reference has one.

    Parameters
    ----------
    text : str
        Any position form of the plan format. Sloppy but clear writing is taken, and
        ``Position.reading`` then says how.
    grid : str or None
        Code of the course grid where the plan names one; None for "auto". Plain
        eastings and northings and national letters can only be read with it.

    Raises
    ------
    PositionRefusedError
        Where the text names no place, or where it can be meant in two ways.
    """
    limits = settings or ReadingSettings()
    plain = _FORM_NAMES.sub("", plain_text(text).upper()).strip(" ,;.")
    if not plain:
        rule = "holds no position" if text.strip() else "is empty"
        raise PositionRefusedError(rule, _FORMS)
    if _SPREADSHEET.search(plain):
        rule = "holds a number as a spreadsheet writes long ones, with its last digits dropped"
        remedy = "Format the cells as text before the references are written, and write them again."
        raise PositionRefusedError(rule, remedy)
    reading = (
        read_mgrs(plain, limits)
        or read_national(plain, grid)
        or read_utm(plain, limits)
        or _degrees_or_metres(plain, grid, limits)
    )
    return replace(reading, position=replace(reading.position, given=" ".join(text.split())))


def _degrees_or_metres(text: str, grid: str | None, limits: ReadingSettings) -> PositionReading:
    """Give the place of two numbers; their size tells degrees from metres."""
    degrees, faults = degree_pairs(text)
    metres = [pair for pair in metre_pairs(text, limits) if pair.far_from_origin(limits)]
    if grid is None and metres and not degrees:
        rule = "is an easting and northing without a zone"
        remedy = 'Write zone and band before it ("16S 441820 4142790"), or name the grid.'
        raise PositionRefusedError(rule, remedy, needs_grid=True)
    readings = [_say(pair) for pair in degrees]
    if grid is not None:
        readings += [_say(pair) for pair in metres]
    if len(readings) > 1:
        remedy = "Write decimals with a point, minutes with ' and metres without commas."
        raise two_readings(readings[0], readings[1], remedy)
    if degrees:
        return _from_degrees(degrees[0])
    if grid is not None and metres:
        return _from_metres(metres[0], grid)
    raise faults[0] if faults else _unread(text)


def _unread(text: str) -> PositionRefusedError:
    """Give the refusal of a text that has no reading, with a hint where its letters give one."""
    if re.fullmatch(r"[+-]?\d+(?:[.,]\d+)?[°M]?", text):
        rule = "is one number, and a position has two"
        remedy = 'Write both; in CSV a cell with a comma needs quotation marks: "36.512, -84.231".'
        return PositionRefusedError(rule, remedy)
    if re.fullmatch(r"[A-Z] ?\d[\d ]+", text):
        rule = "is a national grid reference, and the course grid has no such letters"
        remedy = 'For the Irish grid set grid = "EPSG:29903".'
        return PositionRefusedError(rule, remedy, needs_grid=True)
    if re.search(r"[\d°'\"] ?O\b|\bO ?\d", text):
        rule = "has O as a side of the Earth, which is west in some languages and east in others"
        return PositionRefusedError(rule, "Write E or W.")
    return PositionRefusedError("is no position that can be read", _FORMS)


def _say(pair: DegreePair | MetrePair) -> str:
    if isinstance(pair, DegreePair):
        return f"latitude {pair.latitude_deg:.8g}, longitude {pair.longitude_deg:.8g}"
    return f"easting {pair.east_m:.10g}, northing {pair.north_m:.10g}"


def _from_degrees(pair: DegreePair) -> PositionReading:
    position = Position(
        longitude_deg=pair.longitude_deg, latitude_deg=pair.latitude_deg, reading=pair.how
    )
    return PositionReading(position=position)


def _from_metres(pair: MetrePair, grid: str) -> PositionReading:
    try:
        longitude_deg, latitude_deg = course_grid(grid).to_geographic(pair.east_m, pair.north_m)
    except ValueError:
        rule = f"is no place on the grid {grid}"
        raise PositionRefusedError(rule, "Write the easting first, then the northing.") from None
    return PositionReading(
        position=Position(longitude_deg=longitude_deg, latitude_deg=latitude_deg, reading=pair.how),
        grid_code=grid,
    )
