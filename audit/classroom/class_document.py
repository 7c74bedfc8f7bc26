"""The document of class.json: the class in plain dictionaries."""

from __future__ import annotations

from typing import TYPE_CHECKING

from audit.classroom.class_shape import ClassDocument, LaneEntry, StandardEntry
from audit.classroom.walker_entry import walker_entry

if TYPE_CHECKING:
    from audit.classroom.class_result import ClassResult
    from audit.classroom.lane_result import LaneResult
    from audit.standard import Standard


def class_document(result: ClassResult) -> ClassDocument:
    """Give the document of a class."""
    return {
        "format": 1,
        "name": result.name,
        "version": result.version,
        "fingerprint": result.fingerprint,
        "private": result.private,
        "shift_s": float(result.shift_s),
        "shift_from": result.shift_from,
        "course": {
            "name": ", ".join(dict.fromkeys(lane.course for lane in result.lanes)),
            "lanes": [_lane(lane) for lane in result.lanes],
        },
        "standard": standard_entry(result.standard),
        "walkers": [walker_entry(walker, result.lane(walker.lane)) for walker in result.walkers],
        "legs": [
            {
                "name": leg.name,
                "lane": leg.lane,
                "to": leg.point,
                "walkers": leg.walkers,
                "walked": leg.walked,
                "found": leg.found,
                "missed": leg.missed,
                "doubtful": leg.doubtful,
                "without_evidence": leg.without_evidence,
                "mean_miss": None if leg.mean_miss is None else list(leg.mean_miss),
                "spread_m": leg.spread_m,
                "finding": leg.finding,
            }
            for leg in result.legs
        ],
        "findings": [
            {
                "what": finding.what,
                "leg": finding.leg,
                "lane": finding.lane,
                "walkers": list(finding.walkers),
                "question": finding.question,
                "leaves_out": finding.leaves_out,
                "probability": finding.probability,
                "message": finding.message,
            }
            for finding in result.findings
        ],
        "notes": list(result.notes),
    }


def standard_entry(standard: Standard) -> StandardEntry:
    """Give every figure of a standard."""
    weights = standard.weights
    return {
        "name": standard.name,
        "edition": standard.edition,
        "file": standard.source,
        "points_to_find": standard.points_to_find,
        "radius_m": standard.radius_m,
        "survey_sd_m": standard.survey_sd_m,
        "time_limit_s": standard.time_limit_s,
        "late_grace_s": standard.late_grace_s,
        "late_penalty_per_min": standard.late_penalty_per_min,
        "azimuth_tolerance_deg": standard.azimuth_tolerance_deg,
        "distance_tolerance": standard.distance_tolerance,
        "order": standard.order,
        "road_rule": standard.road_rule,
        "road_distance_m": standard.road_distance_m,
        "weights": {
            "points": weights.points,
            "time": weights.time,
            "azimuth": weights.azimuth,
            "distance": weights.distance,
        },
        "sources": [{"figure": figure, "source": source} for figure, source in standard.sources],
        "notes": list(standard.notes),
    }


def _lane(lane: LaneResult) -> LaneEntry:
    return {
        "name": lane.name,
        "plan": lane.plan_file,
        "course": lane.course,
        "date": lane.date,
        "grid": lane.grid,
        "grid_magnetic_angle_deg": lane.grid_magnetic_angle_deg,
        "arrival_radius_m": lane.arrival_radius_m,
        "length_m": lane.length_m,
        "climb_m": lane.climb_m,
        "difficulty": lane.difficulty,
        "fingerprint": lane.fingerprint,
        "points": [
            {
                "name": point.name,
                "lon": point.longitude_deg,
                "lat": point.latitude_deg,
                "east_m": point.east_m,
                "north_m": point.north_m,
            }
            for point in lane.points
        ],
        "legs": [
            {
                "name": leg.name,
                "to": leg.end,
                "grid_azimuth_deg": None if lane.is_free else leg.azimuth_deg,
                "magnetic_azimuth_deg": None if lane.is_free else leg.magnetic_deg,
                "distance_m": None if lane.is_free else leg.distance_m,
                "climb_m": leg.climb_m,
            }
            for leg in lane.legs
        ],
        "plan_findings": list(lane.findings),
    }
