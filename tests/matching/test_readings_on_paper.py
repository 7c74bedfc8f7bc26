"""One answer read out of odds, its runner-up and its moments, and what a first look leaves."""

from __future__ import annotations

import math
from dataclasses import fields, replace
from types import SimpleNamespace
from unittest.mock import Mock

import numpy as np
import pytest
from matching.odds_by_hand import odds_of
from measurement.hand_made import SETTINGS, card_of

from audit.matching import first_look, match_walk, read_legs, reading, runner_up
from audit.matching.leg_match import Reckoned
from audit.matching.pins import PinnedLeg
from audit.matching.portions import Portions
from audit.matching.read_legs import read_in_turn
from audit.matching.reading import LegReading, gather_leg_odds, read_leg
from audit.matching.route import plan_route
from audit.matching.runner_up import OtherReading
from audit.matching.second_look import SecondLook
from audit.matching.walk_samples import WalkSamples

S = SETTINGS.matching
# Eight cuts: a minute and 100 m from each to the next, but for the last two, which are 20 s apart.
CUTS = SimpleNamespace(
    sample=np.arange(8),
    time_s=np.array([0.0, 60.0, 120.0, 180.0, 240.0, 300.0, 360.0, 380.0]),
    path_m=np.array([0.0, 100.0, 200.0, 300.0, 400.0, 500.0, 600.0, 700.0]),
    unseen=np.zeros(8, dtype=bool),
)


def sampled(in_gap) -> WalkSamples:
    """A metre east and 2 s from one sample to the next."""
    east = np.arange(float(len(in_gap)))
    place = np.column_stack([east, 0.0 * east])
    return WalkSamples(
        step_s=2.0, time_s=2.0 * east, raw=place, smooth=place, in_gap=in_gap,
        stretch=np.zeros(len(in_gap), dtype=np.int64), long_interval_s=2.0, usual_move_m=1.0,
    )  # fmt: skip


def read(odds, not_before=0):
    got = read_leg(odds, CUTS, not_before, S)
    return got.kind, got.first, got.second


def test_the_likeliest_kind_is_read_and_of_it_the_likeliest_portion() -> None:
    leg = odds_of((0, 3, 0.2), (1, 4, 0.5))
    assert read({"leg": leg}) == ("leg", 1, 4)
    assert read({"leg": leg, "late-start": odds_of((0, 2, 0.1))}) == ("leg", 1, 4)
    assert read({"leg": odds_of((1, 4, 0.2)), "given-up": odds_of((0, 2, 0.5))}) == (
        "given-up",
        0,
        2,
    )
    assert read({}) == ("none", None, None)
    assert read({"leg": odds_of((1, 4, S.walked_least - 0.01))}) == ("none", None, None)
    # Not before the leg before it was claimed.
    assert read({"leg": leg}, not_before=1) == ("leg", 1, 4)
    assert read({"leg": odds_of((0, 3, 0.2), (1, 4, 0.5), (2, 5, 0.1))}, not_before=2) == (
        "leg",
        2,
        5,
    )
    assert read({"leg": leg}, not_before=2) == ("none", None, None)


def test_portions_of_one_answer_stand_together_against_a_likelier_one_alone() -> None:
    """The last two cuts are within half a minute: their portions are right or wrong together."""
    odds = odds_of((0, 4, 0.4), (1, 6, 0.3), (1, 7, 0.28))
    got = read_leg({"leg": odds}, CUTS, 0, S)
    assert (got.first, got.second) == (1, 6)
    assert (got.right, got.share) == (pytest.approx(0.58), pytest.approx(0.98))
    nothing = read_leg({}, CUTS, 0, S)
    assert (nothing.share, nothing.right) == (1.0, 1.0)
    hardly = read_leg({"leg": odds_of((1, 4, 0.3))}, CUTS, 0, S)
    assert (hardly.kind, hardly.share, hardly.right) == (
        "none",
        pytest.approx(0.7),
        pytest.approx(0.7),
    )


