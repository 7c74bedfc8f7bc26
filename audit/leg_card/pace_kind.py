"""Whether somebody counts every step or every second one, as far as a pace count shows it."""

from __future__ import annotations

from typing import Literal

from audit.settings import PaceSettings

PaceKind = Literal["double", "single"]


def pace_unit(paces_per_100m: float | None, settings: PaceSettings) -> PaceKind:
    """Tell whether the walker counts every step or every second one."""
    if paces_per_100m is None or paces_per_100m < settings.single_from_per_100m:
        return "double"
    return "single"
