"""Which UTM zone, or polar grid, a place belongs to."""

from __future__ import annotations

import math

# EPSG:32661 and EPSG:32761 are defined northing first, EPSG:5041 and EPSG:5042 are the
# same grids easting first. The order does not show: all our coordinates are east, north.
UPS_NORTH = "EPSG:32661"
UPS_SOUTH = "EPSG:32761"

SOUTH_LIMIT_DEG = -80.0
"""UTM ends here and UPS begins (DMA TM 8358.2, 1989, section 2-1)."""
NORTH_LIMIT_DEG = 84.0


def utm_zone(longitude_deg: float, latitude_deg: float) -> int:
    """Give the UTM zone, 1 to 60, with the exceptions of Norway and Svalbard.

    Zone 32 reaches west to 3 E between 56 and 64 N; from 72 N zones 31, 33, 35 and 37
    share the space of 31 to 37 (NGA.STND.0037; the same edges as the MGRS).
    """
    longitude_deg = (longitude_deg + 180.0) % 360.0 - 180.0
    if 56.0 <= latitude_deg < 64.0 and 3.0 <= longitude_deg < 12.0:
        return 32
    if latitude_deg >= 72.0 and 0.0 <= longitude_deg < 42.0:
        for zone, east_edge_deg in ((31, 9.0), (33, 21.0), (35, 33.0)):
            if longitude_deg < east_edge_deg:
                return zone
        return 37
    return min(math.floor((longitude_deg + 180.0) / 6.0), 59) + 1


def utm_zone_code(zone: int, *, south: bool) -> str:
    """Give the authority code of a UTM zone on WGS 84, such as "EPSG:32616".

    Raises
    ------
    ValueError
        For a zone outside 1 to 60.
    """
    if not 1 <= zone <= 60:
        message = f"{zone} is no UTM zone; zones run from 1 to 60"
        raise ValueError(message)
    return f"EPSG:{(32700 if south else 32600) + zone}"


def utm_code(longitude_deg: float, latitude_deg: float) -> str:
    """Give the code of the UTM grid of a place; beyond 84 N and 80 S of the polar grid (UPS).

    Raises
    ------
    ValueError
        For a longitude outside [-180, 180] or a latitude outside [-90, 90].
    """
    check_degrees(longitude_deg, latitude_deg)
    if latitude_deg > NORTH_LIMIT_DEG:
        return UPS_NORTH
    if latitude_deg < SOUTH_LIMIT_DEG:
        return UPS_SOUTH
    return utm_zone_code(utm_zone(longitude_deg, latitude_deg), south=latitude_deg < 0.0)


def check_degrees(longitude_deg: float, latitude_deg: float) -> None:
    """Raise ValueError, in one sentence, unless the two are a place on Earth."""
    if not -90.0 <= latitude_deg <= 90.0:
        message = f"latitude {latitude_deg} is out of range; it runs from -90 to 90"
        raise ValueError(message)
    if not -180.0 <= longitude_deg <= 180.0:
        message = f"longitude {longitude_deg} is out of range; it runs from -180 to 180"
        raise ValueError(message)
