"""What else was measured of a leg, in words: drift, line, point, ground, search, bypasses."""

from __future__ import annotations

from audit.debriefing.records import LegDebrief
from audit.measurement.leg_details import Bypass, GroundWalked, LegDetails, LineKept, Search, Thirds
from audit.reports import digits, wording

_TWO_SIDED_95 = 1.96
_SHAPES = {
    "square": "in a widening square",
    "fan": "out and back like a fan",
    "straight on": "straight on",
    "wandering": "without a pattern",
}


def detail_facts(leg: LegDebrief) -> list[tuple[str, str]]:
    """Give further facts of a walked leg as (name, words); what cannot be told is left out."""
    measures = leg.audit.measures
    details = None if measures is None else measures.details
    if details is None:
        return []
    facts = [("Line kept", _line(details.planned_line)), *_drift(details.thirds)]
    facts += [("Point", _point(details)), *_ground(details.ground)]
    facts += [("Bypass", _bypass(one)) for one in details.bypasses]
    if details.search is not None:
        facts.append(("Search", _search(details.search)))
    if details.sighting_stops:
        count = len(details.sighting_stops)
        facts.append(("Stops", f"{count} on the way, as for a new sight"))
    return facts


def _line(kept: LineKept) -> str:
    band, share = digits.whole(kept.band_m), digits.percent(kept.in_band_share)
    on_it = f"on the planned line for {share} of the way, to the {band} m that can be told"
    if kept.left_along_m is None or kept.left_side is None:
        return on_it
    off = f"off it for good from {digits.whole(kept.left_along_m)} m on, to the {kept.left_side}"
    return f"{on_it}; {off}"


def _drift(thirds: Thirds | None) -> list[tuple[str, str]]:
    """Say that the heading turned from the first third to the last, where that can be told."""
    if thirds is None or abs(thirds.drift_deg) <= _TWO_SIDED_95 * thirds.drift_sd_deg:
        return []
    half_deg = _TWO_SIDED_95 * thirds.drift_sd_deg
    side = "right" if thirds.drift_deg > 0 else "left"
    turn = f"{digits.angle(thirds.drift_deg, half_deg)} {side}"
    words = f"turned {turn} from the first third to the last ({digits.half_interval(half_deg)})"
    return [("Drift", words)]


def _point(details: LegDetails) -> str:
    point = details.point
    sure = digits.percent(point.probability)
    return f"{point.verdict}; that the walker came within {digits.whole(point.radius_m)} m: {sure}"


def _ground(ground: GroundWalked) -> list[tuple[str, str]]:
    if not ground.trusted or ground.climb_m is None or ground.descent_m is None:
        return []
    up, down = digits.whole(ground.climb_m), digits.whole(ground.descent_m)
    return [("Climb", f"{up} m up, {down} m down, by the recording")]


def _bypass(one: Bypass) -> str:
    out, on, back = (digits.whole(side) for side in (one.out_m, one.ahead_m, one.back_m))
    even = "as far back as out" if one.equal else "not as far back as out"
    return f"on the {one.side}: {out} m out, {on} m on, {back} m back; {even}"


def _search(search: Search) -> str:
    took = wording.duration(search.end_s - search.start_s)
    return (
        f"{_SHAPES[search.shape]}, {took}, {digits.whole(search.path_m)} m walked, up to "
        f"{digits.whole(search.reach_m)} m from where it began"
    )
