"""A plan in GPX: a route, or the waypoints in file order where there is no route."""

from __future__ import annotations

from typing import Any

from audit.plan import Plan
from audit.positions import Position
from audit.readers.course_from_stops import VIA, Stop, put_stops
from audit.readers.course_settings import CourseOptions, settle_settings
from audit.readers.gpx_course_tree import course_document
from audit.readers.gpx_tree import gpx_root, local_name
from audit.readers.plan_finish import finished_plan
from audit.readers.position_reading import PositionReading
from audit.readers.problem_list import ProblemList
from audit.words import sentence


def read_plan_gpx(data: bytes, options: CourseOptions, problems: ProblemList) -> Plan:
    """Give the plan of a GPX file, version 1.0 or 1.1.

    Raises
    ------
    InputRefusedError
        With every problem of the file; also for several routes of which the options
        pick none, and for a recorded track without a route.
    """
    root = gpx_root(data, problems)
    document = course_document(root, problems)
    tracked = any(local_name(child) == "trk" for child in root)
    name, points, kind = _course(document, options.get("route"), problems, tracked=tracked)
    if tracked:
        problems.note(sentence("plan-also-track"))
    settings = settle_settings({"name": name} if name else {}, options, problems)
    stops = [
        Stop(
            name=problems.writable(point.name or "", f"{kind} {number}, name") or None,
            reading=_reading(point),
            via=(point.type or "").strip().lower() == VIA,
        )
        for number, point in enumerate(points, start=1)
    ]
    book, drafts = put_stops(stops, kind, problems)
    return finished_plan(settings, book, drafts, problems)


def _reading(point: Any) -> PositionReading:  # noqa: ANN401
    return PositionReading(
        position=Position(
            longitude_deg=point.longitude,
            latitude_deg=point.latitude,
            given=f"{point.latitude}, {point.longitude}",
        )
    )


def _course(
    document: Any,  # noqa: ANN401
    wanted: str | int | None,
    problems: ProblemList,
    *,
    tracked: bool,
) -> tuple[str, list[Any], str]:
    """Give the name of the course, its points, and the word for one of them."""
    routes = [route for route in document.routes if route.points]
    if len(routes) < len(document.routes):
        problems.note(sentence("plan-empty-route"))
    if wanted is not None or len(routes) > 1:
        routes = [_picked(routes, wanted, problems)]
    if routes:
        if document.waypoints:
            problems.note(sentence("plan-waypoints", count=len(document.waypoints)))
        return routes[0].name or document.name or "", routes[0].points, "point"
    if tracked and len(document.waypoints) < 2:
        rule = "holds a recorded track and no route, so it is no plan"
        problems.stop("", None, rule, "Give it as the track, with a plan beside it.")
    if not document.waypoints:
        rule = "holds no route and no waypoints"
        problems.stop("", None, rule, "Give a GPX file with a route, or with its points in order.")
    problems.note(sentence("plan-no-route"))
    return document.name or "", document.waypoints, "waypoint"


def _picked(routes: list[Any], wanted: str | int | None, problems: ProblemList) -> Any:  # noqa: ANN401
    """Give the route of that name, or of that number, counted from 1."""
    names = [route.name or "" for route in routes]
    listed = ", ".join(f'{n} "{name}"' if name else f"{n}" for n, name in enumerate(names, 1))
    if wanted is None:
        rule = f"holds {len(routes)} routes: {listed}"
        problems.stop("", None, rule, "Pick one by its name or number with the option route.")
    text = str(wanted).strip()
    number = names.index(text) + 1 if names.count(text) == 1 else 0
    if not number and text.isdecimal() and len(text) < 9:
        number = int(text)
    if not 1 <= number <= len(routes):
        remedy = f"The file holds: {listed}." if routes else "The file holds no route."
        problems.stop("option route", wanted, "is no one route of the file", remedy)
    return routes[number - 1]
