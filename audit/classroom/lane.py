"""A lane: a plan by its name, worked out, and what is told of it."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

import numpy as np

from audit.classroom.lane_result import LaneLeg, LanePoint, LaneResult
from audit.classroom.standard_fit import other_order
from audit.forecast.course_forecast import forecast_course
from audit.grading.fingerprint import fingerprint
from audit.leg_card import LegCard, work_out_card
from audit.plan import Plan
from audit.settings import ForecastSettings, Settings
from audit.standard import Standard
from audit.units import FloatArray
from audit.words import sentence
from audit.words.figures import Length


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Lane:
    """One of the courses that a class walked.

    Attributes
    ----------
    points : float array, shape (k, 2)
        East and north of the start and of the end of each leg.
    """

    name: str
    plan: Plan
    card: LegCard
    points: FloatArray


def lane_of(name: str, plan: Plan, day: dt.date | None, settings: Settings | None = None) -> Lane:
    """Work a lane out for a day; the plan's own day comes first."""
    card = work_out_card(plan, track_date=day, settings=settings)
    ends = [card.legs[0].start, *(leg.end for leg in card.legs)]
    points = np.array([[point.east_m, point.north_m] for point in ends])
    points.flags.writeable = False
    return Lane(name=name, plan=plan, card=card, points=points)


def lane_result(
    lane: Lane, standard: Standard, version: str, settings: ForecastSettings
) -> LaneResult:
    """Give what is told of a lane before anyone's walk."""
    card = lane.card
    free = lane.plan.order == "free"  # then no leg is planned, and nothing adds up
    return LaneResult(
        name=lane.name,
        plan_file=lane.plan.source,
        course=card.name,
        grid=card.grid.code,
        date=None if card.date is None else card.date.isoformat(),
        grid_magnetic_angle_deg=float(card.angles.grid_magnetic_angle_deg),
        arrival_radius_m=float(card.arrival_radius_m),
        points=tuple(
            LanePoint(
                name=point.name,
                east_m=float(point.east_m),
                north_m=float(point.north_m),
                longitude_deg=float(point.longitude_deg),
                latitude_deg=float(point.latitude_deg),
                half_square_m=float(point.half_square_m),
            )
            for point in card.points
        ),
        legs=tuple(
            LaneLeg(
                name=leg.name,
                start=leg.start.name,
                end=leg.end.name,
                azimuth_deg=leg.azimuth.degrees,
                magnetic_deg=leg.magnetic.degrees,
                distance_m=float(leg.distance_m),
                line=tuple((float(east), float(north)) for east, north in leg.line),
            )
            for leg in card.legs
        ),
        length_m=None if free else float(sum(leg.distance_m for leg in card.legs)),
        difficulty=None if free else _difficulty(card, settings),
        fingerprint=fingerprint(standard, (lane.plan,), version),
        findings=tuple(finding.message for finding in card.findings),
        angle_at_fault=card.angle_at_fault,
        order=lane.plan.order,
        notes=(
            *card.notes,
            *filter(None, (two_radii(lane.plan, standard), other_order(lane.plan, standard))),
        ),
    )


def _difficulty(card: LegCard, settings: ForecastSettings) -> float:
    """Give the middle over the legs of the chance that an ordinary walk ends out of sight."""
    legs = forecast_course(card, settings=settings).legs
    return float(np.median([1.0 - leg.chance_in_sight for leg in legs]))


def two_radii(plan: Plan, standard: Standard) -> str | None:
    """Say so where a standard's radius is another than the plan's; None where it is not."""
    if standard.radius_m is None or standard.radius_m == plan.arrival_radius_m:
        return None
    return sentence(
        "shows-two-radii",
        standard=standard.name,
        radius=Length(metres=standard.radius_m),
        plan=plan.source,
        planned=Length(metres=plan.arrival_radius_m),
    )
