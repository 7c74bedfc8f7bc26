"""The leg card worked out: angles, ends, azimuths, distances, paces."""

from __future__ import annotations

import datetime as dt
import math

import numpy as np
import pytest
from geographiclib.geodesic import Geodesic
from hypothesis import given, settings
from hypothesis import strategies as st
from leg_card.plans import DAY, A, B, grid_point, leg, mgrs_point, place, plan
from truth.check_values import CheckValue, check_values, each

from audit.azimuths import GridAzimuth, MagneticAzimuth, TrueAzimuth
from audit.geodesy.grids import course_grid
from audit.leg_card import CardLeg, work_out_card
from audit.units import turn_degrees

GEODESIC = Geodesic.WGS84
ARC_TO_CHORD_DEG = 0.02
"""A straight line on a grid is not quite a geodesic: 19 arcsec on 55 km (GDA manual)."""


def against_geographiclib(worked: CardLeg, code: str) -> None:
    """Check a leg's true azimuth and ground distance by a program that knows no grids."""
    start, end, grid = worked.start, worked.end, course_grid(code)
    line = GEODESIC.Inverse(
        start.latitude_deg, start.longitude_deg, end.latitude_deg, end.longitude_deg
    )
    scale = grid.scale_factor(
        (start.longitude_deg + turn_degrees(start.longitude_deg, end.longitude_deg) / 2.0 + 180.0)
        % 360.0
        - 180.0,
        (start.latitude_deg + end.latitude_deg) / 2.0,
    )
    assert worked.distance_m / scale == pytest.approx(line["s12"], rel=2e-6)
    convergence_deg = grid.convergence_deg(start.longitude_deg, start.latitude_deg)
    true = TrueAzimuth(worked.azimuth.degrees + convergence_deg)
    assert true.turn_to(TrueAzimuth(line["azi1"])) == pytest.approx(0.0, abs=ARC_TO_CHORD_DEG)


@each("gm_angle")
def test_grid_magnetic_angle_of_a_day(value: CheckValue) -> None:
    # Convergence by pyproj and GeographicLib, declination by two programs: 0.001 deg.
    longitude_deg, latitude_deg = float(value.given("lon")), float(value.given("lat"))
    points = (
        place("A", longitude_deg, latitude_deg),
        place("B", longitude_deg + 0.005, latitude_deg),
    )
    card = work_out_card(plan(points, date=dt.date.fromisoformat(value.given("date"))))
    assert card.angles.grid_magnetic_angle_deg == pytest.approx(
        float(value.wanted("GM")), abs=0.001
    )
    assert card.angles.convergence_deg == pytest.approx(float(value.wanted("conv")), abs=0.001)
    assert card.declination_deg == pytest.approx(float(value.wanted("D")), abs=0.001)
    assert card.angle_source == "model"
    assert card.model_grid_magnetic_angle_deg == card.angles.grid_magnetic_angle_deg


def test_a_leg_worked_by_hand() -> None:
    # Plane trigonometry: 1000 m on 060 is 866.03 m east and 500 m north. G 7 west: add 7.
    card = work_out_card(plan((A, B), grid_magnetic_angle_deg=-7.0, paces_per_100m=65.0))
    (worked,) = card.legs
    assert worked.azimuth.degrees == pytest.approx(60.0, abs=1e-6)
    assert worked.magnetic.degrees == pytest.approx(67.0, abs=1e-6)
    assert worked.true.degrees == pytest.approx(60.0 + card.angles.convergence_deg, abs=1e-6)
    assert worked.distance_m == pytest.approx(1000.0, abs=0.001)
    assert worked.paces == pytest.approx(650.0, abs=0.001)
    assert worked.line == pytest.approx(
        np.array([[700_000.0, 3_580_000.0], [700_866.0254, 3_580_500.0]]), abs=0.001
    )
    assert not worked.line.flags.writeable
    assert card.findings == ()
    assert card.angle_source == "plan"
    assert (card.date, card.date_source) == (DAY, "plan")