def test_of_nearly_as_probable_portions_the_closest_fit_is_taken() -> None:
    """Three cuts 20 s apart are all within the tolerance of the middle one, 30 s; a third of it,
    10 s, holds each alone: the likeliest of them counts."""
    cuts = SimpleNamespace(time_s=np.array([0.0, 500.0, 520.0, 540.0]),
                           path_m=np.array([0.0, 900.0, 990.0, 1080.0]))  # fmt: skip
    odds = odds_of((0, 1, 0.30), (0, 2, 0.25), (0, 3, 0.35))
    got = read_leg({"leg": odds}, cuts, 0, S)
    assert (got.second, got.right) == (2, pytest.approx(0.9))
    # Close by in metres is close by too.
    near = reading._near(cuts, np.array([1, 2, 3]), S, 1.0)
    assert near.tolist() == [[1, 1, 0], [1, 1, 1], [0, 1, 1]]
    assert reading._near(cuts, np.array([1, 2, 3]), S, 0.3).tolist() == np.eye(3).tolist()
    slow = SimpleNamespace(time_s=np.array([0.0, 300.0, 600.0]), path_m=np.array([0.0, 25.0, 50.0]))
    assert reading._near(slow, np.arange(3), S, 1.0).tolist() == [[1, 1, 0], [1, 1, 1], [0, 1, 1]]


def edge_odds(leg, kind, first, second, probability):
    return SimpleNamespace(
        edge=SimpleNamespace(leg=leg, kind=kind), first=np.array(first, dtype=np.int32),
        second=np.array(second, dtype=np.int32), log_odds=np.log(probability),
    )  # fmt: skip


def test_odds_of_a_leg_add_up_over_edges_and_walkers() -> None:
    one = [edge_odds(1, "leg", [0, 1], [3, 4], [0.5, 0.2]), edge_odds(1, "reversed", [1], [4], [0.1]),
           edge_odds(0, "leg", [0], [3], [0.9]), edge_odds(1, "given-up", [0], [2], [0.05])]  # fmt: skip
    other = [edge_odds(1, "leg", [1, 2], [4, 5], [0.4, 1e-12])]
    gathered = gather_leg_odds([(0.75, one), (0.25, other)], 1, 8)
    leg = gathered["leg"]
    found = {(a, b): p for a, b, p in zip(leg.first, leg.second, leg.probability, strict=True)}
    assert found == {(0, 3): pytest.approx(0.375), (1, 4): pytest.approx(0.15 + 0.075 + 0.1)}
    assert leg.share == pytest.approx(0.7)
    assert gathered["given-up"].probability == pytest.approx([0.0375])
    assert leg.by_slip == 0.0
    slips = [edge_odds(1, "slip", [0], [3], [0.2]), edge_odds(1, "carried", [2], [5], [0.1])]
    by_slip = gather_leg_odds([(0.75, one + slips), (0.25, other)], 1, 8)
    assert by_slip["leg"].by_slip == pytest.approx(0.225)
    assert by_slip["given-up"].by_slip == 0.0
    assert set(gathered) == {"leg", "given-up"}


CHOSEN = LegReading(kind="leg", first=1, second=4, share=0.5, right=0.5)


def second_best(odds, chosen=CHOSEN):
    got = runner_up.runner_up(odds, chosen, CUTS, S)
    return got and (got.kind, got.first, got.second, pytest.approx(got.probability))


def test_the_runner_up_is_another_answer_or_none() -> None:
    leg = odds_of((1, 4, 0.5), (0, 6, 0.2), (0, 7, 0.15))
    kind, first, second, together = second_best({"leg": leg})
    assert (kind, first, second) == ("leg", 0, 6)
    assert together == 0.35  # both are one answer
    assert second_best({"leg": odds_of((1, 4, 0.5), (0, 6, 0.1))}) == (None, None, None, 0.4)
    given_up = odds_of((1, 4, 0.45))
    assert second_best({"leg": odds_of((1, 4, 0.5)), "given-up": given_up})[:3] == (
        "given-up",
        1,
        4,
    )
    assert second_best({"leg": odds_of((1, 4, 1.0 - S.runner_up_least / 2.0))}) is None
    none = LegReading(kind="none", first=None, second=None, share=0.6, right=0.6)
    assert second_best({"leg": odds_of((1, 4, 0.4))}, none)[:3] == ("leg", 1, 4)
    assert second_best({}, none) is None


def test_the_same_answer_is_within_thirty_seconds_or_thirty_metres() -> None:
    near = SimpleNamespace(
        time_s=np.array([0.0, 30.0, 900.0, 930.5, 1900.0]),
        path_m=np.array([0.0, 500.0, 530.0, 900.0, 930.5]),
    )
    for one, other, alike in ((0, 1, True), (1, 2, True), (2, 3, False), (3, 4, False)):
        for ends in ((one, other), (other, one)):
            same = runner_up._same(np.array(ends[:1]), np.array([4]), (ends[1], 4), near, S)
            assert same.tolist() == [alike]
            same = runner_up._same(np.array([0]), np.array(ends[:1]), (0, ends[1]), near, S)
            assert same.tolist() == [alike]


