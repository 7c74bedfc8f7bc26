"""Which well-known slip a disagreement in the plan looks like."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from audit.azimuths import NorthAngles
from audit.units import turn_degrees

BACK = 180.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Slip:
    """A slip, said so that "It fits ..." goes before it, and how far it turns the number."""

    what: str
    turn_deg: float


def magnetic_slips(angles: NorthAngles) -> tuple[Slip, ...]:
    """Give the slips of turning grid into magnetic: given less right, which is grid - G."""
    g = angles.grid_magnetic_angle_deg
    return (
        Slip(what="the grid-magnetic angle left out", turn_deg=g),
        Slip(what="the grid-magnetic angle applied the wrong way", turn_deg=2.0 * g),
        Slip(what="the grid-magnetic angle applied twice", turn_deg=-g),
        Slip(
            what="the declination used for the grid-magnetic angle",
            turn_deg=-angles.convergence_deg,
        ),
        Slip(what="the back azimuth", turn_deg=BACK),
        Slip(what="the back azimuth with the grid-magnetic angle left out", turn_deg=BACK + g),
    )


def grid_slips(angles: NorthAngles) -> tuple[Slip, ...]:
    """Give the slips of measuring a grid azimuth on the map."""
    g = angles.grid_magnetic_angle_deg
    return (
        Slip(what="the magnetic azimuth written for the grid one", turn_deg=-g),
        Slip(what="the grid-magnetic angle applied, and the wrong way", turn_deg=g),
        Slip(what="the true azimuth written for the grid one", turn_deg=angles.convergence_deg),
        Slip(what="the back azimuth", turn_deg=BACK),
        Slip(what="the protractor laid a quarter turn round", turn_deg=90.0),
        Slip(what="the protractor laid a quarter turn round", turn_deg=-90.0),
    )


def true_slips(angles: NorthAngles) -> tuple[Slip, ...]:
    """Give the slips of turning grid into true: given less right, which is grid + C."""
    c = angles.convergence_deg
    return (
        Slip(what="the convergence left out", turn_deg=-c),
        Slip(what="the convergence applied the wrong way", turn_deg=-2.0 * c),
        Slip(what="the back azimuth", turn_deg=BACK),
    )


def angle_slips(model_angle_deg: float, convergence_deg: float) -> tuple[Slip, ...]:
    """Give the slips of taking the grid-magnetic angle from the map: given less D - C."""
    return (
        Slip(what="east written for west, or west for east", turn_deg=-2.0 * model_angle_deg),
        Slip(what="the declination given for the grid-magnetic angle", turn_deg=convergence_deg),
        Slip(what="the convergence applied the wrong way", turn_deg=2.0 * convergence_deg),
    )


def slip_sentence(off_deg: float, slips: Sequence[Slip], tolerance_deg: float) -> str:
    """Say which slips fit a disagreement, the nearest first; "" where none does.

    A slip that turns the number by no more than the tolerance explains nothing.
    """
    near = sorted(
        (abs(turn_degrees(slip.turn_deg, off_deg)), number)
        for number, slip in enumerate(slips)
        if abs(turn_degrees(0.0, slip.turn_deg)) > tolerance_deg
    )
    fitting = [slips[number].what for distance, number in near if distance <= tolerance_deg]
    if not fitting:
        return ""
    return f" It fits {', or '.join(dict.fromkeys(fitting))}."
