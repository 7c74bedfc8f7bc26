"""The broad look, held small: the same portions are in play as where all is weighed at once."""

from __future__ import annotations

from unittest import mock

import numpy as np
import pytest
from matching.walked_square import SQUARE, square_walk
from measurement.hand_made import SETTINGS, card_of, receiver

from audit.matching import portions
from audit.matching.broad_look import BroadLook
from audit.matching.pins import Pin
from audit.matching.stays import Stays
from audit.matching.supposed_walkers import broad_walkers
from audit.matching.walk_layout import lay_out
from audit.matching.ways import Ways

S = SETTINGS.matching


def in_play_of(odds) -> dict[int, set[int]]:
    """The places in play of each edge; an edge is told by who it is."""
    found: dict[int, set[int]] = {}
    for edge, places in odds:
        found.setdefault(id(edge), set()).update(places.tolist())
    return {edge: places for edge, places in found.items() if places}


@pytest.mark.parametrize("piece", [7, 16_384])
@pytest.mark.parametrize("pinned", [False, True])
def test_the_same_portions_are_in_play_as_where_all_is_weighed_at_once(piece, pinned):
    card = card_of(*SQUARE)
    clean = square_walk().walk(45, 1500).clean(1, receiver(1, 3.0))
    pins = [Pin(leg=1, end="claim", time_s=float(clean.time_s[len(clean) // 2]))] if pinned else []
    stays = Stays(lay_out(clean, card, S, pins).evidence)
    walkers = broad_walkers(card, S)
    at_once = [
        (of.edge, stays.evidence.of_edge(of.edge).index[of.index])
        for walker in walkers
        for of in Ways(stays, walker).edge_odds(-S.in_play_nats)
        if of.edge.kind != "jump"
    ]
    with mock.patch.object(portions, "_PIECE", piece):
        looked = BroadLook(stays, walkers).in_play(S.in_play_nats)
    assert in_play_of(looked) == in_play_of(at_once) != {}


def test_nothing_is_in_play_within_nothing_of_certain():
    card = card_of(*SQUARE)
    clean = square_walk().clean(1, receiver(1, 3.0))
    stays = Stays(lay_out(clean, card, S).evidence)
    looked = BroadLook(stays, broad_walkers(card, S)).in_play(-1.0)
    assert all(np.size(places) == 0 for _, places in looked)
