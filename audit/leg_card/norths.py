"""The day and the three norths of a course, at its first point."""

from __future__ import annotations

import datetime as dt
import math
from dataclasses import dataclass, replace

from audit.azimuths import NorthAngles
from audit.errors import refuse
from audit.geodesy.grids import CourseGrid
from audit.leg_card.finished_card import AngleSource, CardFinding, DateSource
from audit.leg_card.given_angle import given_angle
from audit.leg_card.told_numbers import told_angle
from audit.magnetics.declination import FIRST_DAY, Declination, declination
from audit.moments import years_between
from audit.plan import Plan
from audit.positions import Position
from audit.settings import CardSettings
from audit.units import turn_degrees
from audit.words import sentence
from audit.words.figures import Number, Turn

_ANGLE = "grid_magnetic_angle_deg as printed on the map (option --grid-magnetic-angle)"


@dataclass(frozen=True, slots=True, kw_only=True)
class Norths:
    """The norths that the card uses and where they come from."""

    date: dt.date | None
    date_source: DateSource
    angles: NorthAngles
    source: AngleSource
    declination: Declination | None
    model_angle_deg: float | None
    findings: tuple[CardFinding, ...]
    notes: tuple[str, ...]

    def angle_doubt_deg(self, settings: CardSettings) -> float:
        """Give how far the card's grid-magnetic angle may be from the one on the map."""
        if self.source == "plan" or self.declination is None:
            return 0.0
        return settings.model_sigmas * self.declination.sd_deg + settings.angle_slack_deg

    def instead_of_wrong(self, settings: CardSettings) -> tuple[NorthAngles, float] | None:
        """Give the model's angle and its doubt where the plan's has a known slip; else None."""
        wrong = any(
            finding.what == "grid_magnetic_angle_deg" and finding.slips for finding in self.findings
        )
        if not wrong or self.declination is None or self.model_angle_deg is None:
            return None
        angles = replace(self.angles, grid_magnetic_angle_deg=self.model_angle_deg)
        return angles, settings.model_sigmas * self.declination.sd_deg + settings.angle_slack_deg


def work_out_norths(
    plan: Plan, grid: CourseGrid, track_date: dt.date | None, settings: CardSettings
) -> Norths:
    """Give the norths of a plan at its first position.

    Raises
    ------
    InputRefusedError
        Where the plan gives no grid-magnetic angle and none can be computed.
    """
    first = plan.points[0].position
    date = plan.date or track_date
    date_source: DateSource = plan.date_from if plan.date else "track"
    convergence_deg = grid.convergence_deg(first.longitude_deg, first.latitude_deg)
    field, notes = _field(plan, first, date, date_source, settings)
    model_angle_deg = None if field is None else turn_degrees(convergence_deg, field.degrees)
    given_deg = plan.grid_magnetic_angle_deg
    angle_deg = given_deg if given_deg is not None else model_angle_deg
    if angle_deg is None:
        raise refuse(
            plan.source or "the plan",
            "course",
            None,
            "has no grid-magnetic angle, and without a date none can be computed",
            f"Give date (option --date), or {_ANGLE}.",
        )
    if date is None:
        date_source = ""
    elif date_source == "track":
        notes.append(sentence("note-track-date", date=date.isoformat()))
    if field is not None and date is not None:
        notes.extend(_field_notes(plan, field, angle_deg, date, track_date, settings))
    return Norths(
        date=date,
        date_source=date_source,
        angles=NorthAngles(grid_magnetic_angle_deg=angle_deg, convergence_deg=convergence_deg),
        source="model" if given_deg is None else "plan",
        declination=field,
        model_angle_deg=model_angle_deg,
        findings=given_angle(plan, field, convergence_deg, date, settings),
        notes=tuple(notes),
    )


def _field(
    plan: Plan,
    first: Position,
    date: dt.date | None,
    date_source: DateSource,
    settings: CardSettings,
) -> tuple[Declination | None, list[str]]:
    """Give the magnetic field of the day, or None with the reason why the card does without."""
    given = plan.grid_magnetic_angle_deg is not None
    if date is None:
        return None, ([sentence("note-no-date")] if given else [])
    try:
        return declination(first.longitude_deg, first.latitude_deg, date=date), []
    except ValueError as error:
        carried = None if given else _carried_back(plan, first, date, settings)
        if carried is not None:
            told = {"model": carried.model, "error": Turn(degrees=carried.sd_deg)}
            return carried, [sentence("note-carried-back", date=date.isoformat(), **told)]
        if not given:
            rule, remedy = "is a day that no magnetic model at hand covers", f"Give {_ANGLE}"
            if date_source == "track":
                rule = f"is the day of the recording, and {rule.removeprefix('is ')}"
                remedy += ", or the day of the walk as date (option --date)"
            place = {"plan": "course, date", "option": "option date"}.get(date_source, "course")
            raise refuse(
                plan.source or "the plan",
                place,
                date.isoformat(),
                rule,
                f"{remedy}.",
            ) from error
        return None, [sentence("note-no-model", date=date.isoformat())]


def _carried_back(
    plan: Plan, first: Position, date: dt.date, settings: CardSettings
) -> Declination | None:
    """Carry the first model back to a day some years before it, for a plan without azimuths.

    There nothing of the plan hangs on the angle, and the error told is that of so long a way
    back. None where the plan gives an azimuth, or the day is too far from any model.
    """
    legs = [leg for leg in plan.legs if leg.grid_azimuth or leg.magnetic_azimuth]
    stated = legs or any(leg.true_azimuth for leg in plan.legs) or plan.safety_azimuth
    years = years_between(date, FIRST_DAY)
    if stated or not 0.0 < years <= settings.carried_back_years:
        return None
    field = declination(first.longitude_deg, first.latitude_deg, date=FIRST_DAY)
    return replace(
        field,
        degrees=turn_degrees(0.0, field.degrees - years * field.yearly_change_deg),
        sd_deg=math.hypot(field.sd_deg, years * settings.carried_back_sd_deg),
    )


def _field_notes(
    plan: Plan,
    field: Declination,
    angle_deg: float,
    date: dt.date,
    track_date: dt.date | None,
    settings: CardSettings,
) -> list[str]:
    """Say what was taken from the model, and when the compass or the date is not to be trusted."""
    notes: list[str] = []
    if plan.grid_magnetic_angle_deg is None:
        notes.append(
            sentence(
                "note-angle-computed",
                model=field.model,
                date=date.isoformat(),
                angle=told_angle(angle_deg),
                error=Turn(degrees=field.sd_deg),
            )
        )
    if field.horizontal_nt < settings.weak_field_nt:
        notes.append(sentence("note-weak-field", field=Number(value=field.horizontal_nt)))
    if track_date is not None and abs((track_date - date).days) > settings.stale_days:
        years = years_between(date, track_date)
        notes.append(
            sentence(
                "note-other-day",
                plan=date.isoformat(),
                track=track_date.isoformat(),
                change=Turn(degrees=field.yearly_change_deg * years),
            )
        )
    return notes
