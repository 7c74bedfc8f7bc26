"""How far knowing the walker would bring the matching: it is told what nobody can know.

PYTHONPATH=.:tests python -m accuracy.told_the_walker --seeds development --walks 100

Told is how the walker leans and paces, or also where each leg was set to go and by what count,
mistakes included. What is wrong even then lies in the recording itself: a claim that leads
into a search without a stop, points passed with none. It bounds what a better estimate of the
walker, or of his mistakes, could still bring.
"""

from __future__ import annotations

import argparse
import datetime as dt
import sys
from collections.abc import Sequence
from dataclasses import replace
from unittest.mock import patch

from walks import DIFFICULTIES, LegTruth, Walk, make_walk

from accuracy.project import portions_of
from accuracy.scoring import score_walk
from accuracy.seeds import SEEDS, first_seeds
from accuracy.table import DEFAULT_DIFFICULTIES
from audit.leg_card import CardLeg, LegCard, work_out_card
from audit.matching import match_walk as matching
from audit.matching.clean_track import clean_track
from audit.matching.walker import Walker
from audit.settings import Settings

LEAST_LEG_M = 30.0
"""A count lost altogether still leaves a leg to look for."""


def true_walker(walk: Walk, settings: Settings) -> Walker:
    """Give the walker as he was made: his lean, his pace, and how legs scatter about them."""
    made = DIFFICULTIES[walk.difficulty]
    return Walker(
        bias_deg=walk.truth.bias_deg,
        pace_scale=walk.truth.pace_factor,
        heading_sd_deg=max(made.leg_sd_deg, settings.matching.heading_sd_least_deg / 2.0),
        distance_sd=max(made.leg_pace_sd, settings.matching.distance_sd_least / 2.0),
        finds=settings.matching.found_directly_share,
    )


def as_set(leg: CardLeg, truth: LegTruth) -> CardLeg:
    """Give a leg as the walker set and counted it, his mistakes included."""
    if truth.set_azimuth_deg is None or truth.count_m is None:
        return leg
    azimuth = replace(leg.azimuth, degrees=truth.set_azimuth_deg % 360.0)
    return replace(leg, azimuth=azimuth, distance_m=max(truth.count_m, LEAST_LEG_M))


def legs_right(walk: Walk, *, walker: bool, legs: bool) -> int:
    """Count the legs that are right where the matching is told the walker, or his legs too."""
    settings = Settings()
    day = dt.datetime.fromtimestamp(float(walk.track.time_s[0]), dt.UTC).date()
    card: LegCard = work_out_card(walk.plan, track_date=day)
    if legs:
        told = (as_set(*pair) for pair in zip(card.legs, walk.truth.legs, strict=True))
        card = replace(card, legs=tuple(told))
    clean = clean_track(walk.track, card.grid, settings.cleaning)
    if not walker:
        match = matching.match_walk(clean, card, settings.matching)
        return score_walk(walk, portions_of(match)).legs_right
    known = true_walker(walk, settings)
    with (
        patch.object(matching, "fan_of_walkers", lambda *_: [known]),
        patch.object(matching, "known_better", lambda of, *_: replace(known, finds=of.finds)),
        patch.object(matching, "_of_half_or_twice", lambda *_: []),
    ):
        match = matching.match_walk(clean, card, settings.matching)
    return score_walk(walk, portions_of(match)).legs_right


def main(arguments: Sequence[str] | None = None) -> int:
    """Tell, by difficulty, the legs right by nothing told, the walker, and his legs too."""
    parser = argparse.ArgumentParser(description="What knowing the walker would bring.")
    parser.add_argument("--seeds", choices=sorted(SEEDS), default="development")
    parser.add_argument("--walks", type=int, default=100, metavar="N", help="a difficulty")
    options = parser.parse_args(arguments)
    for difficulty in DEFAULT_DIFFICULTIES:
        right, legs = [0, 0, 0], 0
        for seed in first_seeds(options.seeds, options.walks):
            walk = make_walk(seed, difficulty)
            legs += len(walk.truth.legs)
            for column, (walker, of_legs) in enumerate(
                ((False, False), (True, False), (True, True))
            ):
                right[column] += legs_right(walk, walker=walker, legs=of_legs)
        shares = ", ".join(
            f"{what} {count / legs:.4f}"
            for what, count in zip(
                ("told nothing", "the walker", "his legs too"), right, strict=True
            )
        )
        print(f"{difficulty:10} {legs:5} legs: {shares}", flush=True)
    return 0


if __name__ == "__main__":
    sys.exit(main())
