"""The finished leg card: frozen records, no arithmetic."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from typing import Literal

from audit.azimuths import GridAzimuth, MagneticAzimuth, NorthAngles, TrueAzimuth
from audit.geodesy.grids import CourseGrid
from audit.leg_card.pace_kind import PaceKind
from audit.plan import Order
from audit.units import FloatArray

AngleSource = Literal["plan", "model"]
DateSource = Literal["plan", "option", "track", ""]


@dataclass(frozen=True, slots=True, kw_only=True)
class CardPoint:
    """A point of the course on its grid.

    Attributes
    ----------
    east_m, north_m : float
        Grid coordinates.
    half_square_m : float
        Half the side of the square its reference names, 0 for a point.
    dead_reckoned : bool
        True where the point is only the place where a leg's azimuth and distance lead.
    """

    name: str
    east_m: float
    north_m: float
    longitude_deg: float
    latitude_deg: float
    half_square_m: float
    dead_reckoned: bool = False


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CardLeg:
    """One leg of the card: what the walker is meant to set and to count.

    ``azimuth`` and ``distance_m`` are what the card says where it says it, and
    otherwise what the points give. ``line`` is the planned line on the grid, shape
    (k, 2): start, via positions, end; k = 2 for a straight leg. Places of it that lie
    nearer to each other than ``one_place_m`` are one, and give no direction.
    """

    name: str
    start: CardPoint
    end: CardPoint
    azimuth: GridAzimuth
    magnetic: MagneticAzimuth
    true: TrueAzimuth
    distance_m: float
    paces: float | None
    line: FloatArray
    one_place_m: float
    note: str = ""


ANGLE_FIELDS = ("grid_magnetic_angle_deg", "grid_magnetic_angle_date")
"""Fields of a plan of which a finding puts all that was turned by its angle in doubt."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CardFinding:
    """Something that the plan gives and that its own sum does not bear out.

    Attributes
    ----------
    leg : str or None
        Name of the leg; None for the course as a whole.
    what : str
        The field of the plan, such as "magnetic_azimuth_deg".
    given, computed
        In the unit of the field's name, azimuths always in degrees.
    message : str
        The whole of it in a sentence or two, with the slip that it looks like, if any.
    slips : tuple of str
        The names of the slips that fit, the likeliest first; those of the catalogue of
        causes where the slip has a name there.
    """

    leg: str | None
    what: str
    given: float | str | None
    computed: float | str | None
    message: str
    slips: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class SafetyBearing:
    """The direction that leads out of the course's ground, worked out for the day.

    Attributes
    ----------
    given : "grid", "magnetic" or "true"
        The north from which the plan gives it.
    note : str
        Where it leads, and what to do there.
    """

    grid: GridAzimuth
    magnetic: MagneticAzimuth
    given: Literal["grid", "magnetic", "true"]
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class LegCard:
    """The course worked out for one day.

    Attributes
    ----------
    date : date or None
        Day that the declination is for; None where neither plan nor track has one and
        the plan gives the angle itself.
    date_source : "plan", "option", "track" or ""
    angles : NorthAngles
        With the grid-magnetic angle that the card uses and the convergence at the
        first point.
    angle_source : "plan" or "model"
        Where the grid-magnetic angle comes from.
    declination_deg, declination_sd_deg, model_grid_magnetic_angle_deg : float or None
        From the magnetic model ``model`` for ``date``, at the first point; None (and
        ``model`` "") where no model covers the date and the plan gives the angle itself.
    safety : SafetyBearing or None
    pace : "single", "double" or None
        Which pace its pace count looks like; None where the plan gives none.
    order : "planned" or "free"
        "free": the legs stand in the order that was walked, once that is known.
    points : tuple of CardPoint
        In the order of the plan, then the dead-reckoned ends in the order of the legs.
    notes : tuple of str
        The plan's own notes, then what was assumed here.
    """

    name: str
    grid: CourseGrid
    date: dt.date | None
    date_source: DateSource
    angles: NorthAngles
    angle_source: AngleSource
    declination_deg: float | None
    declination_sd_deg: float | None
    model_grid_magnetic_angle_deg: float | None
    model: str
    points: tuple[CardPoint, ...]
    legs: tuple[CardLeg, ...]
    paces_per_100m: float | None
    arrival_radius_m: float
    pace: PaceKind | None = None
    order: Order = "planned"
    safety: SafetyBearing | None = None
    findings: tuple[CardFinding, ...] = ()
    notes: tuple[str, ...] = ()

    @property
    def angle_at_fault(self) -> bool:
        """Whether the plan's own grid-magnetic angle, or its date, is to be put right."""
        return any(one.what in ANGLE_FIELDS for one in self.findings)
