"""Searches: their shapes as drawn, and where the last one ended."""

from __future__ import annotations

import numpy as np
import pytest
from measurement.hand_made import BEGIN, HandWalk, card_of, clean_of, kinds, measure, receiver

from audit.measurement.last_search import last_search_end
from audit.measurement.search_shape import search_shape, walked_up
from audit.settings import SearchSettings

S = SearchSettings()


def drawn(*steps) -> np.ndarray:
    """Walk (azimuth, metres) steps, a place every metre."""
    places = [np.zeros(2)]
    for azimuth, metres in steps:
        way = np.array([np.sin(np.radians(azimuth)), np.cos(np.radians(azimuth))])
        places += [places[-1] + way * m for m in range(1, metres + 1)]
    return np.array(places)


@pytest.mark.parametrize(
    ("walk", "shape"),
    [
        (drawn((0, 20), (90, 20), (180, 40), (270, 40), (0, 60), (90, 60)), "square"),
        (drawn((0, 20), (270, 20), (180, 40), (90, 40), (0, 60)), "square"),
        (drawn((60, 60), (240, 60), (120, 60), (300, 60), (0, 50), (180, 50)), "fan"),
        (drawn((90, 80)), "straight on"),
        (drawn((80, 80), (265, 75)), "straight on"),
        (drawn((200, 50), (100, 30), (170, 60), (300, 80), (40, 50)), "wandering"),
    ],
)
def test_shapes(walk, shape) -> None:
    """The leg was walked due east."""
    assert search_shape(walk, 90.0, S) == shape


@pytest.mark.parametrize(
    ("walk", "target", "up"),
    [
        (drawn((20, 16)), (6.0, 20.0), True),
        (drawn((20, 16)), (-20.0, -20.0), False),  # led away
        (drawn((60, 20), (300, 20)), (0.0, 20.0), False),  # not straight
        (drawn((0, 70)), (0.0, 75.0), False),  # from too far off to have been in sight
        (drawn((0, 40)), (0.0, 90.0), False),  # never there
    ],
)
def test_walking_straight_up_to_a_point_is_no_search(walk, target, up) -> None:
    """Bug: 16 m up to a point in sight were told as a search without a pattern."""
    assert walked_up(walk, np.array(target), 30.0, S) is up


def last_leg() -> HandWalk:
    """Claims 80 m short of the point at (400, 0), in mid-course, after a halt."""
    return HandWalk().halt(60).mark("start").walk(90, 320).mark("claim").halt(30)


def test_search_for_the_last_point_ends_where_it_is_found() -> None:
    walk = last_leg().walk(0, 60).walk(90, 80).walk(180, 60).mark("found").halt(60).walk(200, 600)
    found = measure(card_of((0, 0), (400, 0)), walk.clean(5), [walk.portion()], walk.halts)
    assert found.match.legs[0].search_end_s == pytest.approx(walk.marks["found"], abs=30.0)
    search = found.legs[0].measures.details.search
    assert search.path_m == pytest.approx(200.0, rel=0.15)
    assert ("search", 0) in kinds(found)
    assert ("walk-off", None) in kinds(found)


def test_who_walks_off_from_his_claim_has_not_searched() -> None:
    walk = last_leg().walk(250, 700)
    found = measure(card_of((0, 0), (400, 0)), walk.clean(5), [walk.portion()], walk.halts)
    assert found.match.legs[0].search_end_s == walk.marks["claim"]
    assert found.legs[0].measures.details.search is None


def test_search_given_up_ends_where_he_sets_off() -> None:
    # Round about for 400 m, never near the point 200 m on, then away for good.
    walk = last_leg().walk(180, 50).walk(270, 100).walk(0, 100).walk(90, 100).walk(180, 50)
    walk.mark("gave up").walk(225, 600)
    card = card_of((0, 0), (520, 0))
    found = measure(card, walk.clean(5), [walk.portion()], walk.halts)
    end_s = found.match.legs[0].search_end_s
    assert end_s == pytest.approx(walk.marks["gave up"], abs=60.0)
    assert end_s > walk.marks["claim"] + 200.0


