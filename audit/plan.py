"""The planned course, as its file gives it: nothing here is computed."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, field
from typing import Literal

from audit.azimuths import GridAzimuth, MagneticAzimuth, TrueAzimuth
from audit.positions import Position

Order = Literal["planned", "free"]
StatedIn = Literal["plan", "option"]
AnyAzimuth = GridAzimuth | MagneticAzimuth | TrueAzimuth


@dataclass(frozen=True, slots=True, kw_only=True)
class Point:
    """A named point of the course."""

    name: str
    position: Position


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedLeg:
    """One leg as the plan states it; None where the plan says nothing.

    ``start`` and ``end`` name points. ``end`` names no point of the plan where the
    leg is dead reckoned: then an azimuth and a distance are given and the end is
    where they lead. The half steps say how finely grid azimuth and distance were written
    before they were converted from another grid; None: as finely as their digits show.
    ``in_mils`` are the norths ("grid", "magnetic", "true") whose azimuth the plan gives in
    mils of 6400 to the circle.
    """

    name: str
    start: str
    end: str
    grid_azimuth: GridAzimuth | None = None
    magnetic_azimuth: MagneticAzimuth | None = None
    true_azimuth: TrueAzimuth | None = None
    distance_m: float | None = None
    paces: float | None = None
    grid_azimuth_half_step_deg: float | None = None
    distance_half_step_m: float | None = None
    in_mils: tuple[str, ...] = ()
    via: tuple[Position, ...] = ()
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """A course: points, the legs between them in order, and what the map says.

    Attributes
    ----------
    grid : str
        Authority code of the projected CRS of the course, such as "EPSG:32616".
        Readers resolve "auto" to the UTM zone of the first point.
    date_from : "plan" or "option"
        Whether the file gives the date, or who had it read.
    grid_magnetic_angle_deg : float or None
        As printed on the map, east positive; None: to be computed.
    grid_magnetic_angle_date : date or None
        Of what day, or year, the map gives that angle; the middle of a year.
    grid_magnetic_angle_year_only : bool
        Whether the plan gives the year alone.
    sheet : tuple of Position or None
        South-west and north-east corner of the map sheet.
    paces_per_100m : float or None
        In whichever pace the walker counts.
    arrival_radius_m : float
        Within this of a point counts as arrived.
    order : "planned" or "free"
        "free": after the first point the others may be visited in any order. Then leg n
        only stands for point n, whose name it has.
    safety_azimuth : azimuth from any north, or None
        The direction that leads out of the course's ground from anywhere on it.
    safety_note : str
        Where it leads, and what to do there.
    namesakes : tuple of (str, str)
        Points to which the file gives one name and two places: the name, and what the
        place that came later is called.
    notes : tuple of str
        Everything that reading assumed or defaulted, one sentence each.
    """

    name: str
    grid: str
    points: tuple[Point, ...]
    legs: tuple[PlannedLeg, ...]
    date: dt.date | None = None
    grid_magnetic_angle_deg: float | None = None
    grid_magnetic_angle_date: dt.date | None = None
    grid_magnetic_angle_year_only: bool = False
    sheet: tuple[Position, Position] | None = None
    paces_per_100m: float | None = None
    arrival_radius_m: float = 30.0
    order: Order = "planned"
    safety_azimuth: AnyAzimuth | None = None
    safety_note: str = ""
    namesakes: tuple[tuple[str, str], ...] = ()
    notes: tuple[str, ...] = ()
    date_from: StatedIn = field(default="plan", compare=False)
    source: str = field(default="", compare=False)

    @property
    def grid_magnetic_angle_dated(self) -> str:
        """Give the date of the angle as the plan writes it: "2019" or "2019-03-05"; else ""."""
        date = self.grid_magnetic_angle_date
        if date is None:
            return ""
        return str(date.year) if self.grid_magnetic_angle_year_only else date.isoformat()

    def position(self, name: str) -> Position | None:
        """Give the position of a named point, or None where the plan has no such point."""
        for point in self.points:
            if point.name == name:
                return point.position
        return None
