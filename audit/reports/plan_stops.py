"""A plan as places in the order of the walk, for forms that hold nothing else."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from audit.leg_card.finished_card import CardLeg, CardPoint, LegCard
from audit.leg_card.leg_pieces import LegPiece, leg_pieces
from audit.plan import Plan
from audit.reports import digits
from audit.reports.card_words import azimuth
from audit.reports.plan_copy import (
    Lost,
    PlanCopy,
    is_reckoned,
    legs_with,
    lost_points,
    lost_settings,
    named_legs,
    setting_options,
)
from audit.words import sentence

DECIMALS = 9
"""Of degrees: a tenth of a millimetre."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanStop:
    """A place of the walk; one without a name only shapes the leg.

    ``words`` say what leads there, for who reads it on a receiver.
    """

    name: str | None
    longitude_deg: float
    latitude_deg: float
    words: str = ""


def plan_stops(plan: Plan, card: LegCard) -> Iterator[PlanStop]:
    """Give the places in order; ``card`` has the ends that are only dead reckoned."""
    here: CardPoint | None = None
    for leg, worked in zip(plan.legs, card.legs, strict=True):
        if here is None or here.name != worked.start.name:
            yield _stop(worked.start)
        # Whoever follows a line sets each piece of it: the straight way is not to be walked.
        pieces = {one.last: one for one in leg_pieces(worked, card.angles, card.paces_per_100m)}
        for place, via in enumerate(leg.via, start=1):
            yield PlanStop(
                name=None,
                longitude_deg=via.longitude_deg,
                latitude_deg=via.latitude_deg,
                words=_piece_words(worked, pieces[place]) if place in pieces else "",
            )
        yield _stop(worked.end, _leg_words(worked, pieces[len(leg.via) + 1]))
        here = worked.end


def _stop(point: CardPoint, words: str = "") -> PlanStop:
    return PlanStop(
        name=point.name,
        longitude_deg=point.longitude_deg,
        latitude_deg=point.latitude_deg,
        words=words,
    )


def _leg_words(leg: CardLeg, last: LegPiece) -> str:
    said = _piece_words(leg, last)
    return f"{said}. {leg.note}" if leg.note else said


def _piece_words(leg: CardLeg, piece: LegPiece) -> str:
    said = f"Leg {leg.name}: {azimuth(piece.magnetic.degrees)} magnetic"
    return f"{said}, {digits.whole(piece.distance_m)} m"


def stops_copy(text: str, plan: Plan) -> PlanCopy:
    """Give the copy with all that places in order do not say."""
    options = setting_options(plan)
    del options["name"]  # both forms have a place for it
    return PlanCopy(text=text, lost=tuple(_lost(plan)), options=options)


_STATED = ("grid_azimuth", "magnetic_azimuth", "true_azimuth", "distance_m", "paces", "note")


def _lost(plan: Plan) -> Iterator[Lost]:
    yield from lost_settings(plan)
    yield from lost_points(plan)
    for what in _STATED:
        legs = legs_with(plan, what)
        if legs:
            words = sentence(f"copy-{what.replace('_', '-')}", legs=legs)
            half_step = f": {what.removesuffix('_m')}_half_step"
            yield Lost(words=words, differs=(f": {what}", half_step))
    if any(point.position.half_square_m for point in plan.points):
        yield Lost(words=sentence("copy-well"), differs=("precision of",))
    reckoned = [leg.name for leg in plan.legs if is_reckoned(plan, leg)]
    if reckoned:
        words = sentence("copy-reckoned", legs=named_legs(reckoned))
        yield Lost(words=words, differs=("points",))
    yield from _lost_order(plan)


def _lost_order(plan: Plan) -> Iterator[Lost]:
    if any(leg.name != str(number) for number, leg in enumerate(plan.legs, start=1)):
        yield Lost(words=sentence("copy-names"), differs=(": name",))
    jumps = [after.name for before, after in pairwise(plan.legs) if before.end != after.start]
    if jumps:
        words = sentence("copy-jumps", legs=named_legs(jumps))
        yield Lost(words=words, differs=("number of legs",))
