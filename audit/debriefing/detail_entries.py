"""What debrief.json tells of a leg beyond its main figures, and of the pace count."""

from __future__ import annotations

from audit.debriefing.detail_shape import (
    BandLeftEntry,
    BypassEntry,
    CutEntry,
    DetailsEntry,
    GroundEntry,
    LegPacesEntry,
    LineKeptEntry,
    PaceRateEntry,
    PacesByGroundEntry,
    PacesEntry,
    SearchEntry,
    SettingEntry,
    SightingStopEntry,
    StretchHeadingEntry,
    ThirdsEntry,
)
from audit.measurement.leg_details import (
    Bypass,
    CutError,
    Ground,
    GroundWalked,
    LegDetails,
    LineKept,
    Search,
    Setting,
    SightingStop,
    Thirds,
)
from audit.measurement.paces_of_walk import PaceRate, WalkPaces
from audit.measurement.places_and_headings import Heading
from audit.moments import utc_if_known, utc_text


def details_entry(details: LegDetails, *, timed: bool) -> DetailsEntry:
    """Give the entry; without times there are places and metres, but no moments."""
    errors, point, paces = details.ledger_errors, details.point, details.paces
    setting, search = details.setting, details.search
    return {
        "thirds": None if details.thirds is None else _thirds(details.thirds),
        "planned_line": _line(details.planned_line),
        "own_line": _line(details.own_line),
        "ground": _ground(details.ground),
        "leg_paces": LegPacesEntry(
            predicted=paces.predicted,
            counted=paces.counted,
            per_100m=paces.per_100m,
            per_100m_sd=paces.per_100m_sd,
            by_cadence=paces.by_cadence,
        ),
        "point": {
            "verdict": point.verdict,
            "probability": point.probability,
            "radius_m": point.radius_m,
            "sd_m": point.sd_m,
            "unseen_m": point.unseen_m,
            "doubt": point.doubt,
            "elsewhere_m": point.elsewhere_m,
        },
        "ledger_sd": {
            "inherited_m": errors.inherited_m,
            "plan_m": errors.plan_m,
            "heading_m": errors.heading_m,
            "distance_m": errors.distance_m,
            "detour_m": errors.detour_m,
            "total_m": errors.total_m,
        },
        "setting": None if setting is None else _setting(setting),
        "start_cut": _cut(details.start_error, timed=timed),
        "claim_cut": _cut(details.claim_error, timed=timed),
        "search": None if search is None else _search(search, timed=timed),
        "bypasses": [_bypass(bypass, timed=timed) for bypass in details.bypasses],
        "sighting_stops": [_stop(stop, timed=timed) for stop in details.sighting_stops],
    }


def paces_entry(paces: WalkPaces) -> PacesEntry:
    """Give the pace counts of the course."""
    return {
        "unit": paces.unit,
        "counted": _rate(paces.counted),
        "counted_on": _by_ground(paces.counted_on),
        "by_cadence": _rate(paces.by_cadence),
        "by_cadence_on": _by_ground(paces.by_cadence_on),
    }


def _thirds(thirds: Thirds) -> ThirdsEntry:
    return {
        "first": _heading(thirds.first),
        "last": _heading(thirds.last),
        "drift_deg": thirds.drift_deg,
        "drift_sd_deg": thirds.drift_sd_deg,
    }


def _heading(heading: Heading) -> StretchHeadingEntry:
    return {
        "grid_azimuth_deg": heading.azimuth.degrees,
        "grid_azimuth_95_deg": [heading.low_deg, heading.high_deg],
    }


def _line(kept: LineKept) -> LineKeptEntry:
    left: BandLeftEntry | None = None
    if kept.left is not None and kept.left_along_m is not None and kept.left_side is not None:
        left = {
            "time": utc_if_known(kept.left.time_s),
            "lon": kept.left.longitude_deg,
            "lat": kept.left.latitude_deg,
            "along_m": kept.left_along_m,
            "side": kept.left_side,
        }
    return {
        "band_m": kept.band_m,
        "in_band_share": kept.in_band_share,
        "corridor_m": kept.corridor_m,
        "corridor_share": kept.corridor_share,
        "left_band": left,
    }


def _ground(ground: GroundWalked) -> GroundEntry:
    return {
        "trusted": ground.trusted,
        "why_not": ground.why_not,
        "climb_m": ground.climb_m,
        "descent_m": ground.descent_m,
        "elevation_sd_m": ground.elevation_sd_m,
        "slope_m": ground.slope_m,
        "uphill_m": ground.uphill_m,
        "level_m": ground.level_m,
        "downhill_m": ground.downhill_m,
    }


def _setting(setting: Setting) -> SettingEntry:
    return {
        "set_turn_deg": setting.set_turn_deg,
        "held_turn_deg": setting.held_turn_deg,
        "setting": list(setting.setting),
        "holding": list(setting.holding),
    }


def _cut(error: CutError, *, timed: bool) -> CutEntry:
    return {
        "marked_by": error.marked_by,
        "time_sd_s": error.time_sd_s if timed else None,
        "along_sd_m": error.along_sd_m,
        "place_sd_m": error.place_sd_m,
    }


def _search(search: Search, *, timed: bool) -> SearchEntry:
    return {
        "shape": search.shape,
        "path_m": search.path_m,
        "reach_m": search.reach_m,
        "duration_s": search.end_s - search.start_s if timed else None,
    }


def _bypass(bypass: Bypass, *, timed: bool) -> BypassEntry:
    return {
        "start": utc_text(bypass.start_s) if timed else None,
        "end": utc_text(bypass.end_s) if timed else None,
        "side": bypass.side,
        "out_m": bypass.out_m,
        "ahead_m": bypass.ahead_m,
        "back_m": bypass.back_m,
        "side_sd_m": bypass.side_sd_m,
        "equal": bypass.equal,
        "returned": bypass.returned,
        "slanted": bypass.slanted,
    }


def _stop(stop: SightingStop, *, timed: bool) -> SightingStopEntry:
    return {
        "start": utc_text(stop.start_s) if timed else None,
        "end": utc_text(stop.end_s) if timed else None,
        "turn_deg": stop.turn_deg,
        "turn_sd_deg": stop.turn_sd_deg,
    }


def _rate(rate: PaceRate | None) -> PaceRateEntry | None:
    if rate is None:
        return None
    return {"per_100m": rate.per_100m, "sd": rate.sd, "metres": rate.metres}


def _by_ground(rates: dict[Ground, PaceRate]) -> PacesByGroundEntry:
    return {
        "uphill": _rate(rates.get("uphill")),
        "level": _rate(rates.get("level")),
        "downhill": _rate(rates.get("downhill")),
    }
