"""Mistakes of direction and distance on a leg along via positions, piece by piece.

Each straight piece is set and counted by itself. What a walker does on a whole walk he does
on every piece, at each by its own azimuth; a slip of one leg he makes on one of them.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import zip_longest

import numpy as np

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.leg_card import CardLeg
from audit.leg_card.leg_pieces import LegPiece
from audit.rehearsal.finished_rehearsal import Unit, Way
from audit.rehearsal.way_words import size_of, way_words
from audit.settings import DiagnosisSettings
from audit.units import FloatArray, direction_degrees, turn_degrees, unit_vector
from audit.words import sentence
from audit.words.figures import Listed

_AS_PLANNED = Expected()


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Tried:
    """One way before its share is known: its size, words, and how often it is so."""

    size: float
    unit: Unit
    words: str
    weight: float
    line: FloatArray


def piece_ways(
    cause: Cause,
    leg: CardLeg,
    pieces: Sequence[LegPiece],
    evidence: LegEvidence,
    settings: DiagnosisSettings,
    least_m: float,
) -> Iterator[Way]:
    """Give the ways of a cause that lead further off than ``least_m``."""
    rows = [
        cause.expects(_of_piece(evidence, pieces, number, settings), settings)
        for number in range(len(pieces))
    ]
    of_walk = cause.name in dict(settings.walk_priors)
    tried = _on_all(cause, leg, pieces, rows) if of_walk else _on_one(cause, leg, pieces, rows)
    found = [one for one in tried if math.dist(one.line[-1], leg.line[-1]) >= least_m]
    total = sum(one.weight for one in found)
    for one in found:
        yield Way(
            cause=cause.name, size=one.size, unit=one.unit, words=one.words,
            share=one.weight / total if total else 1.0, line=one.line,
        )  # fmt: skip


def _of_piece(
    evidence: LegEvidence, pieces: Sequence[LegPiece], number: int, settings: DiagnosisSettings
) -> LegEvidence:
    """Give the evidence of one piece: its own azimuth and distance, the other pieces beside."""
    piece, weight = pieces[number], settings.neighbour_weights[0]
    beside = [other.magnetic.degrees for n, other in enumerate(pieces) if abs(n - number) == 1]
    return replace(
        evidence,
        planned_magnetic_deg=piece.magnetic.degrees,
        planned_deg=piece.azimuth.degrees,
        length_m=piece.distance_m,
        other_magnetic_deg=(
            *((degrees, weight) for degrees in beside),
            *evidence.other_magnetic_deg,
        ),
    )


def _on_all(
    cause: Cause,
    leg: CardLeg,
    pieces: Sequence[LegPiece],
    rows: Sequence[tuple[Expected, ...]],
) -> Iterator[_Tried]:
    """Make the mistake on every piece; one whose azimuth it leaves as it is goes as planned."""
    for made in zip_longest(*rows, fillvalue=_AS_PLANNED):
        line = _walked(leg, pieces, made)
        size, unit = size_of(cause, made[0], pieces[0].distance_m)
        words = way_words(size, unit)
        if unit == "deg" and len({way.turn_deg for way in made}) > 1:
            size = turn_degrees(_across_deg(leg.line), _across_deg(line))
            turns = [_turned_words(way.turn_deg) for way in made]
            words = sentence("rehearse-way-pieces", turns=Listed(things=turns))
        weight = max(way.weight for way in made if way is not _AS_PLANNED)
        yield _Tried(size=size, unit=unit, words=words, weight=weight, line=line)


def _on_one(
    cause: Cause,
    leg: CardLeg,
    pieces: Sequence[LegPiece],
    rows: Sequence[tuple[Expected, ...]],
) -> Iterator[_Tried]:
    """Make the mistake on one piece, and walk the others as planned from where it leads."""
    for number, row in enumerate(rows):
        for way in row:
            made = [way if n == number else _AS_PLANNED for n in range(len(pieces))]
            size, unit = size_of(cause, way, pieces[number].distance_m)
            words = sentence(
                "rehearse-way-on-piece",
                way=way_words(size, unit),
                number=str(number + 1),
                count=str(len(pieces)),
            )
            line = _walked(leg, pieces, made)
            yield _Tried(size=size, unit=unit, words=words, weight=way.weight, line=line)


def _walked(leg: CardLeg, pieces: Sequence[LegPiece], made: Sequence[Expected]) -> FloatArray:
    """Give the line of the pieces one after the other, each turned and drawn out by its own."""
    steps = [
        piece.distance_m
        * math.exp(way.log_ratio)
        * unit_vector(piece.azimuth.degrees + way.turn_deg)
        for piece, way in zip(pieces, made, strict=True)
    ]
    return np.asarray(np.vstack([leg.line[0], leg.line[0] + np.cumsum(steps, axis=0)]))


def _turned_words(turn_deg: float) -> str:
    return way_words(turn_deg, "deg") if turn_deg else sentence("rehearse-way-as-planned")


def _across_deg(line: FloatArray) -> float:
    east_m, north_m = (float(one) for one in line[-1] - line[0])
    return direction_degrees(east_m, north_m)
