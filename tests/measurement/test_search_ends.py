"""When a search ended, on walks drawn by hand with every distance at its limit."""

from __future__ import annotations

import math

import numpy as np
import pytest
from measurement.hand_made import HandWalk, card_of, clean_of, kinds, measure

from audit.measurement.last_search import last_search_end
from audit.measurement.search_ends import settled_since
from audit.measurement.search_shape import describe_search, search_shape
from audit.settings import SearchSettings

S = SearchSettings()
NO_HALTS = np.empty((0, 2))
RADIUS_M = 30.0
CLAIM_M = np.array([4000.0, -9000.0])
"""Where the claim lies on the grid: all else is told from it."""


class Drawn:
    """A metre a second from the claim at (0, 0), standing where it says so."""

    def __init__(self) -> None:
        self.places = [np.zeros(2)]
        self.halts: list[tuple[float, float]] = []

    def to(self, east: float, north: float) -> Drawn:
        here, there = self.places[-1], np.array([east, north])
        metres = round(float(np.hypot(*(there - here))))
        self.places += [here + (there - here) * n / metres for n in range(1, metres + 1)]
        return self

    def stand(self, seconds: int) -> Drawn:
        begun = self.now_s
        self.places += [self.places[-1]] * seconds
        self.halts.append((begun, self.now_s))
        return self

    @property
    def now_s(self) -> float:
        return 1000.0 + len(self.places) - 1

    def ends(self, target: tuple[float, float]) -> float:
        clean = clean_of(1000.0 + np.arange(len(self.places)), np.array(self.places) + CLAIM_M)
        halts = np.array(self.halts).reshape(-1, 2)
        point = np.array(target) + CLAIM_M
        return last_search_end(clean, halts, 1000.0, point, RADIUS_M, S) - 1000.0


def test_who_stands_at_his_point_found_it_when_he_came() -> None:
    walk = Drawn().to(0, 100).to(100, 100).stand(40).to(500, 100)
    assert walk.ends((100.0, 100.0)) == 200.0
    # The longest of several halts at the point.
    twice = Drawn().to(0, 100).to(90, 100).stand(20).to(110, 100).stand(60).to(500, 100)
    assert twice.ends((100.0, 100.0)) == 230.0
    # And a longer one elsewhere does not count.
    lunch = Drawn().to(0, 100).to(100, 100).stand(20).to(100, 200).stand(600).to(500, 100)
    assert lunch.ends((100.0, 100.0)) == 200.0


@pytest.mark.parametrize(("seconds", "ended_s"), [(15, 200.0), (14, 230.0)])
def test_a_halt_of_the_search_is_shorter_than_a_quarter_of_a_minute(seconds, ended_s) -> None:
    """Then the way has to show it: nearest to the point within its radius, 30 m further on."""
    walk = Drawn().to(0, 100).to(100, 100).stand(seconds)
    walk.to(130, 100).to(500, 100)
    assert walk.ends((130.0, 100.0)) == (ended_s if seconds >= 15 else ended_s + seconds)


@pytest.mark.parametrize(("east", "found"), [(69.0, False), (70.0, True)])
def test_a_halt_at_the_point_is_within_the_arrival_radius(east, found) -> None:
    """Having walked little about: a halt elsewhere tells of an end only to one who searched."""
    walk = Drawn().to(east, 0.0).stand(60).to(east, -600.0)
    assert (walk.ends((100.0, 0.0)) == east) is found


def test_who_stood_where_he_claimed_has_not_begun_to_search() -> None:
    """A halt within 15 m of the claim is one at it."""
    for metres, ended_s in ((14, 0.0), (16, 16.0)):
        walk = Drawn().to(metres, 0).stand(60).to(metres, -600)
        assert walk.ends((40.0, 0.0)) == ended_s


def test_who_comes_back_to_his_claim_and_stands_has_searched_meanwhile() -> None:
    """The point lies 20 m from the claim; he stood at the claim after having been 40 m away."""
    assert Drawn().to(0, 40).to(0, 0).stand(40).to(-600, 0).ends((0.0, 20.0)) == 80.0
    assert Drawn().to(0, 14).to(0, 0).stand(40).to(-600, 0).ends((0.0, 20.0)) == 0.0


