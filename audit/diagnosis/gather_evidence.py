"""From the measurements of a walk to the evidence of its legs."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

import numpy as np

from audit.azimuths import MagneticAzimuth
from audit.diagnosis.ground import slope_of_leg
from audit.diagnosis.leg_evidence import LegEvidence, Metres2
from audit.diagnosis.line_shape import LineShape, line_shape
from audit.diagnosis.on_paper import OnPaper
from audit.diagnosis.own_wander import against_own_wander, with_silence
from audit.leg_card import CardLeg, LegCard
from audit.leg_card.rounding import azimuth_rounding_deg
from audit.measurement.leg_details import Bypass
from audit.measurement.leg_measures import LegAudit, LegMeasures
from audit.settings import DiagnosisSettings
from audit.units import FloatArray, unit_vector

_UNKNOWN = 1.0
"""Standard error of a logarithm of distance of which nothing is known."""
_OF_A_BEND = 1.5


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WalkFacts:
    """What is known of a walk beside its measurements.

    Attributes
    ----------
    azimuths_set, paces_counted : dict
        By name of leg, from the walker's log.
    on_paper : dict
        By name of leg, from the walker's own card.
    under_way : frozenset of int
        Legs that the recording began on.
    noise_m : float
        Receiver noise.
    fall : float array (east, north), or None
        The direction in which the one slope of the course falls.
    """

    azimuths_set: dict[str, MagneticAzimuth] = field(default_factory=dict)
    paces_counted: dict[str, float] = field(default_factory=dict)
    on_paper: Mapping[str, OnPaper] = field(default_factory=dict)
    under_way: frozenset[int] = frozenset()
    noise_m: float = 4.0
    fall: FloatArray | None = None


def gather_evidence(
    legs: tuple[LegAudit, ...],
    card: LegCard,
    facts: WalkFacts | None = None,
    settings: DiagnosisSettings | None = None,
) -> tuple[LegEvidence, ...]:
    """Give the evidence of every leg that was walked, in the order of the plan."""
    facts, settings = facts or WalkFacts(), settings or DiagnosisSettings()
    walked = [
        _with_papers(_leg_evidence(number, legs, card, facts, settings), leg.card, facts)
        for number, leg in enumerate(legs)
        if leg.measures is not None
    ]
    return against_own_wander(walked)


def _leg_evidence(
    number: int,
    legs: tuple[LegAudit, ...],
    card: LegCard,
    facts: WalkFacts,
    settings: DiagnosisSettings,
) -> LegEvidence:
    leg = legs[number]
    measures = leg.measures
    if measures is None:
        message = "only a leg that was walked has evidence"
        raise ValueError(message)
    under_way = number in facts.under_way
    slope = slope_of_leg(measures, leg.card, facts.fall)
    return LegEvidence(
        leg=number,
        turn_deg=measures.azimuth_error_deg,
        turn_sd_deg=measures.heading.own_sd_deg,
        log_ratio=float(np.log(max(measures.distance_ratio, 1e-3))),
        log_ratio_sd=_UNKNOWN if under_way else _ratio_sd(measures),
        planned_magnetic_deg=leg.card.magnetic.degrees,
        grid_magnetic_angle_deg=card.angles.grid_magnetic_angle_deg,
        convergence_deg=card.angles.convergence_deg,
        confidence=leg.confidence,
        stale_turn_deg=stale_turn_deg(card),
        planned_deg=leg.card.azimuth.degrees,
        length_m=leg.card.distance_m,
        bent=len(leg.card.line) > 2,
        another_way_m=None if measures.line_followed else measures.path_m,
        end_m=(leg.card.end.east_m, leg.card.end.north_m),
        half_square_m=leg.card.end.half_square_m,
        start_off_m=measures.ledger.inherited,
        under_way=under_way,
        other_magnetic_deg=other_azimuths(card, number, settings),
        other_points_m=other_points(card, leg.card),
        went_on=_went_on(number, legs, settings),
        next_off_m=_next_off_m(number, legs, settings),
        next_m=legs[number + 1].card.distance_m if number + 1 < len(legs) else 0.0,
        passed_m=_passed_m(measures, leg.card, settings),
        shape=_shape(measures, leg.card, facts.noise_m, settings),
        bypasses=_bypasses(measures, leg.card, settings),
        arrived=measures.miss_m <= card.arrival_radius_m,
        walked_up=_walked_up(measures),
        aside_m=_aside_m(measures),
        grade=None if slope is None else slope.grade,
        slope_ratio=None if slope is None else slope.ratio,
        downhill_right=None if slope is None else slope.downhill_right,
        half_interval_deg=measures.heading.told_half_95_deg,
    )


def _with_papers(evidence: LegEvidence, leg: CardLeg, facts: WalkFacts) -> LegEvidence:
    """Add what stands on paper: the walker's log, and his own card."""
    setting = _setting(leg, facts)
    return replace(
        evidence,
        set_turn_deg=None if setting is None else leg.magnetic.turn_to(setting),
        set_rounding_deg=0.0 if setting is None else _rounding_deg(setting, leg),
        log_count_ratio=_count_ratio(facts.paces_counted.get(leg.name), leg.paces),
        on_paper=None if len(leg.line) > 2 else facts.on_paper.get(leg.name),
    )


def _ratio_sd(measures: LegMeasures) -> float:
    """Give the standard error of the logarithm of the distance ratio."""
    return measures.straight_sd_m / max(measures.straight_m, 1.0)


def _setting(leg: CardLeg, facts: WalkFacts) -> MagneticAzimuth | None:
    """Give the azimuth set by the log; a leg of several pieces has no one that could be set."""
    return None if len(leg.line) > 2 else facts.azimuths_set.get(leg.name)


