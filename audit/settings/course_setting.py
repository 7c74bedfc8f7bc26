"""When a lane stands out from the others, points are twins, and a bearing is not safe."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class CourseSettingSettings:
    """Fairness of lanes, twin points, the safety bearing."""

    uneven_share: float = 0.1
    uneven_climb_share: float = 0.2
    """A lane a tenth longer, or with a fifth more climb, should have a time limit of its own
    (common practice, no source)."""
    uneven_least_climb_m: float = 20.0
    """Less climb than this apart is nothing, whatever its share; chosen: a contour line or two."""
    uneven_least_legs: float = 1.0
    """Lanes differ by more than this many legs; chosen."""
    uneven_chance: float = 0.15
    """Or in the chance of finding a point by this much; chosen."""
    robust_sds: float = 3.0
    """From five lanes on a lane must also be this far out in robust standard deviations
    (1.4826 times the median absolute deviation: Hampel 1974); chosen."""
    robust_least_lanes: int = 5
    twin_radii: float = 2.0
    """Points closer than this many arrival radii are taken for each other (common practice)."""
    same_place_m: float = 1.0
    """Nearer than this two points of one name are one point that lanes share; chosen."""
    least_unsafe_m2: float = 1.0
    """Less ground than this from which a bearing is not safe is rounding; chosen."""
    same_bearing_deg: float = 0.5
    """Safety bearings of two lanes that differ by more are two; chosen: rounding to whole
    degrees."""
    least_light_left_s: float = 1800.0
    """Less light than this is left for whoever walks slower than the slowest rule, or has to be
    looked for; chosen: half an hour."""
    least_light_share: float = 0.5
    """Or less than this share of the walking time; chosen: who needs half as long again."""
