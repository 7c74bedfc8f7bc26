"""Slips with the digits of an 8-figure reference move a coordinate by what can be worked out.

A swap of two neighbours moves by nine times their difference, times the place of the lower
(casting out nines); a wrong digit by its difference times its place.
"""

from __future__ import annotations

from audit.geodesy.reference_digits import (
    carried_digits_m,
    digit_values,
    exchanged_m,
    swapped_digits_m,
    wrong_digits_m,
)


def test_the_digits_stand_for_tens_of_metres_up_to_tens_of_kilometres() -> None:
    # 334 567.8 m lies in a square of 100 km at 34 567.8: 8-figure digits 3 4 5 6, last first.
    assert digit_values(334_567.8) == (6, 5, 4, 3)


def test_a_swap_moves_by_nine_times_a_power_of_ten() -> None:
    # 3456 read as 3465, 3546, 4356: 90, 900 and 9000 m more.
    assert list(swapped_digits_m(334_567.8)) == [90.0, 900.0, 9000.0]
    # Two digits alike cannot be seen to be swapped: 3445 as 3454 and 4345.
    assert list(swapped_digits_m(334_457.0)) == [90.0, 9000.0]


def test_a_wrong_digit_moves_by_any_of_nine_steps_of_its_place() -> None:
    moves = list(wrong_digits_m(334_567.8))
    assert len(moves) == len(set(moves)) == 4 * 9
    assert [move for move in moves if abs(move) < 100.0] == [
        -60.0, -50.0, -40.0, -30.0, -20.0, -10.0, 10.0, 20.0, 30.0
    ]  # fmt: skip
    assert {-500.0, 400.0, -4000.0, 5000.0} <= set(moves)


def test_easting_and_northing_exchanged_move_along_a_diagonal() -> None:
    # 700.4 km and 5430.9 km: 400 m and 900 m inside the square, so 500 m east and south.
    assert exchanged_m(700_400.0, 5_430_900.0) == (500.0, -500.0)


def test_a_square_too_far_that_carries_moves_by_that_square() -> None:
    """Bug: 1994 read one hundred too far, 2004, was no slip: neither digit alone is wrong."""
    assert list(carried_digits_m(319_945.0)) == [100.0]
    assert list(carried_digits_m(320_045.0)) == [-100.0]
    # Tens and hundreds: 1990 as 1989 and 2000. A kilometre more is the next grid line.
    assert list(carried_digits_m(319_905.0)) == [-10.0, 100.0]
    assert list(carried_digits_m(309_555.0)) == []
    assert list(carried_digits_m(334_567.8)) == []
