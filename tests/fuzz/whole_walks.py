"""Any plan, with any recording, through to the end: a document of the schema, or a refusal.

    PYTHONPATH=.:tests python tests/fuzz/whole_walks.py --examples 3000 [--seed 1]

Says how many examples gave what; ends with status 1 at the first that gave neither, as small as it
can be made.
"""

from __future__ import annotations

import argparse
import tempfile
from collections import Counter
from pathlib import Path

import hypothesis
from hostile.any_walk import AnyWalk, any_walks, outcome_of
from hypothesis import HealthCheck, Phase, given, settings


def try_walks(examples: int, seed: int) -> Counter[str]:
    """Try so many; count outcomes by their kind."""
    outcomes: Counter[str] = Counter()

    @hypothesis.seed(seed)
    @settings(
        max_examples=examples,
        deadline=None,
        database=None,
        phases=[Phase.generate, Phase.shrink],
        suppress_health_check=list(HealthCheck),
    )
    @given(walk=any_walks())
    def give_a_result_or_a_refusal(walk: AnyWalk) -> None:
        with tempfile.TemporaryDirectory() as folder:
            found = outcome_of(Path(folder), walk)
        kind = found if found == "refused" else "walked in part"
        kind = {"walked": "walked", "not-started": "nothing walked"}.get(
            "".join(set(found.split())), kind
        )
        outcomes[f"{walk.ending}: {kind}"] += 1

    give_a_result_or_a_refusal()
    return outcomes


def main() -> None:
    """Try, and tell."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--examples", type=int, default=3000)
    parser.add_argument("--seed", type=int, default=1)
    asked = parser.parse_args()
    outcomes = try_walks(asked.examples, asked.seed)
    print(f"{outcomes.total()} walks, seed {asked.seed}")
    for kind, count in sorted(outcomes.items()):
        print(f"{count:6} {kind}")


if __name__ == "__main__":
    main()
