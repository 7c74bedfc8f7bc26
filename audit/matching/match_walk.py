"""From a cleaned track and a leg card to the portion of the walk that each leg has."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from audit.leg_card import LegCard
from audit.matching.cuts import Cuts, find_cuts
from audit.matching.evidence import Evidence, Walker
from audit.matching.halts import Movement, find_movement
from audit.matching.leg_match import CleanTrack, LegMatch, LegStatus, Match
from audit.matching.portions import find_portions
from audit.matching.reading import LegReading, gather_leg_odds, read_leg
from audit.matching.refine_cuts import refine_cut
from audit.matching.route import plan_route
from audit.matching.walk_samples import WalkSamples, sample_walk
from audit.matching.ways import EdgeOdds, Stays, Ways
from audit.settings import MatchingSettings
from audit.units import FloatArray, direction_degrees, turn_degrees


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WalkLaidOut:
    """A walk made ready for matching."""

    clean: CleanTrack
    samples: WalkSamples
    movement: Movement
    cuts: Cuts
    evidence: Evidence


def match_walk(clean: CleanTrack, card: LegCard, settings: MatchingSettings) -> Match:
    """Find the portion of the walk that each leg of the card has.

    A semi-Markov dynamic programme over candidate cuts, in the walker's own
    dead-reckoning frame: a leg is known by where it began, its heading and its
    length, and only then by how near it ended to its point. Instead of the one best
    way it adds up all ways, for a fan of supposed walkers, and chooses for each leg
    the portion that is most probably right.
    """
    return match_laid_out(lay_out(clean, card, settings), card, settings)


def match_laid_out(laid_out: WalkLaidOut, card: LegCard, settings: MatchingSettings) -> Match:
    """Match a walk that is laid out already."""
    odds, walker = weigh(laid_out, card, settings)
    readings = _read(odds, laid_out.cuts, len(card.legs), settings)
    cut_times = _refined(readings, laid_out, settings)
    return _as_match(readings, cut_times, laid_out, walker)


def lay_out(clean: CleanTrack, card: LegCard, settings: MatchingSettings) -> WalkLaidOut:
    """Resample the walk, find its halts and cuts, and prepare the evidence."""
    clean = near_course(clean, card, settings)
    samples = sample_walk(clean, settings)
    movement = find_movement(samples, settings)
    fitted = _fitted_to_noise(settings, movement.noise_m)
    samples = sample_walk(clean, fitted)
    movement = replace(
        find_movement(samples, fitted),
        noise_m=movement.noise_m,
        noise_from_s=movement.noise_from_s,
    )
    settings = _fitted_to_halts(
        settings, movement, len(card.legs), clean.median_interval_s or samples.step_s
    )
    route = plan_route(card, settings)
    cuts = find_cuts(samples, movement, route.position[: route.legs + 1], settings)
    longest = max(edge.distance_m for edge in route.edges if edge.leg is not None)
    longest = max(settings.longest_portion * longest, settings.longest_portion_least_m)
    portions = find_portions(samples, movement, cuts, longest)
    evidence = Evidence(samples, movement, cuts, portions, route, settings)
    return WalkLaidOut(
        clean=clean, samples=samples, movement=movement, cuts=cuts, evidence=evidence
    )


def _fitted_to_noise(settings: MatchingSettings, noise_m: float) -> MatchingSettings:
    """Look as closely as the receiver allows: a quiet one shows a halt of a few seconds."""
    return replace(
        settings,
        smoothing_s=float(
            np.clip(settings.smoothing_s_per_m * noise_m, *settings.smoothing_range_s)
        ),
        speed_window_s=float(
            np.clip(settings.speed_window_s_per_m * noise_m, *settings.speed_window_range_s)
        ),
    )


def _fitted_to_halts(
    settings: MatchingSettings, movement: Movement, legs: int, interval_s: float
) -> MatchingSettings:
    """Charge a halt on the way, and a cut in mid-stride, by what this walk can show.

    Two halts a leg are put down to points and searches; the rest, over the path, is
    the rate at which this walker stops to look at his compass.
    """
    on_the_way = max(len(movement.halts) - 2.0 * (legs + 1), 0.0) + settings.halts_prior
    rate = on_the_way / max(float(movement.path_m[-1]), settings.halts_path_least_m)
    cost = -np.log(rate * settings.halt_window_m)
    # Fixes far apart in time show neither short halts nor the bends between legs.
    seen = min(settings.bends_seen_s / interval_s, 1.0)
    return replace(
        settings,
        cost_halt=float(np.clip(cost, *settings.cost_halt_range)),
        cost_mid_stride=settings.cost_mid_stride * seen,
    )


def near_course(clean: CleanTrack, card: LegCard, settings: MatchingSettings) -> CleanTrack:
    """Keep the fixes from the first to the last that lie anywhere near the course.

    A drive to the course, or the other days of a logger, need not be searched for legs.
    """
    corners = np.concatenate([leg.line for leg in card.legs])
    middle = (corners.min(axis=0) + corners.max(axis=0)) / 2.0
    reach = float(np.hypot(*(corners - middle).T).max()) + settings.far_m
    near = np.hypot(clean.east_m - middle[0], clean.north_m - middle[1]) <= reach
    index = np.flatnonzero(near)
    if len(index) < 2 or len(index) == len(clean):
        return clean
    part = slice(int(index[0]), int(index[-1]) + 1)
    columns = ("time_s", "east_m", "north_m", "elevation_m", "hdop", "fix")
    return replace(clean, **{name: getattr(clean, name)[part] for name in columns}, gaps=())


def weigh(
    laid_out: WalkLaidOut, card: LegCard, settings: MatchingSettings
) -> tuple[list[tuple[float, list[EdgeOdds]]], Walker]:
    """Weigh all ways for a fan of supposed walkers; the best few are worked out twice."""
    evidence = laid_out.evidence
    stays = Stays(evidence)

    def prior(walker: Walker) -> float:
        return 0.5 * (walker.bias_deg / settings.bias_sd_deg) ** 2

    fan = [Ways(evidence, stays, walker) for walker in _fan(card, settings)]
    fan.sort(key=lambda ways: ways.total + prior(ways.walker))
    least = fan[0].total + prior(fan[0].walker)
    kept = [
        ways
        for ways in fan[: settings.fan_keep]
        if ways.total + prior(ways.walker) - least < settings.fan_keep_nats
    ]
    worked: list[tuple[float, Ways, list[EdgeOdds]]] = []
    for start in kept:
        ways, odds = start, start.edge_odds()
        for _ in range(settings.rounds):
            ways = Ways(evidence, stays, _known_better(ways.walker, odds, evidence, settings))
            odds = ways.edge_odds()
        worked.append((ways.total + prior(ways.walker), ways, odds))
    costs = np.array([cost for cost, _, _ in worked])
    weights = np.exp(costs.min() - costs)
    weights /= weights.sum()
    best = worked[int(np.argmin(costs))][1].walker
    return [(float(w), odds) for w, (_, _, odds) in zip(weights, worked, strict=True)], best


def _fan(card: LegCard, settings: MatchingSettings) -> list[Walker]:
    """Suppose walkers with different common turns, the card's angle left out among them."""
    angle = card.angles.grid_magnetic_angle_deg
    turns = list(settings.bias_fan_deg)
    for turn in (angle, 2.0 * angle, -angle):
        if min(abs(turn - other) for other in turns) > settings.fan_distinct_deg:
            turns.append(turn)
    return [
        Walker(
            bias_deg=turn,
            pace_scale=1.0,
            heading_sd_deg=settings.heading_sd_deg,
            distance_sd=settings.distance_sd,
            finds=settings.found_directly_share,
        )
        for turn in turns
        if abs(turn) <= settings.bias_most_deg
    ]


