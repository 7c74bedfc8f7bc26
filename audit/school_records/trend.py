"""What a walker's attempts show: frozen records, day and night apart."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from audit.school_records.attempt import Light, PaceUnit
from audit.school_records.estimates import Estimate, Spread


@dataclass(frozen=True, slots=True, kw_only=True)
class AttemptShown:
    """One attempt, or the part of it that was walked in one light.

    Attributes
    ----------
    number : int
        Of all attempts of the walker, in order of time, from 1.
    heading_deg, distance : Estimate or None
        Mean turn of the legs, right positive; mean distance walked over planned, less 1.
    heading_scatter_deg, distance_scatter : Spread or None
        From leg to leg; None with fewer than two legs.
    paces_per_100m, paces_sd : float or None
    legs, heading_legs, distance_legs : int
        Walked, and those that the figures rest on.
    causes : tuple of (str, float)
        How many legs each cause is to be expected on, by its probabilities.
    """

    number: int
    walked_on: dt.date | None
    course: str
    verdict: str | None
    legs: int
    heading_legs: int
    distance_legs: int
    heading_deg: Estimate | None
    heading_scatter_deg: Spread | None
    distance: Estimate | None
    distance_scatter: Spread | None
    paces_per_100m: float | None
    paces_sd: float | None
    causes: tuple[tuple[str, float], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """How a figure moves from one attempt to the next.

    ``step`` is in the unit of the figure; of a scatter it is the share by which it grows.
    ``carried`` tells whether the numbers carry the claim that it changes at all. ``first`` and
    ``last`` are what the line through the attempts has at its ends; None of a scatter.
    """

    step: Estimate
    attempts: int
    carried: bool
    first: float | None = None
    last: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class OverAttempts:
    """One figure over all attempts.

    ``mean`` is of a figure that has one, ``spread`` of a scatter, pooled over the legs of
    all attempts; ``change`` is None with too few attempts. ``same_side`` says how many of the
    ``told`` attempts that have the figure lie to the side of 0 that the mean does.
    """

    mean: Estimate | None = None
    spread: Spread | None = None
    change: Change | None = None
    same_side: int = 0
    told: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class CauseCount:
    """On how many of the legs a cause is to be expected, with standard error."""

    cause: str
    legs: float
    error: float


@dataclass(frozen=True, slots=True, kw_only=True)
class TrendOfLight:
    """The attempts in one light.

    Attributes
    ----------
    heading, heading_scatter : OverAttempts
        In degrees, right positive; the scatter is from leg to leg within an attempt.
    distance, distance_scatter : OverAttempts
        Walked over planned, less 1; the scatter is that of its logarithm.
    paces : OverAttempts
        Paces to 100 m.
    left_out : tuple of (str, int)
        Legs that the figures do not rest on, by reason.
    """

    light: Light
    attempts: tuple[AttemptShown, ...]
    legs: int
    heading: OverAttempts
    heading_scatter: OverAttempts
    distance: OverAttempts
    distance_scatter: OverAttempts
    paces: OverAttempts
    causes: tuple[CauseCount, ...]
    left_out: tuple[tuple[str, int], ...]

    @property
    def figures(self) -> tuple[OverAttempts, ...]:
        """Give all figures that are asked whether they change."""
        return (
            self.heading, self.heading_scatter, self.distance, self.distance_scatter, self.paces
        )  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Trend:
    """What the records hold of one walker.

    Attributes
    ----------
    pace_unit : "double" or "single"
        Of all pace counts here: that of the last attempt.
    questions : int
        How many figures were asked whether they change.
    notes : tuple of str
        What was left out or assumed, one sentence each.
    """

    walker: str
    pace_unit: PaceUnit
    lights: tuple[TrendOfLight, ...]
    attempts: int
    questions: int
    coverage: float
    false_alarm: float
    least_attempts: int
    notes: tuple[str, ...]
