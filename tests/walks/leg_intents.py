"""What a walker sets out to do on one leg."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from audit.units import FloatArray
from walks.truth import Planted


@dataclass(slots=True, kw_only=True)
class LegIntent:
    """What the walker sets out to do on one leg, his mistakes included."""

    azimuth_deg: float
    count_m: float
    veer_deg: float = 0.0
    overshoot_m: float = 0.0
    bypass: str = ""
    handrail_deg: float = 0.0
    disturbance_deg: float = 0.0
    unseen: bool = False
    wrong_way: bool = False
    other_point: int | None = None
    plotted_shift_m: FloatArray = field(default_factory=lambda: np.zeros(2))
    planted: list[Planted] = field(default_factory=list)

    def plant(self, cause: str, size: float, unit: str) -> None:
        """Note a mistake."""
        self.planted.append(Planted(cause=cause, size=float(size), unit=unit))
