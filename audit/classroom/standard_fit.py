"""Whether a standard can be that of the lanes, and what it is on a lane."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from audit.plan import Plan
from audit.standard import Standard
from audit.words import sentence
from audit.words.figures import Listed


def lanes_with_fewer(points: Mapping[str, int], standard: Standard) -> Iterator[str]:
    """Say which lanes have fewer points to find than a standard asks for, by their names."""
    asked = standard.points_to_find
    if asked is None:
        return
    for has in sorted({has for has in points.values() if has < asked}):
        lanes = [name for name, count in points.items() if count == has]
        yield sentence(
            "shows-fewer-points",
            standard=standard.name,
            asked=str(asked),
            lanes=Listed(things=lanes),
            count=len(lanes),
            has=str(has),
        )


def standard_on(plan: Plan, standard: Standard) -> Standard:
    """Give a standard as it is held against the walks of a plan.

    Whoever lets the points be visited in any order asks for no turn: a standard for all
    courses cannot take that back.
    """
    return replace(standard, order="free") if plan.order == "free" else standard


def other_order(plan: Plan, standard: Standard) -> str | None:
    """Say so where a plan leaves the order free and the standard does not; else None."""
    if standard_on(plan, standard) == standard:
        return None
    return sentence("shows-free-plan", plan=plan.source, standard=standard.name)
