"""Swerves held against how this walker wanders on his other legs, and against silences."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from statistics import median

from audit.diagnosis.leg_evidence import LegEvidence
from audit.diagnosis.line_shape import LineShape


def against_own_wander(evidence: Sequence[LegEvidence]) -> tuple[LegEvidence, ...]:
    """Weigh each leg's stretch on another bearing by the wander of the walker's other legs.

    One leg alone may look straight beside its stretch by chance: then little stands out of it
    that he does everywhere. Two others at least say what he does.
    """
    wander = {leg.leg: leg.shape.wander_deg for leg in evidence if leg.shape is not None}
    held = []
    for leg in evidence:
        others = [deg for other, deg in wander.items() if other != leg.leg]
        if leg.shape is None or len(others) < 2:
            held.append(leg)
        else:
            held.append(replace(leg, shape=_held(leg.shape, median(others))))
    return tuple(held)


def with_silence(shape: LineShape, unseen: float) -> LineShape:
    """Take off a share of what speaks for another bearing: through a silence a line is straight."""
    other = shape.other
    if other is None:
        return shape
    seen = 1.0 - unseen
    return replace(
        shape, other=replace(other, nats=other.nats * seen, even_nats=other.even_nats * seen)
    )


def _held(shape: LineShape, wander_deg: float) -> LineShape:
    other = shape.other
    if other is None or wander_deg <= other.spread_deg:
        return shape
    # The squares of turns over spreads, as they were added up; what the search costs stays.
    less = (other.spread_deg / wander_deg) ** 2
    nats = (other.nats + other.sought_nats) * less - other.sought_nats
    return replace(shape, other=replace(other, nats=nats, even_nats=other.even_nats * less))
