"""How often a made class is told what was planted in it, and what was not."""

from __future__ import annotations

import argparse
from collections import Counter

from accuracy.seeds import first_seeds

from classes.made_class import MadeClass, make_class
from classes.members import Plants
from classes.true_results import true_result

PLANTED = {
    "point-misplaced": "a misplaced point",
    "compass-reads-wrong": "a bad compass",
    "walked-together": "a follower",
}


def was_planted(made: MadeClass, what: str, message: str) -> bool:
    """Tell whether a finding is of what was planted."""
    follower = next((one.member.name for one in made.walks if one.member.follows), None)
    return {
        "point-misplaced": bool(made.misplaced) and f", {made.misplaced} (" in message,
        "compass-reads-wrong": bool(made.bad_compass) and f"Compass {made.bad_compass}:" in message,
        "walked-together": follower is not None and f"Did {follower} walk" in message,
    }[what]


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--seeds", choices=["development", "guard", "reporting"], required=True)
    parser.add_argument("--classes", type=int, default=10)
    asked = parser.parse_args()
    rows: Counter[tuple[str, str]] = Counter()
    for seed in first_seeds(asked.seeds, asked.classes):
        for kind, made in (
            ("planted", make_class(seed)),
            ("clean", make_class(seed, plants=Plants())),
        ):
            for finding in true_result(made).findings:
                if finding.what in PLANTED:
                    right = was_planted(made, finding.what, finding.message)
                    rows[finding.what, f"{kind}, {'right' if right else 'wrong'}"] += 1
    print(f"{asked.classes} classes of 40 each way, {asked.seeds} seeds")
    for what, words in PLANTED.items():
        found = rows[what, "planted, right"]
        print(
            f"{words}: found in {found}; named wrongly {rows[what, 'planted, wrong']} times "
            f"beside it, {rows[what, 'clean, wrong']} times where nothing was planted"
        )


if __name__ == "__main__":
    main()
