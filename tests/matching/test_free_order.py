"""Points in any order: the order that was walked is found, and the legs in it."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from accuracy.free_order import score_free
from accuracy.seeds import first_seeds
from debriefing.hand_walked import plan_of, track_of
from measurement.hand_made import BEGIN, HandWalk, receiver
from walks.free_order import make_free_walk

import audit
from audit.plan import PlannedLeg
from audit.units import turn_degrees

POINTS = {
    "Car": (0.0, 0.0),
    "Hut": (0.0, 300.0),
    "Oak": (400.0, 0.0),
    "Spring": (400.0, 300.0),
    "Wall": (900.0, 700.0),
}


def free_plan():
    """The points by name, none of them where the walk goes next."""
    made = plan_of(*POINTS.values())
    points = tuple(
        replace(point, name=name) for point, name in zip(made.points, POINTS, strict=True)
    )
    names = list(POINTS)
    legs = tuple(PlannedLeg(name=there, start=here, end=there) for here, there in pairwise(names))
    return replace(made, points=points, legs=legs, order="free")


def walked(walk: HandWalk, **pins):
    places = walk.places + receiver(2, 3.0)(len(walk.places))
    time_s = BEGIN + np.arange(len(places), dtype=np.float64)
    return audit.debrief(free_plan(), track_of(time_s, places), **pins)


def round_walk() -> HandWalk:
    """From the car over the oak and the spring to the hut, and home."""
    walk = HandWalk().halt(60).walk(90, 400).mark("oak").halt(60).walk(0, 300).mark("spring")
    return walk.halt(60).walk(270, 400).mark("hut").halt(60).walk(180, 200).halt(60)


def test_the_order_walked_and_its_legs() -> None:
    debrief = walked(round_walk())
    document = debrief.to_dict()
    assert document["course"]["order"] == "free"
    legs = document["legs"]
    assert [leg["name"] for leg in legs] == ["Oak", "Spring", "Hut", "Wall"]
    assert [(leg["from"], leg["to"]) for leg in legs[:3]] == [
        ("Car", "Oak"),
        ("Oak", "Spring"),
        ("Spring", "Hut"),
    ]
    assert [leg["status"] for leg in legs] == ["walked", "walked", "walked", "not-started"]
    azimuths = [leg["planned"]["grid_azimuth_deg"] for leg in legs[:3]]
    assert [turn_degrees(*pair) for pair in zip(azimuths, (90.0, 0.0, 270.0), strict=True)] == (
        pytest.approx([0.0, 0.0, 0.0], abs=1e-6)
    )
    assert [leg["planned"]["distance_m"] for leg in legs[:3]] == pytest.approx([400, 300, 400])
    assert all(leg["confidence"] > 0.8 for leg in legs)
    marks = round_walk().marks
    for leg, mark in zip(debrief.match.legs[:3], ("oak", "spring", "hut"), strict=True):
        assert leg.claim_s == pytest.approx(marks[mark], abs=30.0)
    notes = document["course"]["notes"]
    assert "Not visited: Wall." in notes
    assert any(note.startswith("The order walked is Car, Oak, Spring, Hut (") for note in notes)


def test_nobody_came_near_any_point() -> None:
    walk = HandWalk().halt(60)
    walk.places = [place + np.array([-900.0, 900.0]) for place in walk.places]
    legs = walked(walk.walk(315, 400).halt(60)).legs
    assert [leg.audit.status for leg in legs] == ["not-started"] * 4


def test_a_pin_makes_a_point_visited() -> None:
    """The walk home leads past nothing; the instructor knows that the wall was claimed there."""
    claim_s = round_walk().now_s - 30.0
    clock = f"08:{int(claim_s - BEGIN) // 60:02d}:{int(claim_s - BEGIN) % 60:02d}"
    debrief = walked(round_walk(), claims={"Wall": clock})
    assert [leg.name for leg in debrief.legs] == ["Oak", "Spring", "Hut", "Wall"]
    assert debrief.match.legs[3].claim_s == claim_s
    assert debrief.match.legs[3].status == "walked"


def test_pins_that_no_order_keeps_are_refused() -> None:
    with pytest.raises(audit.InputRefusedError, match="in any order of the points"):
        walked(round_walk(), claims={"Wall": "08:08:00", "Oak": "08:08:00"})


def test_most_orders_of_made_walks_are_found() -> None:
    """Fifteen and fourteen of 15 development walks when this was written."""
    for difficulty, least in (("trained", 7), ("novice", 5)):
        right = 0
        for seed in first_seeds("development", 8):
            free = make_free_walk(seed, difficulty, 6, 1)
            right += score_free(free).order_right
        assert right >= least


def test_a_rest_at_a_point_is_a_visit_though_no_straight_way_led_there() -> None:
    """Bug: a point found after a search was "not visited", with a rest 3 m from it."""
    assert score_free(make_free_walk(100006, "ordinary", 6, 1)).order_right
