"""The shape of class.json, field by field. Fields may be added, none renamed or dropped."""

from __future__ import annotations

from typing import Literal

# The standard library's own TypedDict cannot be read by schema makers before Python 3.12.
from typing_extensions import TypedDict


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
    grid_azimuth_deg: float
    magnetic_azimuth_deg: float
    distance_m: float
    climb_m: float | None


class LaneEntry(TypedDict):
    """One lane."""

    name: str
    plan: str
    course: str
    date: str | None
    grid: str
    grid_magnetic_angle_deg: float
    arrival_radius_m: float
    length_m: float
    climb_m: float | None
    difficulty: float | None
    fingerprint: str
    points: list[LanePointEntry]
    legs: list[LaneLegEntry]
    plan_findings: list[str]


class CourseOfClassEntry(TypedDict):
    """What was to be walked."""

    name: str
    lanes: list[LaneEntry]


class SourceEntry(TypedDict):
    """Where a figure of the standard is published."""

    figure: str
    source: str


class StandardEntry(TypedDict):
    """The standard, every figure of it."""

    name: str
    edition: str
    file: str
    points_to_find: int | None
    radius_m: float | None
    survey_sd_m: float
    time_limit_s: float | None
    late_grace_s: float
    late_penalty_per_min: float
    azimuth_tolerance_deg: float | None
    distance_tolerance: float | None
    order: Literal["planned", "free"]
    road_rule: str
    road_distance_m: float | None
    weights: dict[str, float]
    sources: list[SourceEntry]
    notes: list[str]


class ScorePartEntry(TypedDict):
    """One part of the coaching score; ``share`` is null where it cannot be told."""

    part: str
    share: float | None
    weight: float


class ApproachEntry(TypedDict):
    """The nearest approach to a point."""

    distance_m: float
    sd_m: float
    unseen_m: float
    time: str | None
    in_turn: bool


class PunchEntry(TypedDict):
    """What the walker brought back from a point."""

    code: str
    right: bool | None
    time: str


class LegOfWalkerEntry(TypedDict):
    """One leg of one walker."""

    name: str
    point: Literal["found", "missed", "doubtful", "no-evidence"]
    to: str
    left_out: bool
    proof: Literal["punch", "track"] | None
    radius_m: float
    error_m: float
    approach: ApproachEntry | None
    punch: PunchEntry | None
    evidence_for: list[str]
    evidence_against: list[str]
    status: str | None
    confidence: float | None
    miss_m: float | None
    miss: list[float] | None
    miss_sd_m: float | None
    azimuth_error_deg: float | None
    azimuth_sd_deg: float | None
    distance_error_m: float | None
    distance_ratio: float | None
    cause: str | None
    cause_probability: float | None
    moving_s: float | None
    searching_s: float | None
    halted_s: float | None


class WalkerEntry(TypedDict):
    """One attempt of one walker."""

    name: str
    ident: str
    lane: str
    attempt: int
    device: str
    compass: str
    track: str
    tracks: list[str]
    state: Literal["graded", "no-track", "refused"]
    problem: str | None
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
    score_parts: list[ScorePartEntry]
    moving_s: float | None
    searching_s: float | None
    halted_s: float | None
    noise_m: float | None
    better_lane: str | None
    fingerprint: str
    pages: list[str]
    notes: list[str]
    legs: list[LegOfWalkerEntry]


class LegOfClassEntry(TypedDict):
    """One leg over all its walkers; ``mean_miss`` is [east, north] in metres."""

    name: str
    lane: str
    to: str
    walkers: int
    walked: int
    found: int
    missed: int
    doubtful: int
    without_evidence: int
    mean_miss: list[float] | None
    spread_m: float | None
    finding: str | None


class ClassFindingEntry(TypedDict):
    """What the class shows, or what a person is asked about."""

    what: str
    leg: str | None
    lane: str | None
    walkers: list[str]
    question: bool
    leaves_out: bool
    probability: float | None
    message: str


class ClassDocument(TypedDict):
    """The whole of class.json."""

    format: Literal[1]
    name: str
    version: str
    fingerprint: str
    private: bool
    shift_s: float
    shift_from: str
    course: CourseOfClassEntry
    standard: StandardEntry
    walkers: list[WalkerEntry]
    legs: list[LegOfClassEntry]
    findings: list[ClassFindingEntry]
    notes: list[str]
