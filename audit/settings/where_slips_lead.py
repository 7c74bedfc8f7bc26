"""Thresholds for legs that may have been walked to where a slip leads.

"Chosen" marks a value picked by trial on simulated walks, with what it trades off.
"""

from __future__ import annotations

from dataclasses import dataclass

from audit.settings.several_walks import SeveralWalksSettings


@dataclass(frozen=True, slots=True, kw_only=True)
class SlipSettings(SeveralWalksSettings):
    """Which legs are held against slips, which slips there are, and what supposing one costs."""

    slip_sure: float = 0.9
    """Legs as sure as this without slips are not held against them, nor a walk all of whose legs
    are against half or twice the distance; chosen: saves the time."""
    slip_before_sure: float = 0.6
    """Nor are legs after the last that is as sure as this: a walk that has left the course
    passes some slip by chance; chosen: on real walks that did."""
    slips_nats: float = 8.0
    """Where no more legs are known by slips, they are believed if they explain the walk by so much
    better; chosen on made walks of other hands: right ones gained 8 nats and more, or legs."""
    cost_slip: float = 6.0
    """Nats for any one slip; chosen: less puts more planted slips right, and calls more legs
    walked that were not."""
    cost_slip_carried: float = 5.0
    """Beside that, for who plans the next leg from the wrong place as well, which leads him one
    of many ways once more; chosen: less gives legs to it that were walked otherwise."""
    slip_direction_share: float = 0.5
    """Of what the directions of a leg can bring, what a straight way brings here; chosen: legs
    walked rightly bring 0.6 in the middle."""
    slip_most_m: float = 1000.0
    """Slips that put the point further off are noticed; chosen: the next grid line still is one."""
    slip_shortest: float = 0.4
    """Of the leg's distance: shorter ways lie about every point by chance; chosen."""
    slip_apart_sd: float = 1.5
    """Slips nearer to one another than this, in usual errors of a leg, are one; chosen."""
    slip_reach_sd: float = 4.0
    """A portion that ends further off than this from every slip was not so walked; chosen."""
    slip_path_most: float = 1.3
    slip_path_m: float = 60.0
    """Only ways no longer than this times their chord, and so many metres, are looked at: what
    their directions say is told by how straight they are; chosen."""
