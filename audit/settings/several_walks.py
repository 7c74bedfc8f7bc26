"""Thresholds for recordings that hold several walks of the course, or many rounds of it.

"Chosen" marks a value picked by trial on simulated walks, with what it trades off.
"""

from __future__ import annotations

from dataclasses import dataclass

from audit.settings.long_courses import LongCourseSettings


@dataclass(frozen=True, slots=True, kw_only=True)
class SeveralWalksSettings(LongCourseSettings):
    """When a recording is parted into walks, and which of them are weighed."""

    pause_s: float = 300.0
    """A silence or halt at least this long may part two walks; chosen: who walks a course anew
    comes back, hands over and sets out again in no less."""
    pauses_most: int = 4
    """No more pauses than this, the longest, are tried; chosen: bounds the work."""
    walk_comes_by_m: float = 200.0
    walk_comes_by_share: float = 0.6
    """A walk of the course comes this near to this share of its points; chosen: what a novice
    misses by, with every third point left out."""
    walk_alone_share: float = 0.75
    walk_alone_least_share: float = 0.5
    """Of two walks of the course one alone fits at least this share as well as both together:
    the first where they share half the legs, the second where they share all; chosen: 0.67 and
    more on the development walks looked at, 0.66 where a long hike with three legs was taken for
    two, and a half where a rest parts the legs evenly."""
    walk_better_nats: float = 3.0
    """One side of a pause is taken alone where it fits better by this; chosen."""
    again_least: float = 0.5
    """Of the length of the course, walked before and after who begins it anew; chosen: half the
    legs, as little as a walk of the course is."""
    again_cost_share: float = 0.65
    """As round_cost_share, for a course begun anew, which matching then looks at closely; chosen:
    a novice misses every other point."""
    rounds_from: float = 4.0
    rounds_from_m: float = 100_000.0
    """A recording longer than this many courses and metres holds many rounds or many days: it
    is not weighed whole; chosen: nobody walks so far on one day, and what is cut off a day's
    walk changes its noise and halts, and with them a leg in eight of a real hike by 3 %."""
    round_margin_m: float = 5000.0
    """Walked beside the course itself by who walks a round; chosen."""
    rounds_every_m: float = 5.0
    """Of the path, looked at for passings; chosen: far less than a point is passed by."""
    round_longest: float = 2.0
    """A round is at most this many courses long; chosen: as above, without the way home."""
    round_cost_share: float = 0.5
    """Of the cost of passing no point; what costs more is no round; chosen: half the points."""
    rounds_most: int = 2
    """No more rounds than this, the best by their passing, are weighed; chosen: bounds the work."""
    round_better_nats: float = 8.0
    """A second round is weighed only where the first is no better than this; chosen: one point
    passed instead of missed."""
