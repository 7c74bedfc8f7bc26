"""Drawing from a table of names and their weights."""

from __future__ import annotations

from random import Random

Weighted = tuple[tuple[str, float], ...]


def pick(rng: Random, table: Weighted) -> str:
    """Draw one of the names, each as often as its weight says."""
    names, weights = zip(*table, strict=True)
    return str(rng.choices(names, weights)[0])
