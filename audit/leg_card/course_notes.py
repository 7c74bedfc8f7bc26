"""What a reader of the card should know of the course's place on its grid."""

from __future__ import annotations

from collections.abc import Iterable

from audit.geodesy.grids import CourseGrid
from audit.leg_card.finished_card import CardPoint
from audit.leg_card.norths import Norths
from audit.leg_card.told_numbers import told_angle, told_distance
from audit.magnetics.declination import FIRST_DAY, declination
from audit.settings import CardSettings
from audit.units import turn_degrees
from audit.words import sentence
from audit.words.figures import Length, Percent


def course_notes(
    points: tuple[CardPoint, ...],
    grid: CourseGrid,
    norths: Norths,
    arrival_radius_m: float,
    settings: CardSettings,
) -> Iterable[str]:
    """Give the notes on changing angles, scale, datum and coarse references."""
    yield from _angle_note(points, grid, norths, settings)
    first = points[0]
    scale = grid.scale_factor(first.longitude_deg, first.latitude_deg)
    if abs(scale - 1.0) > settings.scale_change:
        yield sentence(
            "note-scale-longer" if scale > 1.0 else "note-scale-shorter",
            grid=grid.code,
            share=Percent(share=abs(scale - 1.0), decimals=1),
        )
    if grid.datum_uncertainty_m > 0.0:
        yield sentence(
            "note-datum", grid=grid.code, name=grid.name, size=f"{grid.datum_uncertainty_m:g}"
        )
    for point in points:
        if not point.dead_reckoned and point.half_square_m > arrival_radius_m:
            yield sentence(
                "note-coarse",
                point=point.name,
                square=Length(metres=2.0 * point.half_square_m),
                radius=told_distance(arrival_radius_m),
            )


def _angle_note(
    points: tuple[CardPoint, ...], grid: CourseGrid, norths: Norths, settings: CardSettings
) -> Iterable[str]:
    """Say so where the grid-magnetic angle of the first point does not hold for all."""
    first = _angle_at(points[0], grid, norths)
    most = max((turn_degrees(first, _angle_at(point, grid, norths)) for point in points), key=abs)
    if abs(most) > settings.angle_change_deg:
        yield sentence("note-angle-changes", most=told_angle(most), point=points[0].name)


def _angle_at(point: CardPoint, grid: CourseGrid, norths: Norths) -> float:
    """Give D - C at a point; -C where no model serves, which changes alike over a course."""
    convergence_deg = grid.convergence_deg(point.longitude_deg, point.latitude_deg)
    if norths.declination is None or norths.date is None:
        return turn_degrees(convergence_deg, 0.0)
    date = max(norths.date, FIRST_DAY)  # carried back, it differs over a course as then
    field = declination(point.longitude_deg, point.latitude_deg, date=date)
    return turn_degrees(convergence_deg, field.degrees)
