"""British and Irish references with letters.

The examples are well-known references quoted from memory, since the papers that print
them could not be read again; each is tied to the ground by PROJ at the latitude and
longitude of the place, also from memory.
"""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from audit.geodesy.grids import course_grid
from audit.geodesy.national_letters import LETTERED_GRIDS, decode_national, encode_national

PLACES = [
    # Reference, grid, longitude, latitude (from memory, to about 200 m)
    ("NN 166 712", "EPSG:27700", -5.0036, 56.7969),  # Ben Nevis
    ("TQ 389 773", "EPSG:27700", -0.0015, 51.4778),  # the observatory at Greenwich
    ("SH 610 544", "EPSG:27700", -4.0763, 53.0685),  # Yr Wyddfa (Snowdon)
    ("NY 215 072", "EPSG:27700", -3.2116, 54.4542),  # Scafell Pike
    ("HP 606 196", "EPSG:27700", -0.8850, 60.8553),  # Muckle Flugga, the north end
    ("SW 342 250", "EPSG:27700", -5.7148, 50.0658),  # Land's End, the west end
    ("TM 555 937", "EPSG:27700", 1.7630, 52.4810),  # Ness Point, the east end
    ("O 159 346", "EPSG:29903", -6.2603, 53.3498),  # the Spire, Dublin
    ("V 803 844", "EPSG:29903", -9.7428, 51.9990),  # Carrauntoohil
    ("J 357 276", "EPSG:29902", -5.9208, 54.1803),  # Slieve Donard
    # Bug: the letters were refused on the grids of the north and of older surveys.
    ("J 357 276", "EPSG:29901", -5.9208, 54.1803),
    ("J 357 276", "EPSG:29900", -5.9208, 54.1803),
]


@pytest.mark.parametrize(("text", "code", "longitude_deg", "latitude_deg"), PLACES)
def test_letters_lead_to_the_place_they_name(
    text: str, code: str, longitude_deg: float, latitude_deg: float
) -> None:
    square = decode_national(text, code)
    place = course_grid(code).to_grid(longitude_deg, latitude_deg)
    # 300 m: half the square, the place as remembered, the datum.
    assert (square.east_m, square.north_m) == pytest.approx(place, abs=300.0)
    assert square.half_square_m == 50.0


def test_the_worked_example_of_the_ordnance_survey() -> None:
    # OS, A guide to coordinate systems in Great Britain: E 651409.903 N 313177.270 is
    # TG 51409 13177 (reference from memory, coordinates printed).
    assert encode_national(651_409.903, 313_177.270, "EPSG:27700", digits=10) == "TG 51409 13177"
    square = decode_national("TG 51409 13177", "EPSG:27700")
    assert (square.east_m, square.north_m, square.half_square_m) == (651_409.5, 313_177.5, 0.5)


@pytest.mark.parametrize("code", ["EPSG:29900", "EPSG:29901", "EPSG:29902", "EPSG:29903"])
def test_the_irish_example(code: str) -> None:
    # The Spire of Dublin, O 15904 34671 = 315904, 234671 (from memory).
    square = decode_national("O1590434671", code)
    assert (square.east_m, square.north_m) == (315_904.5, 234_671.5)
    assert encode_national(315_904.2, 234_671.9, code, digits=10) == "O 15904 34671"


@pytest.mark.parametrize(
    ("text", "corner"),
    [
        ("SV", (0.0, 0.0)),
        ("SZ", (400_000.0, 0.0)),
        ("TV", (500_000.0, 0.0)),
        ("NA", (0.0, 900_000.0)),
        ("HP", (400_000.0, 1_200_000.0)),
        ("JL", (500_000.0, 1_200_000.0)),
    ],
)
def test_corners_of_the_british_squares(text: str, corner: tuple[float, float]) -> None:
    # The diagram of 100 km squares on every Ordnance Survey sheet (common practice).
    square = decode_national(text, "EPSG:27700")
    half_m = 50_000.0
    assert (square.east_m - half_m, square.north_m - half_m) == pytest.approx(corner, abs=0.001)


