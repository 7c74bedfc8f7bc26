"""Mistakes whose prediction is a turn, a length or another place: walked as the cause says."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

import numpy as np

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.leg_card import CardLeg
from audit.leg_card.leg_pieces import LegPiece
from audit.rehearsal.finished_rehearsal import Way
from audit.rehearsal.piece_ways import piece_ways
from audit.rehearsal.way_words import size_of, way_words
from audit.settings import DiagnosisSettings
from audit.units import FloatArray, unit_vector

_LEAST_M = 1.0
"""A way that leads no further off than this is no mistake on this leg."""


def expected_ways(
    cause: Cause,
    leg: CardLeg,
    pieces: Sequence[LegPiece],
    evidence: LegEvidence,
    settings: DiagnosisSettings,
) -> Iterator[Way]:
    """Give the ways of a cause of direction, distance or point on a leg of such pieces."""
    if len(pieces) > 1 and cause.kind != "place":
        yield from piece_ways(cause, leg, pieces, evidence, settings, _LEAST_M)
        return
    found = [
        (way, line)
        for way in cause.expects(evidence, settings)
        if math.dist((line := _line(way, leg))[-1], leg.line[-1]) >= _LEAST_M
    ]
    total = sum(way.weight for way, _ in found)
    for way, line in found:
        size, unit = size_of(cause, way, leg.distance_m)
        yield Way(
            cause=cause.name,
            size=size,
            unit=unit,
            words=way_words(size, unit, way.shift_m),
            share=way.weight / total if total else 1.0,
            line=line,
        )


def _line(way: Expected, leg: CardLeg) -> FloatArray:
    """Give the line to another place than the end, over its via positions, or a straight one."""
    if way.shift_m is not None:
        return np.vstack([leg.line[:-1], leg.line[-1] + np.array(way.shift_m)])
    walked_m = math.exp(way.log_ratio) * leg.distance_m
    step = walked_m * unit_vector(leg.azimuth.degrees + way.turn_deg)
    return np.array([leg.line[0], leg.line[0] + step])