def test_the_same_answer_is_near_at_both_ends_in_time_or_on_the_way() -> None:
    first, second = np.array([1, 1, 0, 1]), np.array([6, 7, 7, 4])
    same = runner_up._same(first, second, (1, 6), CUTS, S)
    assert same.tolist() == [True, True, False, False]


def ready(pinned=None, time_of_cut=None, ends=None):
    pins = SimpleNamespace(
        time_of_cut=time_of_cut or {}, of_leg=pinned or {},
        ends=lambda leg: (ends or {}).get(leg, ()), time_s=Mock(return_value=None),
    )  # fmt: skip
    samples = sampled(np.zeros(8, dtype=bool))
    return SimpleNamespace(clean=None, cuts=CUTS, pins=pins, samples=samples)


def reading_of(first, second, kind="leg"):
    return LegReading(kind=kind, first=first, second=second, share=0.9, right=0.9), None


NONE = reading_of(None, None, "none")


def leg_matches(read, ready):
    """Give the legs of some readings that the second look left as they were."""
    return of_twice(read, [reading for reading, _ in read], ready)


def of_twice(read, before, ready, trust=None):
    """Give the legs of some readings, and of others before the second look."""
    seen = SecondLook(odds=[{} for _ in read], open_ends={})
    twice = read_legs.ReadTwice(by_odds=before, seen=seen, readings=[one for one, _ in read])
    return read_legs.leg_matches(twice, trust or {}, ready, S)


def test_a_cut_is_refined_up_to_halfway_to_its_neighbours(monkeypatch) -> None:
    asked = Mock(side_effect=lambda _, time_s, *__: time_s + 1.0)
    monkeypatch.setattr(read_legs, "refine_cut", asked)
    times = read_legs._refined([reading_of(1, 3), NONE, reading_of(3, 6)], ready(), {}, S)
    assert times == {1: 61.0, 3: 181.0, 6: 361.0}
    assert [call.args[1:4] for call in asked.call_args_list] == [
        (60.0, -math.inf, 120.0), (180.0, 120.0, 270.0), (360.0, 270.0, math.inf),
    ]  # fmt: skip
    # Who pinned a cut knows its moment.
    pinned = read_legs._refined([reading_of(1, 3)], ready(time_of_cut={3: 190.0}), {}, S)
    assert pinned == {1: 61.0, 3: 190.0}
    assert asked.call_args.args[1:4] == (60.0, -math.inf, 125.0)


def test_a_start_reckoned_into_a_silence_is_not_before_its_claim(monkeypatch) -> None:
    """Cuts 3 and 4 are one silence: on 100 m from cut 3's sample, back 40 m from cut 4's."""
    monkeypatch.setattr(read_legs, "refine_cut", lambda _, time_s, *__: time_s)
    at = ready()
    at.cuts = SimpleNamespace(
        time_s=np.array([0.0, 60.0, 120.0, 250.0, 240.0, 300.0, 360.0, 380.0]),
        path_m=np.array([0.0, 100.0, 200.0, 300.0, 260.0, 400.0, 500.0, 600.0]),
        seen_path_m=np.array([0.0, 100.0, 200.0, 200.0, 300.0, 400.0, 500.0, 600.0]),
        position=np.arange(16.0).reshape(8, 2),
        sample=np.array([0, 30, 60, 60, 150, 150, 180, 190]),
        unseen=np.array([False, False, False, True, True, False, False, False]),
    )
    silence = (np.arange(200) > 60) & (np.arange(200) < 150)
    at.samples = sampled(silence)
    one, two = leg_matches([reading_of(0, 3), reading_of(4, 6)], at)
    assert (one.start_s, one.claim_s) == (0.0, 240.0)
    assert (two.start_s, two.claim_s) == (240.0, 360.0)
    assert one.start_unseen is two.claim_unseen is None
    assert one.claim_unseen == Reckoned(east_m=6.0, north_m=7.0, seen_s=120.0, gone_m=100.0)
    assert two.start_unseen == Reckoned(east_m=8.0, north_m=9.0, seen_s=300.0, gone_m=40.0)
    # Who settled the claim knows when, and not where: straight on from sample 60 to sample 150.
    at.cuts.unseen = np.zeros(8, dtype=bool)
    at.cuts.sample[3] = 115
    at.cuts.position[3] = (115.0, 0.0)
    at.pins.time_of_cut = {3: 230.0}
    (pinned,) = leg_matches([reading_of(0, 3)], at)
    assert pinned.claim_s == 230.0
    assert pinned.claim_unseen == Reckoned(
        east_m=115.0, north_m=0.0, seen_s=120.0, gone_m=35.0, straight=True
    )


