"""In which order the points of a course in free order were visited, and how sure that is."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from audit.leg_card import LegCard
from audit.matching.free_order import FreeMatch
from audit.settings import QualitySettings
from audit.words import sentence
from audit.words.figures import Listed, Share


def with_order_told(free: FreeMatch, given: LegCard, settings: QualitySettings) -> LegCard:
    """Give the card of the walk with notes on the order; ``given`` is the plan's own card."""
    names = [leg.name for leg in free.card.legs]
    visited, left = names[: free.visited], names[free.visited :]
    start = given.legs[0].start.name
    notes: list[str] = []
    if visited:
        found = tuple(given.legs[leg].name for leg in free.odds.order) == tuple(visited)
        names_in_order = ", ".join([start, *visited])
        sure = Share(share=free.odds.probability) if found else "none"
        notes.append(sentence("order-walked", names=names_in_order, sure=sure))
    if left:
        notes.append(sentence("order-not-visited", names=", ".join(left)))
    if free.odds.probability < settings.unsure:
        notes += _other_steps(free, given, start, settings.other_order)
    return replace(free.card, notes=(*free.card.notes, *notes))


def _other_steps(free: FreeMatch, given: LegCard, start: str, least: float) -> list[str]:
    """Say where the order is least sure, and how to settle it."""
    odds = free.odds.next_point
    before, unsure = -1, []
    for leg in free.odds.order:
        others = odds[before + 1].copy()
        others[leg] = 0.0
        if others.size and others.max() > least:
            here = start if before < 0 else given.legs[before].name
            other = given.legs[int(np.argmax(others))].name
            chance = Share(share=float(others.max()))
            unsure.append(sentence("order-may-be", here=here, other=other, chance=chance))
        before = leg
    if not unsure:
        return []
    name = given.legs[free.odds.order[0]].name
    steps = Listed(things=unsure, link="semicolon")
    return [sentence("order-not-sure", steps=steps, leg=name)]
