"""What was walked on no leg: points passed there, and minutes that nothing accounts for."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from audit.debriefing.doubts import end_to_settle
from audit.diagnosis.order_of_passing import OrdersOfPassing, PassedInOrder
from audit.diagnosis.passages import Passage
from audit.leg_card import LegCard
from audit.matching.leg_match import CleanTrack
from audit.measurement.leg_measures import LegAudit, Span
from audit.measurement.measure_walk import WalkMeasures
from audit.settings import QualitySettings
from audit.units import FloatArray
from audit.words import sentence
from audit.words.figures import Number


@dataclass(frozen=True, slots=True, kw_only=True)
class EndPassed:
    """The end of a skipped leg, and the times that it was passed, in their order."""

    leg: int
    point: str
    passages: tuple[Passage, ...]

    @property
    def nearest(self) -> Passage:
        """The passage that came nearest to it."""
        return min(self.passages, key=lambda one: one.away_m)


@dataclass(frozen=True, slots=True, kw_only=True)
class OnNoLeg:
    """What was walked of a course on no leg that was found.

    Attributes
    ----------
    passed : tuple of EndPassed
        Ends of skipped legs that were passed within the arrival radius, in the order of the
        plan, while no other leg was walked.
    elsewhere : tuple of str
        Ends of other legs that were not reached on them, and that the recording comes to within
        the arrival radius at some other time since the leg before: out of their turn, or on the
        way of another leg. A class may count them.
    doubt : str
        How many minutes belong to no leg, and what would settle it; "" where they are few.
    """

    passed: tuple[EndPassed, ...] = ()
    elsewhere: tuple[str, ...] = ()
    doubt: str = ""


def on_no_leg(
    measured: WalkMeasures,
    card: LegCard,
    clean: CleanTrack,
    orders: OrdersOfPassing,
    settings: QualitySettings,
) -> OnNoLeg:
    """Look for points not reached on their legs, and for the time between the ends of the course.

    That time is of interest where a leg is skipped.
    """
    legs = measured.legs
    unmet = [n for n, leg in enumerate(legs) if leg.measures is None or not leg.measures.found]
    if not unmet:
        return OnNoLeg()
    left = [n for n in unmet if legs[n].status == "skipped" and not legs[n].before_recording]
    order = orders.within(card.arrival_radius_m)
    passed = tuple(
        EndPassed(leg=number, point=end.name, passages=found)
        for number in left
        if (found := order.come_by(number, end := legs[number].card.end))
        and not _at_the_start(number, legs, card)
    )
    in_turn = {one.leg for one in passed}
    others = [number for number in unmet if number not in in_turn]
    told = bool(left) and clean.timed
    return OnNoLeg(
        passed=passed,
        elsewhere=tuple(_come_to_at_all(others, legs, card, order)),
        doubt=_doubt(measured, order, clean, passed, settings) if told else "",
    )


def _come_to_at_all(
    numbers: Sequence[int], legs: Sequence[LegAudit], card: LegCard, order: PassedInOrder
) -> list[str]:
    """Name the ends of legs that were come to at some time since the leg before."""
    found = []
    for number in numbers:
        end = legs[number].card.end
        # Nobody knows the turn of a point that a free order leaves out.
        whole = card.order == "free" and legs[number].measures is None
        came = order.since_last_leg(number, end, whole=whole)
        if came and not _at_the_start(number, legs, card):
            found.append(end.name)
    return found


def _at_the_start(number: int, legs: Sequence[LegAudit], card: LegCard) -> bool:
    """Tell whether a leg ends where the course begins, and the walker may only have set out."""
    start, end = card.legs[0].start, legs[number].card.end
    apart_m = float(np.hypot(end.east_m - start.east_m, end.north_m - start.north_m))
    walked_before = any(leg.measures is not None for leg in legs[:number])
    return apart_m <= 2.0 * card.arrival_radius_m and not walked_before


def _doubt(
    measured: WalkMeasures,
    order: PassedInOrder,
    clean: CleanTrack,
    passed: Sequence[EndPassed],
    settings: QualitySettings,
) -> str:
    """Say how much of the time between the ends of the course belongs to no leg, where much."""
    portions = [leg for leg in measured.match.legs if leg.status == "walked"]
    begins = [leg.start_s for leg in portions if leg.start_s is not None]
    ends = [leg.claim_s for leg in portions if leg.claim_s is not None]
    ends += [one.nearest.first_s for one in passed]
    if not begins or not ends:
        return ""
    begins += [one.last_s for one in order.of_start[:1]]
    begin_s, end_s = min(begins), max(ends)
    lost_s = sum(_within(span, begin_s, end_s) for span in measured.spans if _of_no_leg(span))
    if lost_s <= settings.no_leg_share * (end_s - begin_s) or lost_s < settings.no_leg_s:
        return ""
    pins = _pins(measured, passed, clean)
    return sentence(
        "doubt-no-leg",
        lost=Number(value=lost_s / 60.0),
        whole=Number(value=(end_s - begin_s) / 60.0),
        settle=sentence("doubt-settle-no-leg", pins=" ".join(pins)) if pins else "",
    )


def _of_no_leg(span: Span) -> bool:
    """Tell whether a span was walked on no leg; a rest at a point is between two."""
    return span.leg is None and span.kind != "at-point"


def _within(span: Span, begin_s: float, end_s: float) -> float:
    return max(min(span.end_s, end_s) - max(span.start_s, begin_s), 0.0)


def _pins(measured: WalkMeasures, passed: Sequence[EndPassed], clean: CleanTrack) -> list[str]:
    """Give the claims that would settle it: where points were passed in the order of the plan."""
    pins, since_s = [], -np.inf
    for one in passed:
        came_s = _came_s(one.nearest, measured.match.halts)
        if came_s > since_s:
            name = measured.legs[one.leg].card.name
            pins.append(end_to_settle("claim", name, came_s, clean))
            since_s = came_s
    return pins


def _came_s(passage: Passage, halts: FloatArray) -> float:
    """Give when the walker came to rest at a point, the longest if often, or was nearest to it."""
    rests = [(end - start, start) for start, end in halts if _meets(passage, start, end)]
    return max(float(max(rests)[1]), passage.first_s) if rests else passage.nearest_s


def _meets(passage: Passage, start_s: float, end_s: float) -> bool:
    return start_s <= passage.last_s and end_s >= passage.first_s
