"""Any plan, with any recording and log that fit it more or less, and what a debrief makes of them.

Small on purpose, so that thousands can be tried: a few points, some fixes, every form of a plan.
"""

from __future__ import annotations

import json
import math
import random
import re
from dataclasses import dataclass
from importlib.resources import files
from itertools import pairwise
from pathlib import Path

import jsonschema
from hostile.strained_course import START_S, Fix, Place, gpx_text, plan_text, stamp
from hypothesis import strategies as st

from audit.debriefing.debrief_walk import debrief
from audit.errors import AuditError
from audit.readers.course_settings import CourseOptions
from audit.readers.gpx_track import read_track
from audit.readers.plan_file import read_plan
from audit.readers.walkers_log_file import read_log
from audit.reports.terminal_report import render_terminal
from audit.reports.write import report_texts

SCHEMA = json.loads(files("audit.reports").joinpath("debrief.schema.json").read_text("utf-8"))
VALIDATOR = jsonschema.Draft202012Validator(SCHEMA)
NO_NUMBER = re.compile(r"(?<!')(?<!&#39;)\b(?:nan|NaN|inf|Infinity|undefined)\b")
"""In no output, but where a file is quoted that says so."""

NORTHS = [0.0, 36.5, 45.0, 60.0, 72.0, 83.999, 84.0, 89.999, 90.0, -80.0, -45.0, -89.999]
EASTS = [-180.0, -84.2, -0.001, 0.0, 3.0, 6.0, 9.0, 21.0, 179.999]
BEGINS_S = [START_S] * 4 + [-6.2e10, -2.17e9, 0.0, 3.13e9, 2.5e11]
COURSES = [
    "", "", 'order = "free"\n', "arrival_radius_m = 0.001\n", "paces_per_100m = 250\n",
    "grid_magnetic_angle_deg = 179.9\n", "arrival_radius_m = 1000\n", "date = 2026-10-03\n",
    'grid = "EPSG:27700"\n', 'grid = "EPSG:32661"\n', "date = 1901-01-01\n",
]  # fmt: skip
PAGE_SHARE = 0.02
NAMES = ["P", "\u202eP", "<b>&", "=1+1", "Ünï \U0001f9ed", "P" * 200, "../P"]


@dataclass(frozen=True, slots=True, kw_only=True)
class AnyWalk:
    """The files of one walk: a plan's ending and text, fixes, and the text of a log, if any.

    ``page`` is whether the page is to be made too, which takes long.
    """

    ending: str
    plan: str
    fixes: list[Fix]
    log: str
    page: bool = False


def outcome_of(folder: Path, walk: AnyWalk) -> str:
    """Debrief, and give "refused" or the statuses; anything worse is raised."""
    plan, track, log = folder / f"plan.{walk.ending}", folder / "walk.gpx", folder / "log.csv"
    plan.write_text(walk.plan, "utf-8")
    track.write_text(gpx_text(walk.fixes), "utf-8")
    log.write_text(walk.log, "utf-8")
    options: CourseOptions = {} if walk.ending == "toml" else {"grid_magnetic_angle_deg": -7.0}
    try:
        read = read_plan(plan, **options)
        made = debrief(read, read_track(track), log=read_log(log) if walk.log else None)
    except AuditError:
        return "refused"
    texts = report_texts(made, None if walk.page else ["json", "csv", "geojson"])
    document = json.loads(texts["debrief.json"], parse_constant=_no_constant)
    json.loads(texts["debrief.geojson"], parse_constant=_no_constant)
    VALIDATOR.validate(document)
    told = [str(texts["legs.csv"]), render_terminal(made)]
    if walk.page:
        told.append(re.sub(r"<script.*?</script>", "", str(texts["debrief.html"]), flags=re.DOTALL))
    assert [NO_NUMBER.findall(text) for text in told] == [[] for _ in told]
    return " ".join(leg["status"] for leg in document["legs"])


def _no_constant(word: str) -> None:
    message = f"{word} is not JSON (RFC 8259)"
    raise AssertionError(message)


@st.composite
def any_walks(draw: st.DrawFn) -> AnyWalk:
    """Draw the places; a generator of its own, cheaper than drawing, does the rest."""
    north, east = draw(st.sampled_from(NORTHS)), draw(st.sampled_from(EASTS))
    size = draw(st.sampled_from([0.0003, 0.003, 0.003, 0.003, 0.02]))
    steps = st.floats(-1.0, 1.0, allow_subnormal=False)
    offsets = draw(st.lists(st.tuples(steps, steps), min_size=2, max_size=4))
    chance = random.Random(draw(st.integers(0, 2**32)))
    places = [_place(north + up * size, east + over * size) for up, over in offsets]
    route = chance.sample(places, len(places)) if chance.random() < 0.3 else places
    fixes = _walk(route, chance)
    for _ in range(chance.choice([0, 0, 1, 2, 6])):
        _strain(fixes, chance)
    ending = chance.choice(["toml", "toml", "toml", "csv", "gpx", "geojson"])
    return AnyWalk(
        ending=ending,
        plan=_plan(ending, places, chance),
        fixes=fixes,
        log=_log(places, chance),
        page=chance.random() < PAGE_SHARE,
    )


