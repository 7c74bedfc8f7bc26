"""Two digits of the azimuth were swapped, or one is wrong."""

from __future__ import annotations

import math
from collections.abc import Iterator

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings
from audit.units import turn_degrees


def _swapped(digits: str, first: int, second: int) -> str:
    swapped = list(digits)
    swapped[first], swapped[second] = swapped[second], swapped[first]
    return "".join(swapped)


def _with_one_wrong(digits: str) -> Iterator[str]:
    for place in range(3):
        for digit in "0123" if place == 0 else "0123456789":
            if digit != digits[place]:
                yield digits[:place] + digit + digits[place + 1 :]


def _written(magnetic_deg: float, settings: DiagnosisSettings) -> tuple[int, ...]:
    """Give the whole degrees that an azimuth is written down as: one, or either of two."""
    nearest = round(magnetic_deg)
    if abs(magnetic_deg - nearest) < settings.whole_either_deg:
        return (nearest,)
    return math.floor(magnetic_deg), math.ceil(magnetic_deg)


def _slips(whole: int, settings: DiagnosisSettings) -> Iterator[tuple[str, float]]:
    """Give what slips of its digits make of a written azimuth, and how often each is made."""
    digits = f"{whole % 360:03d}"
    for first, second, weight in settings.azimuth_swaps:
        yield _swapped(digits, first, second), weight
    for read in _with_one_wrong(digits):
        yield read, settings.azimuth_wrong_digit


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect M with two digits swapped, most often neighbours, or with one digit wrong."""
    magnetic, least = leg.planned_magnetic_deg, settings.least_digit_turn_deg
    written = _written(magnetic, settings)
    return tuple(
        Expected(
            weight=weight / len(written),
            turn_deg=turn_degrees(float(whole), float(read)),
            logged=settings.slip_logged,
            converted=settings.made_on_paper,
        )
        for whole in written
        for read, weight in _slips(whole, settings)
        if int(read) < 360 and abs(turn_degrees(magnetic, float(read))) >= least
    )


CAUSE = Cause(
    name="azimuth-digits",
    kind="turn",
    expects=expects,
)
