"""Walks along winding paths whose own turns are the course: no compass, few halts at points.

What hikers record looks like this, and the matching must not lean on habits of a navigation
course alone. The shares and sizes are chosen.
"""

from __future__ import annotations

import datetime as dt
from itertools import pairwise
from types import SimpleNamespace

import numpy as np
import shapely

from audit.plan import Plan, PlannedLeg, Point
from audit.positions import Position
from audit.track import Track
from audit.units import FloatArray
from walks.courses import to_geographic
from walks.difficulties import Difficulty
from walks.random_drift import smooth_drift
from walks.receivers import draw_receiver, record
from walks.truth import KINDS, LegTruth, Truth
from walks.walk import FIRST_DAY, Walk

GRID = "EPSG:32632"
_MIDDLE_M = np.array([500_000.0, 5_400_000.0])

ALONG_PATHS = Difficulty(
    name="along-paths",
    noise_m=(2.0, 8.0),
    correlation_s=(20.0, 150.0),
    slow_share=(0.0, 0.6),
    white_m=0.3,
    under_trees=0.3,
    spikes_per_h=0.5,
    gaps_per_h=0.3,
    interval_s=(1.0, 2.0, 5.0, 10.0, 20.0, 30.0, 60.0),
    by_distance=0.3,
    decimals=(5, 6, 7),
)


def make_walk_along_paths(seed: int) -> Walk:
    """Make the walk of a seed; its legs are those between turns of the path, all walked."""
    rng = np.random.default_rng([seed, 77])
    path_m, tolerance_m = _path(rng), float(rng.uniform(20.0, 60.0))
    turns = _turns(path_m, tolerance_m, least_m=float(rng.uniform(80.0, 250.0)))
    count = int(rng.integers(4, 16))
    first = int(rng.integers(0, max(len(turns) - count, 1)))
    turns = turns[first : first + count + 1]
    places_m, at_point_s = _walked(rng, path_m, turns)
    first_s = FIRST_DAY.timestamp() + float(rng.integers(0, 86_400 * 200))
    time_s = first_s + np.arange(len(places_m), dtype=float)
    receiver = draw_receiver(rng, ALONG_PATHS)
    track, recorded = record(rng, ALONG_PATHS, receiver, GRID, time_s, places_m)
    points_m = path_m[turns] + rng.normal(0.0, float(rng.uniform(0.5, 8.0)), (len(turns), 2))
    label = np.full(len(places_m), -1)
    legs = []
    for leg, ((_, left), (arrived, _)) in enumerate(pairwise(at_point_s)):
        label[left + 1 : arrived + 1] = leg
        ends = (first_s + left, first_s + arrived)
        legs.append(
            LegTruth(leg=leg, status="walked", start_s=ends[0], claim_s=ends[1], attempts=(ends,))
        )
    truth = Truth(
        time_s=time_s,
        east_m=np.ascontiguousarray(places_m[:, 0]),
        north_m=np.ascontiguousarray(places_m[:, 1]),
        label=label,
        other_label=label.copy(),
        kind=np.full(len(label), KINDS.index("walking")),
        recorded=recorded,
        legs=tuple(legs),
        order=tuple(range(len(turns))),
        marked=False,
        bias_deg=0.0,
        pace_factor=1.0,
        planted=(),
        receiver=receiver.as_dict(),
    )
    return Walk(
        seed=seed,
        difficulty=ALONG_PATHS.name,
        course=SimpleNamespace(points_m=points_m, grid=GRID),
        plan=plan_along(points_m, dt.datetime.fromtimestamp(first_s, dt.UTC).date()),
        track=track,
        truth=truth,
    )


def _path(rng: np.random.Generator) -> FloatArray:
    """Draw a winding path with junctions, a place every metre, shape (n, 2)."""
    length = int(rng.uniform(3_000, 12_000))
    winding = smooth_drift(rng, length, rng.uniform(5.0, 35.0), rng.uniform(60.0, 300.0), 15.0)
    turns = np.zeros(length)
    at = 0.0
    while (at := at + rng.uniform(150.0, 900.0)) < length:
        turns[int(at)] = rng.choice([-1.0, 1.0]) * rng.uniform(20.0, 120.0)
    heading = np.radians(rng.uniform(0.0, 360.0) + np.cumsum(turns) + winding)
    steps = np.column_stack([np.sin(heading), np.cos(heading)])
    return np.asarray(_MIDDLE_M + np.cumsum(steps, axis=0))


