"""Places reckoned into silences of the recorder, against what can be drawn on paper.

The walks go at 1.25 m/s, a sample every 2 s: 2.5 m from one to the next.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from matching.drawn_samples import drawn
from measurement.hand_made import SETTINGS

from audit.matching.cuts import find_cuts
from audit.matching.halts import find_movement
from audit.matching.silences import UnseenCuts, find_unseen_cuts
from audit.matching.walk_samples import WalkSamples

S = SETTINGS.matching
CORNER = ((200.0, 0.0, 80), (0.0, 200.0, 80))
"""200 m to the east, then 200 m to the north; sample 80 is the corner."""


def silent(walk: WalkSamples, last: int, first: int) -> WalkSamples:
    """Let nothing be known between two samples but the straight line from one to the other."""
    place = walk.raw.copy()
    share = np.linspace(0.0, 1.0, first - last + 1)[:, None]
    place[last : first + 1] = place[last] + share * (place[first] - place[last])
    in_gap = walk.in_gap.copy()
    in_gap[last + 1 : first] = True
    return replace(walk, raw=place, smooth=place, in_gap=in_gap)


def unseen(samples: WalkSamples, **changed: float) -> UnseenCuts:
    # The pace is that of the walking that was seen: a corner cut off would look slow.
    movement = replace(find_movement(samples, S), walking_m_s=1.25)
    return find_unseen_cuts(samples, movement, replace(S, **changed))


def places(found: UnseenCuts, *, ends: bool) -> list[tuple[float, float]]:
    return [tuple(place) for place in found.position[found.ends == ends].round(6).tolist()]


def test_a_corner_in_a_silence_is_where_the_two_ways_meet() -> None:
    """From 60 m before the corner to 60 m after it: 96 s, all of them walked."""
    found = unseen(silent(drawn(*CORNER), 56, 104))
    assert places(found, ends=True) == [(165.0, 0.0), (190.0, 0.0), (200.0, 0.0), (215.0, 0.0)]
    assert places(found, ends=False) == [(200.0, 35.0), (200.0, 10.0), (200.0, 0.0), (200.0, -15.0)]
    at_corner = np.all(found.position.round(6) == (200.0, 0.0), axis=1)
    assert found.time_s[at_corner] == pytest.approx([1160.0, 1160.0])
    assert found.gone_m[at_corner] == pytest.approx([60.0, -60.0])
    assert found.sample.tolist() == [56] * 4 + [104] * 4
    assert found.direction_deg == pytest.approx([90.0] * 4 + [0.0] * 4)
    # Straight across he would have come 35 m sooner: there may have been a rest.
    assert set(found.turn_deg) == {180.0}


def test_a_bend_that_leaves_no_time_for_a_rest_is_what_a_silence_hides() -> None:
    """30 degrees to the left: straight across the corner it is 4 m less."""
    bent = ((200.0, 0.0, 80), (100.0 * np.sqrt(3.0), 100.0, 80))
    found = unseen(silent(drawn(*bent), 56, 104))
    assert found.turn_deg == pytest.approx(30.0)
    assert np.all(found.position.round(6) == (200.0, 0.0), axis=1).sum() == 2


def test_what_cannot_be_reached_at_a_walk_is_left_out() -> None:
    """80 m on and 63 m back are more than anybody in a hurry walks in 96 s: 1.15 times 120 m."""
    found = unseen(silent(drawn(*CORNER), 56, 104), unseen_every_m=40.0)
    assert places(found, ends=True) == [(180.0, 0.0), (200.0, 0.0)]
    wider = unseen(silent(drawn(*CORNER), 56, 104), unseen_every_m=40.0, unseen_hurry=2.0)
    assert places(wider, ends=True) == [(180.0, 0.0), (200.0, 0.0), (220.0, 0.0), (260.0, 0.0)]


def test_who_has_time_to_stand_claims_early_and_leaves_late() -> None:
    """The same corner with a rest of 100 s on it: he came to it at once, and left at the last."""
    walk = drawn(CORNER[0], (0.0, 0.0, 50), CORNER[1])
    found = unseen(silent(walk, 56, 154))
    at_corner = np.all(found.position.round(6) == (200.0, 0.0), axis=1)
    assert found.time_s[at_corner] == pytest.approx([1160.0, 1260.0])
    assert set(found.turn_deg) == {180.0}


def test_a_straight_silence_without_time_to_spare_hides_no_turn() -> None:
    found = unseen(silent(drawn((400.0, 0.0, 160)), 56, 104))
    assert len(found) > 0
    assert found.turn_deg == pytest.approx(0.0, abs=1e-6)
    assert np.all(found.position[:, 1] == pytest.approx(0.0, abs=1e-9))


@pytest.mark.parametrize(
    ("last", "first", "changed"),
    [
        (70, 90, {}),  # 40 s: shorter than a silence in which anything is lost
        (56, 104, {"unseen_longest_s": 90.0}),
        (56, 104, {"unseen_rest_moves": 40.0, "unseen_rest_most_m": 90.0}),  # 85 m: a mere rest
    ],
)
def test_silences_into_which_nothing_is_reckoned(last, first, changed) -> None:
    assert len(unseen(silent(drawn(*CORNER), last, first), **changed)) == 0


def test_no_way_leads_into_a_silence_from_a_rest() -> None:
    """Who stood, and then moved 10 m, shows no way; from the other side there is one."""
    walk = drawn((0.0, 0.0, 80), (10.0, 0.0, 4), *CORNER)
    found = unseen(silent(walk, 84, 140))
    assert not found.ends.any()
    assert len(found)
    assert set(found.turn_deg) == {180.0}


def test_a_break_of_the_recording_is_a_silence_too() -> None:
    walk = drawn(*CORNER)
    keep = np.r_[0:57, 104:161]
    broken = replace(
        walk,
        **{name: getattr(walk, name)[keep] for name in ("time_s", "raw", "smooth", "in_gap")},
        stretch=np.repeat([0, 1], 57),
    )
    found = unseen(broken)
    assert (200.0, 0.0) in places(found, ends=True)
    assert (200.0, 0.0) in places(found, ends=False)


def test_mirrored_and_walked_back_the_places_are_the_same() -> None:
    found = unseen(silent(drawn(*CORNER), 56, 104))
    mirrored = unseen(silent(drawn((-200.0, 0.0, 80), (0.0, 200.0, 80)), 56, 104))
    assert mirrored.position * (-1.0, 1.0) == pytest.approx(found.position)
    back = unseen(silent(drawn((0.0, -200.0, 80), (-200.0, 0.0, 80)), 56, 104))
    assert sorted(places(found, ends=True)) == sorted(
        (east + 200.0, north + 200.0) for east, north in places(back, ends=False)
    )


def test_among_the_cuts_they_stand_after_what_was_seen_and_keep_their_own_path() -> None:
    samples = silent(drawn(*CORNER), 56, 104)
    movement = replace(find_movement(samples, S), walking_m_s=1.25)
    cuts = find_cuts(samples, movement, np.empty((0, 2)), S)
    assert np.all(np.diff(cuts.sample) >= 0)
    assert np.all(np.diff(cuts.seen_path_m) >= 0)
    ends = np.flatnonzero(cuts.ends_unseen)
    assert cuts.path_m[ends] - cuts.seen_path_m[ends] == pytest.approx([25.0, 50.0, 60.0, 75.0])
    begins = np.flatnonzero(cuts.begins_unseen)
    assert cuts.path_m[begins] - cuts.seen_path_m[begins] == pytest.approx(
        [-75.0, -60.0, -50.0, -25.0]
    )
    assert not (cuts.begins_halt | cuts.ends_halt)[cuts.unseen].any()


def test_ways_that_met_before_the_silence_do_not_meet_in_it() -> None:
    """East to (200, 0), unseen to (150, 160), on north: the ways cross 50 m behind him."""
    walk = silent(drawn((200.0, 0.0, 80), (-50.0, 160.0, 100), (0.0, 200.0, 80)), 80, 180)
    found = unseen(walk)
    assert places(found, ends=True) == [(225.0, 0.0), (250.0, 0.0), (275.0, 0.0)]
    assert places(found, ends=False) == [(150.0, 160.0 - 25.0 * n) for n in range(1, 7)]


@pytest.mark.parametrize(("rest_s", "turn_deg"), [(18, 0.0), (22, 180.0)])
def test_a_rest_on_a_straight_way_shows_by_the_time_to_spare(rest_s, turn_deg) -> None:
    walk = drawn((200.0, 0.0, 80), (0.0, 0.0, rest_s // 2), (200.0, 0.0, 80))
    found = unseen(silent(walk, 56, 104 + rest_s // 2))
    assert found.turn_deg == pytest.approx(turn_deg, abs=1e-6)


def test_who_moves_further_than_anybody_at_rest_did_not_rest() -> None:
    """However far apart the fixes are: 85 m are no rest where 30 m is the most."""
    far_apart = replace(silent(drawn(*CORNER), 56, 104), usual_move_m=500.0)
    assert len(unseen(far_apart)) == 8
    assert len(unseen(replace(far_apart, usual_move_m=60.0), unseen_rest_most_m=90.0)) == 0


def test_a_receiver_that_is_often_as_silent_missed_nothing() -> None:
    """96 s of silence, where one interval in fifty is longer than 47 or 49 s."""
    walk = silent(drawn(*CORNER), 56, 104)
    assert len(unseen(replace(walk, long_interval_s=47.0))) == 8
    assert len(unseen(replace(walk, long_interval_s=49.0))) == 0


def test_only_the_nearest_places_are_reckoned() -> None:
    found = unseen(silent(drawn((800.0, 0.0, 320)), 56, 256), unseen_most=2)
    assert places(found, ends=True) == [(165.0, 0.0), (190.0, 0.0)]


def test_what_lies_beyond_another_silence_shows_no_way() -> None:
    """15 m of walking are seen between two silences: too little on either side of it."""
    walk = silent(silent(drawn((600.0, 0.0, 240)), 40, 90), 96, 150)
    found = unseen(walk)
    assert set(found.sample[found.ends]) == {40}
    assert set(found.sample[~found.ends]) == {150}


def test_metres_are_metres_on_a_way_that_winds() -> None:
    samples = silent(drawn(*CORNER), 56, 104)
    movement = find_movement(samples, S)
    winding = replace(movement, walking_m_s=1.25, path_m=1.2 * movement.path_m)
    found = find_unseen_cuts(samples, winding, S)
    assert places(found, ends=True)[:2] == [(165.0, 0.0), (190.0, 0.0)]
