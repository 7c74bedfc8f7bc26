"""Figures as reports write them: no digit more than the error bears, in the units in force.

The rule stands in `audit.words.in_other_units`. Files for machines carry every digit.
"""

from __future__ import annotations

from audit.words import in_force
from audit.words.figures import Azimuth, HalfInterval, Length, Share, Turn
from audit.words.in_other_units import to_place


def metres_place(standard_error_m: float) -> int:
    """Give the decimal place to which a length is shown: 0 for ones, 1 for tens."""
    return in_force().units.length_place(standard_error_m)


def degrees_place(half_interval_deg: float) -> int:
    """Give the decimal place to which a direction is shown: -1 for tenths, 0 for ones."""
    return in_force().units.angle_place(half_interval_deg)


def metres(value_m: float, standard_error_m: float) -> str:
    """Write a length: "111 m"."""
    return Length(metres=value_m, standard_error_m=standard_error_m).shown(in_force())


def stated_metres(value_m: float) -> str:
    """Write a length that is stated rather than measured: "30 m"."""
    return Length(metres=value_m).shown(in_force())


def azimuth(degrees: float, half_interval_deg: float) -> str:
    """Write an azimuth in [0, 360) as its interval allows: "61°"."""
    return Azimuth(degrees=degrees, half_interval_deg=half_interval_deg).shown(in_force())


def azimuth_to_place(degrees: float, place: int) -> str:
    """Write an azimuth in [0, 360) to a decimal place; 359.97 to tenths is 0.0."""
    return Azimuth(degrees=degrees, degrees_decimals=-place).shown(in_force())


def angle(degrees: float, half_interval_deg: float) -> str:
    """Write the size of a turn as its interval allows: "7°"."""
    return Turn(degrees=degrees, half_interval_deg=half_interval_deg).shown(in_force())


def half_interval(half_interval_deg: float) -> str:
    """Write half a 95 % interval with its leading digit: "±1°"."""
    return HalfInterval(degrees=half_interval_deg).shown(in_force())


def card_azimuth(degrees: float) -> str:
    """Write an azimuth of the card, which is stated rather than measured, to a tenth."""
    return azimuth_to_place(degrees, -1)


def whole(value: float) -> str:
    """Write a count, or a stated length in metres, without decimals."""
    return to_place(value, 0)


def percent(share: float) -> str:
    """Write a probability in whole percent, short of certainty at either end: "94 %"."""
    return Share(share=share).shown(in_force())
