"""Looking for company in a class that really walks together: how the work grows with its walkers.

Every pair then asks how long all other pairs would have been together, had they set off as far
apart: what is asked of one pair is asked of it by many.
"""

from __future__ import annotations

import sys
from pathlib import Path
from unittest import mock

import numpy as np

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests")]

WITHIN_S = 60.0
"""All set off within this, on one way."""


def all_together(walkers: int):
    """Make the walks of two hours of a class of which all go the same way, and their points."""
    from audit.classroom.walked_together import WalkOnClock

    rng = np.random.default_rng(walkers)
    since_s = 5.0 * np.arange(1440)
    walks = []
    for number, late_s in enumerate(rng.uniform(0.0, WITHIN_S, walkers)):
        aside = rng.normal(0.0, 4.0, (2, len(since_s)))
        walks.append(
            WalkOnClock(
                ident=f"w{number}",
                lane="A",
                begun_s=float(late_s),
                time_s=late_s + since_s,
                east_m=since_s + aside[0],
                north_m=200.0 * np.sin(since_s / 900.0) + aside[1],
            )
        )
    return walks, {"A": np.array([[0.0, 0.0], [3000.0, 0.0], [7200.0, 0.0]])}


def compared(walkers: int) -> tuple[int, int]:
    """Give how often two walks were laid side by side, and how many pairs there are."""
    from audit.classroom import walked_together
    from audit.settings.class_shows import ClassShowsSettings

    walks, points = all_together(walkers)
    with mock.patch.object(
        walked_together, "_in_steps", side_effect=walked_together._in_steps
    ) as asked:
        walked_together.walked_together(walks, points, ClassShowsSettings())
    return asked.call_count, walkers * (walkers - 1) // 2


def take_s(walkers: int) -> float:
    """Give the processor seconds of a class of so many."""
    from benchmarks.yardstick import processor_s

    from audit.classroom.walked_together import walked_together
    from audit.settings.class_shows import ClassShowsSettings

    walks, points = all_together(walkers)
    return processor_s(lambda: walked_together(walks, points, ClassShowsSettings()))
