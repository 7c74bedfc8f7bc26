"""When the recording, or what it is taken to show, is worth a word of warning."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class QualitySettings:
    """When the recording is worth a word of warning; all chosen."""

    sparse_s: float = 15.0
    """At 1.2 m/s this is 18 m between fixes: a boxed obstacle may vanish."""
    noisy_m: float = 8.0
    """Then the heading of a 200 m leg is good to some three degrees only."""
    unsure: float = 0.7
    """Below this confidence a leg's portion is called not sure."""
    gap_share: float = 0.2
    """Share of a leg in gaps of the recording from which on it is told."""
    unmeasured_deg: float = 60.0
    """An azimuth known no better than this to either side is told as not measured."""
    elsewhere_m: float = 200.0
    """A walk that comes no nearer than this to any point may be of another course; chosen: who
    walks this one sets out from its first point, or comes upon one."""
    rounds_told: int = 5
    """No more rounds of a long recording than this are told one by one."""
    same_moment_s: float = 30.0
    """Two readings of a leg whose ends lie nearer than this have that end in common."""
    watch_off_s: float = 90.0
    """A log that ends a leg further than this from the claim is told of: a watch is read to the
    minute, and noted down a little later; chosen."""
