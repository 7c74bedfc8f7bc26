"""How far a plan may be off its own sums, and off what anyone plans, before that is told."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class CardSettings:
    """How far the plan may differ from its own sums before that is a finding."""

    azimuth_slack_deg: float = 0.5
    """What a careful hand with a protractor may be off; chosen: half of the 1 degree that the
    US Army map-reading standard allows a student, since a plan is made with more care."""
    angle_slack_deg: float = 0.5
    """Maps give the grid-magnetic angle to the nearest half degree (TC 3-25.26, 6-11), and
    planners round the sum of it once more."""
    carried_back_years: float = 10.0
    carried_back_sd_deg: float = 0.1
    """So many years before the first model its yearly change still tells the angle, to so many
    degrees a year; chosen: the yearly change itself changes by less than that in ten years."""
    model_sigmas: float = 2.0
    """A printed grid-magnetic angle may be this many of the model's standard errors off."""
    distance_slack: float = 0.01
    """Share of a distance that a ruler on paper may be off; chosen: a fifth of the 5 % that
    the US Army map-reading standard allows a student."""
    distance_rounding_most_m: float = 25.0
    """A distance in whole hundreds may be rounded this far; chosen: to the nearest 50."""
    pace_slack: float = 0.01
    """Share of a pace count that rounding the pace rate may cost (65 for 65.5 is 0.8 %)."""
    pace_rounding_most: float = 5.0
    """A pace count in whole tens may be rounded this far; chosen."""
    angle_change_deg: float = 0.2
    """A grid-magnetic angle that changes more than this over the course is worth a note;
    chosen: a tenth of what a good hand compass holds."""
    scale_change: float = 0.002
    """Grid and ground distance further apart than this share are worth a note; the edge of a
    UTM zone has 0.001."""
    outside_grid_note_deg: float = 0.5
    """A course begun this far outside its grid's area is worth a note; chosen."""
    outside_grid_finding_deg: float = 3.0
    """This far outside, the grid is a slip; chosen: half a UTM zone, which is also how far the
    widened zones of Norway and Svalbard reach beyond their own."""
    undated_slack_deg: float = 10.0
    """Without a date the angle may be this far from that of 2025: where it moves fastest on land
    in use, Cape Town, 0.23 degrees a year over some 40 years; chosen."""
    map_age_years: tuple[float, float] = (5.0, 60.0)
    """Ages of maps in use: an angle that a map of such an age would carry is told with it;
    chosen."""
    weak_field_nt: float = 6000.0
    """Horizontal field under which a compass is sluggish (WMM technical report, caution zone)."""
    stale_days: int = 366
    """A plan dated further than this from the walk has an old angle; chosen: one year."""
    longest_leg_m: float = 100_000.0
    """A longer leg is a slip in a square's letters or in the zone, not a walk; chosen."""
    shortest_leg_m: float = 0.01
    """Points nearer than this are the same place and give no direction; chosen: rounding."""
    long_leg_m: float = 20_000.0
    """A leg longer than this has a wrong point; chosen: published legs reach 13 km (selection
    courses), and half as much again."""
    few_metres_share: float = 0.1
    """A distance that is so little of what the points say, and no more than the longest leg in
    kilometres, may be one in kilometres; chosen."""
    nearer_share: float = 0.25
    """Of two azimuths that disagree the one is right which lies so much nearer to the points than
    the other; chosen: squares of a reference that speak for one seldom do so by four to one."""
    via_astray_m: float = 1_000.0
    via_astray_times: float = 4.0
    """A via position that makes the way between its neighbours longer by more than this, and so
    many times as long, has a wrong reference; chosen: no leg goes a kilometre out and back."""
    via_stated_m: float = 500.0
    via_stated_times: float = 2.5
    """Where the plan states a distance, so much longer and so many times as long is enough, if the
    via position makes half of the difference; chosen: nobody states a straight distance for a way
    that bends so far, and half of what is too much where nothing is stated."""
    reference_azimuth_deg: float = 3.0
    """References that leave a leg's azimuth more open than this are too coarse for it: what the
    US Army standard wants of a sighted azimuth (STP 21-1-SMCT, compass to the cheek)."""
    named_digit_deg: float = 3.0
    named_hundred_m: float = 50.0
    """With more room than this nearly any slip of a digit, or any hundred, would fit; chosen:
    the step of a bezel, and half a hundred."""
