"""The whole recording divided: what is walked, halted, searched and neither."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from measurement.hand_made import (
    SETTINGS,
    HandWalk,
    card_of,
    clean_of,
    kinds,
    match_of,
    measure,
)

from audit.matching.leg_match import LegMatch
from audit.measurement.spans import divide_walk


def covers(clean, spans) -> bool:
    """The first fix to the last, each span beginning at the moment where the one before ends."""
    joined = all(
        (before.last, before.end_s) == (after.first, after.start_s)
        for before, after in pairwise(spans)
    )
    forward = all(span.first <= span.last and span.start_s < span.end_s for span in spans)
    ends = (spans[0].first, spans[0].start_s), (spans[-1].last, spans[-1].end_s)
    whole = ends == ((0, clean.time_s[0]), (len(clean) - 1, clean.time_s[-1]))
    return whole and joined and forward


@pytest.mark.parametrize("every_s", [1, 5, 30])
def test_spans_are_cut_at_the_moments_of_the_legs_and_add_up_to_their_seconds(every_s) -> None:
    """Bug: they were cut at the nearest fix, and a search began up to 11 s before the claim."""
    walk = HandWalk().walk(0, 80).halt(33).mark("a").walk(90, 210).halt(42).walk(90, 200)
    walk.mark("b").walk(0, 50).walk(180, 100).mark("found").halt(27).mark("c").walk(0, 310)
    walk.mark("d").halt(61)
    card = card_of((0, 80), (430, 80), (430, 380))
    portions = [walk.portion(0, "a", "b", "found"), walk.portion(1, "c", "d")]
    measures = measure(card, walk.clean(every_s), portions, walk.halts)
    assert covers(walk.clean(every_s), measures.spans)
    for number, one in enumerate(measures.legs):
        portion = measures.match.legs[number]
        own = [span for span in measures.spans if span.leg == number]
        before = [span for span in own if span.end_s <= portion.claim_s]
        assert (own[0].start_s, before[-1].end_s) == (portion.start_s, portion.claim_s)
        assert all(span.start_s >= portion.claim_s for span in own if span.kind == "search")
        seconds = dict.fromkeys(("walking", "halt"), 0.0)
        for span in before:
            seconds[span.kind] += span.end_s - span.start_s
        assert seconds["halt"] == one.measures.halted_s
        assert sum(seconds.values()) == one.measures.duration_s


def test_whole_outing() -> None:
    # From the car to the start, a leg with a rest, a search for its point, a leg, the way home.
    walk = HandWalk().walk(45, 300).halt(60).mark("start").walk(90, 200).halt(30).walk(90, 200)
    walk.mark("claim").halt(20).walk(0, 50).walk(90, 50).mark("found").halt(40).mark("off")
    walk.walk(180, 250).mark("end").halt(30).walk(270, 400)
    start = 300 * np.sin(np.radians(45.0))
    card = card_of((start, start), (start + 450, start + 50), (start + 450, start - 200))
    portions = [
        walk.portion(search_end="found"),
        walk.portion(1, start="off", claim="end"),
    ]
    clean = walk.clean()
    measures = measure(card, clean, portions, walk.halts)
    assert covers(clean, measures.spans)
    assert kinds(measures) == [
        ("approach", None),
        ("at-point", None),
        ("walking", 0),
        ("halt", 0),
        ("walking", 0),
        ("halt", 0),
        ("search", 0),
        ("at-point", None),
        ("walking", 1),
        ("at-point", None),
        ("walk-off", None),
    ]


def test_way_past_a_point_left_out_belongs_to_no_leg() -> None:
    walk = HandWalk().halt(30).mark("a").walk(90, 200).mark("b").halt(30).walk(90, 300).mark("c")
    walk.halt(30).mark("d").walk(0, 200).mark("e").halt(30)
    card = card_of((0, 0), (200, 0), (350, 90), (500, 0), (500, 200))
    portions = [walk.portion(0, "a", "b"), walk.portion(3, "d", "e")]
    measures = measure(card, walk.clean(), portions, walk.halts)
    assert {span.leg for span in measures.spans if span.kind == "walking"} == {0, 3, None}
    assert covers(walk.clean(), measures.spans)


def test_walk_of_no_leg_is_all_approach() -> None:
    walk = HandWalk().walk(90, 300)
    clean = walk.clean()
    measures = measure(card_of((0, 0), (0, 400)), clean, [])
    assert kinds(measures) == [("approach", None)]
    assert covers(clean, measures.spans)


def test_gap_is_told_of_whatever_it_lies_in() -> None:
    walk = HandWalk().walk(0, 100).halt(30).mark("start").walk(90, 400).mark("claim").walk(180, 100)
    whole = walk.clean()
    kept = np.ones(len(whole), dtype=bool)
    for first in (20, 200):
        kept[first : first + 60] = False
    place = np.column_stack([whole.east_m, whole.north_m])[kept]
    breaks = np.flatnonzero(np.diff(whole.time_s[kept]) > 1.5)
    clean = clean_of(whole.time_s[kept], place, gaps=breaks)
    measures = measure(card_of((0, 100), (400, 100)), clean, [walk.portion()], walk.halts)
    assert [span for span in kinds(measures) if span[0] == "gap"] == [("gap", None), ("gap", 0)]
    assert covers(clean, measures.spans)


def test_leg_given_up_is_walked_up_to_there() -> None:
    walk = HandWalk().halt(30).mark("start").walk(90, 200).mark("claim").halt(60).walk(270, 200)
    card = card_of((0, 0), (500, 0), (500, 300))
    given_up = LegMatch(
        leg=0,
        status="unfinished",
        start_s=walk.marks["start"],
        claim_s=walk.marks["claim"],
        search_end_s=walk.marks["claim"],
    )
    clean = walk.clean()
    measures = measure(card, clean, [given_up], walk.halts)
    assert measures.legs[0].measures is None
    assert measures.legs[0].status == "unfinished"
    assert ("walking", 0) in kinds(measures)
    assert covers(clean, measures.spans)


@pytest.mark.parametrize("every_s", [1, 7, 30, 60])
def test_sparse_recordings_are_covered_too(every_s) -> None:
    walk = HandWalk().walk(45, 50).halt(20).mark("a").walk(90, 100).mark("b").walk(0, 100).mark("c")
    card = card_of((35, 35), (135, 35), (135, 135))
    portions = [walk.portion(0, "a", "b"), walk.portion(1, "b", "c")]
    clean = walk.clean(every_s)
    assert covers(clean, measure(card, clean, portions, walk.halts).spans)


@settings(max_examples=80, deadline=None)
@given(data=st.data())
def test_any_match_of_any_walk_is_covered(data) -> None:
    """Cut times anywhere, in or between fixes; fixes anywhere; halts and gaps anywhere."""
    count = data.draw(st.integers(2, 40))
    steps = data.draw(st.lists(st.integers(1, 90), min_size=count - 1, max_size=count - 1))
    time_s = np.concatenate([[0.0], np.cumsum(steps)])
    place = np.array(
        data.draw(
            st.lists(
                st.tuples(st.floats(-400, 400), st.floats(-400, 400)),
                min_size=count,
                max_size=count,
            )
        )
    )
    gaps = data.draw(st.lists(st.integers(0, count - 2), max_size=3, unique=True))
    clean = clean_of(time_s, place, gaps=gaps)
    legs = data.draw(st.integers(1, 5))
    moments = sorted(
        data.draw(st.lists(st.floats(0.0, float(time_s[-1])), min_size=2 * legs, max_size=2 * legs))
    )
    portions = [
        LegMatch(
            leg=n,
            status="walked",
            start_s=moments[2 * n],
            claim_s=moments[2 * n + 1],
            search_end_s=moments[2 * n + 1],
        )
        for n in range(legs)
        if data.draw(st.booleans())
    ]
    halts = [
        tuple(sorted(data.draw(st.tuples(st.floats(0, 500), st.floats(0, 500))))) for _ in range(2)
    ]
    card = card_of(*((100.0 * n, 0.0) for n in range(legs + 1)))
    match = match_of(card, portions, halts)
    bypasses = {p.leg: [(p.start_s, p.claim_s)] for p in portions[:1]}
    spans = divide_walk(clean, match, bypasses, SETTINGS.measuring)
    assert covers(clean, spans)
    belongs = {"walking", "halt", "bypass", "search"}
    assert all(span.leg is not None for span in spans if span.kind in belongs - {"walking"})
    assert all(
        span.leg is None for span in spans if span.kind in ("approach", "at-point", "walk-off")
    )
