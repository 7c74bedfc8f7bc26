"""What each leg of the walker's own card says, as the causes are weighed by it."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from audit.azimuths import NorthAngles
from audit.coaching.point_steps import given_hop, plotted_hop
from audit.coaching.walkers_card import OwnLeg
from audit.diagnosis.on_paper import OnPaper
from audit.geodesy.grids import CourseGrid
from audit.leg_card import CardLeg, LegCard
from audit.leg_card.rounding import azimuth_rounding_deg, length_rounding
from audit.settings import CardSettings, CoachingSettings, Settings
from audit.units import FloatArray, turn_degrees, unit_vector


def on_paper(card: LegCard, own: Mapping[str, OwnLeg], settings: Settings) -> dict[str, OnPaper]:
    """Lay the walker's card beside the course's, by the name of the leg.

    Who measured a leg from a wrong reference of its start, or where a slip of plotting put it, has
    an azimuth and a distance that are right from there, and made no slip on this one.
    """
    found, before = {}, _RIGHT
    for leg in card.legs:
        one = own.get(leg.name)
        led = _RIGHT if one is None else _led(one, leg, card.angles, settings.coaching)
        if one is not None:
            paper = _end(one, leg, card.grid, settings.coaching)
            start = given_hop(one.start, leg.start, card.grid, settings.coaching)
            moved = (start is not None and start.over) or _back(before, led)
            paper = replace(paper, from_elsewhere=moved)
            intended = _distance(one, card.paces_per_100m, settings.card)
            found[leg.name] = _measured(one, leg, card.angles, paper, intended)
        before = led
    return found


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Led:
    """How far from a leg's end its card leads, and how much of that is the reading of the map."""

    off_m: FloatArray
    room_m: float


_RIGHT = _Led(off_m=np.zeros(2), room_m=0.0)


def _led(own: OwnLeg, leg: CardLeg, angles: NorthAngles, settings: CoachingSettings) -> _Led:
    magnetic, grid = own.stated.magnetic_azimuth, own.stated.grid_azimuth
    azimuth = grid or (None if magnetic is None else angles.grid_from_magnetic(magnetic))
    distance_m = own.stated.distance_m
    if azimuth is None or distance_m is None:
        return _RIGHT
    share = settings.measured_distance_share + math.radians(settings.measured_azimuth_deg)
    right = leg.distance_m * unit_vector(leg.azimuth.degrees)
    return _Led(
        off_m=distance_m * unit_vector(azimuth.degrees) - right, room_m=share * leg.distance_m
    )


def _back(before: _Led, led: _Led) -> bool:
    """Tell whether a leg of the card leads back from where the one before it led astray."""
    room_m = before.room_m + led.room_m
    astray_m = min(float(np.hypot(*one.off_m)) for one in (before, led))
    return astray_m > room_m >= float(np.hypot(*(before.off_m + led.off_m)))


def _end(own: OwnLeg, leg: CardLeg, grid: CourseGrid, settings: CoachingSettings) -> OnPaper:
    """Give how far the reference of the end is off, and the slip that it, or the card, shows."""
    given = given_hop(own.end, leg.end, grid, settings)
    if own.end is None or given is None:
        return OnPaper()
    if given.over:
        off_m = (own.end.east_m - leg.end.east_m, own.end.north_m - leg.end.north_m)
        return OnPaper(end_off_m=off_m, slips=given.slips)
    plotted = plotted_hop(own, grid, settings)
    return OnPaper(end_off_m=(0.0, 0.0), slips=() if plotted is None else plotted.slips)


def _measured(
    own: OwnLeg,
    leg: CardLeg,
    angles: NorthAngles,
    paper: OnPaper,
    intended: tuple[float | None, float],
) -> OnPaper:
    """Add azimuth and distance of a leg; ``intended`` is the distance, and its rounding."""
    grid, magnetic = own.stated.grid_azimuth, own.stated.magnetic_azimuth
    last = magnetic or grid
    metres, rounding_m = intended
    return replace(
        paper,
        grid_turn_deg=None if grid is None else turn_degrees(leg.azimuth.degrees, grid.degrees),
        magnetic_turn_deg=None
        if magnetic is None
        else turn_degrees(leg.azimuth.degrees, angles.grid_from_magnetic(magnetic).degrees),
        rounding_deg=0.0 if last is None else azimuth_rounding_deg(last.degrees),
        log_ratio=math.log(metres / leg.distance_m) if metres else None,
        rounding_ratio=rounding_m / max(leg.distance_m, 1.0),
    )


def _distance(
    own: OwnLeg, rate: float | None, settings: CardSettings
) -> tuple[float | None, float]:
    """Give what was to be walked by the card, its paces or else its metres, and its rounding."""
    paces, rate = own.stated.paces, own.paces_per_100m or rate
    if paces and rate:
        step_m = 100.0 / rate
        return paces * step_m, length_rounding(paces, settings.pace_rounding_most) * step_m
    metres = own.stated.distance_m
    if metres is None:
        return None, 0.0
    return metres, length_rounding(metres, settings.distance_rounding_most_m)
