"""The demo walk as the talk after it takes it, with what a test would have otherwise."""

from __future__ import annotations

from dataclasses import replace

from coaching.demo_walk import demo

from audit.coaching.shown import Shown
from audit.coaching.to_keep import to_keep
from audit.coaching.to_work_on import with_work
from audit.diagnosis.finding import Finding
from audit.diagnosis.walkers_scatter import WalkersScatter
from audit.settings import CoachingSettings, Settings

SETTINGS = CoachingSettings()
SCATTER = WalkersScatter(turn_deg=2.5, log_ratio=0.035)


def audits(**of_legs):
    """Give the demo's legs, all of them sure; by name as "leg3" other measures of a leg."""
    _, finished, _ = demo()
    legs = [replace(one.audit, confidence=1.0) for one in finished.legs]
    return [
        replace(leg, measures=replace(leg.measures, **of_legs.get(f"leg{leg.card.name}", {})))
        for leg in legs
    ]


def shown(legs=None, **known):
    known = {"scatter": SCATTER} | known
    return Shown(legs=audits() if legs is None else legs, radius_m=30.0, **known)


def talk(of):
    return with_work(to_keep(of, SETTINGS), of, Settings())


def finding(cause, probability):
    return Finding(cause=cause, probability=probability, evidence="Predicts 2.00; walked 1.98.")


def all_praise(of):
    return to_keep(of, replace(SETTINGS, things=99))
