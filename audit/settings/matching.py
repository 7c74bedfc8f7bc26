"""How portions of the walk are weighed as legs.

"Chosen" marks a value picked by trial on simulated walks, with what it trades off.
"""

from __future__ import annotations

from dataclasses import dataclass

from audit.settings.cleaning import OUTING_SILENCE_S
from audit.settings.silences import SilenceSettings


@dataclass(frozen=True, slots=True, kw_only=True)
class MatchingSettings(SilenceSettings):
    """How portions of the walk are weighed as legs. Costs are in nats.

    Unless another source is named, a value was chosen on simulated walks of the
    development seeds (tests/accuracy), where moving it either way matched fewer legs.
    """

    # The walk on an even time step
    step_shortest_s: float = 2.0
    """A walker does nothing worth matching in less."""
    step_longest_s: float = 10.0
    """Sparser recordings are joined by straight lines of this step."""
    stretch_gap_s: float = 900.0
    """A silence longer than this breaks the recording into stretches."""
    gap_s: float = 20.0
    """Between fixes further apart than this (and four intervals) nothing is known."""
    smoothing_s: float = 8.0
    """For a first look; then as the noise asks."""
    smoothing_s_per_m: float = 1.5
    smoothing_range_s: tuple[float, float] = (5.0, 11.0)
    direction_smoothing_s_per_m: float = 2.2
    """For the directions of every metre, if that is more."""

    # Moving and standing
    speed_window_s: float = 30.0
    """For a first look; then as the noise asks."""
    speed_window_s_per_m: float = 5.0
    speed_window_range_s: tuple[float, float] = (15.0, 36.0)
    halt_speed_share: float = 0.42
    """Slower than this share of the usual speed is standing."""
    halt_shortest_s: float = 6.0
    halt_join_s: float = 10.0
    halt_edge_s: float = 6.0
    """A cut within this of a halt's edge counts as that edge."""
    slowest_walk_m_s: float = 0.3
    fastest_walk_m_s: float = 2.5
    """Faster is running or riding; the usual speed is taken from between these two."""
    slowest_ride_m_s: float = 4.0
    ride_over_usual: float = 2.5
    """A ride is so many times as fast as the recording usually is; chosen: no leg is twice."""
    usual_walk_m_s: float = 1.1
    """Where nothing else is known (STP 21-1-SMCT 071-329-1006: 3,000 m an hour, 0.83 m/s,
    with halts)."""
    noise_correlation_s: float = 30.0
    """Receivers forget their error over about a minute (D. L. Wilson); shorter here, since
    halts of a minute must still count."""
    noise_halt_s: float = 20.0
    prior_noise_m: float = 5.0
    """Phones in the open: 4.9 m radius (van Diggelen and Enge, ION 2015)."""
    least_noise_m: float = 2.0
    most_noise_m: float = 20.0
    """What halts are believed to show of a receiver's noise, at least and at most."""

    # Candidate cuts
    filler_m: float = 70.0
    merge_m: float = 8.0
    approach_m: float = 90.0
    approaches_most: int = 12
    bend_tolerance_m: float = 8.0
    bend_tolerance_noise: float = 1.8
    bend_arm_m: float = 35.0
    bend_deg: float = 24.0
    bend_soft_deg: float = 6.0
    """A turn is told from a wander over about this much either way."""
    sharp_bend_deg: float = 90.0
    sharp_bend_soft_deg: float = 15.0
    """From such a bend on a cut is as good as a halt; the limit is soft by so much either way."""

    # What a leg is expected to look like
    longest_portion: float = 3.0
    """No leg is walked over more than this many times its distance."""
    longest_portion_least_m: float = 600.0
    neighbourhood_m: float = 2500.0
    """With twice the leg's distance: nobody is taken to be further from where the plan has him.
    Chosen: between points without markers, who walks three legs of 400 m on their back azimuths
    is 2400 m off, and still on his course."""
    widest_turn_deg: float = 120.0
    """A chord turned further off an edge than this is no walk of it (the back azimuth has an
    edge of its own)."""
    ridden_most_m: float = 50.0
    ridden_most_share: float = 0.2
    end_arm_m: float = 60.0
    astray_end_deg: float = 52.0
    astray_end_soft_deg: float = 8.0
    cost_arriving_astray: float = 2.0
    cost_leaving_astray: float = 1.6
    place_sd_m: float = 6.0
    wander_sd_deg: float = 11.0
    wander_sd_per_noise_m: float = 2.6
    heading_sd_deg: float = 7.0
    distance_sd: float = 0.156
    stray_heading_share: float = 0.065
    stray_distance_share: float = 0.05
    hundred_share: float = 0.08
    factor_two_share: float = 0.004
    direction_length_share: float = 1.25
    """Directions bring no more than a leg of its length, walked no better than usual, would."""
    chance_price_share: float = 0.4
    chance_price_most: float = 8.0
    stray_step_share: float = 0.12
    direction_memory_m: float = 45.0
    """Directions this far apart count as separate evidence."""
    direction_discount: float = 0.6
    """Walking anywhere keeps a direction too; so much less does a metre say for a leg."""
    bypass_cap: float = 5.3
    bypass_slope: float = 0.5
    box_side_m: float = 15.0
    box_turn_deg: float = 40.0
    box_unequal: float = 2.5
    box_ahead_m: float = 220.0
    cost_bypass: float = 3.0
    deviation_share: float = 0.06
    weight_deviation: float = 0.7
    cost_halted_s: float = 0.012
    cost_halt: float = 1.6
    """For a walker of whom nothing is known; then by how often this one stops on the way."""
    cost_halt_range: tuple[float, float] = (0.6, 3.0)
    halts_prior: float = 2.0
    halts_path_least_m: float = 1000.0
    halt_window_m: float = 100.0
    """The longer, the cheaper a halt on the way."""
    cost_halts_most: float = 8.0
    outing_silence_s: float = OUTING_SILENCE_S
    """A silence of six hours parts two outings (``settings/cleaning.py``)."""
    longest_silence_s: float = 3600.0
    """No leg is walked across a silence of the recorder longer than this."""
    cost_silence: float = 4.0
    """For a leg walked across a break of the recording (stretch_gap_s)."""
    gain_halt: float = 0.6
    gain_rest_arriving: float = 0.2
    gain_rest_leaving: float = 0.5
    rest_usual_s: float = 45.0
    rest_range_s: float = 30.0
    """A halt longer or shorter than usual says more, or less, than gain_halt."""
    gain_sharp_bend: float = 0.4
    cost_mid_stride: float = 2.4
    bends_seen_s: float = 6.0
    """Fixes further apart than this show the fewer bends and halts."""
    cost_recording_ends: float = 8.0
    """For a claim at the very end of the recording, in mid-stride."""
    turned_leg_share: float = 0.05
    turned_leg_deg: float = 15.0
    """As many legs are walked turned by about this to the left, and to the right, all along."""
    astray_share: float = 0.001
    """Legs walked in a direction that neither card nor points nor habit explain."""
    astray_detour_share: float = 0.1
    astray_bent_most: float = 8.0
    shortest_partial_m: float = 40.0
    cost_partial_distance: float = 0.7
    cost_impossible: float = 50.0
    """What a way astray that bends may cost, and by how much longer than straight it may be; a leg
    cut short: the least that is left of it, what being short costs, and what being as long as
    the whole leg does, which is no part of it. Costs in nats."""

    # Arriving, staying, leaving
    found_share: float = 0.004
    """A walker ends a leg by sight of its point this often, whatever he reckoned."""
    found_directly_share: float = 0.05
    """As many go straight to it; then as this walker does."""
    going_on_most: float = 1.35
    going_on_soft: float = 0.24
    going_on_share: float = 0.03
    """Half of those who have not yet seen their point go on for this many times their distance;
    soft by so much of its logarithm, and so many of them go on however far; chosen."""
    finds_prior_legs: float = 8.0
    finds_most: float = 0.8
    found_detour_share: float = 0.05
    found_arrival_sd_m: float = 15.0
    arrival_sd_m: float = 30.0
    cost_arrive_elsewhere: float = 1.6
    gain_point_to_point: float = 0.0
    gain_where_astray: float = 6.0
    point_to_point_m: float = 60.0
    point_to_point_noises: float = 1.5
    """Gain of a leg walked straight from within so much of its start to within so much of its
    point, beside so many times the receiver's error. None at first, as who misses a point must
    not be drawn to it; some where legs are not walked or far off; chosen on real recordings,
    where long straight roads fit several legs."""
    own_start_m: float = 20.0
    off_own_start_m: float = 45.0
    cost_rest_at_own_start: float = 4.5
    """Against a leg that rests so near its own start on the way, though it begins further off;
    chosen: one rest in thirty lies there by chance, on a way that leads by in one case of three.
    Who only comes by it without a rest may not know it: charging him too lost legs."""
    cost_rest_at_left_out: float = 4.5
    """Against a way that rests as near a point which it is to leave out; chosen, like that."""
    far_off_own_start_m: float = 150.0
    cost_end_at_own_start: float = 6.0
    """Against a leg that begins so far from its own start and ends at it; chosen: a leg ends
    within 20 m of a given place among some 300 m by chance once in four hundred times."""
    astray_m: float = 300.0
    """A leg so far from its points may be another part of the walk; chosen."""
    passed_m: float = 20.0
    passed_detour: float = 1.3
    kept_s: float = 60.0
    """Walked from point to point is who passed both so near, with no more path over the chord.
    The legs that are not astray have to end within so much of where they did; chosen."""
    stay_path_m: float = 900.0
    stay_sd_m: float = 14.0
    found_sd_m: float = 22.0
    wander_share: float = 0.12
    wander_m: float = 60.0
    cost_relocated_nowhere: float = 17.7
    cost_long_stay: float = 1.0
    cost_start_elsewhere: float = 10.6
    """How often this walker ends legs at the point itself (its prior in legs, its most, and by how
    much such a way may be longer than straight), how near he then is; and what it costs, in
    nats, to end elsewhere, to stay long, to wander off, and to leave for the next leg away from
    the point. The distances are those within which each is no news."""

    # Ways that leave the plan
    card_differs_deg: float = 3.0
    card_differs_share: float = 0.05
    """Where card and points differ by more, the walker may have gone by either."""
    shortest_link_m: float = 60.0
    cost_reversed: float = 6.5
    cost_turned_back: float = 1.0
    """Beside that, for who sees it and comes straight back to the point; chosen."""
    cost_turned_back_late: float = 10.0
    """Who sees it turns at once: for who goes on about there before he comes back; chosen."""
    cost_reversed_after_approach: float = 25.0
    long_approach_m: float = 1500.0
    passed_after_rest: float = 0.4
    """For a first leg on the back azimuth by who came from so far away, or further: he may have
    passed the start on his way. So much of it where he rested there; chosen on real recordings."""
    cost_skip: float = 4.1
    cost_exchange: float = 7.0
    cost_repeat: float = 6.2
    cost_unfinished: float = 2.0
    cost_given_up: float = 3.0
    cost_leg_left_out: float = 1.5
    cost_start_later: float = 4.0
    cost_ended_early: float = 6.0
    cost_end_aside: float = 50.0
    """In nats, for each time: a leg not walked, two points in the wrong order, a leg walked twice,
    one broken off and what then is missing of it, each leg left out, a course begun later or
    ended early, and one that ends on a way aside, which nobody means to."""

    # The walker supposed
    bias_sd_deg: float = 12.0
    bias_fan_deg: tuple[float, ...] = (0.0, -10.0, 10.0, -20.0, 20.0)
    fan_distinct_deg: float = 3.0
    broad_heading_sd_deg: float = 15.0
    broad_distance_sd: float = 0.2
    """Of a walker of whom nothing is known; chosen wider than any walker that is supposed."""
    in_play_nats: float = 40.0
    """Portions that such a walker walked with less than exp(-this) need no second look; chosen:
    less leaves legs out that another walker would have found, more takes longer."""
    fan_keep_nats: float = 6.0
    fan_keep: int = 2
    rounds: int = 2
    scatter_prior_legs: float = 3.0
    heading_scatter_deg: float = 6.0
    heading_sd_least_deg: float = 4.0
    heading_sd_most_deg: float = 10.0
    distance_scatter: float = 0.09
    distance_sd_least: float = 0.04
    bias_most_deg: float = 65.0
    cost_angle_slip: float = 4.0
    bias_of_slip_sd_deg: float = 6.0
    """For a slip with the grid-magnetic angle, which reaches 27 degrees, and a habit; chosen."""
    broad_reach_deg: float = 30.0
    pace_scale_least: float = 0.6
    pace_scale_most: float = 1.6
    cost_distance_factor: float = 4.5
    """For half or twice the distance on every leg (the wrong ruler, single for double paces): one
    walker in 90; chosen."""
    half_or_twice_nats: float = 5.0
    half_or_twice_still: float = 0.8
    half_or_twice_known: float = 0.8
    """They are believed where they explain the walk by so much better, their own cost included;
    where the pace, once the walker is known better, is still so much of the way to half or twice;
    and where at least this share of the legs known without them is known by them. Chosen on made
    walks of another hand, and on a real one, which twice the distance explains by 56 nats better
    with no leg known then."""

    # Cuts to the second
    refine_interval_s: float = 3.0
    """Sparser recordings have nothing to refine on; trials there made cuts worse."""
    refine_window_s: float = 30.0
    refine_move_s: float = 10.0
    refine_steps: int = 21
    refine_gain: float = 0.25
    refine_least_fixes: int = 5
    refine_most_fixes: int = 60
    """How far to either side fixes are looked at, and a cut may move, in how many steps; by which
    share the ways before and after must fit better to move it; and of how many fixes at least
    and at most."""

    # Reading the answer
    far_m: float = 2500.0
    """A walk that comes no nearer than this to any point is of another course; chosen: beyond
    the longest leg of published courses (1,200 m) and as much again."""
    walked_least: float = 0.6
    """Less sure than this of any portion, a leg is not called walked: to be told of a leg that
    one never walked is worse than to be asked about one."""
    second_look_share: float = 0.004
    second_look_weight: float = 1.0
    second_look_place_m: float = 3.0
    second_look_slip: float = 0.5
    """Moments with less of a leg's odds than this are not looked at again; how much the second
    look counts; within how much walking moments are at one place; and from which share of its
    odds on a leg is read by a slip, and not looked at. Chosen: what is left out holds a hundredth
    of the right moments, and nobody walks three metres in a halt."""
    confidence_slope: float = 0.6
    confidence_offset: float = 0.0
    """Log odds of being right against the log odds weighed, for a leg that was walked: fitted
    on development walks. What the looks of a leg say is added (``how_sure.py``)."""
    trust_weight: float = 1.0
    trust_most_nats: float = 3.0
    """How much the looks of a leg count, and at most how many nats they may move its log odds.
    Chosen: whatever was learnt, the odds are heard."""
    confidence_slope_else: float = 0.4
    confidence_offset_else: float = -0.75
    """The same for a leg left out or given up."""
    confidence_reckoned: float = -0.5
    """Log odds more for a leg that began or ended in a silence of the recorder."""
    nearly_best: float = 0.9
    close_least: float = 0.1
    """Of the probability within the tolerance of a portion so much has to lie within a third of
    it; chosen: of an even spread a ninth does, at both ends."""
    right_within_s: float = 30.0
    right_within_m: float = 30.0
    """A cut this near counts as the same (the aim that accuracy is measured by)."""
    passed_once_given_up: float = 0.5
    """That a walk was given up whose way then led by one later point; chosen: no made walk shows
    it, and nobody knows how many ways home run by the finish."""
    passed_round_about: float = 3.0
    """A later point is passed along the course within so many times the planned way to it;
    chosen: the paths of real courses wind to twice the straight line."""
    runner_up_least: float = 0.005
    """Other readings less probable than this are not worth a word; chosen: one in 200."""
    runner_up_candidates: int = 60
    """Portions tried for the likeliest other one; chosen: bounds the work."""

    # Boundaries that somebody has settled
    cost_jump: float = 30.0
    """For legs that pins leave no room for; chosen: beyond what any walk of them costs."""
    shortest_pinned_s: float = 10.0
    """A leg pinned at both ends lasts at least this long; chosen: the longest step of samples."""

    # Moments that the walker noted
    cost_against_noted: float = 4.6
    """For a way that is elsewhere at a noted moment; chosen: one note in 100 is wrong."""
    cost_against_counted: float = 9.2
    """The same where the count of the log leads to that place as well, and not to the claim;
    chosen: both wrong at once, and to one place."""
    noted_just_then_s: float = 60.0
    """Nobody claims two points within so much; chosen: no leg of a course is as short."""
    noted_within_s: float = 90.0
    """A moment is noted no more exactly than this; chosen: a watch is read to the minute, and
    noted down a little later."""

    # Points in any order
    cost_point_not_visited: float = 1.5
    shortest_free_leg_m: float = 30.0
    """Nearer points are visited together, and no way between them can be told; chosen."""
    visit_most_cost: float = 3.0
    visit_near_m: float = 60.0
    """A claim that some way makes this likely, or this near its point, may be a visit."""
    visit_reach_m: float = 30.0
    visit_reach_share: float = 0.02
    visit_gain_far: float = -3.0
    visit_gain_near: float = 8.0
    """What a way may gain by leading to its point, and where it ends further off than the reach:
    among many points there is often one in the direction of somebody who walks home."""
    visit_gain_here: float = 3.0
    visit_presence: float = 6.0
    """What being at the point says for a visit, and what being elsewhere says against it."""
    visit_wandered: float = 2.5
    """Against having come to a point by no straight way."""
    visit_rested: float = 2.5
    """What a rest at the point says for a visit, in whatever way it was come to; chosen: who
    rests just there has most likely found what he was looking for."""
    visits_apart_s: float = 40.0
    visits_most: int = 25
    """Of one point; chosen: bounds the work."""

    # How well a recording passes the points
    passing_most: float = 8.0
    """The worst that a point not passed, or a way much too long, can say against a walk."""
    passing_detour: float = 0.4
    """Spread of the logarithm of path over plan from point to point; chosen: a search makes a
    way half as long again."""
