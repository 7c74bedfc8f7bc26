"""The check of lanes: text for a terminal, a document, a table, and a page."""

from __future__ import annotations

import datetime as dt
import json
from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy as np

from audit.course_setting.checked_lanes import CheckedLane, Daylight, LanesCheck
from audit.course_setting.safety_findings import unsafe_shapes
from audit.geodesy.areas_on_grid import GroundAreas
from audit.moments import utc_text
from audit.reports.csv_report import csv_text
from audit.reports.figure_ground import GroundSketch, Sign, ground_specification
from audit.reports.ground_key import ground_key
from audit.reports.lanes_words import lane_rows, method_words
from audit.reports.picture import draw
from audit.reports.printable import printable
from audit.reports.still_page import render_still_page
from audit.walking_times import WALKING_RULES
from audit.words import say, told

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

LANES_FORMAT = 1
"""Number of the shape of lanes.json."""


def render_lanes(checked: LanesCheck, first: Sequence[str] = ()) -> str:
    """Give plain text that ends with a line feed: the table, then what to look at.

    ``first`` are sentences on the plans, before all else.
    """
    rows = [("", [one.lane.name for one in checked.lanes]), *lane_rows(checked.lanes)]
    width = max(len(name) for name, _ in rows)
    widths = [max(len(cells[n]) for _, cells in rows) for n in range(len(checked.lanes))]
    lines = [*first, *([""] if first else [])]
    lines += [
        "  ".join(
            [name.ljust(width), *(c.rjust(w) for c, w in zip(cells, widths, strict=True))]
        ).rstrip()
        for name, cells in rows
    ]
    count = len(checked.findings)
    told_all = [say("lanes-things", count=count)]
    told_all += [f"{n:>2}. {told(one.message)}" for n, one in enumerate(checked.findings, start=1)]
    told_all = told_all if count else [say("lanes-nothing")]
    lines += ["", *told_all, "", method_words(checked.settings)]
    return "\n".join(printable(line) for line in lines) + "\n"


def render_lanes_json(checked: LanesCheck) -> str:
    """Give the document; nothing rounded, null for what is not known."""
    document = {
        "format": LANES_FORMAT,
        "lanes": [_entry(one) for one in checked.lanes],
        "findings": [
            {
                "kind": one.kind,
                "lane": one.lane or None,
                "what": one.what,
                "message": one.message,
                "lon": one.longitude_deg,
                "lat": one.latitude_deg,
            }
            for one in checked.findings
        ],
        "notes": list(checked.notes),
    }
    return json.dumps(document, indent=1, ensure_ascii=False, allow_nan=False) + "\n"


def render_lanes_csv(checked: LanesCheck) -> str:
    """Give one row a lane."""
    return csv_text([_flat(_entry(one)) for one in checked.lanes])


def render_lanes_html(checked: LanesCheck, areas: GroundAreas, first: Sequence[str] = ()) -> str:
    """Give the page, whole without a network and on paper."""
    unsafe = unsafe_shapes([one.lane for one in checked.lanes], areas)
    names = [one.lane.name for one in checked.lanes]
    sketch = _sketch(checked, areas, unsafe)
    picture = draw(
        ground_specification(sketch), "ground", say("lanes-picture"),
        say("lanes-picture-said", count=str(len(names))),
    )  # fmt: skip
    return render_still_page(
        "lanes.html.j2",
        title=", ".join(names) if len(names) <= 3 else say("lanes-many", count=str(len(names))),
        first=first,
        names=names,
        rows=lane_rows(checked.lanes),
        findings=[one.message for one in checked.findings],
        notes=checked.notes,
        picture=picture.svg,
        signs=ground_key(sketch),
        method=method_words(checked.settings),
    )


def _sketch(
    checked: LanesCheck, areas: GroundAreas, unsafe: tuple[BaseGeometry, ...]
) -> GroundSketch:
    import shapely  # noqa: PLC0415

    signs: dict[tuple[str, int, int], Sign] = {}
    for one in checked.lanes:
        for point in one.lane.card.points:
            key = (point.name, round(point.east_m), round(point.north_m))
            signs[key] = Sign(text=point.name, east_m=point.east_m, north_m=point.north_m)
    shown = None if areas.bounds is None else shapely.get_coordinates(areas.bounds)
    return GroundSketch(
        points=tuple(signs.values()),
        lines=tuple(
            ("planned", np.asarray(leg.line)) for one in checked.lanes for leg in one.lane.legs
        ),
        areas=areas,
        unsafe=unsafe,
        radius_m=max(one.lane.card.arrival_radius_m for one in checked.lanes),
        shown=shown,
    )


def _entry(one: CheckedLane) -> dict[str, object]:
    figures = one.figures
    start, end = figures.at_start, figures.at_end
    times_s = dict(figures.times_s)
    safety = one.lane.card.safety
    return {
        "name": one.lane.name,
        "plan": one.lane.source,
        "order": one.lane.card.order,
        "legs": figures.legs,
        "length_m": figures.length_m,
        "longest_m": figures.longest_m,
        "longest_leg": figures.longest_leg,
        "climb_m": figures.climb_m,
        "descent_m": figures.descent_m,
        "times_s": {rule.name: times_s.get(rule.name) for rule in WALKING_RULES},
        "mean_chance_in_sight": figures.mean_chance,
        "least_chance_in_sight": figures.least_chance,
        "least_chance_leg": figures.least_chance_leg,
        "twin_points": figures.twins,
        "safety_grid_deg": None if safety is None else safety.grid.degrees,
        "safety_magnetic_deg": None if safety is None else safety.magnetic.degrees,
        **_sun_entry(one.daylight),
        "begins": start and _time(start.moment),
        "light_at_start": start and start.light,
        "ends_by": end and _time(end.moment),
        "light_at_end": end and end.light,
        "light_left_s": figures.light_left_s,
    }


def _sun_entry(light: Daylight | None) -> dict[str, object]:
    return {
        "civil_dawn": None if light is None else _time(light.civil_dawn),
        "sunrise": None if light is None else _time(light.sunrise),
        "sunset": None if light is None else _time(light.sunset),
        "civil_dusk": None if light is None else _time(light.civil_dusk),
    }


def _time(moment: dt.datetime | None) -> str | None:
    return None if moment is None else utc_text(round(moment.timestamp()))


def _flat(entry: dict[str, object]) -> dict[str, object]:
    """Give each time a column of its own."""
    row: dict[str, object] = {}
    for name, value in entry.items():
        if isinstance(value, dict):
            row |= {
                f"time_{rule.lower().replace(' ', '_').replace('/', '_')}_s": seconds
                for rule, seconds in value.items()
            }
        else:
            row[name] = value
    return row
