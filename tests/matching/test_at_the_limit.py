"""What is just so long, so far or so sure belongs to one side of its limit, and to which."""

from __future__ import annotations

import math
from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest
from matching.drawn_samples import samples_of
from matching.odds_by_hand import odds_of
from matching.test_walkers_on_paper import LEVEL, legs_walked, matched
from measurement.hand_made import BEGIN, ORIGIN, SETTINGS, HandWalk, card_of, clean_of

from audit.matching import cuts, free_order, free_visits, halts, outings, reading, runner_up
from audit.matching.arms import find_arms
from audit.matching.boxes import find_boxes
from audit.matching.clean_clock import in_blocks
from audit.matching.clean_fixes import Fixes
from audit.matching.clean_loose_ends import loose_ends
from audit.matching.clean_parallel import one_at_a_time
from audit.matching.clean_spikes import _dash, spikes
from audit.matching.clean_steps import measure_steps
from audit.matching.clean_times import _mostly_bare_parts, _standing_clock, keep_timed
from audit.matching.clean_track import _gaps
from audit.matching.cuts import find_cuts, nearest_approaches
from audit.matching.free_order import any_order_route
from audit.matching.halts import find_movement
from audit.matching.pins import PinnedCuts
from audit.matching.range_most import RangeMost
from audit.matching.reading import read_leg
from audit.matching.refine_cuts import refine_cut
from audit.matching.route import plan_route
from audit.matching.supposed_walkers import fan_of_walkers, known_better
from audit.matching.walk_layout import near_course
from audit.matching.walk_samples import sample_walk
from audit.settings import CleaningSettings

S = SETTINGS.matching
C = CleaningSettings()
WAY = [12.0] * 20
"""Steps of a walk, ten seconds each: its brisk pace is 1.6 m/s."""


def fixes_of(time_s, east_m, segment=None) -> Fixes:
    number = np.arange(len(time_s))
    return Fixes(
        fix=number, time_s=np.asarray(time_s, float), east_m=np.asarray(east_m, float),
        north_m=0.0 * number, segment=0 * number if segment is None else np.asarray(segment),
    )  # fmt: skip


def stepped(*steps_m, every_s=10.0):
    east_m = np.concatenate([[0.0], np.cumsum(steps_m)])
    fixes = fixes_of(every_s * np.arange(len(east_m)), east_m)
    return fixes, measure_steps(fixes, C)


@pytest.mark.parametrize(("back_s", "blocks"), [(600.0, 1), (601.0, 2)])
def test_a_clock_jumps_back_by_more_than_ten_minutes(back_s, blocks) -> None:
    """From one fix to the next; less is a fix that comes late."""
    time_s = 10.0 * np.arange(200)
    time_s[100:] -= back_s + 10.0
    _, block, _ = in_blocks(fixes_of(time_s, 5000.0 * np.arange(200)), C)
    assert len(set(block.tolist())) == blocks


@pytest.mark.parametrize(("off_m", "moved"), [(50.0, False), (50.5, True)])
def test_a_clock_is_put_back_a_little_where_the_walker_was_over_fifty_metres_off(
    off_m, moved
) -> None:
    """By 300 s, in which he walks so far; in the same part of the file or in another."""
    time_s = 10.0 * np.arange(200)
    east_m = off_m / 300.0 * time_s
    time_s[100:] -= 300.0
    for parts in ([0] * 200, [0] * 100 + [1] * 100):
        _, _, cleaning = in_blocks(fixes_of(time_s, east_m, parts), C)
        assert ("clock-jump" in {one.what for one in cleaning}) is moved


@pytest.mark.parametrize(("back_s", "moved"), [(40.0, False), (41.0, True)])
def test_a_clock_leaps_by_more_than_four_usual_intervals(back_s, moved) -> None:
    time_s = 10.0 * np.arange(200)
    east_m = np.where(np.arange(200) < 100, 3.0, 3.1) * time_s
    east_m[100:] -= east_m[100] - east_m[99]
    time_s[100:] -= 10.0 + back_s
    _, _, cleaning = in_blocks(fixes_of(time_s, east_m), C)
    assert ("clock-jump" in {one.what for one in cleaning}) is moved


