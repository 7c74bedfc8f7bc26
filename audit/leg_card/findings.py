"""Where a leg of the plan disagrees with its own sums."""

from __future__ import annotations

from audit.leg_card.azimuth_checks import azimuths_against_each_other, azimuths_against_points
from audit.leg_card.leg_check import LegCheck
from audit.leg_card.length_checks import distance_against_points, paces_against_distance
from audit.leg_card.records import CardFinding


def leg_findings(check: LegCheck) -> tuple[CardFinding, ...]:
    """Give every disagreement of one leg, azimuths first."""
    return (
        *azimuths_against_points(check),
        *azimuths_against_each_other(check),
        *distance_against_points(check),
        *paces_against_distance(check),
    )
