"""What the walker's own card says of a leg, beside what it should say."""

from __future__ import annotations

import math
from dataclasses import dataclass

Metres2 = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class OnPaper:
    """The walker's card against the course: exact but for reading off the map, and rounding.

    None wherever the card says nothing.

    Attributes
    ----------
    grid_turn_deg : float or None
        The card's grid azimuth less the course's: turned in measuring, or in plotting.
    magnetic_turn_deg : float or None
        The card's magnetic azimuth less the course's: the turn in converting as well.
    rounding_deg : float
        Half the step of the number that was written last.
    log_ratio, rounding_ratio : float or None, and float
        Logarithm of the card's distance (its paces, where it has some) over the planned one, and
        how finely that number is written.
    end_off_m : (east, north) or None
        The card's reference of the end less the course's; (0, 0) where it is the same place.
    slips : tuple of str
        The slips that lead from the right reference, or from the card's, to where the card leads.
    from_elsewhere : bool
        Azimuth and distance were measured from where the start was taken to be, and are right
        from there: no slip of this leg.
    """

    grid_turn_deg: float | None = None
    magnetic_turn_deg: float | None = None
    rounding_deg: float = 0.5
    log_ratio: float | None = None
    rounding_ratio: float = 0.0
    end_off_m: Metres2 | None = None
    slips: tuple[str, ...] = ()
    from_elsewhere: bool = False

    @property
    def turn_deg(self) -> float | None:
        """The turn of the last azimuth of the card: what was to be set."""
        return self.grid_turn_deg if self.magnetic_turn_deg is None else self.magnetic_turn_deg

    @property
    def end_off(self) -> float:
        """How far off the reference is, in metres; 0 without one."""
        return 0.0 if self.end_off_m is None else math.hypot(*self.end_off_m)
