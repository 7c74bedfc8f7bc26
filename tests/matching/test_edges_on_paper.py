"""Which portions are worth a look as a leg, what each costs, and what its directions say."""

from __future__ import annotations

import math
from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest
from matching.drawn_samples import drawn, samples_of
from measurement.hand_made import SETTINGS
from scipy.special import expit
from scipy.stats import norm

from audit.matching import edge_evidence
from audit.matching.cuts import find_cuts
from audit.matching.directions import Directions
from audit.matching.edge_evidence import CutRuns, lay_out_edge, look_at_portions, worth_a_look
from audit.matching.halts import find_movement
from audit.matching.pins import PinnedLeg
from audit.matching.portions import Portions, near_pairs
from audit.matching.route import Edge
from audit.matching.where_slips_lead import Slips

S = SETTINGS.matching
NOISE_M = 5.0


def edge(kind="leg", source=0, target=1, azimuth_deg=90.0, distance_m=500.0, **known) -> Edge:
    return Edge(
        source=source, target=target, azimuth_deg=azimuth_deg, distance_m=distance_m, leg=0,
        kind=kind, cost=0.0, **known,
    )  # fmt: skip


def portions_of(first, second, **known) -> Portions:
    """Portions of 500 m due east, straight and without a halt, but for what is said."""
    usual = {"chord_m": 500.0, "chord_deg": 90.0, "path_m": 500.0, "halted_s": 0.0, "halts": 0.0,
             "deviation_m": 0.0, "ridden_m": 0.0, "silence_s": 0.0}  # fmt: skip
    full = {
        name: np.broadcast_to(np.asarray(value, dtype=np.float64), len(first)).copy()
        for name, value in (usual | known).items()
    }
    return Portions(first=np.array(first), second=np.array(second), **full)


def looked_at(of: Edge, first=0, **known) -> bool:
    one = portions_of([first], [first + 1], **known)
    return len(edge_evidence.worth_a_look(of, one, np.zeros((4, 2)), S)) == 1


@pytest.mark.parametrize(
    ("known", "fits"),
    [
        ({"chord_m": 150.0}, True), ({"chord_m": 149.0}, False),  # three tenths of it
        ({"chord_m": 1150.0}, True), ({"chord_m": 1151.0}, False),
        ({"path_m": 1800.0}, True), ({"path_m": 1801.0}, False),  # thrice, and 300 m
        ({"silence_s": 3600.0}, True), ({"silence_s": 3601.0}, False),
        ({"ridden_m": 150.0}, True), ({"ridden_m": 151.0}, False),  # 50 m, and a fifth
        ({"chord_deg": 210.0}, True), ({"chord_deg": 211.0}, False),
        ({"chord_deg": 330.0}, True), ({"chord_deg": 329.0}, False),
    ],
)  # fmt: skip
def test_a_walk_of_a_leg_is_not_far_too_short_long_silent_ridden_or_turned(known, fits) -> None:
    assert looked_at(edge(), **known) is fits


@pytest.mark.parametrize("kind", ["late-start", "given-up"])
@pytest.mark.parametrize(
    ("known", "fits"),
    [
        ({"chord_m": 40.0}, True), ({"chord_m": 39.0}, False),
        ({"chord_m": 499.0}, True), ({"chord_m": 500.0}, False),
        ({"chord_m": 400.0, "path_m": 1200.0}, True), ({"chord_m": 400.0, "path_m": 1201.0}, False),
    ],
)  # fmt: skip
def test_part_of_a_leg_is_shorter_than_it(kind, known, fits) -> None:
    assert looked_at(edge(kind), **known) is fits


def test_only_the_first_cut_begins_under_way() -> None:
    assert not looked_at(edge("late-start"), first=1, chord_m=400.0)
    assert looked_at(edge("given-up"), first=1, chord_m=400.0)


def test_a_pinned_leg_has_the_portions_it_is_pinned_to() -> None:
    some = portions_of([0, 0, 1], [1, 2, 2], chord_m=9999.0)
    pinned = edge(pinned=PinnedLeg(first=None, second=2))
    assert edge_evidence.worth_a_look(pinned, some, np.zeros((4, 2)), S).tolist() == [1, 2]


def near_by(of: Edge, to_source, to_target) -> set[tuple[int, int]]:
    first, second = near_pairs(np.arange(6.0), 9.0)
    every = portions_of(first, second)
    at = edge_evidence._in_the_neighbourhood(of, every, np.column_stack([to_source, to_target]), S)
    return set(zip(first[at].tolist(), second[at].tolist(), strict=True))


