"""One leg of the document; null measurements, never zeros, for a leg that was not walked.

How near the recording comes to its end is told all the same.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from audit.debriefing.coaching_entry import steps_entry, what_if_entry
from audit.debriefing.detail_entries import details_entry
from audit.debriefing.forecast_of_leg import forecast_entry
from audit.debriefing.leg_shape import (
    CauseEntry,
    CrossTrackEntry,
    LedgerEntry,
    LegEntry,
    NearestApproachEntry,
    OneOfEntry,
    PlaceEntry,
    PlannedEntry,
    RunnerUpEntry,
    WalkedEntry,
)
from audit.diagnosis.one_of_two import OneOfTwo
from audit.leg_card import CardLeg
from audit.matching.leg_match import LegMatch
from audit.measurement.leg_measures import CrossTrack, Ledger, LegMeasures, Place
from audit.moments import utc_if_known, utc_text

if TYPE_CHECKING:
    from audit.debriefing.finished_debrief import LegDebrief


def leg_entry(leg: LegDebrief, *, timed: bool) -> LegEntry:
    """Give the entry of one leg; ``timed`` tells whether the recording carries times."""
    card, measures, portion = leg.audit.card, leg.audit.measures, leg.portion
    entry: LegEntry = {
        "name": card.name,
        "from": card.start.name,
        "to": card.end.name,
        "status": leg.audit.status,
        "confidence": float(leg.audit.confidence),
        "runner_up": None if portion is None else _runner_up(portion, timed=timed),
        "doubt": leg.doubt,
        "pinned": [] if portion is None else list(portion.pinned),
        "start": None,
        "end": None,
        "planned": _planned(card),
        "walked": None,
        "azimuth_error_deg": None,
        "distance_error_m": None,
        "distance_ratio": None,
        "cross_track": None,
        "own_cross_track": None,
        "miss": None,
        "found": None,
        "nearest_approach": None,
        "ledger": None,
        "details": None,
        "log_note": leg.noted or None,
        "steps": steps_entry(leg.steps),
        "what_if": what_if_entry(leg.what_if),
        "forecast": forecast_entry(leg.forecast),
        "causes": _causes(leg),
        "one_of": _one_of(leg.one_of),
    }
    if leg.audit.passed is not None:
        away_m, nearest_s = leg.audit.passed
        entry["nearest_approach"] = _approach(away_m, nearest_s if timed else None)
    if measures is not None:
        _fill(entry, measures, timed=timed)
    return entry


def _fill(entry: LegEntry, measures: LegMeasures, *, timed: bool) -> None:
    """Put the measurements into the entry of a walked leg."""
    entry["start"] = _place(measures.start)
    entry["end"] = _place(measures.claim)
    entry["walked"] = _walked(measures)
    entry["azimuth_error_deg"] = float(measures.azimuth_error_deg)
    if measures.line_followed:
        entry["distance_error_m"] = float(measures.distance_error_m)
        entry["distance_ratio"] = float(measures.distance_ratio)
    entry["cross_track"] = _cross_track(measures.cross_track)
    entry["own_cross_track"] = _cross_track(measures.own_cross_track)
    entry["miss"] = {
        "distance_m": float(measures.miss_m),
        "azimuth_deg": measures.miss_azimuth.degrees,
        "along_m": float(measures.miss_along_m),
        "across_m": float(measures.miss_across_m),
        "sd_m": float(measures.miss_sd_m),
    }
    entry["found"] = bool(measures.found)
    entry["nearest_approach"] = _approach(measures.nearest_m, measures.nearest_s)
    entry["ledger"] = _ledger(measures.ledger)
    if measures.details is not None:
        entry["details"] = details_entry(measures.details, timed=timed)


def _approach(nearest_m: float, nearest_s: float | None) -> NearestApproachEntry:
    return {
        "distance_m": float(nearest_m),
        "time": utc_if_known(nearest_s),
    }


def _runner_up(portion: LegMatch, *, timed: bool) -> RunnerUpEntry | None:
    other = portion.runner_up
    if other is None:
        return None

    def told(time_s: float | None) -> str | None:
        return utc_text(time_s) if timed and time_s is not None else None

    return {
        "status": other.status,
        "start": told(other.start_s),
        "end": told(other.claim_s),
        "probability": float(other.probability),
    }


def _planned(card: CardLeg) -> PlannedEntry:
    return {
        "grid_azimuth_deg": card.azimuth.degrees,
        "magnetic_azimuth_deg": card.magnetic.degrees,
        "true_azimuth_deg": card.true.degrees,
        "back_azimuth_deg": card.azimuth.back().degrees,
        "distance_m": float(card.distance_m),
        "paces": card.paces,
    }


def _walked(measures: LegMeasures) -> WalkedEntry:
    heading = measures.heading
    return {
        "grid_azimuth_deg": heading.azimuth.degrees,
        "grid_azimuth_95_deg": [float(heading.low_deg), float(heading.high_deg)],
        "grid_azimuth_sd_deg": float(heading.sd_deg),
        "straight_m": float(measures.straight_m),
        "straight_sd_m": float(measures.straight_sd_m),
        "along_planned_m": measures.along_planned_m,
        "along_heading_m": measures.along_heading_m,
        "made_good_m": measures.made_good_m,
        "path_m": float(measures.path_m),
        "path_sd_m": measures.path_sd_m,
        "paces": measures.paces,
        "paces_from": measures.paces_from,
        "duration_s": measures.duration_s,
        "halted_s": measures.halted_s,
        "gap_share": float(measures.gap_share),
    }


def _place(place: Place) -> PlaceEntry:
    return {
        "time": utc_if_known(place.time_s),
        "lon": float(place.longitude_deg),
        "lat": float(place.latitude_deg),
    }


def _cross_track(curve: CrossTrack) -> CrossTrackEntry:
    return {
        "end_m": float(curve.end_m),
        "max_abs_m": float(curve.max_abs_m),
        "rms_m": float(curve.rms_m),
    }


def _ledger(ledger: Ledger) -> LedgerEntry:
    return {
        "inherited": _east_north(ledger.inherited),
        "plan": _east_north(ledger.plan),
        "heading": _east_north(ledger.heading),
        "distance": _east_north(ledger.distance),
        "detour": _east_north(ledger.detour),
        "total": _east_north(ledger.total),
    }


def _east_north(part: tuple[float, float]) -> list[float]:
    return [float(part[0]), float(part[1])]


def _causes(leg: LegDebrief) -> list[CauseEntry]:
    return [
        {
            "cause": finding.cause,
            "probability": float(finding.probability),
            "evidence": finding.evidence,
            "predicted": _number(finding.predicted),
            "seen": _number(finding.seen),
            "unit": finding.unit,
            "made": float(finding.probability if finding.made is None else finding.made),
            "runner_up": finding.runner_up,
            "settles": finding.settles,
        }
        for finding in leg.causes
    ]


def _one_of(pair: OneOfTwo | None) -> OneOfEntry | None:
    if pair is None:
        return None
    return {
        "causes": list(pair.causes),
        "probability": float(pair.probability),
        "settles": list(pair.settles),
    }


def _number(value: float | None) -> float | None:
    return None if value is None else float(value)
