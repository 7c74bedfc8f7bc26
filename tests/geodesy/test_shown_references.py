"""References as they are shown and kept: lettered where the map is, and read back to the place."""

from __future__ import annotations

import pytest

from audit.geodesy.grids import course_grid
from audit.geodesy.mgrs_references import decode_mgrs
from audit.geodesy.national_letters import decode_national
from audit.geodesy.shown_references import exact_reference, shown_reference

UTM = course_grid("EPSG:32616")
BRITISH = course_grid("EPSG:27700")
SWISS = course_grid("EPSG:2056")
SQUARES = [("16S GF 41828 42795", 0.5), ("16S GF 4182 4279", 5.0), ("16S GF 418 427", 50.0),
           ("16S GF 41 42", 500.0)]  # fmt: skip


@pytest.mark.parametrize(("text", "half_m"), SQUARES)
def test_a_square_is_shown_and_kept_by_the_digits_that_name_it(text, half_m) -> None:
    named = decode_mgrs(text)
    place = (named.longitude_deg, named.latitude_deg)
    assert shown_reference(*place, half_m, UTM) == text
    assert exact_reference(*place, half_m, UTM) == (text, True)


def test_a_point_is_shown_to_ten_metres_and_kept_to_the_millimetre() -> None:
    place = UTM.to_geographic(741_826.1234, 4_042_794.5)
    assert shown_reference(*place, 0.0, UTM) == "16S GF 4182 4279"
    assert exact_reference(*place, 0.0, UTM) == ("741826.123 4042794.500", True)


def test_whole_metres_are_kept_without_decimals() -> None:
    place = UTM.to_geographic(741_826.0, 4_042_794.0)
    assert exact_reference(*place, 0.0, UTM) == ("741826 4042794", True)


def test_a_place_off_the_centre_of_its_square_is_kept_by_its_metres() -> None:
    """Within a millimetre of the centre it is the square; farther off it is not, either way."""
    for off_m, kept in ((0.0004, True), (0.004, False), (-0.004, False)):
        for east_m, north_m in ((741_825.0 + off_m, 4_042_795.0), (741_825.0, 4_042_795.0 + off_m)):
            text, whole = exact_reference(*UTM.to_geographic(east_m, north_m), 5.0, UTM)
            assert (text == "16S GF 4182 4279") is kept, text
            assert whole is kept


def test_a_square_that_no_digits_name_is_kept_by_its_metres() -> None:
    place = UTM.to_geographic(741_825.0, 4_042_795.0)
    assert exact_reference(*place, 7.0, UTM) == ("741825 4042795", False)


def test_a_british_map_has_its_letters() -> None:
    square = decode_national("NN 166 712", "EPSG:27700")
    place = BRITISH.to_geographic(square.east_m, square.north_m)
    assert shown_reference(*place, 50.0, BRITISH) == "NN 166 712"
    assert exact_reference(*place, 50.0, BRITISH) == ("NN 166 712", True)
    assert shown_reference(*place, 0.0, BRITISH) == "NN 1665 7125"


def test_a_place_off_the_letters_or_off_the_zone_has_its_metres() -> None:
    west_of_all = BRITISH.to_geographic(-250.0, 500_000.0)
    assert shown_reference(*west_of_all, 50.0, BRITISH) == "-250 500000"
    next_zone = UTM.to_geographic(1_000_000.0, 4_042_795.0)
    assert shown_reference(*next_zone, 5.0, UTM) == "1000000 4042795"
    assert shown_reference(*SWISS.to_geographic(2_600_000.0, 1_200_000.0), 5.0, SWISS) == (
        "2600000 1200000"
    )


def test_metres_below_a_thousand_have_no_three_decimals_that_read_as_thousands() -> None:
    near_the_equator = UTM.to_geographic(500_000.0, 250.125)
    assert exact_reference(*near_the_equator, 0.0, UTM) == ("500000 250.1250", True)
    just_beyond = UTM.to_geographic(500_000.125, 1000.125)
    assert exact_reference(*just_beyond, 0.0, UTM) == ("500000.125 1000.125", True)
