"""Figures in other units: exact factors from published tables, digits from the error in that unit."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from audit.words.figures import Azimuth, HalfInterval, Length, Paces, Turn
from audit.words.in_other_units import ANGLE_UNITS, Units
from audit.words.spoken_words import Words


def words(**units) -> Words:
    return Words(units=Units(**units))


@pytest.mark.parametrize(
    ("unit", "circle"),
    # 6400: FM 21-26 (1993), para 6-1b. gon: a hundredth of a right angle (ISO 80000-3:2019).
    # 6300 and 6000: common practice, no source.
    [("degrees", 360), ("mil6400", 6400), ("mil6300", 6300), ("mil6000", 6000), ("gon", 400)],
)
@given(eighths=st.integers(0, 359 * 8))
def test_angles_convert_exactly(unit, circle, eighths):
    exact = Fraction(eighths, 8) * circle / 360
    assert Units(angle=unit).angle_from(eighths / 8) == pytest.approx(float(exact), rel=1e-15)


def test_yards_are_international_yards():
    # 1 yd = 0.9144 m exactly: NIST Special Publication 811 (2008), B.6; agreement of 1959.
    assert Units(length="yards").length_from(0.9144) == 1.0
    assert Length(metres=914.4).shown(words(length="yards")) == "1000 yd"


@pytest.mark.parametrize(
    ("unit", "shown"),
    [
        ("degrees", "90.0°"),
        ("mil6400", "1600 mil"),
        ("mil6300", "1575 mil"),
        ("mil6000", "1500 mil"),
        ("gon", "100.0 gon"),
    ],
)
def test_a_right_angle_in_every_unit(unit, shown):
    assert Turn(degrees=90.0).shown(words(angle=unit)) == shown
    assert Azimuth(degrees=90.0).shown(words(angle=unit)) == shown


@pytest.mark.parametrize(
    ("half_deg", "degrees", "mils", "gons"),
    [
        (0.05, "±0.1°", "±1 mil", "±0.1 gon"),
        (0.3, "±0.3°", "±5 mil", "±0.3 gon"),
        (0.6, "±0.6°", "±11 mil", "±0.7 gon"),  # Bug: ±10 mil, beside figures in tens
        (0.9, "±0.9°", "±16 mil", "±1 gon"),  # 1.0 gon to one digit
        (2.0, "±2°", "±40 mil", "±2 gon"),
    ],
)
def test_digits_follow_from_the_error_in_the_unit_that_is_shown(half_deg, degrees, mils, gons):
    half = HalfInterval(degrees=half_deg)
    shown = [half.shown(words(angle=unit)) for unit in ("degrees", "mil6400", "gon")]
    assert shown == [degrees, mils, gons]


@pytest.mark.parametrize("unit", ANGLE_UNITS)
@given(degrees=st.floats(0.0, 720.0), half_deg=st.floats(0.01, 90.0))
def test_an_azimuth_never_reaches_the_whole_circle_and_is_off_by_half_a_place(
    unit, degrees, half_deg
):
    units = Units(angle=unit)
    text = Azimuth(degrees=degrees, half_interval_deg=half_deg).shown(Words(units=units))
    value = float(text.removesuffix("°").split()[0])
    circle = units.angle_from(360.0)
    assert 0.0 <= value < circle
    off = (value - units.angle_from(degrees) + circle / 2) % circle - circle / 2
    assert abs(off) <= 0.5 * 10.0 ** units.angle_place(half_deg) + 1e-6


def test_length_in_yards_is_rounded_where_its_error_in_yards_says():
    # 99 m are 108 yd: two digits of them end at the tens, of 99 at the ones (JCGM 100, 7.2.6).
    length = Length(metres=1114.0, standard_error_m=99.0)
    assert length.shown(words()) == "1114 m"
    assert length.shown(words(length="yards")) == "1220 yd"


def test_paces_are_doubled_or_halved_only_where_both_are_named():
    assert Paces(counted=65.0).shown(words(paces="double")) == "65"
    assert Paces(counted=65.0).shown(words(paces="single", paces_counted="double")) == "130"
    assert Paces(counted=130.0).shown(words(paces="double", paces_counted="single")) == "65"


def test_german_writes_decimals_with_a_comma():
    german = Words(language="de")
    assert Turn(degrees=7.24, half_interval_deg=0.3).shown(german) == "7,2°"


def test_stated_degrees_are_told_in_whole_mils():
    """Bug: a standard of 3 degrees was told as 50 mil, which are 2.8 degrees."""
    assert Turn(degrees=3.0, degrees_decimals=0).shown(words(angle="mil6400")) == "53 mil"


def test_german_calls_the_mil_strich():
    """Bug: German figures stood in "mil", while its sentences spoke of Strich."""
    german = Words(language="de", units=Units(angle="mil6400"))
    assert Turn(degrees=3.0, degrees_decimals=0).shown(german) == "53 Strich"
    assert Azimuth(degrees=49.0, of_card=True).shown(german) == "0871 Strich"
    assert HalfInterval(degrees=0.6).shown(german) == "±11 Strich"
