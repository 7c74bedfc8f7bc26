"""The finished measurements of one leg and of the walk: frozen records, no arithmetic."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from audit.azimuths import GridAzimuth
from audit.leg_card import CardLeg
from audit.matching.leg_match import LegStatus
from audit.measurement.leg_details import LegDetails, PointVerdict
from audit.measurement.places_and_headings import Heading, Place
from audit.units import FloatArray

__all__ = [
    "CrossTrack", "Heading", "Ledger", "LegAudit", "LegMeasures", "Place", "Span", "SpanKind",
]  # fmt: skip

SpanKind = Literal["approach", "walking", "halt", "at-point", "bypass", "search", "gap", "walk-off"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """A stretch of the recording; spans follow each other without overlap or hole.

    ``start_s`` and ``end_s`` are its moments on the CleanTrack's axis: a leg's spans begin
    when the walker left for it, and its search at the claim. ``first`` and ``last`` are the
    kept fixes nearest to them, one and the same in a span between two fixes. ``leg`` is an
    index into the plan's legs, or None.
    """

    start_s: float
    end_s: float
    first: int
    last: int
    leg: int | None
    kind: SpanKind


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CrossTrack:
    """Distance to the right of a line, along it. Arrays have shape (n,), read-only.

    Attributes
    ----------
    along_m, offset_m : float arrays
        Metres along the line from its start, and to the right of it, fix by fix.
    end_m, max_abs_m, rms_m : float
        At the claim; the largest in size; the root mean square over distance walked.
    """

    along_m: FloatArray
    offset_m: FloatArray
    end_m: float
    max_abs_m: float
    rms_m: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Ledger:
    """Where the miss came from: (east, north) vectors in metres that add up to ``total``.

    Attributes
    ----------
    inherited : from where the walker really began.
    plan : what the card says against what the points say.
    heading : from turning off the card's azimuth.
    distance : from walking more or less than the card's distance.
    detour : what is left sideways of the walked heading.
    total : the miss: claim less planned point.
    """

    inherited: tuple[float, float]
    plan: tuple[float, float]
    heading: tuple[float, float]
    distance: tuple[float, float]
    detour: tuple[float, float]
    total: tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class LegMeasures:
    """What was walked on one leg that was walked.

    Attributes
    ----------
    straight_m, straight_sd_m : float
        From start to claim, with its standard error.
    path_m : float
        Over the ground from start to claim, halts at rest, receiver noise smoothed out.
    paces : float or None
        Counted where the log says it, else ``straight_m`` by the pace count; of a leg along
        via positions ``path_m``.
    duration_s, halted_s : float or None
        Start to claim, and halts within; None without times.
    azimuth_error_deg, distance_error_m, distance_ratio : float
        Walked against the card; the distance of a bent line that was not followed is ``path_m``.
    made_good_m : float or None
        What the distance of the card is set against: ``straight_m``, or of a leg along via
        positions what was made along its line; None where that was not followed.
    miss_m, miss_azimuth, miss_along_m, miss_across_m
        From the planned point to the claim; along and right of the planned line, of a bent
        one from end to end.
    miss_sd_m : float
        Standard error of the miss per axis: receiver, logging gap and the precision of
        the point's reference.
    nearest_m, nearest_s : float, float or None
        Nearest approach to the planned point from leaving until leaving for the next.
    found : bool
        Nearest approach within the arrival radius.
    gap_share : float
        Share of the straight distance that fell into gaps of the recording.
    unseen_s : float or None
        Of ``duration_s``, how much fell into gaps; None without times.
    curve_time_s : float array
        When the places of the cross-track curves were passed, on the CleanTrack's axis.
    noise_m : float
        Receiver noise on this leg, standard deviation per axis.
    along_planned_m, along_heading_m : float
        From start to claim along the planned azimuth, and along the walked heading;
        both with the standard error ``straight_sd_m``.
    path_sd_m : float
        Standard error of ``path_m``.
    details : LegDetails or None
        Drift, line, ground, paces, point, errors of the ledger, search and halts.
    nearest_after_m : float
        Nearest approach to the point once the walker had left where he claimed, or rested
        there; ``miss_m`` where he left it for the next leg.
    line_followed : bool
        False where a leg along via positions was walked another way: then its distance is
        that of no line, and says nothing of pace or count.
    under_way : bool
        The recording began on the leg: its start, its distance and what was inherited are the
        recording's, and say nothing of the walker.
    """

    start: Place
    claim: Place
    heading: Heading
    straight_m: float
    straight_sd_m: float
    path_m: float
    paces: float | None
    paces_from: Literal["log", "pace count"] | None
    duration_s: float | None
    halted_s: float | None
    azimuth_error_deg: float
    distance_error_m: float
    distance_ratio: float
    cross_track: CrossTrack
    own_cross_track: CrossTrack
    miss_m: float
    miss_azimuth: GridAzimuth
    miss_along_m: float
    miss_across_m: float
    miss_sd_m: float
    nearest_m: float
    nearest_s: float | None
    found: bool
    ledger: Ledger
    gap_share: float
    curve_time_s: FloatArray
    noise_m: float
    along_planned_m: float
    along_heading_m: float
    path_sd_m: float
    nearest_after_m: float
    details: LegDetails | None = None
    line_followed: bool = True
    made_good_m: float | None = None
    under_way: bool = False
    unseen_s: float | None = None

    @property
    def ends_reckoned(self) -> tuple[bool, bool]:
        """Whether start and claim were reckoned into a silence: nobody saw the walker there."""
        if self.details is None:
            return False, False
        errors = (self.details.start_error, self.details.claim_error)
        start, claim = (error.marked_by == "reckoned" for error in errors)
        return start, claim

    def came_back(self, radius_m: float) -> bool:
        """Say whether the walker came within a radius of the point after his claim.

        Who only passed it on the way did not find it; nor did he come back whom a few fixes
        show nearer, by less than the error of where he claimed.
        """
        nearer_m = self.miss_m - self.nearest_after_m
        return self.nearest_after_m <= radius_m and nearer_m > self.miss_sd_m

    def at_the_edge(self, radius_m: float) -> bool:
        """Say whether a leg whose point was found ended outside a radius by less than its error.

        Nobody can tell that he missed, nor that he found it only afterwards.
        """
        return self.found and 0.0 < self.miss_m - radius_m <= self.miss_sd_m

    @property
    def point_verdict(self) -> PointVerdict:
        """Whether the point was found; without details by the nearest approach alone."""
        if self.details is not None:
            return self.details.point.verdict
        return "found" if self.found else "missed"


@dataclass(frozen=True, slots=True, kw_only=True)
class LegAudit:
    """One leg of the card and what became of it. ``measures`` is None unless walked.

    ``before_recording`` tells of a leg that is missing since the recording begins after it:
    nobody knows whether it was walked. ``passed`` is how near, in metres, the recording comes
    to the end of a leg that was not walked, and when, on the CleanTrack's axis; None of one
    that was, whose measures tell it.
    """

    card: CardLeg
    status: LegStatus
    confidence: float
    measures: LegMeasures | None
    before_recording: bool = False
    passed: tuple[float, float] | None = None
