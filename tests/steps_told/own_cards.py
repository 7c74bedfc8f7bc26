"""What a made walker wrote down: his card and his log, each slip entered at one step.

A made walk knows what was set and counted; at which step a slip entered is decided here, in
turn among the steps at which it can be made. What follows that step on paper is worked from
the wrong number, as a walker would. Azimuths are rounded to half a degree, distances to 5 m.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from walks import Walk
from walks.courses import to_geographic

from audit.azimuths import GridAzimuth, MagneticAzimuth
from audit.coaching.steps import Step
from audit.plan import Plan, PlannedLeg
from audit.positions import Position
from audit.units import unit_vector, wrap_degrees
from audit.walkers_log import LogEntry, WalkersLog

STEPS: dict[str, tuple[Step, ...]] = {
    "digit-wrong": ("given", "plotted"),
    "digits-transposed": ("given", "plotted"),
    "reciprocal": ("measured", "set"),
    "right-angle": ("measured", "set"),
    "gm-angle-omitted": ("converted",),
    "gm-angle-reversed": ("converted",),
    "azimuth-digits": ("set",),
    "bezel-clicks": ("set",),
    "hundred-miscounted": ("turned into paces", "paced"),
    "single-double-pace": ("turned into paces",),
    "wrong-ruler": ("distance measured",),
    "veer": ("walked",),
}
"""The steps of the ten at which each slip is made."""
PLOTTING = ("digit-wrong", "digits-transposed")
RATE = 65.0
LEAST_DEG = 2.5
"""A card rounded to half a degree, and a click set roughly, hide less."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Written:
    """A walker's card and log, and by leg the step of his slip: None for none.

    Legs begun from a point that was given or plotted wrongly are not in ``steps``: they
    have that slip again.
    """

    card: Plan
    log: WalkersLog
    steps: dict[int, Step | None]


def written(walk: Walk, number: int) -> Written:
    """Write card and log of a walk; ``number`` takes turns among the steps."""
    plan, steps = walk.plan, {}
    legs, entries = [], []
    points = {point.name: replace(point, position=replace(point.position)) for point in plan.points}
    carried = False
    for leg, truth in enumerate(walk.truth.legs):
        made = [one.cause for one in truth.planted]
        told = STEPS[made[0]] if len(made) == 1 and made[0] in STEPS else ()
        step = told[(number + leg) % len(told)] if told else None
        shows = not any(one.unit == "deg" and abs(one.size) < LEAST_DEG for one in truth.planted)
        if not carried and (not made or step) and shows and truth.set_azimuth_deg is not None:
            steps[leg] = step
        values, entry = _numbers(walk, leg, step)
        legs.append(replace(plan.legs[leg], **values))
        entries.append(entry)
        carried = bool(set(made) & set(PLOTTING))
        if step == "given":
            points[str(plan.legs[leg].end)] = _misread(walk, leg, points)
    card = replace(plan, legs=tuple(legs), points=tuple(points.values()))
    return Written(card=card, log=WalkersLog(entries=tuple(entries)), steps=steps)


def _numbers(walk: Walk, leg: int, step: Step | None) -> tuple[dict[str, object], LogEntry]:
    """Give what the card states of a leg, and what the log has of it."""
    truth, planned = walk.truth.legs[leg], walk.plan.legs[leg]
    angle = walk.course.grid_magnetic_angle_deg
    grid, metres = walk.course.card_azimuth_deg[leg], walk.course.card_m[leg]
    set_to = grid if truth.set_azimuth_deg is None else truth.set_azimuth_deg
    counted = metres if truth.count_m is None else truth.count_m
    on_paper = step in ("given", "plotted")
    if step is not None and truth.planted[0].unit == "ratio":
        counted = metres * truth.planted[0].size
    measured = set_to if on_paper or step == "measured" else grid
    converted = set_to if on_paper or step in ("measured", "converted") else grid
    setting = grid if step == "walked" else set_to
    length = counted if on_paper or step == "distance measured" else metres
    turned = metres if step == "paced" else counted
    values = {
        "grid_azimuth": GridAzimuth(_half(measured)),
        "magnetic_azimuth": MagneticAzimuth(_half(converted - angle)),
        "distance_m": 5.0 * round(length / 5.0),
        "paces": float(round(turned * RATE / 100.0)),
    }
    entry = LogEntry(
        leg=planned.name,
        magnetic_azimuth=MagneticAzimuth(_half(setting - angle)),
        paces=float(values["paces"]),
    )
    return values, entry


def _half(degrees: float) -> float:
    return wrap_degrees(round(2.0 * degrees) / 2.0)


def _misread(walk: Walk, leg: int, points: dict) -> object:
    """Give a leg's end where the walker's own reference puts it."""
    truth = walk.truth.legs[leg]
    place = walk.course.points_m[leg] + truth.count_m * unit_vector(truth.set_azimuth_deg)
    longitude, latitude = to_geographic(walk.course.grid).transform(*np.asarray(place))
    position = Position(longitude_deg=float(longitude), latitude_deg=float(latitude))
    return replace(points[_end(walk.plan.legs[leg])], position=position)


def _end(leg: PlannedLeg) -> str:
    return str(leg.end)
