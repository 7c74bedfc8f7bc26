"""Whether somebody counts every step or every second one, as far as a pace count shows it."""

from __future__ import annotations

from typing import Literal

from audit.settings import PaceSettings
from audit.words import sentence
from audit.words.figures import Number

PaceKind = Literal["double", "single"]


def pace_unit(paces_per_100m: float | None, settings: PaceSettings) -> PaceKind:
    """Tell whether the walker counts every step or every second one."""
    if paces_per_100m is None or paces_per_100m < settings.single_from_per_100m:
        return "double"
    return "single"


def step_note(per_100m: float | None, kind: PaceKind, settings: PaceSettings) -> str:
    """Say so where a pace count makes a step that nobody walks with; "" where it does not.

    A double pace is two steps.
    """
    if per_100m is None:
        return ""
    step_m = 100.0 / per_100m / (2.0 if kind == "double" else 1.0)
    if settings.shortest_step_m <= step_m <= settings.longest_step_m:
        return ""
    decimals = 0 if abs(per_100m - round(per_100m)) < 0.05 else 1
    return sentence(
        "note-step",
        rate=Number(value=per_100m, decimals=decimals),
        pace=kind,
        step=Number(value=step_m, decimals=2),
        shortest=Number(value=settings.shortest_step_m, decimals=1),
        longest=Number(value=settings.longest_step_m, decimals=1),
    )
