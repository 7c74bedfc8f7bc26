"""What a fix must be to be kept."""

from __future__ import annotations

from dataclasses import dataclass

OUTING_SILENCE_S = 21600.0
"""A silence of six hours parts two outings; chosen: a long rest is shorter, a night is not."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CleaningSettings:
    """What a fix must be to be kept.

    Chosen on simulated walks with correlated noise of 2 to 12 m, logged every 1 to 30 s,
    so that none of their fixes is lost.
    """

    # Times
    timed_share: float = 0.5
    """Fixes with times are kept if they show this share of the way that the others show."""
    disorder_share: float = 0.05
    """With more steps back in time than this the order of the file says nothing; chosen."""
    clock_jump_s: float = 600.0
    """Fixes that come late come less late than this; of less, only the place tells that it is
    the clock; chosen: zones and summer time differ by at least half an hour."""
    same_place_m: float = 50.0
    """A leap of the clock moves nobody further; late fixes lie as near the others; chosen."""
    leap_pace_m_s: float = 0.6
    """Slower than this across two leaps of the clock may be a rest; chosen: half a walk's pace."""
    late_fixes: int = 3
    """Beside a silence so few may come late, and no clock leapt; chosen: a recorder that writes two
    of them swapped."""
    leaps_looked_at: int = 20
    """Leaps of the clock near one that may be its opposite, or end what it begins; chosen: bounds
    the work."""
    usual_step_quantile: float = 0.95
    """Share of the steps that take no longer than usual; chosen: few recorders are quite even."""
    stretch_least: float = 0.75
    stretch_most: float = 1.5
    stretch_spreads: float = 3.0
    """Of the usual steps, what those over a stretch may take together, and at how many standard
    deviations from them; chosen: a fix that comes late lies in one step, not in two."""
    most_side_by_side: int = 1000
    """More parts of the file at the same time than this are mixed; chosen: bounds the work."""
    gap_s: float = 20.0
    """A silence longer than this, and than four usual intervals on foot, is a gap; chosen."""
    outing_silence_s: float = OUTING_SILENCE_S
    """Beyond it lies another outing, with a usual interval of its own."""
    gap_intervals: float = 4.0
    """Usual intervals that make a gap; chosen: recorders that save power skip up to three."""
    untimed_speed_m_s: float = 1.2
    """Even walk of a recording without times; chosen: any speed would do."""

    # Spikes
    spike_longest_fixes: int = 5
    """A run of more bad fixes than this is a place, not a spike; chosen."""
    spike_slack_m: float = 15.0
    """Added to what the pace allows, for receiver noise; chosen: 20 m finds 93 instead of 95 in 100
    spikes over 60 m logged every 30 s, 12 m costs good fixes."""
    spike_fix_m: float = 10.0
    """A longer run must explain this much more for each fix; chosen: less takes good
    neighbours along."""
    pace_quantile: float = 0.9
    pace_margin: float = 1.1
    """The brisk pace of the walk: this many times what nine in ten of its steps keep below;
    chosen: a higher share takes in the spikes themselves."""
    slow_pace_m_s: float = 1.6
    fast_pace_m_s: float = 3.3
    """The brisk pace lies between a brisk walk and a steady run (common practice)."""
    neighbour_steps: int = 6
    """Steps on either side that show how fast the walker, or his bus, moves just then; chosen."""
    ride_steps: int = 4
    """Steps in a row that make a ride; chosen: a single spike makes two fast steps."""
    lesser_way: float = 0.6
    """Of a spike along the line of march the slower way is at least this share of the pace
    around it; chosen: a good fix beyond a turn is slower."""
    spike_speed_m_s: float = 6.0
    """Nobody on foot keeps this up from fix to fix; chosen: 1500 m races are run at 7 m/s."""
    turned_back_cosine: float = -0.5
    """Of the angle between way out and way back: more than 120 degrees; chosen."""
    straight_on_cosine: float = 0.7
    ride_keeps_pace: float = 0.5
    """A ride goes on within 45 degrees and at half the speed at least; chosen."""
    fastest_ride_m_s: float = 40.0
    """Out and back faster than this is no ride; chosen: 144 km/h."""
    leap_over_pace: float = 2.0
    """A stray is left at this many times the fastest pace next to it; chosen: rides start and
    end by degrees."""
    ride_straight_share: float = 0.8
    """Chord over path of strays that are a ride; chosen."""
    stray_majority: float = 3.0
    """Strays are told from the walk by at least this many times the longest spike; chosen."""
    most_rounds: int = 20
    """Rounds of looking for spikes; chosen: real recordings take two to four."""