@pytest.mark.parametrize(("away_m", "moved"), [(50.0, True), (50.5, False)])
def test_a_clock_that_was_put_back_goes_on_within_fifty_metres(away_m, moved) -> None:
    time_s = 10.0 * np.arange(200)
    east_m = 12.0 * np.arange(200)
    time_s[100:] -= 900.0
    east_m[100:] += away_m - 12.0
    _, _, cleaning = in_blocks(fixes_of(time_s, east_m), C)
    told = {one.what: str(one.detail) for one in cleaning}
    assert ("clock-jump" in told) is moved
    if moved:  # 900 s, and the usual ten besides
        assert "15 min" in told["clock-jump"]


def test_order_is_lost_where_more_than_one_in_twenty_steps_leads_back() -> None:
    """Of a hundred fixes five; then a jump of an hour says nothing of the clock."""
    for back, blocks in ((5, 2), (6, 1)):
        time_s = 10.0 * np.arange(100)
        for late in range(back - 1):
            time_s[[10 * late, 10 * late + 1]] = time_s[[10 * late + 1, 10 * late]]
        time_s[90:] -= 3600.0
        _, block, _ = in_blocks(fixes_of(time_s, 9000.0 * np.arange(100)), C)
        assert len(set(block.tolist())) == blocks


def test_a_part_is_bare_where_more_than_half_of_its_fixes_have_no_time() -> None:
    segment = np.repeat([3, 5, 8], 4)
    bare = np.array([1, 1, 0, 0, 1, 1, 1, 0, 0, 0, 0, 1], dtype=bool)
    fixes = fixes_of(np.zeros(12), np.zeros(12), segment)
    assert _mostly_bare_parts(fixes, bare).tolist() == [False] * 4 + [True] * 4 + [False] * 4
    assert _mostly_bare_parts(fixes, np.arange(12) < 1).all()  # none is: all of them


def test_fixes_a_tenth_of_a_second_apart_have_times_of_their_own() -> None:
    time_s = 1.7e9 + 0.0625 * np.arange(10)
    assert _standing_clock(fixes_of(time_s, 20.0 * np.arange(10)), 15.0) is None
    kept, timed, _ = keep_timed(fixes_of(time_s, 20.0 * np.arange(10)), C)
    assert (len(kept), timed) == (10, True)


def test_a_gap_is_longer_than_twenty_seconds_and_four_intervals() -> None:
    for every_s, most_s in ((1.0, 20.0), (10.0, 40.0)):
        assert max(C.gap_s, C.gap_intervals * every_s) == most_s
        for silent_s, count in ((most_s, 0), (most_s + 1.0, 1)):
            time_s = np.concatenate([every_s * np.arange(30), every_s * 29 + silent_s
                                     + every_s * np.arange(30)])  # fmt: skip
            gaps = _gaps(time_s, np.full(len(time_s), every_s), C)
            assert len(gaps) == count
            assert [(gap.before, gap.end_s - gap.start_s) for gap in gaps] == [
                (29, silent_s)
            ] * count


@pytest.mark.parametrize(("silent_s", "left_out"), [(40.0, 1), (42.0, 0)])
def test_what_falls_into_a_gap_of_the_longer_recording_is_kept(silent_s, left_out) -> None:
    """Ten seconds a fix: four of them are none."""
    long = np.concatenate([10.0 * np.arange(10), 90.0 + silent_s + 10.0 * np.arange(10)])
    time_s = np.concatenate([long, [111.0]])
    block = np.array([0] * 20 + [1])
    kept, cleaning = one_at_a_time(fixes_of(time_s, np.zeros(21)), block, C)
    assert len(kept) == 21 - left_out
    assert sum(one.count for one in cleaning) == left_out


