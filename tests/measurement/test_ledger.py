"""The ledger adds up to the miss, and its parts mean what they say."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from measurement.hand_made import card_of, leg_as_carded

from audit.azimuths import GridAzimuth
from audit.measurement.ledger import make_ledger

CARD = card_of((0, 0), (400, 0)).legs[0]

metres = st.floats(-2000.0, 2000.0)
lengths = st.one_of(st.just(0.0), st.floats(1e-6, 20_000.0))
directions = st.one_of(st.floats(0.0, 360.0), st.sampled_from([0.0, 90.0, 180.0, 270.0, 359.999]))


def leg(length_m: float, azimuth_deg: float, planned_end=(400.0, 0.0)):
    """A card leg from (0, 0); what it says and where its end lies may disagree."""
    start = replace(CARD.start, east_m=0.0, north_m=0.0)
    end = replace(CARD.end, east_m=planned_end[0], north_m=planned_end[1])
    line = np.array([[0.0, 0.0], planned_end])
    azimuth = GridAzimuth(azimuth_deg)
    return replace(CARD, start=start, end=end, azimuth=azimuth, distance_m=length_m, line=line)


def parts(ledger) -> np.ndarray:
    return np.array([ledger.inherited, ledger.plan, ledger.heading, ledger.distance, ledger.detour])


@settings(max_examples=300, deadline=None)
@given(
    length=lengths, azimuth=directions, walked=directions,
    start=st.tuples(metres, metres), claim=st.tuples(metres, metres), end=st.tuples(metres, metres),
)  # fmt: skip
def test_ledger_adds_up_to_the_miss(length, azimuth, walked, start, claim, end) -> None:
    ledger = make_ledger(
        leg(length, azimuth, end), np.array(start), np.array(claim), GridAzimuth(walked)
    )
    miss = np.array(claim) - np.array(end)
    assert ledger.total == pytest.approx(tuple(miss), abs=1e-6)
    assert parts(ledger).sum(axis=0) == pytest.approx(miss, abs=1e-6)
    # heading and distance stand at right angles
    product = np.dot(ledger.heading, ledger.distance)
    assert abs(product) <= 1e-9 * (1.0 + length**2 + np.dot(claim, claim) + np.dot(start, start))


@settings(max_examples=100, deadline=None)
@given(length=st.floats(10.0, 5000.0), azimuth=directions, turn=st.floats(-180.0, 180.0))
def test_pure_turn_is_all_heading(length, azimuth, turn) -> None:
    angle = np.radians([azimuth, azimuth + turn])
    card_end, claim = (length * np.array([np.sin(a), np.cos(a)]) for a in angle)
    ledger = make_ledger(
        leg(length, azimuth, tuple(card_end)), np.zeros(2), claim, GridAzimuth(azimuth + turn)
    )
    assert ledger.heading == pytest.approx(tuple(claim - card_end), abs=1e-6)
    # a chord of the circle: 2 L sin of half the turn
    assert np.hypot(*ledger.heading) == pytest.approx(
        2 * length * abs(np.sin(np.radians(turn) / 2)), abs=1e-6
    )
    for part in (ledger.inherited, ledger.plan, ledger.distance, ledger.detour):
        assert part == pytest.approx((0.0, 0.0), abs=1e-6)


def test_pure_overshoot_is_all_distance() -> None:
    ledger = make_ledger(leg(400.0, 90.0), np.zeros(2), np.array([450.0, 0.0]), GridAzimuth(90.0))
    assert ledger.distance == pytest.approx((50.0, 0.0), abs=1e-9)
    for part in (ledger.inherited, ledger.plan, ledger.heading, ledger.detour):
        assert part == pytest.approx((0.0, 0.0), abs=1e-9)


def test_reciprocal_is_all_heading_and_of_finite_size() -> None:
    ledger = make_ledger(leg(400.0, 90.0), np.zeros(2), np.array([-400.0, 0.0]), GridAzimuth(270.0))
    assert ledger.heading == pytest.approx((-800.0, 0.0), abs=1e-9)
    assert ledger.distance == pytest.approx((0.0, 0.0), abs=1e-9)


def test_leg_not_walked_away_from_its_start() -> None:
    ledger = make_ledger(leg(400.0, 90.0), np.zeros(2), np.zeros(2), GridAzimuth(90.0))
    assert ledger.distance == pytest.approx((-400.0, 0.0), abs=1e-9)
    assert parts(ledger).sum(axis=0) == pytest.approx([-400.0, 0.0], abs=1e-9)


def test_what_lies_sideways_of_the_held_direction_is_detour() -> None:
    # Held 090 for 300 m, then got 40 m to the left of that line.
    ledger = make_ledger(
        leg(300.0, 90.0, (300.0, 0.0)), np.zeros(2), np.array([300.0, 40.0]), GridAzimuth(90.0)
    )
    assert ledger.detour == pytest.approx((0.0, 40.0), abs=1e-9)
    assert ledger.heading == pytest.approx((0.0, 0.0), abs=1e-9)


def test_start_beside_the_point_is_inherited() -> None:
    ledger = make_ledger(
        leg(400.0, 90.0), np.array([5.0, -30.0]), np.array([405.0, -30.0]), GridAzimuth(90.0)
    )
    assert ledger.inherited == pytest.approx((5.0, -30.0), abs=1e-9)
    assert ledger.total == pytest.approx((5.0, -30.0), abs=1e-9)


def test_card_against_points_is_plan() -> None:
    # card: 380 m on 090; points: 400 m on 090
    ledger = make_ledger(leg(380.0, 90.0), np.zeros(2), np.array([380.0, 0.0]), GridAzimuth(90.0))
    assert ledger.plan == pytest.approx((-20.0, 0.0), abs=1e-9)
    assert ledger.total == pytest.approx((-20.0, 0.0), abs=1e-9)


def test_bent_line_is_reckoned_between_its_ends() -> None:
    bent = card_of((0, 0), (300, 200), via=((300, 0),)).legs[0]
    start, end = bent.line[0], bent.line[-1]
    ledger = make_ledger(
        bent, start, end, GridAzimuth(np.degrees(np.arcsin(300 / np.hypot(300, 200))))
    )
    assert np.abs(parts(ledger)).max() < 1e-6
    assert ledger.total == pytest.approx((0.0, 0.0), abs=1e-6)


def test_dead_reckoned_end_leaves_nothing_to_the_plan() -> None:
    card = card_of((0, 0), legs=(leg_as_carded(60.0, 500.0, end="somewhere"),)).legs[0]
    start = card.line[0]
    ledger = make_ledger(card, start, start + np.array([100.0, 100.0]), GridAzimuth(45.0))
    assert ledger.plan == pytest.approx((0.0, 0.0), abs=1e-6)
    assert parts(ledger).sum(axis=0) == pytest.approx(ledger.total, abs=1e-6)
