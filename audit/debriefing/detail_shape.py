"""The shape of what debrief.json tells of a leg beyond its main figures."""

from __future__ import annotations

from typing import Literal

from typing_extensions import TypedDict

from audit.debriefing.entry_values import EastNorth, Interval


class StretchHeadingEntry(TypedDict):
    """The heading of a part of a leg."""

    grid_azimuth_deg: float
    grid_azimuth_95_deg: Interval


class ThirdsEntry(TypedDict):
    """Headings of the first and the last third of a leg."""

    first: StretchHeadingEntry
    last: StretchHeadingEntry
    drift_deg: float
    """Turn from the first to the last, right positive."""
    drift_sd_deg: float


class BandLeftEntry(TypedDict):
    """Where a walk left the band of its line for good."""

    time: str | None
    lon: float
    lat: float
    along_m: float
    side: Literal["left", "right"]


class LineKeptEntry(TypedDict):
    """How well a line was kept."""

    band_m: float
    """Half the width of the band that errors of position leave, 95 %."""
    in_band_share: float
    """Share of the distance walked inside it."""
    corridor_m: float
    corridor_share: float
    """Share of the distance walked within corridor_m to either side."""
    left_band: BandLeftEntry | None
    """Null where the claim lies in the band."""


class GroundEntry(TypedDict):
    """The ground of a leg by the recording's elevations; null figures where not trusted."""

    trusted: bool
    why_not: str
    climb_m: float | None
    descent_m: float | None
    elevation_sd_m: float | None
    """Standard error of a difference of elevation."""
    slope_m: float | None
    """Distance over the ground along the slope."""
    uphill_m: float | None
    level_m: float | None
    downhill_m: float | None


class LegPacesEntry(TypedDict):
    """Paces of a leg, in whichever pace the walker counts."""

    predicted: float | None
    counted: float | None
    per_100m: float | None
    """Counted paces for 100 m over the ground."""
    per_100m_sd: float | None
    by_cadence: float | None
    """What the recording's cadence gives."""


class PointEntryOfLeg(TypedDict):
    """Whether the point was reached, against the whole error budget."""

    verdict: Literal["found", "missed", "too close to call"]
    probability: float
    """That the walker came within the arrival radius."""
    radius_m: float
    sd_m: float
    unseen_m: float
    """By how much nearer he may have come in a silence of the recording."""
    doubt: float
    """That this portion of the walk, or the next leg's, is not the right one."""
    elsewhere_m: float | None
    """Nearest approach in any other portion that it may have been, which counts then."""


class LedgerErrorsEntry(TypedDict):
    """Standard errors of the parts of the ledger."""

    inherited_m: float
    plan_m: float
    heading_m: float
    distance_m: float
    detour_m: float
    total_m: float


class SettingEntry(TypedDict):
    """The heading part of the ledger, split where the log says what was set."""

    set_turn_deg: float
    """Azimuth set minus azimuth of the card."""
    held_turn_deg: float
    """Azimuth walked minus azimuth set."""
    setting: EastNorth
    holding: EastNorth


class CutEntry(TypedDict):
    """How well the moment of leaving or of the claim is known."""

    marked_by: Literal["halt", "turn to the point", "way", "reckoned"]
    time_sd_s: float | None
    along_sd_m: float
    """Along the walk, for want of knowing the moment better."""
    place_sd_m: float
    """Of the place at that moment per axis, by the receiver."""


class SearchEntry(TypedDict):
    """Looking for the point after the claim."""

    shape: Literal["square", "fan", "straight on", "wandering"]
    path_m: float
    reach_m: float
    duration_s: float | None


class BypassEntry(TypedDict):
    """An obstacle walked round."""

    start: str | None
    end: str | None
    side: Literal["left", "right"]
    out_m: float
    ahead_m: float
    back_m: float
    side_sd_m: float
    """Standard error of out less back."""
    equal: bool
    """Whether out and back may be the same."""
    returned: bool
    """False where he went on beside the line that he had left: ``out_m`` is how far aside."""
    slanted: bool
    """Whether he went aside at a slant, which is hard to tell from wandering."""


class SightingStopEntry(TypedDict):
    """A halt on the way, as for a new sight."""

    start: str | None
    end: str | None
    turn_deg: float
    turn_sd_deg: float


class DetailsEntry(TypedDict):
    """What is told of a walked leg beyond its main figures."""

    thirds: ThirdsEntry | None
    planned_line: LineKeptEntry
    own_line: LineKeptEntry
    ground: GroundEntry
    leg_paces: LegPacesEntry
    point: PointEntryOfLeg
    ledger_sd: LedgerErrorsEntry
    setting: SettingEntry | None
    start_cut: CutEntry
    claim_cut: CutEntry
    search: SearchEntry | None
    bypasses: list[BypassEntry]
    sighting_stops: list[SightingStopEntry]


class PaceRateEntry(TypedDict):
    """Paces for 100 m over the ground."""

    per_100m: float
    sd: float
    metres: float
    """What it rests on."""


class PacesByGroundEntry(TypedDict):
    """Pace rates by kind of ground; null where too little of it was walked."""

    uphill: PaceRateEntry | None
    level: PaceRateEntry | None
    downhill: PaceRateEntry | None


class PacesEntry(TypedDict):
    """Pace counts of the whole course."""

    unit: Literal["double", "single"]
    counted: PaceRateEntry | None
    """By the walker's log."""
    counted_on: PacesByGroundEntry
    by_cadence: PaceRateEntry | None
    by_cadence_on: PacesByGroundEntry
