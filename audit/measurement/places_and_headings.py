"""A place and a heading as they were measured: frozen records, no arithmetic."""

from __future__ import annotations

from dataclasses import dataclass

from audit.azimuths import GridAzimuth


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where the walker was at one moment. ``time_s`` is None in a recording without times."""

    fix: int
    time_s: float | None
    east_m: float
    north_m: float
    longitude_deg: float
    latitude_deg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Heading:
    """The direction of a leg's walking with its 95 % interval.

    ``low_deg`` and ``high_deg`` are in [0, 360) and may straddle north.
    ``sd_deg`` is the standard error that the interval stands for; ``as_matched_sd_deg``
    leaves out the doubt whether the leg is this portion at all, and is None where it is
    the same.
    """

    azimuth: GridAzimuth
    low_deg: float
    high_deg: float
    sd_deg: float
    as_matched_sd_deg: float | None = None
