"""What a rehearsal finds: frozen records, no arithmetic."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from audit.forecast.leg_forecast import LegForecast
from audit.forecast.near_areas import NearArea
from audit.leg_card import CardLeg, LegCard
from audit.settings import RehearsalSettings
from audit.units import FloatArray

Unit = Literal["deg", "m", "ratio"]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Way:
    """One way in which a mistake is walked down a leg.

    Attributes
    ----------
    cause : str
        As in the catalogue of causes.
    size, unit
        How large it is: a turn (right positive), metres, or walked over planned.
    words : str
        What sets it apart from the other ways of its cause; "" where there is one.
    share : float
        How often the mistake shows in this way, over all ways of the cause.
    line : float array, shape (n, 2)
        The walk on the grid, from where it begins to where the walker's count ends.
    """

    cause: str
    size: float
    unit: Unit
    words: str
    share: float
    line: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class NearPoint:
    """A known point within sight of where a way ends; ``course`` "" for the course itself."""

    point: str
    course: str
    distance_m: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WayEnd:
    """A way held against the ground and the points.

    Attributes
    ----------
    along_m, across_m : float
        From the point: beyond it, and right of it, in the direction of travel at the end.
    ends_in, through : tuple of str
        Names of no-go areas and hazards that it ends in, and that it crosses on the way.
    ends_outside, leaves_bounds : bool
        The end lies out of bounds; the way leaves them.
    quantile : float
        Share of ordinary walks of the leg that end nearer to the middle of them: below
        0.95 the mistake hides in ordinary error.
    near : tuple of NearPoint
        The nearest first; the leg's own end is not among them.
    """

    way: Way
    east_m: float
    north_m: float
    longitude_deg: float
    latitude_deg: float
    reference: str
    along_m: float
    across_m: float
    ends_in: tuple[str, ...]
    through: tuple[str, ...]
    ends_outside: bool
    leaves_bounds: bool
    quantile: float
    near: tuple[NearPoint, ...]

    @property
    def dangerous(self) -> bool:
        """Say whether somebody may come to harm, or be looked for in the wrong place."""
        return bool(self.ends_in or self.through or self.ends_outside or self.leaves_bounds)


@dataclass(frozen=True, slots=True, kw_only=True)
class LookAlike:
    """Two mistakes that end at one place.

    Attributes
    ----------
    first, second : int
        Numbers of the ways among those of the leg.
    apart_m : float
        Between their ends.
    apart_sds : float
        The same in standard deviations of an ordinary walker, measuring included.
    by_line : bool
        The ways differ by more than the recording blurs, though the ends do not: a look at
        the line tells the two apart.
    weight : float
        How likely the two are, one beside the other; only its order means something.
    """

    first: int
    second: int
    apart_m: float
    apart_sds: float
    by_line: bool
    weight: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Proposal:
    """A change of a leg that would tell two mistakes apart, or none that was tried.

    Attributes
    ----------
    causes : (str, str)
    longer_m, turned_deg : float
        The leg is this much longer and turned this much to the right; both 0 where no
        change of those tried does it.
    end : (easting, northing) or None
        Where the point would stand.
    reference : str
        The same as a grid reference.
    apart_m : float
        How far apart the two then end, at the least.
    pairs_before, pairs_after : int
        Pairs of mistakes that look alike on the whole leg as it is, and as it would be: worked
        out anew.
    settles : str
        What else tells the two apart.
    kept_off : tuple of str
        Areas for whose sake a change that would part the two is not proposed, where none is.
    """

    causes: tuple[str, str]
    longer_m: float
    turned_deg: float
    end: tuple[float, float] | None
    reference: str
    apart_m: float
    pairs_before: int
    pairs_after: int
    settles: str
    kept_off: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class LegRehearsal:
    """All mistakes of one leg.

    Attributes
    ----------
    ends : tuple of WayEnd
        In the order of the catalogue; look-alikes name them by their place in it.
    not_here : tuple of (cause, why)
        Mistakes that cannot be made on this leg, or lead nowhere else.
    planned_through : tuple of str
        Areas that the leg itself goes through, or leaves the bounds; what all its mistakes
        share with it is no fault of theirs and is not told again of each.
    no_change : str
        Why no change of the leg was tried; "" where some were.
    """

    leg: CardLeg
    forecast: LegForecast
    ends: tuple[WayEnd, ...]
    look_alikes: tuple[LookAlike, ...]
    proposals: tuple[Proposal, ...]
    not_here: tuple[tuple[str, str], ...]
    planned_through: tuple[str, ...] = ()
    no_change: str = ""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Rehearsal:
    """A course rehearsed.

    Attributes
    ----------
    resolution_m : float
        Ends nearer than this are not told apart by a usual recording.
    beside : tuple of str
        The other courses whose points were looked at.
    near_areas : tuple of NearArea
        What walks without a mistake come to.
    settings : RehearsalSettings
        That it was rehearsed by.
    """

    card: LegCard
    resolution_m: float
    legs: tuple[LegRehearsal, ...]
    beside: tuple[str, ...]
    notes: tuple[str, ...]
    near_areas: tuple[NearArea, ...] = ()
    settings: RehearsalSettings = field(default_factory=RehearsalSettings)