def end_of(walk: HandWalk, target=(400, 0), every_s: int = 1, noise=None) -> float:
    """Seconds after the claim at which the search of the only leg is said to have ended."""
    clean = walk.clean(every_s, noise)
    found = measure(card_of((0, 0), target), clean, [walk.portion()], walk.halts)
    return found.match.legs[0].search_end_s - walk.marks["claim"]


def test_search_ends_at_the_long_halt_not_at_a_short_one() -> None:
    # 20 s at 28 m from the point, on to the point, two minutes there, and off.
    walk = last_leg().walk(90, 60).halt(20).walk(0, 15).walk(90, 20).walk(180, 15).mark("there")
    walk.halt(120).walk(200, 500)
    assert end_of(walk) == pytest.approx(walk.marks["there"] - walk.marks["claim"], abs=2.0)


@pytest.mark.parametrize("noise", [None, receiver(2, 3.0, 20.0)])
def test_who_stands_at_his_claim_and_walks_off_past_the_point_has_not_searched(noise) -> None:
    """Four minutes of a receiver's wander are no way walked."""
    walk = HandWalk().halt(60).mark("start").walk(90, 320).mark("claim").halt(240).walk(90, 500)
    assert end_of(walk, (400, 10), noise=noise) == 0.0


def test_a_rest_on_the_way_off_is_no_end_of_a_search() -> None:
    walk = last_leg().walk(250, 100).halt(90).walk(250, 400)
    assert end_of(walk) == 0.0


def test_a_halt_that_the_recording_ends_in_may_be_one_at_the_car() -> None:
    # Round about and back, a minute's halt given up, and away to a car 120 m off.
    walk = last_leg().walk(180, 30).walk(270, 40).walk(0, 60).walk(90, 60).mark("gave up").halt(60)
    walk.walk(225, 100).halt(300)
    given_up_s = walk.marks["gave up"] - walk.marks["claim"]
    assert end_of(walk, (520, 0)) == pytest.approx(given_up_s, abs=2.0)


def test_shuffling_about_at_the_point_is_no_search() -> None:
    walk = HandWalk().halt(60).mark("start").walk(90, 390).mark("claim").halt(20)
    walk.walk(0, 5).halt(100).walk(200, 500)
    assert end_of(walk) == 0.0


def test_a_halt_that_begins_before_the_first_fix_after_the_claim_is_no_end() -> None:
    """With 20 s between fixes the first one of a halt may still show him coming up to it."""
    fixes = np.array([[0.0, 0.0], [20.0, 0.0], *[[40.0, 0.0]] * 4, [40.0, 90.0], [40.0, 180.0]])
    clean = clean_of(BEGIN + 20.0 * np.arange(len(fixes)), fixes, every_s=20.0)
    halts = BEGIN + np.array([[15.0, 100.0]])
    ended_s = last_search_end(clean, halts, BEGIN + 12.0, np.array([500.0, 0.0]), 30.0, S)
    assert ended_s == BEGIN + 12.0


def places_of(*stays) -> np.ndarray:
    """Stay at (east, north) for so many seconds, one place after the other."""
    return np.concatenate([np.tile([east, north], (seconds, 1)) for east, north, seconds in stays])


def test_a_halt_back_at_a_claim_near_the_point_ends_a_search() -> None:
    """Out for 30 m and back to a point that lies 10 m from the claim."""
    out = [(0.0, float(north)) for north in (*range(31), *range(30, 0, -1))]
    fixes = np.array([*places_of((0, 0, 30)), *out, *places_of((10, 0, 90), (300, 0, 60))])
    clean = clean_of(BEGIN + np.arange(float(len(fixes))), fixes.astype(float))
    halts = BEGIN + np.array([[0.0, 29.0], [91.0, 180.0]])
    ended_s = last_search_end(clean, halts, BEGIN, np.array([10.0, 3.0]), 30.0, S)
    assert ended_s - BEGIN == pytest.approx(91.0, abs=1.0)
