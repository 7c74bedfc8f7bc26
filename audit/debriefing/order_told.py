"""In which order the points of a course in free order were visited, and how sure that is."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from audit.leg_card import LegCard
from audit.matching.free_order import FreeMatch
from audit.settings import QualitySettings


def with_order_told(free: FreeMatch, given: LegCard, settings: QualitySettings) -> LegCard:
    """Give the card of the walk with notes on the order; ``given`` is the plan's own card."""
    names = [leg.name for leg in free.card.legs]
    visited, left = names[: free.visited], names[free.visited :]
    start = given.legs[0].start.name
    notes = []
    if visited:
        found = tuple(given.legs[leg].name for leg in free.odds.order) == tuple(visited)
        sure = f" ({100.0 * free.odds.probability:.0f} % sure)" if found else ""
        notes.append(f"The order walked is {', '.join([start, *visited])}{sure}.")
    if left:
        notes.append(f"Not visited: {', '.join(left)}.")
    if free.odds.probability < settings.unsure:
        notes += _other_steps(free, given, start)
    return replace(free.card, notes=(*free.card.notes, *notes))


def _other_steps(free: FreeMatch, given: LegCard, start: str) -> list[str]:
    """Say where the order is least sure, and how to settle it."""
    odds = free.odds.next_point
    before, unsure = -1, []
    for leg in free.odds.order:
        others = odds[before + 1].copy()
        others[leg] = 0.0
        if others.size and others.max() > 0.1:
            here = start if before < 0 else given.legs[before].name
            other = given.legs[int(np.argmax(others))].name
            unsure.append(f"after {here} it may have been {other} ({100.0 * others.max():.0f} %)")
        before = leg
    if not unsure:
        return []
    name = given.legs[free.odds.order[0]].name
    told = f"The order is not sure: {'; '.join(unsure)}. "
    return [f'{told}The time at a point settles it, as in --claim "{name}=09:15".']
