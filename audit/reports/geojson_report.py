"""debrief.geojson: plan and walk for map programs (RFC 7946), longitude first, WGS 84."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from typing import Any

import numpy as np

from audit.debriefing.finished_debrief import Debrief
from audit.debriefing.leg_entry import leg_entry
from audit.debriefing.leg_shape import LegEntry
from audit.measurement.leg_measures import LegMeasures
from audit.reports.date_line import line_geometry, position
from audit.units import FloatArray

Feature = dict[str, Any]


def render_geojson(debrief: Debrief) -> str:
    """Give the text of debrief.geojson.

    ``kind`` of a feature is "planned-leg", "walked-portion", "point", "claim" or
    "miss". Lines carry every kept fix; coordinates are rounded to 1e-7 degrees.
    """
    collection = {"type": "FeatureCollection", "features": list(_features(debrief))}
    return json.dumps(collection, allow_nan=False, ensure_ascii=False) + "\n"


def _features(debrief: Debrief) -> Iterator[Feature]:
    for point in debrief.points:
        place = {"type": "Point", "coordinates": position(point.longitude_deg, point.latitude_deg)}
        yield _feature(
            "point",
            place,
            {
                "name": point.name,
                "arrival_radius_m": debrief.card.arrival_radius_m,
                "dead_reckoned": point.dead_reckoned,
            },
        )
    for leg in debrief.legs:
        entry = leg_entry(leg, timed=debrief.clean.timed)
        yield _planned(debrief, leg.audit.card.line, entry)
        if leg.audit.measures is not None:
            target = leg.audit.card.line[-1]
            yield from _walked(debrief, leg.audit.measures, entry, target)


def _planned(debrief: Debrief, line: FloatArray, entry: LegEntry) -> Feature:
    name = f"Leg {entry['name']}, planned"
    properties: dict[str, Any] = {
        "name": name,
        "leg": entry["name"],
        "from": entry["from"],
        "to": entry["to"],
    }
    properties |= {"status": entry["status"], **entry["planned"]}
    return _feature("planned-leg", _line(debrief, line), properties)


def _walked(
    debrief: Debrief, measures: LegMeasures, entry: LegEntry, target: FloatArray
) -> Iterator[Feature]:
    claim = measures.claim
    where = _portion(debrief, measures)
    leg = {"leg": entry["name"]}
    titles = {
        kind: {"name": f"Leg {entry['name']}, {kind}"} for kind in ("walked", "claim", "miss")
    }
    start, end = entry["start"], entry["end"]
    yield _feature(
        "walked-portion",
        _line(debrief, where),
        {
            **titles["walked"],
            **leg,
            "start": start and start["time"],
            "end": end and end["time"],
            "azimuth_error_deg": entry["azimuth_error_deg"],
            "distance_error_m": entry["distance_error_m"],
            **(entry["walked"] or {}),
        },
    )
    at = {"type": "Point", "coordinates": position(claim.longitude_deg, claim.latitude_deg)}
    cause = entry["causes"][0] if entry["causes"] else None
    yield _feature(
        "claim",
        at,
        {
            **titles["claim"],
            **leg,
            "time": end and end["time"],
            "found": entry["found"],
            "cause": cause and cause["cause"],
            "cause_probability": cause and cause["probability"],
        },
    )
    vector = np.array([target, [claim.east_m, claim.north_m]])
    yield _feature(
        "miss", _line(debrief, vector), {**titles["miss"], **leg, **(entry["miss"] or {})}
    )


def _portion(debrief: Debrief, measures: LegMeasures) -> FloatArray:
    """Give start, the kept fixes after it and before the claim, and the claim."""
    clean, start, claim = debrief.clean, measures.start, measures.claim
    between = slice(start.fix + 1, claim.fix)
    fixes = clean.places(between)
    ends = np.array([[start.east_m, start.north_m], [claim.east_m, claim.north_m]])
    return np.vstack([ends[:1], fixes, ends[1:]])


def _line(debrief: Debrief, grid_m: FloatArray) -> dict[str, Any]:
    """Give the geometry of a line on the course grid, shape (n, 2)."""
    longitude, latitude = debrief.card.grid.to_geographic(
        np.ascontiguousarray(grid_m[:, 0]), np.ascontiguousarray(grid_m[:, 1])
    )
    return line_geometry(longitude, latitude)


def _feature(kind: str, geometry: dict[str, Any], properties: Mapping[str, Any]) -> Feature:
    return {"type": "Feature", "geometry": geometry, "properties": {"kind": kind, **properties}}
