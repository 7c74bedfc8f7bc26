"""Signs, arms, stays and cuts of a walk drawn sample by sample: every figure on paper."""

from __future__ import annotations

import math
from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest
from matching.drawn_samples import drawn, samples_of
from measurement.hand_made import SETTINGS

from audit.matching import arms, cuts, free_visits, signs, stays
from audit.matching.arms import Arm, Arms
from audit.matching.cuts import find_cuts
from audit.matching.halts import find_movement
from audit.matching.noted_moments import NotedMoment, NotedMoments
from audit.matching.range_most import RangeMost
from audit.matching.signs import SignsSeen
from audit.matching.stays import Stays

S = SETTINGS.matching
NAN = math.nan


class Some(SimpleNamespace):
    """Cuts or portions of which only some figures are needed."""

    def __len__(self) -> int:
        return len(self.path_m)


# Five cuts: setting out after 60 s of rest, a bend in passing, a halt of 40 s from its first to
# its last second, and a claim in passing.
CUTS = Some(
    position=np.array([[0.0, 0.0], [100.0, 0.0], [100.0, 200.0], [103.0, 204.0], [103.0, 404.0]]),
    time_s=np.array([60.0, 160.0, 360.0, 400.0, 640.0]),
    path_m=np.array([0.0, 100.0, 300.0, 305.0, 505.0]),
    seen_path_m=np.array([0.0, 100.0, 300.0, 305.0, 505.0]),
    ends_unseen=np.zeros(5, dtype=bool),
    begins_unseen=np.zeros(5, dtype=bool),
    halted_s=np.array([60.0, 60.0, 60.0, 100.0, 110.0]),
    begins_halt=np.array([False, False, True, False, False]),
    ends_halt=np.array([True, False, False, True, False]),
    turn_deg=np.array([180.0, 90.0, 20.0, 30.0, 180.0]),
    rest_s=np.array([60.0, 0.0, 40.0, 40.0, 0.0]),
)


def arm(azimuths, pace=1.0, straightness=1.0) -> Arm:
    full = [np.broadcast_to(np.asarray(value, float), 5).copy() for value in
            (azimuths, straightness, pace)]  # fmt: skip
    return Arm(direction_deg=full[0], straightness=full[1], pace=full[2])


BEFORE_DEG, AFTER_DEG = np.array([90, 90, 0, 37, 0]), np.array([90, 0, 37, 350, 0])
ARMS = Arms(
    before={35.0: arm(BEFORE_DEG), 60.0: arm(BEFORE_DEG, pace=[0.5, 0.6, 0.7, 0.8, 0.9]),
            100.0: arm(BEFORE_DEG), 150.0: arm(BEFORE_DEG, straightness=[0.1, 0.2, 0.3, 0.4, 0.5])},
    after={35.0: arm(AFTER_DEG), 60.0: arm(AFTER_DEG, pace=[1.5, 1.6, 1.7, 1.8, 1.9]),
           100.0: arm(AFTER_DEG + 5.0), 150.0: arm(AFTER_DEG, straightness=[0.6, 0.7, 0.8, 0.9, 1.0])},
)  # fmt: skip
TO_POINT_M = np.array([[3.0, 900.0], [100.0, 500.0], [250.0, 30.0], [240.0, 25.0], [450.0, 180.0]])
# Portions from the start to the bend, to the halt and to the end, and from the halt to the end.
PORTIONS = Some(
    first=np.array([0, 0, 0, 3]), second=np.array([1, 2, 4, 4]),
    path_m=np.array([100.0, 300.0, 505.0, 200.0]), chord_m=np.array([100.0, 200.0, 400.0, 0.5]),
    chord_deg=np.array([90.0, 27.0, 14.0, 0.0]), halted_s=np.array([0.0, 0.0, 50.0, 10.0]),
    deviation_m=np.array([0.0, 40.0, 60.0, 0.0]),
)  # fmt: skip
SEEN = SignsSeen(
    cuts=CUTS, movement=SimpleNamespace(walking_m_s=0.8), portions=PORTIONS, to_point_m=TO_POINT_M,
    arms=ARMS, rest=RangeMost(CUTS.rest_s), bend=RangeMost(CUTS.turn_deg), habits={},
)  # fmt: skip
ALL = np.arange(4)


def replace_cut(seen, cut, came_deg):
    """Let another direction be come from at one cut."""
    before = np.where(np.arange(5) == cut, came_deg, BEFORE_DEG)
    return replace(seen, arms=Arms(before={100.0: arm(before)}, after=seen.arms.after))


