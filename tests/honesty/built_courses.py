"""Courses built for the table: every length of leg at every rate of logging, often enough.

The usual families have few long legs logged every 30 s and few short ones logged every
15 s. Here each pair has walks of its own; who walks them, and with what receiver, is as
in the families, in turn.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from walks import DIFFICULTIES, Difficulty

LENGTHS_M = ((80.0, 150.0), (200.0, 400.0), (400.0, 800.0), (1000.0, 2000.0))
INTERVALS_S = (1.0, 5.0, 15.0, 30.0)
LEGS = (5, 9)
"""So many to a course, as far apart as that allows."""
FAMILIES = ("trained", "ordinary", "novice")


def built_difficulties() -> Iterator[Difficulty]:
    """Give a difficulty for each length, rate and family."""
    for low_m, high_m in LENGTHS_M:
        for interval_s in INTERVALS_S:
            for family in FAMILIES:
                yield replace(
                    DIFFICULTIES[family],
                    name=family,
                    legs=LEGS,
                    leg_m=(low_m, high_m),
                    leg_median_m=(low_m + high_m) / 2.0,
                    close_points=0.0,
                    interval_s=(interval_s,),
                    by_distance=0.0,
                    two_walks=0.0,
                    vehicle=0.0,
                )
