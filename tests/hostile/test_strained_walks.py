"""Any plan that reads, with any track that reads, gives a result of the schema, or a refusal."""

from __future__ import annotations

import datetime as dt
import json
import math
import random
import re
from collections.abc import Sequence
from importlib.resources import files
from itertools import pairwise
from pathlib import Path

import jsonschema
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from audit.debriefing.debrief_walk import debrief
from audit.errors import AuditError
from audit.readers.gpx_track import read_track
from audit.readers.plan_file import read_plan
from audit.reports.terminal_report import render_terminal
from audit.reports.write import report_texts
from audit.track import utc_text

Fix = tuple[float, float, str | None, float | None]
Place = tuple[float, float]
SCHEMA = json.loads(files("audit.reports").joinpath("debrief.schema.json").read_text("utf-8"))
VALIDATOR = jsonschema.Draft202012Validator(SCHEMA)
NO_NUMBER = re.compile(r"\b(?:nan|NaN|inf|Infinity|undefined)\b")
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


def outcome(folder: Path, plan: str, fixes: Sequence[Fix], *, page: bool = False) -> str:
    """Debrief, and give "refused" or the statuses; anything worse is raised."""
    (folder / "plan.toml").write_text(plan)
    points = "".join(
        f'<trkpt lat="{north!r}" lon="{east!r}">'
        + (f"<ele>{height!r}</ele>" if height is not None else "")
        + (f"<time>{time}</time>" if time else "")
        + "</trkpt>"
        for north, east, time, height in fixes
    )
    gpx = f"<gpx><trk><trkseg>{points}</trkseg></trk></gpx>"
    (folder / "walk.gpx").write_text(gpx)
    try:
        made = debrief(read_plan(folder / "plan.toml"), read_track(folder / "walk.gpx"))
    except AuditError:
        return "refused"
    texts = report_texts(made, None if page else ["json", "csv", "geojson"])
    document = json.loads(texts["debrief.json"], parse_constant=no_constant)
    json.loads(texts["debrief.geojson"], parse_constant=no_constant)
    VALIDATOR.validate(document)
    told = [str(texts["legs.csv"]), render_terminal(made)]
    if page:
        told.append(re.sub(r"<script.*?</script>", "", str(texts["debrief.html"]), flags=re.DOTALL))
    assert [NO_NUMBER.findall(text) for text in told] == [[] for _ in told]
    return " ".join(leg["status"] for leg in document["legs"])


def no_constant(word: str) -> None:
    pytest.fail(f"{word} is not JSON (RFC 8259)")


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


@pytest.mark.parametrize("name", PLACES)
def test_a_walk_is_a_walk_anywhere(tmp_path, name):
    places = PLACES[name]
    assert outcome(tmp_path, plan_text(places), walk(places)) == "walked walked"


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


@pytest.mark.parametrize("name", STRAINED)
def test_a_strained_walk_gives_a_result_or_a_refusal(tmp_path, name):
    plan, fixes, expected = STRAINED[name]
    found = outcome(tmp_path, plan, fixes)
    assert not expected or found in expected


# Found by strain; each stopped the page with a fault of the program.


def test_a_gap_of_centuries_stops_no_page(tmp_path):
    assert outcome(tmp_path, plan_text(BASE), shifted(2.5e11), page=True) == "skipped walked"


def test_heights_of_no_place_on_earth_are_missing(tmp_path):
    fixes = [
        (north, east, time, (-1e300, 1e300)[number % 2])
        for number, (north, east, time, _) in enumerate(ORDINARY)
    ]
    assert outcome(tmp_path, plan_text(BASE), fixes, page=True) == "walked walked"
    assert any("elevations" in note for note in read_track(tmp_path / "walk.gpx").notes)


def test_two_fixes_half_the_world_apart_are_no_fault(tmp_path):
    # Found by the structure-aware fuzzing below: a piece of the recording without a fix.
    places = [(0.0, -180.0), (0.0, -179.9921875)]
    fixes: list[Fix] = [(0.0, -180.0, stamp(0.0), None), (-1.7, 117.1, stamp(1.0), None)]
    assert outcome(tmp_path, plan_text(places), fixes) == "not-started"


def test_moments_beyond_the_calendar_are_told_as_its_ends():
    # Found by the structure-aware fuzzing below, with clocks in the years 9892 and 2026.
    assert utc_text(4.98e11) == "9999-12-31T23:59:59Z"
    assert utc_text(-4.98e11) == "0001-01-01T00:00:00Z"


# Structure-aware fuzzing

NORTHS = st.sampled_from([0.0, 36.5, 45.0, 60.0, 72.0, 84.0, 89.999, -80.0, -45.0, -89.999])
EASTS = st.sampled_from([-180.0, -84.2, -0.001, 0.0, 3.0, 6.0, 9.0, 21.0, 179.999])
STEPS = st.floats(-0.01, 0.01, allow_subnormal=False)
TIMES = st.sampled_from([-6.2e10, -2.17e9, 0.0, START_S, 3.13e9, 2.5e11])
COURSES = st.sampled_from(
    ["", 'order = "free"\n', "arrival_radius_m = 0.001\n", "paces_per_100m = 250\n",
     "grid_magnetic_angle_deg = 179.9\n", "arrival_radius_m = 1000\n", "date = 2026-10-03\n"]
)  # fmt: skip


@st.composite
def places_and_fixes(draw: st.DrawFn) -> tuple[list[Place], list[Fix]]:
    north, east = draw(NORTHS), draw(EASTS)
    offsets = draw(st.lists(st.tuples(STEPS, STEPS), min_size=2, max_size=6))
    places = [_place(north + up, east + over) for up, over in offsets]
    route = draw(st.permutations(places)) if draw(st.booleans()) else places
    fixes = walk(route, draw(st.integers(1, 40)), draw(TIMES))
    strain = random.Random(draw(st.integers(0, 1000)))
    for _ in range(draw(st.integers(0, 12))):
        at = strain.randrange(len(fixes)) if fixes else 0
        kind = strain.randrange(7)
        if not fixes:
            break
        fix = fixes[at]
        if kind == 0:
            fixes[at] = (fix[0], fix[1], None, fix[3])
        elif kind == 1:
            fixes[at] = (
                *_place(fix[0] + strain.gauss(0, 1), fix[1] + strain.gauss(0, 99)),
                *fix[2:],
            )
        elif kind == 2:
            fixes[at:at] = [fix] * strain.randrange(1, 9)
        elif kind == 3:
            fixes[at] = (*fix[:2], stamp(START_S + strain.gauss(0, 1e8)), fix[3])
        elif kind == 4:
            del fixes[at : at + strain.randrange(1, 30)]
        elif kind == 5:
            fixes[at] = (*fix[:3], strain.choice([math.inf, -9999.0, 8848.0]))
        else:
            fixes[at:] = fixes[at:][::-1]
    return places, fixes


def _place(north: float, east: float) -> Place:
    return max(min(north, 90.0), -90.0), (east + 180.0) % 360.0 - 180.0


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(made=places_and_fixes(), course=COURSES)
def test_whatever_reads_gives_a_result_of_the_schema(tmp_path_factory, made, course):
    places, fixes = made
    outcome(tmp_path_factory.mktemp("any"), plan_text(places, course), fixes)