def read(kind="leg", source=0, target=1, line=None):
    edge = SimpleNamespace(kind=kind, source=source, target=target, line=line)
    return SEEN.of_portions(edge, ALL)


def test_rests_and_bends_at_the_ends_of_portions() -> None:
    got = read()
    for name, values in {
        "rest_at_claim_s": [NAN, 40.0, NAN, NAN],
        "rest_before_start_s": [60.0, 60.0, 60.0, 40.0],
        "bend_at_claim_walking_deg": [90.0, NAN, 180.0, 180.0],
        "bend_at_claim_resting_deg": [NAN, 20.0, NAN, NAN],
        "bend_at_start_walking_deg": [NAN] * 4,
        "bend_at_start_resting_deg": [180.0, 180.0, 180.0, 30.0],
        "halted_s": [0.0, 0.0, 50.0, 10.0],
    }.items():
        assert got[name] == pytest.approx(values, nan_ok=True), name


def test_pace_and_straightness_on_the_way_before_and_after() -> None:
    got = read()
    # Moving for 100, 300, 580 - 50 and 240 - 10 seconds, at a usual 0.8 m/s.
    paces = [100.0 / 100.0, 300.0 / 300.0, 505.0 / 530.0, 200.0 / 230.0]
    assert got["pace_on_way"] == pytest.approx(np.array(paces) / 0.8)
    assert got["pace_after_claim"].tolist() == [1.6, 1.7, 1.9, 1.9]
    assert got["pace_before_start"].tolist() == [0.5, 0.5, 0.5, 0.8]
    assert got["straight_after_claim"].tolist() == [0.7, 0.8, 1.0, 1.0]
    assert got["straight_before_claim"].tolist() == [0.2, 0.3, 0.5, 0.5]
    assert got["straight_from_start"].tolist() == [0.6, 0.6, 0.6, 0.9]


def test_how_far_off_the_points_a_portion_begins_and_ends() -> None:
    got = read()
    assert got["claim_off_point_m"].tolist() == [500.0, 30.0, 180.0, 180.0]
    assert got["start_off_point_m"].tolist() == [3.0, 3.0, 3.0, 240.0]
    # Who was under way began at no point; who gave up claimed none.
    assert read("late-start", source=-1)["start_off_point_m"].tolist() == [0.0] * 4
    assert np.isnan(read("given-up", target=-1)["claim_off_point_m"]).all()
    kinds = [read(kind)["kind"][0] for kind in ("leg", "reversed", "link", "aside", "late-start")]
    assert kinds == [0.0, 1.0, 2.0, 3.0, 4.0]


def test_a_straight_leg_is_entered_and_left_along_it() -> None:
    got = read()
    for name, values in {
        "path_over_chord": [1.0, 1.5, 505.0 / 400.0, 200.0],  # of no chord a metre
        "wavering_share": [0.0, 0.2, 0.15, 0.0],
        "arriving_turned_deg": [0.0, 27.0, 14.0, 0.0],
        "leaving_turned_deg": [0.0, 63.0, 76.0, 10.0],
        "coming_turned_deg": [0.0, 63.0, 76.0, 37.0],
        "setting_off_walking_deg": [90.0, NAN, 14.0, 0.0],
        "going_on_walking_deg": [85.0, NAN, 9.0, 5.0],
        "going_on_resting_deg": [NAN, 15.0, NAN, NAN],
        # What lies 30 m and more from both ends: of the second the bend, of the third the halt too.
        "longest_rest_on_way_s": [0.0, 0.0, 40.0, 0.0],
        "sharpest_bend_on_way_deg": [0.0, 90.0, 90.0, 0.0],
    }.items():
        assert got[name] == pytest.approx(values, nan_ok=True), name
    assert not set(SEEN._of_straight_portions(ALL)) & set(read(line=np.zeros((3, 2))))


def test_what_belongs_to_an_end_is_no_sign_of_the_way() -> None:
    """A bend 29 m from the start is the start's, one 31 m from it lies on the way."""
    for bend_m, on_way in ((29.0, 0.0), (31.0, 70.0), (169.0, 70.0), (171.0, 0.0)):
        path_m = np.array([0.0, bend_m, 200.0])
        some = Some(path_m=path_m, seen_path_m=path_m)
        seen = replace(SEEN, cuts=some, bend=RangeMost(np.array([180.0, 70.0, 180.0])))
        inner = seen._inner(np.array([0]), np.array([2]))
        assert seen.bend.between(*inner).tolist() == [on_way]


