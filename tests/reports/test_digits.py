"""The one rule for digits, against the Guide to the Expression of Uncertainty in Measurement."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from audit.reports import digits
from audit.words.in_other_units import to_place


def test_worked_example_of_the_guide():
    # JCGM 100:2008, 7.2.6 (from memory): 10.057 62 ohm with 27 milliohm is reported as
    # 10.058 ohm. In thousandths, since lengths stop at whole units.
    assert to_place(10057.62, digits.metres_place(27.0)) == "10058"


@pytest.mark.parametrize(
    ("value_m", "error_m", "text"),
    [
        (111.4, 0.3, "111 m"),  # never finer than a metre
        (111.4, 5.0, "111 m"),
        (111.4, 27.0, "111 m"),  # two digits of 27
        (1114.0, 270.0, "1110 m"),  # two digits of 270 end at the tens
        (1114.0, 2700.0, "1100 m"),
        (1114.0, 99.6, "1110 m"),  # 99.6 is 100 to two digits, so tens
        (0.2, 5.0, "0 m"),
        (-0.2, 5.0, "0 m"),
    ],
)
def test_length(value_m, error_m, text):
    assert digits.metres(value_m, error_m) == text


@pytest.mark.parametrize(
    ("turn_deg", "half_deg", "text", "interval"),
    [
        (-7.2428, 1.2, "7°", "±1°"),
        (-7.2428, 0.74, "7.2°", "±0.7°"),
        (-7.2428, 0.02, "7.2°", "±0.1°"),  # never finer than a tenth
        (-43.0, 12.0, "43°", "±12°"),
        (-43.0, 170.0, "43°", "±170°"),
        (-7.2428, 0.97, "7°", "±1°"),  # 0.97 is 1 to one digit
    ],
)
def test_turn(turn_deg, half_deg, text, interval):
    assert digits.angle(turn_deg, half_deg) == text
    assert digits.half_interval(half_deg) == interval


@pytest.mark.parametrize(
    ("degrees", "half_deg", "text"),
    [(359.97, 0.4, "0.0°"), (359.6, 1.0, "0°"), (0.04, 0.4, "0.0°"), (68.3, 2.0, "68°")],
)
def test_azimuth_stays_below_360(degrees, half_deg, text):
    assert digits.azimuth(degrees, half_deg) == text


@pytest.mark.parametrize(
    ("share", "text"),
    [(0.94, "94 %"), (0.0, "under 1 %"), (0.996, "over 99 %"), (1.0, "over 99 %"), (0.99, "99 %")],
)
def test_probability_is_never_certainty(share, text):
    assert digits.percent(share) == text


@given(
    value=st.floats(-1e5, 1e5, allow_nan=False),
    error=st.floats(1e-3, 1e4, allow_nan=False),
)
def test_rounding_costs_less_than_a_tenth_of_the_error_or_half_a_metre(value, error):
    shown = float(digits.metres(value, error).removesuffix(" m"))
    # Two digits of the error: the last place is at most a tenth of it.
    assert abs(shown - value) <= max(0.5, error / 20.0) * (1 + 1e-9)


def test_error_of_9500_is_rounded_to_hundreds():
    # Found 2026-11-25: the leading digit was taken after rounding to one digit, not to two.
    assert digits.metres(9476.0, 9500.0) == "9500 m"


@given(half=st.floats(0.1, 179.0, allow_nan=False))
def test_direction_is_not_finer_than_its_interval_says(half):
    place = digits.degrees_place(half)
    assert -1 <= place <= 0  # tens of degrees would show 116 as 120
    if 0.1 < half < 9.5:
        assert 10.0**place <= half * 1.06  # 0.95 is shown as 1
        assert 10.0**place > half / 10.0 - 1e-9


@pytest.mark.parametrize("error", [0.0, math.nan])
def test_error_that_is_not_known_shows_the_finest_place(error):
    assert digits.metres(111.4, error) == "111 m"
