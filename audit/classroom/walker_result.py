"""The result of one walker: an attempt on a lane, leg by leg."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from audit.grading.verdicts import PointVerdict, WalkTime, WalkVerdict
from audit.matching.leg_match import LegStatus
from audit.measurement.near_roads import NearRoads

WalkerState = Literal["graded", "no-track", "refused"]
"""Debriefed; nothing handed in; a recording that could not be used."""


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
    left_out : str
        The point that was left out, where that is the likeliest; "" of any other cause.
    named_from : float
        The probability from which on the likeliest is named alone, as in the debrief.
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
    left_out: str = ""
    named_from: float = 1.0
    moving_s: float | None = None
    searching_s: float | None = None
    halted_s: float | None = None
    climb_m: float | None = None
    descent_m: float | None = None
    trace_from: int | None = None
    trace_to: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class TrackFacts:
    """What the recording of a walker is worth.

    ``elsewhere`` says that it may be of another course; "" where it is of this one.
    """

    fixes: int
    start_s: float | None
    end_s: float | None
    median_interval_s: float | None
    noise_m: float
    notes: tuple[str, ...] = ()
    elsewhere: str = ""


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
    shift_s : float
        What was added to the clock of the recording.
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
    shift_s: float = 0.0
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
