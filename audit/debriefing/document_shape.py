"""The shape of debrief.json, field by field; its JSON Schema is generated from here.

Angles are degrees, azimuths clockwise in [0, 360); lengths are metres of the course
grid; times are ISO 8601 with Z, null where the recording has none. East of north and
right of travel are positive.
"""

from __future__ import annotations

from typing import Annotated, Literal

# The standard library's own TypedDict cannot be read by schema makers before Python 3.12.
from typing_extensions import TypedDict

from audit.debriefing.coaching_shape import (
    CoachingEntry,
    HopEntry,
    KeepEntry,
    OtherEndEntry,
    StepsEntry,
    WhatIfEntry,
    WorkOnEntry,
)
from audit.debriefing.detail_shape import (
    BandLeftEntry,
    BypassEntry,
    CutEntry,
    DetailsEntry,
    GroundEntry,
    LedgerErrorsEntry,
    LegPacesEntry,
    LineKeptEntry,
    PaceRateEntry,
    PacesByGroundEntry,
    PacesEntry,
    PointEntryOfLeg,
    SearchEntry,
    SettingEntry,
    SightingStopEntry,
    StretchHeadingEntry,
    ThirdsEntry,
)
from audit.debriefing.forecast_shape import EllipseEntry, ForecastEntry
from audit.guide.cause_names import CAUSE_NAMES

__all__ = [
    "BandLeftEntry",
    "BypassEntry",
    "CoachingEntry",
    "CutEntry",
    "DetailsEntry",
    "EllipseEntry",
    "ForecastEntry",
    "GroundEntry",
    "HopEntry",
    "KeepEntry",
    "LedgerErrorsEntry",
    "LegPacesEntry",
    "LineKeptEntry",
    "OtherEndEntry",
    "PaceRateEntry",
    "PacesByGroundEntry",
    "PacesEntry",
    "PointEntryOfLeg",
    "SearchEntry",
    "SettingEntry",
    "SightingStopEntry",
    "StepsEntry",
    "StretchHeadingEntry",
    "ThirdsEntry",
    "WhatIfEntry",
    "WorkOnEntry",
]

FORMAT: Literal[1] = 1
"""Number of this shape. History: 1, the first."""

CauseName = Annotated[str, CAUSE_NAMES]
"""One of the catalogue, "within-skill" and "cannot-tell" among them."""
EastNorth = Annotated[list[float], "[east, north] in metres"]
MetresInterval = Annotated[list[float], "[low, high] in metres"]
SecondsInterval = Annotated[list[float], "[low, high] in seconds"]
Interval = Annotated[list[float], "[low, high] in degrees; straddles north where low > high"]


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


class PlaceEntry(TypedDict):
    """Where the walker was at one moment."""

    time: str | None
    lon: float
    lat: float


class PlannedEntry(TypedDict):
    """What the leg card says."""

    grid_azimuth_deg: float
    magnetic_azimuth_deg: float
    true_azimuth_deg: float
    back_azimuth_deg: float
    """Grid azimuth of the way back."""
    distance_m: float
    paces: float | None


class WalkedEntry(TypedDict):
    """What was walked, from leaving to the claim."""

    grid_azimuth_deg: float
    grid_azimuth_95_deg: Interval
    grid_azimuth_sd_deg: float
    straight_m: float
    straight_sd_m: float
    along_planned_m: float | None
    """From start to claim along the planned azimuth; its error is straight_sd_m."""
    along_heading_m: float | None
    """The same along the walked heading."""
    made_good_m: float | None
    """What distance_error_m and distance_ratio set against the plan: straight_m, or of a leg
    along via positions what was made along its line; null where that was not followed."""
    path_m: float
    """Over the ground, receiver noise smoothed out."""
    path_sd_m: float | None
    paces: float | None
    paces_from: Literal["log", "pace count"] | None
    duration_s: float | None
    halted_s: float | None
    gap_share: float
    """Share of the straight distance that fell into gaps of the recording."""


class CrossTrackEntry(TypedDict):
    """Distance to the right of a line."""

    end_m: float
    """At the claim."""
    max_abs_m: float
    rms_m: float


class MissEntry(TypedDict):
    """From the planned point to the claim."""

    distance_m: float
    azimuth_deg: float
    along_m: float
    across_m: float
    sd_m: float
    """Standard error per axis."""


class NearestApproachEntry(TypedDict):
    """Nearest to the planned point, from leaving until leaving for the next."""

    distance_m: float
    time: str | None


class LedgerEntry(TypedDict):
    """Where the miss came from; the first five add up to the total."""

    inherited: EastNorth
    plan: EastNorth
    heading: EastNorth
    distance: EastNorth
    detour: EastNorth
    total: EastNorth


class CauseEntry(TypedDict):
    """A candidate cause."""

    cause: CauseName
    probability: float
    """That this is what chiefly put the leg out; over one leg they add up to 1."""
    evidence: str
    predicted: float | None
    """The number that the cause predicts, and the same number as it was seen."""
    seen: float | None
    unit: Literal["deg", "m", "ratio"] | None
    made: float
    """Probability that this mistake was made on the leg at all, be it beside a larger one."""
    runner_up: CauseName | None
    settles: str
    """What would tell it from its look-alikes."""


class OneOfEntry(TypedDict):
    """Two mistakes that the leg does not tell apart, though one of them was made."""

    causes: list[CauseName]
    """The likelier first."""
    probability: float
    """That it was one of the two."""
    settles: list[str]
    """For each, what would tell it from the other."""


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


class RunnerUpEntry(TypedDict):
    """Another reading of a leg: a start or claim elsewhere, or something else made of it."""

    status: Literal["walked", "skipped", "unfinished", "not-started"]
    start: str | None
    end: str | None
    probability: float


_LegEnds = TypedDict("_LegEnds", {"name": str, "from": str, "to": str})


class LegEntry(_LegEnds):
    """One leg. Measurements are null unless it was walked."""

    status: Literal["walked", "skipped", "unfinished", "not-started"]
    confidence: float
    """Probability that the right portion of the walk was taken for it."""
    runner_up: RunnerUpEntry | None
    """The likeliest other reading of the leg; null where there is none to speak of."""
    doubt: str | None
    """Both readings in words and how to settle it, where the first is not sure."""
    pinned: list[Literal["from", "claim"]]
    """The ends that were settled by hand."""
    start: PlaceEntry | None
    """Where the walker left for it."""
    end: PlaceEntry | None
    """Where the walker's own navigation ended, before any search."""
    planned: PlannedEntry
    walked: WalkedEntry | None
    azimuth_error_deg: float | None
    """Walked minus planned, in (-180, 180]."""
    distance_error_m: float | None
    distance_ratio: float | None
    """Walked straight distance over planned distance."""
    cross_track: CrossTrackEntry | None
    """Against the planned line, from point to point whatever azimuth the card has."""
    own_cross_track: CrossTrackEntry | None
    """Against the planned azimuth from where the walker really began."""
    miss: MissEntry | None
    found: bool | None
    nearest_approach: NearestApproachEntry | None
    ledger: LedgerEntry | None
    details: DetailsEntry | None
    """Drift, line, ground, paces, point, errors, search, bypasses and stops."""
    steps: StepsEntry | None
    """Null where neither log nor card of the walker's own speaks of the leg."""
    what_if: WhatIfEntry | None
    """Null also of a leg that was under way when the recording began."""
    forecast: ForecastEntry | None
    """Null also where the recording began on the way."""
    causes: list[CauseEntry]
    """Most probable first."""
    one_of: OneOfEntry | None
    """Null where one mistake is named, and where two together are not sure enough."""


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