def test_a_stay_from_the_claim_until_setting_out_again() -> None:
    """From the bend to the halt's end, came due east: 100 m, then 200 m north and 5 m on."""
    got = SEEN.of_stays(1, np.array([1, 2]), np.array([3, 3]))
    for name, values in {
        "moved_m": [math.hypot(3.0, 204.0), 5.0],
        "path_m": [205.0, 5.0],
        "straightness": [math.hypot(3.0, 204.0) / 205.0, NAN],  # 5 m are standing still
        "moved_on_m": [3.0, 4.0],
        "moved_aside_m": [204.0, 3.0],
        "halted_s": [40.0, 40.0],
        "left_off_point_m": [25.0, 25.0],
        "claim_off_point_m": [500.0, NAN],
        "came_nearer_m": [475.0, NAN],
        "path_over_miss": [205.0 / 520.0, NAN],
        "pace": [205.0 / 200.0 / 0.8, NAN],
        "rest_before_leaving_s": [40.0, NAN],
    }.items():
        assert got[name] == pytest.approx(values, nan_ok=True), name
    # Came on 37 degrees, the direction of 3 m east on 4 m north, and left 200 m due north.
    slant = SEEN.of_stays(1, np.array([3]), np.array([4]))
    came = math.radians(37.0)
    assert slant["moved_on_m"] == pytest.approx([200.0 * math.cos(came)])
    assert slant["moved_aside_m"] == pytest.approx([200.0 * math.sin(came)])
    moved = math.atan2(3.0, 204.0) - came
    cuts_back = replace_cut(SEEN, 1, 37.0).of_stays(1, np.array([1]), np.array([3]))
    assert cuts_back["moved_on_m"] == pytest.approx([math.hypot(3.0, 204.0) * math.cos(moved)])
    assert cuts_back["moved_aside_m"] == pytest.approx(
        [math.hypot(3.0, 204.0) * abs(math.sin(moved))]
    )
    none = SEEN.of_stays(1, np.array([0]), np.array([1]))
    assert np.isnan(none["rest_before_leaving_s"]).all()  # left in passing


def test_beginning_and_ending_the_course() -> None:
    assert SEEN.of_starts(0)["start_off_point_m"].tolist() == TO_POINT_M[:, 0].tolist()
    ended = SEEN.of_endings(2)
    assert ended["legs_left_out"].tolist() == [2.0] * 5
    assert ended["path_still_walked_m"].tolist() == [505.0, 405.0, 205.0, 200.0, 0.0]


def test_habits_are_halting_once_a_point_and_winding() -> None:
    def habits(halts, legs, straight):
        movement = SimpleNamespace(halts=np.zeros((halts, 2)))
        way = SimpleNamespace(before={150.0: arm(0.0, straightness=straight)})
        got = signs._habits(movement, way, legs)
        return got["halting"], got["winding"]

    assert habits(2, 3, 0.985) == (0.5, 0.0)
    assert habits(9, 3, 0.935) == (1.0, pytest.approx(0.5))
    assert habits(0, 3, [0.8, 0.8, 0.8, 0.99, 0.99]) == (0.0, 1.0)


def test_signs_that_hang_on_the_walker() -> None:
    one, two, three = np.ones(2), 2.0 * np.ones(2), 3.0 * np.ones(2)
    straight = SEEN.of_walker(SimpleNamespace(line=None), one, two, three)
    assert {name: values[0] for name, values in straight.items()} == {
        "log_distance_ratio": 1.0, "length_nats": 2.0, "directions_nats": 3.0,
    }  # fmt: skip
    assert list(SEEN.of_walker(SimpleNamespace(line=1), one, two, three)) == ["length_nats"]


def laid(samples, at, halted_s=None, walking_m_s=1.0):
    step = np.hypot(*np.diff(samples.smooth, axis=0).T)
    path_m = np.concatenate([[0.0], np.cumsum(step)])
    movement = SimpleNamespace(
        path_m=path_m, walking_m_s=walking_m_s,
        halted_s=np.zeros(len(path_m)) if halted_s is None else halted_s,
    )  # fmt: skip
    return samples, movement, SimpleNamespace(sample=np.array(at))


