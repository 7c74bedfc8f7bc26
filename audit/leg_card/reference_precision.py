"""Whether the references of a leg's points are fine enough for what the leg needs."""

from __future__ import annotations

import math
from collections.abc import Iterator

from audit.leg_card.leg_check import LegCheck
from audit.leg_card.records import CardFinding

_TWO_SIDED_95 = 1.96
_FIGURES = {0.5: 10, 5.0: 8, 50.0: 6, 500.0: 4}
"""Half the square's side in metres, and the figures of such a grid reference."""


def reference_precision(check: LegCheck, arrival_radius_m: float) -> Iterator[CardFinding]:
    """Find a leg whose squares leave its azimuth, or its end, too open.

    Within its square a point is taken to lie anywhere alike: a standard deviation of half
    the side over the root of 3 on each axis.
    """
    said, settings = check.said, check.settings
    if said is None or said.azimuth is None:
        return
    start_m, end_m = check.start.half_square_m, check.end.half_square_m
    open_deg = math.degrees(
        math.atan(_TWO_SIDED_95 * math.hypot(start_m, end_m) / math.sqrt(3.0) / said.chord_m)
    )
    short = open_deg > settings.reference_azimuth_deg
    wide = end_m > arrival_radius_m
    if not short and not wide:
        return
    needs = []
    if short:
        needs.append(
            f"its azimuth only to ±{open_deg:.0f} degrees (95 %), and a compass holds "
            f"{settings.reference_azimuth_deg:g}"
        )
    if wide:
        needs.append(
            f"its end only to {end_m:.0f} m either way, and the arrival radius is "
            f"{arrival_radius_m:g} m"
        )
    message = (
        f"Leg {check.leg.name}, {said.chord_m:.0f} m: the references of its points"
        f"{_figures(max(start_m, end_m))} fix {'; they fix '.join(needs)}. Give finer references."
    )
    yield CardFinding(
        leg=check.leg.name,
        what="reference_precision",
        given=2.0 * max(start_m, end_m),
        computed=None,
        message=message,
    )


def _figures(half_m: float) -> str:
    figures = _FIGURES.get(half_m)
    return "" if figures is None else f" ({figures} figures, squares of {2.0 * half_m:g} m)"
