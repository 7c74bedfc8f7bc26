"""A place and a heading as they were measured: frozen records, no arithmetic."""

from __future__ import annotations

from dataclasses import dataclass

from audit.azimuths import GridAzimuth
from audit.statistics.spread import TWO_SIDED_95
from audit.units import turn_degrees, wrap_degrees

_WIDENED = 1.5
"""An error so many times that of the portion is mostly doubt about the match; chosen."""


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

    @property
    def own_sd_deg(self) -> float:
        """The standard error if the leg is this portion: that it may not be is weighed apart."""
        return self.sd_deg if self.as_matched_sd_deg is None else self.as_matched_sd_deg

    @property
    def widened(self) -> bool:
        """Whether most of the interval is the doubt whether the leg is this portion at all."""
        return self.sd_deg > _WIDENED * self.own_sd_deg

    @property
    def as_told_95_deg(self) -> tuple[float, float]:
        """The interval of the portion that is told, in [0, 360).

        Where the match is in doubt, another portion may lead anywhere: an interval that
        holds both would say nothing of either. The doubt is told by itself.
        """
        if not self.widened:
            return self.low_deg, self.high_deg
        half_deg = min(TWO_SIDED_95 * self.own_sd_deg, 179.0)
        azimuth_deg = self.azimuth.degrees
        return wrap_degrees(azimuth_deg - half_deg), wrap_degrees(azimuth_deg + half_deg)

    @property
    def told_half_95_deg(self) -> float:
        """Half of that interval."""
        low_deg, high_deg = self.as_told_95_deg
        return wrap_degrees(turn_degrees(low_deg, high_deg)) / 2.0

    def may_be(self, azimuth_deg: float) -> bool:
        """Tell whether an azimuth lies within the interval that is told."""
        low_deg, high_deg = self.as_told_95_deg
        return wrap_degrees(azimuth_deg - low_deg) <= wrap_degrees(high_deg - low_deg)
