"""The rehearsal for programs: rehearsal.json and rehearsal.csv, every figure in full."""

from __future__ import annotations

import json
import math

from audit.debriefing.course_entry import course_entry, point_entries
from audit.forecast.near_areas import NearArea
from audit.rehearsal.finished_rehearsal import LegRehearsal, LookAlike, Proposal, Rehearsal, WayEnd
from audit.reports.csv_report import csv_text
from audit.reports.forecast_report import leg_forecast_entry

REHEARSAL_FORMAT = 1
"""Number of the shape of rehearsal.json."""


def render_rehearsal_json(rehearsal: Rehearsal) -> str:
    """Give the document."""
    document = {
        "format": REHEARSAL_FORMAT,
        "simulated": "Nobody walked these ways: they are worked out from the plan.",
        "course": course_entry(rehearsal.card),
        "points": point_entries(rehearsal.card),
        "beside": list(rehearsal.beside),
        "resolution_m": rehearsal.resolution_m,
        "legs": [_leg(leg) for leg in rehearsal.legs],
        "near_areas": [_near_area(one) for one in rehearsal.near_areas],
        "notes": list(rehearsal.notes),
    }
    return json.dumps(document, indent=1, ensure_ascii=False, allow_nan=False) + "\n"


def render_rehearsal_csv(rehearsal: Rehearsal) -> str:
    """Give one row a way, all legs below each other."""
    rows = []
    for leg in rehearsal.legs:
        alike = _alike_causes(leg)
        for number, end in enumerate(leg.ends):
            entry = {"leg": leg.leg.name, "to": leg.leg.end.name, **_way(end)}
            near = "; ".join(_near_words(end))
            entry |= {name: "; ".join(getattr(end, name)) for name in ("ends_in", "through")}
            rows.append({**entry, "near": near, "same_place_as": "; ".join(alike[number])})
    return csv_text(rows or [{"leg": ""}])


def _leg(leg: LegRehearsal) -> dict[str, object]:
    return {
        "name": leg.leg.name,
        "from": leg.leg.start.name,
        "to": leg.leg.end.name,
        "grid_azimuth_deg": leg.leg.azimuth.degrees,
        "distance_m": leg.leg.distance_m,
        "forecast": leg_forecast_entry(leg.forecast),
        "ways": [_way(end) for end in leg.ends],
        "look_alikes": [_look_alike(pair) for pair in leg.look_alikes],
        "proposals": [_proposal(one) for one in leg.proposals],
        "planned_through": list(leg.planned_through),
        "no_change": leg.no_change or None,
        "not_here": [{"cause": cause, "why": why} for cause, why in leg.not_here],
    }


def _way(end: WayEnd) -> dict[str, object]:
    return {
        "cause": end.way.cause,
        "size": end.way.size,
        "unit": end.way.unit,
        "words": end.way.words,
        "share": end.way.share,
        "reference": end.reference,
        "lon": end.longitude_deg,
        "lat": end.latitude_deg,
        "east_m": end.east_m,
        "north_m": end.north_m,
        "miss_m": math.hypot(end.along_m, end.across_m),
        "along_m": end.along_m,
        "across_m": end.across_m,
        "ordinary_quantile": end.quantile,
        "ends_in": list(end.ends_in),
        "through": list(end.through),
        "ends_outside": end.ends_outside,
        "leaves_bounds": end.leaves_bounds,
        "near": [
            {"point": one.point, "course": one.course or None, "distance_m": one.distance_m}
            for one in end.near
        ],
    }


def _near_area(one: NearArea) -> dict[str, object]:
    return {
        "point": one.point.name,
        "leg": None if one.leg is None else one.leg.name,
        "area": one.area,
        "kind": one.kind,
        "away_m": one.away_m,
        "near_m": one.near_m,
        "walks_that_reach": one.walks,
    }


def _look_alike(pair: LookAlike) -> dict[str, object]:
    return {
        "ways": [pair.first, pair.second],
        "apart_m": pair.apart_m,
        "apart_sds": pair.apart_sds,
        "told_by_line": pair.by_line,
    }


def _proposal(one: Proposal) -> dict[str, object]:
    found = one.end is not None
    return {
        "causes": list(one.causes),
        "found": found,
        "longer_m": one.longer_m if found else None,
        "turned_deg": one.turned_deg if found else None,
        "reference": one.reference or None,
        "end": None if one.end is None else list(one.end),
        "apart_m": one.apart_m if found and math.isfinite(one.apart_m) else None,
        "pairs_before": one.pairs_before,
        "pairs_after": one.pairs_after,
        "settles": one.settles,
        "kept_off": list(one.kept_off),
    }


def _alike_causes(leg: LegRehearsal) -> list[list[str]]:
    """Give for each way the causes that end at its place and do not differ by their line."""
    found: list[dict[str, None]] = [{} for _ in leg.ends]
    for pair in leg.look_alikes:
        if not pair.by_line:
            found[pair.first].setdefault(leg.ends[pair.second].way.cause)
            found[pair.second].setdefault(leg.ends[pair.first].way.cause)
    return [list(names) for names in found]


def _near_words(end: WayEnd) -> list[str]:
    return [f"{one.point} of {one.course}" if one.course else one.point for one in end.near]