def test_portions_begin_and_end_within_reach_of_where_the_leg_does() -> None:
    """Two kilometres and a half, and twice the leg's 500 m."""
    far, near = 3501.0, 3500.0
    to_source = [near, near, far, far, far, near]
    to_target = [far, far, far, near, near, far]
    assert near_by(edge(), to_source, to_target) == {(0, 3), (0, 4), (1, 3), (1, 4)}
    assert near_by(edge(source=-1), to_source, to_target) == {
        (a, b) for b in (3, 4) for a in range(b)
    }
    assert near_by(edge(target=-1), to_source, to_target) == {
        (a, b) for a in (0, 1) for b in range(a + 1, 6)
    }
    assert near_by(edge(), to_source, [far] * 6) == set()
    assert near_by(edge(), [near] * 6, [near] + [far] * 5) == set()
    assert near_by(edge(), [near] * 6, [far] * 5 + [near]) == {(a, 5) for a in range(5)}


def test_a_point_found_is_as_likely_as_its_place_in_the_measure_of_reckoned_ends() -> None:
    """A normal law about the point, in degrees of direction and the logarithm of the distance:
    a square metre is 1 / d^2 of a radian times that; against an even direction and length."""
    chord, off = np.array([500.0, 300.0, 500.0]), np.array([0.0, 20.0, 60.0])
    got = edge_evidence._at_target(chord, off, NOISE_M, S)
    sd = math.hypot(S.found_arrival_sd_m, NOISE_M)
    law = (
        norm.pdf(off, 0.0, sd) * norm.pdf(0.0, 0.0, sd) * chord**2 * math.radians(1.0) * 360.0 * 3.0
    )
    assert got == pytest.approx(law)


def test_detours_speak_against_having_gone_straight_to_a_point() -> None:
    slack = 0.05 * 500.0 + 2.0 * NOISE_M
    path = 500.0 + slack * np.array([0.0, 1.0, 2.0])
    got = edge_evidence._directly(path, np.full(3, 500.0), NOISE_M, S)
    assert got == pytest.approx(np.exp([0.0, -1.0, -4.0]))


def test_detours_cost_who_went_astray() -> None:
    slack = 0.1 * 500.0 + 2.0 * NOISE_M
    path = 500.0 + slack * np.array([-1.0, 0.0, 1.0, 2.0, 9.0])
    got = edge_evidence._bent_cost(path, np.full(5, 500.0), NOISE_M, S)
    assert got == pytest.approx([0.0, 0.0, 0.5, 2.0, S.astray_bent_most])


def standing(of: Edge, **known) -> float:
    some = portions_of([0, 0], [1, 1], **known)
    return edge_evidence._standing_cost(of, some, np.array([1]), NOISE_M, S)[0]


def test_halts_silences_and_wavering_cost_the_same_for_every_walker() -> None:
    assert standing(edge()) == 0.0
    halted = S.cost_halt * 2.0 + S.cost_halted_s * 100.0
    assert standing(edge(), halts=2.0, halted_s=100.0) == pytest.approx(halted)
    assert standing(edge(), halts=9.0, halted_s=900.0) == S.cost_halts_most
    assert standing(edge(), silence_s=400.0) == S.cost_silence
    slack = 0.06 * 500.0 + NOISE_M + 4.0
    for widths, nats in ((1.0, 0.5), (1.5, 1.125), (9.0, 2.0)):
        wavering = {"deviation_m": widths * slack}
        assert standing(edge(), **wavering) == pytest.approx(S.weight_deviation * nats)
        assert standing(edge(line=np.zeros((3, 2))), **wavering) == 0.0
    both = standing(edge(), silence_s=400.0, halts=1.0, deviation_m=slack)
    assert both == pytest.approx(S.cost_silence + S.cost_halt + 0.5 * S.weight_deviation)