def test_arms_reach_so_far_along_the_path_before_and_after() -> None:
    """200 m east, 200 m north, 2 m in 2 s; seen 50 m before the bend and 50 m after it."""
    way = laid(drawn((200.0, 0.0, 100), (0.0, 200.0, 100)), [75, 125], walking_m_s=0.5)
    ahead = arms._arm(*way, 100.0)
    assert ahead.direction_deg == pytest.approx([45.0, 0.0])
    assert ahead.straightness == pytest.approx([math.sqrt(0.5), 1.0])
    assert ahead.pace == pytest.approx([2.0, 2.0])
    behind = arms._arm(*way, -100.0)
    assert behind.direction_deg == pytest.approx([90.0, 45.0], abs=1.5)  # to a sample
    assert behind.straightness == pytest.approx([1.0, math.sqrt(0.5)], abs=0.02)


def test_an_arm_at_an_end_of_the_walk_tells_from_a_third_of_its_length_on() -> None:
    way = laid(drawn((200.0, 0.0, 100)), [0, 16, 17, 83, 84, 100], walking_m_s=0.5)
    assert arms._arm(*way, 100.0).pace.tolist() == [2.0, 2.0, 2.0, 2.0, 1.0, 1.0]
    assert arms._arm(*way, -100.0).pace.tolist() == [1.0, 1.0, 2.0, 2.0, 2.0, 2.0]


def test_halts_do_not_slow_an_arm() -> None:
    """20 s of 60 m stood: fifty metres ahead take 50 s of walking."""
    samples = drawn((60.0, 0.0, 30), (0.0, 0.0, 10), (60.0, 0.0, 30))
    halted_s = np.clip(2.0 * np.arange(71) - 60.0, 0.0, 20.0)
    way = laid(samples, [15, 55], halted_s)
    assert arms._arm(*way, 60.0).pace[0] == pytest.approx(1.0)
    assert arms._arm(*way, -60.0).pace[1] == pytest.approx(1.0)


def test_marks_within_reach_of_a_cut() -> None:
    index = np.array([0, 3, 4, 10, 16, 17, 43, 44, 50, 57])
    near = cuts._near(index, np.array([10, 50]), 6.0)
    assert index[near].tolist() == [4, 10, 16, 44, 50]
    assert not cuts._near(index, np.array([], dtype=np.int64), 6.0).any()


def test_the_longer_of_two_halts_within_reach_is_the_rest() -> None:
    samples = SimpleNamespace(time_s=3.0 * np.arange(100))
    movement = SimpleNamespace(halts=np.array([[10, 20], [24, 60]]))
    rest = cuts._rest(np.array([3, 4, 10, 15, 22, 40, 60, 66, 67]), samples, movement, 6.0)
    assert rest.tolist() == [0.0, 30.0, 30.0, 30.0, 108.0, 0.0, 108.0, 108.0, 0.0]


def thinned(*marks):
    """Kept places of (metres, strength) marks."""
    rank = np.full(1001, -1, dtype=np.int8)
    for metres, strength in marks:
        rank[metres] = strength
    return cuts._thin(rank, np.arange(1001.0), S).tolist()


def test_a_cut_gives_way_to_a_stronger_one_or_an_equal_one_before_it() -> None:
    halt, bend, nearest, filler = 3, 2, 1, 0
    assert thinned((100, bend), (107, bend)) == [100]
    assert thinned((100, bend), (108, bend)) == [100, 108]
    assert thinned((100, nearest), (108, bend)) == [100, 108]
    assert thinned((100, nearest), (107, bend)) == [107]
    assert thinned((100, bend), (107, nearest)) == [100]
    assert thinned((100, halt), (103, halt)) == [100, 103]
    # A filler keeps 24.5 m off whatever is stronger, and off other fillers.
    assert thinned((100, filler), (124, nearest)) == [124]
    assert thinned((100, filler), (125, nearest)) == [100, 125]
    assert thinned((100, nearest), (124, filler)) == [100]
    assert thinned((100, filler), (124, filler)) == [100]
    # What was dropped makes no other give way.
    assert thinned((100, bend), (106, nearest), (112, nearest)) == [100, 112]
    assert thinned((0, bend), (5, bend)) == [0]


def cuts_of(samples, noise_m=3.0, points=()):
    movement = replace(find_movement(samples, S), noise_m=noise_m)
    return find_cuts(samples, movement, np.array(points, float).reshape(-1, 2), S)


