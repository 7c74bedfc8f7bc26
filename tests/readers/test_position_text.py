"""Every written form of a position, against published references and general-purpose libraries."""

from __future__ import annotations

import math

import mgrs
import pyproj
import pytest
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st

from audit.readers.position_reading import PositionRefusedError
from audit.readers.position_text import read_position

WGS84 = pyproj.Geod(ellps="WGS84")


def metres_between(reading, latitude_deg, longitude_deg):
    position = reading.position
    return WGS84.inv(position.longitude_deg, position.latitude_deg, longitude_deg, latitude_deg)[2]


# FGDC-STD-011-2001, section 5.2.2 and table 1: the Washington Monument at every precision.
FGDC = ["18SUJ2348306479", "18SUJ23480647", "18SUJ234064", "18SUJ2306", "18SUJ20", "18SUJ"]
# Test strings of the NGA's own reader (mgrs-java, MGRSTest.java at 5eb9daf), and of
# GeographicLib 2.1.2 (GeoConvert -m) for the exceptions of Norway, Svalbard and the poles.
PUBLISHED = [
    ("35VPL0115697387", 63.98863, 29.06757),
    ("39PYP7290672069", 12.4, 53.51),
    ("4QFJ1234056781", 21.309444, -157.916861),
    ("04QFJ1234056781", 21.309444, -157.916861),
    ("33PYJ6132198972", 8.1258235, 17.3714337),
    ("39XVN9902494603", 83.7, 50.920338),
    ("52CDT8854707650", -79.2, 128.4525),
    ("33XTV9336399233", 72.0, 9.0),
    ("38SMB4414084706", 33.3, 44.4),
    ("32VKN9723000510", 60.39, 5.32),
    ("33XWG1481383004", 78.22, 15.65),
    ("56HLH3436850948", -33.8688, 151.2093),
    ("16SFA9291281078", 32.35, -84.95),
    ("ZAB0000044542", 85.0, 0.0),
    ("BFR9276792767", -85.0, 45.0),
]


