"""Walks of another maker, by another hand, where its folder stands beside the checkout."""

from __future__ import annotations

import datetime as dt
from types import SimpleNamespace
from typing import Any

import numpy as np
from accuracy.research_prototype import holds, loaded
from walks import LegTruth, Truth, Walk
from walks.along_paths import GRID, plan_along, to_track

FIRST_MOMENT = dt.datetime(2026, 6, 1, 8, tzinfo=dt.UTC).timestamp()
_MIDDLE_M = np.array([500_000.0, 5_400_000.0])


def is_present() -> bool:
    """Say whether the other maker can be run here."""
    return holds("sim")


def research_walk(seed: int, level: int) -> Walk:
    """Make a walk of a seed at one of its three levels."""
    made = loaded("sim").simulate(seed, level)
    points_m, place_m = made["C"] + _MIDDLE_M, made["true_xy"] + _MIDDLE_M
    count = len(place_m)
    truth = Truth(
        time_s=FIRST_MOMENT + np.arange(count, dtype=float),
        east_m=np.ascontiguousarray(place_m[:, 0]),
        north_m=np.ascontiguousarray(place_m[:, 1]),
        label=np.full(count, -1),
        other_label=np.full(count, -1),
        kind=np.zeros(count, dtype=int),
        recorded=np.ones(count, dtype=bool),
        legs=tuple(_leg_truth(number, made["legs"][number]) for number in range(made["L"])),
        order=(),
        marked=bool(made["marked"]),
        bias_deg=float(made["bias"]),
        pace_factor=float(made["scale"]),
        planted=(),
        receiver={"interval_s": float(made["dt"]), "noise_m": float(made["sig"]), "moved_m": 0.0},
    )
    return Walk(
        seed=seed,
        difficulty=f"research-{level}",
        course=SimpleNamespace(points_m=points_m, grid=GRID),
        plan=plan_along(points_m, dt.date(2026, 6, 1), float(made["gm"])),
        track=to_track(FIRST_MOMENT + made["t"], made["z"] + _MIDDLE_M),
        truth=truth,
    )


def _leg_truth(number: int, leg: dict[str, Any]) -> LegTruth:
    if leg["t_dep"] is None:
        return LegTruth(leg=number, status="skipped")
    ends = (FIRST_MOMENT + leg["t_dep"], FIRST_MOMENT + leg["t_arr"])
    first = leg.get("first")
    before = () if not first else ((FIRST_MOMENT + first[0], FIRST_MOMENT + first[1]),)
    return LegTruth(
        leg=number,
        status="unfinished" if leg["status"] == "partial_end" else "walked",
        start_s=ends[0],
        claim_s=ends[1],
        search_end_s=ends[1],
        attempts=(*before, ends),
        cut_by_recording=leg["status"] == "partial_start",
    )
