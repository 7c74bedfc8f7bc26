"""Where a leg's distance or paces disagree with its points or with each other."""

from __future__ import annotations

from collections.abc import Iterator

from audit.leg_card.leg_check import LegCheck
from audit.leg_card.legs import PointsSay
from audit.leg_card.records import CardFinding
from audit.leg_card.rounding import length_rounding

_HUNDREDS = (1, 2, 3, 10)
"""Miscounts of hundreds worth naming, and the whole grid square."""


def distance_against_points(check: LegCheck) -> Iterator[CardFinding]:
    """Hold the distance against the points."""
    given_m, said, settings = check.leg.distance_m, check.said, check.settings
    if given_m is None or said is None:
        return
    tolerance_m = (
        length_rounding(given_m, settings.distance_rounding_most_m)
        + settings.distance_slack * said.along_m
        + said.slack_m
    )
    if abs(given_m - said.along_m) <= tolerance_m:
        return
    way = "along its via positions" if check.leg.via else "between its points"
    message = (
        f"Leg {check.leg.name}: the plan gives {given_m:.0f} m; {way} it is "
        f"{said.along_m:.0f} m.{_distance_slip(given_m, said, tolerance_m)}"
    )
    yield CardFinding(
        leg=check.leg.name,
        what="distance_m",
        given=given_m,
        computed=said.along_m,
        message=message,
    )


def _distance_slip(given_m: float, said: PointsSay, tolerance_m: float) -> str:
    """Say which slip a wrong distance looks like; "" where none fits."""
    off_m = given_m - said.along_m
    hundreds = round(off_m / 100.0)
    fits = {
        "the straight line, not the one through the via positions": (
            said.first_stretch is not None and abs(given_m - said.chord_m) <= tolerance_m
        ),
        "a ruler for maps of twice the scale": abs(given_m - said.along_m / 2.0) <= tolerance_m,
        "a ruler for maps of half the scale": (
            abs(given_m - said.along_m * 2.0) <= 2.0 * tolerance_m
        ),
        f"{abs(hundreds)} hundred metres too {'much' if off_m > 0.0 else 'little'}": (
            abs(hundreds) in _HUNDREDS and abs(off_m - 100.0 * hundreds) <= tolerance_m < 50.0
        ),
    }
    fitting = [what for what, so in fits.items() if so]
    return f" It fits {', or '.join(fitting)}." if fitting else ""


def paces_against_distance(check: LegCheck) -> Iterator[CardFinding]:
    """Hold the paces against the card's distance at the plan's pace count."""
    given, rate, settings = check.leg.paces, check.paces_per_100m, check.settings
    if given is None or rate is None:
        return
    expected = check.distance_m * rate / 100.0
    step_m = length_rounding(check.distance_m, settings.distance_rounding_most_m)
    tolerance = (
        length_rounding(given, settings.pace_rounding_most)
        + settings.pace_slack * expected
        + step_m * rate / 100.0
    )
    if abs(given - expected) <= tolerance:
        return
    slip = ""
    if abs(given - 2.0 * expected) <= 2.0 * tolerance:
        slip = " It fits single paces counted for double ones."
    elif abs(given - expected / 2.0) <= tolerance:
        slip = " It fits double paces counted for single ones."
    message = (
        f"Leg {check.leg.name}: the plan gives {given:.0f} paces; {check.distance_m:.0f} m at "
        f"{rate:g} paces per 100 m is {expected:.0f}.{slip}"
    )
    yield CardFinding(
        leg=check.leg.name, what="paces", given=given, computed=expected, message=message
    )