def test_a_leg_given_up_or_left_out_is_less_sure_than_its_share(monkeypatch) -> None:
    """Each by its own law: a line through the logarithm of the odds."""
    monkeypatch.setattr(read_legs, "refine_cut", lambda _, time_s, *__: time_s)
    odds = math.log(0.9 / 0.1)
    walked, other = (
        1.0 / (1.0 + math.exp(-slope * odds - offset))
        for slope, offset in ((S.confidence_slope, S.confidence_offset),
                              (S.confidence_slope_else, S.confidence_offset_else))
    )  # fmt: skip
    assert walked != pytest.approx(other)
    read = [reading_of(0, 1, "late-start"), reading_of(1, 3), NONE, reading_of(4, 6, "given-up")]
    legs = leg_matches(read, ready())
    assert [leg.confidence for leg in legs] == pytest.approx([walked, walked, other, other])
    # Before the second look all was told of them as surely.
    assert [leg.sure_by_odds for leg in legs] == [leg.confidence for leg in legs]


def test_how_sure_a_leg_is_by_the_odds_is_told_beside_how_sure_it_is(monkeypatch) -> None:
    """Bug: one barred by the leg before it, and then read, was the less known the surer it was."""
    monkeypatch.setattr(read_legs, "refine_cut", lambda _, time_s, *__: time_s)
    read = [reading_of(0, 3), reading_of(4, 6)]
    before = [replace(read[0][0], right=0.6), replace(NONE[0], share=0.01, right=0.01)]
    one, two = of_twice(read, before, ready())
    assert one.sure_by_odds < one.confidence == two.confidence == two.sure_by_odds


def test_what_the_looks_say_of_its_odds_moves_how_sure_a_leg_is_and_no_other(monkeypatch) -> None:
    """Nats more, in log odds; how sure it is by the odds stays, by which slips are looked for."""
    monkeypatch.setattr(read_legs, "refine_cut", lambda _, time_s, *__: time_s)
    read = [reading_of(0, 1), reading_of(1, 3), reading_of(3, 6)]
    before = [one for one, _ in read]
    less, plain, more = of_twice(read, before, ready(), {0: -1.5, 2: 0.75})
    log_odds = S.confidence_slope * math.log(0.9 / 0.1) + S.confidence_offset
    for leg, nats in ((less, -1.5), (plain, 0.0), (more, 0.75)):
        assert leg.confidence == pytest.approx(1.0 / (1.0 + math.exp(-log_odds - nats)))
        assert leg.sure_by_odds == plain.confidence


def test_of_portions_nearly_as_right_the_closest_fit_is_read_and_of_others_the_likeliest() -> None:
    """Nine tenths of the best, whatever the best is."""
    # Ends 20 s apart are one answer, and yet two: a third of the tolerance is 10 s.
    near = SimpleNamespace(time_s=np.array([0.0, 1000.0, 2000.0, 2020.0]),
                           path_m=np.array([0.0, 1000.0, 2000.0, 2100.0]))  # fmt: skip

    def second(alone, one, other):
        odds = odds_of((0, 1, alone), (0, 2, one), (0, 3, other))
        return read_leg({"leg": odds}, near, 0, S).second

    assert second(0.48, 0.22, 0.30) == 1  # against .52 of both together
    assert second(0.46, 0.24, 0.30) == 3  # against .54: no longer nine tenths
    assert second(0.46, 0.30, 0.24) == 2


