"""The measurements of a made walk's legs beside what is true of them."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from accuracy.project import portions_of
from accuracy.scoring import score_walk
from walks import KINDS, LegTruth, Truth, Walk

from audit.azimuths import GridAzimuth
from audit.debriefing.walk_day import track_date
from audit.leg_card import CardLeg, work_out_card
from audit.leg_card.finished_card import CardPoint
from audit.matching.clean_track import clean_track
from audit.matching.leg_match import CleanTrack, LegMatch
from audit.matching.outings import match_outings
from audit.measurement.ledger import make_ledger
from audit.measurement.leg_details import PointVerdict
from audit.measurement.leg_measures import LegMeasures
from audit.measurement.measure_walk import measure_walk
from audit.settings import Settings
from audit.units import direction_degrees, turn_degrees, wrap_degrees
from honesty.rivals import Interval, end_points, independent_noise


@dataclass(frozen=True, slots=True, kw_only=True)
class LegRow:
    """One leg that was walked and called walked.

    Attributes
    ----------
    right : matched within 30 s or 30 m at both ends (the measure of tests/accuracy).
    error_deg, half_deg, held : error of the heading, half its 95 % interval, and whether
        that holds the true direction of the straight walking (bypasses left out).
    ends_half_deg, ends_held, noise_half_deg, noise_held : the same of two usual ways.
    straight_held, path_held, claim_held, heading_part_held, distance_part_held :
        whether the 95 % interval of that figure holds the truth.
    path_ratio : path measured over path walked.
    ledger_gap_m : how far the ledger's parts are from adding up to the miss.
    verdict, reached : what is said of the point, and whether the walker came within the
        arrival radius of it before he left for the next, or found its marker.
    search_off_s : end of the search less the true one; None but for the last leg walked.
    """

    seed: int
    family: str
    right: bool
    length_m: float
    interval_s: float
    error_deg: float
    half_deg: float
    held: bool
    ends_half_deg: float
    ends_held: bool
    noise_half_deg: float
    noise_held: bool
    straight_held: bool
    path_held: bool
    claim_held: bool
    heading_part_held: bool
    distance_part_held: bool
    path_ratio: float
    ledger_gap_m: float
    verdict: PointVerdict
    reached: bool
    search_off_s: float | None


def measured_legs(walk: Walk, settings: Settings | None = None) -> list[LegRow]:
    """Clean, match and measure a made walk as a debrief does; a row for each walked leg."""
    used = settings or Settings()
    card = work_out_card(walk.plan, track_date=track_date(walk.track))
    clean = clean_track(walk.track, card.grid, used.cleaning)
    outing = match_outings(clean, card, used.matching)
    scores = score_walk(walk, portions_of(outing.match))
    found = measure_walk(clean, outing.sampled, outing.match, card, used)
    rows = []
    for leg, truth, score, portion in zip(
        found.legs, walk.truth.legs, scores.legs, found.match.legs, strict=True
    ):
        known = truth.status == "walked" and truth.azimuth_deg is not None
        if leg.measures is not None and known:
            row = _row(walk, clean, leg.card, leg.measures, truth, right=score.right)
            rows.append(replace(row, search_off_s=search_off_s(walk.truth, truth, portion)))
    return rows


def search_off_s(truth: Truth, leg: LegTruth, portion: LegMatch) -> float | None:
    """Give how much too late the last leg's search is said to have ended."""
    later = [other for other in truth.legs if (other.start_s or 0.0) > (leg.start_s or 0.0)]
    if later or portion.search_end_s is None or leg.search_end_s is None:
        return None
    return portion.search_end_s - leg.search_end_s


def was_reached(truth: Truth, leg: LegTruth, point: CardPoint, radius_m: float) -> bool:
    """Say whether the walker came within the radius before he left for his next leg."""
    starts = [one.start_s for one in truth.legs if one.start_s is not None]
    until_s = min((s for s in starts if s > leg.start_s), default=float(truth.time_s[-1]))
    out = (truth.time_s >= leg.start_s) & (truth.time_s <= until_s)
    off_m = np.hypot(truth.east_m[out] - point.east_m, truth.north_m[out] - point.north_m)
    return bool(leg.found) or bool(off_m.min() <= radius_m)


def _row(
    walk: Walk,
    clean: CleanTrack,
    card: CardLeg,
    measures: LegMeasures,
    leg: LegTruth,
    *,
    right: bool,
) -> LegRow:
    truth = walk.truth
    first, last = truth.index_at(leg.start_s), truth.index_at(leg.claim_s)
    true_deg = held_direction(truth, first, last)
    start, claim = (np.array([truth.east_m[i], truth.north_m[i]]) for i in (first, last))
    path = float(truth.path_m()[last] - truth.path_m()[first])
    heading = measures.heading
    ends, noise = end_points(clean, measures), independent_noise(clean, measures)
    off_m = float(np.hypot(*(claim - (measures.claim.east_m, measures.claim.north_m))))
    ledger = measures.ledger
    parts = (ledger.inherited, ledger.plan, ledger.heading, ledger.distance, ledger.detour)
    true_ledger = make_ledger(card, start, claim, GridAzimuth(true_deg))
    errors = measures.details.ledger_errors
    return LegRow(
        seed=walk.seed,
        family=walk.difficulty,
        right=right,
        length_m=float(leg.length_m),
        interval_s=float(clean.median_interval_s),
        error_deg=turn_degrees(true_deg, heading.azimuth.degrees),
        half_deg=wrap_degrees(heading.high_deg - heading.low_deg) / 2.0,
        held=holds(heading.low_deg, heading.high_deg, true_deg),
        ends_half_deg=ends.half_deg,
        ends_held=_within(ends, true_deg),
        noise_half_deg=noise.half_deg,
        noise_held=_within(noise, true_deg),
        straight_held=abs(measures.straight_m - leg.length_m) <= 1.96 * measures.straight_sd_m,
        path_held=abs(measures.path_m - path) <= 1.96 * measures.path_sd_m,
        # 95 % of a round normal scatter lies within 2.45 standard deviations.
        claim_held=off_m <= 2.45 * measures.miss_sd_m,
        heading_part_held=_apart(ledger.heading, true_ledger.heading) <= 1.96 * errors.heading_m,
        distance_part_held=_apart(ledger.distance, true_ledger.distance)
        <= 1.96 * errors.distance_m,
        path_ratio=measures.path_m / path,
        ledger_gap_m=float(np.hypot(*(np.sum(parts, axis=0) - ledger.total))),
        verdict=measures.point_verdict,
        reached=was_reached(truth, leg, card.end, measures.details.point.radius_m),
        search_off_s=None,
    )


def held_direction(truth: Truth, first: int, last: int) -> float:
    """Give the direction of the seconds of a leg that are no part of a bypass."""
    walking = truth.kind[first + 1 : last + 1] != KINDS.index("bypass")
    east = np.diff(truth.east_m[first : last + 1])[walking].sum()
    north = np.diff(truth.north_m[first : last + 1])[walking].sum()
    return direction_degrees(float(east), float(north))


def holds(low_deg: float, high_deg: float, azimuth_deg: float) -> bool:
    """Say whether an interval, clockwise from low to high, holds an azimuth."""
    return wrap_degrees(azimuth_deg - low_deg) <= wrap_degrees(high_deg - low_deg)


def _within(interval: Interval, azimuth_deg: float) -> bool:
    return abs(turn_degrees(interval.azimuth_deg, azimuth_deg)) <= interval.half_deg


def _apart(one: tuple[float, float], other: tuple[float, float]) -> float:
    return float(np.hypot(one[0] - other[0], one[1] - other[1]))
