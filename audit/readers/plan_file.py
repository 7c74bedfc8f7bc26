"""A plan from a file of any of its formats."""

from __future__ import annotations

import codecs
import re
from pathlib import Path
from typing import Unpack

from audit.errors import refuse_file
from audit.plan import Plan
from audit.readers.course_settings import CourseOptions
from audit.readers.file_bytes import decoded_text, file_bytes
from audit.readers.plan_csv import PLAN_COLUMNS, read_plan_csv
from audit.readers.plan_geojson import read_plan_geojson
from audit.readers.plan_gpx import read_plan_gpx
from audit.readers.plan_toml import read_plan_toml
from audit.readers.problem_list import ProblemList
from audit.readers.walkers_log_file import is_log
from audit.settings import Settings
from audit.words import sentence

_KINDS = {
    ".toml": "TOML",
    ".csv": "CSV",
    ".tsv": "CSV",
    ".txt": "",
    ".gpx": "GPX",
    ".xml": "GPX",
    ".geojson": "GeoJSON",
    ".json": "GeoJSON",
}
_HEAD = 65_536
"""Bytes that show what a file is."""
_TOML_TABLE = re.compile(r"^\s*\[{1,2}\s*(?:course|point|leg)\s*\]{1,2}", re.MULTILINE)

_GEOJSON_TYPE = re.compile(
    r'"type"\s*:\s*"(?:Feature|FeatureCollection|GeometryCollection|Point|LineString)"'
)
_LEGS_REPORT = re.compile(r"leg,from,to,status,confidence,")
_OF_DEBRIEF = '"dead_reckoned"'
"""Columns of legs.csv, and a property that debrief.geojson gives each point."""


def read_plan(
    path: str | Path, *, settings: Settings | None = None, **options: Unpack[CourseOptions]
) -> Plan:
    """Give the plan that a file holds: TOML, CSV, GPX or GeoJSON, by its name, then its content.

    Parameters
    ----------
    path : str or Path
    settings : Settings or None
        Thresholds, of which reading has its limits; the defaults where left out.
    name, date, grid, grid_magnetic_angle_deg, paces_per_100m, arrival_radius_m
        Settings of the course. They come before those of the file.
    route : str or int
        Name or number of the route to take where a GPX file holds several.

    Returns
    -------
    Plan
        Its ``notes`` say what was assumed, and its ``grid`` is a code.

    Raises
    ------
    InputRefusedError
        With every problem of the file.
    """
    unknown = options.keys() - CourseOptions.__annotations__.keys()
    if unknown:
        message = f"read_plan has no option {', '.join(sorted(unknown))}"
        raise TypeError(message)
    path = Path(path)
    limits = (settings or Settings()).reading
    data = file_bytes(path, "a plan", limits)
    problems = ProblemList(file=path.name, limits=limits)
    kind = _kind(path, data, problems)
    if kind == "GPX":
        return read_plan_gpx(data, options, problems)
    if options.get("route") is not None:
        rule = f"picks a route of a GPX file, but this plan is in {kind}"
        problems.add("option route", options.get("route"), rule, "Leave the option out.")
    text = decoded_text(data, problems)
    if kind == "CSV" and is_log(text):
        remedy = "Give it with --log, and the plan in its place."
        raise refuse_file(path.name, "is a walker's log and no plan", remedy)
    readers = {"TOML": read_plan_toml, "CSV": read_plan_csv, "GeoJSON": read_plan_geojson}
    return readers[kind](text, options, problems)


def holds_plan(path: Path) -> bool:
    """Tell whether a file of a folder is a plan, by its name and by how it begins.

    Logs, other JSON and what a debrief was written to are passed over.
    """
    if path.suffix.lower() not in _KINDS:
        return False
    try:
        with path.open("rb") as file:
            data = file.read(_HEAD)
    except OSError:
        return False
    kind, head = _seen_kind(data), _head(data)
    if kind == "CSV":
        return not (is_log(head) or _LEGS_REPORT.match(head))
    if kind == "GeoJSON":
        return bool(_GEOJSON_TYPE.search(head)) and _OF_DEBRIEF not in head
    return bool(kind)


def _kind(path: Path, data: bytes, problems: ProblemList) -> str:
    """Give the format: by the suffix unless the content cannot be that."""
    said = _KINDS.get(path.suffix.lower(), "")
    seen = _seen_kind(data)
    if not said and not seen:
        rule = "is in no format of a plan that could be told from its name or content"
        remedy = "Name it .toml, .csv, .gpx or .geojson after what it holds."
        raise refuse_file(path.name, rule, remedy)
    if said and seen and said != seen:
        problems.note(sentence("plan-other-kind", said=said, seen=seen))
    return seen or said


def _seen_kind(data: bytes) -> str:
    """Give the format that the content shows, "" where it shows none."""
    head = _head(data)
    if head.startswith("<"):
        return "GPX"
    if head.startswith("{"):
        return "GeoJSON"
    if _TOML_TABLE.search(head):
        return "TOML"
    first = re.split(r"[,;\t\r\n]", head, maxsplit=1)[0]
    return "CSV" if first.strip().strip('"').lower().replace(" ", "_") in PLAN_COLUMNS else ""


def _head(data: bytes) -> str:
    wide = data.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE))
    return data[:_HEAD].decode("utf-16" if wide else "utf-8-sig", errors="replace").lstrip()