def test_so_many_recordings_at_one_time_are_looked_at_one_by_one() -> None:
    for count, what in (
        (C.most_side_by_side, "side-by-side"),
        (C.most_side_by_side + 1, "mixed-by-time"),
    ):
        time_s = np.concatenate([10.0 * np.arange(5) + 0.01 * one for one in range(count)])
        _, cleaning = one_at_a_time(
            fixes_of(time_s, 0.0 * time_s), np.repeat(np.arange(count), 5), C
        )
        assert cleaning[0].what == what


@pytest.mark.parametrize(("leap_m", "strays"), [(75.0, []), (75.5, [0])])
def test_nobody_on_foot_goes_more_than_six_metres_a_second_and_fifteen(leap_m, strays) -> None:
    assert loose_ends(*stepped(leap_m, *WAY), C).tolist() == strays


def test_a_ride_keeps_half_the_speed_and_leads_on_over_four_fifths_of_its_path() -> None:
    """Before a leap of 200 m: 100 m are half of it."""
    assert loose_ends(*stepped(100.0, 100.0, 200.0, *WAY), C).tolist() == []
    assert loose_ends(*stepped(100.0, 99.0, 200.0, *WAY), C).tolist() != []
    # To and fro: 100 m on and as far back make no way at all.
    assert loose_ends(*stepped(150.0, -150.0, 200.0, *WAY), C).tolist() != []


def test_what_lies_close_to_the_other_side_of_a_silence_is_no_stray() -> None:
    """Fifteen metres and what a brisk pace of 1.6 m/s covers in twenty seconds: 47 m."""
    for away_m, strays in ((47.0, []), (47.5, [21])):
        east_m = np.cumsum([0.0, *WAY, 200.0, away_m, *WAY])
        lasts = np.full(len(east_m) - 1, 10.0)
        lasts[21] = 1800.0
        fixes = fixes_of(np.concatenate([[0.0], np.cumsum(lasts)]), east_m)
        assert loose_ends(fixes, measure_steps(fixes, C), C).tolist() == strays


@pytest.mark.parametrize(("apart_m", "spike"), [(47.0, [21]), (47.5, [])])
def test_both_sides_of_a_spike_agree_within_what_can_be_walked_meanwhile(apart_m, spike) -> None:
    """Twenty seconds at 1.6 m/s, and 15 m; the spike lies 400 m on."""
    fixes, steps = stepped(*WAY, 400.0, -(400.0 - apart_m), *WAY)
    assert spikes(fixes, steps, C).tolist() == spike


def test_two_steps_on_within_a_run_of_two_are_no_dash() -> None:
    """Out twice as far and back at one go: it jumps out at once and goes on home."""
    out, back = np.array([20]), np.array([22])
    _, steps = stepped(*WAY, 60.0, 60.0, -120.0, -110.0, *WAY)
    assert not _dash(steps, out, back, C)[0]
    _, steps = stepped(*WAY, 60.0, 60.0, 5.0, -120.0, -110.0, *WAY)
    assert _dash(steps, out, np.array([23]), C)[0]


@pytest.mark.parametrize(("apart_m", "counts"), [(30.0, True), (29.5, False)])
def test_in_free_order_points_thirty_metres_apart_have_a_way_between_them(apart_m, counts) -> None:
    card = SimpleNamespace(name="By hand", legs=[
        SimpleNamespace(start=SimpleNamespace(east_m=0.0, north_m=0.0),
                        end=SimpleNamespace(east_m=0.0, north_m=500.0)),
        SimpleNamespace(start=None, end=SimpleNamespace(east_m=apart_m, north_m=500.0)),
    ])  # fmt: skip
    samples = np.arange(0, 60, 10)
    pins = PinnedCuts([], samples, 2.0 * np.arange(60))
    pins.of_leg[1] = "pinned"
    route = any_order_route(card, S, pins)
    made = {(edge.source, edge.target): edge for edge in route.edges}
    assert set(made) == {(0, 1), (0, 2)} | ({(1, 2), (2, 1)} if counts else set())
    for (_, target), edge in made.items():
        assert (edge.leg, edge.kind, edge.cost) == (target - 1, "leg", 0.0)
        assert edge.pinned == ("pinned" if target == 2 else None)
    assert (route.order, route.legs) == ((0, 1, 2), 2)


