"""Walks of a simulator that another hand wrote, where its folder stands beside the checkout.

Its walker, its receiver and its courses share nothing with `tests/walks`. What it calls
the arrival is at the marker; the claim is put here where the project has it: where the
marker came into sight, if the walker turned to it there. Where its walker held his
azimuth, and where he walked round something, is noted down while it walks.

    PYTHONPATH=.:tests python -m honesty.other_hand --seeds development --walks 50
"""

from __future__ import annotations

import argparse
import datetime as dt
import sys
from collections.abc import Sequence
from typing import Any

import numpy as np
from accuracy.research_prototype import holds, loaded
from accuracy.seeds import SEEDS, first_seeds
from walks import KINDS, LegTruth, Truth, Walk
from walks.courses import Course, to_geographic
from walks.outings import BEND_DEG
from walks.plans import plan_of

from audit.track import Track
from audit.units import direction_degrees, turn_degrees
from honesty.measured_legs import measured_legs
from honesty.table import figures

LEVELS = (0, 1, 2, 3, 4)
GRID, CORNER_M = "EPSG:32633", (520_000.0, 5_400_000.0)
FIRST_S = dt.datetime(2026, 5, 4, 8, 0, tzinfo=dt.UTC).timestamp()


Simulation = tuple[dict[str, Any], list[Any]]
"""What it made, and the pieces of the way that were noted down."""


def is_present() -> bool:
    """Say whether the other simulator can be run here."""
    return holds("sim")


def walk_of_other_hand(seed: int, level: int) -> Walk:
    """Make one of its walks, as a walk of ours."""
    return as_walk(simulated(seed, level), seed, f"other hand, level {level}")


def as_walk(simulation: Simulation, seed: int, difficulty: str) -> Walk:
    """Put what it made into a walk of ours."""
    made, pieces = simulation
    course = _course(made)
    day = dt.datetime.fromtimestamp(FIRST_S, dt.UTC).date()
    return Walk(
        seed=seed,
        difficulty=difficulty,
        course=course,
        plan=plan_of(course, day),
        track=_track(made),
        truth=_truth(made, pieces),
    )


def simulated(seed: int, level: int, **given: Any) -> Simulation:
    """Run it, and note down (first second, last second, azimuth or None) of what is walked."""
    simulator = loaded("sim")
    pieces: list[tuple[int, int, float | None]] = []
    stands: list[tuple[int, int]] = []
    plain = simulator.Builder

    class Noting(plain):  # type: ignore[misc, valid-type]
        def straight(self, az: float, *given: Any, **more: Any) -> bool:
            begun = self.t
            seen = super().straight(az, *given, **more)
            pieces.append((begun, self.t, float(az)))
            return bool(seen)

        def goto(self, *given: Any, **more: Any) -> None:
            begun = self.t
            super().goto(*given, **more)
            pieces.append((begun, self.t, None))

        def dwell(self, *given: Any, **more: Any) -> None:
            begun = self.t
            super().dwell(*given, **more)
            stands.append((begun, self.t))

    simulator.Builder = Noting
    try:
        made = simulator.simulate(seed, level, **given)
    finally:
        simulator.Builder = plain
    # It lets a walker who stands jump about at random every second: that is no way walked.
    for begun, ended in stands:
        made["true_xy"][begun : ended + 1] = made["true_xy"][begun]
    return made, pieces


def _course(made: dict[str, Any]) -> Course:
    points = made["C"] + np.array(CORNER_M)
    sites: list[int] = []
    for index, point in enumerate(points):
        same = [j for j in range(index) if float(np.hypot(*(points[j] - point))) < 1.0]
        sites.append(sites[same[0]] if same else len(set(sites)))
    return Course(
        grid=GRID,
        shape="other hand",
        points_m=points,
        site=tuple(sites),
        card_azimuth_deg=tuple(made["paz"].tolist()),
        card_m=tuple(made["pd"].tolist()),
        stated=False,
        grid_magnetic_angle_deg=float(made["gm"]),
        convergence_deg=0.0,
        marker_shift_m=np.zeros_like(points),
    )


def _track(made: dict[str, Any]) -> Track:
    seen = made["z"] + np.array(CORNER_M)
    longitude, latitude = to_geographic(GRID).transform(seen[:, 0], seen[:, 1])
    unknown = np.full(len(seen), np.nan)
    return Track(
        time_s=FIRST_S + made["t"],
        longitude_deg=np.round(longitude, 7),
        latitude_deg=np.round(latitude, 7),
        elevation_m=unknown,
        hdop=unknown.copy(),
        cadence_per_min=unknown.copy(),
        segment=np.zeros(len(seen), dtype=np.int64),
        source="other-hand.gpx",
    )


