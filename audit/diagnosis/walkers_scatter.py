"""How a walker's ordinary legs scatter: what is no more than that is no error of its own."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkersScatter:
    """What one walker's headings and distances scatter by from leg to leg, mistakes left out.

    Attributes
    ----------
    turn_deg : float
        Standard deviation of the heading.
    log_ratio : float
        Standard deviation of the logarithm of the distance, which is a share of it. Both are 0
        where no walk was weighed.
    """

    turn_deg: float = 0.0
    log_ratio: float = 0.0
