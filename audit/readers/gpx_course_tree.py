"""What a plan needs of a GPX file: its routes, its waypoints, their names and nothing else."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

from audit.readers.gpx_tree import local_name
from audit.readers.problem_list import ProblemList

if TYPE_CHECKING:
    from xml.etree.ElementTree import Element


def course_document(root: Element, problems: ProblemList) -> Any:  # noqa: ANN401
    """Give gpxpy's document of the routes, the waypoints and the names in a GPX tree.

    The rest is left out before: a plan has no use for it, and a slip in it (the <fix> of
    a recorded track) must not spoil the plan.

    Raises
    ------
    InputRefusedError
        For points without usable coordinates, all of them at once.
    """
    from xml.etree.ElementTree import Element, tostring  # noqa: PLC0415

    import gpxpy  # noqa: PLC0415
    from gpxpy.gpx import GPXException  # noqa: PLC0415

    _refuse_too_many(root, problems)
    kept = Element("gpx", version="1.0", creator="plan")
    routes = waypoints = 0
    for child in root:
        kind = local_name(child)
        if kind == "rte":
            routes += 1
            _keep_route(child, kept, f"route {routes}", problems)
        elif kind == "wpt":
            waypoints += 1
            _keep_point(child, kept, f"waypoint {waypoints}", problems)
        elif kind == "metadata":
            _keep_name(child, kept)
    if kept.find("name") is None:
        _keep_name(root, kept)
    problems.stop_if_any()
    try:
        return gpxpy.parse(tostring(kept, encoding="unicode"), version="1.0")
    except GPXException as error:
        problems.stop("", None, f"is not GPX as the standard has it ({error})", "Save it again.")


def _refuse_too_many(root: Element, problems: ProblemList) -> None:
    """Refuse more points than any collection of them holds before each is looked at."""
    most = problems.limits.most_points_beside
    count = sum(local_name(element) in ("rtept", "wpt") for element in root.iter())
    if count > most:
        rule = f"holds {count:,} points; at most {most:,} are looked at"
        problems.stop("", None, rule, "Keep only the route, or the points in order.")


def _keep_route(route: Element, parent: Element, place: str, problems: ProblemList) -> None:
    copy = route.makeelement("rte", {})
    parent.append(copy)
    _keep_name(route, copy)
    points = [child for child in route if local_name(child) == "rtept"]
    for number, point in enumerate(points, start=1):
        _keep_point(point, copy, f"{place}, point {number}", problems)


def _keep_point(point: Element, parent: Element, place: str, problems: ProblemList) -> None:
    copy = point.makeelement(local_name(point), {})
    parent.append(copy)
    name = _keep_name(point, copy)
    _keep_type(point, copy)
    place = f"{place} ({name})" if name else place
    for key, what, most in (("lat", "latitude", 90.0), ("lon", "longitude", 180.0)):
        value = _degrees(point.get(key), key, what, most, place, problems)
        if value is not None:
            copy.set(key, repr(value))


def _keep_name(element: Element, copy: Element) -> str:
    """Copy an element's own name, and give it on one line."""
    for child in element:
        if local_name(child) == "name" and child.text and child.text.strip():
            name = copy.makeelement("name", {})
            name.text = " ".join(child.text.split())
            copy.append(name)
            return name.text
    return ""


def _keep_type(point: Element, copy: Element) -> None:
    """Copy what sort of point it is, which sets points of the course apart from via positions."""
    for child in point:
        if local_name(child) == "type" and child.text:
            sort = copy.makeelement("type", {})
            sort.text = child.text
            copy.append(sort)
            return


def _degrees(
    text: str | None, key: str, what: str, most: float, place: str, problems: ProblemList
) -> float | None:
    """Give a coordinate; put a problem down where it is missing, no number or out of range."""
    if text is None:
        remedy = f'Each point needs its {what}, as in {key}="36.512".'
        problems.add(place, None, f"has no {what}", remedy)
        return None
    try:
        value = float(text) if "_" not in text else math.nan
    except ValueError:
        value = math.nan
    if not math.isfinite(value):
        rule = "is no number of degrees"
        problems.add(f"{place}, {key}", text, rule, "Write decimal degrees with a point.")
    elif abs(value) > most:
        rule = f"is out of range: a {what} runs from -{most:g} to {most:g}"
        problems.add(f"{place}, {key}", text, rule, "Check that lat and lon are not exchanged.")
    else:
        return value
    return None