def test_who_walks_a_leg_sets_out_and_arrives_along_it() -> None:
    """Logistic in the turn, half of it at 52 degrees; nothing on a leg as short as the arm, 60 m."""
    way = SimpleNamespace(
        leaving_deg=np.array([90.0, 142.0, 38.0, 150.0]),
        arriving_deg=np.array([90.0, 38.0, 142.0, 10.0]),
    )

    def cost(first, second, path_m=500.0):
        some = portions_of([0, first], [0, second], path_m=path_m)
        return edge_evidence._cost_of_ends(some, np.array([1]), way, S)[0]

    assert cost(0, 0) == pytest.approx(
        (S.cost_leaving_astray + S.cost_arriving_astray) * expit(-6.5)
    )
    straight = cost(0, 0)
    for first in (1, 2):
        left = S.cost_leaving_astray * (0.5 - expit(-6.5))
        assert cost(first, 0) - straight == pytest.approx(left)
        arrived = S.cost_arriving_astray * (0.5 - expit(-6.5))
        assert cost(0, first) - straight == pytest.approx(arrived)
    assert cost(3, 0) - straight == pytest.approx(
        S.cost_leaving_astray * (expit(1.0) - expit(-6.5))
    )
    for path_m, share in ((60.0, 0.0), (30.0, 0.0), (90.0, 0.5), (120.0, 1.0), (900.0, 1.0)):
        assert cost(3, 3, path_m) == pytest.approx(share * cost(3, 3))


def test_sums_reach_over_the_whole_walk_where_portions_touch_most_of_it() -> None:
    def reach(first, second, cuts):
        return edge_evidence.reach_of(np.array(first), np.array(second), cuts)

    assert reach([], [], 20) == (0, 0)
    assert reach([5, 3], [8, 9], 20) == (3, 9)
    assert reach([5, 0], [8, 10], 20) == (0, 19)
    assert reach([5, 1], [8, 10], 20) == (1, 10)


def test_the_error_of_a_chord_is_that_of_its_ends() -> None:
    some = portions_of([0, 0, 0], [1, 1, 1], chord_m=[500.0, 10.0, 0.5])
    looks = look_at_portions(some, np.arange(3), NOISE_M, S)
    ends_m = math.hypot(1.4 * NOISE_M, S.place_sd_m)
    assert looks.chord_sd_deg == pytest.approx(
        np.degrees(ends_m / np.array([500.0, 20.0, 20.0])), rel=1e-6
    )
    assert looks.log_chord == pytest.approx(np.log([500.0, 10.0, 1.0]))


def test_what_is_laid_out_of_an_edge_can_be_had_in_part() -> None:
    """Cuts every 125 m east; the leg is 500 m long."""
    place = np.column_stack([125.0 * np.arange(12), np.zeros(12)])
    first, second = near_pairs(place[:, 0], 1e6)
    length = 125.0 * (second - first)
    some = portions_of(first, second, chord_m=length, path_m=length)

    class Even(SimpleNamespace):
        def __len__(self) -> int:
            return 12

    cuts = Even(
        leaving_deg=np.full(12, 90.0),
        arriving_deg=np.full(12, 90.0),
        begins_halt=np.zeros(12, dtype=bool),
    )
    nodes = np.array([[0.0, 0.0], [500.0, 30.0]])
    to_point = np.hypot(*(place[:, None, :] - nodes).transpose(2, 0, 1))
    index = worth_a_look(edge(), some, to_point, S)
    at = lay_out_edge(edge(), index, some, cuts, to_point, NOISE_M, S)
    assert set((at.second - at.first).tolist()) == {2, 3, 4, 5, 6, 7, 8, 9}  # 150 to 1150 m
    assert (np.diff(at.second) >= 0).all()
    expected = edge_evidence._at_target(length[at.index], to_point[at.second, 1], NOISE_M, S)
    assert at.at_target == pytest.approx(expected, rel=1e-5)
    places = np.array([1, 4, 5, 9])
    part = lay_out_edge(edge(), index[places], some, cuts, to_point, NOISE_M, S)
    for name in ("index", "first", "second", "at_target", "standing_cost"):
        assert getattr(part, name).tolist() == getattr(at, name)[places].tolist()
    runs = CutRuns(part.first, part.second, 12)
    assert part.first[runs.by_first].tolist() == sorted(part.first.tolist())
    costs = np.arange(4.0)
    ended = runs.at_second.combined(costs)
    for cut in range(12):
        here = costs[part.second == cut]
        if len(here):
            assert ended[cut] == pytest.approx(-np.logaddexp.reduce(-here))


def walked(samples):
    movement = replace(find_movement(samples, S), noise_m=NOISE_M)
    cuts = find_cuts(samples, movement, np.empty((0, 2)), S)
    return Directions(samples, movement, cuts, S), cuts


SD_DEG = math.hypot(S.wander_sd_deg, S.wander_sd_per_noise_m * NOISE_M)


def nats_a_metre(off_deg: float) -> float:
    """A normal law beside a stray share, against an even direction, at a discount."""
    share = S.stray_step_share
    law = (1.0 - share) * 360.0 * norm.pdf(off_deg, 0.0, SD_DEG) + share
    return (math.log(law) - S.direction_discount) / S.direction_memory_m


