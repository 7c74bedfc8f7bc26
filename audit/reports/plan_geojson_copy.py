"""A plan as GeoJSON (RFC 7946): its points for map programs, settings and legs as members beside.

The standard lets other members stand beside the features (section 6.1); who does not know
them sees the points. Via positions and dead-reckoned ends are points of those types.
"""

from __future__ import annotations

import datetime as dt
import json

from audit.leg_card.finished_card import LegCard
from audit.plan import Plan
from audit.reports.plan_copy import PlanCopy
from audit.reports.plan_stops import DECIMALS
from audit.reports.plan_tables import course_table, leg_tables, lost_of_legs


def copy_as_geojson(plan: Plan, card: LegCard) -> PlanCopy:
    """Give the plan as a collection of points with its course and legs."""
    features = []
    for point in plan.points:
        where = point.position
        properties: dict[str, object] = {"name": point.name}
        if where.half_square_m:
            properties["half_square_m"] = where.half_square_m
        features.append(_feature(properties, where.longitude_deg, where.latitude_deg))
    for leg in plan.legs:
        features += [_feature({"type": "via", "leg": leg.name}, via.longitude_deg,
                              via.latitude_deg) for via in leg.via]  # fmt: skip
    features += [
        _feature({"type": "reckoned", "end": one.name}, one.longitude_deg, one.latitude_deg)
        for one in card.points
        if one.dead_reckoned
    ]
    document = {
        "type": "FeatureCollection",
        "name": plan.name,
        "course": {
            key: value.isoformat() if isinstance(value, dt.date) else value
            for key, value in course_table(plan).items()
        },
        "features": features,
        "leg": leg_tables(plan),
    }
    text = json.dumps(document, indent=1, ensure_ascii=False, allow_nan=False)
    return PlanCopy(text=f"{text}\n", lost=tuple(lost_of_legs(plan)), options={})


def _feature(properties: dict[str, object], longitude_deg: float, latitude_deg: float) -> object:
    return {
        "type": "Feature",
        "properties": properties,
        "geometry": {
            "type": "Point",
            "coordinates": [round(longitude_deg, DECIMALS), round(latitude_deg, DECIMALS)],
        },
    }
