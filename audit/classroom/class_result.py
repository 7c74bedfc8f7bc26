"""The result of a class: one frozen tree that every report only walks."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from audit.classroom.class_document import class_document
from audit.classroom.class_shape import ClassDocument
from audit.grading.verdicts import PointVerdict, WalkTime, WalkVerdict
from audit.matching.leg_match import LegStatus
from audit.measurement.near_roads import NearRoads
from audit.standard import Standard

WalkerState = Literal["graded", "no-track", "refused"]
"""Debriefed; nothing handed in; a recording that could not be used."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LanePoint:
    """A point of a lane on the grid of its course. ``code`` is the marker's, where known."""

    name: str
    east_m: float
    north_m: float
    longitude_deg: float
    latitude_deg: float
    half_square_m: float
    code: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class LaneLeg:
    """A leg of a lane; ``line`` holds (east, north) of start, via positions and end.

    ``climb_m`` and ``descent_m`` are the middle of what the walkers' own trusted
    elevations give for it; None where none can be trusted.
    """

    name: str
    start: str
    end: str
    azimuth_deg: float
    magnetic_deg: float
    distance_m: float
    line: tuple[tuple[float, float], ...]
    climb_m: float | None = None
    descent_m: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class LaneResult:
    """One lane: the course that it is.

    Attributes
    ----------
    name : str
        Of the lane: as the roster calls it, else the file of the plan without its suffix.
    plan_file, course, grid : str
        Name of the file, of the course, and the code of its grid.
    date : str or None
    difficulty : float or None
        The middle over the legs of the chance that an ordinary walk ends out of sight
        of its point, 0 to 1, by the forecast; before anyone has walked.
    fingerprint : str
        Of plan, standard and program version.
    findings : tuple of str
        What a check of the plan has found, one sentence each.
    """

    name: str
    plan_file: str
    course: str
    grid: str
    date: str | None
    grid_magnetic_angle_deg: float
    arrival_radius_m: float
    points: tuple[LanePoint, ...]
    legs: tuple[LaneLeg, ...]
    length_m: float
    climb_m: float | None = None
    difficulty: float | None = None
    fingerprint: str = ""
    findings: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Trace:
    """A walk thinned to one fix in about ten seconds, on the grid of its lane.

    For drawing, and for who walked with whom. ``time_s`` is UTC since 1970, the batch's
    shift applied; None in a recording without times.
    """

    time_s: tuple[float, ...] | None
    east_m: tuple[float, ...]
    north_m: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Miss:
    """Planned point to claim: grid components, and along and right of the planned line."""

    east_m: float
    north_m: float
    along_m: float
    across_m: float
    sd_m: float

    @property
    def distance_m(self) -> float:
        """Give its length."""
        return float((self.east_m**2 + self.north_m**2) ** 0.5)


