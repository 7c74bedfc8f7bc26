"""The demo walk, debriefed once, and its plan as a walker might have written it down."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from importlib.resources import as_file, files
from pathlib import Path

import audit
from audit.azimuths import GridAzimuth
from audit.coaching.leg_steps import walk_steps
from audit.coaching.steps import Hop, LegSteps
from audit.coaching.walkers_card import own_legs
from audit.debriefing.finished_debrief import Debrief
from audit.measurement.leg_measures import LegAudit
from audit.plan import Plan, PlannedLeg
from audit.readers.position_text import read_position
from audit.settings import Settings
from audit.walkers_log import WalkersLog


@cache
def demo() -> tuple[Plan, Debrief, WalkersLog]:
    """Give plan, debrief and log of the demo."""
    with as_file(files("audit").joinpath("demo_course")) as folder:
        plan = audit.read_plan(Path(folder) / "plan.toml")
        track = audit.read_track(Path(folder) / "walk.gpx")
        log = audit.read_log(Path(folder) / "log.csv")
    return plan, audit.debrief(plan, track, log=log), log


def own_card(number: int = 0, references: dict[str, str] | None = None, **values) -> Plan:
    """Give the demo's plan as a card of the walker's own, with some of its numbers otherwise.

    All points are written anew, so that they count as the walker's.
    """
    plan, _, _ = demo()
    wrong = references or {}
    points = tuple(
        replace(point, position=read_position(wrong.get(point.name, point.position.given)).position)
        for point in plan.points
    )
    legs: list[PlannedLeg] = list(plan.legs)
    legs[number] = replace(legs[number], **values)
    return replace(plan, points=points, legs=tuple(legs))


def steps(
    own: Plan | None, log: WalkersLog | None = None, leg: str = "1", *, turned_deg: float = 0.0
) -> LegSteps:
    """Give the steps of one leg of the demo with a card and a log, walked turned by so much."""
    plan, finished, _ = demo()
    laid, _ = own_legs(finished.card, own, plan) if own else ({}, ())
    audits = [turned(one.audit, turned_deg) for one in finished.legs]
    return walk_steps(audits, finished.card, laid, log, Settings())[leg]


def turned(leg: LegAudit, turned_deg: float) -> LegAudit:
    """Give a leg as if it had been walked in a direction turned by so much."""
    heading = leg.measures.heading
    azimuth = GridAzimuth(heading.azimuth.degrees + turned_deg)
    heading = replace(heading, azimuth=azimuth)
    return replace(leg, measures=replace(leg.measures, heading=heading))


def hop(of: LegSteps, step: str, kind: str = "direction") -> Hop:
    """Give the hop that goes over a step; of both ends of a leg, the one further off."""
    found = [one for one in of.hops if step in one.steps and one.kind == kind]
    return max(found, key=lambda one: one.off_m)
