"""The clicks of a lensatic compass's bezel: how many, which way, and what rounding leaves.

The bezel of a lensatic compass has a luminous line and 120 clicks of 3 degrees (FM 3-25.26,
9-2b). With that line over the black index line the compass is set to 0. Turned to the left
(anticlockwise, seen from above) by n clicks, the line stands n clicks left of the index;
who then turns until the north arrow lies under the line, faces n clicks right of north. So a
click to the left adds to the azimuth that is set, a click to the right (clockwise) takes off
(FM 3-25.26, chapter 9, night pre-set: azimuth divided by three, bezel to the left; recalled).
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from audit.azimuths import GridAzimuth, MagneticAzimuth, NorthAngles
from audit.units import turn_degrees

Hand = Literal["left", "right", ""]

_SAME = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class Clicks:
    """One way to set the bezel.

    Attributes
    ----------
    count : int
    hand : "left", "right" or ""
        Which way to turn, seen from above; "" for no click.
    azimuth : MagneticAzimuth
        What is then set.
    error_deg : float
        Set minus wanted, clockwise (right) positive.
    """

    count: int
    hand: Hand
    azimuth: MagneticAzimuth
    error_deg: float

    def ends_off_m(self, between: GridAzimuth, angles: NorthAngles, distance_m: float) -> float:
        """Give how far right of a point somebody ends who walks so far on what is set.

        ``between`` is the azimuth from where he stands to the point, which what the plan
        says of the way may miss by its rounding.
        """
        off_deg = between.turn_to(angles.grid_from_magnetic(self.azimuth))
        return distance_m * math.sin(math.radians(off_deg))


def clicks_to_set(wanted: MagneticAzimuth, click_deg: float) -> tuple[Clicks, ...]:
    """Give the clicks from the index line to an azimuth, the shorter way round.

    The nearest setting; both where two are equally near.
    """
    turn_deg = turn_degrees(0.0, wanted.degrees)
    return tuple(
        _clicks(wanted, MagneticAzimuth(0.0), count, click_deg)
        for count in _nearest(turn_deg / click_deg)
    )


def clicks_for_angle(
    grid_deg: float, wanted: MagneticAzimuth, click_deg: float, *, angle_deg: float | None = None
) -> tuple[Clicks, ...]:
    """Give the clicks that apply the grid-magnetic angle alone, from a grid azimuth as set.

    An angle east is taken off: to the right; an angle west is added: to the left. The two
    settings around the angle, the fewer clicks first, or the one that is exact. What they
    miss is told from ``wanted``, the magnetic azimuth of the card; ``angle_deg`` is the angle
    itself where that azimuth may be rounded.
    """
    begin = MagneticAzimuth(grid_deg)
    turn_deg = turn_degrees(begin.degrees, wanted.degrees) if angle_deg is None else -angle_deg
    exact = turn_deg / click_deg
    size = abs(exact)
    counts = {math.floor(size + _SAME), math.ceil(size - _SAME)}
    signed = [round(math.copysign(count, exact)) for count in sorted(counts)]
    return tuple(_clicks(wanted, begin, count, click_deg) for count in signed)


def is_whole_bezel(click_deg: float) -> bool:
    """Tell whether clicks of this size go round a bezel evenly."""
    if not 0.0 < click_deg <= 90.0:
        return False
    round_the_bezel = 360.0 / click_deg
    return abs(round_the_bezel - round(round_the_bezel)) < 1e-6


def _nearest(exact: float) -> list[int]:
    """Give the nearest whole number, or both where it lies half way, the nearer to 0 first."""
    low = math.floor(exact)
    if abs(exact - low - 0.5) < 1e-6:
        return sorted((low, low + 1), key=abs)
    return [round(exact)]


def _clicks(
    wanted: MagneticAzimuth, begin: MagneticAzimuth, leftward: int, click_deg: float
) -> Clicks:
    """Give the setting after so many clicks to the left (negative: to the right)."""
    azimuth = begin.turned(leftward * click_deg)
    hand: Hand = "" if leftward == 0 else "left" if leftward > 0 else "right"
    return Clicks(
        count=abs(leftward), hand=hand, azimuth=azimuth, error_deg=wanted.turn_to(azimuth)
    )
