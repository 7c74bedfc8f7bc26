"""Course grids: what they accept, what they refuse, and that they lead there and back."""

from __future__ import annotations

import math
import pickle
import re

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from audit.geodesy.geodesics import geodesic_between
from audit.geodesy.grids import course_grid
from audit.units import turn_degrees

METRE = 1.0
MILLIMETRE_DEG = 1e-8
"""One millimetre along a meridian, in degrees."""


@pytest.mark.parametrize(
    ("code", "name", "uncertainty_m"),
    [
        ("EPSG:32616", "UTM zone 16 north, WGS 84", 0.0),
        ("EPSG:32755", "UTM zone 55 south, WGS 84", 0.0),
        ("EPSG:32661", "UPS north, WGS 84", 0.0),
        ("EPSG:32761", "UPS south, WGS 84", 0.0),
        ("EPSG:25832", "UTM zone 32 north, ETRS89", 1.0),
    ],
)
def test_grids_have_plain_names_and_a_datum_uncertainty(
    code: str, name: str, uncertainty_m: float
) -> None:
    grid = course_grid(code)
    assert (grid.code, grid.name, grid.datum_uncertainty_m) == (code, name, uncertainty_m)


def test_without_its_shift_file_the_british_grid_is_good_to_metres() -> None:
    # PROJ: "OSGB36 to WGS 84 (6)" 2 m; with the OSTN15 file 1 m.
    assert course_grid("EPSG:27700").datum_uncertainty_m in {1.0, 2.0}


def test_codes_are_read_in_either_case() -> None:
    assert course_grid("epsg:32616") == course_grid(" EPSG:32616 ")


@pytest.mark.parametrize(
    ("code", "words"),
    [
        ("EPSG:99999", "not known"),
        ("16S", "no grid code"),
        ("", "no grid code"),
        ("+proj=utm +zone=16", "no grid code"),
        ("EPSG:4326", "no grid in metres"),
        ("EPSG:4978", "no grid in metres"),
        ("EPSG:2263", "US survey foot"),
        ("EPSG:2048", "west and south"),
        ("EPSG:7405", "heights"),
    ],
)
def test_a_code_that_is_no_course_grid_is_refused_in_one_sentence(code: str, words: str) -> None:
    with pytest.raises(ValueError, match=re.escape(words)) as refused:
        course_grid(code)
    assert "\n" not in str(refused.value)


@pytest.mark.parametrize(
    ("code", "place"),
    [
        ("EPSG:2193", (174.78, -41.29)),  # New Zealand: northing first in the register
        ("EPSG:31467", (9.0, 50.0)),  # Germany, DHDN: northing first
        ("EPSG:2180", (19.0, 52.0)),  # Poland: northing first
        ("EPSG:32632", (9.0, 50.0)),
    ],
)
def test_east_comes_first_whatever_the_register_says(code: str, place: tuple[float, float]) -> None:
    grid = course_grid(code)
    east_m, north_m = grid.to_grid(*place)
    moved_east = grid.to_grid(place[0] + 0.01, place[1])
    moved_north = grid.to_grid(place[0], place[1] + 0.01)
    assert moved_east[0] - east_m > 500.0 * METRE
    assert abs(moved_east[1] - north_m) < 50.0 * METRE
    assert moved_north[1] - north_m > 1000.0 * METRE


@pytest.mark.parametrize(("north_first", "east_first"), [(32661, 5041), (32761, 5042)])
def test_both_registrations_of_the_polar_grids_are_the_same(
    north_first: int, east_first: int
) -> None:
    latitude_deg = 86.0 if north_first == 32661 else -86.0
    # EPSG:32661 and 32761 are defined northing first, 5041 and 5042 easting first.
    one, other = course_grid(f"EPSG:{north_first}"), course_grid(f"EPSG:{east_first}")
    assert one.to_grid(70.0, latitude_deg) == other.to_grid(70.0, latitude_deg)