def test_bends_stand_out_from_the_noise() -> None:
    """A corner 14 m off the chord of 200 m is one at 3 m of noise, and none at 10 m."""
    bend = drawn((100.0, 14.0, 50), (100.0, -14.0, 50))
    assert 50 in cuts_of(bend, 3.0).sample
    assert 50 not in cuts_of(bend, 10.0).sample


def test_where_the_recording_breaks_both_sides_are_cuts() -> None:
    place = np.column_stack([2.0 * np.arange(200.0), np.zeros(200)])
    place[120:, 1] += 50.0
    parted = samples_of(place, stretch=(np.arange(200) >= 120).astype(np.int64))
    assert {0, 119, 120, 199} <= set(cuts_of(parted).sample.tolist())


def test_ways_before_and_after_a_cut_wherever_it_lies() -> None:
    samples = drawn((200.0, 0.0, 100), (0.0, 200.0, 100))
    samples = samples_of(samples.smooth + np.array([900.0, -400.0]))
    movement = find_movement(samples, S)
    arriving, leaving = cuts._ways(np.array([100, 50]), samples, movement, 35.0)
    assert arriving == pytest.approx([90.0, 90.0])
    assert leaving == pytest.approx([0.0, 90.0])


def stays_of(settings=S, learnt=None, **known):
    """Five cuts, and nothing else of a walk."""
    evidence = SimpleNamespace(
        cuts=CUTS, settings=settings, to_point_m=TO_POINT_M, learnt=learnt, noted=None,
        leave=np.array([0.0, 0.1, 0.2, 0.3, 0.4]),
        route=SimpleNamespace(edges=(), legs=1), **known,
    )  # fmt: skip
    return Stays(evidence)


def summed(*nats):
    return -np.log(np.sum(np.exp(-np.array(nats)), axis=0))


def test_a_stay_is_standing_or_wandering_or_having_found_the_point() -> None:
    """Or, at a price, anything at all."""
    made = stays_of()
    moved = np.hypot(*(CUTS.position[made.second] - CUTS.position[made.first]).T)
    stood = 0.5 * (moved / S.stay_sd_m) ** 2
    wandered = moved / S.wander_m - math.log(S.wander_share)
    for node in (0, 1):
        found = 0.5 * (TO_POINT_M[made.second, node] / S.found_sd_m) ** 2
        anything = np.full(len(moved), S.cost_relocated_nowhere)
        law = summed(stood, wandered, anything, found) + made.evidence.leave[made.second]
        assert made.cost(node) == pytest.approx(law, rel=1e-5)


def test_pairs_of_cuts_lie_within_so_much_path_and_a_cut_is_one_with_itself() -> None:
    made = stays_of(replace(S, stay_path_m=205.0))
    pairs = set(zip(made.first.tolist(), made.second.tolist(), strict=True))
    assert pairs == {(n, n) for n in range(5)} | {(0, 1), (1, 2), (1, 3), (2, 3), (2, 4), (3, 4)}
    assert (np.diff(made.second) >= 0).all()
    # Further apart: cuts of less, and of more, than 205 m.
    assert made._pairs.before.tolist() == [0, 0, 1, 1, 2]
    assert made._pairs.after.tolist() == [2, 4, 5, 5, 5]


def test_setting_out_is_near_the_start_and_later_points_cost() -> None:
    made = stays_of()
    made.evidence.route.legs = 2
    for node, price in ((0, 0.0), (1, S.cost_start_later)):
        near = 0.5 * (TO_POINT_M[:, node] / S.found_sd_m) ** 2
        law = summed(near, np.full(5, S.cost_start_elsewhere)) + made.evidence.leave + price
        assert Stays.first_departure(made.evidence, node) == pytest.approx(law)
        assert made.setting_out(node) == pytest.approx(law)
    assert (Stays.first_departure(made.evidence, 2) == stays.IMPOSSIBLE).all()


def test_leaving_after_any_walking_is_from_the_point_or_dear() -> None:
    made = stays_of()
    near = 0.5 * (TO_POINT_M[:, 1] / S.found_sd_m) ** 2
    law = (
        summed(near, np.full(5, S.cost_relocated_nowhere)) + made.evidence.leave + S.cost_long_stay
    )
    assert Stays.far_departure(made.evidence, 1) == pytest.approx(law)


def test_ending_early_costs_and_so_does_every_leg_left() -> None:
    made = stays_of()
    made.evidence.route.legs = 3
    left = S.cost_leg_left_out
    for node, price in ((3, 0.0), (2, S.cost_ended_early + left), (0, S.cost_ended_early + 3 * left),
                        (4, S.cost_end_aside)):  # fmt: skip
        assert made.ending(node).tolist() == [pytest.approx(price)] * 5