@pytest.mark.parametrize(("aside_m", "found"), [(14.0, False), (16.0, True)])
def test_a_short_way_to_the_point_is_one_of_a_search_where_it_is_15_m_longer(
    aside_m, found
) -> None:
    """Twenty metres from where he stood he comes within the radius, by a corner at 8 m: after
    34.6 m, or after 37.9 m."""
    walk = Drawn().stand(40).to(8, aside_m).to(20, 0).to(700, 0)
    assert (walk.ends((50.0, 0.0)) > 60.0) is found


def test_who_gave_up_stood_before_he_set_off() -> None:
    """Two sides of a square of 80 m are 160 m walked for 113: he looked about, within 150 m."""
    about = Drawn().to(0, 80).to(80, 80).to(80, 0).stand(30).to(80, -800)
    assert about.ends((300.0, 300.0)) == 240.0
    straight = Drawn().to(80, 0).stand(30).to(80, -800)
    assert straight.ends((300.0, 300.0)) == 0.0
    bent = Drawn().to(0, 62).to(0, 40).stand(30).to(0, -800)  # 84 m walked for 40: over 1.5
    assert bent.ends((300.0, 300.0)) == 84.0
    hardly = Drawn().to(0, 48).to(0, 40).stand(30).to(0, -800)  # 56 m for 40: under it
    assert hardly.ends((300.0, 300.0)) == 0.0


def test_far_from_the_claim_or_at_the_end_of_the_recording_nobody_gives_up() -> None:
    for reach, ended_s in ((140, 380.0), (160, None)):
        walk = Drawn().to(0, reach).to(50, reach).to(0, reach).to(0, reach - 70)
        walk.to(0, reach).stand(30).to(-900, reach)
        if ended_s is None:
            assert walk.ends((400.0, 400.0)) != reach + 240.0
        else:
            assert walk.ends((400.0, 400.0)) == ended_s
    at_the_car = Drawn().to(0, 80).to(80, 80).to(80, 0).stand(30)
    assert at_the_car.ends((300.0, 300.0)) == 0.0


def test_who_comes_by_the_point_without_standing_found_it_where_he_was_nearest() -> None:
    walk = Drawn().to(100, 10).to(400, 10)
    assert walk.ends((100.0, 0.0)) == pytest.approx(100.0, abs=1.0)
    # Only the first visit, and only within 1200 m of way.
    again = Drawn().to(100, 10).to(400, 10).to(100, 0)
    assert again.ends((100.0, 0.0)) == pytest.approx(100.0, abs=1.0)
    late = Drawn().to(-590, 0).to(40, 0).to(400, 0)
    assert late.ends((60.0, 0.0)) != pytest.approx(1240.0, abs=60.0)


def test_who_claimed_at_his_point_searched_for_nothing() -> None:
    assert Drawn().to(200, 0).to(0, 0).to(-200, 0).ends((0.0, 30.0)) == 0.0


def test_who_stood_at_his_claim_and_passed_the_point_was_walking_off() -> None:
    """Straight on after a halt is walking off; round about before it is a search."""
    off = Drawn().stand(40).to(100, 0).to(700, 0)
    assert off.ends((100.0, 10.0)) == 0.0
    looked = Drawn().stand(40).to(0, 60).to(100, 60).to(100, 0).to(700, 0)
    assert looked.ends((100.0, 0.0)) == 40.0 + 60.0 + 100.0 + 60.0
    # Whose halt began a quarter of a minute after the claim stood elsewhere.
    later = Drawn().to(16, 0).stand(10).to(100, 0).to(700, 0)
    assert later.ends((100.0, 0.0)) == 110.0


def test_a_search_without_a_halt_ends_where_the_straight_way_off_begins() -> None:
    """Twice about a square of 100 m, then straight on for good: 800 m of way, all within 150 m."""
    walk = Drawn()
    for _ in range(2):
        walk.to(0, 100).to(100, 100).to(100, 0).to(0, 0)
    walk.to(0, -900)
    assert walk.ends((600.0, 600.0)) == pytest.approx(800.0, abs=12.0)
    # 265 m of way to its edge 150 m away are less than twice as far.
    short = Drawn().to(0, 40).to(40, 40).to(40, 0).to(40, -900)
    assert short.ends((600.0, 600.0)) == 0.0


def test_nothing_recorded_after_the_claim_is_no_search() -> None:
    clean = clean_of(np.array([0.0, 1000.0]), np.zeros((2, 2)))
    assert last_search_end(clean, NO_HALTS, 1000.0, np.array([50.0, 0.0]), RADIUS_M, S) == 1000.0


