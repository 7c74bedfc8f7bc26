"""Thresholds of measuring: noise, headings, claims, paths, searches, ground and paces.

"Chosen" marks a value picked by trial on simulated walks, with what it trades off.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class HeadingSettings:
    """How the walked heading and its interval are found."""

    shortest_m: float = 10.0
    """Below this start and claim are one place and a heading has no meaning; chosen."""
    unknown_sd_deg: float = 104.0
    """Standard deviation of a direction of which nothing is known: 180 / sqrt(3)."""
    least_fixes: int = 5
    """With fewer, only the two ends are used; chosen."""
    halt_fixes: int = 14
    leg_fixes: int = 40
    """Fixes used of each halt and of the leg, spread evenly; chosen: more of them, correlated
    as they are, narrow the interval by less than a hundredth."""
    spacing_s: float = 15.0
    """And none nearer than this to the one before: receivers smooth what they write, and fixes
    a second apart make their error look small. Chosen on made walks: with all fixes the interval
    holds the truth 88 times in 100, with these 96 times, and the error is the same."""
    noise_correlations_s: tuple[float, ...] = (25.0, 80.0, 250.0, 600.0)
    """Receivers forget over a minute or two, with a slow tail of many: about a minute (D. L.
    Wilson, gpscorr); a still receiver at hand keeps 0.9 of its error over 10 s, which is 95 s."""
    usual_correlation_s: float = 80.0
    usual_correlation_log_sd: float = 0.9
    """What is known of it beforehand: then as the halts of the recording show, to which the
    next is added."""
    leg_correlation_log_sd: float = 0.8
    wander_correlations_s: tuple[float, ...] = (15.0, 50.0)
    """How long a walker keeps a wrong turn before the compass brings him back; chosen."""
    strength_deviates: tuple[float, ...] = (-1.8, -0.9, 0.0, 0.9, 1.8)
    noise_log_sd: float = 0.55
    """The noise of one leg lies within a factor of 1.7 of the whole walk's; chosen. What the
    halts leave open of the walk's own is added to it."""
    wander_sd_deg: float = 7.0
    wander_log_sd: float = 0.6
    """Headings wander 3 to 15 degrees about the one held; chosen."""
    white_share: float = 0.01
    """Share of the noise variance that is forgotten at once: rounding of positions; chosen."""
    step_sds: tuple[tuple[float, float], ...] = ((0.06, 0.8), (0.6, 0.2))
    """By how much a walker comes back from a bypass short or far of the line that he left, as
    shares of how far he went out, and how often: as he counted, or badly; chosen."""
    least_other_end: float = 0.02
    """A less probable end of a leg does not widen the interval; chosen."""
    shortest_thirds_m: float = 60.0
    """The thirds of a shorter leg say nothing of drift; chosen."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuringSettings:
    """How places, paths, bypasses and spans are measured."""

    noise_correlation_s: float = 100.0
    """For the standard error of a place averaged over a halt: a still receiver at hand keeps
    0.9 of its error over 10 s."""
    halt_reach_s: float = 6.0
    halt_window_s: float = 120.0
    """A halt is averaged over at most this long: receivers drift over more."""
    line_window_s: float = 12.0
    corner_fixes: float = 3.0
    corner_moments: int = 9
    corner_speed_sd: float = 0.2
    """Where this window holds too few fixes: so many fixes to either side show a corner, tried at
    so many moments, at the walker's usual speed to within this share; chosen."""
    unseen_sd_m: float = 12.0
    unseen_sd_share: float = 0.22
    """Standard error per axis of a place reckoned into a silence, and what each metre from the
    nearest fix adds; found on made walks of the development seeds."""
    unseen_straight_sd_share: float = 0.6
    """The same of a place straight between the fixes about a silence: it may hide a corner, which
    lies as far off the line as half the line is long; chosen."""
    line_left_m: float = 50.0
    line_left_share: float = 0.2
    """A corner of a bent line was passed by where the walk keeps further off it than this, and
    than this share of the way to it; chosen: twice what an ordinary walker is off by then."""
    line_left_aside: float = 0.5
    """And by this share of what the corner lies off the straight way; chosen: it was walked
    nearer to that."""
    path_smoothing_s_per_m: float = 2.5
    path_smoothing_least_s: float = 5.0
    path_smoothing_most_s: float = 25.0
    """Seconds of smoothing for each metre of noise: less leaves noise in the path, more cuts
    the corners of a bypass; chosen on walks of known length."""
    at_point_m: float = 25.0
    """Within this of where the walker then left from counts as being there; chosen."""
    bypass_side_m: float = 12.0
    bypass_turn_deg: float = 40.0
    """A side of a bypass runs within this of a right angle to the leg; chosen."""
    bypass_ahead_m: float = 300.0
    """Further on than this, the way back belongs to something else; chosen."""
    passage_window_s: float = 30.0
    """Speed and direction at a moment are those of the chord over this long; chosen: some forty
    metres of walking, several times what a receiver wanders meanwhile."""
    passage_standing_m_s: float = 0.25
    """Slower than this over the window has no direction; chosen: a receiver at rest wanders
    as fast."""
    bypass_level_m: float = 15.0
    """So much of the way before and after a bypass shows the line it left and came back to."""
    bypass_equal_share: float = 0.05
    """Sides counted out and back differ by this share without anybody's fault; chosen."""
    corridor_m: float = 25.0
    """Either side of the planned line. Nine tenths of the well-defined points of a 1:50 000 sheet
    lie within 1/50 inch, 25 m on the ground (United States National Map Accuracy Standards)."""
    path_sd: float = 0.02
    path_sd_per_s: float = 0.0015
    """Standard error of a smoothed path as a share, beside that of its ends, and what each second
    between two fixes adds to it: nobody saw what was walked meanwhile; chosen."""
    path_lost_share: float = 0.7
    """And this share of what smoothing seems to have cut off a winding way; chosen: part of it
    is noise that was rightly smoothed out."""
    certain_miss: float = 0.025
    """A miss is certain where this little speaks for having been there; one side of 95 in 100."""
    gap_speed: float = 1.3
    """In a silence nobody walked faster than this many times his usual speed; chosen."""
    stop_apart_s: float = 15.0
    """A halt nearer than this to leaving or claim belongs to them; chosen."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AsideSettings:
    """When a step out of the line is an obstacle passed on one side.

    Chosen on made walks of the development seeds.
    """

    least_turn_deg: float = 25.0
    wanders: float = 3.0
    """Turned off the held direction by so much, and by so many times the walker's wandering."""
    bends_share: float = 0.4
    """Its bends lean its way by this share of that."""
    least_m: float = 7.0
    noises: float = 2.0
    """And led aside by so much, and by so many times the receiver's noise."""
    other_reading: float = 0.25
    """That the slants found were wandering, and that as many more were not found."""
    steep_share: float = 0.85
    """What is less steep is a slant, or a stretch on another bearing."""
    least_speed_share: float = 0.5
    """What is slower than this share of the leg's usual speed is a receiver's wander about a halt;
    made obstacles were walked round at 0.6 to 0.9 of it, wander at halts came to 0.15 to 0.45."""
    beside_silence_s: float = 60.0
    """So near a silence of the recording a way across may be the other half of a way round that
    nobody saw; chosen."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SlantSettings:
    """When a short step out of the line at a slant is told from wandering.

    Chosen on made walks of the development seeds.
    """

    lasts_s: tuple[float, ...] = (8.0, 11.0, 14.0, 18.0, 23.0, 29.0)
    longer_s: tuple[float, ...] = (36.0, 54.0, 80.0, 120.0)
    """How long the steps last that are tried; what lasts longer is another bearing."""
    turns_deg: tuple[float, float] = (25.0, 75.0)
    least_m: float = 6.0
    least_sds: float = 5.0
    """A step stands out by so many standard errors: with 4.5 a tenth more are found, and twice as
    many that are none."""
    edge_s: float = 8.0
    """Nearer to an end of the leg, or to another step, nothing is a step."""
    most: int = 8
    back_within_m: float = 100.0
    back_unlike_share: float = 0.3
    """A step to the other hand leads back from one before where it comes within so much of it,
    and is as far but for this share and the receiver's error; chosen."""
    white_share: float = 0.01
    wanders_deg: tuple[float, ...] = (4.0, 7.0, 11.0)
    wander_s: float = 25.0
    """Strengths of wandering, of which the likeliest counts, and its memory."""
    spacing_s: float = 4.0
    most_fixes: int = 220
    least_fixes: int = 8
    least_m_s: float = 0.2
    """Fixes that are looked at, and the least speed along the leg that makes it a walk."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NoiseSettings:
    """How the receiver's error is measured, and what is taken where nothing shows it."""

    usual_noise_m: float = 4.5
    """Per axis. Phones in the open: 4.9 m radius (van Diggelen and Enge, ION 2015); standing
    phones at hand wander 4 to 6 m; chosen between the two for a recording without halts."""
    usual_log_sd: float = 0.5
    """Receivers differ by a factor of 1.6 either way; chosen."""
    usual_correlation_s: float = 60.0
    """Receivers forget their error over about a minute (D. L. Wilson)."""
    usual_correlation_log_sd: float = 0.8
    correlations_s: tuple[float, ...] = (8.0, 15.0, 30.0, 60.0, 100.0, 160.0, 260.0, 420.0)
    least_noise_m: float = 0.5
    most_noise_m: float = 30.0
    noise_steps: int = 42
    """A tenth of the value from one strength to the next."""
    white_share: float = 0.01
    """Share of the variance that is forgotten at once: rounding of positions; chosen."""
    differs_log_sd: float = 0.3
    """Reception differs from halt to halt by a factor of 1.3; chosen."""
    kinds_differ_log_sd: float = 0.35
    """What halts show and what straight walking shows may each be out by a factor of 1.4; chosen on
    recordings of hikers, whose rests made receivers of 2 to 4 m look like 8 to 18 m."""
    moved_m: tuple[tuple[float, float], ...] = (
        (0.0, 0.7),
        (4.0, 0.08),
        (8.0, 0.08),
        (16.0, 0.06),
        (32.0, 0.02),
    )
    """What the walker's own movements add to the scatter of a halt, and how often: most stand
    still; all chosen."""
    shortest_halt_s: float = 25.0
    halt_edge_s: float = 5.0
    """Left out at either end of a halt: there he may still walk; chosen."""
    spacing_s: float = 10.0
    """No two fixes nearer than this: receivers smooth what they write; with 5 s the noise of
    made walks comes out a sixth too small."""
    most_fixes: int = 60
    least_fixes: int = 3
    shortest_stretch_s: float = 60.0
    shortest_stretch_m: float = 60.0
    longest_stretch_s: float = 300.0
    most_stretches: int = 12
    least_walking_fixes: int = 6
    straight_deg: float = 55.0
    """A walk that between three fixes goes further off than this is not straight; all chosen."""
    model_log_sd: float = 0.2
    """What a fit does not know of its own error: slow parts that short halts hide, and receivers
    that smooth; chosen on made walks, where fits scatter by a quarter."""
    most_hdop_ratio: float = 3.0
    """Hdop says that a leg is worse than the halts by no more than this; chosen."""
    gap_noise: float = 1.0
    """A leg that lies all in gaps is taken as twice as noisy; chosen."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ClaimSettings:
    """How the moment is found at which a walker turned to a point in sight.

    Chosen on made walks of the development seeds.
    """

    slowest_m_s: float = 0.1
    """Somebody slower than this is taken to have gone as fast; chosen."""
    share: float = 0.4
    """Of the legs that end at their point, in a halt, so many turned to it at the end."""
    least_turn_deg: float = 18.0
    """A gentler turn is walking on."""
    halt_reach_s: float = 8.0
    least_bend_m: float = 4.0
    most_bend_m: float = 42.0
    """Points on foot come into sight within this."""
    step_m: float = 2.0
    window_m: float = 60.0
    """Before the furthest bend, so much of the way shows the direction held until then."""
    least_way_m: float = 30.0
    least_fixes: int = 4
    near_point_m: float = 25.0
    """A halt further from its point (and its square) is no arrival at it."""
    spacing_s: float = 3.0
    halt_fixes: int = 5
    wander_s: float = 25.0
    wander_deg: float = 6.0
    speed_sd: float = 0.12
    turn_along_sd_m: float = 2.5
    halt_along_sd_m: float = 2.5
    halt_logging: float = 0.5
    halt_time_sd_s: float = 4.0
    way_time_sd_s: float = 8.0
    """Errors of cuts that a turn, a halt or only the way marks; with half of what a logging
    interval leaves open where the walker halts."""
    slowing_mean: float = -0.35
    slowing_sd: float = 0.35
    sideways_sd: float = 0.65
    """What a turn of 20 to 90 degrees takes off the speed ahead and gives to the side, as shares
    of it."""
    white_share: float = 0.02
    """Share of the noise variance that is forgotten at once; chosen."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SearchSettings:
    """How a search is bounded and its shape named; all chosen."""

    shortest_m: float = 15.0
    """Less than this about the claim is standing about."""
    corner_m: float = 8.0
    corner_share: float = 0.15
    """A corner stands out by this many metres, or this share of the search's reach."""
    ahead_deg: float = 35.0
    straight_paths: float = 2.6
    """Straight on: ahead within this, over no more than out and back and a little."""
    straight_up_paths: float = 1.25
    in_sight_m: float = 60.0
    """Walked up to the point, and no search: straight, over so many times the distance at the most,
    from no further off than a marker is seen in open wood."""
    near_share: float = 0.35
    far_share: float = 0.6
    """Fan: from beyond the far share of its reach back to within the near one, twice."""
    same_hand: float = 0.75
    round_deg: float = 250.0
    """Square: so many of its turns to one hand, adding up to so much."""
    longest_m: float = 1200.0
    """A point reached later than this after the claim was not reached by the search."""
    about_m: float = 150.0
    covers: float = 2.0
    """Who walks this many times the distance before he leaves the ground about his claim was
    looking for something (path many times the net distance, within 150 m: common practice)."""
    straight_share: float = 0.93
    stand_s: float = 15.0
    """A shorter halt is one of the search."""
    covers_paths: float = 1.5
    """Who searched has walked this many times the distance to where he then is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GroundSettings:
    """When elevations are trusted, and what is uphill; all chosen unless a source is named."""

    least_known_share: float = 0.8
    usual_sd_m: float = 4.0
    memory_s: float = 60.0
    most_sd_m: float = 8.0
    """A receiver whose elevations scatter more at rest shows no slope of a leg."""
    stretch_m: float = 60.0
    smoothing_s: float = 20.0
    steepest_slope: float = 0.7
    """Nobody walks 35 degrees for 60 m."""
    most_steep_share: float = 0.05
    level_slope: float = 0.05
    """Rise over run; treadmill work finds next to no change of step below it."""
    climb_sds: float = 1.5
    """A rise counts once it is this many standard errors of an elevation."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PaceSettings:
    """How paces are counted and compared; all chosen unless a source is named."""

    single_from_per_100m: float = 90.0
    """Most people take 60 to 70 double paces to 100 m, 116 to 148 single ones (STP 21-1-SMCT;
    common practice)."""
    shortest_step_m: float = 0.5
    longest_step_m: float = 1.1
    """A pace count that makes a step shorter or longer than people walk is asked about; chosen:
    116 to 148 steps to 100 m are 0.68 to 0.86 m, and slow ground or long legs half as far again."""
    both_feet_from_per_min: float = 80.0
    """A cadence above this counts both feet: walkers take 90 to 125 steps a minute."""
    least_cadences: int = 20
    cadence_known_share: float = 0.7
    count_sd: float = 0.03
    """Standard error of a careful count, as a share."""
    ground_sd: float = 0.15
    """By how much the rate on one kind of ground differs from the walker's usual one."""
    least_ground_m: float = 200.0
    """Less than this walked on one kind of ground shows no rate of its own; chosen."""