def test_east_of_the_pole_is_right_of_the_greenwich_meridian() -> None:
    # DMA TM 8358.2, section 3-3: 90 E has greater eastings, 180 E greater northings in the north.
    grid = course_grid("EPSG:32661")
    assert grid.to_grid(90.0, 88.0)[0] > 2_000_000.0 * METRE
    assert grid.to_grid(180.0, 88.0)[1] > 2_000_000.0 * METRE


@settings(max_examples=150, deadline=None)
@given(st.floats(-180.0, 180.0), st.floats(-79.9, 84.0), st.integers(-8, 8))
def test_utm_leads_there_and_back(longitude_deg: float, latitude_deg: float, aside: int) -> None:
    zone = int((longitude_deg + 180.0 + aside) // 6.0) % 60 + 1
    grid = course_grid(f"EPSG:{32600 + zone}")
    back = grid.to_geographic(*grid.to_grid(longitude_deg, latitude_deg))
    # 1 mm along the meridian; the same across it, which needs more degrees near the pole.
    assert back[1] == pytest.approx(latitude_deg, abs=MILLIMETRE_DEG)
    across = abs(turn_degrees(longitude_deg, back[0])) * math.cos(math.radians(latitude_deg))
    assert across < MILLIMETRE_DEG
    assert -180.0 <= back[0] <= 180.0


@pytest.mark.parametrize("code", ["EPSG:27700", "EPSG:29903", "EPSG:26716", "EPSG:2056"])
def test_datum_steps_lead_there_and_back(code: str) -> None:
    places = {
        "EPSG:27700": (-3.0, 54.5),
        "EPSG:29903": (-8.0, 53.0),
        "EPSG:26716": (-85.0, 32.4),
        "EPSG:2056": (8.0, 47.0),
    }
    grid = course_grid(code)
    back = grid.to_geographic(*grid.to_grid(*places[code]))
    # The seven-parameter step is not its own inverse to the last digit: 5 mm.
    assert back == pytest.approx(places[code], abs=5 * MILLIMETRE_DEG)


@pytest.mark.parametrize(
    ("code", "west", "east"),
    [
        ("EPSG:32660", (179.99, 10.0), (-179.99, 10.0)),
        ("EPSG:32701", (179.99, -17.0), (-179.99, -17.0)),
    ],
)
def test_the_date_line_is_no_edge(
    code: str, west: tuple[float, float], east: tuple[float, float]
) -> None:
    grid = course_grid(code)
    from_m, to_m = grid.to_grid(*west), grid.to_grid(*east)
    apart_m = geodesic_between(*west, *east).distance_m
    assert math.dist(from_m, to_m) == pytest.approx(apart_m, rel=0.0015)
    assert grid.to_geographic(*from_m)[0] == pytest.approx(179.99, abs=MILLIMETRE_DEG)
    assert grid.to_geographic(*to_m)[0] == pytest.approx(-179.99, abs=MILLIMETRE_DEG)
    longitudes, _ = grid.to_geographic(
        np.array([from_m[0], to_m[0]]), np.array([from_m[1], to_m[1]])
    )
    assert longitudes == pytest.approx(np.array([179.99, -179.99]), abs=MILLIMETRE_DEG)


def test_arrays_give_what_single_places_give() -> None:
    grid = course_grid("EPSG:32616")
    longitudes, latitudes = np.array([-84.9, -85.1, -87.0]), np.array([32.0, 33.0, 45.0])
    east, north = grid.to_grid(longitudes, latitudes)
    single = [grid.to_grid(float(x), float(y)) for x, y in zip(longitudes, latitudes, strict=True)]
    assert list(zip(east, north, strict=True)) == single
    back = grid.to_geographic(east, north)
    assert back[0] == pytest.approx(longitudes, abs=MILLIMETRE_DEG)
    assert back[1] == pytest.approx(latitudes, abs=MILLIMETRE_DEG)


def test_a_mad_fix_becomes_nan_and_the_others_stay() -> None:
    grid = course_grid("EPSG:32616")
    east, north = grid.to_grid(np.array([-84.9, 0.0]), np.array([32.0, 0.0]))
    assert np.isfinite([east[0], north[0]]).all()
    assert np.isnan([east[1], north[1]]).all()


def test_a_single_place_out_of_reach_is_refused() -> None:
    with pytest.raises(ValueError, match="beyond the reach of the grid EPSG:32616"):
        course_grid("EPSG:32616").to_grid(0.0, 0.0)
    with pytest.raises(ValueError, match="no place on the grid EPSG:32616"):
        course_grid("EPSG:32616").to_geographic(1e9, 1e9)


@settings(max_examples=60, deadline=None)
@given(st.floats(-90.0, -84.0), st.floats(-70.0, 75.0))
def test_convergence_is_the_direction_of_a_step_along_the_meridian(
    longitude_deg: float, latitude_deg: float
) -> None:
    # True north seen on the grid is -C: by finite difference, 0.001 deg.
    grid = course_grid("EPSG:32616")
    here = grid.to_grid(longitude_deg, latitude_deg)
    there = grid.to_grid(longitude_deg, latitude_deg + 1e-4)
    seen_deg = math.degrees(math.atan2(there[0] - here[0], there[1] - here[1]))
    assert -seen_deg == pytest.approx(grid.convergence_deg(longitude_deg, latitude_deg), abs=0.001)


def test_convergence_at_the_pole_is_that_of_the_meridian_asked_for() -> None:
    grid = course_grid("EPSG:32661")
    assert grid.convergence_deg(45.0, 90.0) == pytest.approx(45.0, abs=1e-9)
    assert course_grid("EPSG:32761").convergence_deg(45.0, -90.0) == pytest.approx(-45.0, abs=1e-9)


@pytest.mark.parametrize(
    ("code", "place", "outside_deg"),
    [
        # The areas that the EPSG register gives.
        ("EPSG:32616", (-87.0, 45.0), 0.0),
        ("EPSG:32616", (-83.0, 45.0), 1.0),
        ("EPSG:32616", (-87.0, -2.0), 2.0),
        ("EPSG:32660", (-179.0, 10.0), 1.0),
        ("EPSG:32601", (179.0, 10.0), 1.0),
        ("EPSG:32661", (123.0, 85.0), 0.0),
        ("EPSG:32661", (123.0, 55.0), 5.0),
        ("EPSG:3832", (-150.0, 0.0), 0.0),  # an area across the date line
        ("EPSG:3832", (98.69, 10.0), 0.0),
        ("EPSG:3832", (97.69, 10.0), 1.0),
        ("EPSG:3832", (-67.0, 10.0), 1.0),
        ("EPSG:3832", (97.69, -63.0), 3.0),  # the farther of the two ways out
        ("EPSG:32616", (-82.0, 85.0), 2.0),
    ],
)
def test_how_far_outside_its_area_a_place_lies(
    code: str, place: tuple[float, float], outside_deg: float
) -> None:
    assert course_grid(code).degrees_outside(*place) == pytest.approx(outside_deg, abs=1e-9)


def test_a_grid_can_be_sent_to_another_process() -> None:
    grid = course_grid("EPSG:27700")
    sent = pickle.loads(pickle.dumps(grid))  # noqa: S301
    assert sent == grid
    assert sent.to_grid(-3.0, 54.5) == grid.to_grid(-3.0, 54.5)


def test_no_grid_file_is_ever_fetched() -> None:
    from pyproj import network

    assert network.is_network_enabled() is False


@pytest.mark.parametrize("places", [1, 2])
def test_an_array_stays_an_array_however_short(places):
    grid = course_grid("EPSG:32616")
    longitude, latitude = np.full(places, -84.2), np.full(places, 36.5)
    east, north = grid.to_grid(longitude, latitude)
    assert east.shape == north.shape == (places,)
    assert (east[0], north[0]) == grid.to_grid(-84.2, 36.5)
    back = grid.to_geographic(east, north)
    assert [one.shape for one in back] == [(places,), (places,)]
    assert np.allclose(back, [longitude, latitude], atol=1e-9)