CORNER = 2.0 * S.direction_smoothing_s_per_m * NOISE_M * nats_a_metre(0.0)
"""What a corner costs at most: at 1 m/s it blurs over a width of smoothing to either side."""


def cost(directions, cuts, of, expected_deg, most=1e9, first=1, second=-2, reach=None):
    at = SimpleNamespace(first=np.array([first]), second=np.array([second % len(cuts)]))
    reach = reach or (0, len(cuts) - 1)
    return directions.cost(of, at, expected_deg, most, reach)[0]


@pytest.mark.parametrize("azimuth_deg", [90.0, 217.0, 0.0])
def test_every_metre_the_expected_way_counts_for_a_leg(azimuth_deg) -> None:
    angle = math.radians(azimuth_deg)
    directions, cuts = walked(drawn((700 * math.sin(angle), 700 * math.cos(angle), 350)))
    length_m = cuts.path_m[-2] - cuts.path_m[1]
    for off_deg in (0.0, 15.0, -15.0):
        gained = nats_a_metre(off_deg) * length_m
        assert gained > 0.0
        assert cost(directions, cuts, edge(), azimuth_deg - off_deg) == pytest.approx(-gained)
    assert cost(directions, cuts, edge(), azimuth_deg, most=2.0) == pytest.approx(-2.0)
    # Whatever stretch of the walk is summed up.
    part = cost(directions, cuts, edge(), azimuth_deg, first=3, second=6, reach=(2, 7))
    whole = cost(directions, cuts, edge(), azimuth_deg, first=3, second=6)
    assert part == pytest.approx(whole)


def test_sums_that_were_let_go_of_come_out_the_same() -> None:
    """Who asks for nearly the same direction next is told what the first one was told."""
    directions, cuts = walked(drawn((700.0, 0.0, 350)))
    told = cost(directions, cuts, edge(), 70.0001)
    directions.let_go()
    assert cost(directions, cuts, edge(), 69.9999) == told
    directions.forget()
    assert cost(directions, cuts, edge(), 69.9999) != told


def test_metres_the_wrong_way_count_against_it_and_less_beyond_a_cap() -> None:
    directions, cuts = walked(drawn((700.0, 0.0, 350)))
    for first, second in ((3, 4), (1, 9)):
        against = -nats_a_metre(70.0) * (cuts.path_m[second] - cuts.path_m[first])
        soft = S.bypass_cap + S.bypass_slope * (against - S.bypass_cap)
        got = cost(directions, cuts, edge(), 20.0, first=first, second=second)
        assert got == pytest.approx(min(against, soft))
    assert against > S.bypass_cap


def test_directions_bring_no_more_than_a_leg_well_walked() -> None:
    directions, _ = walked(drawn((700.0, 0.0, 350)))
    most = S.direction_length_share * 500.0 * nats_a_metre(0.0)
    assert directions.most_gain(500.0) == pytest.approx(most)


def test_directions_that_tell_nothing_bring_nothing() -> None:
    samples = drawn((700.0, 0.0, 350))
    movement = find_movement(samples, S)
    cuts = find_cuts(samples, movement, np.empty((0, 2)), S)
    deaf = replace(S, direction_discount=50.0)
    assert Directions(samples, movement, cuts, deaf).most_gain(500.0) == 0.0


@pytest.mark.parametrize(
    ("known", "fits"),
    [
        ({"path_m": 300.0, "chord_m": 184.7}, True),  # 1.3 of the chord, and 60 m
        ({"path_m": 300.0, "chord_m": 184.5}, False),
        ({"chord_deg": 271.0}, True),  # whatever its direction,
        ({"chord_m": 5000.0, "path_m": 5000.0}, True),  # and its length
        ({"silence_s": 3601.0}, False),
        ({"ridden_m": 151.0}, False),
    ],
)
def test_a_walk_to_where_a_slip_leads_is_straight_and_on_foot(known, fits) -> None:
    slips = Slips(azimuth_deg=np.array([0.0]), distance_m=np.array([500.0]))
    assert looked_at(edge("slip", slips=slips), **known) is fits


