"""How the records of a school are kept and read."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordsSettings:
    """Light, patience with a busy database, and what a trend must show to be called one."""

    sun_up_deg: float = -0.833
    """Of the sun's centre when its rim is on the horizon: refraction and radius (US Naval
    Observatory, "Rise, Set, and Twilight Definitions": 50 minutes of arc)."""
    civil_dusk_deg: float = -6.0
    """End of civil twilight (same source)."""
    wait_for_others_s: float = 120.0
    """For other writers to be done; chosen: far longer than a hundred of them need."""
    answer_s: int = 10
    """For a database server to answer at all; chosen."""
    heading_scatter_deg: float = 3.0
    """Of a walker of whom nothing is known; as the forecast has it (STP 21-1-SMCT)."""
    distance_scatter: float = 0.04
    """The same of the logarithm of distance (common practice, no source)."""
    prior_legs: float = 4.0
    """That the usual scatter weighs as much as; chosen, as in the forecast."""
    largest_turn_deg: float = 20.0
    largest_log_ratio: float = 0.35
    """Legs further off are mistakes, not scatter; chosen, as in the forecast."""
    least_attempts: int = 4
    """With fewer no change over attempts is spoken of; chosen: a line through three points
    leaves one to judge it by."""
    same_heading_deg: float = 0.1
    """Two results without times hold one leg of one walk where its heading is so nearly the same;
    chosen: a tenth of what two walks of a leg differ by, more than another version's rounding."""
    false_alarm: float = 0.05
    """Chance of calling anything a change where nothing changes, all questions of one sheet
    together; chosen: the usual."""
    coverage: float = 0.95
    """Of every interval that is shown; the usual."""
