"""Whether a grid-magnetic angle can be right in any year, where the plan has no date."""

from __future__ import annotations

import datetime as dt

from audit.leg_card.angle_finding import angle_finding
from audit.leg_card.finished_card import CardFinding
from audit.leg_card.told_numbers import told_angle
from audit.magnetics.declination import declination
from audit.positions import Position
from audit.settings import CardSettings
from audit.units import turn_degrees

_ANY_DAY = dt.date(2025, 1, 1)
"""The first day of the newest magnetic model at hand."""


def undated_angle(
    given_deg: float | None, first: Position, convergence_deg: float, settings: CardSettings
) -> tuple[CardFinding, ...]:
    """Find an angle that no year of a map in use comes near."""
    if given_deg is None:
        return ()
    field = declination(first.longitude_deg, first.latitude_deg, date=_ANY_DAY)
    model_deg = turn_degrees(convergence_deg, field.degrees)
    off_deg, tolerance_deg = turn_degrees(model_deg, given_deg), settings.undated_slack_deg
    if abs(off_deg) <= tolerance_deg or field.horizontal_nt < settings.weak_field_nt:
        return ()
    found = angle_finding(
        "finding-undated",
        given_deg,
        model_deg,
        convergence_deg,
        tolerance_deg,
        year=str(_ANY_DAY.year),
        model=told_angle(model_deg),
    )
    return (found,)