def test_legs_after_the_last_that_was_walked_were_not_started(monkeypatch) -> None:
    monkeypatch.setattr(read_legs, "refine_cut", lambda _, time_s, *__: time_s)
    read = [NONE, reading_of(1, 3), NONE, reading_of(4, 6, "given-up"), NONE]
    legs = leg_matches(read, ready(ends={1: ("from", "claim"), 3: ("from",)}))
    assert [leg.status for leg in legs] == [
        "skipped", "walked", "skipped", "unfinished", "not-started",
    ]  # fmt: skip
    assert (legs[1].start_s, legs[1].claim_s, legs[1].search_end_s) == (60.0, 180.0, 180.0)
    assert legs[1].sure_by_odds == 1.0
    assert (legs[1].confidence, legs[1].pinned) == (1.0, ("from", "claim"))
    assert legs[3].confidence < 1.0
    assert [leg.under_way for leg in legs] == [False] * 5
    (late,) = leg_matches([reading_of(0, 3, "late-start")], ready())
    assert (late.status, late.under_way) == ("walked", True)


def test_a_runner_up_is_told_in_moments_with_what_is_left_to_it() -> None:
    other = OtherReading(kind="leg", first=2, second=5, probability=0.9)
    told = read_legs._runner_up(other, (0.7, 0.7), "skipped", ready(), S)
    assert (told.status, told.start_s, told.claim_s) == ("walked", 120.0, 300.0)
    assert told.probability == pytest.approx(0.3)
    not_walked = OtherReading(kind=None, first=None, second=None, probability=0.2)
    told = read_legs._runner_up(not_walked, (0.5, 0.5), "skipped", ready(), S)
    assert (told.status, told.start_s, told.claim_s) == ("skipped", None, None)
    assert read_legs._runner_up(None, (0.5, 0.5), "skipped", ready(), S) is None


def test_a_runner_up_is_likelier_only_where_the_odds_have_it_so() -> None:
    """Trust in the odds of the leg may fall below those of another; then they count as equal."""
    other = OtherReading(kind="leg", first=2, second=5, probability=0.4)
    by_odds = read_legs._calibrated(0.4, S, walked=True)
    for untrusted, confidence, told in (
        (0.6, 0.55, by_odds),  # 0.439: room enough
        (0.6, 0.3, 0.3),
        (0.4, 0.3, by_odds),  # likelier by the odds as well
        (0.6, 0.8, 0.2),
    ):
        found = read_legs._runner_up(other, (untrusted, confidence), "skipped", ready(), S)
        assert found.probability == pytest.approx(told)


def test_windows_are_opened_to_those_of_the_points_about_them() -> None:
    """Two before and two after it."""
    windows = np.eye(6, dtype=bool)
    wide = first_look._with_neighbours(windows, S)
    expected = np.abs(np.subtract.outer(np.arange(6), np.arange(6))) <= 2
    assert wide.tolist() == expected.tolist()
    assert windows.sum() == 6  # the first are left as they are


def test_along_the_plan_each_leg_is_walked_or_passed_over_on_the_spot() -> None:
    route = first_look.along_plan(plan_route(card_of((0, 0), (400, 0), (400, 300)), S), S)
    assert [(e.source, e.target, e.kind, e.leg) for e in route.edges] == [
        (0, 1, "link", 0), (0, 1, "jump", None), (1, 2, "link", 1), (1, 2, "jump", None),
    ]  # fmt: skip
    assert {e.cost for e in route.edges if e.kind == "jump"} == {S.first_look_over}
    assert (route.order, route.legs) == ((0, 1, 2), 2)


def test_a_point_is_open_where_a_leg_along_the_plan_may_begin_or_end(monkeypatch) -> None:
    """Legs from the first cut to the fourth, from there to the sixth, and one under way. The
    fourth place is none of the plan's: a walker may be there at any time."""
    odds = [
        SimpleNamespace(edge=SimpleNamespace(source=source, target=target), first=np.array(first),
                        second=np.array(second))
        for source, target, first, second in ((0, 1, [0], [3]), (1, 2, [3, 4], [5, 5]),
                                              (-1, 1, [2], [4]), (1, -1, [5], [5]), (0, 3, [1], [1]))
    ]  # fmt: skip
    monkeypatch.setattr(first_look, "Ways", lambda *_: SimpleNamespace(edge_odds=lambda _: odds))
    monkeypatch.setattr(first_look, "broad_walkers", lambda *_: [None])
    route = SimpleNamespace(edges=(), legs=2, order=())
    monkeypatch.setattr(first_look, "along_plan", lambda *_: route)
    evidence = SimpleNamespace(_place_of=np.arange(4), to_point_m=np.zeros((6, 4)), cuts=range(6),
                               route=route)  # fmt: skip
    asked = replace(S, first_look_from_legs=2, first_look_neighbours=0)
    at = Mock(evidence=evidence)
    near = first_look.near_evidence(at, SimpleNamespace(legs=[1, 2]), asked)
    expected = np.zeros((4, 6), dtype=bool)
    expected[0, [0, 1]] = expected[1, [3, 4, 5]] = expected[2, 5] = expected[3] = True
    assert near._windows.tolist() == expected.tolist()
    few = replace(asked, first_look_from_legs=3)
    assert first_look.near_evidence(at, SimpleNamespace(legs=[1, 2]), few) is evidence


