"""Which numbers of a leg nobody should go by yet: those that a check does not bear out."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from typing import Literal

from audit.azimuths import NorthAngles
from audit.leg_card.finished_card import CardFinding
from audit.leg_card.rounding import grid_rounding_deg, plan_rounding_deg
from audit.plan import PlannedLeg
from audit.units import turn_degrees

Turned = Literal["magnetic", "grid", ""]
Doubted = Literal["magnetic", "grid", "distance", "paces"]

_ALL: tuple[Doubted, ...] = ("magnetic", "grid", "distance", "paces")
_WHOLE_LEG = frozenset({"position", "via"})
"""What puts every number of a leg in doubt: where it begins, ends or goes along."""


def turned_azimuth(leg: PlannedLeg, *, straight: bool) -> Turned:
    """Tell which azimuth was got by the angle: on via positions only the grid one is known."""
    if not straight or leg.magnetic_azimuth is None:
        return "magnetic"
    return "grid" if leg.grid_azimuth is None else ""


def doubted_numbers(
    leg: PlannedLeg, findings: Iterable[CardFinding], *, straight: bool
) -> frozenset[Doubted]:
    """Give the numbers that a check disagrees with, and what the card made of them."""
    what = {finding.what for finding in findings if finding.leg == leg.name}
    if what & _WHOLE_LEG:
        return frozenset(_ALL)
    doubted: set[Doubted] = set()
    if straight:  # along via positions the azimuths are the positions' own
        doubted |= _azimuths(leg, what)
    if "distance_m" in what:
        doubted.add("distance")
    if "paces" in what or ("distance_m" in what and leg.paces is None):
        doubted.add("paces")
    return frozenset(doubted)


def _azimuths(leg: PlannedLeg, what: Collection[str]) -> set[Doubted]:
    leads = (
        "grid_azimuth_deg"
        if leg.grid_azimuth is not None
        else "magnetic_azimuth_deg"
        if leg.magnetic_azimuth is not None
        else "true_azimuth_deg"
    )
    doubted: set[Doubted] = {"grid"} if leads in what else set()
    turned_from_it = leads in what and leg.magnetic_azimuth is None
    return doubted | ({"magnetic"} if turned_from_it or "magnetic_azimuth_deg" in what else set())


def by_the_plans_angle(leg: PlannedLeg, angles: NorthAngles) -> bool:
    """Tell whether a plan's magnetic azimuth is its grid one less its angle, as both are rounded.

    Whoever wrote it so went by that angle, as the card does where the plan leaves it out.
    """
    if leg.grid_azimuth is None or leg.magnetic_azimuth is None:
        return False
    given_deg = leg.magnetic_azimuth.degrees
    off_deg = turn_degrees(angles.magnetic(leg.grid_azimuth).degrees, given_deg)
    return abs(off_deg) <= grid_rounding_deg(leg) + plan_rounding_deg(given_deg)
