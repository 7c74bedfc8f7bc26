"""The card to carry: what the walker sets and counts on each leg, and what rounding costs him."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from audit.azimuths import GridAzimuth, MagneticAzimuth
from audit.geodesy.shown_references import shown_reference
from audit.leg_card.bezel import Clicks, clicks_for_angle, clicks_to_set
from audit.leg_card.check_plan import PlanCheck, check_plan
from audit.leg_card.doubted import (
    Doubted,
    Turned,
    by_the_plans_angle,
    doubted_numbers,
    turned_azimuth,
)
from audit.leg_card.finished_card import CardFinding, CardLeg, CardPoint, LegCard
from audit.leg_card.leg_pieces import LegPiece, leg_pieces, walked_m
from audit.leg_card.pace_kind import PaceKind
from audit.leg_card.profiles import Profile, way_of
from audit.moments import years_between
from audit.plan import Plan, PlannedLeg
from audit.settings import Settings
from audit.units import direction_degrees
from audit.walking_times import WALKING_RULES
from audit.words import sentence


@dataclass(frozen=True, slots=True, kw_only=True)
class LegTime:
    """The time of a leg, or of all, by one of the named rules."""

    rule: str
    seconds: float


@dataclass(frozen=True, slots=True, kw_only=True)
class CarriedPiece:
    """A straight piece of a leg, which is set and counted by itself.

    Attributes
    ----------
    start, end : str
        Names of the point or via position at either end.
    start_reference, end_reference : str
        As the map in hand is lettered.
    back : MagneticAzimuth
        To set for the way back.
    clicks : tuple of Clicks
        The nearest setting of the bezel, both where two are equally near.
    turned : "magnetic", "grid" or ""
        Which of its azimuths was got from the other by the grid-magnetic angle.
    between : GridAzimuth
        From the one position to the other, whatever the plan says of the way between them.
    doubted : frozenset of "magnetic", "grid", "distance" and "paces"
        Numbers that a check of the plan does not bear out, and what was made of them.
    """

    piece: LegPiece
    start: str
    end: str
    start_reference: str
    end_reference: str
    back: MagneticAzimuth
    clicks: tuple[Clicks, ...]
    turned: Turned
    between: GridAzimuth
    doubted: frozenset[Doubted]


@dataclass(frozen=True, slots=True, kw_only=True)
class CarriedLeg:
    """One leg of the card to carry.

    Attributes
    ----------
    start_reference, end_reference : str
        As the map in hand is lettered.
    pieces : tuple of CarriedPiece
        What is set and counted: one of a straight leg, several of one along via positions.
    back : MagneticAzimuth
        To set for the straight way back.
    ground : Profile or None
        Heights along the leg; None where they are not known.
    times : tuple of LegTime
        By every rule, without rests.
    clicks : tuple of Clicks
        The nearest setting of the bezel to the straight way, both where two are equally near.
    """

    card: CardLeg
    start_reference: str
    end_reference: str
    pieces: tuple[CarriedPiece, ...]
    back: MagneticAzimuth
    ground: Profile | None
    times: tuple[LegTime, ...]
    clicks: tuple[Clicks, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CarriedCard:
    """The card to carry.

    Attributes
    ----------
    card : LegCard
    findings : tuple of CardFinding
        What a check of the plan finds: with any of them the card should not be carried yet.
    pace : "single" or "double"
    click_deg : float
        A click of the bezel.
    no_side_m : float
        Whoever ends nearer than this to a point has no side to look to.
    angle_clicks : tuple of Clicks
        The grid-magnetic angle alone, from the grid azimuth of the first leg's first piece as set.
    safety_clicks : tuple of Clicks
    angle_date : date or None
        Of what day the angle is: the map's, or the day of the walk where it is computed.
    angle_dated : str
        That day, or year, as the plan writes it; "" where it is not known.
    angle_age_years : float or None
        On the day of the walk.
    angle_too_old, angle_in_doubt : bool
        Whether nobody should go by an angle of that age; whether it is to be put right, for
        that or for a finding, and with it all that it turned.
    in_true : bool
        Whether the plan gives true azimuths: then the card tells them too.
    heights_from : str
        The file of the heights; "" where there is none.
    distance_m, climb_m, descent_m : float
        Of all legs, as they are walked; climb and descent None unless the heights of all are known.
    times : tuple of LegTime
        Of all legs.
    """

    card: LegCard
    findings: tuple[CardFinding, ...]
    pace: PaceKind
    click_deg: float
    no_side_m: float
    legs: tuple[CarriedLeg, ...]
    angle_clicks: tuple[Clicks, ...]
    safety_clicks: tuple[Clicks, ...]
    angle_date: dt.date | None
    angle_dated: str
    angle_age_years: float | None
    angle_too_old: bool
    angle_in_doubt: bool
    in_true: bool
    heights_from: str
    distance_m: float
    climb_m: float | None
    descent_m: float | None
    times: tuple[LegTime, ...]


def carried_card(
    plan: Plan,
    *,
    grounds: Mapping[str, Profile | None] | None = None,
    heights_from: str = "",
    click_deg: float | None = None,
    pace: PaceKind | None = None,
    settings: Settings | None = None,
) -> CarriedCard:
    """Give the card to carry of a plan.

    ``grounds`` holds the profile of each leg by its name; ``pace`` says which pace is
    counted where the pace count itself leaves it open.

    Raises
    ------
    InputRefusedError
        Where no card can be made of the plan.
    """
    settings = settings or Settings()
    click = settings.carried_card.click_deg if click_deg is None else click_deg
    checked = check_plan(plan, settings=settings)
    card, known, oldest = checked.card, grounds or {}, settings.carried_card.too_old_years
    date = plan.grid_magnetic_angle_date if card.angle_source == "plan" else card.date
    age = years_between(date, card.date) if date and card.date else None
    too_old = card.angle_source == "plan" and age is not None and age > oldest
    in_doubt = too_old or card.angle_at_fault
    legs = tuple(
        _carried_leg(checked, leg, stated, known.get(leg.name), click, in_doubt=in_doubt)
        for leg, stated in zip(card.legs, plan.legs, strict=True)
    )
    profiles = [leg.ground for leg in legs]
    all_known = all(profile is not None for profile in profiles)
    safety, first = card.safety, legs[0].pieces[0].piece
    return CarriedCard(
        card=card,
        findings=checked.findings,
        pace=pace or card.pace or "double",
        click_deg=click,
        no_side_m=settings.carried_card.no_side_m,
        legs=legs,
        angle_clicks=clicks_for_angle(
            first.azimuth.degrees,
            _wanted(card, legs[0].pieces[0]),
            click,
            angle_deg=card.angles.grid_magnetic_angle_deg,
        ),
        safety_clicks=() if safety is None else clicks_to_set(safety.magnetic, click),
        angle_date=date,
        angle_dated=_dated(plan, card),
        angle_age_years=age,
        angle_too_old=too_old,
        angle_in_doubt=in_doubt,
        in_true=any(leg.true_azimuth is not None for leg in plan.legs),
        heights_from=heights_from,
        distance_m=sum(walked_m(leg.card) for leg in legs),
        climb_m=sum(one.climb_m for one in profiles if one) if all_known else None,
        descent_m=sum(one.descent_m for one in profiles if one) if all_known else None,
        times=_times_of_all(legs),
    )


def _times_of_all(legs: Sequence[CarriedLeg]) -> tuple[LegTime, ...]:
    return tuple(
        LegTime(rule=rule.name, seconds=sum(leg.times[number].seconds for leg in legs))
        for number, rule in enumerate(WALKING_RULES)
    )


def _dated(plan: Plan, card: LegCard) -> str:
    if card.angle_source == "plan":
        return plan.grid_magnetic_angle_dated
    return "" if card.date is None else card.date.isoformat()


def _wanted(card: LegCard, piece: CarriedPiece) -> MagneticAzimuth:
    """Give what the angle alone makes of a grid azimuth where the plan's own sum is wrong."""
    if "magnetic" in piece.doubted:
        return card.angles.magnetic(piece.piece.azimuth)
    return piece.piece.magnetic


