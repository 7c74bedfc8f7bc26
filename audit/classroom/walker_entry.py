"""One walker of the document of class.json."""

from __future__ import annotations

from typing import TYPE_CHECKING

from audit.classroom.class_shape import (
    ApproachEntry,
    LegOfWalkerEntry,
    PunchEntry,
    RoadsEntry,
    WalkerEntry,
)
from audit.moments import utc_if_known

if TYPE_CHECKING:
    from audit.classroom.lane_result import LaneResult
    from audit.classroom.walker_result import LegResult, WalkerResult
    from audit.grading.verdicts import Approach, Punch
    from audit.measurement.near_roads import NearRoads


def walker_entry(walker: WalkerResult, lane: LaneResult) -> WalkerEntry:
    """Give the entry of one attempt of one walker on his lane."""
    verdict, time = walker.verdict, walker.time
    return {
        "name": walker.name,
        "ident": walker.ident,
        "lane": walker.lane,
        "attempt": walker.attempt,
        "device": walker.device,
        "compass": walker.compass,
        "track": walker.tracks[0] if walker.tracks else "",
        "tracks": list(walker.tracks),
        "state": walker.state,
        "problem": walker.problem,
        "verdict": verdict.grade,
        "reasons": list(verdict.reasons),
        "points_found": verdict.found,
        "points_missed": verdict.missed,
        "points_doubtful": verdict.doubtful,
        "points_without_evidence": verdict.without_evidence,
        "points_needed": verdict.needed,
        "began": utc_if_known(time.begun_s),
        "finished": utc_if_known(time.ended_s),
        "elapsed_s": time.elapsed_s,
        "elapsed_error_s": time.error_s,
        "late_s": verdict.late_s,
        "score": verdict.score,
        "score_parts": [
            {"part": part, "share": share, "weight": weight}
            for part, share, weight in verdict.score_parts
        ],
        "moving_s": walker.moving_s,
        "searching_s": walker.searching_s,
        "halted_s": walker.halted_s,
        "noise_m": None if walker.track is None else walker.track.noise_m,
        "better_lane": None if walker.better_lane is None else walker.better_lane.lane,
        "fingerprint": lane.fingerprint,
        "pages": list(walker.pages),
        "notes": list(walker.notes),
        "roads": None if walker.roads is None else _roads(walker.roads),
        "legs": [
            _leg(leg, planned.end) for leg, planned in zip(walker.legs, lane.legs, strict=True)
        ],
    }


def _roads(used: NearRoads) -> RoadsEntry:
    return {
        "within_m": used.within_m,
        "sd_m": used.sd_m,
        "seen_m": used.seen_m,
        "sure_m": used.sure_m,
        "seen_s": used.seen_s,
        "sure_s": used.sure_s,
        "names": list(used.roads),
    }


def _leg(leg: LegResult, to: str) -> LegOfWalkerEntry:
    verdict, miss = leg.point, leg.miss
    return {
        "name": leg.name,
        "point": verdict.grade,
        "to": to,
        "left_out": verdict.left_out,
        "proof": verdict.proof,
        "radius_m": verdict.radius_m,
        "error_m": verdict.error_m,
        "approach": _approach(verdict.approach),
        "punch": _punch(verdict.punch),
        "evidence_for": list(verdict.evidence_for),
        "evidence_against": list(verdict.evidence_against),
        "status": leg.status,
        "confidence": leg.confidence,
        "miss_m": None if miss is None else miss.distance_m,
        "miss": None if miss is None else [miss.east_m, miss.north_m],
        "miss_sd_m": None if miss is None else miss.sd_m,
        "azimuth_error_deg": leg.azimuth_error_deg,
        "azimuth_sd_deg": leg.azimuth_sd_deg,
        "distance_error_m": leg.distance_error_m,
        "distance_ratio": leg.distance_ratio,
        "cause": leg.cause,
        "cause_probability": leg.cause_probability,
        "moving_s": leg.moving_s,
        "searching_s": leg.searching_s,
        "halted_s": leg.halted_s,
    }


def _approach(approach: Approach | None) -> ApproachEntry | None:
    if approach is None:
        return None
    return {
        "distance_m": approach.distance_m,
        "sd_m": approach.sd_m,
        "unseen_m": approach.unseen_m,
        "time": utc_if_known(approach.time_s),
        "in_turn": approach.in_turn,
        "nearest_fix_m": approach.fix_m,
        "nearest_fix_time": utc_if_known(approach.fix_s),
    }


def _punch(punch: Punch | None) -> PunchEntry | None:
    if punch is None:
        return None
    return {"code": punch.code, "right": punch.right, "time": punch.time}
