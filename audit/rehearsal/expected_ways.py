"""Mistakes whose prediction is a turn, a length or another place: walked as the cause says."""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.leg_card import CardLeg
from audit.rehearsal.finished_rehearsal import Unit, Way
from audit.settings import DiagnosisSettings
from audit.units import FloatArray, direction_degrees, unit_vector
from audit.words import sentence
from audit.words.figures import Length, Listed, Number, Turn

_RATIOS = frozenset({"single-double-pace", "wrong-ruler", "pace-long", "pace-short", "slope-paced"})
_LEAST_M = 1.0
"""A way that leads no further off than this is no mistake on this leg."""


def expected_ways(
    cause: Cause, leg: CardLeg, evidence: LegEvidence, settings: DiagnosisSettings
) -> Iterator[Way]:
    """Give the ways of a cause of direction, distance or point on a leg."""
    found = [
        (way, line)
        for way in cause.expects(evidence, settings)
        if float(np.hypot(*((line := _line(way, leg))[-1] - leg.line[-1]))) >= _LEAST_M
    ]
    total = sum(way.weight for way, _ in found)
    for way, line in found:
        size, unit = _size(cause, way, leg)
        yield Way(
            cause=cause.name,
            size=size,
            unit=unit,
            words=way_words(size, unit, way.shift_m),
            share=way.weight / total if total else 1.0,
            line=line,
        )


def way_words(size: float, unit: Unit, shift_m: tuple[float, float] | None = None) -> str:
    """Say how large a way is: "7.5° left", "100 m short", "made for a place 300 m east"."""
    if shift_m is not None:
        axes = (("east", "west"), ("north", "south"))
        parts = [
            sentence(f"rehearse-way-{names[0] if part > 0 else names[1]}", size=_metres(part))
            for part, names in zip(shift_m, axes, strict=True)
            if abs(part) >= 0.5
        ]
        return sentence("rehearse-way-place", where=Listed(things=parts))
    if unit == "deg":
        side = "about" if abs(size) >= 179.95 else "right" if size > 0 else "left"
        return sentence(f"rehearse-way-{side}", size=Turn(degrees=size))
    if unit == "ratio":
        return sentence("rehearse-way-ratio", ratio=Number(value=size, decimals=2))
    return sentence(f"rehearse-way-{'far' if size > 0 else 'short'}", size=_metres(size))


def _metres(size_m: float) -> Length:
    return Length(metres=abs(size_m))


def turned_line(leg: CardLeg, turn_deg: float, ratio: float) -> FloatArray:
    """Give the card's way of a leg turned about its start, and drawn out by a ratio."""
    if len(leg.line) == 2:
        step = ratio * leg.distance_m * unit_vector(leg.azimuth.degrees + turn_deg)
        return np.array([leg.line[0], leg.line[0] + step])
    steps = np.diff(leg.line, axis=0) * ratio
    turned = [
        np.hypot(*step) * unit_vector(direction_degrees(float(step[0]), float(step[1])) + turn_deg)
        for step in steps
    ]
    return np.asarray(np.vstack([leg.line[0], leg.line[0] + np.cumsum(turned, axis=0)]))


def _line(way: Expected, leg: CardLeg) -> FloatArray:
    if way.shift_m is not None:
        return np.array([leg.line[0], leg.line[-1] + np.array(way.shift_m)])
    return turned_line(leg, way.turn_deg, math.exp(way.log_ratio))


def _size(cause: Cause, way: Expected, leg: CardLeg) -> tuple[float, Unit]:
    if way.shift_m is not None:
        return math.hypot(*way.shift_m), "m"
    if cause.kind == "turn":
        return way.turn_deg, "deg"
    if cause.name in _RATIOS:
        return math.exp(way.log_ratio), "ratio"
    return leg.distance_m * math.expm1(way.log_ratio), "m"