def _turns(path_m: FloatArray, tolerance_m: float, least_m: float) -> list[int]:
    """Give the metres of the path at which Douglas and Peucker keep a corner."""
    line = shapely.linestrings(np.column_stack([path_m, np.arange(len(path_m))]))
    simple = shapely.simplify(line, tolerance_m, preserve_topology=False)
    kept = shapely.get_coordinates(simple, include_z=True)[:, 2].astype(int).tolist()
    turns = [kept[0]]
    for corner in kept[1:]:
        if np.hypot(*(path_m[corner] - path_m[turns[-1]])) >= least_m:
            turns.append(corner)
    return turns


def _walked(
    rng: np.random.Generator, path_m: FloatArray, turns: list[int]
) -> tuple[FloatArray, list[tuple[int, int]]]:
    """Walk from before the first turn to beyond the last.

    Gives a place a second, and of each turn the seconds of coming and of leaving.
    """
    speed = rng.uniform(0.8, 1.6) * np.exp(smooth_drift(rng, len(path_m), 0.15, 200.0, 20.0))
    halting_m = {
        int(metre): float(rng.uniform(8.0, 300.0))
        for metre in rng.integers(0, len(path_m), rng.poisson(len(path_m) / rng.uniform(700, 4000)))
    }
    pauses = float(rng.choice([0.0, 0.1, 0.4]))
    for turn in turns:
        if rng.random() < pauses:
            halting_m[turn] = float(rng.uniform(8.0, 200.0))
    first = max(turns[0] - int(rng.integers(0, 1500)), 0)
    last = min(turns[-1] + int(rng.integers(0, 1500)), len(path_m) - 1)
    clock, arrived, left = 0.0, np.zeros(len(path_m)), np.zeros(len(path_m))
    for metre in range(first, last + 1):
        clock += 1.0 / speed[metre]
        arrived[metre] = clock
        clock += halting_m.get(metre, 0.0)
        left[metre] = clock
    walked = slice(first, last + 1)
    when = np.column_stack([arrived[walked], left[walked] + 1e-6]).ravel()
    where = np.repeat(np.arange(first, last + 1), 2)
    metre = np.interp(np.arange(int(clock) + 1, dtype=float), when, where)
    places = np.column_stack(
        [np.interp(metre, np.arange(len(path_m)), path_m[:, axis]) for axis in range(2)]
    )
    return places, [(int(arrived[turn]), int(left[turn])) for turn in turns]


def plan_along(points_m: FloatArray, day: dt.date, angle_deg: float = 2.0) -> Plan:
    """Plan the legs from point to point; a point that comes again keeps its name."""
    longitude, latitude = to_geographic(GRID).transform(points_m[:, 0], points_m[:, 1])
    named: dict[tuple[float, float], str] = {}
    names = [
        named.setdefault((round(float(x), 3), round(float(y), 3)), f"P{number}")
        for number, (x, y) in enumerate(points_m)
    ]
    places = dict(zip(names, zip(longitude, latitude, strict=True), strict=True))
    points = tuple(
        Point(name=name, position=Position(longitude_deg=float(x), latitude_deg=float(y)))
        for name, (x, y) in places.items()
    )
    legs = tuple(
        PlannedLeg(name=str(number + 1), start=a, end=b)
        for number, (a, b) in enumerate(pairwise(names))
    )
    return Plan(
        name="Turns of a path",
        grid=GRID,
        points=points,
        legs=legs,
        date=day,
        grid_magnetic_angle_deg=angle_deg,
        paces_per_100m=65.0,
    )


def to_track(time_s: FloatArray, places_m: FloatArray) -> Track:
    """Give places on the grid as a recording."""
    longitude, latitude = to_geographic(GRID).transform(places_m[:, 0], places_m[:, 1])
    unknown = np.full(len(time_s), np.nan)
    return Track(
        time_s=np.asarray(time_s, dtype=float),
        longitude_deg=np.asarray(longitude),
        latitude_deg=np.asarray(latitude),
        elevation_m=unknown,
        hdop=unknown.copy(),
        cadence_per_min=unknown.copy(),
        segment=np.zeros(len(time_s), dtype=np.int64),
        source="made-walk.gpx",
    )
