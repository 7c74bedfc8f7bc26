"""Courses: points and legs at varied places, in varied shapes."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from pyproj import CRS, Proj, Transformer

from audit.units import FloatArray, direction_degrees, unit_vector
from walks.difficulties import Difficulty

# Longitude, latitude, declination (deg east, late 2026, from the table of check values).
PLACES = (
    (-84.95, 32.35, -5.13),
    (-73.96, 41.39, -12.59),
    (-79.0, 35.14, -9.12),
    (-122.6, 47.1, 14.79),
    (-147.72, 64.84, 14.74),
    (-157.86, 21.31, 9.26),
    (-1.9, 51.2, 0.67),
    (-3.44, 51.88, 0.08),
    (10.75, 59.91, 5.09),
    (5.32, 60.39, 2.88),
    (11.94, 49.7, 4.57),
    (126.98, 37.57, -9.03),
    (130.84, -12.46, 2.12),
    (149.13, -35.28, 12.65),
    (174.78, -41.29, 23.3),
    (18.42, -33.92, -26.83),
    (-70.91, -53.16, 12.51),
    (36.82, -1.29, 0.26),
)

SHAPES = ("random", "loop", "star", "out-and-back", "crossing", "line")
SHAPE_CHANCES = (0.38, 0.22, 0.12, 0.08, 0.14, 0.06)


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """A course on its grid.

    ``points_m`` has shape (legs + 1, 2), east and north; ``card_azimuth_deg`` and
    ``card_m`` are what the leg card says (rounded where ``stated``); ``site`` numbers
    the places, so that a point visited again has the number of its first visit.
    """

    grid: str
    shape: str
    points_m: FloatArray
    site: tuple[int, ...]
    card_azimuth_deg: tuple[float, ...]
    card_m: tuple[float, ...]
    stated: bool
    grid_magnetic_angle_deg: float
    convergence_deg: float
    marker_shift_m: FloatArray
    """How far each marker stands from its planned point, shape (legs + 1, 2)."""
    misplaced: int | None = None
    """Number of a site whose marker was put in a wrong place."""

    @property
    def leg_count(self) -> int:
        """Number of legs."""
        return len(self.card_m)


@lru_cache(maxsize=64)
def to_geographic(grid: str) -> Transformer:
    """Give the way from the grid to longitude and latitude."""
    return Transformer.from_crs(grid, "EPSG:4326", always_xy=True)


@lru_cache(maxsize=64)
def _projection(grid: str) -> Proj:
    return Proj(CRS.from_user_input(grid))


def utm_code(longitude_deg: float, latitude_deg: float) -> str:
    """Give the code of the UTM zone by the plain six-degree rule."""
    zone = int((longitude_deg + 180.0) // 6.0) + 1
    return f"EPSG:{(32600 if latitude_deg >= 0 else 32700) + zone}"


def _leg_length_m(rng: np.random.Generator, difficulty: Difficulty) -> float:
    low, high = difficulty.leg_m
    if rng.random() < difficulty.close_points:
        return float(rng.uniform(min(80.0, low), min(150.0, high)))
    return float(np.clip(rng.lognormal(np.log(difficulty.leg_median_m), 0.5), low, high))


def _next_azimuth_deg(
    rng: np.random.Generator, difficulty: Difficulty, before_deg: float, shape: str, leg: int
) -> float:
    if shape == "line":
        return before_deg + float(rng.normal(0.0, 14.0))
    if rng.random() < difficulty.collinear:
        return before_deg + float(rng.normal(0.0, 8.0))
    if shape == "loop":
        return before_deg + float(rng.uniform(40.0, 110.0))
    if shape == "crossing" and leg > 0:
        return before_deg + float(rng.uniform(115.0, 150.0))
    return before_deg + float(rng.choice([-1.0, 1.0]) * rng.uniform(25.0, 160.0))


def _draw_points(rng: np.random.Generator, difficulty: Difficulty, shape: str) -> FloatArray:
    """Give points about the first one, shape (legs + 1, 2)."""
    count = int(rng.integers(difficulty.legs[0], difficulty.legs[1] + 1))
    points = [np.zeros(2)]
    if shape == "out-and-back":
        count = max(2 * (count // 2), 4)
    azimuth = float(rng.uniform(0.0, 360.0))
    for leg in range(count):
        if shape == "star" and leg % 2 == 1:
            points.append(points[leg - 1])
            continue
        if shape == "out-and-back" and leg >= count // 2:
            points.append(points[count - leg - 1])
            continue
        azimuth = _next_azimuth_deg(rng, difficulty, azimuth, shape, leg)
        points.append(points[-1] + _leg_length_m(rng, difficulty) * unit_vector(azimuth))
    if shape == "loop":
        points[-1] = points[0]
    return np.array(points)


def _lengths_fit(points: FloatArray, difficulty: Difficulty) -> bool:
    lengths = np.hypot(*np.diff(points, axis=0).T)
    low = min(80.0, difficulty.leg_m[0]) if difficulty.close_points else difficulty.leg_m[0]
    if not ((lengths >= low).all() and (lengths <= difficulty.leg_m[1] * 1.2).all()):
        return False
    gaps = np.hypot(*(points[:, None, :] - points[None, :, :]).transpose(2, 0, 1))
    different = gaps > 1.0
    return bool(gaps[different].min() >= 60.0)


def _site_numbers(points: FloatArray) -> tuple[int, ...]:
    sites: list[int] = []
    for index, point in enumerate(points):
        same = [j for j in range(index) if float(np.hypot(*(points[j] - point))) < 1.0]
        sites.append(sites[same[0]] if same else len(set(sites)))
    return tuple(sites)


def make_course(rng: np.random.Generator, difficulty: Difficulty) -> Course:
    """Draw a course that fits the difficulty."""
    least_deg = difficulty.least_declination_deg
    places = [place for place in PLACES if abs(place[2]) >= least_deg]
    longitude, latitude, declination = places[int(rng.integers(len(places)))]
    longitude += float(rng.uniform(-0.3, 0.3))
    latitude += float(rng.uniform(-0.3, 0.3))
    grid = utm_code(longitude, latitude)
    convergence = float(_projection(grid).get_factors(longitude, latitude).meridian_convergence)
    angle = round(2.0 * (declination - convergence)) / 2.0
    shape = str(rng.choice(SHAPES, p=SHAPE_CHANCES))
    points = _draw_points(rng, difficulty, shape)
    while not _lengths_fit(points, difficulty):
        points = _draw_points(rng, difficulty, shape)
    east, north = _projection(grid)(longitude, latitude)
    points = points + np.round([east, north])
    steps = np.diff(points, axis=0)
    azimuths = [direction_degrees(float(e), float(n)) for e, n in steps]
    lengths = [float(np.hypot(e, n)) for e, n in steps]
    stated = bool(rng.random() < 0.6)
    if stated:
        azimuths = [float(round(azimuth)) % 360.0 for azimuth in azimuths]
        lengths = [10.0 * round(length / 10.0) for length in lengths]
    site = _site_numbers(points)
    shift, misplaced = _marker_shifts(rng, difficulty, site)
    return Course(
        grid=grid,
        shape=shape,
        points_m=points,
        site=site,
        card_azimuth_deg=tuple(azimuths),
        card_m=tuple(lengths),
        stated=stated,
        grid_magnetic_angle_deg=angle,
        convergence_deg=convergence,
        marker_shift_m=shift,
        misplaced=misplaced,
    )


def _marker_shifts(
    rng: np.random.Generator, difficulty: Difficulty, site: tuple[int, ...]
) -> tuple[FloatArray, int | None]:
    """Draw where the markers stand: near their points, one of them perhaps badly off."""
    shifts = rng.normal(0.0, difficulty.marker_sd_m, (len(set(site)), 2))
    misplaced = None
    if len(shifts) > 2 and rng.random() < difficulty.misplaced:
        misplaced = int(rng.integers(1, len(shifts)))
        away_m = float(rng.uniform(60.0, 200.0))
        shifts[misplaced] = away_m * unit_vector(float(rng.uniform(0.0, 360.0)))
    return shifts[list(site)], misplaced
