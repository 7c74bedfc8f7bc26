"""Every slip of paper work, planted into every leg of the demo's card, is told at its step.

What a slip does to a number is plain arithmetic; everything after it on the card is worked
on from the wrong number, as a walker would. The log has what the card says.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace

import pytest
from coaching.demo_walk import demo, own_card, steps

from audit.azimuths import GridAzimuth, MagneticAzimuth
from audit.plan import PlannedLeg
from audit.units import direction_degrees
from audit.walkers_log import LogEntry, WalkersLog

ANGLE = -7.5
PAPER = (
    "given",
    "plotted",
    "measured",
    "converted",
    "set",
    "distance measured",
    "turned into paces",
)

Change = Callable[[PlannedLeg], dict[str, object]]


def from_grid(grid: float) -> dict[str, object]:
    """Give both azimuths of a card that goes on from a grid azimuth."""
    return {"grid_azimuth": GridAzimuth(grid), "magnetic_azimuth": MagneticAzimuth(grid - ANGLE)}


def from_metres(metres: float) -> dict[str, object]:
    return {"distance_m": float(round(metres)), "paces": float(round(metres * 0.65))}


def moved(leg: PlannedLeg, east: float, north: float) -> dict[str, object]:
    """Give the card of a leg whose end was plotted so far off."""
    azimuth = math.radians(leg.grid_azimuth.degrees)
    to = (leg.distance_m * math.sin(azimuth) + east, leg.distance_m * math.cos(azimuth) + north)
    return from_grid(round(2 * direction_degrees(*to)) / 2) | from_metres(math.hypot(*to))


SLIPS: dict[str, tuple[str, Change]] = {
    "plotted one line east": ("plotted", lambda leg: moved(leg, 1000.0, 0.0)),
    "plotted one line south": ("plotted", lambda leg: moved(leg, 0.0, -1000.0)),
    "back azimuth": ("measured", lambda leg: from_grid(leg.grid_azimuth.degrees + 180.0)),
    "quarter turn": ("measured", lambda leg: from_grid(leg.grid_azimuth.degrees + 90.0)),
    "angle left out": (
        "converted", lambda leg: {"magnetic_azimuth": MagneticAzimuth(leg.grid_azimuth.degrees)}
    ),
    "angle the wrong way": (
        "converted",
        lambda leg: {"magnetic_azimuth": MagneticAzimuth(leg.grid_azimuth.degrees + ANGLE)},
    ),
    "angle twice": (
        "converted",
        lambda leg: {"magnetic_azimuth": MagneticAzimuth(leg.grid_azimuth.degrees - 2 * ANGLE)},
    ),
    "ruler of half the scale": ("distance measured", lambda leg: from_metres(2 * leg.distance_m)),
    "ruler of twice the scale": ("distance measured", lambda leg: from_metres(leg.distance_m / 2)),
    "single for double paces": ("turned into paces", lambda leg: {"paces": 2 * leg.paces}),
    "a hundred's paces lost": ("turned into paces", lambda leg: {"paces": leg.paces - 65.0}),
}  # fmt: skip


def told(number: int, change: Change) -> tuple[str, ...]:
    """Give the steps of paper work at which an error is told on one leg."""
    plan, _, _ = demo()
    values = change(plan.legs[number])
    stated = replace(plan.legs[number], **values)
    log = WalkersLog(
        entries=(
            LogEntry(leg=stated.name, magnetic_azimuth=stated.magnetic_azimuth, paces=stated.paces),
        )
    )
    of = steps(own_card(number, **values), log, leg=stated.name)
    return tuple(step for step in of.entered if step in PAPER)


@pytest.mark.parametrize("slip", SLIPS)
@pytest.mark.parametrize("number", range(7))
def test_a_slip_of_paper_work_is_told_at_its_step(number, slip):
    step, change = SLIPS[slip]
    assert told(number, change) == (step,)


@pytest.mark.parametrize("number", range(7))
def test_a_card_without_a_slip_is_told_nothing(number):
    assert told(number, lambda _: {}) == ()
