"""What scatter and measuring put into the misses of legs: what costs no more is ordinary."""

from __future__ import annotations

import math
from collections.abc import Iterable
from typing import Literal

from audit.diagnosis.walkers_scatter import WalkersScatter
from audit.measurement.leg_measures import LegMeasures
from audit.statistics.spread import TWO_SIDED_95
from audit.units import turned_aside_m

_MEAN_SIZE, _SIZE_SD = math.sqrt(2.0 / math.pi), math.sqrt(1.0 - 2.0 / math.pi)
"""Mean and standard deviation of the size of a normal error, over its own standard deviation."""

SizedPart = Literal["heading", "distance", "start"]


def part_sd_m(part: SizedPart, one: LegMeasures, scatter: WalkersScatter) -> float:
    """Give the standard deviation of a part of a miss, the walker's scatter and measuring added.

    Where a leg was begun scatters with no leg of its own: the one before has that.
    """
    planned_m = one.straight_m - one.distance_error_m
    scattered_m = {
        "heading": turned_aside_m(planned_m, scatter.turn_deg),
        "distance": planned_m * scatter.log_ratio,
        "start": 0.0,
    }[part]
    return math.hypot(scattered_m, measured_sd_m(part, one))


def measured_sd_m(part: SizedPart, one: LegMeasures) -> float:
    """Give the standard error of a part; where none was worked out, that of the miss."""
    if one.details is None:
        return one.miss_sd_m
    errors = one.details.ledger_errors
    return {
        "heading": errors.heading_m,
        "distance": errors.distance_m,
        "start": errors.inherited_m,
    }[part]


def ordinary_m(sds_m: Iterable[float]) -> float:
    """Give what errors of legs that lie to one side come to, added up, in 95 of 100 walks.

    They were picked by their side: each is known by its size alone, which scatters about four
    fifths of its standard deviation.
    """
    sds = list(sds_m)
    return _MEAN_SIZE * sum(sds) + TWO_SIDED_95 * _SIZE_SD * math.hypot(*sds)
