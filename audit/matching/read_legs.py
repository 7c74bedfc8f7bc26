"""From the odds of all portions to the legs: what each was walked as, when, and how surely."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from audit.matching.how_sure import trust_in
from audit.matching.leg_match import LegMatch, LegStatus, Reckoned, RunnerUp
from audit.matching.reading import LegOdds, LegReading, WalkedKind, gather_leg_odds, read_leg
from audit.matching.refine_cuts import refine_cut
from audit.matching.runner_up import OtherReading, runner_up, status_of
from audit.matching.second_look import SecondLook, looked_at_again
from audit.matching.silences import silence_of
from audit.matching.walk_layout import WalkLaidOut
from audit.matching.ways import EdgeOdds
from audit.settings import MatchingSettings

_WALKED = ("leg", "late-start")
"""Readings by which a leg was walked to its claim."""

Silences = dict[int, tuple[int, int]]
"""By cut, the samples before and after the silence in which it stands."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ReadTwice:
    """All legs as read by the odds alone, and once more with what the second look saw."""

    by_odds: list[LegReading]
    seen: SecondLook
    readings: list[LegReading]


def read_legs(
    odds: Sequence[tuple[float, list[EdgeOdds]]],
    laid_out: WalkLaidOut,
    legs: int,
    settings: MatchingSettings,
) -> tuple[LegMatch, ...]:
    """Give the portion of each leg in moments, and the likeliest other one.

    ``odds`` has, of a few walkers, the weight of each and what he makes of all portions.
    """
    twice = read_twice(odds, laid_out, legs, settings)
    trust = trust_in(twice.by_odds, twice.readings, twice.seen, laid_out.cuts, settings)
    # How an end looks that somebody has settled is no matter of trust.
    unsettled = {leg: nats for leg, nats in trust.items() if leg not in laid_out.pins.of_leg}
    return leg_matches(twice, unsettled, laid_out, settings)


def read_twice(
    odds: Sequence[tuple[float, list[EdgeOdds]]],
    laid_out: WalkLaidOut,
    legs: int,
    settings: MatchingSettings,
) -> ReadTwice:
    """Read all legs by the odds alone, look at their ends, and read them once more."""
    gathered = [gather_leg_odds(odds, leg, len(laid_out.cuts)) for leg in range(legs)]
    by_odds = read_in_turn(gathered, laid_out, settings)
    seen = looked_at_again(gathered, by_odds, laid_out, settings)
    readings = read_in_turn(seen.odds, laid_out, settings)
    return ReadTwice(by_odds=by_odds, seen=seen, readings=readings)


def read_in_turn(
    gathered: Sequence[dict[WalkedKind, LegOdds]], laid_out: WalkLaidOut, settings: MatchingSettings
) -> list[LegReading]:
    """Read the legs in turn, none before the one before it was claimed."""
    readings = []
    not_before = 0
    for leg, of in enumerate(gathered):
        reading = read_leg(of, laid_out.cuts, not_before, settings)
        if reading.kind == "none" and leg in laid_out.pins.of_leg:
            reading = read_leg(of, laid_out.cuts, 0, settings)
        if reading.second is not None:
            not_before = reading.second
        readings.append(reading)
    return readings


def _with_others(
    twice: ReadTwice, laid_out: WalkLaidOut, settings: MatchingSettings
) -> list[tuple[LegReading, OtherReading | None]]:
    return [
        (reading, runner_up(of, reading, laid_out.cuts, settings))
        for of, reading in zip(twice.seen.odds, twice.readings, strict=True)
    ]


def _refined(
    readings: list[tuple[LegReading, OtherReading | None]],
    laid_out: WalkLaidOut,
    silent: Silences,
    settings: MatchingSettings,
) -> dict[int, float]:
    """Give the refined time of every cut that was read; pinned ones stay where they are."""
    coarse = laid_out.cuts.time_s.copy()
    for cut, time_s in laid_out.pins.time_of_cut.items():
        coarse[cut] = time_s
    chosen = {cut for reading, _ in readings for cut in (reading.first, reading.second)}
    used = sorted(cut for cut in chosen if cut is not None)
    times: dict[int, float] = {}
    for number, cut in enumerate(used):
        time_s = float(coarse[cut])
        before = float(coarse[used[number - 1]]) if number else -np.inf
        after = float(coarse[used[number + 1]]) if number + 1 < len(used) else np.inf
        middles = [time_s + 0.5 * (other - time_s) for other in (before, after)]
        settled = cut in laid_out.pins.time_of_cut
        if not settled and (laid_out.cuts.unseen[cut] or cut in silent):
            # Reckoned from both sides of a silence, a start may come out before its claim.
            time_s = min(max([time_s, *times.values()]), after)
        elif not settled:
            time_s = refine_cut(laid_out.clean, time_s, middles[0], middles[1], settings)
        times[cut] = time_s
    return times


