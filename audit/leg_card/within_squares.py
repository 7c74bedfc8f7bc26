"""What the squares of a leg's references leave open: how long it is, and where it leads."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.units import FloatArray, direction_degrees, turn_degrees


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """How far a line may be off the one between the middles of the squares of its places.

    The bounds are the edges of the squares: beyond them no place of the squares lies.

    Attributes
    ----------
    shorter_m, longer_m : float
        Of the way along the line.
    left_deg, right_deg : float
        Of the direction straight from start to end; 180 where the squares meet.
    """

    shorter_m: float = 0.0
    longer_m: float = 0.0
    left_deg: float = 0.0
    right_deg: float = 0.0

    def metres(self, off_m: float) -> float:
        """Give the room on the side on which a length is off: negative is shorter."""
        return self.shorter_m if off_m < 0.0 else self.longer_m

    def degrees(self, off_deg: float) -> float:
        """Give the room on the side on which a direction is off: negative is to the left."""
        return self.left_deg if off_deg < 0.0 else self.right_deg


def room_within(line: FloatArray, half_m: FloatArray) -> Room:
    """Give what squares about the places of a line leave open.

    Parameters
    ----------
    line : float array, shape (k, 2)
        Middles of the squares on the grid, metres.
    half_m : float array, shape (k,)
        Half the sides of the squares; 0 for a place.
    """
    # Seen from one place the next lies anywhere in a square of both sides together.
    step, both_m = np.abs(np.diff(line, axis=0)), (half_m[:-1] + half_m[1:])[:, None]
    length_m = np.hypot(*step.T)
    nearest_m = np.hypot(*np.maximum(step - both_m, 0.0).T)
    farthest_m = np.hypot(*(step + both_m).T)
    left_deg, right_deg = _turns(line[-1] - line[0], float(half_m[0] + half_m[-1]))
    return Room(
        shorter_m=float((length_m - nearest_m).sum()),
        longer_m=float((farthest_m - length_m).sum()),
        left_deg=left_deg,
        right_deg=right_deg,
    )


def _turns(chord: FloatArray, half_m: float) -> tuple[float, float]:
    """Give how far to the left and to the right of its middle a square is seen."""
    east_m, north_m = float(chord[0]), float(chord[1])
    if half_m == 0.0:
        return 0.0, 0.0
    if max(abs(east_m), abs(north_m)) <= half_m:
        return 180.0, 180.0
    middle_deg = direction_degrees(east_m, north_m)
    turns = [
        turn_degrees(middle_deg, direction_degrees(east_m + right_m, north_m + up_m))
        for right_m in (-half_m, half_m)
        for up_m in (-half_m, half_m)
    ]
    return -min(turns), max(turns)