def test_a_leg_begins_within_reach_of_its_start_and_one_from_nowhere_anywhere() -> None:
    first, second = near_pairs(np.arange(6.0), 9.0)
    every = portions_of(first, second)
    to_point = np.column_stack([np.where(np.arange(6) == 2, 0.0, 9e9), np.zeros(6)])
    at = edge_evidence._in_the_neighbourhood(edge(), every, to_point, S)
    assert first[at].tolist() == [2, 2, 2]
    at = edge_evidence._in_the_neighbourhood(edge("late-start", source=-1), every, to_point, S)
    assert len(at) == len(every)
    at = edge_evidence._in_the_neighbourhood(
        edge("given-up", source=1, target=-1), every, to_point, S
    )
    assert len(at) == len(every)
    back = edge_evidence._in_the_neighbourhood(edge(source=1, target=0), every, to_point, S)
    assert second[back].tolist() == [2, 2]


def test_a_portion_from_the_first_cut_to_the_last_alone_may_be_a_leg() -> None:
    """One cut lies within reach of where the leg ends: the portions to it, and no other."""
    first, second = near_pairs(np.arange(6.0), 9.0)
    every = portions_of(first, second)
    for near in range(6):
        to_target = np.where(np.arange(6) == near, 0.0, 9e9)
        at = edge_evidence._in_the_neighbourhood(
            edge(), every, np.column_stack([np.zeros(6), to_target]), S
        )
        assert second[at].tolist() == [near] * near


def test_a_line_across_a_gap_is_the_recorders() -> None:
    samples = drawn((700.0, 0.0, 350))
    silent = replace(samples, in_gap=(np.arange(351) > 100) & (np.arange(351) <= 150))
    directions, cuts = walked(silent)
    length_m = cuts.path_m[-2] - cuts.path_m[1] - 100.0
    assert cost(directions, cuts, edge(), 90.0) == pytest.approx(-nats_a_metre(0.0) * length_m)
    parted = replace(samples, stretch=(np.arange(351) > 200).astype(np.int64))
    directions, cuts = walked(parted)
    steps = cuts.sample[-2] - cuts.sample[1] - 1  # of 2 m each, but for the one between
    assert cost(directions, cuts, edge(), 90.0) == pytest.approx(-nats_a_metre(0.0) * 2.0 * steps)


def test_a_leap_where_the_recording_breaks_is_no_walking() -> None:
    """Two metres a sample due east, but 90 m across the break."""
    number = np.arange(351)
    along = 2.0 * number + 88.0 * (number > 200)
    place = np.column_stack([along, 0.0 * along])
    directions, cuts = walked(samples_of(place, stretch=(number > 200).astype(np.int64)))
    length_m = cuts.path_m[-2] - cuts.path_m[1] - 90.0
    assert cost(directions, cuts, edge(), 90.0) == pytest.approx(-nats_a_metre(0.0) * length_m)


def test_an_obstacle_walked_round_costs_the_same_whatever_its_width() -> None:
    costs = []
    for out_m in (30.0, 50.0):
        box = (out_m, 0.0, round(out_m / 2)), (0.0, 80.0, 40), (-out_m, 0.0, round(out_m / 2))
        directions, cuts = walked(drawn((0.0, 300.0, 150), *box, (0.0, 300.0, 150)))
        costs.append(cost(directions, cuts, edge(), 0.0, first=0, second=-1))
    along = 680.0 * nats_a_metre(0.0)
    assert costs[0] == pytest.approx(costs[1], abs=0.02)
    assert costs == pytest.approx([S.cost_bypass - along] * 2, abs=4.0 * CORNER)


def test_along_a_bent_line_its_nearest_piece_is_expected() -> None:
    line = np.array([[0.0, 0.0], [300.0, 0.0], [300.0, 300.0]])
    directions, cuts = walked(drawn((300.0, 0.0, 150), (0.0, 300.0, 150)))
    bent = cost(directions, cuts, edge(line=line), 45.0, first=0, second=-1)
    assert bent == pytest.approx(-600.0 * nats_a_metre(0.0), abs=CORNER)
    # And is not mixed up with what a straight edge of the same chord expects.
    straight = cost(directions, cuts, edge(), 45.0, first=0, second=-1)
    against = -600.0 * nats_a_metre(45.0)
    soft = S.bypass_cap + S.bypass_slope * (against - S.bypass_cap)
    assert straight == pytest.approx(soft, abs=2.0 * CORNER)


def test_standing_adds_no_direction() -> None:
    place = np.column_stack([2.0 * np.arange(200.0), np.zeros(200)])
    stood = np.insert(place, 100, [place[100]] * 30, axis=0)
    directions, cuts = walked(samples_of(stood))
    length_m = cuts.path_m[-1] - cuts.path_m[0]
    got = cost(directions, cuts, edge(), 90.0, first=0, second=-1)
    assert got == pytest.approx(-nats_a_metre(0.0) * length_m, abs=0.05)
