"""Whether the course lies where its grid is meant to be used."""

from __future__ import annotations

from audit.geodesy.grids import CourseGrid, course_grid, utm_code
from audit.leg_card.finished_card import CardFinding, CardPoint
from audit.settings import CardSettings
from audit.words import sentence
from audit.words.figures import Turn


def grid_fit(
    first: CardPoint, grid: CourseGrid, settings: CardSettings
) -> tuple[tuple[CardFinding, ...], tuple[str, ...]]:
    """Give findings and notes on a course that begins outside the area of its grid."""
    outside_deg = grid.degrees_outside(first.longitude_deg, first.latitude_deg)
    usual = utm_code(first.longitude_deg, first.latitude_deg)
    # Norway and Svalbard use their widened zones on their own datum too.
    same_zone = grid.name.partition(",")[0] == course_grid(usual).name.partition(",")[0]
    if same_zone or outside_deg <= settings.outside_grid_note_deg:
        return (), ()
    message = sentence(
        "finding-off-grid",
        point=first.name,
        off=Turn(degrees=outside_deg),
        grid=grid.code,
        name=grid.name,
        usual=usual,
    )
    if outside_deg <= settings.outside_grid_finding_deg:
        return (), (message,)
    found = CardFinding(leg=None, what="grid", given=grid.code, computed=usual, message=message)
    return (found,), ()
