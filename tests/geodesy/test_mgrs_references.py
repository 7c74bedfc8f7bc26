"""MGRS references against the published ones, and what is refused."""

from __future__ import annotations

import re

import mgrs
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from truth.check_values import CheckValue, each

from audit.geodesy.geodesics import geodesic_between
from audit.geodesy.grids import course_grid
from audit.geodesy.mgrs_references import decode_mgrs, encode_mgrs


def encoded(value: CheckValue) -> str:
    digits = 2 * int(value.given("precision"))
    return encode_mgrs(float(value.given("lon")), float(value.given("lat")), digits=digits)


@each("mgrs_fgdc")
def test_every_precision_as_in_the_us_national_grid_standard(value: CheckValue) -> None:
    # FGDC-STD-011-2001, section 5.2.2 and table 1 (the shortest two by its truncation rule).
    assert encoded(value).replace(" ", "") == value.expected


@each("mgrs_nga")
def test_references_of_nga(value: CheckValue) -> None:
    # Test values of NGA's own MGRS library.
    assert encoded(value).replace(" ", "") == value.expected


@each("mgrs_cross")
def test_norway_svalbard_and_the_poles_as_geographiclib_has_them(value: CheckValue) -> None:
    # GeographicLib 2.1.2, GeoConvert -m.
    assert encoded(value).replace(" ", "") == value.expected


@each("mgrs_cross")
def test_the_place_lies_in_the_square_that_names_it(value: CheckValue) -> None:
    place = float(value.given("lon")), float(value.given("lat"))
    square = decode_mgrs(value.expected)
    centre = square.longitude_deg, square.latitude_deg
    assert square.half_square_m == 0.5
    # Half a diagonal of a 1 m square, and a little for the scale of the grid.
    assert geodesic_between(*place, *centre).distance_m < 0.72


@each("mgrs_inverse_centre")
def test_trap_1_the_inverse_gives_the_centre_of_the_square(value: CheckValue) -> None:
    # mgrs 1.5 and older gave the south-west corner: 50 m and more off. 0.01 m.
    square = decode_mgrs(value.inputs)
    east_m, north_m = course_grid(square.grid_code).to_grid(
        square.longitude_deg, square.latitude_deg
    )
    assert east_m == pytest.approx(float(value.wanted("E")), abs=0.01)
    assert north_m == pytest.approx(float(value.wanted("N")), abs=0.01)
    digits = len(value.inputs) - len("18SUJ")
    assert (
        square.half_square_m
        == {10: 0.5, 8: 5.0, 6: 50.0, 4: 500.0, 2: 5_000.0, 0: 50_000.0}[digits]
    )


def test_trap_1_the_installed_library_is_one_that_gives_centres() -> None:
    # The bare library, so that a change of its convention shows as what it is.
    zone, hemisphere, east_m, north_m = mgrs.MGRS().MGRSToUTM("18SUJ2306")
    assert (int(zone), str(hemisphere)) == (18, "N")
    assert (east_m, north_m) == pytest.approx((323_500.0, 4_306_500.0), abs=0.01)


def test_geographiclib_manual_square() -> None:
    # GeoConvert manual page: 38SMB4488 has its centre at 444500 3688500 in zone 38n; 0.01 m.
    square = decode_mgrs("38SMB4488")
    assert square.grid_code == "EPSG:32638"
    assert course_grid(square.grid_code).to_grid(
        square.longitude_deg, square.latitude_deg
    ) == pytest.approx((444_500.0, 3_688_500.0), abs=0.01)


def test_references_are_written_with_spaces_and_without_leading_zero() -> None:
    assert encode_mgrs(-157.916861, 21.309444, digits=8) == "4Q FJ 1234 5678"
    assert encode_mgrs(0.0, 85.0, digits=10) == "Z AB 00000 44542"
    assert encode_mgrs(-77.0352402156242, 38.889467309501576, digits=0) == "18S UJ"


@pytest.mark.parametrize(
    "text",
    [
        "18SUJ2348306479",
        "18S UJ 23483 06479",
        "18s uj 23483 06479",
        "  18SUJ 23483\t06479\n",
        "18 S UJ 2348306479",
    ],
)
def test_spaces_and_case_do_not_matter(text: str) -> None:
    assert decode_mgrs(text) == decode_mgrs("18SUJ2348306479")