@given(
    st.floats(0.0, 699_999.9),
    st.floats(0.0, 1_299_999.9),
    st.sampled_from([0, 2, 4, 6, 8, 10]),
)
def test_a_british_place_lies_in_its_square(east_m: float, north_m: float, digits: int) -> None:
    text = encode_national(east_m, north_m, "EPSG:27700", digits=digits)
    square = decode_national(text, "EPSG:27700")
    assert abs(east_m - square.east_m) <= square.half_square_m
    assert abs(north_m - square.north_m) <= square.half_square_m
    assert encode_national(square.east_m, square.north_m, "EPSG:27700", digits=digits) == text


@given(st.floats(0.0, 499_999.9), st.floats(0.0, 499_999.9), st.sampled_from([0, 4, 10]))
def test_an_irish_place_lies_in_its_square(east_m: float, north_m: float, digits: int) -> None:
    text = encode_national(east_m, north_m, "EPSG:29903", digits=digits)
    square = decode_national(text, "EPSG:29903")
    assert abs(east_m - square.east_m) <= square.half_square_m
    assert abs(north_m - square.north_m) <= square.half_square_m


@pytest.mark.parametrize(
    ("text", "code", "words"),
    [
        ("AA 12 12", "EPSG:27700", "no square AA"),
        # Each a square's breadth off one side alone: west, east, south, north.
        ("RZ 12 12", "EPSG:27700", "no square RZ"),
        ("TX 12 12", "EPSG:27700", "no square TX"),
        ("XA 12 12", "EPSG:27700", "no square XA"),
        ("HF 12 12", "EPSG:27700", "no square HF"),
        ("NI 12 12", "EPSG:27700", "no British national grid reference"),
        ("O 159 346", "EPSG:27700", "no British national grid reference"),
        ("NN 16 712", "EPSG:27700", "2 and 3 digits"),
        ("NN 166", "EPSG:27700", "3 digits"),
        ("NN 1667121166712133", "EPSG:27700", "16 digits"),
        ("NN 166 712", "EPSG:29903", "no Irish national grid reference"),
        ("I 159 346", "EPSG:29903", "no Irish national grid reference"),
        ("", "EPSG:29903", "no Irish national grid reference"),
        ("NN 166 712", "EPSG:32630", "not to EPSG:32630"),
    ],
)
def test_nonsense_is_refused_in_one_sentence(text: str, code: str, words: str) -> None:
    with pytest.raises(ValueError, match=re.escape(words)) as refused:
        decode_national(text, code)
    assert "\n" not in str(refused.value)


@pytest.mark.parametrize("place", [(-1.0, 0.0), (700_000.0, 0.0), (0.0, 1_300_000.0)])
def test_places_off_the_squares_have_no_reference(place: tuple[float, float]) -> None:
    with pytest.raises(ValueError, match="off the lettered squares"):
        encode_national(*place, "EPSG:27700", digits=6)


@pytest.mark.parametrize(
    ("text", "corner"),
    [
        ("SV 0 0", (0.0, 0.0)),
        ("TW 0 0", (600_000.0, 0.0)),
        ("HL 0 0", (0.0, 1_200_000.0)),
        ("JM 0 0", (600_000.0, 1_200_000.0)),
    ],
)
def test_the_squares_at_the_four_corners_exist(text: str, corner: tuple[float, float]) -> None:
    square = decode_national(text, "EPSG:27700")
    assert (square.east_m - 5000.0, square.north_m - 5000.0) == corner
    assert encode_national(*corner, "EPSG:27700", digits=2) == text


@pytest.mark.parametrize("digits", [-2, 1, 12])
def test_only_even_digits_up_to_ten_are_written(digits: int) -> None:
    with pytest.raises(ValueError, match="digits"):
        encode_national(100.0, 100.0, "EPSG:27700", digits=digits)


def test_every_lettered_grid_is_one_that_courses_can_have() -> None:
    for code in LETTERED_GRIDS:
        assert course_grid(code).code == code
