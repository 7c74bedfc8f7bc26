"""Thresholds for ends of legs that are reckoned into silences of the recorder.

"Chosen" marks a value picked by trial on simulated walks of the development seeds; so are those
of which nothing else is said.
"""

from __future__ import annotations

from dataclasses import dataclass

from audit.settings.where_slips_lead import SlipSettings


@dataclass(frozen=True, slots=True, kw_only=True)
class SilenceSettings(SlipSettings):
    """Into which silences places are reckoned, along which ways, and what such an end costs."""

    unseen_shortest_s: float = 45.0
    """In a shorter silence nobody is far from the line between its ends."""
    unseen_intervals: float = 2.0
    """Nor is a silence one that is not so many times as long as the recording has often; chosen:
    on real recordings whose receivers write a fix where their bearer turns."""
    unseen_longest_s: float = 1200.0
    unseen_rest_moves: float = 1.5
    unseen_rest_most_m: float = 30.0
    """Who moves no further in a silence than this many times what he usually does from fix to
    fix, nor than this, has rested: so receivers do that log by distance."""
    unseen_arm_m: float = 60.0
    """Of walking on either side, to see the way that leads into a silence."""
    unseen_straight: float = 0.75
    """A way is one if it is straighter than this share of its path."""
    unseen_every_m: float = 25.0
    unseen_most: int = 6
    unseen_bend_deg: float = 15.0
    """Ways nearer to one line than this meet anywhere."""
    unseen_hurry: float = 1.15
    """Nobody goes further in a silence than so many times what his usual speed makes."""
    unseen_spare_s: float = 20.0
    """Who had so much more time than his way takes may have stood."""
    unseen_late_s: float = 15.0
    """Reckoned from both sides, a start may come out so much before the claim it follows."""
    gain_unseen: float = 1.0
    """Of a silence that hides a turn or a rest: what would have been seen there is as likely."""
