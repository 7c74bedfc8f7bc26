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
    other_order: float = 0.1
    """Of points in any order another one next is told from this probability on; chosen: one in
    ten."""
    rounds_told: int = 5
    """No more rounds of a long recording than this are told one by one."""
    same_moment_s: float = 30.0
    """Two readings of a leg whose ends lie nearer than this have that end in common."""
    no_leg_share: float = 1.0 / 3.0
    no_leg_s: float = 300.0
    """More than this share of the time between the ends of the course, and more than this in
    all, on no leg is told at the head; chosen."""
    tried_share: float = 0.85
    tried_off_m: float = 200.0
    """A walk that went off from where a leg was begun by this share of the leg's distance, and by
    so many metres, and came back to begin it, is told as more than a search; chosen on made walks:
    legs given up and walked again came to 0.97 at the least, and of 1500 other ways from a claim to
    the next start none to more than 0.73, which was 110 m."""
    tried_off_sd_m: float = 10.0
    tried_about: float = 0.2
    tried_aside: float = 0.1
    """It is told to tens of metres; its first fifth is of looking about; and an azimuth was held
    where the rest of the way out kept so near to a line, as a share of it; chosen."""
    watch_off_s: float = 90.0
    """A log that ends a leg further than this from the claim is told of: a watch is read to the
    minute, and noted down a little later; chosen."""
    watches_alike_s: float = 45.0
    """Moments of a log that are off by the same within this are off by the watch; chosen: half a
    minute of reading it, and of the claim itself."""
    another_north_deg: float = 1.5
    norths_alike_deg: float = 1.0
    by_card_odds: float = 4.0
    """Azimuths of a log that are off the card's by so much at the least, by the same angle within
    so much, were noted from another north where the walk lies so much nearer to the card than to
    them, in squares of the turn; all chosen."""
    zone_off_most_h: float = 3.0
    """A watch shows UTC, or a zone no further from the sun of the course; chosen: few zones are 2
    hours off it, and an hour of summer time comes on top."""
    watch_fast_most_s: float = 1800.0
    """Nor is it fast or slow by more; chosen: who walks by it would have seen that."""
    log_at_odds: float = 0.02
    """By how much rarer a log has another moment for a leg that is matched right than for one that
    is not; chosen: one note in a hundred is wrong, and so is the moment of every second leg that
    is matched wrong."""
    ends_alike_s: float = 30.0
    """The end of a leg that the times of a log moved by less is not told of; chosen: no watch is
    read as exactly."""
    against_log_most: float = 0.1
    """A portion whose leg, by count and time of the log, ended before is told as no surer than
    this; chosen: either number is wrong in one log of twenty, and both meet one place of the walk
    by chance seldom."""
    counted_out_most: float = 0.15
    """A count still speaks for a place that it is out of by no more than this, and less than of the
    claim; chosen: three times the scatter of an ordinary count."""
    looked_about: float = 1.5
    """From where the log ends a leg to its claim it took so many times longer than the way does,
    where the walker looked about between; chosen."""
