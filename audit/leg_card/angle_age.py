"""Whether the grid-magnetic angle of the map is of the year of the walk."""

from __future__ import annotations

import datetime as dt

from audit.leg_card.records import CardFinding
from audit.leg_card.wording import told_angle
from audit.magnetics.declination import Declination
from audit.plan import Plan
from audit.settings import CardSettings
from audit.words import sentence
from audit.words.figures import Number

_DAYS_A_YEAR = 365.25


def angle_age(
    plan: Plan, field: Declination | None, date: dt.date | None, settings: CardSettings
) -> tuple[CardFinding, ...]:
    """Find an angle older than a year, with the sum that brings it up to the day of the walk."""
    given_deg, of = plan.grid_magnetic_angle_deg, plan.grid_magnetic_angle_date
    if given_deg is None or of is None or date is None or (date - of).days <= settings.stale_days:
        return ()
    years = (date - of).days / _DAYS_A_YEAR
    said = sentence("finding-angle-age", of=of.isoformat(), years=Number(value=years, decimals=1))
    if field is None:
        message = sentence("finding-angle-bring-up", said=said)
        current_deg = None
    else:
        moved_deg = years * field.yearly_change_deg
        current_deg = given_deg + moved_deg
        message = sentence(
            "finding-angle-moves",
            said=said,
            yearly=told_angle(field.yearly_change_deg, 2),
            moved=told_angle(moved_deg),
            given=told_angle(given_deg),
            current=told_angle(current_deg),
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