def test_a_leading_zero_of_the_zone_does_not_matter() -> None:
    assert decode_mgrs("04QFJ12345678") == decode_mgrs("4QFJ12345678")


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("18SUJ2306", "EPSG:32618"),
        ("56HLH3450", "EPSG:32756"),
        ("31MAV6699", "EPSG:32731"),
        ("31NAA6600", "EPSG:32631"),
        ("ZAB0044", "EPSG:32661"),
        ("BAN0000", "EPSG:32761"),
    ],
)
def test_the_grid_is_the_one_the_reference_is_drawn_on(text: str, code: str) -> None:
    assert decode_mgrs(text).grid_code == code


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "no MGRS reference"),
        ("Start", "no MGRS reference"),
        ("18S", "no MGRS reference"),
        ("-18S UJ 23 06", "no MGRS reference"),
        ("18S UJ 23.4 06.4", "no MGRS reference"),
        ("18S UJ 234,064", "no MGRS reference"),
        ("１８SUJ2306", "no MGRS reference"),
        ("UJ 234 064", "lacks its grid zone"),
        ("18S UJ 234 06", "3 and 2 digits"),
        # As a whole an even count: run together it would silently read 2340 6479.
        ("18S UJ 234 06479", "3 and 5 digits"),
        ("18SUJ234", "3 digits"),
        ("18S UJ 2340647912345678", "16 digits"),
        ("18S UJ 23 48 30 64", "4 groups"),
        ("61S UJ 23 06", '"61S UJ 23 06": 61 is no UTM zone'),
        ("0S UJ 23 06", '"0S UJ 23 06": 0 is no UTM zone'),
        ("18I UJ 23 06", "I is no band"),
        ("18A UJ 23 06", "A is no band"),
        ("S UJ 23 06", "S is no band"),
        ("18S IJ 23 06", "never lettered I or O"),
        ("18S UJ 23 O6", "no MGRS reference"),
        ("18S ZZ 23 06", "no square ZZ"),
        ("31V FN 23 06", "no square FN"),
        ("34X AB 23 06", "names no place"),
        ("32X MG 23 06", "names no place"),
        # The bare library answers these, with a warning that nobody sees.
        ("18R UJ 23 06", "band R (24 N to 32 N) has none with these letters"),
        ("16T GF 4182 4279", "band T (40 N to 48 N) has none with these letters"),
    ],
)
def test_nonsense_is_refused_in_one_sentence(text: str, words: str) -> None:
    with pytest.raises(ValueError, match=re.escape(words)) as refused:
        decode_mgrs(text)
    assert "\n" not in str(refused.value).replace(text, "")


@pytest.mark.parametrize(
    ("reference", "latitude_deg"),
    # 40 N is the edge of bands S and T: the square that it cuts may be named with either.
    [("18S VK 5 2", 40.0), ("18T VK 5 2", 40.0)],
)
def test_a_square_on_the_edge_of_two_bands_has_both_letters(
    reference: str, latitude_deg: float
) -> None:
    square = decode_mgrs(reference)
    half_deg = square.half_square_m / 111_000.0
    assert abs(square.latitude_deg - latitude_deg) < half_deg * 1.5


@pytest.mark.parametrize("digits", [-2, 1, 3, 11, 12])
def test_only_even_digits_up_to_ten_are_written(digits: int) -> None:
    with pytest.raises(ValueError, match="digits"):
        encode_mgrs(0.0, 0.0, digits=digits)


@pytest.mark.parametrize("place", [(181.0, 0.0), (0.0, 90.1), (float("nan"), 0.0)])
def test_places_out_of_range_are_refused(place: tuple[float, float]) -> None:
    # The bare library wraps 181 round the Earth.
    with pytest.raises(ValueError, match="out of range"):
        encode_mgrs(*place, digits=8)


def near(edges: list[int]) -> st.SearchStrategy[float]:
    """Give degrees that lie a hair, or up to a degree, on either side of an edge."""
    return st.builds(
        lambda edge, side, size: max(-180.0, min(180.0, edge + side * 10.0**size)),
        st.sampled_from(edges),
        st.sampled_from([-1, 1]),
        st.floats(-14.0, 0.0),
    )


@pytest.mark.parametrize(
    ("longitude_deg", "latitude_deg", "reference"),
    [
        # The bare library answers 31M AA and 31V EC, which it then refuses to read.
        (0.0, -1e-9, "31N AA 66021 00000"),
        (2.9999999999993197, 56.00060521213398, "32V JH 26"),
    ],
)
def test_a_hair_from_an_edge_the_square_still_exists(
    longitude_deg: float, latitude_deg: float, reference: str
) -> None:
    text = encode_mgrs(longitude_deg, latitude_deg, digits=10)
    assert text.startswith(reference)
    assert decode_mgrs(text)


@settings(max_examples=200, deadline=None)
@given(
    st.floats(-180.0, 180.0) | near([-180, -174, 0, 3, 6, 9, 12, 21, 33, 42, 180]),
    st.floats(-90.0, 90.0) | near([-80, -72, 0, 8, 56, 64, 72, 80, 84]),
    st.sampled_from([0, 2, 4, 6, 8, 10]),
)
def test_a_square_is_named_again_by_its_centre(
    longitude_deg: float, latitude_deg: float, digits: int
) -> None:
    text = encode_mgrs(longitude_deg, latitude_deg, digits=digits)
    square = decode_mgrs(text)
    apart_m = geodesic_between(
        longitude_deg, latitude_deg, square.longitude_deg, square.latitude_deg
    ).distance_m
    # The place is within half a diagonal of the centre (scale of the polar grid: 0.994).
    assert apart_m < square.half_square_m * 1.4143 * 1.01 + 0.001


@pytest.mark.parametrize(
    ("text", "east_m", "north_m", "half_m"),
    [
        ("16S GF 418207 427903", 741_820.75, 4_042_790.35, 0.05),
        ("16S GF 4182099 4279000", 741_820.995, 4_042_790.005, 0.005),
        ("Z AB 000001 445429", 2_000_000.15, 1_444_542.95, 0.05),
    ],
)
def test_digits_below_a_metre_name_squares_within_it(
    text: str, east_m: float, north_m: float, half_m: float
) -> None:
    """Bug: the plan takes "any even precision", and 12 digits were refused."""
    square = decode_mgrs(text)
    there = course_grid(square.grid_code).to_grid(square.longitude_deg, square.latitude_deg)
    assert there == pytest.approx((east_m, north_m), abs=1e-4)
    assert square.half_square_m == pytest.approx(half_m)
