"""The ledger of a leg: what each kind of error put into the miss, in metres east and north."""

from __future__ import annotations

import numpy as np

from audit.azimuths import GridAzimuth
from audit.leg_card import CardLeg
from audit.measurement.leg_measures import Ledger
from audit.units import FloatArray, east_north, unit_vector


def make_ledger(
    card: CardLeg, start: FloatArray, claim: FloatArray, heading: GridAzimuth
) -> Ledger:
    """Split the miss into parts that add up to it whatever the order they are taken in.

    With planned start p and end p', true start s, claim c, card vector v, walked
    heading e and the distance d made along it: inherited s - p; plan v - (p' - p);
    heading (|v| + d)/2 (e - u); distance (d - |v|)/2 (e + u), u the direction of v;
    detour (c - s) - d e. Heading and distance are at right angles, each the mean of
    "heading first" and "distance first".
    """
    planned_start = np.array([card.start.east_m, card.start.north_m])
    planned_end = np.array([card.end.east_m, card.end.north_m])
    along_card = unit_vector(card.azimuth.degrees)
    along = unit_vector(heading.degrees)
    length = card.distance_m
    card_vector = length * along_card
    if len(card.line) > 2:
        # The card's line bends: its vector is the one between its ends.
        card_vector = card.line[-1] - card.line[0]
        length = float(np.hypot(*card_vector))
        along_card = card_vector / length if length else along_card
    made = float((claim - start) @ along)
    return Ledger(
        inherited=east_north(start - planned_start),
        plan=east_north(card_vector - (planned_end - planned_start)),
        heading=east_north((length + made) / 2.0 * (along - along_card)),
        distance=east_north((made - length) / 2.0 * (along + along_card)),
        detour=east_north((claim - start) - made * along),
        total=east_north(claim - planned_end),
    )
