"""A slip in a reference that may explain a leg, and what speaks for looking for one."""

from __future__ import annotations

import math
from dataclasses import dataclass

from audit.leg_card.azimuth_checks import azimuths_against_points, grid_at_odds, leading_azimuth
from audit.leg_card.leg_check import LegCheck
from audit.leg_card.length_checks import distance_against_points, distance_tolerance_m, named_room_m
from audit.leg_card.written_reference import ReferenceSlip


@dataclass(frozen=True, slots=True, kw_only=True)
class Candidate:
    """A slip of a place that leaves nothing to object to; the best has the least ``key``."""

    name: str
    given: str
    slip: ReferenceSlip
    legs: frozenset[str]
    key: tuple[float, ...]


def misfits(check: LegCheck) -> list[float]:
    """Give how far each number of a leg is off its points, in tolerances."""
    said = check.said
    if said is None:
        return []
    off = []
    azimuth = leading_azimuth(check, said)
    if azimuth is not None:
        off.append(abs(azimuth.off_deg) / azimuth.tolerance_deg)
    given_m = check.leg.distance_m
    if given_m is not None:
        off.append(abs(given_m - said.along_m) / distance_tolerance_m(check, given_m, said))
    return off


def overlong(check: LegCheck) -> bool:
    """Tell whether a leg is longer than anyone walks in one, wherever its points lie in squares."""
    if check.said is None:
        return False
    within_m = math.sqrt(2.0) * (check.start.half_square_m + check.end.half_square_m)
    return check.said.chord_m - within_m > check.settings.long_leg_m


def fits_ill(check: LegCheck) -> bool:
    """Tell whether a leg is too long, or one of its numbers is off its points."""
    return overlong(check) or any(off > 1.0 for off in misfits(check))


def fits_well(check: LegCheck, before: LegCheck) -> bool:
    """Tell whether a leg is right once a place is moved.

    What was wrong before must then lie as near as rounding leaves it, or nearly any place
    would do.
    """
    if fits_ill(check):
        return False
    given_m, said = check.leg.distance_m, check.said
    if said is None or given_m is None or not fits_ill(before):
        return True
    return abs(given_m - said.along_m) <= named_room_m(check, given_m)


def explains_itself(check: LegCheck) -> bool:
    """Tell whether a slip in the leg's own numbers explains what is wrong with it."""
    if grid_at_odds(check) is not None:
        return True
    findings = (*azimuths_against_points(check), *distance_against_points(check))
    return any(finding.slips for finding in findings)
