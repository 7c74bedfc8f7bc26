"""Walks of another maker, by another hand, where its folder stands beside the checkout."""

from __future__ import annotations

import datetime as dt
from types import SimpleNamespace
from typing import Any

import numpy as np
from accuracy.research_prototype import holds, loaded
from walks import LegTruth, Truth, Walk
from walks.along_paths import GRID, plan_along, to_track

from audit.units import FloatArray

FIRST_MOMENT = dt.datetime(2026, 6, 1, 8, tzinfo=dt.UTC).timestamp()
MIDDLE_M = np.array([500_000.0, 5_400_000.0])


def is_present() -> bool:
    """Say whether the other maker can be run here."""
    return holds("sim")


def research_walk(seed: int, level: int) -> Walk:
    """Make a walk of a seed at one of its three levels."""
    made = loaded("sim").simulate(seed, level)
    points_m, place_m = made["C"] + MIDDLE_M, made["true_xy"] + MIDDLE_M
    truth = truth_by_legs(
        place_m,
        tuple(_leg_truth(number, made["legs"][number]) for number in range(made["L"])),
        marked=bool(made["marked"]),
        bias_deg=float(made["bias"]),
        pace_factor=float(made["scale"]),
        interval_s=float(made["dt"]),
        noise_m=float(made["sig"]),
    )
    return Walk(
        seed=seed,
        difficulty=f"research-{level}",
        course=SimpleNamespace(points_m=points_m, grid=GRID),
        plan=plan_along(points_m, dt.date(2026, 6, 1), float(made["gm"])),
        track=to_track(FIRST_MOMENT + made["t"], made["z"] + MIDDLE_M),
        truth=truth,
    )


def truth_by_legs(
    place_m: FloatArray,
    legs: tuple[LegTruth, ...],
    *,
    marked: bool,
    bias_deg: float,
    pace_factor: float,
    interval_s: float,
    noise_m: float,
) -> Truth:
    """Give a truth that knows the legs, and of each second only where the walker was."""
    count = len(place_m)
    return Truth(
        time_s=FIRST_MOMENT + np.arange(count, dtype=float),
        east_m=np.ascontiguousarray(place_m[:, 0]),
        north_m=np.ascontiguousarray(place_m[:, 1]),
        label=np.full(count, -1),
        other_label=np.full(count, -1),
        kind=np.zeros(count, dtype=int),
        recorded=np.ones(count, dtype=bool),
        legs=legs,
        order=(),
        marked=marked,
        bias_deg=bias_deg,
        pace_factor=pace_factor,
        planted=(),
        receiver={"interval_s": interval_s, "noise_m": noise_m, "moved_m": 0.0},
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
