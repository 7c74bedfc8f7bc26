"""A cause with its probability and the figures behind it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from audit.diagnosis.order_of_passing import PassedPoint

Unit = Literal["deg", "m", "ratio"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One candidate cause of a leg's miss.

    Attributes
    ----------
    cause : str
        A name of the catalogue of causes.
    probability : float
        That this is what chiefly put the leg out; the findings of a leg add up to 1.
    evidence : str
        One sentence: the number predicted, the number seen.
    predicted, seen : float or None
        The same two numbers, in ``unit``; None where the cause predicts no number.
    made : float
        That the mistake was made on this leg at all, be it beside a larger one.
    runner_up : str or None
        The most probable other candidate.
    settles : str
        What would tell the two apart.
    point : str
        Of a point left out: its name, which need not be that of the leg's end.
    passed : tuple of PassedPoint
        Of points taken in another order: they, in the order of passing.
    """

    cause: str
    probability: float
    evidence: str
    predicted: float | None = None
    seen: float | None = None
    unit: Unit | None = None
    made: float | None = None
    runner_up: str | None = None
    settles: str = ""
    point: str = ""
    passed: tuple[PassedPoint, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkFinding:
    """A mistake that several legs share: the joint story of them.

    ``legs`` are indices into the plan's legs; ``begins_later`` and ``put_right`` say
    whether legs were walked without it before and after.
    """

    cause: str
    probability: float
    legs: tuple[int, ...]
    begins_later: bool
    put_right: bool
    size: float | None = None
    unit: Unit | None = None
