"""Priors of the causes, and the sizes of ordinary error that they are weighed against."""

from __future__ import annotations

from dataclasses import dataclass, field

from audit.settings.bezel import CLICK_DEG, GRADUATIONS_DEG, MOST_CLICKS_OFF
from audit.settings.line_shapes import LineShapeSettings
from audit.settings.priors import LEG_PRIORS, MADE_AGAIN, SLIPS_BESIDE, WALK_PRIORS


@dataclass(frozen=True, slots=True, kw_only=True)
class DiagnosisSettings:
    """Priors of the causes, and when one may be named.

    No public source says how often each mistake happens: all are chosen, and a school's
    own counts can replace them.
    """

    walk_priors: tuple[tuple[str, float], ...] = WALK_PRIORS
    leg_priors: tuple[tuple[str, float], ...] = LEG_PRIORS
    slips_beside: tuple[str, ...] = SLIPS_BESIDE
    keeps_to_it: float = 0.97
    """That a leg shows a mistake which the walker is making just then."""
    begins_with_it: float = 0.85
    puts_right: float = 0.05
    falls_into_it: float = 0.02
    """Of a walk with such a mistake: that it begins with the first leg; that it is put right
    between two legs; that it begins between two legs."""
    made_again: tuple[str, ...] = MADE_AGAIN
    again_rate: float = 0.3
    again_walks: float = 2.5
    """Who makes one of these slips may make it again: of so many walkers for each leg that
    otherwise shows it, on this share of their legs; chosen."""
    again_hopeless_nats: float = 5.0
    """What is less likely than the best by more comes to less than 1 per cent."""
    named: float = 0.8
    """A mistake is called named from here on; chosen: right four times in five at the least."""
    either_named: float = 0.85
    """Two mistakes are told as "one of these" from here on together; chosen on made walks of the
    development seeds: 262 of 273 such pairs held a mistake that was made, as often as from 0.9
    on (204 of 211); from 0.8 on 308 of 336 did."""
    both_made: float = 0.5
    """Nor are they told so where it is likelier than this that both were made: then each was."""
    undone_share: float = 0.25
    """What is left on the leg of two mistakes that undo each other, over either; chosen."""
    hopeless_nats: float = 8.5
    """A hypothesis so much worse than the best has less than one chance in 4000."""
    accounts_most: int = 12
    """Accounts of one leg that are weighed; the others are hopeless."""
    portion_in_doubt: float = 0.75
    """Below, a leg of which nothing can be told is said to be doubtful in its portion; chosen."""
    told_start_m: float = 25.0
    """A start this far off explains a miss that the leg itself does not; chosen."""
    least_share: float = 0.002
    """Candidates below this are not listed; their share goes to "cannot-tell"."""
    least_made: float = 0.05
    """But a mistake beside a larger one is listed from here on."""

    # Ordinary error of direction
    scatter_deg: tuple[tuple[float, float], ...] = (
        (1.2, 0.2),
        (2.0, 0.25),
        (3.5, 0.35),
        (6.0, 0.2),
    )
    """Ordinary scatter of headings from leg to leg, with weights. The Army's task standard for
    a sighted azimuth is 3 degrees (task 071-329-1003 as quoted in training notes)."""
    own_bias_deg: tuple[float, float] = (1.5, 0.3)
    """Spread of what compass and walker turn all legs by: the least, and as a share of the
    scatter, for who scatters little is also steadily right; the two add up as squares. A
    lensatic compass is specified to 2.25 degrees (MIL-PRF-10436, from memory)."""
    steady_turns_deg: tuple[tuple[float, float], ...] = (
        (4.5, 0.36),
        (7.5, 0.3),
        (10.5, 0.2),
        (13.5, 0.14),
    )
    """A steady turn is worth a name from 4 degrees on, and the larger the rarer: a compass more
    than 3 degrees out on a known line is not to be used (US Army, STP 21-1-SMCT)."""
    steady_from_deg: float = 4.0
    steady_known_deg: float = 3.2
    steady_known_odds: float = 0.4
    """A steady turn within so much of one that leaving the angle out, reversing or doubling it
    gives is so much rarer: by its definition no known angle explains it; chosen."""
    least_effect: float = 0.015
    """A leg that ends nearer than this share of its length owes nothing to what is steady."""
    stray_direction: float = 0.025
    """That something else turned the leg."""
    wild: float = 0.008
    """That a leg is wild in heading and distance at once, or its portion another's; chosen: some
    such legs come near one of the many places that a slip among digits leads to."""
    stray_near_sd_deg: float = 20.0
    stray_near_share: float = 0.8
    """By how much it did: this share of such slips turn a leg by a few graduations or a veer,
    the rest anywhere. Without it a turn of 12 degrees counts as ordinary error."""
    least_turn_deg: float = 1.5
    """A cause that turns a leg by less is no cause of anything there."""
    least_digit_turn_deg: float = 4.0
    """Nor does a slip of a digit, or another leg's azimuth, that turns it by less; chosen: beyond a
    sighted azimuth's 3 degrees."""
    least_log_ratio: float = 0.015
    """And one that changes a distance by less."""
    least_stale_deg: float = 0.75
    """An old angle that differs by less from the model's is within the model's own error
    (0.4 degrees in middle latitudes)."""
    stale_sd_deg: float = 0.4
    """Of the turn that an old angle makes: the model's own error (as above)."""
    most_stale_deg: float = 6.0
    """An angle changes by some 0.2 degrees a year in middle latitudes (from memory): a sheet of
    thirty years is out by this, and what is out by more is no matter of age."""
    click_deg: float = CLICK_DEG
    most_clicks_off: int = MOST_CLICKS_OFF
    """A click of the bezel, and from one to how many it is set off (``settings/bezel.py``)."""
    graduations_deg: tuple[float, ...] = GRADUATIONS_DEG
    """Numbered and plain graduations of a lensatic dial (``settings/bezel.py``)."""
    turned_about_sd_deg: float = 3.0
    """Who walks the back azimuth, or a right angle, had no mark ahead to hold it by; chosen."""
    set_sd_deg: float = 1.0
    """A wrong value is set as carefully as a right one, to half a click or less."""

    # Ordinary error of distance
    pace_scatter: tuple[tuple[float, float], ...] = (
        (0.02, 0.35),
        (0.04, 0.4),
        (0.07, 0.25),
    )
    own_pace_sd: float = 0.05
    """Ordinary scatter of the logarithm of distance from leg to leg, and of the walker's pace:
    3 to 10 per cent (common practice, no source)."""
    weave: float = -0.01
    """A line walked with 8 degrees of wander is 1 per cent longer than it is straight."""
    steady_pace_from: float = 0.07
    """A pace that is off by so much on all legs is worth a name, whatever made it so; chosen: 120
    paces where 130 are needed is 8 per cent (FM 21-26)."""
    pace_ratios: tuple[float, ...] = (1.09, 1.16, 1.23, 1.3)
    """A pace count that is off by a ratio: 116 against 148 paces is 1.28, 120 against 130 is
    1.08 (US Army task manual; FM 21-26), and the other way round."""
    stray_distance: float = 0.012
    stray_distance_width: float = 3.0
    """That something else put the distance out, by a factor anywhere in a span of this
    logarithm (20 fold)."""
    hundreds: tuple[tuple[int, float], ...] = (
        (1, 0.37),
        (-1, 0.37),
        (2, 0.13),
        (-2, 0.13),
    )
    """Hundreds too far walked (lost in the count) or too few, and how often."""
    least_left_m: float = 50.0
    """No hundred is lost of a leg of which less would be left; chosen: the point is in sight."""
    overshoot_m: tuple[float, ...] = (35.0, 65.0, 95.0, 125.0, 155.0)
    overshoot_sd_m: float = 18.0
    overshoot_far: tuple[float, float] = (1.35, 0.1)
    overshoot_far_share: float = 0.35
    """Most who walk on past a point notice within a hundred metres or so, whatever the leg. The
    rest count on until the leg is plainly too long, which is a share of it: the ratio, its spread,
    and how many of all they are; chosen."""
    went_on_m: float = 30.0
    knows_that_he_is_off: float = 0.5
    """Who walks on past a point, or stops short of it, mostly knows it soon; who has lost a
    hundred believes to be there. From where the count ended, the next leg is begun so much
    less often by the first than by the second."""
    early_stop: tuple[float, float] = (0.8, 0.08)
    """An early stop falls short of 0.9 of the leg (project's table of mistakes)."""
    uphill_only: float = 0.2
    """Of pace counts that fall short, those that do so uphill only; chosen."""
    uphill_grade: float = 0.06
    """Slopes of 6 per cent change step length only slightly (published, load carriage)."""
    least_slope_ratio: float = 0.975
    """Less than this between slope and map is hidden by scatter (cos 13 degrees)."""
    slope_ratio_sd: float = 0.01
    """How well the ratio is known from heights; chosen."""

    # Numbers and ground
    azimuth_swaps: tuple[tuple[int, int, float], ...] = ((0, 1, 0.25), (1, 2, 0.25), (0, 2, 0.1))
    azimuth_wrong_digit: float = 0.4 / 21.0
    """Places of swapped digits, and how often; a wrong digit is any of 3 in the first place and
    of 9 in each of the others."""
    whole_either_deg: float = 0.35
    """An azimuth as far from any whole degree is written as either of the two beside it, as often
    the one as the other; chosen: what measuring it on the map, and an angle to the half degree,
    leave open."""
    mil_circles: tuple[tuple[float, float], ...] = (
        (-0.0625, 0.4),
        (-0.015625, 0.2),
        (6400.0 / 6000.0 - 1.0, 0.3),
        (6400.0 / 6300.0 - 1.0, 0.1),
    )
    """Turn over magnetic azimuth where 6000 or 6300 mils are read on 6400, and the other way
    round, and how often each; the shares are chosen."""
    neighbour_weights: tuple[float, float] = (0.4, 0.2)
    """Of another leg's azimuth: that of the leg before or after, each; all others together."""
    heights_known: float = 0.8
    plane_fits: float = 0.7
    plane_spread_m: float = 100.0
    plane_height_m: float = 1.0
    """One slope for the course where so much of the walk has elevations, it explains so much of
    their variance, and they are spread by so much on every side and in height (standard
    deviations); chosen."""

    # Points and places
    digit_shift_most_m: float = 2000.0
    digit_shift_lengths: float = 6.0
    """Who plots a point further off, in metres or in lengths of the leg, sees it; chosen."""
    least_shift_m: float = 40.0
    least_exchange_m: float = 30.0
    """Who plots a point nearer to where it is ends at it all the same: so far off, and of easting
    and northing exchanged so far on either axis; chosen: the usual arrival radius and some."""
    other_point_lengths: float = 2.0
    """Who ends at another point goes no further to it than so many lengths of the leg; chosen."""
    point_sd_m: float = 8.0
    """How well a wrong place is plotted: a roamer reads to 10 m or so."""
    next_leg_spread: float = 0.09
    next_leg_stray: float = 0.1
    next_leg_carried: float = 0.5
    next_leg_odds_most: float = 20.0
    next_leg_least: float = 0.05
    next_leg_rounds: int = 4
    """Where the next leg ends, as a share of its length; that something else is wrong with it;
    that a wrongly plotted end makes it wrong too; what its word may count at most; how probable a
    plot must be for the next leg to be weighed from it; and how often legs may be weighed again,
    each by what was found of the one before; chosen."""
    aims_from_here: float = 0.12
    aims_far_deg: float = 6.0
    aims_far_ratio: float = 0.1
    """Aimed otherwise than the card says by more than this is not what was planned."""
    start_off_m: float = 45.0
    """From a start this far off its point some walkers aim at the right end: how many."""
    displaced_legs: int = 3
    at_the_point_sd_m: float = 4.0
    """So many starts that lie alike off their points, to the error of both and to where beside
    a marker one stands, may be the receiver's datum, or the list's; chosen."""
    other_point_sd_m: float = 15.0
    passed_m: float = 25.0
    went_past_m: tuple[float, ...] = (70.0, 130.0, 190.0)
    went_past_sd_m: float = 35.0
    passed_before_m: float = 50.0
    """Passed within sight this long before the count ended."""

    # Holding the line
    bend_sd_deg: float = 22.0
    bend_least_deg: float = 10.0
    bend_noise_deg: float = 6.0
    """Wander of an ordinary walker from the first to the last third of a leg, as a bend; chosen."""
    shape_ragged: float = 0.2
    shape_ragged_bend: float = 0.6
    """Share of legs that bend and swerve for reasons of the ground, and nothing follows; how much
    such a bend is of one that is a veer."""
    least_step_m: float = 12.0
    unequal_odds: float = 20.0
    slant_odds: float = 2.0
    paced_sideways_most: float = 0.5
    paced_sideways_sd: float = 0.15
    """Who counts the sides of bypasses ends short by them: no longer together than this share of
    the leg, and known to this share of themselves; chosen."""
    paced_bypass_odds: float = 8.0
    """How much likelier a bypass that is not walked back as far, a step aside that may have been
    wandering, and a bypass at all, are with the mistake than without; chosen: below what was
    counted on made walks."""
    line_shape: LineShapeSettings = field(default_factory=LineShapeSettings)
    shape_gaps_most: float = 0.15
    """A leg with more of it in gaps shows no line, and one with less the less of a swerve."""
    one_side_odds: float = 15.0
    """Two ways to one side and none back are rare where obstacles are boxed; chosen."""
    swerve_span_m: float = 300.0
    """A cause whose stretches have a narrower span of lengths says more by its length."""
    swerve_nats: tuple[float, float] = (4.5, 10.0)
    """Ground makes people swerve: less than the first is no evidence of a swerve, and none is
    better evidence than the second. Chosen on made walks and on real ones."""
    wrong_start_odds: float = 400.0
    """A first leg that is matched right begins away from its start for no other reason; chosen."""
    off_line_deg: tuple[float, float] = (12.0, 60.0)
    disturbed_m: tuple[float, float] = (20.0, 120.0)
    """Iron and wires act within 55 m to either side at most (FM 21-26, 1993, 9-1)."""
    led_m: tuple[float, float] = (80.0, 400.0)
    """A stretch on which a path or stream led aside, the shortest and the longest; chosen."""
    cross_slope: float = 0.08
    sidehill_deg: tuple[float, ...] = (2.5, 4.0, 5.5, 7.5)
    """From which slope on the ground pulls downhill, and by how much it turns a walker; chosen."""

    left_out_sure: float = 0.9
    """That a leg which nothing in the walk fits was left out, at full confidence of the match."""

    missed_by_little: float = 2.0
    """A point no further off than this many times what counts as passed may have been gone to
    and missed, by who was on no other leg: nobody says that it was left out; chosen."""
    looked_for: float = 1.25
    looked_for_step_s: float = 15.0
    """Who walks this many times as far as by way of a point, taken every so many seconds, did
    not leave it out to save the way: he may have looked for it; chosen on made walks, where
    points left out were passed by in up to 1.1 times as far, and those looked for in 1.4."""
    left_out_unseen: float = 0.5
    left_out_gaps: float = 0.3
    """By how much less sure, where no leg before or after was walked or more than this share of
    the way between lies in gaps of the recording."""
    late_about_m: float = 250.0
    """A recording begun no further than this from a point, nor than half the leg to it, may be
    of the search for it; chosen: a search goes 150 m about a claim 100 m off."""
    late_side_m: float = 50.0
    late_side_share: float = 0.2
    """And no further off a leg's line than this, or this share of the way along it, of the leg
    itself; chosen: twice what an ordinary walker is off by then."""

    slip_by_chance_most: float = 0.2
    slip_turned_at: float = 0.8
    slip_told_most: float = 0.7
    """Of a point never gone to: the walker turned off or halted where a slip among its digits
    leads, and of places that no slip leads to, at most this share would fit as well; how often
    he does with the slip; and that it was the slip, at the most: who leaves a point out turns
    somewhere, too. All chosen."""
    turning_deg: float = 18.0
    turning_arm_m: float = 60.0
    turning_halt_s: float = 45.0
    turning_halt_m: float = 12.0
    """A clear bend, from so far before it to so far after; a halt, and the ground it keeps to;
    chosen: a path winds by less within sight."""

    # The walker's log, and the match
    log_setting_sd_deg: float = CLICK_DEG / 4.0
    """A setting is noted to half a click of the bezel at the most, beside what the number itself is
    rounded to; chosen."""
    slip_logged: float = 0.5
    """Of a slip made on paper or on the compass (the back azimuth, a right angle, the other
    scale, another leg's azimuth, wrong digits), that it was made on paper, where the log shows it.
    On the compass the walker believes to have set what his card says, and writes down that;
    chosen: either as often."""
    angle_logged: float = 0.95
    """Of the angle left out or turned the wrong way, that the log shows it on every leg; chosen: a
    whole log is written from the card as seldom as one of its entries is wrong, and then tells
    nothing against either."""
    twice_by_sums: float = 0.7
    """The same of the angle applied twice; chosen: few compasses have a set-off that does it, and
    a steady turn of compass or walker goes with a log of the card's azimuth always."""
    log_wrong_share: float = 0.05
    """That the log is wrong about what was set; chosen."""
    misread_logged: float = 0.2
    """Of a dial read wrong at the compass, that the walker notes what it really shows: he believes
    to have set what his card says; chosen."""
    made_on_paper: float = 0.6
    """Of a slip that may be made on paper or at the compass, that the walker's own card shows it;
    chosen: a little more often than not. Only what such a card says makes use of it."""
    card_measured_sd_deg: float = 1.0
    card_sum_sd_deg: float = 0.3
    card_distance_sd: float = 0.02
    """What is ordinary on the walker's own card: an azimuth read off a protractor (STP 21-1-SMCT: 1
    degree), the sum with an angle that may be rounded to the half degree, and a distance by ruler
    and rate of paces (a part of the step's own tolerance); chosen."""
    card_right_share: float = 0.8
    """Where something without a name put a leg out, that its card is right; chosen."""
    card_wrong_share: float = 0.01
    """That the walker went by other numbers than those of the card handed in; chosen."""
    card_put_right: float = 0.3
    """The same where he ended at his point, or set out from elsewhere than his card did: the point
    in sight, or the map, puts a wrong number right; chosen."""
    log_count_sd: float = 0.03
    log_stops_early: float = 0.5
    log_goes_on: float = 0.1
    """Of legs without a mistake: that the point in sight ended the count before the card's
    paces were out, or that the walker counted on up to it, or ended it early with no point to be
    seen; chosen."""
    match_odds_gained: float = 3.0
    """How much surer of a leg's portion one may be for going with the other legs, in odds, at
    the most: it was picked to fit; chosen: trusting a doubtful portion further found more of
    the mistakes, but named some that were not made."""
    match_doubt: float = 0.4
    """How much of the doubt about a leg's portion counts against a cause that turns the whole
    of it: an end that is out by some metres does not turn a leg."""
