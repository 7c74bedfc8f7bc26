"""The broad look at a small course, against all its ways walked one by one."""

from __future__ import annotations

import math
from collections import defaultdict
from dataclasses import dataclass, replace
from types import SimpleNamespace

import numpy as np
import pytest
from matching import test_ways_on_paper as small

from audit.matching import broad_look
from audit.matching.broad_look import BroadLook
from audit.matching.walker import Walker

LEVEL = Walker(bias_deg=0.0, pace_scale=1.0, heading_sd_deg=6.0, distance_sd=0.1, finds=0.2)


@dataclass(frozen=True)
class Piece:
    """Some portions of an edge, by their places among all."""

    places: np.ndarray
    second: np.ndarray
    reach: object = None


class Course(small.Course):
    """The same course, asked portion by portion."""

    portions = SimpleNamespace(
        first=np.array([first for first, _ in small.PAIRS]),
        second=np.array([second for _, second in small.PAIRS]),
    )

    def worth_a_look(self, of):
        return np.array(
            [small.PAIRS.index(pair) for pair in self.pairs[self.key(of)]], dtype=np.int64
        )

    def laid_out(self, of, places):
        assert set(places) <= set(self.worth_a_look(of))
        return Piece(places=places, second=self.portions.second[places])

    def portion_costs(self, of, walker, at=None):
        if at is None:
            return super().portion_costs(of, walker)
        known = dict(zip(self.worth_a_look(of).tolist(), self.costs[self.key(of)], strict=True))
        return np.array([known[place] for place in at.places.tolist()]) + walker.bias_deg


@pytest.mark.parametrize("jump", [False, True])
@pytest.mark.parametrize("seed", range(6))
@pytest.mark.parametrize("within", [2.0, 3.5, 6.0])
def test_in_play_is_what_any_of_the_walkers_may_have_walked(
    monkeypatch, seed, jump, within
) -> None:
    """By the share that a portion has of all ways of each walker."""
    course = Course(seed, jump)
    if seed == 5:  # nothing is worth a look on one edge, and little on another
        course.pairs[0, 2, "link"], course.costs[0, 2, "link"] = [], np.empty(0)
        course.pairs[0, 1, "leg"] = course.pairs[0, 1, "leg"][:1]
        course.costs[0, 1, "leg"] = course.costs[0, 1, "leg"][:1]
    monkeypatch.setattr(broad_look, "_PassingStays", lambda stays, _: stays)
    walkers = (0.25, 3.0)
    expected = set()
    for walker in walkers:
        monkeypatch.setattr(small, "WALKER", walker)
        total, shares = 0.0, defaultdict(float)
        for cost, taken in small.every_way(course):
            total += math.exp(-cost)
            for of, place in taken:
                if of.kind != "jump":
                    pair = course.pairs[course.key(of)][place]
                    shares[course.key(of), small.PAIRS.index(pair)] += math.exp(-cost)
        expected |= {key for key, share in shares.items() if share / total > math.exp(-within)}
    turned = [replace(LEVEL, bias_deg=walker) for walker in walkers]
    looked = BroadLook(small.Stayed(course), turned).in_play(within)
    told = {(course.key(edge), int(place)) for edge, places in looked for place in places}
    assert told == expected
    assert expected or within < 3.0


def test_places_and_marks_are_those_of_the_portions_worth_a_look() -> None:
    course = Course(3, jump=True)
    places = broad_look._Places(course)
    for edge in course.route.edges:
        first, second = places.cuts(edge, places.of(edge))
        begins, ends = places.marks(edge)
        if edge.kind == "jump":
            assert first.tolist() == second.tolist() == list(range(small.CUTS))
            continue
        assert places.of(edge).tolist() == course.worth_a_look(edge).tolist()
        assert (
            list(zip(first.tolist(), second.tolist(), strict=True))
            == course.pairs[course.key(edge)]
        )
        assert np.flatnonzero(begins).tolist() == sorted(set(first.tolist()))
        assert np.flatnonzero(ends).tolist() == sorted(set(second.tolist()))
