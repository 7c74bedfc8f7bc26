"""A leg that a walker walked before, as an earlier debrief tells of it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkedBefore:
    """Errors of one leg, with the standard errors of measuring them.

    Attributes
    ----------
    turn_deg : float
        Walked less planned azimuth, right positive.
    log_ratio : float
        Logarithm of distance walked over planned.
    """

    turn_deg: float
    turn_sd_deg: float
    log_ratio: float
    log_ratio_sd: float
