"""What each number of a plan or log may be, and the check that says so."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cache

from audit.readers.degrees_text import written_angle
from audit.readers.number_text import number_readings
from audit.readers.problem_list import ProblemList
from audit.settings import ReadingSettings


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """The range of a number; the low end itself is out where ``above_low`` is set."""

    low: float
    high: float
    unit: str
    remedy: str
    above_low: bool = False

    def hold(self, value: float) -> bool:
        """Tell whether a value lies inside."""
        return (self.low < value if self.above_low else self.low <= value) and value <= self.high

    def __str__(self) -> str:
        low = f"above {self.low:g}, up" if self.above_low else f"{self.low:g}"
        return f"{low} to {self.high:g} {self.unit}"


_DEGREES = Limits(
    low=0.0,
    high=360.0,
    unit="degrees",
    remedy="Azimuths run clockwise from north; a value in mils goes under the same name in _mil.",
)
_MILS = Limits(
    low=0.0,
    high=6400.0,
    unit="mils",
    remedy="Azimuths run clockwise from north, 6400 mils to the circle.",
)
NORTHS = ("grid", "magnetic", "true")
AZIMUTH_KEYS = tuple(f"{north}_azimuth_{unit}" for north in NORTHS for unit in ("deg", "mil"))

LEG_NUMBER_KEYS = (
    *AZIMUTH_KEYS, "distance_m", "paces", "grid_azimuth_half_step_deg", "distance_half_step_m",
)  # fmt: skip

SAFETY_KEYS = tuple(f"safety_{key}" for key in AZIMUTH_KEYS)


_WITHOUT_SETTINGS = {
    key: _DEGREES if key.endswith("_deg") else _MILS for key in (*AZIMUTH_KEYS, *SAFETY_KEYS)
} | {
    "grid_magnetic_angle_deg": Limits(
        low=-180.0,
        high=180.0,
        unit="degrees",
        remedy="Write the angle from grid north to magnetic north, east positive.",
    ),
    "declination_deg": Limits(
        low=-180.0,
        high=180.0,
        unit="degrees",
        remedy="Write the angle from true north to magnetic north, east positive.",
    ),
}


@cache
def limits_by(settings: ReadingSettings) -> dict[str, Limits]:
    """Give what each number of a plan or log may be, by its key."""
    return _WITHOUT_SETTINGS | _of_leg(settings) | _of_course(settings)


def _of_leg(settings: ReadingSettings) -> dict[str, Limits]:
    return {
        "distance_m": Limits(
            low=0.0,
            high=settings.longest_leg_m,
            unit="metres",
            remedy="Write the map distance of the leg in metres.",
            above_low=True,
        ),
        "paces": Limits(
            low=0.0,
            high=settings.most_paces,
            unit="paces",
            remedy="Write the paces of the whole leg.",
            above_low=True,
        ),
        "grid_azimuth_half_step_deg": Limits(
            low=0.0,
            high=settings.largest_half_step_deg,
            unit="degrees",
            remedy="Write half of the last step of the azimuth before it was converted.",
        ),
        "distance_half_step_m": Limits(
            low=0.0,
            high=settings.largest_half_step_m,
            unit="metres",
            remedy="Write half of the last step of the distance before it was converted.",
        ),
        "half_square_m": Limits(
            low=0.0,
            high=settings.largest_half_square_m,
            unit="metres",
            remedy="Write within how many metres, east and north, the place is known.",
        ),
    }


def _of_course(settings: ReadingSettings) -> dict[str, Limits]:
    return {
        "paces_per_100m": Limits(
            low=settings.paces_per_100m_low,
            high=settings.paces_per_100m_high,
            unit="paces",
            remedy="Write how many paces the walker counts in 100 m, single or double.",
        ),
        "arrival_radius_m": Limits(
            low=0.0,
            high=settings.largest_arrival_radius_m,
            unit="metres",
            remedy="Write within how many metres of a point the walker has arrived.",
            above_low=True,
        ),
    }


_BETWEEN_NORTHS = ("grid_magnetic_angle_deg", "declination_deg")
"""Maps print these with minutes, and with a side in place of a sign."""


def checked_number(
    value: object, key: str, place: str, problems: ProblemList, limits: Limits | None = None
) -> float | None:
    """Give a typed value as a number inside its limits; otherwise put a problem down.

    ``limits`` are those of the key where left out. An angle between norths may be text with
    its parts, or its side: "2°48'", "4.5° W".
    """
    limits = limits or limits_by(problems.limits)[key]
    if isinstance(value, str) and key in _BETWEEN_NORTHS:
        parted = written_angle(value)
        value = value if parted is None else parted
    if isinstance(value, str):
        readings = number_readings(value)
        remedy = limits.remedy
        if readings:
            remedy = "Write it without quotation marks and with a decimal point"
            remedy += f": {key} = {readings[0].value:g}." if len(readings) == 1 else "."
        problems.add(place, value, "is text where a number is wanted", remedy)
    elif isinstance(value, bool) or not isinstance(value, int | float):
        problems.add(place, value, "is not a number", limits.remedy)
    elif isinstance(value, float) and not math.isfinite(value):
        problems.add(place, value, "is not a finite number", limits.remedy)
    elif not limits.hold(value):
        problems.add(place, value, f"is out of range ({limits})", limits.remedy)
    else:
        return float(value)
    return None
