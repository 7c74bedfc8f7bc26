"""The shape of class.json, field by field; its JSON Schema is generated from here.

Angles are degrees, azimuths clockwise in [0, 360); lengths are metres of the lane's grid;
times are ISO 8601 with Z. East of north and walked minus planned are positive. Fields may
be added, none renamed or dropped.
"""

from __future__ import annotations

from typing import Literal

# The standard library's own TypedDict cannot be read by schema makers before Python 3.12.
from typing_extensions import TypedDict

from audit.debriefing.entry_values import CauseName, EastNorth


class LanePointEntry(TypedDict):
    """A point of a lane."""

    name: str
    lon: float
    lat: float
    east_m: float
    north_m: float


class LaneLegEntry(TypedDict):
    """A leg of a lane as it is planned."""

    name: str
    to: str
    """Name of the point it leads to."""
    grid_azimuth_deg: float | None
    magnetic_azimuth_deg: float | None
    distance_m: float | None
    """These are null where the points may be visited in any order, and no leg is planned."""
    climb_m: float | None
    """Metres to climb; null without heights of the ground."""


class LaneEntry(TypedDict):
    """One lane."""

    name: str
    plan: str
    """File of the plan."""
    course: str
    date: str | None
    grid: str
    grid_magnetic_angle_deg: float
    arrival_radius_m: float
    length_m: float | None
    """Null where the points may be visited in any order, as climb and difficulty are."""
    climb_m: float | None
    difficulty: float | None
    """The middle over the legs of the chance that an ordinary walk ends out of sight of its
    point, 0 to 1."""
    fingerprint: str
    """Of plan, standard and version of the program."""
    points: list[LanePointEntry]
    legs: list[LaneLegEntry]
    plan_findings: list[str]
    """Where the plan disagrees with itself."""


class CourseOfClassEntry(TypedDict):
    """What was to be walked."""

    name: str
    lanes: list[LaneEntry]


class SourceEntry(TypedDict):
    """Where a figure of the standard is published."""

    figure: str
    source: str


class WeightsEntry(TypedDict):
    """Of the parts of the coaching score."""

    points: float
    time: float
    azimuth: float
    distance: float


class StandardEntry(TypedDict):
    """The standard, every figure of it."""

    name: str
    edition: str
    file: str
    points_to_find: int | None
    """Null: all."""
    radius_m: float | None
    """Null: the arrival radius of the plan."""
    survey_sd_m: float
    time_limit_s: float | None
    late_grace_s: float
    late_penalty_per_min: float
    azimuth_tolerance_deg: float | None
    distance_tolerance: float | None
    """As a part of the distance."""
    order: Literal["planned", "free"]
    road_rule: Literal["none", "cross only", "keep off"]
    road_distance_m: float | None
    weights: WeightsEntry
    sources: list[SourceEntry]
    notes: list[str]


class ScorePartEntry(TypedDict):
    """One part of the coaching score."""

    part: str
    share: float | None
    """Reached of it, 0 to 1; null where it cannot be told."""
    weight: float


class ApproachEntry(TypedDict):
    """The nearest approach to a point."""

    distance_m: float
    sd_m: float
    """Standard error for each axis."""
    unseen_m: float
    """By how much nearer the walker may have come in silences of the recording."""
    time: str | None
    in_turn: bool
    """On the way to this point, and not at some other time of the walk."""
    nearest_fix_m: float | None
    """Of all fixes as they were recorded, nothing cleaned, at whatever time."""
    nearest_fix_time: str | None


class PunchEntry(TypedDict):
    """What the walker brought back from a point."""

    code: str
    right: bool | None
    """Null where no key tells."""
    time: str
    """As it was written down; may be empty."""