def _rounding_deg(setting: MagneticAzimuth, leg: CardLeg) -> float:
    """Give how finely an azimuth of the log and that of the card are written, together."""
    azimuths = (setting, leg.magnetic)
    return math.hypot(*(azimuth_rounding_deg(one.degrees) for one in azimuths))


def _count_ratio(paces: float | None, planned: float | None) -> float | None:
    """Give the logarithm of paces counted over paces planned."""
    return float(np.log(paces / planned)) if paces and planned else None


def stale_turn_deg(card: LegCard) -> float | None:
    """Give the model's angle less the plan's: what an old angle on the map turns a leg by."""
    if card.angle_source != "plan" or card.model_grid_magnetic_angle_deg is None:
        return None
    return card.model_grid_magnetic_angle_deg - card.angles.grid_magnetic_angle_deg


def other_azimuths(
    card: LegCard, number: int, settings: DiagnosisSettings
) -> tuple[tuple[float, float], ...]:
    """Give what the card says for the other legs: the legs before and after weigh most."""
    others = [n for n in range(len(card.legs)) if n != number]
    near = [n for n in others if abs(n - number) == 1]
    far = [n for n in others if abs(n - number) > 1]
    each, among = settings.neighbour_weights
    weight = dict.fromkeys(near, each) | {n: among / len(far) for n in far}
    return tuple((card.legs[n].magnetic.degrees, weight[n]) for n in others)


def other_points(card: LegCard, leg: CardLeg) -> tuple[Metres2, ...]:
    """Give the other known points that a walker might take for the end, from the end."""
    return tuple(
        (point.east_m - leg.end.east_m, point.north_m - leg.end.north_m)
        for point in card.points
        if point is not leg.end and point is not leg.start and not point.dead_reckoned
    )


def _went_on(number: int, legs: tuple[LegAudit, ...], settings: DiagnosisSettings) -> bool | None:
    """Say whether the next leg begins where this one ended."""
    here = legs[number].measures
    ahead = legs[number + 1].measures if number + 1 < len(legs) else None
    if here is None or ahead is None:
        return None
    east = ahead.start.east_m - here.claim.east_m
    north = ahead.start.north_m - here.claim.north_m
    return float(np.hypot(east, north)) <= settings.went_on_m


def _next_off_m(
    number: int, legs: tuple[LegAudit, ...], settings: DiagnosisSettings
) -> Metres2 | None:
    """Give the way walked on the next leg less the planned one; None where it says nothing."""
    if not _went_on(number, legs, settings):
        return None
    ahead = legs[number + 1]
    if ahead.measures is None or len(ahead.card.line) > 2:
        return None
    walked = ahead.measures.straight_m * unit_vector(
        ahead.card.azimuth.degrees + ahead.measures.azimuth_error_deg
    )
    east, north = walked - ahead.card.distance_m * unit_vector(ahead.card.azimuth.degrees)
    return float(east), float(north)


def _passed_m(measures: LegMeasures, leg: CardLeg, settings: DiagnosisSettings) -> float | None:
    """Give how far the walker went on after passing close by the point; None if he did not."""
    curve = measures.own_cross_track
    forward = unit_vector(leg.azimuth.degrees)
    ahead = np.array(
        [
            leg.end.east_m - measures.start.east_m,
            leg.end.north_m - measures.start.north_m,
        ]
    )
    along = float(ahead @ forward)
    right = float(ahead[0] * forward[1] - ahead[1] * forward[0])
    away = np.hypot(curve.along_m - along, curve.offset_m - right)
    nearest = int(np.argmin(away))
    on = float(np.hypot(curve.along_m[-1] - along, curve.offset_m[-1] - right))
    if away[nearest] > settings.passed_m or on < settings.passed_before_m:
        return None
    return on


def _bypasses(
    measures: LegMeasures, leg: CardLeg, settings: DiagnosisSettings
) -> tuple[Bypass, ...]:
    """Give the obstacles walked round on a straight leg, where its line can be seen."""
    unseen = _line_unseen(measures, leg, settings)
    return () if unseen or measures.details is None else measures.details.bypasses


def _line_unseen(measures: LegMeasures, leg: CardLeg, settings: DiagnosisSettings) -> bool:
    """Say whether a leg was no straight one, or too much of it lies in gaps to show its line."""
    return len(leg.line) > 2 or measures.gap_share > settings.shape_gaps_most


def _walked_up(measures: LegMeasures) -> bool:
    search = None if measures.details is None else measures.details.search
    return search is not None and search.walked_up


def _aside_m(measures: LegMeasures) -> float:
    """Give the ledger's detour as metres right of the walked heading."""
    right = unit_vector(measures.heading.azimuth.degrees + 90.0)
    return float(right @ np.array(measures.ledger.detour))


def _shape(
    measures: LegMeasures, leg: CardLeg, noise_m: float, settings: DiagnosisSettings
) -> LineShape | None:
    """Describe how a straight leg was held; too much of it in gaps shows nothing."""
    if _line_unseen(measures, leg, settings):
        return None
    curve, details = measures.own_cross_track, measures.details
    # The curve's own frame will do: along is its north, right its east.
    walk = np.column_stack([curve.offset_m, curve.along_m])
    shape = line_shape(walk, noise_m, settings.line_shape)
    if shape is not None:
        shape = with_silence(shape, measures.gap_share / settings.shape_gaps_most)
    thirds = None if details is None else details.thirds
    if shape is None or thirds is None:
        return shape
    # The middles of the first and the last third lie two thirds of an even bend apart.
    return replace(
        shape,
        bend_deg=_OF_A_BEND * thirds.drift_deg,
        bend_sd_deg=_OF_A_BEND * thirds.drift_sd_deg,
    )