def _known_better(
    walker: Walker, odds: list[EdgeOdds], evidence: Evidence, settings: MatchingSettings
) -> Walker:
    """Estimate the walker anew from the legs as they are now weighed."""
    turns, ratios, close = _leg_errors(odds, evidence)
    count = len(turns)
    if count < 2:
        return walker
    middle = float(np.median(turns))
    scatter = 1.4826 * float(np.median(np.abs(turns - middle)))
    scale = float(np.exp(np.median(ratios) * count / (count + 1.5)))
    bias = middle * count / (count + 1.0)
    if abs(bias) > settings.bias_most_deg or not (
        settings.pace_scale_least < scale < settings.pace_scale_most
    ):
        return walker
    prior = settings.scatter_prior_legs
    sd = np.sqrt((count * scatter**2 + prior * settings.heading_scatter_deg**2) / (count + prior))
    spread = 1.4826 * float(np.median(np.abs(ratios - np.median(ratios))))
    distance_sd = np.sqrt(
        (count * spread**2 + prior * settings.distance_scatter**2) / (count + prior)
    )
    return Walker(
        bias_deg=bias,
        pace_scale=scale,
        heading_sd_deg=float(np.clip(sd, settings.heading_sd_least_deg, 10.0)),
        distance_sd=float(np.clip(distance_sd, settings.distance_sd_least, 0.156)),
        finds=_finds(close, settings),
    )