class LegOfWalkerEntry(TypedDict):
    """One leg of one walker; what was not measured is null."""

    name: str
    point: Literal["found", "missed", "doubtful", "no-evidence"]
    to: str
    """Name of the point it leads to."""
    left_out: bool
    """The point is left out of all grades, as one that the course itself got wrong."""
    proof: Literal["punch", "track"] | None
    """What decided; null where nothing did."""
    radius_m: float
    """Found within it."""
    error_m: float
    """Missed only beyond the radius and this together."""
    approach: ApproachEntry | None
    punch: PunchEntry | None
    evidence_for: list[str]
    evidence_against: list[str]
    status: Literal["walked", "skipped", "unfinished", "not-started"] | None
    confidence: float | None
    """Probability that the right part of the recording was taken for it."""
    miss_m: float | None
    miss: EastNorth | None
    """From the planned point to the claim: [east, north] in metres."""
    miss_sd_m: float | None
    azimuth_error_deg: float | None
    azimuth_sd_deg: float | None
    distance_error_m: float | None
    distance_ratio: float | None
    cause: CauseName | None
    """The mistake that the debrief names on this leg."""
    cause_probability: float | None
    moving_s: float | None
    searching_s: float | None
    halted_s: float | None


class RoadsEntry(TypedDict):
    """Metres and seconds near roads: as recorded, and beyond the whole error."""

    within_m: float
    sd_m: float
    seen_m: float
    sure_m: float
    seen_s: float | None
    sure_s: float | None
    names: list[str]


class WalkerEntry(TypedDict):
    """One attempt of one walker."""

    name: str
    ident: str
    """Of this attempt in this class; the name of its folder."""
    lane: str
    attempt: int
    device: str
    compass: str
    track: str
    """File of the recording; empty where there is none."""
    tracks: list[str]
    """All its files, where a walk is in several."""
    state: Literal["graded", "no-track", "refused"]
    problem: str | None
    """Why there was nothing to debrief."""
    verdict: Literal["pass", "fail", "doubtful", "no-evidence"]
    reasons: list[str]
    points_found: int
    points_missed: int
    points_doubtful: int
    points_without_evidence: int
    points_needed: int
    began: str | None
    finished: str | None
    elapsed_s: float | None
    elapsed_error_s: float
    late_s: float | None
    score: float | None
    """The coaching score, 0 to 100; it decides nothing."""
    score_parts: list[ScorePartEntry]
    moving_s: float | None
    searching_s: float | None
    halted_s: float | None
    noise_m: float | None
    """Receiver noise, standard deviation for each axis."""
    better_lane: str | None
    """Another lane that the recording fits better than its own: to be asked about."""
    fingerprint: str
    pages: list[str]
    """Files of the debrief, relative to this one."""
    notes: list[str]
    roads: RoadsEntry | None
    legs: list[LegOfWalkerEntry]


class LegOfClassEntry(TypedDict):
    """One leg over all its walkers."""

    name: str
    lane: str
    to: str
    """Name of the point it leads to."""
    walkers: int
    walked: int
    found: int
    missed: int
    doubtful: int
    without_evidence: int
    mean_miss: EastNorth | None
    """Over those who walked it: [east, north] in metres."""
    spread_m: float | None
    """Standard deviation of the misses about their mean, for each axis."""
    finding: str | None
    """What the class shows of it, such as "point-misplaced"."""


class ClassFindingEntry(TypedDict):
    """What the class shows, or what a person is asked about."""

    what: str
    leg: str | None
    lane: str | None
    walkers: list[str]
    """Their idents."""
    question: bool
    """It is put to a person, and changes nothing by itself."""
    leaves_out: bool
    """The point of the leg is left out of the grades."""
    probability: float | None
    message: str


class ClassDocument(TypedDict):
    """A class set against its lanes by a standard."""

    format: Literal[1]
    """Number of this shape."""
    name: str
    version: str
    """Of the program."""
    fingerprint: str
    """Of all plans, the standard and the version of the program."""
    private: bool
    """Names are left out."""
    shift_s: float
    """Added to the clocks of all recordings."""
    shift_from: str
    """On what ground."""
    course: CourseOfClassEntry
    standard: StandardEntry
    walkers: list[WalkerEntry]
    legs: list[LegOfClassEntry]
    findings: list[ClassFindingEntry]
    notes: list[str]
