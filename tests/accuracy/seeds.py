"""Which made walks may be looked at for what. The one place that says so.

Whoever changes the matching looks at development walks only. The figures that are
published come from reporting walks, which nobody has looked at one by one, and the
guard has walks of its own so that the recorded figure is no development figure.
"""

from __future__ import annotations

SEEDS = {
    "development": range(100_000, 200_000),
    "guard": range(500_000, 600_000),
    "reporting": range(900_000, 1_000_000),
}


def first_seeds(purpose: str, walks: int) -> range:
    """Give the first seeds of a purpose: always the same walks for the same number."""
    seeds = SEEDS[purpose]
    if walks > len(seeds):
        message = f"{purpose} has {len(seeds)} seeds, {walks} were asked for"
        raise ValueError(message)
    return seeds[:walks]
