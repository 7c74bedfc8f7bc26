"""The card to carry: its figures against sums done by hand, and what it warns of."""

from __future__ import annotations

import datetime as dt
import re

import numpy as np
import pytest
from leg_card.plans import DAY, A, B, grid_point, leg, plan
from truth.check_values import CheckValue, check_values

from audit.azimuths import GridAzimuth, MagneticAzimuth
from audit.geodesy.grids import course_grid
from audit.geodesy.mgrs_references import decode_mgrs
from audit.geodesy.national_letters import decode_national
from audit.leg_card.carried_card import carried_card
from audit.leg_card.profiles import profile, stations
from audit.walking_times import WALKING_RULES


def test_a_leg_has_what_the_sums_give():
    # 1000 m on grid 060, angle 10 west: 070 magnetic, back 250 (TC 3-25.26, 6-13); 65 paces.
    carried = carried_card(plan((A, B), grid_magnetic_angle_deg=-10.0, paces_per_100m=65.0))
    (one,) = carried.legs
    assert one.card.azimuth.degrees == pytest.approx(60.0, abs=1e-4)
    assert one.card.magnetic.degrees == pytest.approx(70.0, abs=1e-4)
    assert one.back.degrees == pytest.approx(250.0, abs=1e-4)
    assert one.card.paces == pytest.approx(650.0, abs=0.01)
    assert carried.pace == "double"
    # 70 lies between 69 and 72: 23 clicks left, a degree left, 17.5 m at 1000 m.
    (clicks,) = one.clicks
    assert (clicks.count, clicks.hand, clicks.azimuth.degrees) == (23, "left", 69.0)
    off_m = clicks.ends_off_m(one.card.azimuth, carried.card.angles, one.card.distance_m)
    assert off_m == pytest.approx(-17.45, abs=0.01)


def doctrine(pattern: str) -> list[CheckValue]:
    return [row for row in check_values("doctrine") if re.match(pattern, row.inputs)]


def signed_angle(row: CheckValue) -> tuple[float, float]:
    """Give the azimuth and the angle, east positive, of a worked example of the manuals."""
    azimuth, size = map(float, re.findall(r"\d+", row.inputs)[:2])
    west = "W" in row.inputs or "westerly" in row.inputs
    return azimuth, -size if west else size


@pytest.mark.parametrize("row", doctrine("grid "), ids=lambda row: row.inputs)
def test_the_card_converts_as_the_manuals_do(row):
    # TC 3-25.26 chapter 6, both signs, one through north.
    azimuth, angle = signed_angle(row)
    stated = leg(end="end", grid_azimuth=GridAzimuth(azimuth), distance_m=500.0)
    (one,) = carried_card(plan((A,), (stated,), grid_magnetic_angle_deg=angle)).legs
    assert one.card.magnetic.degrees == float(row.expected)


@pytest.mark.parametrize("row", doctrine("mag "), ids=lambda row: row.inputs)
def test_the_card_converts_back_as_the_manuals_do(row):
    azimuth, angle = signed_angle(row)
    stated = leg(end="end", magnetic_azimuth=MagneticAzimuth(azimuth), distance_m=500.0)
    (one,) = carried_card(plan((A,), (stated,), grid_magnetic_angle_deg=angle)).legs
    assert one.card.azimuth.degrees == float(row.expected)


@pytest.mark.parametrize("row", doctrine("azimuth "), ids=lambda row: row.inputs)
def test_the_cards_back_azimuth_is_that_of_the_manuals(row):
    azimuth = float(row.inputs.split()[1])
    stated = leg(end="end", magnetic_azimuth=MagneticAzimuth(azimuth), distance_m=500.0)
    (one,) = carried_card(plan((A,), (stated,), grid_magnetic_angle_deg=-6.0)).legs
    assert one.back.degrees == float(row.expected)


def test_paces_are_those_of_the_exercise():
    (row,) = doctrine("195 paces")
    stated = leg(end="end", grid_azimuth=GridAzimuth(10.0), distance_m=float(row.expected))
    (one,) = carried_card(plan((A,), (stated,), paces_per_100m=65.0)).legs
    assert one.card.paces == 195.0


@pytest.mark.parametrize(("rate", "pace"), [(65.0, "double"), (116.0, "single"), (None, "double")])
def test_the_pace_is_said(rate, pace):
    # 116 single paces to 100 m (STP 21-1-SMCT); 60 to 70 double ones (common practice).
    assert carried_card(plan((A, B), paces_per_100m=rate)).pace == pace
    assert carried_card(plan((A, B), paces_per_100m=rate), pace="single").pace == "single"


CORNER = grid_point("corner", 700_000.0, 3_580_500.0).position


def test_a_leg_along_via_positions_is_set_piece_by_piece():
    """Bug: the card gave the straight azimuth with the length of the line round the corner."""
    # North 500 m, then east 866.03 m; angle 10 west; 65 paces to 100 m.
    round_it = plan(
        (A, B), (leg(via=(CORNER,)),), grid_magnetic_angle_deg=-10.0, paces_per_100m=65.0
    )
    (one,) = carried_card(round_it).legs
    north, east = one.pieces
    assert [piece.piece.azimuth.degrees for piece in one.pieces] == pytest.approx(
        [0.0, 90.0], abs=1e-4
    )
    assert (north.piece.magnetic.degrees, east.piece.magnetic.degrees) == pytest.approx(
        (10.0, 100.0), abs=1e-4
    )
    assert (north.piece.distance_m, east.piece.distance_m) == pytest.approx(
        (500.0, 866.0254), abs=0.001
    )
    assert (north.piece.paces, east.piece.paces) == pytest.approx((325.0, 562.9), abs=0.1)
    assert (north.end, east.start, east.end) == ("via 1", "via 1", "B")
    assert one.card.distance_m == pytest.approx(1366.0254, abs=0.001)


