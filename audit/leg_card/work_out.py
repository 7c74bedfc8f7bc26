"""From the plan to the leg card: every number worked out, every disagreement found."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, field, replace

from audit.errors import InputRefusedError, Problem, refuse
from audit.geodesy.grids import CourseGrid, course_grid
from audit.leg_card.course_explains import JudgedLegs, judged_legs
from audit.leg_card.course_notes import course_notes
from audit.leg_card.finished_card import CardLeg, LegCard
from audit.leg_card.grid_fit import grid_fit
from audit.leg_card.leg_check import LegCheck
from audit.leg_card.legs import PointsSay, card_leg, leg_line, points_say, refusal
from audit.leg_card.namesakes import namesake_findings
from audit.leg_card.norths import Norths, work_out_norths
from audit.leg_card.pace_kind import pace_unit, step_note
from audit.leg_card.points import PlacedPoints, end_name, place_given_points, reckon_ends
from audit.leg_card.safety_bearing import safety_bearing
from audit.leg_card.sheet_fit import sheet_fit
from audit.leg_card.via_checks import via_notes
from audit.plan import Plan, PlannedLeg
from audit.settings import CardSettings, Settings


def work_out_card(
    plan: Plan, *, track_date: dt.date | None = None, settings: Settings | None = None
) -> LegCard:
    """Give the leg card of a plan, with every disagreement as a finding.

    ``track_date`` is the day of the walk where the plan has no date of its own.

    Raises
    ------
    InputRefusedError
        With every reason why no card can be made: no points or legs, an unknown grid,
        a leg without place or direction, a leg of more than 100 km, no date to compute a
        declination for where the plan gives no grid-magnetic angle.
    """
    return worked_out(plan, track_date=track_date, settings=settings)[0]


def worked_out(
    plan: Plan, *, track_date: dt.date | None = None, settings: Settings | None = None
) -> tuple[LegCard, tuple[LegCheck, ...]]:
    """Give the leg card, and of each leg what its numbers were held against.

    Raises
    ------
    InputRefusedError
        As `work_out_card` does.
    """
    settings = settings or Settings()
    grid, of_card, of_paces = _grid(plan), settings.card, settings.paces
    if not plan.points or not plan.legs:
        what = "points" if not plan.points else "legs"
        raise refuse(_file(plan), what, None, f"has no {what}", "Give at least two points")
    placed = place_given_points(plan, grid)
    if plan.points[0].name in placed.lost:
        raise InputRefusedError(placed.problems)
    norths = work_out_norths(plan, grid, track_date, of_card)
    reckon_ends(plan, grid, norths.angles, placed)
    built = _build_legs(plan, grid, norths, placed, of_card)
    problems = (*placed.problems, *built.problems)
    if problems:
        raise InputRefusedError(problems)
    checks = built.checks(plan, norths, of_card)
    judged = judged_legs(checks, norths, plan, grid, of_card)
    card = _card(plan, grid, norths, placed, built.legs, judged, of_card)
    rate = plan.paces_per_100m
    pace = None if rate is None else pace_unit(rate, of_paces)
    step = "" if pace is None else step_note(rate, pace, of_paces)
    notes = (*card.notes, *via_notes(checks), *([step] if step else []))
    return replace(card, pace=pace, notes=notes), judged.checks


def _card(
    plan: Plan,
    grid: CourseGrid,
    norths: Norths,
    placed: PlacedPoints,
    legs: list[CardLeg],
    judged: JudgedLegs,
    settings: CardSettings,
) -> LegCard:
    points = tuple(placed.points.values())
    grid_findings, grid_notes = grid_fit(points[0], grid, settings)
    declination = norths.declination
    return LegCard(
        name=plan.name,
        grid=grid,
        date=norths.date,
        date_source=norths.date_source,
        angles=norths.angles,
        angle_source=norths.source,
        declination_deg=declination.degrees if declination else None,
        declination_sd_deg=declination.sd_deg if declination else None,
        model_grid_magnetic_angle_deg=norths.model_angle_deg,
        model=declination.model if declination else "",
        points=points,
        legs=tuple(legs),
        paces_per_100m=plan.paces_per_100m,
        arrival_radius_m=plan.arrival_radius_m,
        order=plan.order,
        safety=safety_bearing(plan, norths.angles),
        findings=(
            *grid_findings,
            *judged.of_norths,
            *sheet_fit(plan, points, grid),
            *namesake_findings(plan, placed.points, grid),
            *judged.of_legs,
        ),
        notes=(
            *plan.notes,
            *grid_notes,
            *norths.notes,
            *placed.notes,
            *course_notes(points, grid, norths, plan.arrival_radius_m, settings),
        ),
    )


@dataclass(slots=True)
class _BuiltLegs:
    """Legs of the card, with their leg of the plan and what its points say, None if reckoned."""

    legs: list[CardLeg] = field(default_factory=list)
    stated: list[tuple[PlannedLeg, PointsSay | None]] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)

    def checks(self, plan: Plan, norths: Norths, settings: CardSettings) -> tuple[LegCheck, ...]:
        """Give every leg with all that its numbers are held against."""
        return tuple(
            LegCheck(
                leg=leg,
                start=worked.start,
                end=worked.end,
                said=said,
                distance_m=worked.distance_m,
                angles=norths.angles,
                angle_doubt_deg=norths.angle_doubt_deg(settings),
                paces_per_100m=plan.paces_per_100m,
                settings=settings,
                others=tuple(other for other in self.legs if other is not worked),
            )
            for worked, (leg, said) in zip(self.legs, self.stated, strict=True)
        )


def _build_legs(
    plan: Plan, grid: CourseGrid, norths: Norths, placed: PlacedPoints, settings: CardSettings
) -> _BuiltLegs:
    """Build the legs whose ends are placed."""
    built = _BuiltLegs()
    for number, leg in enumerate(plan.legs):
        start, end = placed.points.get(leg.start), placed.points.get(end_name(leg))
        if start is None or end is None:
            continue
        try:
            line = leg_line(leg, start, end, grid)
        except ValueError as error:
            rule, remedy = f"has a via that cannot be used: {error}", "Check its position"
            built.problems.append(_leg_problem(plan, leg.name, rule, remedy))
            continue
        said = points_say(leg, start, end, line, settings)
        rule, remedy = refusal(leg, said, plan, settings)
        if rule:
            built.problems.append(_leg_problem(plan, leg.name, rule, remedy))
            continue
        built.legs.append(card_leg(leg, (start, end), line, said, plan, norths.angles, settings))
        built.stated.append((leg, None if number in placed.reckoning else said))
    return built


def _grid(plan: Plan) -> CourseGrid:
    try:
        return course_grid(plan.grid)
    except ValueError as error:
        raise refuse(
            _file(plan),
            "course, grid",
            None,
            f"cannot be used: {error}",
            'Write "auto" for the UTM zone of the first point',
        ) from error


def _leg_problem(plan: Plan, leg: str, rule: str, remedy: str) -> Problem:
    return Problem(file=_file(plan), place=f"leg {leg}", value="", rule=rule, remedy=remedy)


def _file(plan: Plan) -> str:
    return plan.source or "the plan"
