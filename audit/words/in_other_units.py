"""The units that a tradition counts in, and the rule for digits in any of them.

After the Guide to the Expression of Uncertainty in Measurement (JCGM 100:2008, 7.2.6): an
uncertainty is quoted with two significant digits at most, and the figure is rounded to
the same place. On top of that, lengths are never finer than a metre or a yard, and
directions never finer than the leading digit of their 95 % interval, nor coarser than
about a degree. All of it is done in the unit that is shown.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal, get_args

AngleUnit = Literal["degrees", "mil6400", "mil6300", "mil6000", "gon"]
LengthUnit = Literal["metres", "yards"]
PaceUnit = Literal["single", "double"]
ANGLE_UNITS: tuple[AngleUnit, ...] = get_args(AngleUnit)
LENGTH_UNITS: tuple[LengthUnit, ...] = get_args(LengthUnit)
PACE_UNITS: tuple[PaceUnit, ...] = get_args(PaceUnit)

CIRCLE: dict[AngleUnit, int] = {
    "degrees": 360, "mil6400": 6400, "mil6300": 6300, "mil6000": 6000, "gon": 400
}  # fmt: skip
"""To the circle. The gon is a right angle over 100 (ISO 80000-3:2019, table 3); the mil of
6400 is that of FM 21-26 (1993), those of 6300 and 6000 are common practice, no source."""
METRES: dict[LengthUnit, float] = {"metres": 1.0, "yards": 0.9144}
"""The international yard (agreement of 1959; NIST Special Publication 811, B.6)."""
ANGLE_SIGN: dict[AngleUnit, str] = {
    "degrees": "°", "mil6400": " mil", "mil6300": " mil", "mil6000": " mil", "gon": " gon"
}  # fmt: skip
LENGTH_SIGN: dict[LengthUnit, str] = {"metres": "m", "yards": "yd"}

_SIGNIFICANT_DIGITS = 2
_FINEST_LENGTH_PLACE = 0
_ANGLE_PLACES: dict[AngleUnit, tuple[int, int]] = {
    "degrees": (-1, 0), "mil6400": (0, 1), "mil6300": (0, 1), "mil6000": (0, 1), "gon": (-1, 0)
}  # fmt: skip
"""Finest and coarsest place: tens of degrees would show 116 as 120."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Units:
    """What figures are shown in.

    Attributes
    ----------
    angle, length : str
        Of azimuths and turns; of distances. Heights, the grid of the map and speeds keep
        metres and kilometres.
    paces : "single", "double" or None
        Which paces are shown; None leaves counts as they are, called by their kind where
        that is known.
    paces_counted : "single", "double" or None
        Which the walker counts; None where they are those that are shown.
    """

    angle: AngleUnit = "degrees"
    length: LengthUnit = "metres"
    paces: PaceUnit | None = None
    paces_counted: PaceUnit | None = None

    def angle_from(self, degrees: float) -> float:
        """Give an angle in the unit shown."""
        return degrees * CIRCLE[self.angle] / 360.0

    def length_from(self, metres: float) -> float:
        """Give a length in the unit shown."""
        return metres / METRES[self.length]

    def paces_from(self, counted: float) -> float:
        """Give a count of paces in those shown."""
        if self.paces is None or self.paces_counted in {None, self.paces}:
            return counted
        return counted * 2.0 if self.paces == "single" else counted / 2.0

    def length_place(self, standard_error_m: float) -> int:
        """Give the decimal place to which a length is shown: 0 for ones, 1 for tens."""
        leading = leading_place(self.length_from(standard_error_m), _SIGNIFICANT_DIGITS)
        return max(_FINEST_LENGTH_PLACE, leading - _SIGNIFICANT_DIGITS + 1)

    def angle_place(self, half_interval_deg: float) -> int:
        """Give the decimal place to which a direction is shown: -1 for tenths, 0 for ones."""
        finest, coarsest = _ANGLE_PLACES[self.angle]
        if "mil" in self.angle:
            # Ones where degrees have tenths: the leading digit alone would be five times coarser.
            return finest if leading_place(half_interval_deg, 1) < 0 else coarsest
        place = leading_place(self.angle_from(half_interval_deg), 1)
        return min(coarsest, max(finest, place))

    def stated_angle_place(self, degrees_place: int = -1) -> int:
        """Give the place of an angle that is stated rather than measured.

        ``degrees_place`` is the place to which it is stated in degrees; mils are an
        eighteenth of a degree, so they take one place less. Whole degrees are told in whole
        mils: 3 degrees are 53 mils and not 50.
        """
        return min(0, degrees_place + 1) if "mil" in self.angle else degrees_place

    def as_stated(self, degrees: float, degrees_place: int = -1) -> float:
        """Give an angle as it is shown where it is stated, in degrees again."""
        place = self.stated_angle_place(degrees_place)
        return round(self.angle_from(degrees), -place) * 360.0 / CIRCLE[self.angle]


def to_place(value: float, place: int) -> str:
    """Write a number rounded to a decimal place, without a minus before zero."""
    rounded = round(value, -place)
    return f"{rounded or 0.0:.{max(0, -place)}f}"


def leading_place(value: float, digits: int) -> int:
    """Give the decimal place of the leading digit, as it stands after rounding to some digits."""
    if not value > 0.0:
        return -9
    place = math.floor(math.log10(value))
    rounded = round(value, digits - 1 - place)
    return place + 1 if rounded >= 10.0 ** (place + 1) else place
