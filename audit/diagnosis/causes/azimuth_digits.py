"""Two digits of the azimuth were swapped, or one is wrong."""

from __future__ import annotations

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


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect M with two digits swapped, most often neighbours, or with one digit wrong."""
    magnetic, least = leg.planned_magnetic_deg, settings.least_digit_turn_deg
    digits = f"{round(magnetic) % 360:03d}"
    ways = [
        (_swapped(digits, first, second), weight)
        for first, second, weight in settings.azimuth_swaps
    ]
    ways += [(read, settings.azimuth_wrong_digit) for read in _with_one_wrong(digits)]
    return tuple(
        Expected(
            weight=weight,
            turn_deg=turn_degrees(float(round(magnetic)), float(read)),
            logged=settings.slip_logged,
            converted=settings.made_on_paper,
        )
        for read, weight in ways
        if int(read) < 360 and abs(turn_degrees(magnetic, float(read))) >= least
    )


CAUSE = Cause(
    name="azimuth-digits",
    kind="turn",
    expects=expects,
)
