"""Whether a grid-magnetic angle can be right in any year, where the plan has no date."""

from __future__ import annotations

import datetime as dt

from audit.leg_card.records import CardFinding
from audit.leg_card.slips import angle_slips, fitting_slips, slip_names, slip_sentence
from audit.leg_card.wording import told_angle
from audit.magnetics.declination import declination
from audit.positions import Position
from audit.settings import CardSettings
from audit.units import turn_degrees
from audit.words import sentence

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
    slips = angle_slips(given_deg, model_deg, convergence_deg)
    fitting = fitting_slips(off_deg, slips, tolerance_deg)
    message = sentence(
        "finding-undated",
        given=told_angle(given_deg),
        year=str(_ANY_DAY.year),
        model=told_angle(model_deg),
        slips=slip_sentence(fitting),
    )
    return (
        CardFinding(
            leg=None,
            what="grid_magnetic_angle_deg",
            given=given_deg,
            computed=model_deg,
            message=message,
            slips=slip_names(fitting),
        ),
    )
