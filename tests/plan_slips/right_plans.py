"""Right plans: cards filled in from their own points, rounded as people round.

Invented courses at real places; each is written as TOML and read again, so that what is
checked is what a user would check.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace
from datetime import date
from itertools import pairwise
from random import Random

from audit.geodesy.grids import course_grid, utm_code
from audit.geodesy.mgrs_references import encode_mgrs
from audit.geodesy.national_letters import encode_national
from audit.leg_card.check_plan import PlanCheck, check_plan
from audit.magnetics.declination import declination
from audit.plan import Plan
from audit.readers.plan_toml import read_plan_toml
from audit.readers.problem_list import ProblemList
from audit.units import direction_degrees, mils_from_degrees, turn_degrees, wrap_degrees

DAY = date(2026, 10, 3)
PLACES = (
    (-84.23, 36.64, None),  # Tennessee
    (-1.90, 51.22, "EPSG:27700"),  # Wiltshire
    (174.90, -41.20, None),  # Wellington
    (11.94, 49.70, None),  # Upper Palatinate
    (-147.70, 64.85, None),  # interior of Alaska
    (131.00, -12.60, None),  # Northern Territory
)


@dataclass(frozen=True, kw_only=True)
class Row:
    """One leg of the card; None is a column left empty."""

    grid_deg: float | None
    magnetic_deg: float | None
    distance_m: float | None
    paces: float | None


@dataclass(frozen=True, kw_only=True)
class MadePlan:
    """A plan in the making: references, rows, and what they were made from.

    ``exact_deg`` and ``exact_m`` are the azimuths and distances between the middles of
    the squares that the references name.
    """

    grid: str | None
    angle_deg: float
    convergence_deg: float
    rate: float
    references: tuple[str, ...]
    rows: tuple[Row, ...]
    exact_deg: tuple[float, ...]
    exact_m: tuple[float, ...]
    step_deg: float
    extra: dict[str, str] = field(default_factory=dict)

    def with_row(self, number: int, **values: float | None) -> MadePlan:
        """Give the plan with other numbers on one leg."""
        rows = list(self.rows)
        rows[number] = replace(rows[number], **values)
        return replace(self, rows=tuple(rows))

    def with_reference(self, number: int, text: str) -> MadePlan:
        """Give the plan with another reference at one point."""
        texts = list(self.references)
        texts[number] = text
        return replace(self, references=tuple(texts))

    def read(self) -> Plan:
        """Give the plan as its file is read."""
        return read_plan_toml(self._toml(), {}, ProblemList(file="plan.toml"))

    def check(self) -> PlanCheck:
        """Check the plan as the command does."""
        return check_plan(self.read())

    def _toml(self) -> str:
        course = {
            "name": '"A made course"',
            "date": DAY.isoformat(),
            "grid": f'"{self.grid or "auto"}"',
            "grid_magnetic_angle_deg": f"{self.angle_deg}",
            "paces_per_100m": f"{self.rate:g}",
            "arrival_radius_m": "30",
        } | self.extra
        lines = ["[course]", *(f"{key} = {value}" for key, value in course.items())]
        for number, text in enumerate(self.references):
            lines += ["[[point]]", f'name = "P{number}"', f'position = "{text}"']
        names = {
            "grid_deg": "grid_azimuth_deg",
            "magnetic_deg": "magnetic_azimuth_deg",
            "distance_m": "distance_m",
            "paces": "paces",
        }
        for number, row in enumerate(self.rows):
            lines += ["[[leg]]", f'from = "P{number}"', f'to = "P{number + 1}"']
            for key, name in names.items():
                value = getattr(row, key)
                if value is not None:
                    lines.append(f"{name} = {value!r}")
        return "\n".join(lines) + "\n"


def right_plan(
    random: Random,
    *,
    columns: str = "",
    digits: int = 8,
    degrees: bool = False,
    angle_of: date = DAY,
) -> MadePlan:
    """Give a right plan: 3 to 7 legs of 250 to 1500 m with references of 8 figures, or in degrees.

    ``columns`` "all" fills every column; otherwise some are left empty. ``angle_of`` is the
    day whose grid-magnetic angle all sums are made with.
    """
    longitude, latitude, code = random.choice(PLACES)
    longitude += random.uniform(-0.02, 0.02)
    latitude += random.uniform(-0.02, 0.02)
    grid = course_grid(code or utm_code(longitude, latitude))
    convergence = grid.convergence_deg(longitude, latitude)
    field_deg = declination(longitude, latitude, date=angle_of).degrees
    angle = round(2.0 * (turn_degrees(convergence, field_deg) + random.uniform(-0.3, 0.3))) / 2.0
    rate = float(random.choice([62, 65, 68, 70, 116, 120, 130]))
    references, places = _points(random, grid, longitude, latitude, digits)
    if degrees:
        references, places = _in_degrees(grid, places)
    step_deg = random.choice([1.0, 0.5, 0.1, 0.5625])  # the last is ten mils
    step_m = random.choice([1.0, 5.0, 10.0])
    shown = columns or random.choice(["all", "all", "magnetic only", "no paces", "grid only"])
    rows, exact_deg, exact_m = [], [], []
    for (e0, n0), (e1, n1) in pairwise(places):
        exact_deg.append(direction_degrees(e1 - e0, n1 - n0))
        exact_m.append(math.hypot(e1 - e0, n1 - n0))
        grid_deg = rounded(exact_deg[-1], step_deg)
        distance_m = float(round(exact_m[-1] / step_m) * step_m)
        rows.append(
            Row(
                grid_deg=None if shown == "magnetic only" else grid_deg,
                magnetic_deg=None if shown == "grid only" else rounded(grid_deg - angle, step_deg),
                distance_m=distance_m,
                paces=None if shown == "no paces" else float(round(distance_m * rate / 100.0)),
            )
        )
    return MadePlan(
        grid=code, angle_deg=angle, convergence_deg=convergence, rate=rate,
        references=tuple(references), rows=tuple(rows), exact_deg=tuple(exact_deg),
        exact_m=tuple(exact_m), step_deg=step_deg,
    )  # fmt: skip


def rounded(degrees: float, step_deg: float) -> float:
    """Round an azimuth as a person with such a scale writes it."""
    degrees = wrap_degrees(degrees)
    if step_deg == 0.5625:
        return (round(mils_from_degrees(degrees) / 10.0) * 10 % 6400) * 360.0 / 6400.0
    return wrap_degrees(round(round(degrees / step_deg) * step_deg, 6))


def _points(random, grid, longitude, latitude, digits):
    """Give references of a walk's points and the middles of their squares on the grid."""
    east, north = grid.to_grid(longitude, latitude)
    step = 10.0 ** (5 - digits // 2)
    references, places = [], []
    for _ in range(random.randint(4, 8)):
        corner = (east // step * step, north // step * step)
        middle = (corner[0] + step / 2, corner[1] + step / 2)
        references.append(reference_at(grid, *middle, digits))
        places.append(middle)
        way, length = random.uniform(0.0, 2.0 * math.pi), random.uniform(250.0, 1500.0)
        east, north = middle[0] + length * math.sin(way), middle[1] + length * math.cos(way)
    return references, places


def _in_degrees(grid, places):
    """Write places as latitude and longitude to five decimals, a metre or so."""
    texts, rounded_places = [], []
    for place in places:
        longitude, latitude = (round(value, 5) for value in grid.to_geographic(*place))
        texts.append(f"{latitude:.5f}, {longitude:.5f}")
        rounded_places.append(grid.to_grid(longitude, latitude))
    return texts, rounded_places


def reference_at(grid, east, north, digits):
    """Write the reference of a place with the letters of its grid."""
    if grid.code == "EPSG:27700":
        return encode_national(east, north, grid.code, digits=digits)
    return encode_mgrs(*grid.to_geographic(east, north), digits=digits)


def mixed_plan(random: Random, figures: tuple[int, ...] = (4, 6, 8, 10)) -> MadePlan:
    """Give a right plan whose references differ in figures, its numbers read at the true places.

    A place lies anywhere in the square that its reference names, as a control point does.
    """
    longitude, latitude, code = random.choice(PLACES)
    grid = course_grid(code or utm_code(longitude, latitude))
    convergence = grid.convergence_deg(longitude, latitude)
    field_deg = declination(longitude, latitude, date=DAY).degrees
    angle = round(2.0 * turn_degrees(convergence, field_deg)) / 2.0
    rate = float(random.choice([62, 65, 68, 70, 116, 120, 130]))
    step_deg, step_m = random.choice([1.0, 0.5, 0.1]), random.choice([1.0, 5.0, 10.0])
    columns = random.choice(["all", "magnetic only", "grid only", "no distance"])
    east, north = grid.to_grid(longitude, latitude)
    references, places = [], []
    for _ in range(random.randint(2, 5)):
        references.append(reference_at(grid, east, north, random.choice(figures)))
        places.append((east, north))
        way, length = random.uniform(0.0, 2.0 * math.pi), random.uniform(300.0, 2500.0)
        east, north = east + length * math.sin(way), north + length * math.cos(way)
    rows = []
    for (e0, n0), (e1, n1) in pairwise(places):
        grid_deg = rounded(direction_degrees(e1 - e0, n1 - n0), step_deg)
        exact_m = math.hypot(e1 - e0, n1 - n0)
        distance_m = float(round(exact_m / step_m) * step_m)
        rows.append(
            Row(
                grid_deg=None if columns == "magnetic only" else grid_deg,
                magnetic_deg=None
                if columns == "grid only"
                else rounded(grid_deg - angle, step_deg),
                distance_m=None if columns == "no distance" else distance_m,
                paces=float(round(distance_m * rate / 100.0)),
            )
        )
    return MadePlan(
        grid=code, angle_deg=angle, convergence_deg=convergence, rate=rate,
        references=tuple(references), rows=tuple(rows), exact_deg=(), exact_m=(),
        step_deg=step_deg,
    )  # fmt: skip
