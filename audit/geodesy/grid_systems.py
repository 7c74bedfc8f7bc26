"""What PROJ knows of a grid: whether a course can be drawn on it, its name, its datum."""

from __future__ import annotations

import re

import pyproj
from pyproj.exceptions import ProjError

from audit.geodesy.projections import degrees_to_grid
from audit.geodesy.utm_zones import UPS_NORTH, UPS_SOUTH
from audit.units import turn_degrees, wrap_degrees
from audit.words import sentence

_UTM_NAME = re.compile(r"UTM zone (\d+)([NS])")


def check_axes(code: str, crs: pyproj.CRS) -> None:
    """Raise ValueError, in one sentence, unless the grid has metres east and north."""
    message = ""
    if not crs.is_projected:
        message = f"{code} ({crs.name}) has no grid in metres; name a projected one"
    elif len(crs.axis_info) != 2:
        message = f"{code} ({crs.name}) carries heights as well; name its level grid"
    elif any(axis.unit_name != "metre" for axis in crs.axis_info):
        unit = crs.axis_info[0].unit_name
        message = f"{code} ({crs.name}) counts in the unit {unit}; name a grid in metres"
    elif not _east_and_north(crs):
        axes = " and ".join(axis.direction for axis in crs.axis_info)
        message = f"{code} ({crs.name}) counts {axes}; name a grid that counts east and north"
    if message:
        raise ValueError(message)


def _east_and_north(crs: pyproj.CRS) -> bool:
    """Tell whether the axes count east and north, in either order."""
    # On a polar grid both axes run "north", or both "south": there the names say it.
    polar = len({axis.direction for axis in crs.axis_info}) == 1
    said = {axis.name.lower() if polar else axis.direction for axis in crs.axis_info}
    wanted = {"easting", "northing"} if polar else {"east", "north"}
    return said == wanted


def plain_name(code: str, name: str) -> str:
    """Turn PROJ's "WGS 84 / UTM zone 16N" into "UTM zone 16 north, WGS 84", in any words."""
    if code in {UPS_NORTH, UPS_SOUTH}:
        return sentence("map-ups", half="north" if code == UPS_NORTH else "south")
    datum, _, grid = name.partition(" / ")
    if not grid:
        return name
    utm = _UTM_NAME.fullmatch(grid)
    if utm:
        half = "north" if utm[2] == "N" else "south"
        return sentence("map-utm", zone=utm[1], half=half, datum=datum)
    return f"{grid}, {datum}"


def datum_uncertainty_m(code: str, crs: pyproj.CRS) -> float:
    """Give what PROJ says the step from WGS 84 is worth in the middle of the grid's area.

    Raises
    ------
    ValueError
        Where PROJ knows no such step: a guess could be off by hundreds of metres.
    """
    try:
        transformer = degrees_to_grid(code)
        transformer.transform(*_middle_of_use(crs))
        accuracy_m = float(transformer.get_last_used_operation().accuracy)
    except ProjError:
        accuracy_m = -1.0
    if accuracy_m < 0.0:
        message = (
            f"PROJ cannot tie the datum of {code} ({crs.name}) to WGS 84; use the UTM zone "
            "of the course and give the positions as latitude, longitude"
        )
        raise ValueError(message)
    return accuracy_m


def degrees_outside(crs: pyproj.CRS, longitude_deg: float, latitude_deg: float) -> float:
    """Give how far a place lies outside the grid's area, in degrees either way; 0 inside."""
    area = crs.area_of_use
    if area is None:
        return 0.0
    beyond_deg = max(0.0, area.south - latitude_deg, latitude_deg - area.north)
    whole_circle = area.east - area.west >= 360.0
    inside = wrap_degrees(longitude_deg - area.west) <= wrap_degrees(area.east - area.west)
    if not (whole_circle or inside):
        aside_deg = min(abs(turn_degrees(edge, longitude_deg)) for edge in (area.west, area.east))
        beyond_deg = max(beyond_deg, aside_deg)
    return beyond_deg


def _middle_of_use(crs: pyproj.CRS) -> tuple[float, float]:
    area = crs.area_of_use
    if area is None:
        return 0.0, 0.0
    # An area across the date line has its west edge at the greater longitude.
    east_deg = area.east + (360.0 if area.west > area.east else 0.0)
    return turn_degrees(0.0, (area.west + east_deg) / 2.0), (area.south + area.north) / 2.0
