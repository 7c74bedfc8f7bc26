"""Courses and recordings that strain every number: poles, edges, clocks, and no numbers at all."""

from __future__ import annotations

import datetime as dt
import random
from collections.abc import Sequence
from itertools import pairwise

Fix = tuple[float, float, str | None, float | None]
Place = tuple[float, float]
START_S = 1.79e9
BASE = [(36.5, -84.2), (36.505, -84.2), (36.505, -84.195)]


def stamp(time_s: float) -> str:
    moment = dt.datetime(1970, 1, 1, tzinfo=dt.UTC) + dt.timedelta(seconds=time_s)
    return moment.isoformat().replace("+00:00", "Z")


def plan_text(places: Sequence[Place], course: str = "", legs: str = "") -> str:
    angle = "" if "grid_magnetic_angle_deg" in course else "grid_magnetic_angle_deg = -7\n"
    points = "".join(
        f'[[point]]\nname = "P{number}"\nposition = "{north:.7f}, {east:.7f}"\n'
        for number, (north, east) in enumerate(places)
    )
    return f'[course]\nname = "x"\n{angle}{course}{points}{legs}'


def walk(places: Sequence[Place], fixes: int = 60, start_s: float = START_S) -> list[Fix]:
    """Go from place to place, the short way round the earth, with a little noise."""
    noise = random.Random(1)
    made: list[Fix] = []
    for (north, east), (to_north, to_east) in pairwise(places):
        turn = (to_east - east + 180.0) % 360.0 - 180.0
        for step in range(fixes):
            at = north + (to_north - north) * step / fixes + noise.gauss(0.0, 1e-5)
            over = east + turn * step / fixes + noise.gauss(0.0, 1e-5)
            time = stamp(start_s + len(made))
            made.append((max(min(at, 90.0), -90.0), (over + 180.0) % 360.0 - 180.0, time, 100.0))
    return made


def gpx_text(fixes: Sequence[Fix]) -> str:
    points = "".join(
        f'<trkpt lat="{north!r}" lon="{east!r}">'
        + (f"<ele>{height!r}</ele>" if height is not None else "")
        + (f"<time>{time}</time>" if time else "")
        + "</trkpt>"
        for north, east, time, height in fixes
    )
    return f"<gpx><trk><trkseg>{points}</trkseg></trk></gpx>"


def corner(north: float, east: float, by: float = 0.004, over: float = 0.004) -> list[Place]:
    return [(north, east), (north + by, east), (north + by, (east + over + 180.0) % 360.0 - 180.0)]


PLACES = {
    "around the north pole": [(89.999, 0.0), (89.9995, 90.0), (89.999, 180.0)],
    "from the north pole": [(90.0, 0.0), (89.99, 10.0), (89.99, 50.0)],
    "around the south pole": [(-89.999, 0.0), (-89.9995, 90.0), (-89.999, -90.0)],
    "the end of UTM, 84 N": corner(83.999, 15.0, over=0.03),
    "the end of UTM, 80 S": corner(-80.002, 15.0, over=0.02),
    "over the date line": [(51.5, 179.997), (51.5, -179.997), (51.504, -179.997)],
    "over the date line, south": [(-16.5, 179.999), (-16.5, -179.999), (-16.496, -179.995)],
    "the edge of two zones": [(45.0, 5.998), (45.0, 6.002), (45.004, 6.002)],
    "the equator": [(-0.002, 10.0), (0.002, 10.0), (0.002, 10.004)],
    "the wide zone 32V": [(60.0, 2.998), (60.0, 3.002), (60.004, 3.002)],
    "the wide zones of 78 N": [(78.0, 8.998), (78.0, 9.01), (78.004, 9.01)],
    "Greenwich": [(51.0, -0.002), (51.0, 0.002), (51.004, 0.002)],
}


ORDINARY = walk(BASE)


def shifted(later_s: float) -> list[Fix]:
    """Put the clock forward from the middle of the walk on."""
    half = len(ORDINARY) // 2
    late = [
        (north, east, stamp(START_S + later_s + number), height)
        for number, (north, east, _, height) in enumerate(ORDINARY[half:], start=half)
    ]
    return ORDINARY[:half] + late


STRAINED: dict[str, tuple[str, Sequence[Fix], set[str]]] = {
    "a leg of no length": (plan_text([BASE[0], BASE[0], BASE[1]]), ORDINARY, {"refused"}),
    "points all one": (plan_text([BASE[0]] * 4), ORDINARY, {"refused"}),
    "one fix": (plan_text(BASE), ORDINARY[:1], {"refused"}),
    "two fixes": (plan_text(BASE), ORDINARY[:2], {"not-started not-started"}),
    "all fixes equal": (
        plan_text(BASE),
        [(36.5, -84.2, stamp(START_S + number), 1.0) for number in range(200)],
        {"not-started not-started"},
    ),
    "all fixes equal, no times": (plan_text(BASE), [(36.5, -84.2, None, None)] * 200, {"refused"}),
    "all at one time": (
        plan_text(BASE),
        [(north, east, stamp(START_S), height) for north, east, _, height in ORDINARY],
        {"walked walked"},
    ),
    "in 1901": (plan_text(BASE), walk(BASE, start_s=-2.17e9), {"walked walked"}),
    "in 2069": (plan_text(BASE), walk(BASE, start_s=3.13e9), {"walked walked"}),
    "in the year 1": (plan_text(BASE), walk(BASE, start_s=-6.21e10), {"walked walked"}),
    "across 1970": (plan_text(BASE), walk(BASE, start_s=-60.0), {"walked walked"}),
    "planned for 1901": (plan_text(BASE, "date = 1901-01-01\n"), ORDINARY, set()),
    "planned for 9999": (plan_text(BASE, "date = 9999-12-31\n"), ORDINARY, set()),
    "a clock put back a year": (plan_text(BASE), shifted(-3.15e7), {"walked walked"}),
    "backwards": (
        plan_text(BASE),
        [(north, east, stamp(START_S - n), up) for n, (north, east, _, up) in enumerate(ORDINARY)],
        set(),
    ),
    "a fix at the pole": (
        plan_text(BASE),
        [*ORDINARY[:40], (90.0, 0.0, stamp(START_S + 40), 1.0), *ORDINARY[41:]],
        {"walked walked"},
    ),
    "elsewhere": (plan_text(BASE), walk([(-36.5, 95.8), (-36.505, 95.8)]), {"refused"}),
    "settings that are no numbers": (
        plan_text(BASE, "grid_magnetic_angle_deg = nan\narrival_radius_m = inf\n"),
        ORDINARY,
        {"refused"},
    ),
}
