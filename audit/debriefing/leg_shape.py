"""The shape of what debrief.json tells of a leg, field by field."""

from __future__ import annotations

from typing import Literal

# The standard library's own TypedDict cannot be read by schema makers before Python 3.12.
from typing_extensions import TypedDict

from audit.debriefing.coaching_shape import StepsEntry, WhatIfEntry
from audit.debriefing.detail_shape import DetailsEntry
from audit.debriefing.entry_values import CauseName, EastNorth, Interval
from audit.debriefing.forecast_shape import ForecastEntry


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
    """Nearest to the planned point, from leaving until leaving for the next.

    Of a leg that was not walked in the whole recording.
    """

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
    log_note: str | None
    """What the walker wrote beside the leg in his log; null without any, or where private."""
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
