"""The walker's own card laid beside the course setter's: which leg of it is which."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from audit.geodesy.grids import CourseGrid
from audit.leg_card import CardLeg, LegCard
from audit.leg_card.points import end_name
from audit.leg_card.told_numbers import told_legs
from audit.leg_card.written_reference import WrittenReference, written_reference
from audit.plan import Plan, PlannedLeg
from audit.positions import Position
from audit.words import Sentence, sentence

_UNUSED = frozenset(
    {
        "plan-no-name",
        "plan-no-radius",
        "plan-grid-of-reference",
        "plan-grid-of-zone",
        "plan-grid-polar",
        "plan-no-start",
        "plan-no-end",
    }
)
"""Notes on reading a card that the comparison makes no use of: its name, radius, grid and ends."""
_SETTINGS = ("arrival_radius_m", "grid")


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnPoint:
    """A point as the walker's card gives it, on the grid of the course."""

    east_m: float
    north_m: float
    half_square_m: float
    given: str
    written: WrittenReference | None


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnLeg:
    """A leg of the course with what the walker's card says of it.

    ``start`` and ``end`` are None where the card gives no reference of its own.
    """

    card: CardLeg
    stated: PlannedLeg
    start: OwnPoint | None
    end: OwnPoint | None
    paces_per_100m: float | None
    angle_deg: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnCard:
    """The walker's card: its legs by the name of the course's leg, and what was assumed."""

    legs: Mapping[str, OwnLeg]
    notes: tuple[str, ...]


def beside_course(card: LegCard, own: Plan, course: Plan) -> OwnCard:
    """Lay a walker's card beside the course's."""
    legs, notes = own_legs(card, own, course)
    read = (note for note in own.notes if _is_used(note))
    notes = (*notes, *(sentence("plan-card-note", note=note) for note in read))
    return OwnCard(legs=legs, notes=notes)


def _is_used(note: str) -> bool:
    """Tell whether a note on reading a card is of what the comparison makes use of."""
    if not isinstance(note, Sentence):
        return True
    option = note.ident == "plan-option" and note.values["name"] in _SETTINGS
    return not option and note.ident not in _UNUSED


def own_legs(card: LegCard, own: Plan, course: Plan) -> tuple[dict[str, OwnLeg], tuple[str, ...]]:
    """Give the legs of the walker's card by the name of the course's leg, and notes.

    Legs go together by name; where no name is shared, by order.
    """
    named = {leg.name: leg for leg in own.legs}
    shared = [leg.name for leg in card.legs if leg.name in named]
    if shared:
        pairs = [(leg, named[leg.name]) for leg in card.legs if leg.name in named]
    else:
        pairs = list(zip(card.legs, own.legs, strict=False))
    notes: list[str] = []
    if not shared:
        notes.append(sentence("plan-card-otherwise"))
    lost = [leg.name for leg in own.legs if not any(leg is theirs for _, theirs in pairs)]
    if lost:
        notes.append(sentence("plan-card-lost", names=", ".join(lost)))
    missing = [leg.name for leg in card.legs if not any(leg is mine for mine, _ in pairs)]
    if missing:
        notes.append(sentence("plan-card-missing", legs=told_legs(missing)))
    legs = {
        mine.name: OwnLeg(
            card=mine,
            stated=theirs,
            start=_own_point(own, theirs.start, card.grid, course),
            end=_own_point(own, end_name(theirs), card.grid, course),
            paces_per_100m=own.paces_per_100m or card.paces_per_100m,
            angle_deg=own.grid_magnetic_angle_deg,
        )
        for mine, theirs in pairs
    }
    return legs, tuple(notes)


def _own_point(own: Plan, name: str, grid: CourseGrid, course: Plan) -> OwnPoint | None:
    """Give a point that the card has a reference for; one lent by the course is none of its own."""
    position = own.position(name)
    if position is None or _lent(position, course):
        return None
    try:
        east_m, north_m = grid.to_grid(position.longitude_deg, position.latitude_deg)
    except ValueError:
        return None
    return OwnPoint(
        east_m=east_m,
        north_m=north_m,
        half_square_m=position.half_square_m,
        given=position.given,
        written=written_reference(position, grid),
    )


def _lent(position: Position, course: Plan) -> bool:
    """Tell whether a position is the course's own record, not one that was written again."""
    return any(position is point.position for point in course.points)
