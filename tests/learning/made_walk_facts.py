"""What can be read off a walk of the two other makers, for their tests."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from walks.made_walk import MadeWalk

from audit.units import FloatArray, direction_degrees, turn_degrees


class RightLeg(NamedTuple):
    """A leg walked without a mistake, once, and recorded whole."""

    gap_at_start_m: float
    turn_deg: float
    length_ratio: float


def as_bytes(walk: MadeWalk) -> bytes:
    """Give all that a walk holds."""
    columns = (walk.points_m, walk.fix_time_s, walk.fix_m, walk.true_time_s, walk.true_m)
    return (
        b"".join(column.tobytes() for column in columns)
        + repr((walk.gm_angle_deg, walk.legs)).encode()
    )


def speeds_m_s(walk: MadeWalk) -> FloatArray:
    """Give the metres gone in each second of being out."""
    return np.hypot(*np.diff(walk.true_m, axis=0).T)


def errors_m(walk: MadeWalk) -> FloatArray:
    """Give how far each fix lies from where the walker was at that moment."""
    true_m = [np.interp(walk.fix_time_s, walk.true_time_s, walk.true_m[:, axis]) for axis in (0, 1)]
    return np.hypot(*(walk.fix_m.T - true_m))


def right_legs(walk: MadeWalk) -> list[RightLeg]:
    """Give the legs without a mistake as they lie beside the planned ones."""
    found = []
    for number, leg in enumerate(walk.legs):
        if leg.status != "walked" or leg.causes or len(leg.attempts) > 1:
            continue
        if leg.start_s <= walk.fix_time_s[0] + 1.0 or leg.claim_s >= walk.fix_time_s[-1] - 1.0:
            continue
        planned = walk.points_m[number + 1] - walk.points_m[number]
        way = walk.true_m[leg.claim_s] - walk.true_m[leg.start_s]
        gap = walk.true_m[leg.start_s] - walk.points_m[number]
        directions = [direction_degrees(float(one[0]), float(one[1])) for one in (planned, way)]
        found.append(
            RightLeg(
                gap_at_start_m=float(np.hypot(*gap)),
                turn_deg=turn_degrees(*directions),
                length_ratio=float(np.hypot(*way) / np.hypot(*planned)),
            )
        )
    return found


def check_moments(walk: MadeWalk) -> None:
    """Hold starts, claims and attempts in order, and within what was recorded."""
    assert np.array_equal(walk.true_time_s, np.arange(len(walk.true_m)))
    assert np.all(np.diff(walk.fix_time_s) > 0.0)
    assert len(walk.legs) == len(walk.points_m) - 1
    before = int(np.ceil(walk.fix_time_s[0]))
    for leg in walk.legs:
        assert (leg.start_s is not None) == (leg.status in ("walked", "unfinished"))
        if leg.start_s is None:
            assert leg.claim_s is None
            assert leg.attempts == ()
            continue
        assert leg.attempts[-1] == (leg.start_s, leg.claim_s)
        for start_s, claim_s in leg.attempts:
            assert before <= start_s < claim_s
            before = claim_s
    assert before <= walk.fix_time_s[-1] <= walk.true_time_s[-1]
