"""A leg is walked, and it is walked along: no drive is a leg, nor does a search end one.

The truth is what was drawn; a cut is right within 30 s or 30 m (the project's measure).
"""

from __future__ import annotations

import pytest
from measurement.hand_made import SETTINGS, HandWalk, card_of, receiver

from audit.matching.match_walk import match_walk

SQUARE = ((0, 0), (400, 0), (400, 300), (0, 300), (0, 0))


def matched(walk: HandWalk, *points, seed=1, noise_m=3.0):
    clean = walk.clean(1, receiver(seed, noise_m))
    return match_walk(clean, card_of(*points), SETTINGS.matching)


@pytest.mark.parametrize("drive_m_s", [8.0, 16.0])
def test_a_drive_along_a_leg_is_no_walk_of_it(drive_m_s) -> None:
    walk = HandWalk().halt(60).walk(90, 400, speed_m_s=drive_m_s).halt(45).mark("b2")
    walk.walk(0, 300).mark("c").halt(45).mark("c2").walk(270, 400).mark("d").halt(45)
    walk.mark("d2").walk(180, 300).mark("e").halt(60)
    match = matched(walk, *SQUARE)
    assert match.legs[0].start_s is None
    for leg, begin, end in zip(match.legs[1:], ("b2", "c2", "d2"), ("c", "d", "e"), strict=True):
        assert leg.start_s == pytest.approx(walk.marks[begin], abs=30.0)
        assert leg.claim_s == pytest.approx(walk.marks[end], abs=30.0)


def test_who_runs_all_the_way_has_walked_the_legs() -> None:
    # Faster than any drive over a track is slow: what counts is the recording's own pace.
    walk = HandWalk().halt(30).mark("a")
    for number, (azimuth, length) in enumerate(((90, 400), (0, 300), (270, 400), (180, 300))):
        walk.walk(azimuth, length, speed_m_s=5.0).mark(f"to {number}").halt(30)
    match = matched(walk, *SQUARE)
    for number, leg in enumerate(match.legs):
        assert leg.claim_s == pytest.approx(walk.marks[f"to {number}"], abs=30.0)


@pytest.mark.parametrize("seed", range(1, 5))
def test_a_leg_ends_before_the_search_that_comes_back_to_its_point(seed) -> None:
    """A search's last stretch leads to the point from the side; the count had ended before."""
    walk = HandWalk().halt(60).mark("a").walk(90, 375).mark("b").halt(10)
    walk.walk(0, 60).walk(90, 25).walk(180, 60).halt(60).mark("b2")
    walk.walk(180, 300).mark("c").halt(60)
    match = matched(walk, (0, 0), (400, 0), (400, -300), seed=seed)
    assert match.legs[0].claim_s == pytest.approx(walk.marks["b"], abs=30.0)
    assert match.legs[1].start_s == pytest.approx(walk.marks["b2"], abs=30.0)