def test_of_supposed_walkers_the_order_of_the_likeliest_is_believed(monkeypatch) -> None:
    """By what the walk says of each, and by what is known of walkers beforehand."""
    monkeypatch.setattr(free_order, "lay_out", lambda *_, **__: SimpleNamespace(evidence=None))
    monkeypatch.setattr(free_order, "fan_of_walkers", lambda *_: [0, 1, 2])
    monkeypatch.setattr(free_order, "find_visits", lambda _, walker: walker)

    def believed(totals, costs):
        monkeypatch.setattr(free_order, "weigh_orders", lambda walker, *_: odds[walker])
        monkeypatch.setattr(free_order, "prior_cost", lambda walker, *_: costs[walker])
        odds = [SimpleNamespace(total=total) for total in totals]
        return odds.index(free_order.find_order(None, SimpleNamespace(legs=[1, 2]), S))

    assert believed([1.0, 3.0, 2.0], [0.0, 0.0, 0.0]) == 1
    assert believed([1.0, 3.0, 2.0], [0.0, 2.0, 0.0]) == 2
    assert believed([5.0, 3.0, 2.0], [1.0, 0.0, 0.0]) == 1
    assert believed([2.0, 2.0, 2.0], [0.0, 0.0, 0.0]) == 0


def test_a_visit_is_likely_up_to_a_cost_and_near_up_to_a_distance() -> None:
    near_m, dear = S.visit_near_m, S.visit_most_cost
    time_s = 1e6 * np.arange(4.0)
    evidence = SimpleNamespace(
        settings=S, route=SimpleNamespace(legs=1),
        cuts=type("Cuts", (), {"time_s": time_s, "__len__": lambda _: 4})(),
        to_point_m=np.column_stack([np.zeros(4), [9e9, 9e9, near_m, near_m + 0.5]]),
    )  # fmt: skip
    edge = SimpleNamespace(
        edge=SimpleNamespace(target=1, pinned=None), second=np.arange(4),
        cost=np.array([dear, dear + 0.5, dear + 0.5, dear + 0.5]),
    )  # fmt: skip
    (claims,) = free_visits._claims([edge], evidence)
    assert claims.tolist() == [0, 2]


@pytest.mark.parametrize(("step_m", "moving"), [(0.5, False), (0.625, True)])
def test_who_moves_at_the_slowest_pace_is_not_walking_yet(step_m, moving) -> None:
    """At a quarter of a metre a second, here the slowest, there is no usual pace."""
    slow = replace(S, slowest_walk_m_s=0.25)
    along = step_m * np.arange(100.0)
    found = find_movement(samples_of(np.column_stack([along, 0.0 * along])), slow)
    assert (found.walking_m_s == S.usual_walk_m_s) is not moving


def test_a_ride_begins_at_two_and_a_half_times_the_usual_pace_of_moving() -> None:
    speed = np.array([0.25, 0.25, 0.25, 2.0, 4.0])
    slow = replace(S, slowest_walk_m_s=0.25, slowest_ride_m_s=1.0)
    assert halts._ride_m_s(speed, 1.0, slow) == 2.5 * 3.0  # the middle of 2 and 4
    assert halts._ride_m_s(speed[:3], 1.0, slow) == 2.5
    assert halts._ride_m_s(speed[:3], 0.1, slow) == 1.0


@pytest.mark.parametrize(("between", "joined"), [(4, 2), (3, 1)])
def test_halts_ten_seconds_apart_are_two(between, joined) -> None:
    """Of samples every two seconds: five steps are ten."""
    slow = np.array([True] * 10 + [False] * between + [True] * 10)
    samples = samples_of(np.zeros((len(slow), 2)))
    assert len(halts._halts(samples, slow, S)) == joined


