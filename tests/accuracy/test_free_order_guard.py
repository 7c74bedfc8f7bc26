"""The guard of free order: orders and legs may not become worse than recorded by more than chance.

The record is made anew with ``python -m accuracy.free_order --seeds reporting --walks N --record``.
"""

from __future__ import annotations

import json

from walks.free_order import make_free_walk

from accuracy.free_order import FAMILIES, RECORD, figures, score_free
from accuracy.guard import Recorded, lowest_by_chance
from accuracy.seeds import first_seeds

WALKS = 6
"""Walks a family."""


def test_free_orders_are_found_as_well_as_recorded():
    kept = json.loads(RECORD.read_text(encoding="utf-8"))
    assert kept["seeds"] == "reporting"
    fallen = {}
    for family in FAMILIES:
        of = kept["figures"][family]
        scores = [
            score_free(make_free_walk(seed, family, 6, 1)) for seed in first_seeds("guard", WALKS)
        ]
        found = figures(scores)
        for what in ("orders_right", "legs_right"):
            recorded = Recorded(
                walks=of["walks"], legs_right=of[what], legs_right_se=of[f"{what}_se"]
            )
            if not found[what] >= lowest_by_chance(recorded, WALKS):
                fallen[family, what] = found[what]
    assert fallen == {}


def test_points_never_come_near_are_seldom_called_visited():
    for of in json.loads(RECORD.read_text(encoding="utf-8"))["figures"].values():
        assert of["never_visited"] >= 30
        assert of["called_visited"] <= 0.1 * of["never_visited"]
