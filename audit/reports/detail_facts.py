"""What else was measured of a leg, in words: drift, line, point, ground, search, bypasses."""

from __future__ import annotations

from audit.debriefing.finished_debrief import LegDebrief
from audit.measurement.leg_details import Bypass, GroundWalked, LegDetails, LineKept, Search, Thirds
from audit.reports import digits, wording
from audit.statistics.spread import TWO_SIDED_95
from audit.words import say

_MOSTLY_UNSEEN = 0.5
"""Of a leg that lies in gaps by this share nobody knows what line was kept."""
_NEVER = 0.005


def detail_facts(leg: LegDebrief) -> list[tuple[str, str]]:
    """Give further facts of a walked leg as (name, words); what cannot be told is left out."""
    measures = leg.audit.measures
    details = None if measures is None else measures.details
    if measures is None or details is None:
        return []
    seen = measures.gap_share < _MOSTLY_UNSEEN
    facts = [("line-kept", _line(details.planned_line))] if seen else []
    straight = len(leg.audit.card.line) == 2  # the corners of a line turn and step aside too
    facts += _drift(details.thirds) if straight else []
    facts += [("point", _point(details, measures.nearest_m)), *_ground(details.ground)]
    facts += [("bypass", _bypass(one)) for one in details.bypasses if straight]
    if details.search is not None:
        past_m = wording.past_the_point_m(measures, leg.settings.reports)
        facts.append(("search", _search(details.search, past_m)))
    if details.sighting_stops:
        facts.append(("stops", say("fact-stops-said", count=len(details.sighting_stops))))
    return [(say(f"fact-{name}"), words) for name, words in facts]


def _line(kept: LineKept) -> str:
    band, share = digits.stated_metres(kept.band_m), digits.percent(kept.in_band_share)
    on_it = say(
        "fact-line-kept-said",
        share=share,
        band=band,
        corridor=digits.stated_metres(kept.corridor_m),
        inside=digits.percent(kept.corridor_share),
    )
    if kept.left_along_m is None or kept.left_side is None or kept.in_band_share < _NEVER:
        return on_it  # what he never was on he did not leave
    start = digits.stated_metres(max(kept.left_along_m, 0.0))
    return say("fact-line-left", **{"line": on_it, "from": start, "side": kept.left_side})


def _drift(thirds: Thirds | None) -> list[tuple[str, str]]:
    """Say that the heading turned from the first third to the last, where that can be told."""
    if thirds is None or abs(thirds.drift_deg) <= TWO_SIDED_95 * thirds.drift_sd_deg:
        return []
    half_deg = TWO_SIDED_95 * thirds.drift_sd_deg
    turn = wording.sided(digits.angle(thirds.drift_deg, half_deg), thirds.drift_deg)
    words = say("fact-drift-said", turn=turn, interval=digits.half_interval(half_deg))
    return [("drift", words)]


def _point(details: LegDetails, nearest_m: float) -> str:
    """Say whether the point was reached, and what leaves it open where that is not to be seen."""
    point = details.point
    silence, elsewhere = "", ""
    near_m = point.radius_m + TWO_SIDED_95 * point.sd_m
    if point.verdict == "too close to call" and nearest_m > near_m:
        possible_m = max(nearest_m - point.unseen_m, 0.0)
        if possible_m <= near_m:
            silence = say("fact-point-silence", size=digits.metres(possible_m, point.sd_m))
        if point.elsewhere_m is not None and point.elsewhere_m <= near_m:
            elsewhere = say(
                "fact-point-elsewhere",
                chance=digits.percent(point.doubt),
                size=digits.metres(point.elsewhere_m, point.sd_m),
            )
    return say(
        "fact-point-said",
        verdict=say(f"fact-verdict-{point.verdict.replace(' ', '-')}"),
        radius=digits.stated_metres(point.radius_m),
        sure=digits.percent(point.probability),
        silence=silence,
        elsewhere=elsewhere,
    )


def _ground(ground: GroundWalked) -> list[tuple[str, str]]:
    if not ground.trusted or ground.climb_m is None or ground.descent_m is None:
        return []
    up, down = digits.whole(ground.climb_m), digits.whole(ground.descent_m)
    return [("climb", say("fact-climb-said", up=up, down=down))]


def _bypass(one: Bypass) -> str:
    out, on, back = (
        digits.metres(side, one.side_sd_m) for side in (one.out_m, one.ahead_m, one.back_m)
    )
    if not one.returned:
        return say("fact-passed-aside", side=one.side, out=out, on=on)
    even = "yes" if one.equal else "no"
    return say("fact-bypass-said", side=one.side, out=out, on=on, back=back, even=even)


def _search(search: Search, past_m: float | None) -> str:
    if search.walked_up:
        time = wording.duration(search.end_s - search.start_s)
        return say("fact-search-none", time=time, path=digits.stated_metres(search.path_m))
    past = "" if past_m is None else say("fact-search-past", past=digits.stated_metres(past_m))
    return say(
        "fact-search-said",
        shape=say(f"fact-search-{search.shape.replace(' ', '-')}"),
        time=wording.duration(search.end_s - search.start_s),
        path=digits.stated_metres(search.path_m),
        reach=digits.stated_metres(search.reach_m),
        past=past,
    )