@pytest.mark.parametrize("place", [A.position, B.position])
def test_a_via_position_at_a_point_makes_no_piece(place):
    (one,) = carried_card(plan((A, B), (leg(via=(place,)),))).legs
    (piece,) = one.pieces
    assert (piece.start, piece.end, piece.piece.distance_m) == (
        "A", "B", pytest.approx(1000.0, abs=0.001),
    )  # fmt: skip


def test_times_are_by_every_rule_and_add_up():
    three = plan((A, B, grid_point("C", 701_500.0, 3_580_500.0)), (leg(), leg("2", "B", "C")))
    carried = carried_card(three)
    assert [one.rule for one in carried.times] == [rule.name for rule in WALKING_RULES]
    for number, total in enumerate(carried.times):
        each = [one.times[number].seconds for one in carried.legs]
        assert total.seconds == pytest.approx(sum(each))
    # A kilometre on the level: 12 min by Naismith, 20 min at 3 km/h.
    minutes = {one.rule: one.seconds / 60.0 for one in carried.legs[0].times}
    assert minutes["Naismith"] == pytest.approx(12.0, abs=0.001)
    assert minutes["3 km/h"] == pytest.approx(20.0, abs=0.001)


def test_heights_make_climb_and_time():
    one = carried_card(plan((A, B))).card.legs[0]
    along, _ = stations(one.line, 25.0)
    hill = profile(along, 300.0 + 0.1 * along, 2.0)
    carried = carried_card(plan((A, B)), grounds={"1": hill}, heights_from="hill.tif")
    assert (carried.climb_m, carried.descent_m) == pytest.approx((100.0, 0.0), abs=0.01)
    minutes = {each.rule: each.seconds / 60.0 for each in carried.times}
    assert minutes["Naismith"] == pytest.approx(12.0 + 10.0, abs=0.01)
    assert minutes["Tobler"] == pytest.approx(60.0 / 3.5493, abs=0.01)  # 3.5493 km/h at 1 in 10


def test_a_stated_distance_is_what_is_walked():
    carried = carried_card(plan((A, B), (leg(distance_m=1000.0, grid_azimuth=GridAzimuth(60.0)),)))
    assert carried.distance_m == 1000.0
    minutes = {one.rule: one.seconds / 60.0 for one in carried.times}
    assert minutes["3 km/h"] == pytest.approx(20.0)


def test_the_angles_age_is_known_where_the_plan_gives_its_date():
    old = plan((A, B), grid_magnetic_angle_deg=-5.0, grid_magnetic_angle_date=dt.date(2019, 10, 3))
    assert carried_card(old).angle_age_years == pytest.approx(7.0, abs=0.01)
    assert carried_card(plan((A, B), grid_magnetic_angle_deg=-5.0)).angle_age_years is None
    computed = carried_card(plan((A, B)))
    assert (computed.angle_date, computed.angle_age_years) == (DAY, 0.0)


def test_the_safety_bearing_gets_clicks_too():
    bound = plan((A, B), grid_magnetic_angle_deg=10.5, safety_azimuth=GridAzimuth(300.0))
    carried = carried_card(bound)
    assert carried.card.safety.magnetic == MagneticAzimuth(289.5)
    assert {one.azimuth.degrees for one in carried.safety_clicks} == {291.0, 288.0}


def test_references_are_those_of_the_map():
    (one,) = carried_card(plan((A, B))).legs
    grid = course_grid("EPSG:32616")
    for text, point in ((one.start_reference, one.card.start), (one.end_reference, one.card.end)):
        square = decode_mgrs(text)
        east, north = grid.to_grid(square.longitude_deg, square.latitude_deg)
        assert np.hypot(east - point.east_m, north - point.north_m) < 10.0  # within 10 m
    moor = (grid_point("A", 404_123.4, 412_731.9, "EPSG:27700"),
            grid_point("B", 404_900.0, 413_000.0, "EPSG:27700"))  # fmt: skip
    british = carried_card(plan(moor, grid="EPSG:27700")).legs[0]
    square = decode_national(british.start_reference, "EPSG:27700")
    assert (square.east_m, square.north_m) == (404_125.0, 412_735.0)


def test_the_angle_alone_misses_the_magnetic_azimuth_of_the_card():
    """Bug: it was set against the sum, 026.1, where the card has the 026.0 of its plan."""
    stated = leg(grid_azimuth=GridAzimuth(60.0), magnetic_azimuth=MagneticAzimuth(65.0))
    one, two = carried_card(plan((A, B), (stated,), grid_magnetic_angle_deg=-4.9)).angle_clicks
    assert (one.count, one.azimuth.degrees, one.error_deg) == (1, 63.0, pytest.approx(-2.0))
    assert (two.count, two.azimuth.degrees, two.error_deg) == (2, 66.0, pytest.approx(1.0))
