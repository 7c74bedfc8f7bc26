"""Eastings, northings, convergences and scale factors as survey offices printed them."""

from __future__ import annotations

import math

import pytest
from truth.check_values import CheckValue, check_values, degrees, each

from audit.geodesy.grids import CourseGrid, course_grid

ARCSEC = 1.0 / 3600.0


def bare_grid(definition: str) -> CourseGrid:
    """Give a grid whose degrees are on its own datum, as the examples have them."""
    return CourseGrid(
        code="example",
        name="example",
        datum_uncertainty_m=0.0,
        definition=f"{definition} +nadgrids=@null +type=crs",
    )


@each("utm_tm8358_2")
def test_utm_as_printed_in_dma_tm_8358_2(value: CheckValue) -> None:
    # DMA TM 8358.2 (1989) section 2-11: International ellipsoid, to 0.02 m and 0.01 arcsec.
    south = " +south" if float(value.given("lat")) < 0.0 else ""
    grid = bare_grid(f"+proj=utm +zone={value.given('zone')} +ellps=intl{south}")
    place = float(value.given("lon")), float(value.given("lat"))
    assert grid.to_grid(*place) == pytest.approx(
        (float(value.wanted("E")), float(value.wanted("N"))), abs=0.02
    )
    assert grid.convergence_deg(*place) == pytest.approx(
        float(value.wanted("conv")), abs=0.01 * ARCSEC
    )


def test_the_worked_sum_of_dma_tm_8358_2() -> None:
    # DMA TM 8358.2 section 4-7; central meridian 99 W.
    (value,) = check_values("utm_tm8358_2_sample")
    latitude_deg = degrees(value.given("lat"))
    longitude_deg = degrees(value.given("lon").partition(" (")[0])
    grid = bare_grid("+proj=utm +zone=14 +ellps=intl")
    assert grid.to_grid(longitude_deg, latitude_deg) == pytest.approx(
        (float(value.wanted("E")), float(value.wanted("N"))), abs=0.01
    )


@each("ups_tm8358_2")
def test_polar_grids_as_printed_in_dma_tm_8358_2(value: CheckValue) -> None:
    # DMA TM 8358.2 page 3-7. Its line 6 prints 135 E against the manual's own rule in 3-5.
    place = float(value.given("lon")), float(value.given("lat"))
    grid = course_grid("EPSG:32661" if place[1] > 0.0 else "EPSG:32761")
    assert grid.to_grid(*place) == pytest.approx(
        (float(value.wanted("E")), float(value.wanted("N"))), abs=0.02
    )
    assert grid.convergence_deg(*place) == pytest.approx(float(value.wanted("conv")), abs=1e-5)


def test_iogp_373_7_2_transverse_mercator() -> None:
    # IOGP Guidance Note 373-7-2 rounds the constants of the British grid: 0.01 m.
    (value,) = check_values("tm_gn7_2")
    (convergence,) = check_values("tm_gn7_2_convergence")
    grid = bare_grid(
        "+proj=tmerc +lat_0=49 +lon_0=-2 +k=0.9996012717 +x_0=400000 +y_0=-100000 +ellps=airy"
    )
    assert grid.to_grid(0.5, 50.5) == pytest.approx(
        (float(value.wanted("E")), float(value.wanted("N"))), abs=0.01
    )
    # Not printed there. Near the meridian it is atan(tan(difference of longitude) sin(latitude))
    # to the next order in the eccentricity, 0.0005 deg; PROJ alone to 0.0001.
    series_deg = math.degrees(math.atan(math.tan(math.radians(2.5)) * math.sin(math.radians(50.5))))
    assert grid.convergence_deg(0.5, 50.5) == pytest.approx(series_deg, abs=0.0005)
    assert grid.convergence_deg(0.5, 50.5) == pytest.approx(float(convergence.expected), abs=1e-4)


def test_the_worked_example_of_the_ordnance_survey_guide() -> None:
    # OS, A guide to coordinate systems in Great Britain, annexe C: 0.01 m.
    (value,) = check_values("tm_os_guide")
    (convergence,) = check_values("tm_os_guide_convergence")
    place = degrees(value.given("lon")), degrees(value.given("lat"))
    grid = bare_grid(
        "+proj=tmerc +lat_0=49 +lon_0=-2 +k=0.9996012717 +x_0=400000 +y_0=-100000 +ellps=airy"
    )
    expected = float(value.wanted("E")), float(value.wanted("N"))
    assert grid.to_grid(*place) == pytest.approx(expected, abs=0.01)
    assert grid.convergence_deg(*place) == pytest.approx(float(convergence.expected), abs=1e-4)
    # The shipped grid must have the same convergence there, by way of WGS 84.
    british = course_grid("EPSG:27700")
    assert british.convergence_deg(*british.to_geographic(*expected)) == pytest.approx(
        float(convergence.expected), abs=1e-5
    )


@each("utm_gda_manual")
def test_the_worked_examples_of_the_gda_manual(value: CheckValue) -> None:
    # GDA Technical Manual v2.4 (ICSM 2014): eastings, northings and convergence from memory,
    # confirmed by residuals under 1 mm. The manual's sign of convergence is the opposite one.
    grid = bare_grid("+proj=utm +zone=55 +south +ellps=GRS80")
    place = float(value.given("lon")), float(value.given("lat"))
    assert grid.to_grid(*place) == pytest.approx(
        (float(value.wanted("E")), float(value.wanted("N"))), abs=0.001
    )
    assert abs(grid.convergence_deg(*place)) == pytest.approx(
        float(value.wanted("|conv|")), abs=1e-6
    )


def test_sign_of_convergence_is_east_positive() -> None:
    # GeodePy's published test value, with the opposite sign of the GDA manual.
    (value,) = check_values("utm_convergence_sign")
    grid = bare_grid("+proj=utm +zone=55 +south +ellps=GRS80")
    place = degrees(value.given("lon")), degrees(value.given("lat"))
    assert grid.to_grid(*place) == pytest.approx(
        (float(value.wanted("E")), float(value.wanted("N"))), abs=1e-4
    )
    assert grid.convergence_deg(*place) == pytest.approx(
        -float(value.wanted("GDA sign conv")), abs=1e-8
    )


@each("gm_angle")
def test_convergence_agrees_with_geographiclib(value: CheckValue) -> None:
    # GeographicLib 2.1.2, GeoConvert -c: 0.00001 deg as written.
    latitude_deg, longitude_deg = float(value.given("lat")), float(value.given("lon"))
    zone = int(value.given("zone"))
    grid = course_grid(f"EPSG:{(32700 if latitude_deg < 0.0 else 32600) + zone}")
    assert grid.convergence_deg(longitude_deg, latitude_deg) == pytest.approx(
        float(value.wanted("conv")), abs=1e-5
    )


def test_scale_factor_on_the_central_meridian_is_that_of_utm() -> None:
    # DMA TM 8358.2, section 2-2: 0.9996; exact.
    assert course_grid("EPSG:32616").scale_factor(-87.0, 45.0) == pytest.approx(0.9996, abs=1e-9)


def test_scale_factor_of_the_polar_grid_at_its_pole() -> None:
    # DMA TM 8358.2, section 3-2: 0.994.
    assert course_grid("EPSG:32661").scale_factor(0.0, 90.0) == pytest.approx(0.994, abs=1e-9)
