"""Walkers who are weighed at once: each pays what he pays alone."""

from __future__ import annotations

from dataclasses import replace
from unittest import mock

import numpy as np
import pytest
from matching.walked_square import SQUARE, square_walk
from measurement.hand_made import SETTINGS, card_of, receiver

from audit.matching import ways
from audit.matching.match_walk import in_play
from audit.matching.stays import Stays
from audit.matching.supposed_walkers import fan_of_walkers
from audit.matching.walk_layout import lay_out
from audit.matching.walker import Walker, abreast

S = SETTINGS.matching
LEVEL = Walker(bias_deg=0.0, pace_scale=1.0, heading_sd_deg=6.0, distance_sd=0.12, finds=0.2)
TURNED = [replace(LEVEL, bias_deg=turn) for turn in (0.0, -10.0, 7.5)]
OTHERS = [
    LEVEL,
    replace(LEVEL, pace_scale=0.5),
    Walker(bias_deg=3.0, pace_scale=1.1, heading_sd_deg=2.5, distance_sd=0.05, finds=0.5),
]


@pytest.fixture(scope="module")
def stays() -> Stays:
    card = card_of(*SQUARE)
    return in_play(
        Stays(lay_out(square_walk().clean(1, receiver(1, 3.0)), card, S).evidence), card, S
    )


@pytest.mark.parametrize("walkers", [TURNED, OTHERS, TURNED[:1], [LEVEL, LEVEL]])
def test_each_pays_for_every_portion_what_he_pays_alone(stays, walkers) -> None:
    evidence, kinds = stays.evidence, set()
    for edge in evidence.route.edges:
        if edge.kind == "jump" or not len(evidence.of_edge(edge).index):
            continue
        kinds.add(edge.kind)
        together = evidence.portion_costs(edge, abreast(walkers))
        alone = np.array([evidence.portion_costs(edge, walker) for walker in walkers])
        assert together.shape == alone.shape
        assert together == pytest.approx(alone, rel=1e-9, abs=1e-9)
    assert {"leg", "given-up"} <= kinds


@pytest.mark.parametrize("most", [1, 400_000])
def test_as_many_abreast_as_memory_allows_give_the_ways_of_each(stays, most) -> None:
    fan = fan_of_walkers(card_of(*SQUARE, angle_deg=8.0), S)
    with mock.patch.object(ways, "_ABREAST_MOST", most):
        found = list(ways.ways_of(stays, fan))
    assert [of.walker for of in found] == fan
    assert len(fan) > 5
    alone = [ways.Ways(stays, walker) for walker in fan]
    assert [of.total for of in found] == pytest.approx([of.total for of in alone], rel=1e-9)
    assert len({round(of.total, 6) for of in found}) > 5


def test_what_all_have_in_common_is_worked_out_once() -> None:
    turned, others = abreast(TURNED), abreast(OTHERS)
    assert turned.bias_deg.ravel().tolist() == [0.0, -10.0, 7.5]
    assert turned.pace_scale.tolist() == [[1.0]]
    assert others.pace_scale.ravel().tolist() == [1.0, 0.5, 1.1]
    assert abreast([LEVEL, LEVEL]).bias_deg.shape == (2, 1)


@pytest.mark.parametrize(("room", "groups"), [(0, []), (1, []), (2, [2, 2]), (9, [5])])
def test_memory_bounds_how_many_are_weighed_at_once(stays, room, groups) -> None:
    """Who is weighed by himself is not put beside anybody."""
    asked = []
    weigh = ways.abreast
    with (
        mock.patch.object(ways, "_ABREAST_MOST", room * stays.evidence.size),
        mock.patch.object(ways, "abreast", lambda of: asked.append(len(of)) or weigh(of)),
    ):
        list(ways.ways_of(stays, [*TURNED, *OTHERS[1:]]))
    assert asked == groups
