"""The clock of a whole batch, put right by the first crossing of the start."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from audit.words import sentence


@dataclass(frozen=True, slots=True, kw_only=True)
class BatchClock:
    """What is added to the clocks of all recordings, and on what ground.

    ``pairs``: of how many starts, by the roster and by a recording, it is the middle.
    """

    shift_s: float = 0.0
    ground: str = ""
    pairs: int = 0


def by_first_crossing(pairs: Sequence[tuple[float, float]]) -> BatchClock | None:
    """Give the shift that brings crossings of the start to the roster's times.

    ``pairs`` hold (start by the roster, start left by the recording). The middle of all
    differences, to the second: a few who dawdled do not move it. None without a pair.
    """
    if not pairs:
        return None
    off_s = np.array([roster - left for roster, left in pairs])
    shift_s = float(np.round(np.median(off_s)))
    spread_s = float(np.median(np.abs(off_s - shift_s)))
    spread = f"{spread_s:.0f}"
    ground = sentence("shows-shift-crossing", count=str(len(pairs)), spread=spread)
    return BatchClock(shift_s=shift_s, ground=ground, pairs=len(pairs))
