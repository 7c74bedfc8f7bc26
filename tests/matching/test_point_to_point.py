"""Long straight roads, which fit several legs: who came near every point in turn walked them.

Found on real recordings of hikers on roads, whose plan was laid through places they passed.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from measurement.hand_made import SETTINGS, HandWalk, card_of, receiver

from audit.matching.leg_match import LegMatch
from audit.matching.match_walk import match_walk
from audit.matching.passed_in_turn import (
    is_astray,
    legs_point_to_point,
    most_point_to_point,
)
from audit.matching.walk_layout import lay_out

S = SETTINGS.matching


def matched(walk: HandWalk, points):
    clean = walk.clean(10, receiver(1, 5.0))
    return match_walk(clean, card_of(*points), S)


def on_a_road(walk: HandWalk, azimuth_deg: float, metres: float, rng) -> HandWalk:
    """Walk along a road that winds a little."""
    left = metres
    while left > 0.0:
        piece = min(50.0 * round(rng.uniform(1.0, 4.0)), left)
        walk.walk(azimuth_deg + rng.normal(0.0, 12.0), piece)
        left -= piece
    return walk


def test_points_in_line_on_a_road_that_led_to_the_start_as_well() -> None:
    """Bug: "legs 1, 2 and 3 skipped", every point of which was passed in order within 1 m.

    The road before the start leads the same way, so that more of it fits one long leg.
    """
    rng = np.random.default_rng(1)
    walk = on_a_road(HandWalk().walk(40, 2000), 120, 2500, rng).mark("0")
    points = [walk.places[-1]]
    for number, (azimuth, metres) in enumerate(((120, 1400), (120, 500), (120, 350), (135, 1900))):
        on_a_road(walk, azimuth, metres, rng).mark(str(number + 1))
        points.append(walk.places[-1])
    walk.walk(90, 500)
    for leg in matched(walk, points).legs:
        assert leg.status == "walked"
        assert leg.start_s == pytest.approx(walk.marks[str(leg.leg)], abs=30.0)
        assert leg.claim_s == pytest.approx(walk.marks[str(leg.leg + 1)], abs=30.0)


def past_the_start(rest_s: int) -> tuple[HandWalk, list[np.ndarray]]:
    """Come 3 km to the start, pass it along the first leg's back azimuth, and come back."""
    walk = HandWalk().walk(40, 3000).halt(rest_s).mark("passed")
    points = [walk.places[-1]]
    walk.walk(318, 880).halt(120).walk(20, 300).halt(300).walk(200, 300).walk(138, 880).mark("0")
    for number, (azimuth, metres) in enumerate(((138, 720), (228, 1050), (150, 1800))):
        walk.walk(azimuth, metres).mark(str(number + 1))
        points.append(walk.places[-1])
    return walk.halt(60), points


def test_an_approach_past_the_start_is_no_leg_on_its_back_azimuth() -> None:
    """Bug: "the back azimuth walked, 180° out (97 %)" of an approach that passed the start."""
    walk, points = past_the_start(rest_s=0)
    first = matched(walk, points).legs[0]
    wrong_way = first.start_s == pytest.approx(walk.marks["passed"], abs=60.0)
    assert first.confidence < 0.8 or not wrong_way


def test_who_began_at_the_start_on_the_back_azimuth_did_walk_it_so() -> None:
    """What is not known of an approach must not hide the mistake."""
    walk = HandWalk().halt(120).mark("0").walk(318, 700).halt(40).walk(138, 1420).mark("1")
    start, end = walk.places[0], walk.places[-1]
    walk.halt(40).walk(228, 1050)
    last = walk.places[-1]
    first = matched(walk.halt(60), [start, end, last]).legs[0]
    assert first.start_s == pytest.approx(walk.marks["0"], abs=30.0)
    assert first.claim_s == pytest.approx(walk.marks["0"] + 560.0, abs=60.0)


@pytest.mark.parametrize("moved_m", [0.0, 15.0, 30.0])
def test_where_just_a_leg_ended_near_its_point_is_for_other_signs_to_tell(moved_m) -> None:
    walk = HandWalk().halt(60).mark("0").walk(90, 600).mark("1").halt(60)
    walk.walk(0, 400).mark("2").halt(60)
    end = walk.places[round(walk.marks["1"] - walk.marks["0"]) + 60]
    points = [np.zeros(2), end + np.array([0.0, moved_m]), walk.places[-1]]
    with_gain, without = (
        match_walk(
            walk.clean(1, receiver(1, 3.0)), card_of(*points), replace(S, gain_point_to_point=gain)
        )
        for gain in (S.gain_where_astray, 0.0)
    )
    for one, other in zip(with_gain.legs, without.legs, strict=True):
        assert one.claim_s == other.claim_s


def test_legs_from_point_to_point_have_both_ends_near_and_a_straight_way() -> None:
    """Within 20 m and one and a half times the receiver's error, on no path over 1.3."""
    walk = HandWalk().halt(60).mark("0").walk(90, 600).mark("1").halt(60)
    walk.walk(0, 300).walk(90, 300).walk(180, 300).mark("2").halt(60)
    points = [np.zeros(2), walk.places[60 + 480], walk.places[-1]]
    clean, card = walk.clean(1, receiver(1, 3.0)), card_of(*points)
    laid_out = lay_out(clean, card, S)
    legs = [
        LegMatch(leg=leg, status="walked", start_s=walk.marks[a], claim_s=walk.marks[b])
        for leg, (a, b) in enumerate((("0", "1"), ("1", "2")))
    ]
    match = replace(match_walk(clean, card, S), legs=tuple(legs))
    assert legs_point_to_point(match, laid_out, card, S) == 1  # the second goes 900 m for 300
    early = replace(legs[0], claim_s=walk.marks["1"] - 60.0)  # 75 m before its point
    assert legs_point_to_point(replace(match, legs=(early, legs[1])), laid_out, card, S) == 0
    assert not is_astray(match, laid_out, card, S)
    far = replace(legs[0], claim_s=walk.marks["1"] - 280.0)  # 350 m before
    assert is_astray(replace(match, legs=(far, legs[1])), laid_out, card, S)
    left_out = LegMatch(leg=0, status="skipped")
    assert is_astray(replace(match, legs=(left_out, legs[1])), laid_out, card, S)


def test_a_walk_is_looked_at_again_only_where_more_legs_may_be_from_point_to_point() -> None:
    """Path walked from one passage of the start to the next of the point, no more than 1.3."""
    walk = HandWalk().walk(90, 600).walk(0, 300).walk(90, 300).walk(180, 300)
    points = [np.zeros(2), walk.places[480], walk.places[-1]]
    clean = walk.clean(1, receiver(1, 3.0))
    laid_out = lay_out(clean, card_of(*points), S)
    assert most_point_to_point(laid_out, card_of(*points), S) == 1  # 900 m for the second's 300
    beyond = [np.zeros(2), walk.places[480], np.array([5000.0, 0.0])]
    assert most_point_to_point(laid_out, card_of(*beyond), S) == 1
    turned = [walk.places[480], np.zeros(2)]  # nobody goes back in time
    assert most_point_to_point(laid_out, card_of(*turned), S) == 0
