"""How a class is graded and put together, beside what the standard itself says."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class GradingSettings:
    """What grading takes for granted where no standard speaks."""

    coverage_factor: float = 2.0
    """Times the standard error per axis is the whole error: some 95 in 100 (JCGM 100:2008,
    6.3.3)."""
    trace_step_s: float = 10.0
    """Between the fixes of a trace for drawing and for who walked with whom; chosen."""
    sure_match: float = 0.8
    """From this confidence on, the nearest approach is that on the way to the point, unless the
    walk came within its radius later; chosen: as causes are named from 0.8 on."""
    course_ends_m: float = 150.0
    """A recording that ends further than this from start and finish broke off on the way, and so
    did one that ends so near the place where its last leg does, unless the walker was back at
    start or finish by then; chosen: twice the miss that a walker under trees makes."""
    heading_m: float = 50.0
    """Over so much of its end a recording shows where the walker was heading; chosen: ten times
    a receiver's usual error, which turns that by no more than some 8 degrees."""
    walking_m_s: float = 1.2
    """Where a walk shows no speed of its own; common practice, no source."""

    on_road_m: float = 10.0
    """Within this of a road's line somebody is on it, where the standard names no distance;
    chosen: half of a road and its verge."""
    road_sd_m: float = 6.0
    """Of a road's line as drawn, across it; chosen: 90 in 100 within 12.5 m, a fiftieth of an
    inch on a sheet at 1:25 000 (United States National Map Accuracy Standards, 1947)."""
    crossing: float = 4.0
    """Times its own distance from a road a way across keeps within it: crossed at 30 degrees,
    the sine of which is a half."""
    road_silence_s: float = 60.0
    """In a silence longer than this nobody knows where the walker was; chosen."""

    path_step_m: float = 10.0
    """Between the places at which a walk is held against a lane; chosen."""
    lane_sd_m: float = 60.0
    """How far off its points a walk of a lane passes; chosen: ordinary misses of legs of
    600 m (3 degrees and 5 in 100 give 31 and 30 m) and again as much."""
    lane_most: float = 8.0
    """Nats that a point which is not passed costs; chosen: four times the spread off."""
    passed_m: float = 75.0
    """A point is passed within this; chosen."""
    walk_of_lane: float = 0.6
    """A stretch that passes this share of the points, in order, is a walk of the lane; chosen:
    more than half, so that one course is never split in two of itself."""
    walks_same_lane: float = 0.5
    walks_two_lanes: float = 0.3
    """A recording is two walks where they pass by so much of the points more than one walk does:
    of a lane that comes back to its start, or where it was not parted at a start; and of two
    lanes, of the points of the shorter. Chosen: two walks that miss a point each pass a half
    more, one walk whose lane comes back to the start none, and one that takes the loops of such
    a lane the other way round 0.4; a lane of four points of which the longer passes three as it
    is walked 0.25."""
    other_lane_nats: float = 1.0
    """By so much a point must a walk fit another lane better to be asked about; chosen."""

    start_m: float = 40.0
    start_left_m: float = 100.0
    """The start is crossed at the last fix within the first of them before one beyond the
    second; chosen: wider than a receiver's error at rest, narrower than any leg."""
    start_again_s: float = 60.0
    """Whoever leaves the start later than this after the first time came back to it; chosen: twice
    the time across its circle."""
    clock_off_s: float = 180.0
    """A start by the recording so far from that of the roster is asked about, and the time that
    was needed is the recording's own; chosen: more than anybody takes to set a compass."""
    clock_wrong_s: float = 600.0
    """Up to so far off the start may have been late: where the time from the roster's start
    makes another verdict, it is doubtful; chosen: further off, one of the clocks is wrong."""

    part_gap_s: float = 1800.0
    part_slack_m: float = 100.0
    part_speed_m_s: float = 1.5
    """Two files are parts of one walk if no more than this passed between them and the
    second begins within slack and speed of where the first ends; chosen."""
    walks_silence_s: float = 300.0
    """A silence so long may part two walks in one file; chosen."""
    walks_night_s: float = 21_600.0
    """A silence so long parts them whatever they pass; chosen: no lane rests for six hours."""