def settles(places: list[float], leaves_s: float, from_s: float = 0.0) -> float:
    clean = clean_of(10.0 * np.arange(len(places)), np.column_stack([places, [0.0] * len(places)]))
    return settled_since(clean, from_s, leaves_s, 25.0)


def test_a_walker_settles_with_the_first_fix_after_which_he_stays() -> None:
    assert settles([0.0, 80.0, 140.0, 120.0, 130.0, 300.0], 40.0) == 20.0
    assert settles([0.0, 80.0, 105.0, 120.0, 130.0], 40.0) == 20.0  # just 25 m off is there
    assert settles([0.0, 80.0, 104.9, 120.0, 130.0], 40.0) == 30.0
    assert settles([100.0, 110.0, 120.0], 20.0) == 0.0  # there all the time
    assert settles([0.0, 80.0, 140.0, 120.0, 130.0, 300.0], 44.0) == 20.0  # before the next fix
    assert settles([0.0, 200.0, 140.0, 141.0], 30.0, from_s=20.0) == 20.0
    assert settles([0.0, 300.0], 4.0) == 0.0


def test_a_search_is_described_by_its_way_and_reach() -> None:
    walk = np.array(Drawn().to(0, 60).to(80, 60).places)
    found = describe_search(50.0 + np.arange(len(walk)), walk, 90.0, S)
    assert found is not None
    assert (found.start_s, found.end_s) == (50.0, 50.0 + 140.0)
    assert found.path_m == pytest.approx(140.0)
    assert found.reach_m == pytest.approx(100.0)
    for metres, searched in ((14, False), (15, True)):
        short = np.array(Drawn().to(metres, 0).places)
        assert (describe_search(np.arange(len(short)), short, 90.0, S) is not None) is searched
    assert describe_search(np.zeros(1), np.zeros((1, 2)), 90.0, S) is None


def out_and_back(azimuth: float, out: float = 80.0, back: float = 0.0) -> np.ndarray:
    ahead = np.array([math.sin(math.radians(azimuth)), math.cos(math.radians(azimuth))])
    far = tuple(out * ahead)
    return np.array(Drawn().to(*far).to(*(back * ahead)).places)


@pytest.mark.parametrize(
    ("walk", "shape"),
    [
        (out_and_back(90.0 + 34.0), "straight on"),
        (out_and_back(90.0 - 34.0), "straight on"),
        (out_and_back(90.0 + 36.0), "wandering"),  # one way out that was not the leg's
        (out_and_back(90.0, back=-40.0), "straight on"),  # 200 m of way for a reach of 80
        (out_and_back(90.0, back=-60.0), "wandering"),  # 220 m: over 2.6
        # Twice out and back: from beyond 0.6 of the reach to within 0.35.
        (np.array(Drawn().to(0, 80).to(0, 27).to(40, 60).to(0, 20).places), "fan"),
        (np.array(Drawn().to(0, 80).to(0, 30).to(40, 60).to(0, 20).places), "wandering"),
        (np.array(Drawn().to(0, 80).to(0, 0).to(0, 47).to(0, 0).places), "wandering"),
        # Three turns of 90 degrees to one hand are once round; two are not.
        (np.array(Drawn().to(0, 60).to(-60, 60).to(-60, -30).to(40, -30).places), "square"),
        (np.array(Drawn().to(0, 60).to(-60, 60).to(-60, -30).places), "wandering"),
        (np.array(Drawn().to(0, 60).to(-60, 60).to(-60, -30).to(-120, -30).places), "wandering"),
    ],
)  # fmt: skip
def test_shapes_at_their_limits(walk, shape) -> None:
    """The leg was walked due east."""
    assert search_shape(walk, 90.0, S) == shape


@pytest.mark.parametrize(("steps_m", "searched"), [(10.0, False), (35.0, True)])
def test_a_few_steps_within_the_radius_are_no_search(steps_m, searched) -> None:
    """Bug: who ended a leg at its point had a search of one fix there, some seconds long."""
    walk = HandWalk().halt(30).mark("a").walk(90, 500).mark("b").walk(90, steps_m).mark("stood")
    walk.halt(30).mark("c").walk(0, 500).mark("d").halt(30)
    card = card_of((0, 0), (500, 0), (510, 500))
    portions = [walk.portion(0, "a", "b", "stood"), walk.portion(1, "c", "d")]
    measures = measure(card, walk.clean(5), portions, walk.halts)
    assert (("search", 0) in kinds(measures)) == searched
    assert (measures.legs[0].measures.details.search is not None) == searched
