"""Whether the grid-magnetic angle that a plan gives can be that of its map."""

from __future__ import annotations

import datetime as dt

from audit.leg_card.angle_finding import angle_finding
from audit.leg_card.dated_angle import DatedAngle, field_of
from audit.leg_card.finished_card import CardFinding
from audit.leg_card.told_numbers import told_angle
from audit.leg_card.undated_angle import undated_angle
from audit.magnetics.declination import Declination
from audit.plan import Plan
from audit.settings import CardSettings
from audit.units import turn_degrees
from audit.words import sentence
from audit.words.figures import Number, Turn


def given_angle(
    plan: Plan,
    field: Declination | None,
    convergence_deg: float,
    date: dt.date | None,
    settings: CardSettings,
) -> tuple[CardFinding, ...]:
    """Hold the angle of a plan against the model of its own date, else of the walk's.

    ``field`` is that of the day of the walk, None without one.
    """
    given_deg, of = plan.grid_magnetic_angle_deg, plan.grid_magnetic_angle_date
    if given_deg is None:
        return ()
    first, dated = plan.points[0].position, None
    if of is not None:
        dated = DatedAngle(
            given_deg=given_deg,
            of=of,
            dated=plan.grid_magnetic_angle_dated,
            convergence_deg=convergence_deg,
            then=field_of(first, of),
            now=field,
            walk=date,
            settings=settings,
        )
    findings = () if dated is None else dated.findings()
    if dated is not None and dated.fits_its_date is not None:
        return findings
    if date is None:
        return (*undated_angle(given_deg, first, convergence_deg, settings), *findings)
    if field is None:
        return findings
    return (*_beside_walk(given_deg, field, convergence_deg, date, dated, settings), *findings)


def _beside_walk(
    given_deg: float,
    field: Declination,
    convergence_deg: float,
    date: dt.date,
    dated: DatedAngle | None,
    settings: CardSettings,
) -> tuple[CardFinding, ...]:
    """Set the grid-magnetic angle that the plan gives against the model's for the walk."""
    room_deg = settings.model_sigmas * field.sd_deg + settings.angle_slack_deg
    if dated is not None and not dated.later:  # of a year that no model covers
        room_deg = settings.undated_slack_deg
    model_angle_deg = turn_degrees(convergence_deg, field.degrees)
    off_deg = turn_degrees(model_angle_deg, given_deg)
    if abs(off_deg) <= room_deg:
        return ()
    found = angle_finding(
        "finding-angle",
        given_deg,
        model_angle_deg,
        convergence_deg,
        room_deg,
        date=date.isoformat(),
        model=told_angle(model_angle_deg),
        error=Turn(degrees=field.sd_deg),
        age=_age_sentence(off_deg, field, settings) if dated is None else "",
    )
    return (found,)


def _age_sentence(off_deg: float, field: Declination, settings: CardSettings) -> str:
    """Say how old a map would carry this angle, where that is a thinkable age."""
    if field.yearly_change_deg == 0.0:
        return ""
    years = -off_deg / field.yearly_change_deg
    least, most = settings.map_age_years
    if not least <= years <= most:
        return ""
    return sentence(
        "finding-map-age",
        years=Number(value=years),
        yearly=told_angle(field.yearly_change_deg, 2),
    )