@pytest.mark.parametrize(("samples", "told"), [(10, 20.0), (9, 0.0)])
def test_noise_is_told_by_halts_of_twenty_seconds(samples, told) -> None:
    made = samples_of(np.zeros((40, 2)))
    assert halts._noise(made, np.array([[5, 5 + samples]]), S)[1] == told


@pytest.mark.parametrize(("interval_s", "moved"), [(3.0, True), (3.25, False)])
def test_cuts_are_put_to_the_second_with_fixes_three_seconds_apart(interval_s, moved) -> None:
    along = interval_s * np.arange(80)
    bend_s = 40 * interval_s
    place = np.column_stack([np.minimum(along, bend_s), np.maximum(along - bend_s, 0.0)])
    clean = clean_of(1000.0 + along, ORIGIN + place, every_s=interval_s)
    cut_s = 1000.0 + bend_s + 6.0
    found = refine_cut(clean, cut_s, -np.inf, np.inf, S)
    assert found == (pytest.approx(1000.0 + bend_s, abs=1.0) if moved else cut_s)


def test_a_cut_stays_where_the_bend_is_not_clearly_elsewhere() -> None:
    """A quarter of what is left over must go."""
    clean = HandWalk().walk(90, 100).walk(0, 100).clean()
    for gain, moved in ((0.25, True), (1.0, False)):
        settings = replace(S, refine_gain=gain)
        found = refine_cut(clean, BEGIN + 84.0, -np.inf, np.inf, settings)
        assert (found != BEGIN + 84.0) is moved
    # Nor can it move where its neighbours leave no room.
    assert refine_cut(clean, BEGIN + 84.0, BEGIN + 84.0, BEGIN + 84.0, S) == BEGIN + 84.0


def test_an_approach_is_nearer_than_the_reach() -> None:
    point = np.zeros(2)
    for metres, count in ((S.approach_m, 0), (S.approach_m - 0.5, 1)):
        place = np.array([[metres + 9.0, 0.0], [metres, 0.0], [metres + 9.0, 0.0]])
        assert len(nearest_approaches(place, point, S)) == count


def test_a_cut_stands_before_another_that_is_a_reach_away() -> None:
    """A bend gives way to a halt within eight metres, before it and behind it."""
    for metres, kept in ((8, [100, 108]), (7, [107])):
        rank = np.full(300, -1, dtype=np.int8)
        rank[100], rank[100 + metres] = 2, 3
        assert cuts._thin(rank, np.arange(300.0), S).tolist() == kept
        rank[100], rank[100 + metres] = 3, 2
        stronger = [100] if metres == 7 else kept
        assert cuts._thin(rank, np.arange(300.0), S).tolist() == stronger


def test_an_arm_tells_from_more_than_a_third_of_its_length_on() -> None:
    """Of 60 m twenty, in samples of a metre, to and fro: half as straight."""
    number = np.arange(101.0)
    samples = samples_of(np.column_stack([number, np.zeros(101)]))
    movement = find_movement(samples, S)
    made = find_cuts(samples, movement, np.empty((0, 2)), S)
    arms = find_arms(samples, movement, made)
    left = movement.path_m[-1] - made.path_m
    slower = arms.after[60.0].pace
    assert np.all(slower[left <= 20.0] == 1.0)


@pytest.mark.parametrize(
    ("best", "apart"), [(-103.0, False), (-103.5, True), (-75.0, False), (-49.0, False)]
)
def test_one_side_alone_fits_better_by_more_than_three_nats(best, apart) -> None:
    sides = [matched([0], cost=best), matched([1], cost=best + 1.0)]
    assert outings._apart(sides, matched([0], cost=-100.0), S) is apart


@pytest.mark.parametrize(("best", "apart"), [(-50.0, True), (-49.5, False)])
def test_of_sides_that_share_half_their_legs_one_fits_as_its_share_asks(best, apart) -> None:
    """All legs on both sides: half of what both together fit, and just so much is enough."""
    sides = [matched(range(4), cost=best), matched(range(4), cost=best + 1.0)]
    assert outings._apart(sides, matched([0], cost=-100.0), S) is apart


