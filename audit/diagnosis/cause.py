"""What a cause is: a name of the catalogue and the number that it predicts."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from audit.diagnosis.evidence import LegEvidence


@dataclass(frozen=True, slots=True, kw_only=True)
class DirectionCause:
    """A mistake that turns a leg by a known angle.

    Attributes
    ----------
    name : str
        As in the catalogue of causes.
    predicts_deg : function
        The turn that it predicts for a leg, clockwise positive.
    """

    name: str
    predicts_deg: Callable[[LegEvidence], float]