def leg_matches(
    twice: ReadTwice,
    trust: Mapping[int, float],
    laid_out: WalkLaidOut,
    settings: MatchingSettings,
) -> tuple[LegMatch, ...]:
    """Put readings in moments; ``trust`` is, by leg, what its looks say of its odds, in nats."""
    readings, by_odds = _with_others(twice, laid_out, settings), twice.by_odds
    silent, pins = _silences_of(readings, laid_out, settings), laid_out.pins
    cut_times = _refined(readings, laid_out, silent, settings)
    last = max((leg for leg, (of, _) in enumerate(readings) if of.kind != "none"), default=-1)
    legs = []
    for leg, (reading, other) in enumerate(readings):
        not_walked: LegStatus = "skipped" if leg < last else "not-started"
        unseen = [
            _reckoned(reading.first, laid_out, silent, side=1),
            _reckoned(reading.second, laid_out, silent, side=0),
        ]
        reckoned = any(
            of is not None and end not in pins.ends(leg)
            for end, of in zip(("from", "claim"), unseen, strict=True)
        )
        sure_by_odds = _sure_by_odds(by_odds[leg], reading, settings, reckoned=reckoned)
        untrusted = _sure(reading, 0.0, settings, reckoned=reckoned)
        confidence = _sure(reading, trust.get(leg, 0.0), settings, reckoned=reckoned)
        if len(pins.ends(leg)) == 2:
            sure_by_odds = confidence = 1.0
        found = LegMatch(
            leg=leg,
            status=not_walked,
            confidence=confidence,
            sure_by_odds=sure_by_odds,
            runner_up=_runner_up(other, (untrusted, confidence), not_walked, laid_out, settings),
            pinned=pins.ends(leg),
        )
        if reading.kind != "none" and reading.first is not None and reading.second is not None:
            start_s, claim_s = pins.time_s(leg, "from"), pins.time_s(leg, "claim")
            claim_s = cut_times[reading.second] if claim_s is None else claim_s
            found = replace(
                found,
                status=status_of(reading.kind),
                under_way=reading.kind == "late-start",
                start_s=cut_times[reading.first] if start_s is None else start_s,
                claim_s=claim_s,
                search_end_s=claim_s,
                start_unseen=unseen[0],
                claim_unseen=unseen[1],
            )
        legs.append(found)
    return tuple(legs)


def _sure(
    reading: LegReading, trust: float, settings: MatchingSettings, *, reckoned: bool
) -> float:
    """Say how sure a leg is as it was read; ``trust`` is in nats."""
    walked = reading.kind in _WALKED
    return _calibrated(reading.right, settings, walked=walked, reckoned=reckoned, trust=trust)


def _sure_by_odds(
    by_odds: LegReading, reading: LegReading, settings: MatchingSettings, *, reckoned: bool
) -> float:
    """Say how sure a leg was before the second look."""
    # Barred by the leg before it, a leg may have been read as none by the odds alone.
    alike = (by_odds.kind in _WALKED) == (reading.kind in _WALKED)
    return _sure(by_odds if alike else reading, 0.0, settings, reckoned=reckoned)


def _silences_of(
    readings: list[tuple[LegReading, OtherReading | None]],
    laid_out: WalkLaidOut,
    settings: MatchingSettings,
) -> Silences:
    """Give, by the cuts that were read and stand in a silence, the samples before and after it."""
    cuts = laid_out.cuts
    read = {cut for of, _ in readings for cut in (of.first, of.second) if cut is not None}
    standing = np.array(sorted(cut for cut in read if not cuts.unseen[cut]), dtype=np.int64)
    found = silence_of(cuts.sample[standing], laid_out.samples, settings)
    return {cut: found[at] for cut in standing.tolist() if (at := int(cuts.sample[cut])) in found}


def _reckoned(
    cut: int | None, laid_out: WalkLaidOut, silent: Silences, *, side: int
) -> Reckoned | None:
    """Give where a cut lies, if nobody saw the walker there.

    ``side`` says from which end of a silence the walking of the leg was seen: 0 for a claim,
    1 for a start.
    """
    cuts, samples = laid_out.cuts, laid_out.samples
    if cut is None or not (cuts.unseen[cut] or cut in silent):
        return None
    east_m, north_m = cuts.position[cut].tolist()
    if cut in silent:
        ends = samples.smooth[list(silent[cut])]
        return Reckoned(
            east_m=east_m,
            north_m=north_m,
            seen_s=float(samples.time_s[silent[cut][side]]),
            gone_m=float(np.hypot(*(ends - cuts.position[cut]).T).min()),
            straight=True,
        )
    return Reckoned(
        east_m=east_m,
        north_m=north_m,
        seen_s=float(samples.time_s[cuts.sample[cut]]),
        gone_m=float(abs(cuts.path_m[cut] - cuts.seen_path_m[cut])),
    )


def _runner_up(
    other: OtherReading | None,
    sure: tuple[float, float],
    not_walked: LegStatus,
    laid_out: WalkLaidOut,
    settings: MatchingSettings,
) -> RunnerUp | None:
    """Put the other reading in moments, with what its odds leave room for.

    ``sure`` is how sure the leg is by its odds, and as it is told. However little they may be
    trusted, the other reading is not told as likelier where they do not have it so.
    """
    if other is None:
        return None
    time_s, (untrusted, confidence) = laid_out.cuts.time_s, sure
    probability = _calibrated(other.probability, settings, walked=other.kind in _WALKED)
    if probability <= untrusted:
        probability = min(probability, confidence)
    return RunnerUp(
        status=not_walked if other.kind is None else status_of(other.kind),
        start_s=None if other.first is None else float(time_s[other.first]),
        claim_s=None if other.second is None else float(time_s[other.second]),
        probability=min(probability, 1.0 - confidence),
    )


def _calibrated(
    share: float,
    settings: MatchingSettings,
    *,
    walked: bool,
    reckoned: bool = False,
    trust: float = 0.0,
) -> float:
    """Turn the share of the odds into how often such a reading is right.

    The odds count the pieces of evidence as more independent than they are; more so where
    they say that a leg was left out or given up. ``trust`` is what the leg's looks say of them,
    in nats.
    """
    held = float(np.clip(share, 1e-6, 1.0 - 1e-6))
    log_odds = np.log(held / (1.0 - held))
    slope, offset = settings.confidence_slope, settings.confidence_offset
    if not walked:
        slope, offset = settings.confidence_slope_else, settings.confidence_offset_else
    if reckoned:
        offset += settings.confidence_reckoned
    return float(1.0 / (1.0 + np.exp(-slope * log_odds - offset - trust)))