def _carried_leg(
    checked: PlanCheck,
    leg: CardLeg,
    stated: PlannedLeg,
    ground: Profile | None,
    click_deg: float,
    *,
    in_doubt: bool,
) -> CarriedLeg:
    way, card = way_of(leg, ground), checked.card
    return CarriedLeg(
        card=leg,
        start_reference=_reference(card, leg.start),
        end_reference=_reference(card, leg.end),
        pieces=_pieces(checked, leg, stated, click_deg, in_doubt=in_doubt),
        back=leg.magnetic.back(),
        ground=ground,
        times=tuple(LegTime(rule=rule.name, seconds=rule.seconds(way)) for rule in WALKING_RULES),
        clicks=clicks_to_set(leg.magnetic, click_deg),
    )


def _pieces(
    checked: PlanCheck, leg: CardLeg, stated: PlannedLeg, click_deg: float, *, in_doubt: bool
) -> tuple[CarriedPiece, ...]:
    card = checked.card
    vias = [
        shown_reference(via.longitude_deg, via.latitude_deg, via.half_square_m, card.grid)
        for via in stated.via
    ]
    names = [
        leg.start.name,
        *(sentence("card-via", number=number) for number in range(1, len(vias) + 1)),
        leg.end.name,
    ]
    references = [_reference(card, leg.start), *vias, _reference(card, leg.end)]
    straight = len(names) == 2
    turned = turned_azimuth(stated, straight=straight)
    if in_doubt and straight and not turned and by_the_plans_angle(stated, card.angles):
        turned = "magnetic"
    doubted = doubted_numbers(stated, checked.findings, straight=straight)
    return tuple(
        CarriedPiece(
            piece=one,
            start=names[one.first],
            end=names[one.last],
            start_reference=references[one.first],
            end_reference=references[one.last],
            back=one.magnetic.back(),
            clicks=clicks_to_set(one.magnetic, click_deg),
            turned=turned,
            between=_between(leg, one),
            doubted=doubted,
        )
        for one in leg_pieces(leg, card.angles, card.paces_per_100m)
    )


def _between(leg: CardLeg, piece: LegPiece) -> GridAzimuth:
    """Give the azimuth between the ends of a piece as they lie, that of the card without one."""
    east_m, north_m = (float(one) for one in leg.line[piece.last] - leg.line[piece.first])
    if east_m == north_m == 0.0:
        return piece.azimuth
    return GridAzimuth(direction_degrees(east_m, north_m))


def _reference(card: LegCard, point: CardPoint) -> str:
    half_m = 0.0 if point.dead_reckoned else point.half_square_m
    return shown_reference(point.longitude_deg, point.latitude_deg, half_m, card.grid)
