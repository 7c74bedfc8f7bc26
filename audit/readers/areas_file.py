"""Areas of a course from GeoJSON (RFC 7946): polygons with a property ``kind``."""

from __future__ import annotations

import json
import math
from pathlib import Path
from typing import Any

from audit.areas import AREA_KINDS, Area, AreaKind, Ring
from audit.readers.file_bytes import decoded_text, file_bytes
from audit.readers.plain_text import shown
from audit.readers.problem_list import ProblemList
from audit.settings import Settings

_WANTED = (
    'Give a FeatureCollection of polygons, each with the property "kind": '
    '"bounds", "no-go" or "hazard"; or of lines that are a "hazard" or a "road".'
)


def read_areas(path: str | Path, *, settings: Settings | None = None) -> tuple[Area, ...]:
    """Give the areas of a file, in its order.

    A hazard may be a line, a road is one; bounds and no-go areas are polygons.

    Raises
    ------
    InputRefusedError
        With every problem of the file.
    """
    path = Path(path)
    limits = (settings or Settings()).reading
    problems = ProblemList(file=path.name, limits=limits)
    text = decoded_text(file_bytes(path, "areas", limits), problems)
    features = _features(text, problems)
    areas = [_area(one, number, problems) for number, one in enumerate(features, start=1)]
    most = limits.most_area_corners
    if sum(len(ring) for area in areas if area for ring in _rings(area)) > most:
        problems.add("", None, f"has more than {most} corners", "Simplify the areas.")
    problems.stop_if_any()
    return tuple(area for area in areas if area is not None)


def _features(text: str, problems: ProblemList) -> list[Any]:
    try:
        document = json.loads(text)
    except RecursionError:
        problems.stop("", None, "is nested too deeply", _WANTED)
    except json.JSONDecodeError as error:
        problems.stop("", None, f"is not JSON: {error.msg}", _WANTED)
    except ValueError:
        problems.stop("", None, "holds a number that is too long", "Save it again.")
    if isinstance(document, dict) and document.get("type") == "Feature":
        return [document]
    features = document.get("features") if isinstance(document, dict) else None
    if not isinstance(features, list) or document.get("type") != "FeatureCollection":
        problems.stop("", None, "is no FeatureCollection", _WANTED)
    if not features:
        problems.stop("", None, "holds no areas", _WANTED)
    return features


def _area(feature: object, number: int, problems: ProblemList) -> Area | None:
    place = f"feature {number}"
    properties = feature.get("properties") if isinstance(feature, dict) else None
    geometry = feature.get("geometry") if isinstance(feature, dict) else None
    if not isinstance(geometry, dict) or not isinstance(properties, dict):
        problems.add(place, None, "has no geometry or no properties", _WANTED)
        return None
    name = problems.writable(str(properties.get("name") or ""), place).strip()
    place = f"{place} ({name})" if name else place
    kind = _kind(properties.get("kind"), place, problems)
    parts, lines = _shapes(geometry, place, problems)
    if kind is None or not (parts or lines):
        return None
    if lines and kind not in ("hazard", "road"):
        rule = "is a line, and only a hazard or a road may be one"
        problems.add(place, None, rule, "Draw it as an area.")
        return None
    if parts and kind == "road":
        problems.add(place, None, "is an area, and a road is a line", "Draw its middle as a line.")
        return None
    return Area(name=name or f"{kind} {number}", kind=kind, parts=parts, lines=lines)


def _kind(value: object, place: str, problems: ProblemList) -> AreaKind | None:
    word = str(value).strip().lower().replace("_", "-").replace(" ", "-")
    found = next((one for one in AREA_KINDS if one == word), None)
    if found is None:
        known = ", ".join(f'"{one}"' for one in AREA_KINDS)
        given = "has no kind" if value is None else "is no kind of area"
        problems.add(f"{place}, kind", value, given, f"Write one of {known}.")
    return found


def _shapes(
    geometry: dict[str, Any], place: str, problems: ProblemList
) -> tuple[tuple[tuple[Ring, ...], ...], tuple[Ring, ...]]:
    """Give polygons and lines of a geometry."""
    kind: object = geometry.get("type")
    coordinates: Any = geometry.get("coordinates")
    if kind not in ("Polygon", "MultiPolygon", "LineString", "MultiLineString"):
        problems.add(place, kind, "is no polygon", _WANTED)
        return (), ()
    try:
        if kind == "Polygon":
            return (_polygon(coordinates),), ()
        if kind == "MultiPolygon":
            return tuple(_polygon(one) for one in coordinates), ()
        lines: list[Any] = [coordinates] if kind == "LineString" else coordinates
        return (), tuple(_ring(one, 2) for one in lines)
    except (TypeError, ValueError, LookupError, OverflowError) as error:
        rule = f"cannot be drawn: {error}" if isinstance(error, ValueError) else "cannot be drawn"
        problems.add(place, None, rule, "Export it again as RFC 7946 GeoJSON.")
        return (), ()


def _polygon(rings: list[Any]) -> tuple[Ring, ...]:
    """Give outer ring and holes.

    Raises
    ------
    ValueError
        For rings that are no outline of an area.
    """
    import shapely  # noqa: PLC0415 (only where there are areas)

    found = tuple(_ring(ring, 4) for ring in rings)
    why = str(shapely.is_valid_reason(shapely.Polygon(found[0], found[1:])))
    if why != "Valid Geometry":
        message = f"its outline is not sound ({why.split('[', maxsplit=1)[0].strip().lower()})"
        raise ValueError(message)
    return found


def _ring(corners: list[Any], least: int) -> Ring:
    ring = tuple((float(corner[0]), float(corner[1])) for corner in corners)
    if len(ring) < least:
        message = f"it has {len(ring)} corners and needs {least}"
        raise ValueError(message)
    for longitude, latitude in ring:
        if not (math.isfinite(longitude) and math.isfinite(latitude)):
            message = "a corner is no finite number"
            raise ValueError(message)
        if abs(longitude) > 180.0 or abs(latitude) > 90.0:
            message = f"{shown(f'{longitude}, {latitude}')} is no longitude and latitude"
            raise ValueError(message)
    return ring


def _rings(area: Area) -> list[Ring]:
    return [*(ring for part in area.parts for ring in part), *area.lines]