def _finds(close: FloatArray, settings: MatchingSettings) -> float:
    """Estimate how often this walker's legs end at the point itself."""
    prior = settings.finds_prior_legs
    share = (close.sum() + prior * settings.found_directly_share) / (len(close) + prior)
    return float(min(share, settings.finds_most))


def _leg_errors(
    odds: list[EdgeOdds], evidence: Evidence
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Give turn, log distance ratio and nearness to its point of each leg's likeliest portion."""
    best: dict[int, tuple[float, float, float, float]] = {}
    near_m = float(np.hypot(evidence.settings.found_arrival_sd_m, evidence.noise_m))
    for edge in odds:
        if edge.edge.kind != "leg" or edge.edge.leg is None or len(edge.log_odds) == 0:
            continue
        top = int(np.argmax(edge.log_odds))
        log_share = float(edge.log_odds[top])
        known = best.get(edge.edge.leg)
        if log_share < np.log(0.02) or (known is not None and known[0] >= log_share):
            continue
        chord = evidence.cuts.position[edge.second[top]] - evidence.cuts.position[edge.first[top]]
        azimuth = direction_degrees(float(chord[0]), float(chord[1]))
        turn = turn_degrees(edge.edge.azimuth_deg, azimuth)
        ratio = float(np.log(np.hypot(*chord) / edge.edge.distance_m))
        close = float(evidence.to_point_m[edge.second[top], edge.edge.target] <= near_m)
        best[edge.edge.leg] = (log_share, turn, ratio, close)
    values = np.array([item[1:] for item in best.values()]).reshape(-1, 3)
    return values[:, 0], values[:, 1], values[:, 2]


def _read(
    odds: list[tuple[float, list[EdgeOdds]]], cuts: Cuts, legs: int, settings: MatchingSettings
) -> list[LegReading]:
    readings = []
    not_before = 0
    for leg in range(legs):
        gathered, on_back_azimuth = gather_leg_odds(odds, leg, len(cuts))
        reading = read_leg(gathered, on_back_azimuth, cuts, not_before, settings)
        if reading.second is not None:
            not_before = reading.second
        readings.append(reading)
    return readings


def _refined(
    readings: list[LegReading], laid_out: WalkLaidOut, settings: MatchingSettings
) -> dict[int, float]:
    """Give the refined time of every cut that was read."""
    coarse = laid_out.cuts.time_s
    chosen = {cut for reading in readings for cut in (reading.first, reading.second)}
    used = sorted(cut for cut in chosen if cut is not None)
    times = {}
    for number, cut in enumerate(used):
        before = float(coarse[used[number - 1]]) if number else -np.inf
        after = float(coarse[used[number + 1]]) if number + 1 < len(used) else np.inf
        middle_before, middle_after = (
            float(coarse[cut]) + 0.5 * (other - float(coarse[cut])) for other in (before, after)
        )
        times[cut] = refine_cut(
            laid_out.clean, float(coarse[cut]), middle_before, middle_after, settings
        )
    return times


def _as_match(
    readings: list[LegReading],
    cut_times: dict[int, float],
    laid_out: WalkLaidOut,
    walker: Walker,
) -> Match:
    samples = laid_out.samples
    walked = [leg for leg, reading in enumerate(readings) if reading.kind != "none"]
    last = max(walked, default=-1)
    legs = []
    for leg, reading in enumerate(readings):
        if reading.first is None or reading.second is None:
            status: LegStatus = "skipped" if leg < last else "not-started"
            legs.append(LegMatch(leg=leg, status=status, confidence=reading.right))
            continue
        claim_s = cut_times[reading.second]
        legs.append(
            LegMatch(
                leg=leg,
                status="walked" if reading.kind == "leg" else "unfinished",
                start_s=cut_times[reading.first],
                claim_s=claim_s,
                search_end_s=claim_s,
                confidence=reading.right,
            )
        )
    return Match(
        legs=tuple(legs),
        noise_m=laid_out.movement.noise_m,
        halts=samples.time_s[laid_out.movement.halts].reshape(-1, 2),
        bias_deg=walker.bias_deg,
        pace_scale=walker.pace_scale,
        order=tuple(range(len(readings) + 1)),
        margin=0.0,
    )
