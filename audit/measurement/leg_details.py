"""What is told of a walked leg beyond its main figures: frozen records, no arithmetic."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from audit.measurement.places_and_headings import Heading, Place
from audit.units import FloatArray

Side = Literal["left", "right"]
PointVerdict = Literal["found", "missed", "too close to call"]
SearchShape = Literal["square", "fan", "straight on", "wandering"]
Ground = Literal["uphill", "level", "downhill"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Thirds:
    """How the first and the last third of a leg were headed, for drift.

    ``drift_deg`` is the turn from the first to the last, right positive, with its
    standard error ``drift_sd_deg``.
    """

    first: Heading
    last: Heading
    drift_deg: float
    drift_sd_deg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LineKept:
    """How well a line was kept.

    Attributes
    ----------
    band_m : float
        Half the width of the band in which receiver error (and, for the planned line,
        the precision of its points) leaves the walker: 95 %.
    in_band_share, corridor_share : float
        Share of the distance walked inside the band, and inside ``corridor_m`` to
        either side of the line.
    left : Place or None
        Where the walk left the band for good; None where the claim lies in it.
    left_along_m, left_side
        How far along the line that was, and to which side.
    """

    band_m: float
    in_band_share: float
    corridor_m: float
    corridor_share: float
    left: Place | None = None
    left_along_m: float | None = None
    left_side: Side | None = None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class GroundWalked:
    """The ground of a leg by the recording's own elevations, where they can be trusted.

    Attributes
    ----------
    trusted : bool
    why_not : str
        Why the elevations are not trusted; "" where they are.
    along_m, elevation_m : float arrays, shape (n,)
        Distance over the ground and smoothed elevation along the leg; empty unless
        trusted.
    climb_m, descent_m, elevation_sd_m : float or None
        Metres up, metres down (positive), and the standard error of a difference.
    slope_m : float or None
        Distance over the ground along the slope: what the legs walked.
    uphill_m, level_m, downhill_m : float or None
        Horizontal metres by kind of ground, adding up to the path.
    """

    trusted: bool
    why_not: str
    along_m: FloatArray
    elevation_m: FloatArray
    climb_m: float | None = None
    descent_m: float | None = None
    elevation_sd_m: float | None = None
    slope_m: float | None = None
    uphill_m: float | None = None
    level_m: float | None = None
    downhill_m: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class LegPaces:
    """Paces of a leg in whichever pace the walker counts; None where unknown.

    Attributes
    ----------
    predicted : what the card says for the planned distance.
    counted : what the walker's log says.
    per_100m, per_100m_sd : counted paces for 100 m over the ground, with standard error.
    by_cadence : what the recording's cadence gives between leaving and claim.
    """

    predicted: float | None
    counted: float | None
    per_100m: float | None
    per_100m_sd: float | None
    by_cadence: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class PointReached:
    """Whether the point was reached, against the whole error budget.

    Attributes
    ----------
    verdict
        "found" where the nearest approach lies within the arrival radius (the benefit
        of the doubt), "missed" where no likely error could bring it there, else "too
        close to call".
    probability : float
        That the walker really came within the radius.
    radius_m, sd_m : float
        Arrival radius; standard error of the nearest approach: receiver, logging gap
        and the precision of the point.
    unseen_m : float
        By how much nearer the walker may have come in a silence of the recording.
    doubt : float
        That this portion of the walk, or the next leg's, is not the right one.
    elsewhere_m : float or None
        Nearest approach in any other portion that it may have been, which counts then.
    """

    verdict: PointVerdict
    probability: float
    radius_m: float
    sd_m: float
    unseen_m: float
    doubt: float = 0.0
    elsewhere_m: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class LedgerErrors:
    """Standard errors of the ledger's parts in metres, along the part's own direction."""

    inherited_m: float
    plan_m: float
    heading_m: float
    distance_m: float
    detour_m: float
    total_m: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Setting:
    """The ledger's heading part split where the log says what was set: they add up to it.

    ``setting`` is from the azimuth set instead of the card's, ``holding`` from the one
    walked instead of the one set; (east, north) in metres.
    """

    set_turn_deg: float
    held_turn_deg: float
    setting: tuple[float, float]
    holding: tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class CutError:
    """How well the moment of a start or a claim is known.

    Attributes
    ----------
    marked_by : what shows it: a halt, a turn to the point in sight, or nothing but the way;
        "reckoned" where the recorder was silent.
    time_sd_s, along_sd_m : standard errors in time and along the walk.
    place_sd_m : standard error per axis of the place at that moment, by the receiver.
    """

    marked_by: Literal["halt", "turn to the point", "way", "reckoned"]
    time_sd_s: float
    along_sd_m: float
    place_sd_m: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Search:
    """Looking for the point after the claim."""

    start_s: float
    end_s: float
    shape: SearchShape
    path_m: float
    reach_m: float
    """Furthest from where it began."""
    past_m: float = 0.0
    """Of a walk straight on: how far beyond the point it went, along the planned line. That may
    have been the count going on, and no search."""
    walked_up: bool = False
    """Straight to the point, from so near that it was in sight: no search either."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bypass:
    """An obstacle walked round.

    Attributes
    ----------
    side : on which it was passed.
    out_m, ahead_m, back_m : its three sides; ``side_sd_m`` is the standard error of
        out less back.
    equal : whether out and back may be the same length.
    returned : False where he went on beside the line that he had left: then ``out_m`` is
        how far aside, and ``back_m`` 0.
    slanted : whether he then went aside at a slant, hard to tell from wandering.
    """

    start_s: float
    end_s: float
    side: Side
    out_m: float
    ahead_m: float
    back_m: float
    side_sd_m: float
    equal: bool
    returned: bool = True
    slanted: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class SightingStop:
    """A halt on the way, as for a new sight: when, and how the heading turned there."""

    start_s: float
    end_s: float
    turn_deg: float
    turn_sd_deg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LegDetails:
    """Everything above of one leg; None where it does not apply."""

    thirds: Thirds | None
    planned_line: LineKept
    own_line: LineKept
    ground: GroundWalked
    paces: LegPaces
    point: PointReached
    ledger_errors: LedgerErrors
    setting: Setting | None
    start_error: CutError
    claim_error: CutError
    search: Search | None
    bypasses: tuple[Bypass, ...]
    sighting_stops: tuple[SightingStop, ...]