@pytest.mark.parametrize("reference", FGDC)
def test_the_published_point_lies_in_its_square_at_every_precision(reference):
    reading = read_position(reference)
    side_m = 10.0 ** (5 - (len(reference) - 5) // 2)
    assert reading.position.half_square_m == side_m / 2
    assert reading.grid_code == "EPSG:32618"
    assert reading.position.given == reference
    # NAD83 and WGS 84 are one to a metre or two; the corner of a square is half a diagonal off.
    east_m, north_m = pyproj.Transformer.from_crs(4326, 32618, always_xy=True).transform(
        reading.position.longitude_deg, reading.position.latitude_deg
    )
    assert abs(east_m - 323483.168) <= side_m / 2 + 0.01  # metres
    assert abs(north_m - 4306479.498) <= side_m / 2 + 0.01


@pytest.mark.parametrize(("reference", "latitude_deg", "longitude_deg"), PUBLISHED)
def test_published_references_to_one_metre(reference, latitude_deg, longitude_deg):
    assert metres_between(read_position(reference), latitude_deg, longitude_deg) < 0.8


SAME = "16S GF 4182 4279"


@pytest.mark.parametrize(
    "written",
    [
        "16SGF41824279", "16s gf 4182 4279", " 16S  GF  4182  4279 ", "16 S GF 4182 4279",
        "16 S G F 4182 4279", "16S GF 41 82 42 79", "16S GF 41824279", "MGRS 16S GF 4182 4279",
        "16S GF 4182, 4279", "16S-GF-4182-4279", "16S\u00a0GF\u00a04182\u20094279",
        "\u200e16S GF 4182 4279", "１６S GF ４１８２ ４２７９",
    ],
)  # fmt: skip
def test_sloppy_but_clear_references(written):
    reading, wanted = read_position(written).position, read_position(SAME).position
    assert (reading.latitude_deg, reading.longitude_deg) == (
        wanted.latitude_deg,
        wanted.longitude_deg,
    )
    assert reading.half_square_m == 5.0


@pytest.mark.parametrize(
    ("written", "rule", "remedy"),
    [
        ("16S GF 418 4279", "3 and 4 digits", "leading zeros"),
        ("16S GF 418 24279", "3 and 5 digits", "leading zeros"),
        ("16S GF 4182427", "7 digits", "leading zeros"),
        ("16S GF 418 2427 9", "3 and 4 and 1 digits", "leading zeros"),
        ("16S GF 41821212 42793434", "16 digits", "last digits"),
        ("GF 4182 4279", "without its grid zone", "16S GF 4182 4279"),
        ("SGF 4182 4279", "without its grid zone number", "zone, band, square"),
        ("16S GF 4l82 4279", "a letter among its digits", "0 and 1"),
        ("16S GI 4182 4279", "never lettered I or O", "16S GF"),
        ("16S ZZ 4182 4279", "no square ZZ", "16S GF"),
        ("16T GF 4182 4279", "band T (40 N to 48 N) has none", "band letter"),
        ("16D GA 4182 4279", "band D (72 S to 64 S) has none", "band letter"),
        ("61S GF 4182 4279", "no UTM zone", "16S GF"),
        ("16I GF 4182 4279", "no band", "16S GF"),
        ("SK 418 427", "without its grid zone", "EPSG:27700"),
        ("O 159 346", "no such letters", "EPSG:29903"),
    ],
)
def test_references_that_name_no_square(written, rule, remedy):
    with pytest.raises(PositionRefusedError) as refused:
        read_position(written)
    assert rule in refused.value.rule
    assert remedy in refused.value.remedy


# GeographicLib's GeoConvert manual page: 33.3 N 44.4 E is 38n 444140.54 3684706.36.
def test_utm_of_the_published_example():
    for written in ("38S 444140.54 3684706.36", "38N 444140.54 3684706.36"):
        reading = read_position(written)
        assert metres_between(reading, 33.3, 44.4) < 0.01
        assert reading.grid_code == "EPSG:32638"
        assert reading.position.half_square_m == 0.0


@pytest.mark.parametrize(
    ("written", "code", "said"),
    [
        ("16S 441820 4142790", "EPSG:32616", "latitude band (32 to 40 north)"),
        ("16N 441820 4142790", "EPSG:32616", "northern hemisphere"),
        ("33N 441820 442790", "EPSG:32633", ""),
        ("56S 334368 6250948", "EPSG:32756", "southern hemisphere"),
        ("56H 334368 6250948", "EPSG:32756", ""),
        ("32T 441820 5142790", "EPSG:32632", ""),
        ("4q 612340 2356781", "EPSG:32604", ""),
        ("16S 441,820 4,142,790", "EPSG:32616", "thousands"),
        ("32T 441.820 5.142.790", "EPSG:32632", "thousands"),
        ("32T 441 820 5 142 790", "EPSG:32632", "thousands"),
        ("32T 441820,5 5142790,5", "EPSG:32632", "decimal commas"),
        ("32T 441820mE 5142790mN", "EPSG:32632", ""),
        ("32T E 441820 N 5142790", "EPSG:32632", ""),
        ("UTM 32T 441820, 5142790", "EPSG:32632", ""),
    ],
)
def test_utm_letters_as_band_or_hemisphere(written, code, said):
    reading = read_position(written)
    assert reading.grid_code == code
    assert said in reading.position.reading
    assert bool(said) == bool(reading.position.reading)
    east_m, _ = pyproj.Transformer.from_crs(4326, code, always_xy=True).transform(
        reading.position.longitude_deg, reading.position.latitude_deg
    )
    assert any(abs(east_m - wanted) < 0.51 for wanted in (441820, 334368, 612340))


@pytest.mark.parametrize(
    ("written", "part"),
    [
        ("16T 441820 4142790", "band S (37.43 N)"),
        ("61S 441820 4142790", "zones run from 1 to 60"),
        ("16A 441820 4142790", "bands run from C to X"),
        ("16S 4142790 441820", "easting comes first"),
        ("16S 41820 4142790", "from 100000 to 900000"),
        ("16 441820 4142790", "without its band letter"),
        ("441820 4142790", "without a zone"),
        ("441820, 4142790", "without a zone"),
    ],
)
def test_utm_that_is_refused(written, part):
    with pytest.raises(PositionRefusedError) as refused:
        read_position(written)
    assert part in str(refused.value)


@pytest.mark.parametrize(
    ("written", "latitude_deg", "longitude_deg"),
    [
        ("36.512, -84.231", 36.512, -84.231),
        ("36.512 -84.231", 36.512, -84.231),
        ("36.512,-84.231", 36.512, -84.231),
        ("+36.512; −84.231", 36.512, -84.231),
        ("36.512° -84.231°", 36.512, -84.231),
        ("36.512 / -84.231", 36.512, -84.231),
        ("36,512 -84,231", 36.512, -84.231),
        ("36,512, -84,231", 36.512, -84.231),
        ("36,512; -84,231", 36.512, -84.231),
        ("36,512,-84,231", 36.512, -84.231),
        ("36,51 -84,23", 36.51, -84.23),
        ("36.512N 84.231W", 36.512, -84.231),
        ("36.512N84.231W", 36.512, -84.231),
        ("n 36.512, w 84.231", 36.512, -84.231),
        ("84.231W, 36.512N", 36.512, -84.231),
        ("W84.231 N36.512", 36.512, -84.231),
        ("36.512N, -84.231", 36.512, -84.231),
        ("lat 36.512 lon -84.231", 36.512, -84.231),
        ("Longitude: -84.231, Latitude: 36.512", 36.512, -84.231),
        ("36 51 84 25", 36.85, 84.0 + 25 / 60),
        ("36 51.5 -84 25.5", 36.0 + 51.5 / 60, -84.425),
        ("36° 51.5' N, 84° 25.5' W", 36.0 + 51.5 / 60, -84.425),
        ("36°51'30\"N 84°25'30\"W", 36.0 + 51.5 / 60, -84.425),
        ("36°51′30″N, 084°25′30″W", 36.0 + 51.5 / 60, -84.425),
        ("36º51’30” N 84º25’30” W", 36.0 + 51.5 / 60, -84.425),
        ("36°51'30''N 84°25'30''W", 36.0 + 51.5 / 60, -84.425),
        ("N 36 51 30 W 84 25 30", 36.0 + 51.5 / 60, -84.425),
        ("36:51:30 -84:25:30", 36.0 + 51.5 / 60, -84.425),
        ("36-51-30N 84-25-30W", 36.0 + 51.5 / 60, -84.425),
        ("36d51m30sN".replace("m", "'").replace("s", '"') + " 84d25'30\"W", 36.85833333, -84.425),
        ("36 deg 51.5 min N 84 deg 25.5 min W", 36.0 + 51.5 / 60, -84.425),
        ("36 N 84 25.5 W", 36.0, -84.425),
        ("36N 84 15E", 36.0, 84.25),
        ("36,5° N; 84,25° W", 36.5, -84.25),
        ("-0.5, 0.25", -0.5, 0.25),
        ("0°30'S 0°15'E", -0.5, 0.25),
        ("-0 30 0 15", -0.5, 0.25),
        ("90, 180", 90.0, 180.0),
        ("-90 -180", -90.0, -180.0),
    ],
)
def test_degrees_in_all_their_forms(written, latitude_deg, longitude_deg):
    position = read_position(written).position
    assert position.latitude_deg == pytest.approx(latitude_deg, abs=1e-8)
    assert position.longitude_deg == pytest.approx(longitude_deg, abs=1e-8)
    assert position.half_square_m == 0.0


@pytest.mark.parametrize(
    ("written", "parts"),
    [
        ("36,51,84,25", ["36.51", "84.25", "36.85", "84.416667"]),
        ("36, 51, 84, 25", ["36.51", "84.25", "36.85", "84.416667"]),
        ("36,51,-84,25", ["-84.25", "-84.416667"]),
        ("36,51,84", ["36.51", "51.84"]),
        ("36.5N, 84.2", ["84.2 E or as W", "one letter is missing"]),
        ("36.5, 84.2W", ["36.5 N or as S"]),
        ("-36.5N 84.2W", ["a sign and a letter"]),
        ("91, 10", ["latitude 91", "from -90 to 90", '"10, 91"']),
        ("-104.5, 36.5", ["latitude -104.5", '"36.5, -104.5"']),
        ("36.5, 190", ["longitude 190", "from -180 to 180"]),
        ("36 75 84 25", ["60 and more"]),
        ("36°51'60\"N 84°25'30\"W", ["60 and more"]),
        ("36.5N 84.2N", ["no position"]),
        ("36.5", ["is one number"]),
        ("36.5, nan", ["no position"]),
        ("36,5,84.2", ["no position"]),
        ("36.5 S 84.2 O", ["Write E or W"]),
        ("", ["is empty"]),
        (" , ", ["no position"]),
        ("the old oak", ["no position", "16S GF 4182 4279"]),
        ("9" * 400 + ", 3", ["no position"]),
        ("1e3, 2e2", ["no position"]),
        ("4.86E+03", ["as a spreadsheet writes long ones", "Format the cells as text"]),
        ("4.86E+05 4.05E+06", ["as a spreadsheet writes long ones"]),
        ("4,86E+03", ["as a spreadsheet writes long ones"]),
    ],
)
def test_degrees_that_are_refused(written, parts):
    with pytest.raises(PositionRefusedError) as refused:
        read_position(written)
    for part in parts:
        assert part in str(refused.value)


# The OS guide to coordinate systems in Great Britain, annexe C: E 651409.903, N 313177.270,
# which its letters call TG 51409 13177 (letters from memory).
def test_british_letters_and_metres_name_one_place():
    metres = read_position("651409.903, 313177.270", "EPSG:27700")
    letters = read_position("TG 51409 13177", "EPSG:27700")
    assert (
        metres_between(letters, metres.position.latitude_deg, metres.position.longitude_deg) < 0.8
    )  # metres: within the 1 m square
    assert letters.position.half_square_m == 0.5
    assert letters.grid_code == metres.grid_code == "EPSG:27700"


@pytest.mark.parametrize(
    ("written", "grid", "east_m", "north_m"),
    [
        ("441820 342790", "EPSG:27700", 441820, 342790),
        ("441820, 342790", "EPSG:27700", 441820, 342790),
        ("441,820 342,790", "EPSG:27700", 441820, 342790),
        ("441 820 342 790", "EPSG:27700", 441820, 342790),
        ("441820,5; 342790,5", "EPSG:27700", 441820.5, 342790.5),
        ("N 342790 E 441820", "EPSG:27700", 441820, 342790),
        ("Easting 441820 Northing 342790", "EPSG:27700", 441820, 342790),
        ("441820mE 342790mN", "EPSG:27700", 441820, 342790),
        ("SK 418 427", "EPSG:27700", 441850, 342750),
        ("sk4182042790", "EPSG:27700", 441820.5, 342790.5),
        ("O 159 346", "EPSG:29903", 315950, 234650),
        # Bug: a square without digits was refused here and read in MGRS.
        ("SK", "EPSG:27700", 450000, 350000),
        ("SK 418205 427903", "EPSG:27700", 441820.55, 342790.35),
        ("O", "EPSG:29903", 350000, 250000),
        ("441820 4142790", "EPSG:32616", 441820, 4142790),
        ("3441820 5142790", "EPSG:31467", 3441820, 5142790),
    ],
)
def test_metres_and_letters_of_the_course_grid(written, grid, east_m, north_m):
    position = read_position(written, grid).position
    east, north = pyproj.Transformer.from_crs(4326, grid, always_xy=True).transform(
        position.longitude_deg, position.latitude_deg
    )
    assert (east, north) == pytest.approx((east_m, north_m), abs=0.05)  # metres


def test_degrees_are_taken_beside_a_named_grid():
    assert read_position("52.6, -1.3", "EPSG:27700").position.latitude_deg == 52.6
    assert read_position(SAME, "EPSG:27700").grid_code == "EPSG:32616"


@pytest.mark.parametrize(
    ("written", "grid", "parts"),
    [
        ("36,512 84,231", "EPSG:27700", ["latitude 36.512", "easting 36512, northing 84231"]),
        ("ZZ 418 427", "EPSG:27700", ["no square ZZ"]),
        ("SK 41 427", "EPSG:27700", ["2 and 3 digits"]),
        ("SK 418 427", "EPSG:29903", ["Irish"]),
    ],
)
def test_what_the_course_grid_refuses(written, grid, parts):
    with pytest.raises(PositionRefusedError) as refused:
        read_position(written, grid)
    for part in parts:
        assert part in str(refused.value)


def test_a_square_keeps_its_reading_note_empty_and_its_writing():
    position = read_position("  16s GF  4182 4279").position
    assert position.given == "16s GF 4182 4279"
    assert position.reading == ""


LATITUDES = st.floats(-79.9, 83.9).map(lambda degrees: round(degrees, 6))
LONGITUDES = st.floats(-179.9, 179.9).map(lambda degrees: round(degrees, 6))


@settings(max_examples=60, deadline=None)
@given(LATITUDES, LONGITUDES, st.integers(1, 5), st.booleans())
@example(60.39, 5.32, 4, True)
@example(0.0, 0.0, 5, False)
def test_mgrs_written_by_another_library_comes_back_within_its_square(
    latitude_deg, longitude_deg, digits, spaced
):
    written = mgrs.MGRS().toMGRS(latitude_deg, longitude_deg, MGRSPrecision=digits)
    if spaced:
        head = written[: -2 * digits]
        written = f"{head[:-2]} {head[-2:]} {written[-2 * digits : -digits]} {written[-digits:]}"
    reading = read_position(written.lower() if spaced else written.lstrip("0"))
    half_m = reading.position.half_square_m
    assert half_m == 10.0 ** (5 - digits) / 2
    # Half a diagonal, and the scale of the grid (0.9996 to 1.001).
    assert metres_between(reading, latitude_deg, longitude_deg) <= half_m * math.sqrt(2) * 1.01


def dms(value, letters, places):
    letter = letters[value < 0]
    total = round(abs(value) * 3600, places)
    degrees, rest = divmod(total, 3600)
    minutes, seconds = divmod(rest, 60)
    return int(degrees), int(minutes), round(seconds, places), letter


def as_degrees(latitude, longitude, form):
    if form == "signed":
        return f"{latitude:.6f}, {longitude:.6f}"
    if form == "decimal commas":
        return f"{latitude:.6f} {longitude:.6f}".replace(".", ",")
    if form == "letters after":
        return (
            f"{abs(latitude):.6f} {'NS'[latitude < 0]} {abs(longitude):.6f} {'EW'[longitude < 0]}"
        )
    if form == "letters before, longitude first":
        return f"{'EW'[longitude < 0]}{abs(longitude):.6f} {'NS'[latitude < 0]}{abs(latitude):.6f}"
    d, m, s, letter = dms(latitude, "NS", 2)
    e, n, t, other = dms(longitude, "EW", 2)
    if form == "marked":
        return f"{d}°{m:02d}'{s:05.2f}\"{letter}, {e:03d}°{n:02d}'{t:05.2f}\"{other}"
    return f"{letter} {d} {m} {s:.2f} {other} {e} {n} {t:.2f}"


@settings(max_examples=120, deadline=None)
@given(
    LATITUDES,
    LONGITUDES,
    st.sampled_from(
        [
            "signed", "decimal commas", "letters after", "letters before, longitude first",
            "marked", "bare numbers with letters",
        ]
    ),
)  # fmt: skip
def test_degrees_written_in_any_form_come_back(latitude_deg, longitude_deg, form):
    position = read_position(as_degrees(latitude_deg, longitude_deg, form)).position
    # Hundredths of a second, 2.8e-6 degrees, are the coarsest form here.
    assert position.latitude_deg == pytest.approx(latitude_deg, abs=2e-6)
    assert position.longitude_deg == pytest.approx(longitude_deg, abs=2e-6)


@settings(max_examples=60, deadline=None)
@given(
    LATITUDES,
    st.integers(1, 60),
    st.floats(-2.9, 2.9),
    st.sampled_from(["band", "hemisphere"]),
    st.sampled_from(["{:.1f} {:.1f}", "{:.1f}mE {:.1f}mN", "{:,.1f} {:,.1f}", "{:.1f}, {:.1f}"]),
)
def test_utm_written_by_another_library_comes_back(latitude_deg, zone, off_deg, letter, form):
    longitude_deg = zone * 6 - 183 + off_deg
    south = latitude_deg < 0
    code = (32700 if south else 32600) + zone
    east_m, north_m = pyproj.Transformer.from_crs(4326, code, always_xy=True).transform(
        longitude_deg, latitude_deg
    )
    band = "CDEFGHJKLMNPQRSTUVWXX"[int((latitude_deg + 80) // 8)]
    if letter == "hemisphere":
        band = "S" if south else "N"
        # Written so, a southern northing of 3.5 to 4.4 million metres is one of band S.
        assume(not (south and 3.5e6 < north_m < 4.5e6))
    reading = read_position(f"{zone}{band} {form.format(east_m, north_m)}")
    assert reading.grid_code == f"EPSG:{code}"
    assert metres_between(reading, latitude_deg, longitude_deg) < 0.1


@settings(max_examples=40, deadline=None)
@given(st.floats(100_000, 600_000), st.floats(50_000, 899_999), st.integers(1, 5))
def test_course_grid_metres_and_letters_come_back(east_m, north_m, half):
    grid = "EPSG:27700"
    written = f"{east_m:.2f} {north_m:.2f}"
    metres = read_position(written, grid).position
    back = pyproj.Transformer.from_crs(4326, grid, always_xy=True).transform(
        metres.longitude_deg, metres.latitude_deg
    )
    assert back == pytest.approx((east_m, north_m), abs=0.05)  # metres
    # The squares of Great Britain by rows from the south, as printed on its key map.
    rows = ["SV SW SX SY SZ TV TW", "SQ SR SS ST SU TQ TR", "SL SM SN SO SP TL TM",
            "SF SG SH SJ SK TF TG", "SA SB SC SD SE TA TB", "NV NW NX NY NZ OV OW",
            "NQ NR NS NT NU OQ OR", "NL NM NN NO NP OL OM", "NF NG NH NJ NK OF OG"]  # fmt: skip
    letters = rows[int(north_m // 1e5)].split()[int(east_m // 1e5)]
    east, north = f"{int(east_m % 1e5):05d}"[:half], f"{int(north_m % 1e5):05d}"[:half]
    square = read_position(f"{letters} {east} {north}", grid).position
    centre = pyproj.Transformer.from_crs(4326, grid, always_xy=True).transform(
        square.longitude_deg, square.latitude_deg
    )
    assert abs(centre[0] - east_m) <= square.half_square_m + 0.05
    assert abs(centre[1] - north_m) <= square.half_square_m + 0.05


@settings(max_examples=300, deadline=None)
@given(
    st.one_of(
        st.text(max_size=30),
        st.text(alphabet="0123456789 ,.;:-+°'\"NSEWGFJKXOI/", max_size=30),
    ),
    st.sampled_from([None, "EPSG:27700", "EPSG:29903", "EPSG:32616"]),
)
def test_any_text_gives_a_place_on_earth_or_one_sentence(text, grid):
    sentence, position = "", None
    try:
        position = read_position(text, grid).position
    except PositionRefusedError as refused:
        sentence = str(refused)
    if position is None:
        assert sentence.endswith(".")
        assert "\n" not in sentence
    else:
        assert -90.0 <= position.latitude_deg <= 90.0
        assert -180.0 <= position.longitude_deg <= 180.0
