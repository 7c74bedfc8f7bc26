"""From a seed to a made walk."""

from __future__ import annotations

from itertools import pairwise
from random import Random

import numpy as np
from walks.made_walk import LEVELS, LegTruth, MadeWalk

from agent_walks.course import bearing_and_length, make_course
from agent_walks.faults import make_faults
from agent_walks.land import Land
from agent_walks.outing import Outing
from agent_walks.recorder import make_device, record, window_of
from agent_walks.traits import make_traits

_LEAST_S = 10
"""Chosen: an attempt of which less was recorded counts as not recorded."""


def make(seed: int, level: str) -> MadeWalk:
    """Make the walk of a seed at a level: the same two give the same bytes."""
    if level not in LEVELS:
        message = f"unknown level {level!r}"
        raise ValueError(message)
    rng = Random(f"{level}/{seed}")
    points = make_course(rng)
    gm_angle_deg = round(rng.uniform(-12.0, 12.0), 1)
    plan = [bearing_and_length(start, end) for start, end in pairwise(points)]
    land = Land(rng, level)
    who = make_traits(rng, level)
    outing = Outing(rng, level, points, land, who, make_faults(rng, level, plan, gm_angle_deg))
    outing.run()
    true_m = np.array([outing.body.easts_m, outing.body.norths_m]).T
    window = window_of(rng, level, outing.first_s, outing.last_s, len(true_m) - 1)
    device = make_device(rng, level)
    time_s, places_m = record(rng, device, window, true_m, land.canopy_at(true_m))
    first, last = int(np.ceil(time_s[0])), int(np.floor(time_s[-1]))
    return MadeWalk(
        points_m=np.array(points, dtype=float),
        gm_angle_deg=gm_angle_deg,
        fix_time_s=time_s,
        fix_m=places_m,
        true_time_s=np.arange(len(true_m), dtype=float),
        true_m=true_m,
        legs=tuple(
            _cut(leg, ends, first, last)
            for leg, ends in zip(outing.truth, outing.ends, strict=True)
        ),
    )


def _cut(leg: LegTruth, ends: list[str], first: int, last: int) -> LegTruth:
    """Give what was recorded of a leg's truth; ``ends`` says how each attempt ended."""
    if not leg.attempts:
        return leg
    kept = [
        (max(start, first), min(claim, last), end)
        for (start, claim), end in zip(leg.attempts, ends, strict=True)
        if min(claim, last) - max(start, first) >= _LEAST_S
    ]
    if not kept:
        return LegTruth(status="not-started")
    start, claim, end = kept[-1]
    return LegTruth(
        status="unfinished" if end in ("back", "gave-up") else "walked",
        start_s=start,
        claim_s=claim,
        attempts=tuple((began, ended) for began, ended, _ in kept),
        causes=leg.causes,
    )
