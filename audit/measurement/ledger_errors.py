"""How sure each part of the ledger is, and what of its heading part was setting, what holding."""

from __future__ import annotations

import numpy as np

from audit.azimuths import GridAzimuth
from audit.leg_card import CardLeg
from audit.measurement.leg_details import LedgerErrors, Setting
from audit.measurement.leg_measures import LegMeasures
from audit.units import east_north, unit_vector


def ledger_errors(
    leg: CardLeg, measures: LegMeasures, start_sd_m: float, claim_sd_m: float
) -> LedgerErrors:
    """Carry the errors of places, heading and distance over to the parts.

    A point anywhere in a square of half side a scatters by a / sqrt(3) per axis. The
    heading part is a chord across the turn: its length grows by (|v| + d) / 2 for each
    radian.
    """
    from_point, to_point = (point.half_square_m / np.sqrt(3.0) for point in (leg.start, leg.end))
    made_m = measures.along_heading_m
    # Along a bent line the ledger goes by the vector between its ends.
    planned_m = float(np.hypot(*(leg.line[-1] - leg.line[0])))
    if len(leg.line) == 2:
        planned_m = leg.distance_m
    heading_sd = float(np.radians(measures.heading.own_sd_deg))
    ends_m = float(np.hypot(start_sd_m, claim_sd_m))
    aside = bool(np.hypot(*measures.ledger.detour) > 0.0)
    return LedgerErrors(
        inherited_m=float(np.hypot(start_sd_m, from_point)),
        plan_m=float(np.hypot(from_point, to_point)),
        heading_m=(planned_m + made_m) / 2.0 * heading_sd,
        distance_m=measures.straight_sd_m,
        detour_m=float(np.hypot(ends_m, made_m * heading_sd)) if aside else 0.0,
        total_m=measures.miss_sd_m,
    )


def split_setting(
    leg: CardLeg, heading: GridAzimuth, made_m: float, set_to: GridAzimuth
) -> Setting:
    """Split the heading part (|v| + d)/2 (e - u) at the direction s that was set.

    Setting (|v| + d)/2 (s - u), holding (|v| + d)/2 (e - s): they add up to it.
    """
    length = (leg.distance_m + made_m) / 2.0
    card, walked, chosen = (
        unit_vector(azimuth.degrees) for azimuth in (leg.azimuth, heading, set_to)
    )
    return Setting(
        set_turn_deg=leg.azimuth.turn_to(set_to),
        held_turn_deg=set_to.turn_to(heading),
        setting=east_north(length * (chosen - card)),
        holding=east_north(length * (walked - chosen)),
    )
