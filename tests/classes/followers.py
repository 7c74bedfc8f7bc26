"""Somebody who walks behind another: the same way, seconds later and some metres aside."""

from __future__ import annotations

import numpy as np
from walks.families import CLEAN
from walks.random_drift import drift
from walks.receivers import Receiver, record
from walks.walk import Walk

from audit.track import Track


def walk_behind(
    rng: np.random.Generator, leader: Walk, receiver: Receiver, *, behind_s: float = 25.0
) -> Track:
    """Give the recording of one who walks in the leader's steps."""
    truth = leader.truth
    places = np.column_stack([truth.east_m, truth.north_m])
    aside = np.column_stack([drift(rng, len(places), 3.0, 60.0) for _ in range(2)])
    track, _ = record(
        rng,
        CLEAN,
        receiver,
        leader.course.grid,
        truth.time_s + behind_s,
        places + aside,
    )
    return track
