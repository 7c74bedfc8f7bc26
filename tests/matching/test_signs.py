"""The signs of a leg, read off walks of which they are known."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from matching.walked_square import SQUARE, square_walk
from measurement.hand_made import SETTINGS, HandWalk, card_of, receiver

from audit.matching.arms import ARMS_M
from audit.matching.learnt import Curve, LearntCurves, learnt
from audit.matching.range_most import RangeMost
from audit.matching.walk_layout import lay_out


def laid_out(walk: HandWalk, *points):
    return lay_out(walk.clean(1, receiver(1, 0.5)), card_of(*points), SETTINGS.matching)


def test_the_most_of_any_range_is_that_of_numpy() -> None:
    rng = np.random.default_rng(5)
    for size in (1, 2, 3, 7, 16, 33):
        values = rng.uniform(0.0, 9.0, size)
        first, beyond = (part.ravel() for part in np.mgrid[0 : size + 1, 0 : size + 1])
        expected = [values[a:b].max() if a < b else 0.0 for a, b in zip(first, beyond, strict=True)]
        keep = first < size
        got = RangeMost(values).between(first[keep], beyond[keep])
        assert got.tolist() == np.array(expected)[keep].tolist()


def test_a_curve_is_straight_between_knots_level_beyond_and_silent_of_nothing() -> None:
    curve = Curve(knots=np.array([0.0, 10.0]), nats=np.array([1.0, 3.0]))
    values = np.array([-5.0, 0.0, 2.5, 10.0, 99.0, np.nan])
    assert curve(values, {}).tolist() == [1.0, 1.0, 1.5, 3.0, 3.0, 0.0]


def test_a_habit_bends_its_curve_in_proportion() -> None:
    ends = {"nats": np.array([1.0, 1.0]), "with_habit": np.array([3.0, -1.0])}
    curve = Curve(knots=np.array([0.0, 1.0]), by="halting", **ends)
    for share in (0.0, 0.25, 1.0):
        got = curve(np.array([0.0, 1.0]), {"halting": share})
        assert got == pytest.approx([1.0 + 2.0 * share, 1.0 - 2.0 * share])


def test_signs_add_up_and_one_without_a_curve_says_nothing() -> None:
    level = Curve(knots=np.array([0.0, 1.0]), nats=np.array([2.0, 2.0]))
    curves = LearntCurves(curves={"a": level, "b": level})
    ones = np.ones(3)
    assert curves.nats({"a": ones, "b": ones, "unheard": ones}, {}).tolist() == [4.0, 4.0, 4.0]
    assert curves.nats({"unheard": ones}, {}).tolist() == [0.0, 0.0, 0.0]


def test_the_shipped_curves_are_finite_with_rising_knots() -> None:
    kinds = learnt()
    for kind in (kinds.portions, kinds.stays, kinds.ends):
        assert kind.curves
        for curve in kind.curves.values():
            assert all(a < b for a, b in pairwise(curve.knots))
            for nats in (curve.nats, curve.with_habit):
                assert nats is None or (len(nats) == len(curve.knots) and np.isfinite(nats).all())


def test_arms_along_a_straight_way_point_along_it() -> None:
    walk = HandWalk().halt(60).mark("a").walk(70, 900).mark("b").halt(60)
    evidence = laid_out(walk, (0, 0), (845.7, 307.8)).evidence
    cuts, arms = evidence.cuts, evidence.seen.arms
    begun, ended = (walk.marks[mark] for mark in "ab")
    inside = (cuts.time_s > begun + 200.0) & (cuts.time_s < ended - 200.0)
    assert inside.sum() >= 3
    for length in ARMS_M:
        for arm in (arms.before[length], arms.after[length]):
            assert arm.direction_deg[inside] == pytest.approx(70.0, abs=1.5)
            assert arm.straightness[inside] == pytest.approx(1.0, abs=0.01)
            assert arm.pace[inside] == pytest.approx(1.0, abs=0.05)


def test_the_signs_of_the_sides_of_a_square() -> None:
    walk = square_walk()
    ready = laid_out(walk, *SQUARE)
    evidence = ready.evidence
    edges = [edge for edge in evidence.route.edges if edge.kind == "leg" and edge.leg == 1]
    assert edges
    for edge in edges:
        at = evidence.of_edge(edge)
        signs = evidence.seen.of_portions(edge, at.index)
        assert all(len(values) == len(at.index) for values in signs.values())
        near = (signs["start_off_point_m"] < 5.0) & (signs["claim_off_point_m"] < 5.0)
        near &= ~np.isnan(signs["rest_at_claim_s"]) & ~np.isnan(signs["rest_before_start_s"])
        assert near.any()
        assert signs["path_over_chord"][near] == pytest.approx(1.0, abs=0.05)
        assert signs["wavering_share"][near].max() < 0.02
        assert signs["arriving_turned_deg"][near].max() < 5.0
        assert signs["leaving_turned_deg"][near].max() < 5.0
        assert np.isnan(signs["bend_at_claim_walking_deg"][near]).all()


def test_a_hiker_who_never_rests_has_not_the_habit_of_who_rests_at_points() -> None:
    resting = laid_out(square_walk(), *SQUARE).evidence.seen.habits
    walk = HandWalk().mark("0")
    for azimuth in (0, 90, 180, 270):
        walk.walk(azimuth, 400)
    passing = laid_out(walk, *SQUARE).evidence.seen.habits
    assert resting["halting"] == 1.0
    assert passing["halting"] == 0.0
