"""Whether the grid-magnetic angle of the map is of the year of the walk."""

from __future__ import annotations

import datetime as dt

from audit.leg_card.records import CardFinding
from audit.leg_card.wording import east_or_west
from audit.magnetics.declination import Declination
from audit.plan import Plan
from audit.settings import CardSettings

_DAYS_A_YEAR = 365.25


def angle_age(
    plan: Plan, field: Declination | None, date: dt.date | None, settings: CardSettings
) -> tuple[CardFinding, ...]:
    """Find an angle older than a year, with the sum that brings it up to the day of the walk."""
    given_deg, of = plan.grid_magnetic_angle_deg, plan.grid_magnetic_angle_date
    if given_deg is None or of is None or date is None or (date - of).days <= settings.stale_days:
        return ()
    years = (date - of).days / _DAYS_A_YEAR
    said = f"The grid-magnetic angle is of {of.isoformat()}, {years:.1f} years before the walk."
    if field is None:
        message = f"{said} Bring it up to date by the annual change in the map's margin."
        current_deg = None
    else:
        moved_deg = years * field.yearly_change_deg
        current_deg = given_deg + moved_deg
        message = (
            f"{said} By the magnetic model it moves {east_or_west(field.yearly_change_deg, 2)} a "
            f"year, {east_or_west(moved_deg)} since then: {east_or_west(given_deg)} becomes "
            f"{east_or_west(current_deg)}."
        )
    return (
        CardFinding(
            leg=None,
            what="grid_magnetic_angle_date",
            given=of.isoformat(),
            computed=current_deg,
            message=message,
            slips=("gm-angle-stale",),
        ),
    )
