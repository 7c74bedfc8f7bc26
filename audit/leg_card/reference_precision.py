"""Whether the references of a leg's points are fine enough for what the leg needs."""

from __future__ import annotations

import math
from collections.abc import Iterator

from audit.geodesy.shown_references import DIGITS_OF_HALF_SIDE
from audit.leg_card.finished_card import CardFinding
from audit.leg_card.leg_check import LegCheck
from audit.leg_card.told_numbers import told_distance
from audit.statistics.spread import TWO_SIDED_95
from audit.words import sentence
from audit.words.figures import Length, Listed, Turn


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
        math.atan(TWO_SIDED_95 * math.hypot(start_m, end_m) / math.sqrt(3.0) / said.chord_m)
    )
    short = open_deg > settings.reference_azimuth_deg
    wide = end_m > arrival_radius_m
    if not short and not wide:
        return
    needs = []
    if short:
        holds = Turn(degrees=settings.reference_azimuth_deg, degrees_decimals=0)
        to = Turn(degrees=open_deg, degrees_decimals=0)
        needs.append(sentence("finding-fix-azimuth", to=to, holds=holds))
    if wide:
        radius = told_distance(arrival_radius_m)
        needs.append(sentence("finding-fix-end", to=told_distance(end_m), radius=radius))
    message = sentence(
        "finding-coarse",
        leg=check.leg.name,
        length=Length(metres=said.chord_m),
        figures=_figures(max(start_m, end_m)),
        needs=Listed(things=needs, link="they-fix"),
    )
    yield CardFinding(
        leg=check.leg.name,
        what="reference_precision",
        given=2.0 * max(start_m, end_m),
        computed=None,
        message=message,
    )


def _figures(half_m: float) -> str:
    figures = DIGITS_OF_HALF_SIDE.get(half_m)
    if figures is None:
        return ""
    return sentence("finding-figures", figures=str(figures), square=f"{2.0 * half_m:g}")