def arrows(noted=None, **known):
    """Edges into point 1 that end at the second and third cut, out of it from the third and fourth."""
    into = SimpleNamespace(source=0, target=1, kind="leg")
    out = SimpleNamespace(source=1, target=-1, kind="leg")
    ends = {0: SimpleNamespace(first=np.array([0, 0]), second=np.array([1, 2])),
            1: SimpleNamespace(first=np.array([2, 3]), second=np.array([4, 4]))}  # fmt: skip
    evidence = SimpleNamespace(
        cuts=CUTS, settings=replace(S, stay_path_m=205.0), to_point_m=TO_POINT_M, learnt=None,
        noted=noted, leave=np.array([0.0, 0.1, 0.2, 0.3, 0.4]), of_edge=lambda edge: ends[edge.source],
        route=SimpleNamespace(edges=(into, out), legs=1), **known,
    )  # fmt: skip
    return Stays(evidence)


def test_stays_are_between_cuts_where_a_way_ends_and_one_begins() -> None:
    at = arrows().at(1)
    pairs = list(zip(at.first.tolist(), at.second.tolist(), strict=True))
    assert sorted(pairs) == [(1, 2), (1, 3), (2, 2), (2, 3)]
    assert sorted(at.first[at.by_first].tolist()) == at.first[at.by_first].tolist()


def noted_at(time_s):
    """A moment noted of the point after this one."""
    moment = NotedMoment(leg=1, time_s=time_s)
    return NotedMoments([moment], CUTS.time_s, np.arange(3), replace(S, noted_within_s=0.0))


@pytest.mark.parametrize("moment", [None, 0.5, 2.5])
def test_leaving_and_what_is_to_come_add_up_over_all_stays(moment) -> None:
    """Near each other as a stay, or further apart with anything between, over a noted moment."""
    noted = None if moment is None else noted_at(np.interp(moment, range(5), CUTS.time_s))
    made = arrows(noted=noted)
    at, far = made.at(1), Stays.far_departure(made.evidence, 1)
    arrived, leaving = np.array([9.0, 1.0, 2.0, 7.0, 8.0]), np.array([3.0, 4.0, 0.5, 1.5, 6.0])
    left = [[stays.IMPOSSIBLE] for _ in range(5)]
    to_come = [[stays.IMPOSSIBLE] for _ in range(5)]
    for first, second, cost in zip(at.first, at.second, at.cost, strict=True):
        left[second].append(arrived[first] + cost)
        to_come[first].append(leaving[second] + cost)
    for first in range(5):
        for second in range(5):
            if CUTS.path_m[second] - CUTS.path_m[first] > 205.0:
                over = moment is not None and first < moment < second
                price = far[second] + S.cost_against_noted * over
                left[second].append(arrived[first] + price)
                to_come[first].append(leaving[second] + price)
    for got, alternatives in ((made.left(1, arrived), left), (made.to_come(1, leaving), to_come)):
        assert got == pytest.approx([-np.logaddexp.reduce(-np.array(one)) for one in alternatives])
    # A stay of the usual kind, or one after which anything may have happened.
    cost = dict(zip(zip(at.first, at.second, strict=True), at.cost, strict=True))
    usual = made.cost(1)[(made.first == 1) & (made.second == 3)][0]
    over = S.cost_against_noted * (moment == 2.5)
    assert cost[1, 3] == pytest.approx(summed(usual, far[3]) + over, rel=1e-5)


def test_each_visit_is_left_as_its_point_is_after_its_own_claim() -> None:
    """Two visits of one point, at the second and the third cut, and one of another."""
    made = stays_of(replace(S, stay_path_m=205.0))
    made.evidence.route.legs = 2
    made.evidence.to_point_m = np.column_stack([TO_POINT_M, TO_POINT_M[::-1, 0]])
    point, cut = np.array([0, 0, 1]), np.array([1, 2, 1])
    got = free_visits._leaving(made.evidence, point, cut)
    for visit, (of, at) in enumerate(zip(point, cut, strict=True)):
        far = np.exp(-Stays.far_departure(made.evidence, of + 1)) * (np.arange(5) >= at)
        near = np.zeros(5)
        here = made.first == at
        near[made.second[here]] = np.exp(-Stays(made.evidence).cost(of + 1)[here])
        assert got[visit] == pytest.approx(near + far, rel=1e-5)
