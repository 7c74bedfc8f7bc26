"""The one angle with which a plan's own sums were made, where it is not the plan's."""

from __future__ import annotations

from collections.abc import Sequence

from audit.leg_card.finished_card import CardFinding
from audit.leg_card.leg_check import LegCheck
from audit.leg_card.rounding import grid_rounding_deg, plan_rounding_deg
from audit.leg_card.told_numbers import told_angle
from audit.units import turn_degrees
from audit.words import sentence


def shared_angle(checks: Sequence[LegCheck]) -> tuple[tuple[CardFinding, ...], str]:
    """Find an angle that all legs share in place of the plan's, and the sentence that says so.

    Two legs at least must give grid and magnetic azimuth. No finding, and "", where they
    do not agree among themselves, or agree with the plan.
    """
    used = [(_used_angle_deg(check), _rounding_deg(check), check) for check in checks]
    sums = [(angle_deg, room_deg) for angle_deg, room_deg, _ in used if angle_deg is not None]
    if len(sums) < 2:
        return (), ""
    first_deg = sums[0][0]
    offs = [turn_degrees(first_deg, angle_deg) for angle_deg, _ in sums]
    shared_deg = turn_degrees(0.0, first_deg + sum(offs) / len(offs))
    given_deg = checks[0].angles.grid_magnetic_angle_deg
    apart_deg = turn_degrees(given_deg, shared_deg)
    room_deg = max(room for _, room in sums)
    alike = all(abs(turn_degrees(shared_deg, angle_deg)) <= room for angle_deg, room in sums)
    if not alike or abs(apart_deg) <= room_deg + checks[0].angle_doubt_deg:
        return (), ""
    names = [check.leg.name for angle_deg, _, check in used if angle_deg is not None]
    shared = told_angle(shared_deg)
    message = sentence(
        "finding-shared-angle", count=len(names), shared=shared, given=told_angle(given_deg)
    )
    finding = CardFinding(
        leg=None,
        what="grid_magnetic_angle_deg",
        given=given_deg,
        computed=shared_deg,
        message=message,
    )
    return (finding,), sentence("finding-own-sum", angle=shared)


def _used_angle_deg(check: LegCheck) -> float | None:
    """Give the grid-magnetic angle that a leg's two azimuths make, None where one is missing."""
    leg = check.leg
    if leg.grid_azimuth is None or leg.magnetic_azimuth is None:
        return None
    return turn_degrees(leg.magnetic_azimuth.degrees, leg.grid_azimuth.degrees)


def _rounding_deg(check: LegCheck) -> float:
    magnetic = check.leg.magnetic_azimuth
    rounding_deg = 0.0 if magnetic is None else plan_rounding_deg(magnetic.degrees)
    return rounding_deg + grid_rounding_deg(check.leg)