def _walk(places: list[Place], chance: random.Random) -> list[Fix]:
    """Go from place to place, the short way round the earth; stand at some."""
    made: list[Fix] = []
    time_s, every_s = chance.choice(BEGINS_S), chance.choice([1.0, 10.0, 30.0, 60.0])
    for (north, east), (to_north, to_east) in pairwise(places):
        turn, fixes = (to_east - east + 180.0) % 360.0 - 180.0, chance.randint(1, 14)
        shares = [step / fixes for step in range(fixes)] + [1.0] * chance.choice([0, 3])
        for share in shares:
            time_s += every_s
            at = north + (to_north - north) * share + chance.gauss(0.0, 2e-5)
            over = east + turn * share + chance.gauss(0.0, 2e-5)
            made.append((*_place(at, over), stamp(time_s), 100.0))
    return made


def _strain(fixes: list[Fix], chance: random.Random) -> None:
    if not fixes:
        return
    at = chance.randrange(len(fixes))
    north, east, time, height = fixes[at]
    kind = chance.randrange(8)
    if kind == 0:
        fixes[at] = (north, east, None, height)
    elif kind == 1:
        fixes[at] = (*_place(north + chance.gauss(0, 1), east + chance.gauss(0, 99)), time, height)
    elif kind == 2:
        fixes[at:at] = [fixes[at]] * chance.randrange(1, 9)
    elif kind == 3:
        fixes[at] = (north, east, stamp(START_S + chance.gauss(0, 1e8)), height)
    elif kind == 4:
        del fixes[at : at + chance.randrange(1, 30)]
    elif kind == 5:
        fixes[at] = (north, east, time, chance.choice([math.inf, -9999.0, 8848.0, 1e300]))
    elif kind == 6:
        fixes[at:] = fixes[at:][::-1]
    else:
        fixes[:] = [(north, east, None, height) for north, east, _, height in fixes]


def _plan(ending: str, places: list[Place], chance: random.Random) -> str:
    if ending == "toml":
        return plan_text(places, chance.choice(COURSES), _legs(places, chance))
    name = chance.choice(NAMES)
    if ending == "gpx":
        shown = name.replace("&", "&amp;").replace("<", "&lt;")
        points = "".join(
            f'<rtept lat="{north:.8f}" lon="{min(east, 179.9999999):.8f}"><name>{shown}{n}</name>'
            "</rtept>"
            for n, (north, east) in enumerate(places)
        )
        return f'<gpx version="1.1"><rte>{points}</rte></gpx>'
    if ending == "geojson":
        return json.dumps({"type": "FeatureCollection", "features": [
            {"type": "Feature", "properties": {"name": f"{name}{n}"},
             "geometry": {"type": "Point", "coordinates": [east, north]}}
            for n, (north, east) in enumerate(places)
        ]})  # fmt: skip
    rows = [
        f'{n},"{name}{n}","{name}{n + 1}","{at[0]:.7f}, {at[1]:.7f}","{to[0]:.7f}, {to[1]:.7f}"'
        for n, (at, to) in enumerate(pairwise(places), start=1)
    ]
    return "\n".join(["leg,from,to,from_position,to_position", *rows, ""])


def _legs(places: list[Place], chance: random.Random) -> str:
    """Give no legs, or legs of which some end by dead reckoning."""
    if chance.random() < 0.6:
        return ""
    made = ""
    for number in range(len(places) - 1):
        made += f'[[leg]]\nfrom = "P{number}"\n'
        reckoned = number == len(places) - 2 and chance.random() < 0.5
        made += "" if reckoned else f'to = "P{number + 1}"\n'
        if reckoned or chance.random() < 0.5:
            kind = chance.choice(["grid", "magnetic", "true"])
            made += f"{kind}_azimuth_deg = {chance.choice([0.0, 90.0, 359.9, 123.4])}\n"
            made += f"distance_m = {chance.choice([0.5, 250.0, 3000.0])}\n"
        if chance.random() < 0.2:
            made += f"paces = {chance.choice([1, 200, 5000])}\n"
    return made


def _log(places: list[Place], chance: random.Random) -> str:
    if chance.random() < 0.7:
        return ""
    rows = [
        f"{number},{chance.choice(['', '0', '359.9', '77'])},{chance.choice(['', '1', '400'])},"
        for number in range(1, len(places))
    ]
    return "\n".join(["leg,magnetic_azimuth_deg,paces,arrived", *rows, ""])


def _place(north: float, east: float) -> Place:
    return max(min(north, 90.0), -90.0), (east + 180.0) % 360.0 - 180.0