def test_the_course_of_the_manual() -> None:
    # The leg of our own format's example, all of whose numbers agree.
    points = (mgrs_point("Start", "16S GF 4182 4279"), mgrs_point("Post 7", "16S GF 4265 4312"))
    stated = leg(
        start="Start",
        end="Post 7",
        grid_azimuth=GridAzimuth(68.3),
        magnetic_azimuth=MagneticAzimuth(75.3),
        distance_m=893.0,
        paces=580.0,
    )
    card = work_out_card(plan(points, (stated,), grid_magnetic_angle_deg=-7.0, paces_per_100m=65.0))
    assert card.findings == ()
    assert [point.half_square_m for point in card.points] == [5.0, 5.0]
    # 830 m east and 330 m north.
    assert math.hypot(830.0, 330.0) == pytest.approx(893.2, abs=0.05)


def test_what_the_plan_states_is_what_the_card_says() -> None:
    stated = leg(
        grid_azimuth=GridAzimuth(61.0),
        magnetic_azimuth=MagneticAzimuth(54.0),
        true_azimuth=TrueAzimuth(62.0),
        distance_m=990.0,
        paces=700.0,
        note="stream on the left",
    )
    card = work_out_card(plan((A, B), (stated,), grid_magnetic_angle_deg=-7.0, paces_per_100m=65.0))
    (worked,) = card.legs
    assert worked.azimuth == GridAzimuth(61.0)
    assert worked.magnetic == MagneticAzimuth(54.0)
    assert worked.true == TrueAzimuth(62.0)
    assert (worked.distance_m, worked.paces) == (990.0, 700.0)
    assert worked.note == "stream on the left"


@pytest.mark.parametrize(
    ("values", "grid_deg"),
    [
        ({"grid_azimuth": GridAzimuth(50.0), "magnetic_azimuth": MagneticAzimuth(1.0)}, 50.0),
        ({"magnetic_azimuth": MagneticAzimuth(67.0), "true_azimuth": TrueAzimuth(1.0)}, 60.0),
        ({"magnetic_azimuth": MagneticAzimuth(2.0)}, 355.0),
    ],
)
def test_grid_leads_magnetic_and_magnetic_leads_true(
    values: dict[str, object], grid_deg: float
) -> None:
    card = work_out_card(plan((A, B), (leg(**values),), grid_magnetic_angle_deg=-7.0))
    assert card.legs[0].azimuth.degrees == pytest.approx(grid_deg, abs=1e-9)


def test_a_true_azimuth_loses_the_convergence() -> None:
    card = work_out_card(plan((A, B), (leg(true_azimuth=TrueAzimuth(60.0)),)))
    assert card.angles.convergence_deg > 1.0
    assert card.legs[0].azimuth.degrees == pytest.approx(
        60.0 - card.angles.convergence_deg, abs=1e-9
    )


def test_paces_at_the_walkers_rate() -> None:
    # 195 paces at 65 per 100 m are 300 m (exercise on TC 3-25.26).
    (value,) = [row for row in check_values("doctrine") if row.inputs.startswith("195 paces")]
    reckoned = leg(end="", grid_azimuth=GridAzimuth(0.0), paces=195.0)
    card = work_out_card(plan((A,), (reckoned,), paces_per_100m=65.0))
    assert card.legs[0].distance_m == pytest.approx(float(value.expected), abs=1e-9)
    assert any("its paces stand for 300 m" in note for note in card.notes)


def test_without_a_rate_there_are_no_paces() -> None:
    assert work_out_card(plan((A, B))).legs[0].paces is None


def test_dead_reckoned_ends_follow_one_another() -> None:
    legs = (
        leg("1", "A", "one", grid_azimuth=GridAzimuth(90.0), distance_m=400.0),
        leg("2", "one", "two", magnetic_azimuth=MagneticAzimuth(7.0), distance_m=300.0),
        leg("3", "two", "A"),
    )
    card = work_out_card(plan((A,), legs, grid_magnetic_angle_deg=-7.0))
    one, two = card.points[1:]
    assert [point.name for point in card.points] == ["A", "one", "two"]
    assert [point.dead_reckoned for point in card.points] == [False, True, True]
    assert (one.east_m, one.north_m) == pytest.approx((700_400.0, 3_580_000.0), abs=0.001)
    assert (two.east_m, two.north_m) == pytest.approx((700_400.0, 3_580_300.0), abs=0.001)
    # Home by Pythagoras: 500 m.
    assert card.legs[2].distance_m == pytest.approx(500.0, abs=0.001)
    assert card.findings == ()