@pytest.mark.parametrize(("best", "apart"), [(-75.0, True), (-74.5, False)])
def test_of_sides_that_share_half_of_the_legs_one_fits_three_quarters(best, apart) -> None:
    sides = [matched([0, 1, 2], cost=best), matched([1, 2, 3], cost=best + 1.0)]
    assert outings._apart(sides, matched([0], cost=-100.0), S) is apart


def test_six_hours_of_silence_part_nothing_yet() -> None:
    for silent_s, parts in ((21_600.0, 1), (21_601.0, 2)):
        time_s = np.array([0.0, 10.0, 10.0 + silent_s, 20.0 + silent_s])
        assert len(outings.split_outings(clean_of(time_s, np.zeros((4, 2))), S)) == parts


@pytest.mark.parametrize(("path_m", "asked"), [(350.0, True), (349.5, False)])
def test_a_new_beginning_is_looked_for_beside_half_a_course(monkeypatch, path_m, asked) -> None:
    monkeypatch.setattr(outings, "_beside_legs_m", lambda _: path_m)
    monkeypatch.setattr(outings, "begun_anew", lambda *_: 77.0)
    monkeypatch.setattr(outings, "_pauses", lambda *_: [5.0])
    card = SimpleNamespace(
        legs=[SimpleNamespace(distance_m=300.0), SimpleNamespace(distance_m=400.0)]
    )
    assert outings._partings(None, None, card, S) == ([5.0, 77.0] if asked else [5.0])


def test_two_fixes_beside_the_course_are_enough_to_leave_the_others_out() -> None:
    """Of a drive to it and home, two kilometres and more away."""
    card = card_of((0, 0), (400, 0), (400, 300))
    east_m = np.array([-90_000.0, 0.0, 400.0, 90_000.0])
    place = ORIGIN + np.column_stack([east_m, np.zeros(4)])
    clean = clean_of(10.0 * np.arange(4.0), place)
    assert near_course(clean, card, S).time_s.tolist() == [10.0, 20.0]
    lonely = clean_of(10.0 * np.arange(3.0), place[[0, 1, 3]])
    assert near_course(lonely, card, S) is lonely


def test_a_stretch_is_broken_by_more_than_the_longest_gap() -> None:
    for gap_s, stretches in ((S.stretch_gap_s, 1), (S.stretch_gap_s + 1.0, 2)):
        time_s = np.concatenate([10.0 * np.arange(20), 190.0 + gap_s + 10.0 * np.arange(20)])
        clean = clean_of(time_s, np.column_stack([time_s, 0.0 * time_s]))
        assert len(set(sample_walk(clean, S).stretch.tolist())) == stretches


def test_turns_three_degrees_apart_are_one() -> None:
    """Walkers are supposed at 0, 10 and 20 degrees either way, and where the angle leads."""
    for angle_deg, supposed in ((-13.0, False), (-13.5, True)):
        turns = [
            one.bias_deg
            for one in fan_of_walkers(card_of((0, 0), (400, 0), angle_deg=angle_deg), S)
        ]
        assert (angle_deg in turns) is supposed


def test_who_is_beyond_the_habits_of_walkers_is_not_known_better() -> None:
    """At the limits themselves of turn and pace."""
    beyond = replace(S, pace_scale_least=0.9, pace_scale_most=1.1)
    for ratio, better in ((0.8, False), (1.0, True), (1.3, False)):
        odds, evidence = legs_walked([0.0] * 9, [ratio] * 9)
        assert (known_better(LEVEL, odds, evidence, beyond) is not LEVEL) is better


CUTS = SimpleNamespace(time_s=1000.0 * np.arange(9.0), path_m=1000.0 * np.arange(9.0))


def test_a_leg_is_read_from_the_least_share_on() -> None:
    for share, kind in ((S.walked_least, "leg"), (S.walked_least - 1e-3, "none")):
        assert read_leg({"leg": odds_of((1, 4, share))}, CUTS, 0, S).kind == kind


