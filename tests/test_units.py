"""Wrapping, turning, pointing: the only code that compares directions."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from truth.check_values import check_values

from audit.units import (
    degrees_from_mils,
    direction_degrees,
    east_north,
    mils_from_degrees,
    on_other_scale_deg,
    turn_degrees,
    turned_aside_m,
    unit_vector,
    wrap_degrees,
)

ANGLES = st.floats(-1e6, 1e6)
ROUNDING_DEG = 1e-9
"""A million degrees in double precision are good to about 1e-10."""


def same_direction(first_deg: float, second_deg: float) -> float:
    """Give the distance between two directions by their unit vectors, in degrees."""
    chord = math.hypot(
        math.cos(math.radians(first_deg)) - math.cos(math.radians(second_deg)),
        math.sin(math.radians(first_deg)) - math.sin(math.radians(second_deg)),
    )
    return math.degrees(2.0 * math.asin(min(1.0, chord / 2.0)))


@given(ANGLES)
def test_wrapping_keeps_the_direction_and_the_range(angle_deg: float) -> None:
    wrapped = wrap_degrees(angle_deg)
    assert 0.0 <= wrapped < 360.0
    assert same_direction(wrapped, angle_deg) < 1e-7


@pytest.mark.parametrize(
    ("angle_deg", "wrapped"),
    [(0.0, 0.0), (360.0, 0.0), (-1.0, 359.0), (725.0, 5.0), (-360.0, 0.0), (-1e-300, 0.0)],
)
def test_wrapping_at_the_seam(angle_deg: float, wrapped: float) -> None:
    assert wrap_degrees(angle_deg) == wrapped


def test_wrapping_never_gives_minus_zero() -> None:
    for angle_deg in (-0.0, -360.0, 360.0, -1e-300):
        assert math.copysign(1.0, wrap_degrees(angle_deg)) == 1.0, angle_deg


@given(ANGLES, ANGLES)
def test_a_turn_leads_from_one_direction_to_the_other(from_deg: float, to_deg: float) -> None:
    turn = turn_degrees(from_deg, to_deg)
    assert -180.0 < turn <= 180.0
    assert same_direction(from_deg + turn, to_deg) < 1e-7


@given(ANGLES, ANGLES)
def test_turning_back_undoes_a_turn(from_deg: float, to_deg: float) -> None:
    there, back = turn_degrees(from_deg, to_deg), turn_degrees(to_deg, from_deg)
    if abs(there) < 180.0 - ROUNDING_DEG:
        assert there == pytest.approx(-back, abs=ROUNDING_DEG)


@pytest.mark.parametrize(
    ("from_deg", "to_deg", "turn"),
    [
        (359.0, 1.0, 2.0),
        (1.0, 359.0, -2.0),
        (0.0, 180.0, 180.0),
        (180.0, 0.0, 180.0),
        (0.0, -180.0, 180.0),
        (10.0, 190.0, 180.0),
        (190.0, 10.0, 180.0),
        (0.0, 360.0, 0.0),
        (90.0, 90.0, 0.0),
        (0.0, 179.0, 179.0),
        (0.0, 181.0, -179.0),
    ],
)
def test_turns_by_hand(from_deg: float, to_deg: float, turn: float) -> None:
    assert turn_degrees(from_deg, to_deg) == turn


def test_no_turn_is_plus_zero() -> None:
    for from_deg, to_deg in ((0.0, 0.0), (0.0, -0.0), (-0.0, 0.0), (350.0, 350.0), (0.0, 360.0)):
        assert math.copysign(1.0, turn_degrees(from_deg, to_deg)) == 1.0


@pytest.mark.parametrize(
    ("east_m", "north_m", "direction"),
    [
        (0.0, 1.0, 0.0),
        (1.0, 1.0, 45.0),
        (1.0, 0.0, 90.0),
        (0.0, -1.0, 180.0),
        (-0.0, -1.0, 180.0),
        (-1.0, 0.0, 270.0),
        (-1.0, -0.0, 270.0),
        (-0.0, 1.0, 0.0),
        (-1.0, 1.0, 315.0),
    ],
)
def test_directions_by_hand(east_m: float, north_m: float, direction: float) -> None:
    assert direction_degrees(east_m, north_m) == pytest.approx(direction, abs=1e-12)


def test_a_hair_west_of_north_is_not_360() -> None:
    assert 0.0 <= direction_degrees(-1e-300, 1.0) < 360.0
    assert wrap_degrees(np.array([-1e-300, 1.0])).tolist() == [0.0, 1.0]


@given(st.floats(0.0, 359.999), st.floats(1e-3, 1e6))
def test_a_unit_vector_points_where_it_was_told(direction_deg: float, length_m: float) -> None:
    vector = length_m * unit_vector(direction_deg)
    assert np.hypot(*vector) == pytest.approx(length_m, rel=1e-12)
    found = direction_degrees(float(vector[0]), float(vector[1]))
    assert abs(turn_degrees(direction_deg, found)) < ROUNDING_DEG


def test_arrays_give_what_numbers_give() -> None:
    from_deg, to_deg = np.array([359.0, 1.0, 0.0, 10.0]), np.array([1.0, 359.0, 180.0, 190.0])
    single = [turn_degrees(float(a), float(b)) for a, b in zip(from_deg, to_deg, strict=True)]
    assert turn_degrees(from_deg, to_deg).tolist() == single
    assert turn_degrees(359.0, to_deg).tolist() == [turn_degrees(359.0, float(b)) for b in to_deg]
    assert turn_degrees(from_deg, 1.0).tolist() == [turn_degrees(float(a), 1.0) for a in from_deg]
    assert wrap_degrees(np.array([-1.0, 360.0])).tolist() == [359.0, 0.0]
    assert direction_degrees(np.array([1.0, -1.0]), np.array([0.0, 0.0])).tolist() == [90.0, 270.0]


def test_numbers_come_back_as_numbers() -> None:
    assert type(wrap_degrees(np.float64(361.0))) is float
    assert type(turn_degrees(np.float64(1.0), np.float64(2.0))) is float
    assert type(direction_degrees(np.float64(1.0), np.float64(2.0))) is float


def test_nothing_known_stays_unknown() -> None:
    assert math.isnan(wrap_degrees(math.nan))
    assert math.isnan(turn_degrees(math.nan, 1.0))
    assert np.isnan(turn_degrees(np.array([1.0, math.nan]), 1.0)).tolist() == [False, True]


def test_mils_are_6400_to_the_circle() -> None:
    # FM 21-26 (1993), paragraph 6-1b: 6400 mils; 17.78 mils to the degree.
    wanted = {row.inputs: row for row in check_values("doctrine")}
    assert mils_from_degrees(360.0) == float(wanted["circle"].expected)
    assert mils_from_degrees(1.0) == pytest.approx(float(wanted["1 deg"].expected), abs=0.0005)
    assert degrees_from_mils(1.0) == float(wanted["1 mil"].expected)


@given(st.floats(0.0, 6400.0))
def test_mils_lead_there_and_back(mils: float) -> None:
    assert mils_from_degrees(degrees_from_mils(mils)) == pytest.approx(mils, abs=1e-9)


def test_an_array_of_turns_stays_within_half_a_circle_where_rounding_would_leave_it():
    # Just above an odd number of half circles the sum rounds to 180.00000000000003 and more.
    directions = np.nextafter([-8100.0, -67_108_860.0, -4_194_180.0], np.inf)
    assert (directions - 360.0 * np.ceil((directions - 180.0) / 360.0)).max() > 180.0
    assert turn_degrees(0.0, directions).tolist() == [180.0, 180.0, 180.0]
    assert [turn_degrees(0.0, float(one)) for one in directions] == [180.0, 180.0, 180.0]


def test_the_other_scale_of_a_dial() -> None:
    """90 degrees are 1600 mils, read as 160 degrees; 90 numerals of 100 mils are 9000 mils."""
    assert on_other_scale_deg(90.0) == (160.0, 9000.0 * 360.0 / 6400.0)


def test_a_vector_is_given_east_before_north_as_plain_numbers():
    pair = east_north(np.array([3.0, -4.0]))
    assert pair == (3.0, -4.0)
    assert [type(one) for one in pair] == [float, float]


@pytest.mark.parametrize(
    ("turn_deg", "aside_m"),
    [
        (0.0, 0.0),
        (60.0, 1000.0),  # an equilateral triangle
        (-60.0, 1000.0),
        (90.0, 1000.0 * math.sqrt(2.0)),
        (180.0, 2000.0),  # there and back
        (1.0, 17.45),  # common practice, no source: 17.5 m aside in a kilometre for a degree
    ],
)
def test_lines_turned_apart_end_a_chord_apart(turn_deg: float, aside_m: float) -> None:
    assert turned_aside_m(1000.0, turn_deg) == pytest.approx(aside_m, abs=0.01)
    assert turned_aside_m(250.0, turn_deg) == pytest.approx(aside_m / 4.0, abs=0.01)


@given(st.floats(1.0, 1e4), st.floats(-180.0, 180.0))
def test_how_far_an_end_is_aside_is_the_distance_between_the_ends(
    length_m: float, turn_deg: float
) -> None:
    apart = length_m * (unit_vector(turn_deg) - unit_vector(0.0))
    assert turned_aside_m(length_m, turn_deg) == pytest.approx(math.hypot(*apart), abs=1e-8)
