"""UTM coordinates with zone and letter, where the letter may be a band or a hemisphere."""

from __future__ import annotations

import re
from dataclasses import dataclass

from audit.geodesy.grids import course_grid, utm_zone_code
from audit.geodesy.utm_bands import BANDS, band_at, band_limits, in_band, latitude_text
from audit.positions import Position
from audit.readers.metres_text import MetrePair, metre_pairs
from audit.readers.position_reading import PositionReading, PositionRefusedError, two_readings
from audit.settings import ReadingSettings

_UTM = re.compile(r"(?:ZONE )?(\d{1,2}) ?([A-Z])[ ,;:]? ?([-+\dEN., 'M;/:=]+)", re.ASCII)
_NO_LETTER = re.compile(r"(\d{1,2}) (\d{6}(?:\.\d+)?),? (\d{6,8}(?:\.\d+)?)", re.ASCII)
_LIKE_THIS = 'Write it like "16S 441820 4142790": zone and band, easting, northing.'


def read_utm(text: str, limits: ReadingSettings) -> PositionReading | None:
    """Give the place of UTM coordinates; None where the text is not shaped like them.

    ``text`` is plain and in capitals.

    Raises
    ------
    PositionRefusedError
        For UTM coordinates that are no place, or two.
    """
    if _NO_LETTER.fullmatch(text):
        rule = "gives a UTM zone without its band letter"
        raise PositionRefusedError(rule, _LIKE_THIS)
    found = _UTM.fullmatch(text)
    pairs = metre_pairs(found[3].strip(), limits) if found else ()
    # Small numbers after zone and letter are degrees: "36N 84 15E".
    pairs = tuple(pair for pair in pairs if pair.far_from_origin(limits))
    if not found or not pairs:
        return None
    zone, letter = int(found[1]), found[2]
    rule = ""
    if not 1 <= zone <= 60:
        rule = f"names zone {zone}, but UTM zones run from 1 to 60"
    elif letter not in BANDS:
        rule = f"has {letter} as its band, but UTM bands run from C to X without I and O"
    if rule:
        raise PositionRefusedError(rule, _LIKE_THIS)
    return _place(zone, letter, _only_pair(pairs), limits.band_slack_deg)


def _only_pair(pairs: tuple[MetrePair, ...]) -> MetrePair:
    """Give the one reading that a zone can hold."""
    usable = [pair for pair in pairs if _on_the_zone(pair)]
    if not usable:
        rule = (
            f"has easting {pairs[0].east_m:.0f} and northing {pairs[0].north_m:.0f}, but UTM "
            "eastings run from 100000 to 900000 m and northings from 0 to 10000000 m"
        )
        raise PositionRefusedError(rule, "Check the digits, and that the easting comes first.")
    if len(usable) > 1:
        first, second = (f"{p.east_m:.10g} east {p.north_m:.10g} north" for p in usable[:2])
        raise two_readings(first, second, "Write plain metres without commas.")
    return usable[0]


def _on_the_zone(pair: MetrePair) -> bool:
    """Tell whether a zone has such coordinates (DMA TM 8358.2: 500 km false easting)."""
    return 100_000.0 <= pair.east_m <= 900_000.0 and 0.0 <= pair.north_m <= 10_000_000.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Candidate:
    """Where coordinates lie in one hemisphere."""

    longitude_deg: float
    latitude_deg: float
    grid_code: str


def _candidate(zone: int, pair: MetrePair, *, south: bool) -> _Candidate | None:
    code = utm_zone_code(zone, south=south)
    try:
        longitude_deg, latitude_deg = course_grid(code).to_geographic(pair.east_m, pair.north_m)
    except ValueError:
        return None
    if not -80.5 <= latitude_deg <= 84.5 or (-latitude_deg if south else latitude_deg) < -1e-6:
        return None
    return _Candidate(longitude_deg=longitude_deg, latitude_deg=latitude_deg, grid_code=code)


def _place(zone: int, letter: str, pair: MetrePair, slack_deg: float) -> PositionReading:
    """Take the letter as the band, or as the hemisphere where only that fits the northing."""
    place = _candidate(zone, pair, south=letter < "N")
    reading = ""
    if place is not None and in_band(letter, place.latitude_deg, slack_deg):
        if letter == "S":
            reading = "S taken as the latitude band (32 to 40 north), not as the south"
    elif letter in "NS":
        place = _candidate(zone, pair, south=letter == "S")
        side = "northern" if letter == "N" else "southern"
        reading = f"{letter} taken as the {side} hemisphere; as a latitude band it does not fit"
    else:
        place = None
    if place is None:
        raise _misfit(zone, letter, pair)
    position = Position(
        longitude_deg=place.longitude_deg,
        latitude_deg=place.latitude_deg,
        reading="; ".join(part for part in (reading, pair.how) if part),
    )
    return PositionReading(position=position, grid_code=place.grid_code)


def _misfit(zone: int, letter: str, pair: MetrePair) -> PositionRefusedError:
    low, high = (latitude_text(edge) for edge in band_limits(letter))
    rule = f"has band {letter} ({low} to {high}), which its northing does not fit"
    places = [_candidate(zone, pair, south=south) for south in (False, True)]
    fits = [
        f"band {band_at(place.latitude_deg)} ({latitude_text(place.latitude_deg)})"
        for place in places
        if place is not None
    ]
    remedy = f"The northing fits {' or '.join(fits)}; check both." if fits else _LIKE_THIS
    return PositionRefusedError(rule, remedy)