def _truth(made: dict[str, Any], pieces: list[Any]) -> Truth:
    places = made["true_xy"] + np.array(CORNER_M)
    label, other = (np.where(made[name] < 100, np.maximum(made[name], -1), -1) for name in
                    ("lab", "alt"))  # fmt: skip
    legs = tuple(_leg(made, pieces, leg) for leg in range(made["L"]))
    return Truth(
        time_s=FIRST_S + np.arange(len(places), dtype=float),
        east_m=places[:, 0],
        north_m=places[:, 1],
        label=label,
        other_label=other,
        kind=_kinds(made, pieces, legs),
        recorded=np.arange(len(places)) >= made["t0"],
        legs=legs,
        order=(),
        marked=bool(made["marked"]),
        bias_deg=float(made["bias"]),
        pace_factor=float(made["scale"]),
        planted=(),
        receiver={"noise_m": float(made["sig"]), "interval_s": float(made["dt"])},
    )


def _leg(made: dict[str, Any], pieces: list[Any], leg: int) -> LegTruth:
    known = made["legs"][leg]
    if known["t_dep"] is None:
        return LegTruth(leg=leg, status="skipped")
    start, claim = int(known["t_dep"]), int(known["t_arr"])
    inside = [piece for piece in pieces if start <= piece[0] and piece[1] <= claim]
    if known["status"] == "lost":
        claim = inside[0][1]
    elif len(inside) > 1 and inside[-1][2] is None and inside[-1][1] == claim:
        claim = _sighted(made["true_xy"], made["C"][leg + 1], inside)
    way = made["true_xy"][claim] - made["true_xy"][start]
    finished = known["status"] != "partial_end"
    attempts = [known["first"]] if known.get("first") else []
    return LegTruth(
        leg=leg,
        status="walked" if finished else "unfinished",
        start_s=FIRST_S + start,
        claim_s=FIRST_S + claim,
        attempts=tuple(
            (FIRST_S + float(a), FIRST_S + float(b)) for a, b in (*attempts, (start, claim))
        ),
        cut_by_recording=known["status"] == "partial_start",
        azimuth_deg=direction_degrees(float(way[0]), float(way[1])),
        length_m=float(np.hypot(*way)),
    )


def _sighted(places: np.ndarray, point: np.ndarray, inside: list[Any]) -> int:
    """Give the second of the claim of a leg that ended by going up to its marker."""
    begun, arrived, _ = inside[-1]
    way = point - places[begun]
    turn = turn_degrees(inside[-2][2], direction_degrees(float(way[0]), float(way[1])))
    return begun if abs(turn) > BEND_DEG else arrived


def _kinds(made: dict[str, Any], pieces: list[Any], legs: tuple[LegTruth, ...]) -> np.ndarray:
    """Call walking what is on a leg, and the three sides of each way round a bypass."""
    kind = np.full(len(made["true_xy"]), KINDS.index("approach"))
    for leg in legs:
        if leg.start_s is None or leg.claim_s is None:
            continue
        start, claim = int(leg.start_s - FIRST_S), int(leg.claim_s - FIRST_S)
        kind[start : claim + 1] = KINDS.index("walking")
        held = [one for one in pieces if start <= one[0] and one[1] <= claim and one[2] is not None]
        turns = [turn_degrees(held[0][2], one[2]) for one in held]
        aside = [number for number, turn in enumerate(turns) if abs(abs(turn) - 90.0) < 1.0]
        if made["legs"][leg.leg].get("bypass") and len(aside) == 2:
            kind[held[aside[0]][0] + 1 : held[aside[1]][1] + 1] = KINDS.index("bypass")
    return kind


def main(arguments: Sequence[str] | None = None) -> int:
    """Print how often the intervals hold on its walks, by level: rightly matched, and all."""
    parser = argparse.ArgumentParser(prog="python -m honesty.other_hand", description=main.__doc__)
    parser.add_argument("--seeds", choices=sorted(SEEDS), default="development")
    parser.add_argument("--walks", type=int, default=20, help="of each level")
    asked = parser.parse_args(arguments)
    for level in LEVELS:
        rows = [
            row
            for seed in first_seeds(asked.seeds, asked.walks)
            for row in measured_legs(walk_of_other_hand(seed, level))
        ]
        for name, chosen in (("right", [row for row in rows if row.right]), ("all", rows)):
            held = ", ".join(
                f"{figure} {100 * of['held']:.1f} ± {100 * of['held_se']:.1f}"
                for figure, of in figures(chosen).items()
            )
            print(f"level {level}, {name}: {len(chosen)} legs; {held}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
