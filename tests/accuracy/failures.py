"""List the legs that a method gets wrong, with what the walker did there.

    PYTHONPATH=.:tests python -m accuracy.failures --difficulty ordinary --walks 50

Development walks only: who has looked at a reporting walk can no longer report on it.
"""

from __future__ import annotations

import argparse
import collections
import sys
from collections.abc import Iterator, Sequence

from walks import DIFFICULTIES, LegTruth, Walk, make_walk

from accuracy.scoring import TOLERANCE_M, TOLERANCE_S, LegScore, score_walk
from accuracy.seeds import first_seeds
from accuracy.table import METHODS, methods_present


def what_is_wrong(score: LegScore) -> str:
    """Say in a word or two what is wrong with a leg; "" where nothing is."""
    if score.right:
        return ""
    if not score.walked:
        return "called walked"
    if not score.reported:
        return "missed"
    ends = {
        "start": (score.start_error_s, score.start_error_m),
        "claim": (score.claim_error_s, score.claim_error_m),
    }
    wrong = {
        end: "late" if seconds > 0 else "early"
        for end, (seconds, metres) in ends.items()
        if abs(seconds) > TOLERANCE_S and abs(metres) > TOLERANCE_M
    }
    if len(wrong) == 2:
        return "both ends"
    return " ".join(f"{end} {how}" for end, how in wrong.items())


def circumstances(walk: Walk, leg: LegTruth) -> Iterator[str]:
    """Give what may have made a leg hard."""
    yield "marked" if walk.truth.marked else "unmarked"
    yield f"course {walk.course.shape}"
    yield f"every {walk.truth.receiver['interval_s']:g} s"
    if walk.truth.receiver["moved_m"]:
        yield "logged by distance"
    yield f"noise {walk.truth.receiver['noise_m']:.0f} m"
    if len(leg.attempts) > 1:
        yield "walked twice"
    if leg.status != "walked":
        yield leg.status
    if leg.cut_by_recording:
        yield "cut by the recording"
    yield from sorted({planted.cause for planted in leg.planted}) or ["no mistake"]


def main(arguments: Sequence[str] | None = None) -> int:
    """Run from a command line."""
    parser = argparse.ArgumentParser(prog="accuracy.failures")
    parser.add_argument("--difficulty", choices=list(DIFFICULTIES), default="ordinary")
    parser.add_argument("--walks", type=int, default=50)
    parser.add_argument("--method", choices=methods_present(), default=methods_present()[0])
    chosen = parser.parse_args(arguments)
    kinds: collections.Counter[str] = collections.Counter()
    wrong: collections.Counter[str] = collections.Counter()
    met: collections.Counter[str] = collections.Counter()
    for seed in first_seeds("development", chosen.walks):
        walk = make_walk(seed, chosen.difficulty)
        scores = score_walk(walk, METHODS[chosen.method](walk))
        for score, leg in zip(scores.legs, walk.truth.legs, strict=True):
            about = list(circumstances(walk, leg))
            met.update(about)
            if score.right:
                continue
            kinds[what_is_wrong(score)] += 1
            wrong.update(about)
            print(_line(walk, score, leg, about))
    print("\n" + ", ".join(f"{kind} {count}" for kind, count in kinds.most_common()))
    for name, count in wrong.most_common():
        print(f"{count:4} of {met[name]:4} wrong with {name}")
    return 0


def _line(walk: Walk, score: LegScore, leg: LegTruth, about: list[str]) -> str:
    errors = [
        "" if value is None else f"{value:.0f} {unit}"
        for value, unit in (
            (score.start_error_s, "s"),
            (score.start_error_m, "m"),
            (score.claim_error_s, "s"),
            (score.claim_error_m, "m"),
        )
    ]
    sizes = [f"{planted.cause} {planted.size:.3g} {planted.unit}" for planted in leg.planted]
    length = "" if leg.length_m is None else f"{leg.length_m:.0f} m"
    return (
        f"{walk.seed} leg {leg.leg} ({length}): {what_is_wrong(score)} [{', '.join(errors)}] "
        f"{', '.join(about[:4])}; {', '.join(sizes)}"
    )


if __name__ == "__main__":
    sys.exit(main())
