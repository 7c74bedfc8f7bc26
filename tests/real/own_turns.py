"""Plans made from a recorded walk's own turns: the only plans that real recordings come with."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import shapely

from audit.classroom.walks_in_file import taken
from audit.geodesy.grids import course_grid, utm_code
from audit.plan import Plan, PlannedLeg, Point
from audit.positions import Position
from audit.track import Track


@dataclass(frozen=True)
class OwnTurns:
    """A plan, and the index of the fix that each of its points was made from."""

    plan: Plan
    fix: tuple[int, ...]

    def between(self, first: int, last: int) -> Plan:
        """The course from one point to another."""
        return plan_through(self.plan.points[first : last + 1], self.plan.grid)


def plan_through(points, grid: str) -> Plan:
    legs = tuple(
        PlannedLeg(name=str(n + 1), start=a.name, end=b.name)
        for n, (a, b) in enumerate(pairwise(points))
    )
    # The angle is given, so that the age of a recording does not matter.
    return Plan(
        name="Own turns", grid=grid, points=tuple(points), legs=legs, grid_magnetic_angle_deg=2.0
    )


def own_turns(track: Track, tolerance_m: float = 25.0, least_m: float = 80.0) -> OwnTurns:
    """Take the turns that Douglas and Peucker keep as points, no leg shorter than ``least_m``."""
    grid = utm_code(float(track.longitude_deg[0]), float(track.latitude_deg[0]))
    east, north = course_grid(grid).to_grid(track.longitude_deg, track.latitude_deg)
    on_grid = np.flatnonzero(np.isfinite(east) & np.isfinite(north))
    kept = on_grid
    if len(on_grid) > 1:
        line = shapely.linestrings(np.column_stack([east[on_grid], north[on_grid], on_grid]))
        simple = shapely.simplify(line, tolerance_m, preserve_topology=False)
        kept = shapely.get_coordinates(simple, include_z=True)[:, 2].astype(int)
    fixes = [int(kept[0])]
    for fix in kept[1:].tolist():
        if np.hypot(east[fix] - east[fixes[-1]], north[fix] - north[fixes[-1]]) >= least_m:
            fixes.append(fix)
    points = [
        Point(
            name=f"P{n}",
            position=Position(
                longitude_deg=float(track.longitude_deg[fix]),
                latitude_deg=float(track.latitude_deg[fix]),
            ),
        )
        for n, fix in enumerate(fixes)
    ]
    return OwnTurns(plan_through(points, grid), tuple(fixes))


def longest_part(track: Track) -> Track:
    """The part of a file with most fixes."""
    numbers, counts = np.unique(track.segment, return_counts=True)
    chosen = track.segment == numbers[np.argmax(counts)]
    return taken(track, np.flatnonzero(chosen))
