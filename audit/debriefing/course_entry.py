"""The course and its points as documents give them."""

from __future__ import annotations

from collections.abc import Iterable

from audit.debriefing.document_shape import CourseEntry, PlanFindingEntry, PointEntry
from audit.leg_card import CardFinding, LegCard


def course_entry(card: LegCard) -> CourseEntry:
    """Give the course, its grid and its angles."""
    return {
        "name": card.name,
        "date": None if card.date is None else card.date.isoformat(),
        "date_from": card.date_source,
        "grid": card.grid.code,
        "grid_name": str(card.grid.name),
        "grid_magnetic_angle_deg": float(card.angles.grid_magnetic_angle_deg),
        "grid_magnetic_angle_from": card.angle_source,
        "declination_deg": card.declination_deg,
        "declination_sd_deg": card.declination_sd_deg,
        "grid_convergence_deg": float(card.angles.convergence_deg),
        "model": card.model,
        "model_grid_magnetic_angle_deg": card.model_grid_magnetic_angle_deg,
        "paces_per_100m": card.paces_per_100m,
        "arrival_radius_m": float(card.arrival_radius_m),
        "order": card.order,
        "notes": list(card.notes),
    }


def point_entries(card: LegCard) -> list[PointEntry]:
    """Give the points, dead-reckoned ends among them."""
    return [
        {
            "name": point.name,
            "lon": float(point.longitude_deg),
            "lat": float(point.latitude_deg),
            "east_m": float(point.east_m),
            "north_m": float(point.north_m),
            "half_square_m": float(point.half_square_m),
            "dead_reckoned": point.dead_reckoned,
        }
        for point in card.points
    ]


def plan_finding_entries(findings: Iterable[CardFinding]) -> list[PlanFindingEntry]:
    """Give what the plan says and its own sums do not bear out."""
    return [
        {
            "leg": finding.leg,
            "what": finding.what,
            "given": finding.given,
            "computed": finding.computed,
            "message": finding.message,
            "slips": list(finding.slips),
        }
        for finding in findings
    ]