def test_portions_between_two_windows() -> None:
    pairs = [(a, b) for b in range(6) for a in range(b)]
    first, second = (np.array(column) for column in zip(*pairs, strict=True))
    of = first_look.NearEvidence.__new__(first_look.NearEvidence)
    looks = {field.name: np.zeros(len(pairs)) for field in fields(Portions)}
    of.portions = Portions(**{**looks, "first": first, "second": second})
    of.cuts = np.arange(6)
    windows = np.zeros((3, 6), dtype=bool)
    windows[0, [0, 1]], windows[1, [3, 4]] = True, True

    def between(source, target):
        at = of._between(SimpleNamespace(source=source, target=target), windows)
        return set(zip(first[at].tolist(), second[at].tolist(), strict=True))

    assert between(0, 1) == {(0, 3), (0, 4), (1, 3), (1, 4)}
    assert between(-1, 1) == {(a, b) for b in (3, 4) for a in range(b)}
    assert between(0, -1) == {(a, b) for a in (0, 1) for b in range(a + 1, 6)}
    assert between(0, 2) == set()
    joined = SimpleNamespace(_place_of=np.array([0, 1, 0, 1]))
    by_place = first_look.NearEvidence.by_place(joined, windows)
    assert by_place[0].tolist() == (windows[0] | windows[2]).tolist()


def test_a_pinned_leg_that_was_read_as_none_is_read_again_from_the_start() -> None:
    odds = [(1.0, [edge_odds(0, "leg", [3], [5], [0.9]), edge_odds(1, "leg", [1], [4], [0.9])])]
    free = SimpleNamespace(cuts=_Cuts(**vars(CUTS)), pins=SimpleNamespace(of_leg={}))
    gathered = [gather_leg_odds(odds, leg, len(free.cuts)) for leg in range(2)]
    one, two = read_in_turn(gathered, free, S)
    assert ((one.first, one.second), two.kind) == ((3, 5), "none")
    free.pins.of_leg = {1: PinnedLeg(first=1)}
    _, two = read_in_turn(gathered, free, S)
    assert (two.first, two.second) == (1, 4)


class _Cuts(SimpleNamespace):
    def __len__(self) -> int:
        return len(self.time_s)


def test_of_supposed_walkers_the_best_by_walk_and_habit_are_weighed(monkeypatch) -> None:
    """Walkers 1, 2 and 3: totals of the walk, and what is against each beforehand."""

    def weighed(totals, before):
        class Known:
            def __init__(self, _, walker) -> None:
                self.walker, self.total = walker, totals[walker]

            def edge_odds(self):
                return [self.walker]

        monkeypatch.setattr(
            match_walk, "ways_of", lambda stays, of: (Known(stays, one) for one in of)
        )
        monkeypatch.setattr(match_walk, "known_better", lambda walker, *_: walker)
        monkeypatch.setattr(match_walk, "prior_cost", lambda walker, **_: before[walker])
        found = match_walk.weigh(SimpleNamespace(evidence=Mock()), None, S, [1, 2, 3])
        assert found.walkers == [of[0] for _, of in found.odds]
        return {of[0]: weight for weight, of in found.odds}, found.best, found.cost

    weights, best, cost = weighed({1: 0.0, 2: 4.0, 3: 2.0}, {1: 5.0, 2: 0.0, 3: 1.0})
    assert (best, cost) == (3, 3.0)  # 5, 4 and 3 in all: the first is not kept
    share = 1.0 / (1.0 + math.exp(-1.0))
    assert weights == {3: pytest.approx(share), 2: pytest.approx(1.0 - share)}
    # One that is six nats worse needs no second look.
    for worse, kept in ((6.1, {3}), (5.9, {3, 2})):
        weights, _, _ = weighed({1: 90.0, 2: worse, 3: 0.0}, {1: 0.0, 2: 0.0, 3: 0.0})
        assert set(weights) == kept
