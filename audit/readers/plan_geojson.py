"""A plan in GeoJSON: a FeatureCollection of Points in order, or one LineString (RFC 7946)."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any, NoReturn

from audit.plan import Plan
from audit.positions import Position
from audit.readers.course_from_stops import VIA, Stop, put_stops
from audit.readers.course_settings import SETTING_KEYS, CourseOptions, settle_settings
from audit.readers.half_square import with_half_square
from audit.readers.leg_table import draft_leg
from audit.readers.plain_text import shown
from audit.readers.plan_draft import DraftLeg, check_count
from audit.readers.plan_finish import finished_plan
from audit.readers.point_book import PointBook
from audit.readers.position_reading import PositionReading
from audit.readers.problem_list import ProblemList
from audit.words import sentence

_WANTED = "Give a FeatureCollection of Points in order, or one LineString."
_CRS84 = ("CRS84", "OGC:1.3:CRS84", "EPSG::4326", "EPSG:4326")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Shape:
    """A geometry with the place where it stands and the name that it has."""

    place: str
    name: str | None
    kind: str
    coordinates: Any
    properties: Mapping[str, Any] = field(default_factory=dict)

    @property
    def via(self) -> bool:
        """Tell whether it only shapes a leg."""
        return self.properties.get("type") == VIA

    @property
    def is_point(self) -> bool:
        """Tell whether it is a point of the course."""
        return self.properties.get("type") not in (VIA, "reckoned")


def read_plan_geojson(text: str, options: CourseOptions, problems: ProblemList) -> Plan:
    """Give the plan of a GeoJSON text; positions are [longitude, latitude].

    Raises
    ------
    InputRefusedError
        With every problem of the text.
    """
    document = _document(text, problems)
    _check_crs(document, problems)
    shapes = list(_shapes(document, problems))
    problems.stop_if_any()
    kinds = {shape.kind for shape in shapes}
    named = _text(document.get("name"), "name", problems)
    if kinds == {"Point"}:
        stops = [(shape, _point(shape, problems)) for shape in shapes]
    elif kinds == {"LineString"} and len(shapes) == 1:
        stops = _line(shapes[0], problems)
        named = named or shapes[0].name
    else:
        _refuse_mixture(shapes, problems)
    stated = {"name": named} if named else {}
    settings = settle_settings(stated | _course(document, problems), options, problems)
    problems.stop_if_any()
    read = [
        Stop(name=shape.name, reading=reading, via=shape.via)
        for shape, reading in stops
        if reading is not None and (shape.via or shape.is_point)
    ]
    legs = document.get("leg")
    if kinds == {"Point"} and isinstance(legs, list) and legs:
        book = PointBook(problems, options.get("points"))
        for stop in read:
            if not stop.via:
                book.put(stop.name, stop.reading)
        drafts = _legs(legs, settings.grid, problems)
    else:
        book, drafts = put_stops(read, "point", problems)
    return finished_plan(settings, book, drafts, problems)


def _course(document: dict[str, Any], problems: ProblemList) -> dict[str, object]:
    """Give the settings that stand beside the features, as a copy of a plan has them."""
    course = document.get("course")
    if not isinstance(course, dict):
        return {}
    for key in course:
        if key not in SETTING_KEYS:
            problems.note(sentence("plan-no-setting", name=shown(key)))
    return {key: value for key, value in course.items() if key in SETTING_KEYS}


def _legs(legs: list[Any], grid: str | None, problems: ProblemList) -> list[DraftLeg]:
    """Give the legs that stand beside the features."""
    check_count(len(legs), problems)
    drafts = []
    for number, table in enumerate(legs, start=1):
        if isinstance(table, dict):
            drafts.append(draft_leg(table, number, grid, problems))
        else:
            problems.add(f"leg {number}", None, "is no leg", "Give an object with from and to.")
    return drafts


def _document(text: str, problems: ProblemList) -> dict[str, Any]:
    try:
        document = json.loads(text)
    except RecursionError:
        problems.stop("", None, "is nested too deeply", _WANTED)
    except json.JSONDecodeError as error:
        rule = f"is not JSON: {error.msg}"
        problems.stop(f"line {error.lineno}", None, rule, "Save it again from its program.")
    except ValueError:
        problems.stop("", None, "holds a number that is too long", "Save it again.")
    if not isinstance(document, dict) or not isinstance(document.get("type"), str):
        problems.stop("", None, "is JSON but not GeoJSON", _WANTED)
    return document


def _check_crs(document: dict[str, Any], problems: ProblemList) -> None:
    """Refuse other reference systems than WGS 84, which GeoJSON once allowed to name."""
    crs = document.get("crs")
    properties = crs.get("properties") if isinstance(crs, dict) else None
    name = properties.get("name") if isinstance(properties, dict) else None
    if crs is not None and not str(name).endswith(_CRS84):
        rule = "is another reference system than longitude and latitude on WGS 84"
        problems.stop("crs", str(name), rule, "Export it again as RFC 7946 GeoJSON.")


def _shapes(document: dict[str, Any], problems: ProblemList) -> Iterable[_Shape]:
    """Give the geometries of a document in order; put down features without one."""
    if document["type"] != "FeatureCollection":
        yield from _feature(document, "", problems)
        return
    features = document.get("features")
    if not isinstance(features, list):
        problems.stop("", None, "is a FeatureCollection without its list of features", _WANTED)
    for number, feature in enumerate(features, start=1):
        yield from _feature(feature, f"feature {number}", problems)


def _feature(feature: object, place: str, problems: ProblemList) -> Iterable[_Shape]:
    geometry, name, own = feature, None, {}
    if isinstance(feature, dict) and feature.get("type") == "Feature":
        geometry = feature.get("geometry")
        properties = feature.get("properties")
        named = properties.get("name") if isinstance(properties, dict) else None
        own = properties if isinstance(properties, dict) else {}
        name = _text(named, place, problems) or _text(feature.get("id"), place, problems)
    if not isinstance(geometry, dict) or not isinstance(geometry.get("type"), str):
        problems.add(place, None, "has no geometry", _WANTED)
        return
    if name is not None:
        place = f"{place} ({name})" if place else name
    yield _Shape(
        place=place,
        name=name,
        kind=geometry["type"],
        coordinates=geometry.get("coordinates"),
        properties=own,
    )


def _text(value: object, place: str, problems: ProblemList) -> str | None:
    """Give a name from text or a whole number; None where there is none."""
    if isinstance(value, bool) or not isinstance(value, str | int):
        return None
    return " ".join(problems.writable(str(value), place).split()) or None


def _line(shape: _Shape, problems: ProblemList) -> list[tuple[_Shape, PositionReading | None]]:
    if not isinstance(shape.coordinates, list):
        problems.stop(shape.place, None, "has no list of coordinates", _WANTED)
    corner = _Shape(place=shape.place, name=None, kind="Point", coordinates=None)
    return [
        (corner, _reading(pair, f"{shape.place or 'line'}, position {number}", problems))
        for number, pair in enumerate(shape.coordinates, start=1)
    ]


def _point(shape: _Shape, problems: ProblemList) -> PositionReading | None:
    reading = _reading(shape.coordinates, shape.place, problems)
    return with_half_square(shape.properties, reading, shape.place, problems)


def _reading(pair: object, place: str, problems: ProblemList) -> PositionReading | None:
    numbers = pair[:2] if isinstance(pair, list) else []
    if len(numbers) != 2 or not all(_is_number(number) for number in numbers):
        rule = "is no position of longitude and latitude"
        problems.add(place, json.dumps(pair)[:60], rule, "Write [-84.231, 36.512].")
        return None
    longitude_deg, latitude_deg = (float(number) for number in numbers)
    if abs(latitude_deg) > 90.0 or abs(longitude_deg) > 180.0:
        rule = "is out of range: longitudes run from -180 to 180, latitudes from -90 to 90"
        remedy = "Check the order: GeoJSON has longitude first."
        problems.add(place, f"[{longitude_deg:g}, {latitude_deg:g}]", rule, remedy)
        return None
    position = Position(
        longitude_deg=longitude_deg,
        latitude_deg=latitude_deg,
        given=f"[{longitude_deg!r}, {latitude_deg!r}]",
    )
    return PositionReading(position=position)


def _is_number(value: object) -> bool:
    if isinstance(value, bool) or not isinstance(value, int | float):
        return False
    # Whole numbers of any length come from JSON; comparing is all that is safe with them.
    return abs(value) < 1e9


def _refuse_mixture(shapes: list[_Shape], problems: ProblemList) -> NoReturn:
    counts: dict[str, int] = {}
    for shape in shapes:
        counts[shape.kind] = counts.get(shape.kind, 0) + 1
    found = " and ".join(f"{count} {kind}" for kind, count in sorted(counts.items()))
    problems.stop("", None, f"holds {found or 'nothing'}, which is no plan", _WANTED)
