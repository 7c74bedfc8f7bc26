"""From a cleaned track and a leg card to the portion of the walk that each leg has."""

from __future__ import annotations

import numpy as np

from audit.leg_card import LegCard
from audit.matching.cuts import Cuts
from audit.matching.evidence import Walker
from audit.matching.leg_match import CleanTrack, LegMatch, LegStatus, Match
from audit.matching.reading import LegReading, gather_leg_odds, read_leg
from audit.matching.refine_cuts import refine_cut
from audit.matching.supposed_walkers import fan_of_walkers, known_better
from audit.matching.walk_layout import WalkLaidOut, lay_out
from audit.matching.ways import EdgeOdds, Stays, Ways
from audit.settings import MatchingSettings


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
    odds, walker, cost = weigh(laid_out, card, settings)
    readings = _read(odds, laid_out.cuts, len(card.legs), settings)
    cut_times = _refined(readings, laid_out, settings)
    return Match(
        legs=_leg_matches(readings, cut_times, settings),
        noise_m=laid_out.movement.noise_m,
        halts=laid_out.samples.time_s[laid_out.movement.halts].reshape(-1, 2),
        bias_deg=walker.bias_deg,
        pace_scale=walker.pace_scale,
        cost=cost,
    )


def weigh(
    laid_out: WalkLaidOut, card: LegCard, settings: MatchingSettings
) -> tuple[list[tuple[float, list[EdgeOdds]]], Walker, float]:
    """Weigh all ways for a fan of supposed walkers; the best few are worked out twice.

    Gives the odds for each of these with their weights, the best walker, and his cost.
    """
    evidence = laid_out.evidence
    stays = Stays(evidence)

    def prior(walker: Walker) -> float:
        return 0.5 * (walker.bias_deg / settings.bias_sd_deg) ** 2

    best_first: list[Ways] = []
    for walker in fan_of_walkers(card, settings):
        # Weighed one by one, the best few kept: all of them would fill the memory.
        best_first.append(Ways(evidence, stays, walker))
        best_first.sort(key=lambda ways: ways.total + prior(ways.walker))
        del best_first[settings.fan_keep :]
    least = best_first[0].total + prior(best_first[0].walker)
    kept = [
        ways
        for ways in best_first
        if ways.total + prior(ways.walker) - least < settings.fan_keep_nats
    ]
    worked: list[tuple[float, Ways, list[EdgeOdds]]] = []
    for start in kept:
        ways, odds = start, start.edge_odds()
        for _ in range(settings.rounds):
            ways = Ways(evidence, stays, known_better(ways.walker, odds, evidence, settings))
            odds = ways.edge_odds()
        worked.append((ways.total + prior(ways.walker), ways, odds))
    costs = np.array([cost for cost, _, _ in worked])
    weights = np.exp(costs.min() - costs)
    weights /= weights.sum()
    best = worked[int(np.argmin(costs))][1].walker
    weighted = [(float(w), odds) for w, (_, _, odds) in zip(weights, worked, strict=True)]
    return weighted, best, float(costs.min())


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


def _leg_matches(
    readings: list[LegReading], cut_times: dict[int, float], settings: MatchingSettings
) -> tuple[LegMatch, ...]:
    walked = [leg for leg, reading in enumerate(readings) if reading.kind != "none"]
    last = max(walked, default=-1)
    legs = []
    for leg, reading in enumerate(readings):
        if reading.first is None or reading.second is None:
            status: LegStatus = "skipped" if leg < last else "not-started"
            legs.append(
                LegMatch(leg=leg, status=status, confidence=_calibrated(reading.right, settings))
            )
            continue
        claim_s = cut_times[reading.second]
        legs.append(
            LegMatch(
                leg=leg,
                status="unfinished" if reading.kind == "given-up" else "walked",
                under_way=reading.kind == "late-start",
                start_s=cut_times[reading.first],
                claim_s=claim_s,
                search_end_s=claim_s,
                confidence=_calibrated(reading.right, settings),
            )
        )
    return tuple(legs)


def _calibrated(share: float, settings: MatchingSettings) -> float:
    """Turn the share of the odds into how often such a portion is right.

    The odds count the pieces of evidence as more independent than they are.
    """
    held = float(np.clip(share, 1e-6, 1.0 - 1e-6))
    log_odds = np.log(held / (1.0 - held))
    scaled = settings.confidence_slope * log_odds + settings.confidence_offset
    return float(1.0 / (1.0 + np.exp(-scaled)))
