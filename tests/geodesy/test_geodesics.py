"""Geodesics against published lines and against GeographicLib's own code."""

from __future__ import annotations

import pytest
from geographiclib.geodesic import Geodesic as Reference
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from truth.check_values import CheckValue, check_values, degrees, each

from audit.azimuths import TrueAzimuth
from audit.geodesy.geodesics import geodesic_between
from audit.units import turn_degrees

MICROMETRE = 1e-6
ARCSEC = 1.0 / 3600.0


def wrapped(longitude_deg: float) -> float:
    return turn_degrees(0.0, longitude_deg)


@each("geodesic_karney")
def test_lines_of_the_geographiclib_test_set(value: CheckValue) -> None:
    # doi:10.5281/zenodo.32156 and the rows that GeographicLib ships; 1 micrometre, 1e-10 deg.
    line = geodesic_between(
        wrapped(float(value.given("lon1"))),
        float(value.given("lat1")),
        wrapped(float(value.given("lon2"))),
        float(value.given("lat2")),
    )
    assert line.distance_m == pytest.approx(float(value.wanted("s12")), abs=MICROMETRE)
    for azimuth, name in ((line.start_azimuth, "azi1"), (line.end_azimuth, "azi2")):
        off_deg = azimuth.turn_to(TrueAzimuth(float(value.wanted(name))))
        assert off_deg == pytest.approx(0.0, abs=1e-10)


@each("geodesic_vincenty")
def test_the_five_lines_of_vincenty(value: CheckValue) -> None:
    # Vincenty 1975, table II: from memory, confirmed to his own rounding (1 mm, 0.002 arcsec).
    ellipsoid = value.given("ellps")
    line = geodesic_between(
        0.0,
        float(value.given("lat1")),
        float(value.given("dlon")),
        float(value.given("lat2")),
        ellipsoid=ellipsoid,
    )
    # The table prints the second line's length to a millimetre and the first's to a centimetre.
    tolerance_m = 0.006 if value.inputs.startswith("line a") else 0.001
    assert line.distance_m == pytest.approx(float(value.wanted("s")), abs=tolerance_m)
    for azimuth, name in ((line.start_azimuth, "azi1"), (line.end_azimuth, "azi2")):
        off_deg = azimuth.turn_to(TrueAzimuth(float(value.wanted(name))))
        assert off_deg == pytest.approx(0.0, abs=0.002 * ARCSEC)


def test_the_worked_line_of_the_gda_manual() -> None:
    # GDA Technical Manual (ICSM): Flinders Peak to Buninyong, 0.001 m and 0.005 arcsec.
    (value,) = check_values("geodesic_gda")
    line = geodesic_between(
        degrees("144 25 29.52440"),
        degrees("-37 57 03.72030"),
        degrees("143 55 35.38390"),
        degrees("-37 39 10.15610"),
        ellipsoid="GRS80",
    )
    assert line.distance_m == pytest.approx(float(value.wanted("s")), abs=0.001)
    forth, back = degrees(value.wanted("azi12")), degrees(value.wanted("azi21"))
    assert line.start_azimuth.degrees == pytest.approx(forth, abs=0.005 * ARCSEC)
    assert line.end_azimuth.back().degrees == pytest.approx(back, abs=0.005 * ARCSEC)


def test_the_first_line_of_the_geodsolve_tests() -> None:
    (value,) = check_values("geodesic_geodsolve")
    line = geodesic_between(-73.8, 40.6, 2.55, 49.01666667)
    assert line.distance_m == pytest.approx(float(value.wanted("s12")), abs=0.5)
    assert line.start_azimuth.degrees == pytest.approx(float(value.wanted("azi1")), abs=0.5e-5)
    assert line.end_azimuth.degrees == pytest.approx(float(value.wanted("azi2")), abs=0.5e-5)


@settings(max_examples=150, deadline=None)
@given(st.floats(-180.0, 180.0), st.floats(-89.0, 89.0), st.floats(-0.5, 0.5), st.floats(-0.5, 0.5))
def test_short_lines_agree_with_geographiclib(
    longitude_deg: float, latitude_deg: float, d_longitude: float, d_latitude: float
) -> None:
    # Legs are short; the Python code of GeographicLib is a separate one. 1 micrometre.
    to = wrapped(longitude_deg + d_longitude), latitude_deg + d_latitude
    assume(abs(to[1]) < 90.0)
    line = geodesic_between(longitude_deg, latitude_deg, *to)
    reference = Reference.WGS84.Inverse(latitude_deg, longitude_deg, to[1], to[0])
    assert line.distance_m == pytest.approx(reference["s12"], abs=MICROMETRE)
    if line.distance_m > 1.0:
        sideways_m = line.distance_m * abs(
            line.start_azimuth.turn_to(TrueAzimuth(reference["azi1"]))
        )
        assert sideways_m < 1e-4  # metre degrees: under two micrometres sideways


def test_a_place_and_itself_are_no_distance_apart() -> None:
    assert geodesic_between(10.0, 50.0, 10.0, 50.0).distance_m == 0.0


@pytest.mark.parametrize("place", [(181.0, 0.0), (0.0, 91.0)])
def test_degrees_out_of_range_are_refused(place: tuple[float, float]) -> None:
    with pytest.raises(ValueError, match="out of range"):
        geodesic_between(*place, 0.0, 0.0)
    with pytest.raises(ValueError, match="out of range"):
        geodesic_between(0.0, 0.0, *place)


def test_the_grid_bearing_of_the_gda_line() -> None:
    # GDA Technical Manual: plane bearing 305.289218 and distance 54992.279 m between the printed
    # coordinates; the true azimuth less the convergence differs by the arc-to-chord correction.
    from audit.geodesy.grids import course_grid
    from audit.units import direction_degrees

    (value,) = check_values("grid_bearing_gda")
    east_m, north_m = 228_854.052 - 273_741.297, 5_828_259.038 - 5_796_489.777
    bearing_deg = direction_degrees(east_m, north_m)
    assert bearing_deg == pytest.approx(float(value.wanted("plane bearing")), abs=1e-6)
    grid = course_grid("EPSG:28355")
    flinders = grid.to_geographic(273_741.297, 5_796_489.777)
    buninyong = grid.to_geographic(228_854.052, 5_828_259.038)
    true_deg = geodesic_between(*flinders, *buninyong).start_azimuth.degrees
    from_true_deg = true_deg - grid.convergence_deg(*flinders)
    # 19.46 arcsec over 55 km, as the table of the manual has it; 0.1 arcsec.
    assert (bearing_deg - from_true_deg) / ARCSEC == pytest.approx(19.46, abs=0.1)
