"""The number that a cause predicts for a leg, and the same number as it was seen."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.finding import Unit
from audit.diagnosis.leg_evidence import LegEvidence, Metres2
from audit.settings import DiagnosisSettings
from audit.units import turn_degrees, unit_vector

_RATIOS = frozenset({"single-double-pace", "wrong-ruler", "pace-long", "pace-short", "slope-paced"})
_SHAPES_OF_LENGTH = frozenset({"bypass-paced", "passed-unseen"})
_ASIDE = frozenset({"bypass-unequal", "obstacle-one-side"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Predicted:
    """A number predicted and seen, in ``unit``; vectors besides, for a wrong place.

    ``of_leg`` says that the number is r of the whole leg; ``aside`` that it is metres right
    of the line; ``of_point`` that the vectors count from the leg's point, not from where its
    card leads from where it was begun.
    """

    number: float
    seen: float
    unit: Unit
    of_leg: bool = True
    aside: bool = False
    of_point: bool = False
    shift_m: Metres2 | None = None
    seen_shift_m: Metres2 | None = None


def predicted_for(
    cause: Cause,
    leg: LegEvidence,
    settings: DiagnosisSettings,
    steady: Mapping[str, float] | None = None,
) -> Predicted | None:
    """Give the number of the way that comes nearest to what was seen; None without a number.

    ``steady`` has the turn in degrees, or the logarithm of the ratio, of each cause that is the
    same on all legs: the walk says which, not the leg.
    """
    ways = _ways(cause, leg, settings, steady)
    if not ways:
        return None
    if cause.name == "wrong-start":
        off_m = math.hypot(*leg.start_off_m)
        return Predicted(
            number=off_m,
            seen=off_m,
            unit="m",
            of_point=True,
            shift_m=leg.start_off_m,
            seen_shift_m=_seen_shift(leg, leg.start_off_m),
        )
    if cause.kind == "place":
        return _place(ways, leg)
    if cause.kind == "length" or cause.name in _SHAPES_OF_LENGTH:
        return _length(cause, ways, leg)
    if cause.kind == "turn":
        way = min(ways, key=lambda one: abs(turn_degrees(one.turn_deg, leg.turn_deg)))
        return _turned(way.turn_deg, leg)
    return _shape(cause.name, ways[0], leg)


def _ways(
    cause: Cause, leg: LegEvidence, settings: DiagnosisSettings, steady: Mapping[str, float] | None
) -> tuple[Expected, ...]:
    ways = cause.expects(leg, settings)
    size = None if steady is None else steady.get(cause.name)
    if size is None or not ways:
        return ways
    if cause.kind == "turn":
        return (replace(ways[0], turn_deg=size),)
    return (replace(ways[0], log_ratio=size),)


def predicted_beside(
    slip: Cause,
    shared: Cause,
    leg: LegEvidence,
    settings: DiagnosisSettings,
    steady: Mapping[str, float] | None = None,
) -> tuple[Predicted, Predicted] | None:
    """Give what a slip predicts beside a mistake of the whole walk, alone and with it.

    Both change a heading, or both a distance; None else.
    """
    pairs = [
        (one, one.beside(other))
        for one in _ways(slip, leg, settings, steady)
        for other in _ways(shared, leg, settings, steady)
    ]
    if not pairs or slip.kind != shared.kind:
        return None
    if slip.kind == "turn":
        alone, both = min(pairs, key=lambda two: abs(turn_degrees(two[1].turn_deg, leg.turn_deg)))
        return _turned(alone.turn_deg, leg), _turned(turn_degrees(0.0, both.turn_deg), leg)
    alone, both = min(pairs, key=lambda two: abs(two[1].log_ratio - leg.log_ratio))
    return _lengthened(alone.log_ratio, leg), _lengthened(both.log_ratio, leg)


def _turned(turn_deg: float, leg: LegEvidence) -> Predicted:
    return Predicted(number=turn_deg, seen=leg.turn_deg, unit="deg")


def _lengthened(log_ratio: float, leg: LegEvidence) -> Predicted:
    return Predicted(
        number=leg.length_m * math.expm1(log_ratio),
        seen=leg.length_m * math.expm1(leg.log_ratio),
        unit="m",
    )


def _place(ways: tuple[Expected, ...], leg: LegEvidence) -> Predicted:
    seen = _seen_shift(leg, (0.0, 0.0))
    shifts = [way.shift_m for way in ways if way.shift_m is not None]
    shift = min(shifts, key=lambda one: math.hypot(one[0] - seen[0], one[1] - seen[1]))
    return Predicted(
        number=math.hypot(*shift),
        seen=math.hypot(*seen),
        unit="m",
        shift_m=shift,
        seen_shift_m=seen,
    )


def _seen_shift(leg: LegEvidence, start_off_m: Metres2) -> Metres2:
    """Give where the leg ended against its planned end, its start taken as this far off."""
    walked = leg.length_m * math.exp(leg.log_ratio) * unit_vector(leg.planned_deg + leg.turn_deg)
    planned = leg.length_m * unit_vector(leg.planned_deg)
    return (
        float(walked[0] - planned[0]) + start_off_m[0],
        float(walked[1] - planned[1]) + start_off_m[1],
    )


def _length(cause: Cause, ways: tuple[Expected, ...], leg: LegEvidence) -> Predicted:
    way = min(ways, key=lambda one: abs(one.log_ratio - leg.log_ratio))
    if cause.name in _RATIOS:
        return Predicted(number=math.exp(way.log_ratio), seen=math.exp(leg.log_ratio), unit="ratio")
    return _lengthened(way.log_ratio, leg)


def _shape(name: str, way: Expected, leg: LegEvidence) -> Predicted | None:
    if name in _ASIDE:
        return Predicted(number=way.aside_m, seen=leg.aside_m, unit="m", aside=True)
    shape = leg.shape
    if shape is None:
        return None
    if name == "veer":
        bend = shape.bend_deg
        return _turned(bend / 2.0, leg)
    # What the stretch comes to, as a turn of the whole leg.
    return _turned(way.turn_deg, leg)
