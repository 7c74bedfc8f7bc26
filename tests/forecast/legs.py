"""Legs of a card to forecast, built in one line."""

from __future__ import annotations

from itertools import pairwise

from leg_card.plans import grid_point, leg, plan

from audit.leg_card import CardLeg, LegCard, work_out_card


def made_card(*ends: tuple[float, float], **values) -> LegCard:
    """Give the card of a course through places, from (700 000, 3 580 000) on."""
    points = tuple(
        grid_point(chr(ord("A") + number), 700_000.0 + east, 3_580_000.0 + north)
        for number, (east, north) in enumerate([(0.0, 0.0), *ends])
    )
    names = [point.name for point in points]
    legs = tuple(
        leg(str(number), start, end) for number, (start, end) in enumerate(pairwise(names), start=1)
    )
    return work_out_card(plan(points, legs, grid_magnetic_angle_deg=-7.5, **values))


def made_leg(east_m: float, north_m: float) -> CardLeg:
    return made_card((east_m, north_m)).legs[0]
