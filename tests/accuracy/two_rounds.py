"""How often two rounds of a course in one recording, without a pause between, are parted.

    PYTHONPATH=.:tests python -m accuracy.two_rounds --seeds development --walks 20

Two made walkers, the second setting out from his start as soon as the first is back there
from his end. They are parted if all legs come from one of them and the other is told.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence

from walks.two_rounds import make_two_rounds

from accuracy.project import portions_of
from accuracy.scoring import score_walk
from accuracy.seeds import SEEDS, first_seeds
from audit.leg_card import work_out_card
from audit.matching.clean_track import clean_track
from audit.matching.outings import match_outings
from audit.settings import Settings


def score_rounds(seed: int, difficulty: str) -> tuple[bool, int, int]:
    """Tell whether the rounds are parted, and how many legs of how many are right."""
    settings, rounds = Settings(), make_two_rounds(seed, difficulty)
    card = work_out_card(rounds.first.plan)
    clean = clean_track(rounds.track, card.grid, settings.cleaning)
    found = match_outings(clean, card, settings.matching)
    begun = float(rounds.second.track.time_s[0]) + rounds.later_s
    ended = float(rounds.first.track.time_s[-1])
    told = portions_of(found.match)
    portions = [portion for portion in told if portion]
    of_first = all(claim <= begun for _, claim in portions)
    of_second = all(start >= ended for start, _ in portions)
    moved = [
        portion and (portion[0] - rounds.later_s, portion[1] - rounds.later_s) for portion in told
    ]
    right = max(
        score_walk(rounds.first, told).legs_right,
        score_walk(rounds.second, moved).legs_right,
    )
    return bool(found.others) and (of_first or of_second), right, len(card.legs)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run from a command line."""
    parser = argparse.ArgumentParser(prog="accuracy.two_rounds")
    parser.add_argument("--seeds", choices=sorted(SEEDS), default="development")
    parser.add_argument("--walks", type=int, default=20, help="recordings a difficulty")
    chosen = parser.parse_args(arguments)
    for difficulty in ("trained", "ordinary", "novice"):
        scores = [
            score_rounds(seed, difficulty) for seed in first_seeds(chosen.seeds, chosen.walks)
        ]
        parted, right, legs = (sum(column) for column in zip(*scores, strict=True))
        print(
            f"{difficulty:9} {parted} of {len(scores)} parted, {right} of {legs} legs right",
            flush=True,
        )
    return 0


if __name__ == "__main__":
    sys.exit(main())
