"""The ledger of every leg of whole debriefs adds up to its miss, whatever befell the walk."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from accuracy.seeds import first_seeds
from pyproj import Transformer
from walks import DIFFICULTIES, make_walk

import audit
from audit.plan import Plan
from audit.positions import Position

PARTS = ("inherited", "plan", "heading", "distance", "detour")
EXACT_M = 1e-6
EVENTFUL = replace(DIFFICULTIES["worst-day"], legs=(4, 6), leg_m=(80.0, 500.0), skips=0.3)
WALKS = 7


def bent(plan: Plan, every: int = 3) -> Plan:
    """Let every third leg follow a line that bulges 40 m or so to one side."""
    legs = list(plan.legs)
    for number in range(1, len(legs), every):
        ends = [plan.position(name) for name in (legs[number].start, legs[number].end)]
        if None in ends:
            continue
        middle = Position(
            longitude_deg=float(np.mean([end.longitude_deg for end in ends])),
            latitude_deg=float(np.mean([end.latitude_deg for end in ends])) + 0.0004,
        )
        legs[number] = replace(legs[number], via=(middle,), grid_azimuth=None, distance_m=None)
    return replace(plan, legs=tuple(legs))


@pytest.fixture(scope="module")
def debriefs() -> list:
    made = (make_walk(seed, EVENTFUL) for seed in first_seeds("guard", WALKS))
    return [audit.debrief(bent(walk.plan), walk.track) for walk in made]


def told_legs(debriefs):
    """Each walked leg as debrief.json has it, with its card and its grid."""
    for debrief in debriefs:
        document = debrief.to_dict()
        place = Transformer.from_crs("EPSG:4326", document["course"]["grid"], always_xy=True)
        for leg, entry in zip(debrief.legs, document["legs"], strict=True):
            if entry["ledger"] is not None:
                yield leg.audit.card, entry, place


def test_parts_add_up_to_the_total(debriefs) -> None:
    legs = list(told_legs(debriefs))
    assert len(legs) >= 15
    for _, entry, _ in legs:
        ledger = entry["ledger"]
        total = np.sum([ledger[part] for part in PARTS], axis=0)
        assert np.abs(total - ledger["total"]).max() < EXACT_M
        miss = entry["miss"]
        assert np.hypot(*ledger["total"]) == pytest.approx(miss["distance_m"], abs=EXACT_M)
        assert np.hypot(miss["along_m"], miss["across_m"]) == pytest.approx(
            miss["distance_m"], abs=EXACT_M
        )


def test_total_leads_from_the_point_to_the_claim(debriefs) -> None:
    """The claim's place in degrees, put on the grid by pyproj, less the planned point."""
    for card, entry, place in told_legs(debriefs):
        claim = np.array(place.transform(entry["end"]["lon"], entry["end"]["lat"]))
        miss = claim - (card.end.east_m, card.end.north_m)
        assert np.abs(miss - entry["ledger"]["total"]).max() < EXACT_M


def test_inherited_leads_from_the_planned_start_to_the_real_one(debriefs) -> None:
    for card, entry, place in told_legs(debriefs):
        start = np.array(place.transform(entry["start"]["lon"], entry["start"]["lat"]))
        off = start - (card.start.east_m, card.start.north_m)
        assert np.abs(off - entry["ledger"]["inherited"]).max() < EXACT_M


def test_legs_along_lines_after_skipped_ones_and_from_elsewhere_are_among_them(debriefs) -> None:
    """Else the checks above would have shown nothing of them."""
    legs = list(told_legs(debriefs))
    assert sum(len(card.line) > 2 for card, _, _ in legs) >= 4
    assert sum(np.hypot(*entry["ledger"]["inherited"]) > 50.0 for _, entry, _ in legs) >= 3
    after_a_skip = [
        later["ledger"] is not None
        for debrief in debriefs
        for one, later in zip(*[debrief.to_dict()["legs"][i:] for i in (0, 1)], strict=False)
        if one["status"] == "skipped"
    ]
    assert any(after_a_skip)
