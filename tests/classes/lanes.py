"""The lanes of a class: invented courses that begin and end at one gate, on real ground."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from walks.courses import Course

from audit.units import FloatArray, direction_degrees, unit_vector

GRID = "EPSG:32616"
GATE_M = np.array([748_325.0, 4_058_285.0])
GRID_MAGNETIC_ANGLE_DEG = -7.5
CONVERGENCE_DEG = 1.66
"""Of the grid at the gate; the plans give the angle themselves and do not use it."""
NAMES = (
    ("Birch", "Cairn", "Dell", "Elder", "Fold", "Gorse", "Heath", "Inlet", "Juniper"),
    ("Kiln", "Larch", "Mire", "Nettle", "Oak", "Pike", "Quarry", "Rowan", "Sedge"),
    ("Tarn", "Upper", "Vale", "Willow", "Yew", "Ash", "Brook", "Clough", "Dyke"),
    ("Edge", "Fen", "Gully", "Holly", "Ivy", "Knoll", "Linn", "Moss", "Nab"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Lane:
    """One lane: ``point_names`` has a name for each point, the gate first."""

    name: str
    course: Course
    point_names: tuple[str, ...]

    def plan_text(self, date: str) -> str:
        """Give plan.toml."""
        head = (
            "# An invented course, for a simulated class of leg-audit.\n[course]\n"
            f'name = "{self.name}"\ndate = {date}\ngrid = "{self.course.grid}"\n'
            f"grid_magnetic_angle_deg = {self.course.grid_magnetic_angle_deg}\n"
            "paces_per_100m = 65\narrival_radius_m = 30\n"
        )
        seen: dict[str, FloatArray] = {}
        for name, place in zip(self.point_names, self.course.points_m, strict=True):
            seen.setdefault(name, place)
        points = [
            f'[[point]]\nname = "{name}"\nposition = "{east:.0f} {north:.0f}"\n'
            for name, (east, north) in seen.items()
        ]
        legs = [
            f'[[leg]]\nfrom = "{self.point_names[leg]}"\nto = "{self.point_names[leg + 1]}"\n'
            f"grid_azimuth_deg = {self.course.card_azimuth_deg[leg]}\n"
            f"distance_m = {self.course.card_m[leg]}\n"
            for leg in range(self.course.leg_count)
        ]
        return "\n".join([head, *points, *legs])


def make_lane(
    rng: np.random.Generator, number: int, legs: int, misplaced: tuple[int, FloatArray] | None
) -> Lane:
    """Draw a lane; ``misplaced`` is the number of a point and how far its marker stands off."""
    points = _loop(rng, legs)
    steps = np.diff(points, axis=0)
    azimuths = [float(round(direction_degrees(float(e), float(n)))) % 360.0 for e, n in steps]
    lengths = [10.0 * round(float(np.hypot(e, n)) / 10.0) for e, n in steps]
    shifts = rng.normal(0.0, 2.0, points.shape)
    shifts[-1] = shifts[0]
    if misplaced is not None:
        shifts[misplaced[0]] = misplaced[1]
    course = Course(
        grid=GRID,
        shape="loop",
        points_m=points,
        site=(*range(legs), 0),
        card_azimuth_deg=tuple(azimuths),
        card_m=tuple(lengths),
        stated=True,
        grid_magnetic_angle_deg=GRID_MAGNETIC_ANGLE_DEG,
        convergence_deg=CONVERGENCE_DEG,
        marker_shift_m=shifts,
        misplaced=None if misplaced is None else misplaced[0],
    )
    names = ("Gate", *NAMES[number][: legs - 1], "Gate")
    return Lane(name=f"Lane {'ABCD'[number]}", course=course, point_names=names)


def _loop(rng: np.random.Generator, legs: int) -> FloatArray:
    """Draw points of a way out and back to the gate: legs of 350 to 1300 m, no two places near."""
    while True:
        azimuth = float(rng.uniform(0.0, 360.0))
        points = [GATE_M]
        for _ in range(legs - 1):
            points.append(points[-1] + float(rng.uniform(450.0, 1100.0)) * unit_vector(azimuth))
            azimuth += float(rng.choice([-1.0, 1.0, 1.0]) * rng.uniform(30.0, 110.0))
        made = np.round(np.array([*points, GATE_M]))
        back_m = float(np.hypot(*(made[-1] - made[-2])))
        apart = np.hypot(*(made[:-1, None] - made[None, :-1]).transpose(2, 0, 1))
        if 350.0 < back_m < 1300.0 and float(apart[np.triu_indices(legs, 1)].min()) > 250.0:
            return made
