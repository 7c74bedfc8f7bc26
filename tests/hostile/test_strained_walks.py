"""Any plan that reads, with any track that reads, gives a result of the schema, or a refusal."""

from __future__ import annotations

import json
import math
import os
import random
import re
from collections.abc import Sequence
from importlib.resources import files
from pathlib import Path

import jsonschema
import pytest
from hostile.strained_course import (
    BASE,
    ORDINARY,
    PLACES,
    START_S,
    STRAINED,
    Fix,
    Place,
    gpx_text,
    plan_text,
    shifted,
    stamp,
    walk,
)
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from audit.debriefing.debrief_walk import debrief
from audit.errors import AuditError
from audit.readers.gpx_track import read_track
from audit.readers.plan_file import read_plan
from audit.reports.terminal_report import render_terminal
from audit.reports.write import report_texts
from audit.track import utc_text

SCHEMA = json.loads(files("audit.reports").joinpath("debrief.schema.json").read_text("utf-8"))
VALIDATOR = jsonschema.Draft202012Validator(SCHEMA)
EXAMPLES = int(os.environ.get("LEG_AUDIT_EXAMPLES", "40"))
"""By hand 1000 and more, with another seed each time: --hypothesis-seed=N."""
NO_NUMBER = re.compile(r"\b(?:nan|NaN|inf|Infinity|undefined)\b")


def outcome(folder: Path, plan: str, fixes: Sequence[Fix], *, page: bool = False) -> str:
    """Debrief, and give "refused" or the statuses; anything worse is raised."""
    (folder / "plan.toml").write_text(plan)
    (folder / "walk.gpx").write_text(gpx_text(fixes))
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


@pytest.mark.parametrize("name", PLACES)
def test_a_walk_is_a_walk_anywhere(tmp_path, name):
    places = PLACES[name]
    assert outcome(tmp_path, plan_text(places), walk(places)) == "walked walked"


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


@settings(max_examples=EXAMPLES, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(made=places_and_fixes(), course=COURSES)
def test_whatever_reads_gives_a_result_of_the_schema(tmp_path_factory, made, course):
    places, fixes = made
    outcome(tmp_path_factory.mktemp("any"), plan_text(places, course), fixes)
