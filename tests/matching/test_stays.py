"""Staying at a point: the sums over stays against every stay added up one by one."""

from __future__ import annotations

import numpy as np
import pytest
from matching.walked_square import SQUARE, square_walk
from measurement.hand_made import SETTINGS, card_of, receiver

from audit.matching.match_walk import in_play
from audit.matching.stays import Stays
from audit.matching.walk_layout import lay_out

S = SETTINGS.matching


@pytest.fixture(scope="module", params=["all", "in play"])
def stays(request):
    card = card_of(*SQUARE)
    walk = square_walk().walk(45, 1500)
    evidence = lay_out(walk.clean(1, receiver(1, 3.0)), card, S).evidence
    every = Stays(evidence)
    return every if request.param == "all" else in_play(every, card, S)


def every_stay(stays: Stays, node: int) -> np.ndarray:
    """The weight of each stay, shape (cuts, cuts): near ones as said, far ones at a flat price."""
    size = len(stays.evidence.cuts)
    path_m = stays.evidence.cuts.path_m
    at = stays.at(node)
    far = np.exp(-Stays.far_departure(stays.evidence, node))
    too_far = path_m[None, :] > path_m[:, None] + S.stay_path_m
    weight = np.where(too_far, far[None, :], 0.0)
    weight[at.first, at.second] = np.exp(-at.cost)
    assert weight.shape == (size, size)
    return weight


@pytest.mark.parametrize("node", [1, 2, 3])
def test_leaving_is_every_arrival_times_every_stay(stays, node) -> None:
    rng = np.random.default_rng(node)
    arrived = rng.uniform(0.0, 9.0, len(stays.evidence.cuts))
    expected = np.exp(-arrived) @ every_stay(stays, node)
    assert np.exp(-stays.left(node, arrived)) == pytest.approx(expected, rel=1e-9, abs=1e-300)


@pytest.mark.parametrize("node", [1, 2, 3])
def test_what_is_to_come_is_every_stay_times_every_leaving(stays, node) -> None:
    rng = np.random.default_rng(node + 7)
    leaving = rng.uniform(0.0, 9.0, len(stays.evidence.cuts))
    expected = every_stay(stays, node) @ np.exp(-leaving)
    assert np.exp(-stays.to_come(node, leaving)) == pytest.approx(expected, rel=1e-9, abs=1e-300)


def test_stays_stand_between_cuts_that_portions_end_and_begin_at(stays) -> None:
    evidence = stays.evidence
    for node in (1, 2, 3):
        into = [edge for edge in evidence.route.edges if edge.target == node]
        out_of = [edge for edge in evidence.route.edges if edge.source == node]
        ends = np.concatenate([evidence.of_edge(edge).second for edge in into])
        begins = np.concatenate([evidence.of_edge(edge).first for edge in out_of])
        at = stays.at(node)
        assert len(at.first) > 0
        assert np.isin(at.first, ends).all()
        assert np.isin(at.second, begins).all()
        assert (at.first <= at.second).all()