@dataclass(frozen=True, slots=True, kw_only=True)
class LegResult:
    """One leg of one walker. None where it was not walked or cannot be told.

    Attributes
    ----------
    name : str
        As in the lane.
    point : PointVerdict
        Of the point that the leg leads to.
    began_off : (east, north) or None
        From the planned start to where the leg was left for, in metres; None where nobody
        saw it, as on a leg that was under way when the recording began.
    azimuth_error_deg, azimuth_sd_deg : float or None
        Walked minus planned, right positive, and the standard error of the walked.
    cause, cause_probability
        The likeliest, as in the debrief.
    causes : tuple of (str, float)
        All that are told, the likeliest first.
    moving_s, searching_s, halted_s : float or None
        Of the time from leaving for the leg to leaving for the next; None where it was not
        walked.
    trace_from, trace_to : int or None
        The leg's part of the walker's trace, from leaving to claim, as a slice.
    """

    name: str
    point: PointVerdict
    status: LegStatus | None
    confidence: float | None = None
    started_s: float | None = None
    claimed_s: float | None = None
    miss: Miss | None = None
    began_off: tuple[float, float] | None = None
    azimuth_error_deg: float | None = None
    azimuth_sd_deg: float | None = None
    straight_m: float | None = None
    straight_sd_m: float | None = None
    distance_error_m: float | None = None
    distance_ratio: float | None = None
    cause: str | None = None
    cause_probability: float | None = None
    causes: tuple[tuple[str, float], ...] = ()
    moving_s: float | None = None
    searching_s: float | None = None
    halted_s: float | None = None
    climb_m: float | None = None
    descent_m: float | None = None
    trace_from: int | None = None
    trace_to: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class TrackFacts:
    """What the recording of a walker is worth."""

    fixes: int
    start_s: float | None
    end_s: float | None
    median_interval_s: float | None
    noise_m: float
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class LaneFit:
    """How well a walk fits a lane: the share of its points passed, and nats against it."""

    lane: str
    passed: float
    cost: float


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkerResult:
    """One attempt of one walker on one lane.

    Attributes
    ----------
    ident : str
        Safe as the name of a file, unique in the class; the folder of the debrief is
        ``debriefs/<ident>``.
    name, device, compass : str
        As the roster has them, else the name of the file and "".
    tracks : tuple of str
        Names of the files, in order of time.
    state
        "graded" unless there was nothing to debrief; then ``problem`` says why.
    start_s : float or None
        When the roster let the walker start.
    legs : tuple of LegResult
        One a leg of the lane, in its order, whatever the state.
    moving_s, searching_s, halted_s : float or None
        Of the whole walk, approach and walk-off left out.
    better_lane : LaneFit or None
        Another lane that the recording fits better than its own: to be asked about.
    pages : tuple of str
        Files of the debrief, relative to the folder of the class.
    roads : NearRoads or None
        The use of roads; None where no roads or no rule for them are given.
    key : str
        Of the content of everything that this result was made from.
    """

    ident: str
    name: str
    lane: str
    attempt: int
    device: str
    tracks: tuple[str, ...]
    state: WalkerState
    legs: tuple[LegResult, ...]
    verdict: WalkVerdict
    time: WalkTime
    problem: str | None = None
    compass: str = ""
    start_s: float | None = None
    moving_s: float | None = None
    searching_s: float | None = None
    halted_s: float | None = None
    bias_deg: float | None = None
    pace_scale: float | None = None
    trace: Trace | None = None
    track: TrackFacts | None = None
    own_lane_fit: LaneFit | None = None
    better_lane: LaneFit | None = None
    pages: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    roads: NearRoads | None = None
    key: str = ""

    @property
    def folder(self) -> str:
        """Give the folder of the debrief, relative to that of the class."""
        return f"debriefs/{self.ident}"


@dataclass(frozen=True, slots=True, kw_only=True)
class ClassLeg:
    """One leg of one lane over all its walkers.

    Attributes
    ----------
    mean_miss : (float, float) or None
        East and north in metres, over those who walked it.
    spread_m : float or None
        Standard deviation of the misses about their mean, per axis.
    finding : str or None
        What the class shows of it, such as "point-misplaced".
    """

    lane: str
    name: str
    point: str
    walkers: int
    walked: int
    found: int
    missed: int
    doubtful: int
    without_evidence: int
    mean_miss: tuple[float, float] | None
    spread_m: float | None
    finding: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ClassFinding:
    """Something that the class shows, or that a person is asked about.

    Attributes
    ----------
    what : str
        A telling name, such as "device-swapped", "point-misplaced", "broken-file".
    message : str
        The whole of it in a sentence or two.
    question : bool
        It is put to a person, and changes nothing by itself.
    walkers : tuple of str
        Their idents.
    leaves_out : bool
        The point of the leg is left out of the grades.
    """

    what: str
    message: str
    lane: str | None = None
    leg: str | None = None
    walkers: tuple[str, ...] = ()
    question: bool = False
    leaves_out: bool = False
    probability: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ClassResult:
    """A class set against its lanes by a standard.

    Attributes
    ----------
    name : str
        Of the class.
    shift_s : float
        Added to the clocks of all recordings; ``shift_from`` says on what ground.
    private : bool
        Names are left out.
    """

    name: str
    version: str
    standard: Standard
    fingerprint: str
    lanes: tuple[LaneResult, ...]
    walkers: tuple[WalkerResult, ...]
    legs: tuple[ClassLeg, ...]
    findings: tuple[ClassFinding, ...]
    shift_s: float = 0.0
    shift_from: str = ""
    private: bool = False
    notes: tuple[str, ...] = field(default=())

    def to_dict(self) -> ClassDocument:
        """Give the document of class.json."""
        return class_document(self)

    def lane(self, name: str) -> LaneResult:
        """Give the lane of a name."""
        return next(lane for lane in self.lanes if lane.name == name)
