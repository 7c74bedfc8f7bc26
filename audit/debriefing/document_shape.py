"""The shape of debrief.json, field by field; its JSON Schema is generated from here.

Angles are degrees, azimuths clockwise in [0, 360); lengths are metres of the course
grid; times are ISO 8601 with Z, null where the recording has none. East of north and
right of travel are positive.
"""

from __future__ import annotations

from typing import Literal

# The standard library's own TypedDict cannot be read by schema makers before Python 3.12.
from typing_extensions import TypedDict

from audit.debriefing.coaching_shape import CoachingEntry
from audit.debriefing.detail_shape import PacesEntry
from audit.debriefing.entry_values import CauseName, MetresInterval, SecondsInterval
from audit.debriefing.leg_shape import LegEntry

FORMAT: Literal[1] = 1
"""Number of this shape. History: 1, the first."""


class CourseEntry(TypedDict):
    """The course, its grid and its angles."""

    name: str
    date: str | None
    """Day of the walk, which fixes the declination; null where none is known."""
    date_from: Literal["plan", "option", "track", ""]
    """Who gives it: the plan's file, an option of the command, the recording; "" for nobody."""
    grid: str
    """Authority code of the course grid."""
    grid_name: str
    grid_magnetic_angle_deg: float
    """From grid north to magnetic north: magnetic azimuth = grid azimuth - this."""
    grid_magnetic_angle_from: Literal["plan", "model"]
    declination_deg: float | None
    """From true north to magnetic north, by the model."""
    declination_sd_deg: float | None
    grid_convergence_deg: float
    """From true north to grid north, at the first point."""
    model: str
    model_grid_magnetic_angle_deg: float | None
    paces_per_100m: float | None
    arrival_radius_m: float
    """Within this of a point counts as arrived."""
    order: Literal["planned", "free"]
    """"free": the legs stand in the order that was walked, named after their points."""
    notes: list[str]


class PointEntry(TypedDict):
    """A point of the course."""

    name: str
    lon: float
    lat: float
    east_m: float
    north_m: float
    half_square_m: float
    """Half the side of the square that its reference names; 0 for a point."""
    dead_reckoned: bool
    """True where it is only where a leg's azimuth and distance lead."""


class GapEntry(TypedDict):
    """A silence of the recording."""

    start: str | None
    end: str | None


class CleaningEntry(TypedDict):
    """One kind of thing that cleaning did to the recording."""

    what: str
    count: int
    detail: str


class TrackEntry(TypedDict):
    """The recording and what it is worth."""

    source: str
    fixes: int
    """In the recording, before cleaning."""
    kept_fixes: int
    start: str | None
    end: str | None
    median_interval_s: float | None
    noise_m: float
    """Receiver noise, standard deviation per axis."""
    noise_from: str
    noise_95_m: MetresInterval | None
    """The 95 % interval of noise_m."""
    noise_correlation_s: float | None
    """Time over which the receiver forgets its error, to 1/e."""
    noise_correlation_95_s: SecondsInterval | None
    gaps: list[GapEntry]
    cleaning: list[CleaningEntry]
    notes: list[str]


class PlanFindingEntry(TypedDict):
    """Something that the plan gives and that its own sum does not bear out."""

    leg: str | None
    what: str
    given: float | str | None
    computed: float | str | None
    message: str
    slips: list[str]
    """Names of the slips that fit, the likeliest first."""


class SpanEntry(TypedDict):
    """A stretch of the recording; spans follow each other without overlap or hole."""

    start: str | None
    end: str | None
    leg: str | None
    """Name of the leg, null where the time belongs to none."""
    kind: Literal["approach", "walking", "halt", "at-point", "bypass", "search", "gap", "walk-off"]
    first_fix: int
    """Number of the fix in the recording nearest to its start, counted from 0."""
    last_fix: int


class StoryEntry(TypedDict):
    """A mistake that several legs share."""

    cause: CauseName
    probability: float
    legs: list[str]
    begins_later: bool
    """Legs were walked before it without the mistake."""
    put_right: bool
    """Legs were walked after it without the mistake."""
    size: float | None
    unit: Literal["deg", "m", "ratio"] | None


class DebriefDocument(TypedDict):
    """A recorded walk set against its planned legs."""

    format: Literal[1]
    course: CourseEntry
    points: list[PointEntry]
    track: TrackEntry
    plan_findings: list[PlanFindingEntry]
    spans: list[SpanEntry]
    """The whole recording, in time order."""
    coaching: CoachingEntry
    legs: list[LegEntry]
    """In the order of the plan."""
    stories: list[StoryEntry]
    """What several legs have in common, most probable first."""
    paces: PacesEntry | None
    """Pace counts of the whole course."""