def test_an_end_without_a_name_is_called_after_its_leg() -> None:
    legs = (
        leg("red", "A", "", grid_azimuth=GridAzimuth(90.0), distance_m=400.0),
        leg("blue", "end of leg red", "A"),
    )
    card = work_out_card(plan((A,), legs))
    assert card.legs[1].azimuth.degrees == pytest.approx(270.0, abs=1e-6)


@settings(max_examples=60, deadline=None)
@given(
    st.floats(-179.9, 179.9), st.floats(-75.0, 75.0), st.floats(0.0, 359.9), st.floats(50.0, 5e3)
)
def test_dead_reckoning_agrees_with_geographiclib(
    longitude_deg: float, latitude_deg: float, azimuth_deg: float, distance_m: float
) -> None:
    # To 0.02 deg and to the change of scale over the leg.
    reckoned = leg(end="B", grid_azimuth=GridAzimuth(azimuth_deg), distance_m=distance_m)
    card = work_out_card(plan((place("A", longitude_deg, latitude_deg),), (reckoned,)))
    against_geographiclib(card.legs[0], card.grid.code)


@pytest.mark.parametrize(
    ("name", "start", "end"),
    [
        ("across a zone's edge", (-84.01, 32.35), (-83.99, 32.36)),
        ("across the equator", (36.82, 0.005), (36.83, -0.005)),
        ("across the date line, eastward", (179.99, -17.0), (-179.99, -17.01)),
        ("across the date line, westward", (-179.99, 52.0), (179.99, 52.01)),
        ("at 70 north", (18.96, 70.0), (19.0, 70.01)),
        ("in Svalbard's wide zone", (15.65, 78.22), (15.7, 78.23)),
        ("at 85 north", (40.0, 85.0), (40.2, 85.01)),
        ("at 85 south", (-60.0, -85.0), (-60.2, -85.01)),
        ("over the pole", (0.0, 89.99), (180.0, 89.99)),
        ("in western Norway", (5.32, 60.39), (5.34, 60.38)),
    ],
)
def test_courses_at_the_edges_of_the_map(
    name: str, start: tuple[float, float], end: tuple[float, float]
) -> None:
    assert name
    card = work_out_card(plan((place("A", *start), place("B", *end))))
    against_geographiclib(card.legs[0], card.grid.code)
    assert card.legs[0].distance_m < 5_000.0
    assert card.findings == ()


def test_the_grid_of_the_first_point_serves_the_whole_course() -> None:
    points = (place("A", -84.01, 32.35), place("B", -83.99, 32.36))
    card = work_out_card(plan(points))
    assert card.grid.code == "EPSG:32616"
    back = course_grid("EPSG:32616").to_geographic(card.points[1].east_m, card.points[1].north_m)
    assert back == pytest.approx((-83.99, 32.36), abs=1e-9)


def test_a_leg_along_a_line_is_as_long_as_the_line() -> None:
    corner = grid_point("corner", 700_866.0254, 3_580_000.0).position
    card = work_out_card(plan((A, B), (leg(via=(corner,)),)))
    (worked,) = card.legs
    assert worked.distance_m == pytest.approx(866.0254 + 500.0, abs=0.001)
    assert worked.azimuth.degrees == pytest.approx(60.0, abs=1e-6)
    assert worked.line.shape == (3, 2)


def test_a_loop_has_the_length_of_its_line_and_the_azimuth_it_is_given() -> None:
    away = grid_point("away", 700_000.0, 3_580_400.0).position
    card = work_out_card(plan((A,), (leg(end="A", via=(away,), grid_azimuth=GridAzimuth(0.0)),)))
    assert card.legs[0].distance_m == pytest.approx(800.0, abs=0.001)


def test_the_british_grid() -> None:
    # Same leg on EPSG:27700: 100 m per 0.001 of easting; exact plane trigonometry.
    points = (
        grid_point("A", 216_650.0, 771_250.0, "EPSG:27700"),
        grid_point("B", 216_650.0, 772_250.0, "EPSG:27700"),
    )
    card = work_out_card(plan(points, grid="EPSG:27700"))
    assert card.legs[0].azimuth.turn_to(GridAzimuth(0.0)) == pytest.approx(0.0, abs=1e-6)
    assert card.legs[0].distance_m == pytest.approx(1000.0, abs=0.001)
    assert any("uncertain" in note for note in card.notes)


def test_the_same_plan_gives_the_same_card() -> None:
    assert repr(work_out_card(plan((A, B)))) == repr(work_out_card(plan((A, B))))
