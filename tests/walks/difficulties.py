"""How hard a made walk is: chances and ranges."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

Range = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Difficulty:
    """Chances (0 to 1) and ranges (uniform unless said otherwise) of a family of walks."""

    name: str
    # course
    legs: tuple[int, int] = (3, 12)
    leg_m: Range = (80.0, 2000.0)
    leg_median_m: float = 400.0
    close_points: float = 0.0
    collinear: float = 0.0
    marked: float = 0.6
    marker_sd_m: float = 2.0
    least_declination_deg: float = 0.0
    """Places where the needle points nearer to true north than this are left out."""
    misplaced: float = 0.0
    """Chance that the course has one marker 60 to 200 m off."""
    slope: float = 0.0
    """Fall over distance of the one slope that the course lies on; 0: no elevations."""
    true_digits: bool = False
    """Slips in a reference are slips among its own digits, not any multiple of 90 or 100 m."""
    old_angle_on_plan: bool = False
    """A stale angle stands on the plan; else it is the walker's alone."""
    # walker
    speed_m_s: Range = (0.8, 1.5)
    bias_sd_deg: float = 0.0
    leg_sd_deg: float = 0.0
    sighting_sd_deg: float = 0.0
    wander_deg: Range = (0.0, 0.0)
    wander_s: Range = (10.0, 40.0)
    pace_sd: float = 0.0
    leg_pace_sd: float = 0.0
    walk_mistakes: Mapping[str, float] = field(default_factory=dict)
    """Chance of each mistake that the whole walk shares."""
    leg_mistakes: Mapping[str, float] = field(default_factory=dict)
    """Chance of each mistake, leg by leg."""
    notices: float = 0.4
    """Chance that a walker who set off by more than 30 degrees wrong notices on the way."""
    # halts
    halt_at_point: float = 1.0
    halt_at_point_s: Range = (15.0, 180.0)
    halts_per_km: float = 0.0
    halt_s: Range = (8.0, 120.0)
    # obstacles
    boxed: float = 0.0
    # the point
    sight_m: Range = (8.0, 30.0)
    sees: float = 1.0
    finds: float = 1.0
    """Chance of finding a marked point from 0 m; falls with the miss."""
    halt_before_search: float = 0.9
    # behaviour
    skips: float = 0.0
    swaps: float = 0.0
    repeats: float = 0.0
    lost: float = 0.0
    abandons: float = 0.0
    # outing
    approach_m: Range = (0.0, 300.0)
    vehicle: float = 0.0
    pace_strip: float = 0.0
    two_walks: float = 0.0
    starts_late: float = 0.0
    ends_early: float = 0.0
    # receiver
    noise_m: Range = (0.0, 0.0)
    correlation_s: Range = (20.0, 60.0)
    slow_share: Range = (0.0, 0.0)
    """Slow offsets (600 s), as a share of the noise."""
    smoothing_s: Range = (0.0, 8.0)
    white_m: float = 0.0
    under_trees: float = 0.0
    """Share of the time under trees, where the noise doubles."""
    spikes_per_h: float = 0.0
    gaps_per_h: float = 0.0
    gap_s: Range = (20.0, 180.0)
    interval_s: tuple[float, ...] = (1.0,)
    by_distance: float = 0.0
    """Chance of a receiver that logs by distance moved."""
    decimals: tuple[int, ...] = (7,)

    def planting(
        self, *, walk: Mapping[str, float] | None = None, leg: Mapping[str, float] | None = None
    ) -> Difficulty:
        """Give this difficulty with these mistakes only, by chance a walk and a leg."""
        return replace(self, walk_mistakes=dict(walk or {}), leg_mistakes=dict(leg or {}))
