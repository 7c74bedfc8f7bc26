"""The safety bearing with the grid-magnetic angle applied: what a lost walker sets and follows."""

from __future__ import annotations

from audit.azimuths import GridAzimuth, MagneticAzimuth, NorthAngles
from audit.leg_card.finished_card import SafetyBearing
from audit.plan import Plan


def safety_bearing(plan: Plan, angles: NorthAngles) -> SafetyBearing | None:
    """Give the safety bearing of a plan from both norths, None where it has none."""
    given = plan.safety_azimuth
    if given is None:
        return None
    if isinstance(given, MagneticAzimuth):
        grid, magnetic = angles.grid_from_magnetic(given), given
        return SafetyBearing(grid=grid, magnetic=magnetic, given="magnetic", note=plan.safety_note)
    if isinstance(given, GridAzimuth):
        magnetic = angles.magnetic(given)
        return SafetyBearing(grid=given, magnetic=magnetic, given="grid", note=plan.safety_note)
    grid = angles.grid_from_true(given)
    magnetic = angles.magnetic(grid)
    return SafetyBearing(grid=grid, magnetic=magnetic, given="true", note=plan.safety_note)