def test_where_no_likely_portion_is_open_the_likeliest_that_is_gets_read() -> None:
    """It has less than a ten thousandth of what the likeliest has."""
    odds = odds_of((0, 3, 0.9), (2, 5, 3e-5), (2, 6, 5e-5), (3, 6, 1e-5))
    got = read_leg({"leg": odds}, CUTS, 2, S)
    assert (got.kind, got.first, got.second) == ("leg", 2, 6)
    assert got.right == 5e-5
    assert read_leg({"leg": odds}, CUTS, 3, S).first == 3


def test_of_portions_within_a_third_of_the_tolerance_the_closest_is_read() -> None:
    """Ten seconds or ten metres; the likeliest by far stands by itself."""
    for off_s, first in ((10.0, 1), (10.5, 0)):
        near = SimpleNamespace(time_s=np.array([0.0, 11.0, 11.0 + off_s, 900.0]),
                               path_m=np.array([0.0, 200.0, 400.0, 900.0]))  # fmt: skip
        close = reading._near(near, np.arange(3), S, 1.0 / 3.0)
        assert close[1, 2] == (1.0 if first else 0.0)
        assert close[0, 1] == 0.0
    metres = SimpleNamespace(
        time_s=np.array([0.0, 900.0, 2000.0]), path_m=np.array([0.0, 30.0, 60.5])
    )
    assert reading._near(metres, np.arange(3), S, 1.0).tolist() == [[1, 1, 0], [1, 1, 0], [0, 0, 1]]


def test_a_runner_up_is_told_from_the_least_probability_on() -> None:
    chosen = read_leg({"leg": odds_of((0, 3, 0.9))}, CUTS, 0, S)
    for probability, told in ((S.runner_up_least, True), (S.runner_up_least - 1e-3, False)):
        odds = {"leg": odds_of((0, 3, 1.0 - probability), (4, 8, probability))}
        assert (runner_up.runner_up(odds, chosen, CUTS, S) is not None) is told


def test_the_largest_of_a_range_is_the_largest_of_it() -> None:
    values = np.array([3.0, 9.0, 1.0, 4.0, 1.0, 5.0, 9.0, 2.0, 6.0])
    pairs = [(a, b) for a in range(10) for b in range(10)]
    first, beyond = (np.array(column) for column in zip(*pairs, strict=True))
    got = RangeMost(values).between(first, beyond)
    assert got.tolist() == [max(values[a:b], default=0.0) for a, b in pairs]


def test_a_box_is_as_wide_as_it_must_be_ahead_as_it_may_and_nearly_square_to_the_leg() -> None:
    """Sides of the least length, turned by 30 degrees at most from a right angle."""

    def boxed(side=40, turn=90.0, ahead=60, back=40):
        pieces = ((0, 100), (turn, side), (0, ahead), (-turn, back), (0, 100))
        degrees = np.concatenate([np.full(round(metres / 5), float(deg)) for deg, metres in pieces])
        return len(find_boxes(degrees, np.full(len(degrees), 5.0), 1.0, S)) == 1

    least = math.ceil(max(S.box_side_m, 1.5) / 5.0) * 5
    assert boxed(side=least, back=least)
    assert not boxed(side=least - 5, back=least - 5)
    assert boxed(turn=90.0 - S.box_turn_deg)
    assert not boxed(turn=90.0 - S.box_turn_deg - 0.5)
    most = int(S.box_ahead_m)
    assert boxed(ahead=most)
    assert not boxed(ahead=most + 5)


def test_exchanged_points_cost_once_however_they_go_on() -> None:
    route = plan_route(card_of((0, 0), (400, 0), (400, 300), (0, 300), (0, 700)), S)
    beside = [edge for edge in route.edges if edge.kind == "link" and edge.source > 4]
    assert len(beside) == 5
    assert {edge.cost for edge in beside} == {0.0}
