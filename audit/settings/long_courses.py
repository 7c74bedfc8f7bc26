"""Thresholds of the first look along a long course."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class LongCourseSettings:
    """Which courses are looked at along the plan first, and what the look leaves open."""

    first_look_from_legs: int = 24
    """Shorter courses are weighed at once; chosen: there the look takes what it saves."""
    first_look_reach_m: float = 500.0
    """The look follows the walker this far from the points; where he was further off it passes
    the legs over, and leaves more open; chosen."""
    first_look_nats: float = 60.0
    """Cuts at which a walk along the plan has less than exp(-this) need no second look; chosen:
    half as much again as in_play_nats, for ways that this look does not know."""
    first_look_over: float = 1.5
    """For passing over a leg; chosen: less than any way of leaving one out costs."""
    first_look_neighbours: int = 2
    """A point may also have been visited while the ones so far before or behind it in the plan
    were; chosen: as many as a way beside the plan reaches over."""
