"""Walks of two more makers, by other hands, as walks that can be learnt from."""

from __future__ import annotations

import datetime as dt
from types import SimpleNamespace

import agent_walks
import habit_walks
import numpy as np
from walks import LegTruth, Planted, Walk
from walks.along_paths import GRID, plan_along, to_track
from walks.made_walk import LegTruth as OtherLegTruth

from audit.units import FloatArray, direction_degrees
from learning.research_walks import FIRST_MOMENT, MIDDLE_M, truth_by_legs

MAKERS = {"habits": habit_walks.make, "agent": agent_walks.make}


def make_walk_of(maker: str, seed: int, level: str) -> Walk:
    """Make a walk of a seed by one of the makers, "habits" or "agent", at one of its levels.

    What the makers do not tell stands as nothing: how the walker leans and paces, how large a
    mistake was, and the noise of the receiver.
    """
    made = MAKERS[maker](seed, level)
    points_m, place_m = made.points_m + MIDDLE_M, made.true_m + MIDDLE_M
    truth = truth_by_legs(
        place_m,
        tuple(_leg_truth(number, leg, place_m) for number, leg in enumerate(made.legs)),
        marked=True,
        bias_deg=0.0,
        pace_factor=1.0,
        interval_s=1.0,
        noise_m=3.0,
    )
    return Walk(
        seed=seed,
        difficulty=f"{maker}-{level}",
        course=SimpleNamespace(points_m=points_m, grid=GRID),
        plan=plan_along(points_m, dt.date(2026, 6, 1), float(made.gm_angle_deg)),
        track=to_track(FIRST_MOMENT + made.fix_time_s, made.fix_m + MIDDLE_M),
        truth=truth,
    )


def _leg_truth(number: int, leg: OtherLegTruth, place_m: FloatArray) -> LegTruth:
    planted = tuple(Planted(cause=cause, size=1.0, unit="x") for cause in leg.causes)
    if leg.start_s is None or leg.claim_s is None:
        return LegTruth(leg=number, status=leg.status, planted=planted)
    way = place_m[leg.claim_s] - place_m[leg.start_s]
    return LegTruth(
        leg=number,
        status=leg.status,
        start_s=FIRST_MOMENT + leg.start_s,
        claim_s=FIRST_MOMENT + leg.claim_s,
        search_end_s=FIRST_MOMENT + leg.claim_s,
        attempts=tuple(
            (FIRST_MOMENT + start, FIRST_MOMENT + claim) for start, claim in leg.attempts
        ),
        azimuth_deg=direction_degrees(float(way[0]), float(way[1])),
        length_m=float(np.hypot(*way)),
        planted=planted,
    )
