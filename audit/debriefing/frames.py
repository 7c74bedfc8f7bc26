"""The debrief as pandas tables: one row a leg, and the cross-track curves of one leg."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal, get_args

import numpy as np

from audit.debriefing.leg_entry import leg_entry
from audit.debriefing.leg_shape import LegEntry

if TYPE_CHECKING:
    import pandas as pd

    from audit.debriefing.finished_debrief import Debrief, LegDebrief
    from audit.measurement.leg_measures import LegMeasures

_LedgerPart = Literal["inherited", "plan", "heading", "distance", "detour", "total"]
_LEDGER_PARTS: tuple[_LedgerPart, ...] = get_args(_LedgerPart)
_LedgerError = Literal["inherited_m", "plan_m", "heading_m", "distance_m", "detour_m", "total_m"]
_LEDGER_ERRORS: dict[_LedgerPart, _LedgerError] = dict(
    zip(_LEDGER_PARTS, get_args(_LedgerError), strict=True)
)


def legs_frame(debrief: Debrief) -> pd.DataFrame:
    """Give one row a leg, in the order of the plan; figures as in debrief.json.

    Columns carry their unit in the name; azimuths are grid azimuths unless the name
    says magnetic. A leg that was not walked has NaN, NaT and None in its
    measurements.

    ==============================================  =======================================
    leg, from, to, status                           as planned, and what became of it
    confidence                                      that the right portion was matched, 0-1
    planned_azimuth_deg, planned_magnetic_deg,      the card
    planned_distance_m, planned_paces
    start_time, start_lon, start_lat                where the walker left for the leg
    claim_time, claim_lon, claim_lat                where the walker's navigation ended
    walked_azimuth_deg, ..._low_deg, ..._high_deg,  heading with its 95 % interval and its
    ..._sd_deg                                      standard error
    azimuth_error_deg                               walked minus planned, right positive
    straight_m, straight_sd_m, path_m               start to claim: chord, error, on the ground
    distance_error_m, distance_ratio                walked minus, and over, planned
    walked_paces, paces_from, duration_s, halted_s
    cross_track_..., own_cross_track_...            end_m, max_abs_m, rms_m; right positive
    miss_m, miss_azimuth_deg, miss_along_m,         planned point to claim
    miss_across_m, miss_sd_m
    nearest_m, nearest_time, found                  nearest approach to the point
    ledger_<part>_east_m, ledger_<part>_north_m     inherited, plan, heading, distance,
                                                    detour, total
    ledger_<part>_sd_m                              its standard error, along its own direction
    along_planned_m, along_heading_m                start to claim along the planned azimuth, and
                                                    along the walked one; error straight_sd_m
    path_sd_m                                       standard error of path_m
    made_good_m                                     what the distance is set against: straight_m,
                                                    of a bent line the metres along it
    drift_deg, drift_sd_deg                         turn from first to last third, with error
    band_m, in_band_share, corridor_share           95 % band of the planned line (half width),
                                                    share of the way in it and in the corridor
    climb_m, descent_m, slope_m                     by trusted elevations; missing otherwise
    paces_per_100m, paces_per_100m_sd               counted over the ground, with standard error
    paces_by_cadence                                from the recording's cadence
    point_verdict, point_probability                found, missed, too close to call; that the
                                                    walker came within the radius
    point_sd_m                                      standard error of nearest_m
    claim_marked_by, claim_time_sd_s,               what shows the claim, and its standard
    claim_along_sd_m                                errors in time and along the walk
    search_shape, search_path_m, search_duration_s  looking for the point after the claim
    bypasses                                        how many obstacles were walked round
    forecast_quantile, forecast_whole_quantile,     share of ordinary walks that end nearer: begun
    forecast_where                                  where this one was, and at the start
    cause, cause_probability, evidence,             first and second of the causes
    runner_up, runner_up_probability
    ==============================================  =======================================
    """
    import pandas as pd  # noqa: PLC0415

    rows = leg_rows(debrief)
    frame = pd.DataFrame(rows, columns=list(rows[0]) if rows else ["leg"])
    for column in ("start_time", "claim_time", "nearest_time"):
        if column in frame:
            frame[column] = pd.to_datetime(frame[column], utc=True, format="ISO8601")
    if "found" in frame:
        frame["found"] = frame["found"].astype("boolean")
    return frame


def leg_rows(debrief: Debrief) -> list[dict[str, object]]:
    """Give the rows of `legs_frame` as plain dictionaries; None for what is missing."""
    return [_row(leg_entry(leg, timed=debrief.clean.timed)) for leg in debrief.legs]


def cross_track_frame(debrief: Debrief, leg: str) -> pd.DataFrame:
    """Give the cross-track curves of one leg, a row a place; empty unless it was walked.

    Columns: ``time`` (UTC, NaT without times), ``along_m`` and ``offset_m`` against
    the planned line between the points, ``own_along_m`` and ``own_offset_m`` against the
    planned azimuth from where the walker really began; offsets right positive. ``band_m`` and
    ``own_band_m`` are half the 95 % bands about the two lines: an offset beyond its
    band is more than errors of receiver and points leave open. ``left_band`` and
    ``own_left_band`` are true from where the walk left the band for good.

    Raises
    ------
    ValueError
        Where the plan has no leg of that name.
    """
    import pandas as pd  # noqa: PLC0415

    measures = _leg_named(debrief, leg).audit.measures
    nothing = np.empty(0)
    planned = None if measures is None else measures.cross_track
    own = None if measures is None else measures.own_cross_track
    columns = {
        "along_m": nothing if planned is None else planned.along_m,
        "offset_m": nothing if planned is None else planned.offset_m,
        "own_along_m": nothing if own is None else own.along_m,
        "own_offset_m": nothing if own is None else own.offset_m,
        **_band_columns(measures),
    }
    frame = pd.DataFrame(columns)
    passed_s = np.full(len(frame), np.nan)
    if measures is not None and debrief.clean.timed:
        passed_s = measures.curve_time_s
    frame.insert(0, "time", pd.to_datetime(pd.Series(passed_s, dtype=float), unit="s", utc=True))
    return frame


def _band_columns(measures: LegMeasures | None) -> dict[str, np.ndarray]:
    """Give the bands of both lines, and from where on the walk had left them."""
    columns: dict[str, np.ndarray] = {}
    details = None if measures is None else measures.details
    for name in ("", "own_"):
        band, left = f"{name}band_m", f"{name}left_band"
        if measures is None:
            columns |= {band: np.empty(0), left: np.empty(0, dtype=bool)}
            continue
        curve = measures.own_cross_track if name else measures.cross_track
        places = len(curve.offset_m)
        columns |= {band: np.full(places, np.nan), left: np.zeros(places, dtype=bool)}
        if details is not None:
            line = details.own_line if name else details.planned_line
            within = np.flatnonzero(np.abs(curve.offset_m) <= line.band_m)
            columns[band][:] = line.band_m
            columns[left][within[-1] + 1 if len(within) else 0 :] = True
    return columns


def _leg_named(debrief: Debrief, name: str) -> LegDebrief:
    for leg in debrief.legs:
        if leg.name == name:
            return leg
    known = ", ".join(f'"{leg.name}"' for leg in debrief.legs)
    message = f'the plan has no leg "{name}"; its legs are {known}'
    raise ValueError(message)


def _row(entry: LegEntry) -> dict[str, object]:
    """Flatten the entry of one leg."""
    planned, walked = entry["planned"], entry["walked"]
    return {
        "leg": entry["name"],
        "from": entry["from"],
        "to": entry["to"],
        "status": entry["status"],
        "confidence": entry["confidence"],
        "planned_azimuth_deg": planned["grid_azimuth_deg"],
        "planned_magnetic_deg": planned["magnetic_azimuth_deg"],
        "planned_distance_m": planned["distance_m"],
        "planned_paces": planned["paces"],
        **_place_columns(entry),
        "walked_azimuth_deg": walked and walked["grid_azimuth_deg"],
        "walked_azimuth_low_deg": walked and walked["grid_azimuth_95_deg"][0],
        "walked_azimuth_high_deg": walked and walked["grid_azimuth_95_deg"][1],
        "walked_azimuth_sd_deg": walked and walked["grid_azimuth_sd_deg"],
        "azimuth_error_deg": entry["azimuth_error_deg"],
        "straight_m": walked and walked["straight_m"],
        "straight_sd_m": walked and walked["straight_sd_m"],
        "path_m": walked and walked["path_m"],
        "distance_error_m": entry["distance_error_m"],
        "distance_ratio": entry["distance_ratio"],
        "walked_paces": walked and walked["paces"],
        "paces_from": walked and walked["paces_from"],
        "duration_s": walked and walked["duration_s"],
        "halted_s": walked and walked["halted_s"],
        **_offset_columns(entry),
        **_ledger_columns(entry),
        **_detail_columns(entry),
        **_forecast_columns(entry),
        **_cause_columns(entry),
    }


def _place_columns(entry: LegEntry) -> dict[str, object]:
    start, end = entry["start"], entry["end"]
    return {
        "start_time": start and start["time"],
        "start_lon": start and start["lon"],
        "start_lat": start and start["lat"],
        "claim_time": end and end["time"],
        "claim_lon": end and end["lon"],
        "claim_lat": end and end["lat"],
    }


def _offset_columns(entry: LegEntry) -> dict[str, object]:
    planned, own = entry["cross_track"], entry["own_cross_track"]
    miss, nearest = entry["miss"], entry["nearest_approach"]
    return {
        "cross_track_end_m": planned and planned["end_m"],
        "cross_track_max_abs_m": planned and planned["max_abs_m"],
        "cross_track_rms_m": planned and planned["rms_m"],
        "own_cross_track_end_m": own and own["end_m"],
        "own_cross_track_max_abs_m": own and own["max_abs_m"],
        "own_cross_track_rms_m": own and own["rms_m"],
        "miss_m": miss and miss["distance_m"],
        "miss_azimuth_deg": miss and miss["azimuth_deg"],
        "miss_along_m": miss and miss["along_m"],
        "miss_across_m": miss and miss["across_m"],
        "miss_sd_m": miss and miss["sd_m"],
        "nearest_m": nearest and nearest["distance_m"],
        "nearest_time": nearest and nearest["time"],
        "found": entry["found"],
    }


def _ledger_columns(entry: LegEntry) -> dict[str, object]:
    ledger, details = entry["ledger"], entry["details"]
    errors = details and details["ledger_sd"]
    columns: dict[str, object] = {}
    for part in _LEDGER_PARTS:
        vector = None if ledger is None else ledger[part]
        columns[f"ledger_{part}_east_m"] = vector and vector[0]
        columns[f"ledger_{part}_north_m"] = vector and vector[1]
        columns[f"ledger_{part}_sd_m"] = errors and errors[_LEDGER_ERRORS[part]]
    return columns


def _detail_columns(entry: LegEntry) -> dict[str, object]:
    walked, details = entry["walked"], entry["details"]
    thirds = details and details["thirds"]
    line = details and details["planned_line"]
    search = details and details["search"]
    return {
        "along_planned_m": walked and walked["along_planned_m"],
        "along_heading_m": walked and walked["along_heading_m"],
        "path_sd_m": walked and walked["path_sd_m"],
        "made_good_m": walked and walked["made_good_m"],
        "drift_deg": thirds and thirds["drift_deg"],
        "drift_sd_deg": thirds and thirds["drift_sd_deg"],
        "band_m": line and line["band_m"],
        "in_band_share": line and line["in_band_share"],
        "corridor_share": line and line["corridor_share"],
        "climb_m": details and details["ground"]["climb_m"],
        "descent_m": details and details["ground"]["descent_m"],
        "slope_m": details and details["ground"]["slope_m"],
        "paces_per_100m": details and details["leg_paces"]["per_100m"],
        "paces_per_100m_sd": details and details["leg_paces"]["per_100m_sd"],
        "paces_by_cadence": details and details["leg_paces"]["by_cadence"],
        "point_verdict": details and details["point"]["verdict"],
        "point_probability": details and details["point"]["probability"],
        "point_sd_m": details and details["point"]["sd_m"],
        "claim_marked_by": details and details["claim_cut"]["marked_by"],
        "claim_time_sd_s": details and details["claim_cut"]["time_sd_s"],
        "claim_along_sd_m": details and details["claim_cut"]["along_sd_m"],
        "search_shape": search and search["shape"],
        "search_path_m": search and search["path_m"],
        "search_duration_s": search and search["duration_s"],
        "bypasses": details and len(details["bypasses"]),
    }


def _forecast_columns(entry: LegEntry) -> dict[str, object]:
    forecast = entry["forecast"]
    return {
        "forecast_quantile": forecast and forecast["quantile"],
        "forecast_whole_quantile": forecast and forecast["whole_quantile"],
        "forecast_where": forecast and forecast["where"],
    }


def _cause_columns(entry: LegEntry) -> dict[str, object]:
    causes = entry["causes"]
    first = causes[0] if causes else None
    second = causes[1] if len(causes) > 1 else None
    return {
        "cause": first and first["cause"],
        "cause_probability": first and first["probability"],
        "evidence": first and first["evidence"],
        "runner_up": second and second["cause"],
        "runner_up_probability": second and second["probability"],
    }
