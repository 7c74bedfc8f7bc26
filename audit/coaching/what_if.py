"""Where a leg would have ended with the planned azimuth, or with the planned distance."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.coaching.what_if_errors import end_errors
from audit.leg_card import CardLeg
from audit.measurement.leg_measures import LegMeasures
from audit.units import FloatArray, unit_vector


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherEnd:
    """Where a leg would have ended, from its planned point.

    Attributes
    ----------
    east_m, north_m : float
        The miss that would have been.
    miss_m : float
        Its size.
    sd_m : float
        Its standard error per axis.
    """

    east_m: float
    north_m: float
    miss_m: float
    sd_m: float


@dataclass(frozen=True, slots=True, kw_only=True)
class WhatIf:
    """What one thing done right would have been worth, all else as it was walked."""

    planned_azimuth: OtherEnd
    planned_distance: OtherEnd


def what_if(card: CardLeg, measures: LegMeasures | None) -> WhatIf | None:
    """Give two ends of a walked leg that it did not have; None where there is nothing to alter.

    So it is of a leg not walked, and of one that was under way when the recording began: how
    far it was walked nobody saw.

    With D the planned and d the walked length, u the planned and e the walked direction,
    the planned azimuth takes d (e - u) off the miss, the planned distance (d - D) e.
    """
    if measures is None or measures.under_way:
        return None
    planned, length_m = unit_vector(card.azimuth.degrees), card.distance_m
    if len(card.line) > 2:  # measured between the ends of its line, as in the ledger
        vector = card.line[-1] - card.line[0]
        length_m = float(np.hypot(*vector))
        planned = vector / length_m if length_m else planned
    walked = unit_vector(measures.heading.azimuth.degrees)
    way = np.array(
        [
            measures.claim.east_m - measures.start.east_m,
            measures.claim.north_m - measures.start.north_m,
        ]
    )
    along_m = float(way @ walked)
    total = np.array(measures.ledger.total)
    errors = end_errors(card, measures, along_m)
    return WhatIf(
        planned_azimuth=_end(
            total - along_m * (walked - planned),
            errors.of_planned_azimuth(float(planned @ walked), along_m),
        ),
        planned_distance=_end(
            total - (along_m - length_m) * walked,
            errors.of_planned_distance(length_m, along_m),
        ),
    )


def _end(miss: FloatArray, sd_m: float) -> OtherEnd:
    return OtherEnd(
        east_m=float(miss[0]), north_m=float(miss[1]), miss_m=float(np.hypot(*miss)), sd_m=sd_m
    )
