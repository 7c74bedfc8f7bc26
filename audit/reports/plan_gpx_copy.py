"""A plan as a GPX 1.1 route, for receivers; via positions are points of the type "via"."""

from __future__ import annotations

from audit.leg_card.finished_card import LegCard
from audit.plan import Plan
from audit.reports.gpx_report import gpx_text
from audit.reports.plan_copy import PlanCopy
from audit.reports.plan_stops import DECIMALS, plan_stops, stops_copy


def copy_as_gpx(plan: Plan, card: LegCard) -> PlanCopy:
    """Give the plan as a route."""
    from gpxpy.gpx import GPX, GPXRoute, GPXRoutePoint  # noqa: PLC0415

    gpx = GPX()
    gpx.creator = "leg-audit"
    route = GPXRoute(name=gpx_text(plan.name))
    for stop in plan_stops(plan, card):
        longitude = round(stop.longitude_deg, DECIMALS)
        point = GPXRoutePoint(
            round(stop.latitude_deg, DECIMALS), -180.0 if longitude >= 180.0 else longitude
        )
        point.description = gpx_text(stop.words) or None
        if stop.name is None:
            point.type = "via"
        else:
            point.name = gpx_text(stop.name)
        route.points.append(point)
    gpx.routes.append(route)
    return stops_copy(f"{gpx.to_xml(version='1.1')}\n", plan)
