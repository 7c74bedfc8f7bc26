"""Bezel clicks: how many, which way, and on which side rounding leaves the walker."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from truth.check_values import CheckValue, check_values, each

from audit.azimuths import GridAzimuth, MagneticAzimuth, NorthAngles
from audit.leg_card.bezel import clicks_for_angle, clicks_to_set, is_whole_bezel
from audit.settings import Settings

UNTURNED = NorthAngles(grid_magnetic_angle_deg=0.0, convergence_deg=0.0)
CLICK_DEG = Settings().carried_card.click_deg
ANGLES = st.floats(0.0, 360.0, exclude_max=True)
CLICK_SIZES = st.sampled_from([1.0, 2.0, 2.5, 3.0, 5.0, 6.0])


def test_the_usual_bezel_has_its_120_clicks():
    value = check_values("bezel")[0]
    assert float(value.expected) == 360.0 / CLICK_DEG


@pytest.mark.parametrize("value", check_values("bezel")[1:], ids=lambda value: value.inputs)
def test_an_angle_of_10_5_east_on_grid_300(value: CheckValue):
    grid = GridAzimuth(float(value.given("grid")))
    angle_deg = float(value.given("angle"))
    wanted = NorthAngles(grid_magnetic_angle_deg=angle_deg, convergence_deg=0.0).magnetic(grid)
    count = int(value.given("clicks"))
    if not count:
        assert wanted.degrees == float(value.expected)
        return
    ways = {
        one.count: one
        for one in clicks_for_angle(grid.degrees, wanted, float(value.given("click")))
    }
    assert set(ways) == {3, 4}
    assert ways[count].azimuth.degrees == float(value.expected)
    assert ways[count].hand == "right"  # an angle east is taken off


def test_289_5_lies_half_way_and_both_settings_are_told():
    three, four = clicks_to_set(MagneticAzimuth(289.5), 3.0)
    assert (three.azimuth.degrees, four.azimuth.degrees) == (291.0, 288.0)
    assert (three.count, three.hand, four.count) == (23, "right", 24)
    assert (three.error_deg, four.error_deg) == (1.5, -1.5)


@each("bezel_rounding")
def test_rounding_leaves_the_object_on_the_side_that_the_manual_says(value: CheckValue):
    wanted = MagneticAzimuth(float(value.given("wanted").split(";")[0]))
    (clicks,) = clicks_to_set(wanted, 3.0)
    off_m = clicks.ends_off_m(UNTURNED.grid_from_magnetic(wanted), UNTURNED, 500.0)
    # Right of the line the object is to the left, and the other way round.
    assert ("left" if off_m > 0.0 else "right") == value.expected


def test_metres_off_the_line():
    (value,) = check_values("off_line")
    (clicks,) = clicks_to_set(MagneticAzimuth(59.0), 3.0)
    assert clicks.error_deg == float(value.given("degrees"))
    way_m = float(value.given("distance_m"))
    off_m = clicks.ends_off_m(GridAzimuth(59.0), UNTURNED, way_m)
    assert off_m == pytest.approx(float(value.expected), abs=float(value.tolerance))


def test_an_angle_west_is_added_to_the_left():
    # 7.5 west on grid 41.5 is 49.0 magnetic: two clicks 47.5, three 50.5 (common practice).
    two, three = clicks_for_angle(41.5, MagneticAzimuth(49.0), 3.0)
    assert (two.hand, two.azimuth.degrees, three.azimuth.degrees) == ("left", 47.5, 50.5)


def test_an_exact_angle_has_one_answer_and_no_angle_needs_no_click():
    (six,) = clicks_for_angle(100.0, MagneticAzimuth(94.0), 3.0)
    assert (six.count, six.hand, six.error_deg) == (2, "right", 0.0)
    (none,) = clicks_for_angle(100.0, MagneticAzimuth(100.0), 3.0)
    assert (none.count, none.hand) == (0, "")


@given(wanted=ANGLES, click=CLICK_SIZES)
def test_no_setting_is_off_by_more_than_half_a_click_or_more_than_half_round(wanted, click):
    ways = clicks_to_set(MagneticAzimuth(wanted), click)
    for one in ways:
        assert abs(one.error_deg) <= click / 2.0 + 1e-6
        assert one.count * click <= 180.0 + click / 2.0 + 1e-9
        turned = one.count * click * {"left": 1.0, "right": -1.0, "": 0.0}[one.hand]
        assert one.azimuth.turn_to(MagneticAzimuth(turned)) == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize(("click", "whole"), [(3.0, True), (5.0, True), (7.0, False), (0.0, False),
                                              (-3.0, False), (2.5, True)])  # fmt: skip
def test_clicks_must_go_round_evenly(click, whole):
    assert is_whole_bezel(click) is whole
