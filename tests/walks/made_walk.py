"""What a walk maker by another hand gives, and the names of its levels."""

from __future__ import annotations

from dataclasses import dataclass

from audit.units import FloatArray

LEVELS = ("trained", "ordinary", "novice")


@dataclass(frozen=True, slots=True, kw_only=True)
class LegTruth:
    """The truth of one leg of the plan; times in whole seconds of the outing.

    ``status`` is walked, unfinished, skipped or not-started. ``causes`` are the mistakes made
    on it; of a leg walked twice some makers tell those of both attempts.
    """

    status: str
    start_s: int | None = None
    claim_s: int | None = None
    attempts: tuple[tuple[int, int], ...] = ()
    causes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class MadeWalk:
    """A course, what the recorder recorded of the outing on it, and the truth."""

    points_m: FloatArray
    gm_angle_deg: float
    fix_time_s: FloatArray
    fix_m: FloatArray
    true_time_s: FloatArray
    true_m: FloatArray
    legs: tuple[LegTruth, ...]
