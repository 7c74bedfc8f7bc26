"""The one rule for digits: a figure shows no more than its standard error bears.

After the Guide to the Expression of Uncertainty in Measurement (JCGM 100:2008,
7.2.6): an uncertainty is quoted with two significant digits at most, and the figure
is rounded to the same place. On top of that, lengths are never finer than a metre,
and directions never finer than the leading digit of their 95 % interval, nor coarser
than a degree. Files for machines carry every digit.
"""

from __future__ import annotations

import math

from audit.units import wrap_degrees

_SIGNIFICANT_DIGITS = 2
_FINEST_LENGTH_PLACE = 0  # whole metres
_FINEST_ANGLE_PLACE = -1  # tenths of a degree
_COARSEST_ANGLE_PLACE = 0  # whole degrees: tens would show 116 as 120


def metres_place(standard_error_m: float) -> int:
    """Give the decimal place to which a length is shown: 0 for metres, 1 for tens of metres."""
    leading = _leading_place(standard_error_m, _SIGNIFICANT_DIGITS)
    return max(_FINEST_LENGTH_PLACE, leading - _SIGNIFICANT_DIGITS + 1)


def degrees_place(half_interval_deg: float) -> int:
    """Give the decimal place to which a direction is shown: -1 for tenths, 0 for degrees."""
    place = _leading_place(half_interval_deg, 1)
    return min(_COARSEST_ANGLE_PLACE, max(_FINEST_ANGLE_PLACE, place))


def to_place(value: float, place: int) -> str:
    """Write a number rounded to a decimal place, without a minus before zero."""
    rounded = round(value, -place)
    return f"{rounded or 0.0:.{max(0, -place)}f}"


def metres(value_m: float, standard_error_m: float) -> str:
    """Write a length: "111 m"."""
    return f"{to_place(value_m, metres_place(standard_error_m))} m"


def azimuth(degrees: float, half_interval_deg: float) -> str:
    """Write an azimuth in [0, 360) as its interval allows: "61°"."""
    return azimuth_to_place(degrees, degrees_place(half_interval_deg))


def azimuth_to_place(degrees: float, place: int) -> str:
    """Write an azimuth in [0, 360) to a decimal place; 359.97 to tenths is 0.0."""
    return f"{to_place(wrap_degrees(round(degrees, -place)), place)}°"


def angle(degrees: float, half_interval_deg: float) -> str:
    """Write the size of a turn as its interval allows: "7°"."""
    return f"{to_place(abs(degrees), degrees_place(half_interval_deg))}°"


def half_interval(half_interval_deg: float) -> str:
    """Write half a 95 % interval with its leading digit: "±1°"."""
    place = degrees_place(half_interval_deg)
    shown = max(10.0**place, round(half_interval_deg, -place))
    return f"±{to_place(shown, place)}°"


def card_azimuth(degrees: float) -> str:
    """Write an azimuth of the card, which is stated rather than measured, to a tenth."""
    return azimuth_to_place(degrees, _FINEST_ANGLE_PLACE)


def whole(value: float) -> str:
    """Write a count, or a stated length, without decimals."""
    return to_place(value, 0)


def percent(share: float) -> str:
    """Write a probability in whole percent, short of certainty at either end: "94 %"."""
    if share < 0.01:
        return "under 1 %"
    if share > 0.99:
        return "over 99 %"
    return f"{share * 100:.0f} %"


def _leading_place(value: float, digits: int) -> int:
    """Give the decimal place of the leading digit, as it stands after rounding to some digits."""
    if not value > 0.0:
        return -9
    place = math.floor(math.log10(value))
    rounded = round(value, digits - 1 - place)
    return place + 1 if rounded >= 10.0 ** (place + 1) else place
