"""The full form of a plan: each field taken, each slip told in one sentence."""

from __future__ import annotations

import datetime as dt

import pytest

from audit.azimuths import GridAzimuth, MagneticAzimuth, TrueAzimuth
from audit.errors import InputRefusedError
from audit.readers.plan_file import read_plan
from audit.words import Words

POINTS = """
[[point]]
name = "Start"
position = "16S GF 4182 4279"
[[point]]
name = "Post 7"
position = "16S GF 4265 4312"
[[point]]
name = "Post 8"
position = "16S GF 4310 4290"
"""


def read(tmp_path, text, **options):
    path = tmp_path / "lane.toml"
    path.write_text(text, encoding="utf-8")
    return read_plan(path, **options)


def problems_of(tmp_path, text, **options):
    with pytest.raises(InputRefusedError) as refused:
        read(tmp_path, text, **options)
    assert all(problem.file == "lane.toml" for problem in refused.value.problems)
    return [str(problem) for problem in refused.value.problems]


def test_the_example_of_the_format(tmp_path):
    plan = read(
        tmp_path,
        """
[course]
name = "Curlew Ridge, lane 2"
date = 2026-10-03
grid = "auto"
grid_magnetic_angle_deg = -7.0
paces_per_100m = 65
arrival_radius_m = 25

[[point]]
name = "Start"
position = "16S GF 4182 4279"
[[point]]
name = "Post 7"
position = "16S GF 4265 4312"

[[leg]]
name = "1"
from = "Start"
to = "Post 7"
grid_azimuth_deg = 68.3
magnetic_azimuth_deg = 75.3
distance_m = 893
paces = 580
via = ["16S GF 4210 4290"]
note = "handrail: stream on the left"
""",
    )
    assert plan.name == "Curlew Ridge, lane 2"
    assert plan.date == dt.date(2026, 10, 3)
    assert plan.grid == "EPSG:32616"
    assert plan.grid_magnetic_angle_deg == -7.0
    assert plan.paces_per_100m == 65.0
    assert plan.arrival_radius_m == 25.0
    assert [point.name for point in plan.points] == ["Start", "Post 7"]
    assert plan.source == "lane.toml"
    (leg,) = plan.legs
    assert (leg.name, leg.start, leg.end) == ("1", "Start", "Post 7")
    assert leg.grid_azimuth == GridAzimuth(68.3)
    assert leg.magnetic_azimuth == MagneticAzimuth(75.3)
    assert leg.true_azimuth is None
    assert (leg.distance_m, leg.paces) == (893.0, 580.0)
    assert [position.given for position in leg.via] == ["16S GF 4210 4290"]
    assert leg.note == "handrail: stream on the left"
    assert plan.notes == ("Course grid: EPSG:32616, the zone of the first point's reference.",)


def test_points_in_order_are_the_legs(tmp_path):
    plan = read(tmp_path, POINTS)
    assert [(leg.name, leg.start, leg.end) for leg in plan.legs] == [
        ("1", "Start", "Post 7"),
        ("2", "Post 7", "Post 8"),
    ]
    assert plan.name == "lane"
    assert plan.arrival_radius_m == 30.0
    assert plan.grid_magnetic_angle_deg is None
    notes = "\n".join(plan.notes)
    for part in ('its file, "lane"', "no arrival radius", "no leg tables", "EPSG:32616"):
        assert part in notes


def test_from_and_to_left_out(tmp_path):
    plan = read(
        tmp_path,
        POINTS
        + """
[[leg]]
to = "Post 7"
[[leg]]
grid_azimuth_deg = 90
distance_m = 400
[[leg]]
name = "back"
to = "Post 8"
""",
    )
    assert [(leg.name, leg.start, leg.end) for leg in plan.legs] == [
        ("1", "Start", "Post 7"),
        ("2", "Post 7", "end of leg 2"),
        ("back", "end of leg 2", "Post 8"),
    ]
    assert plan.position("end of leg 2") is None
    assert any("leg 1 names no start" in note for note in plan.notes)
    assert any("leg 2 names no end" in note for note in plan.notes)
    # Bug: what the reader calls legs and ends by stayed English for everybody.
    german = Words(language="de")
    assert german.told(plan.legs[1].end) == "Ende Abschnitt 2"
    assert any("Abschnitt 2 nennt kein Ende" in german.told(note) for note in plan.notes)


def test_mils_of_6400(tmp_path):
    plan = read(
        tmp_path,
        POINTS
        + """
[[leg]]
to = "Post 7"
grid_azimuth_mil = 1600
magnetic_azimuth_mil = 6400
true_azimuth_mil = 800
""",
    )
    (leg,) = plan.legs
    assert leg.grid_azimuth == GridAzimuth(90.0)
    assert leg.magnetic_azimuth == MagneticAzimuth(0.0)
    assert leg.true_azimuth == TrueAzimuth(45.0)


def test_both_scales_agree_or_are_refused(tmp_path):
    leg = POINTS + '[[leg]]\nto = "Post 7"\ngrid_azimuth_deg = 68\ngrid_azimuth_mil = '
    assert read(tmp_path, leg + "1210").legs[0].grid_azimuth == GridAzimuth(68.0)
    (problem,) = problems_of(tmp_path, leg + "1250")
    assert "leg 1, grid_azimuth_deg and grid_azimuth_mil" in problem
    assert "68 degrees and 1250 mils (70.3 degrees)" in problem


def test_whole_numbers_are_names(tmp_path):
    plan = read(
        tmp_path,
        '[[point]]\nname = 1\nposition = "36.5, -84.3"\n[[point]]\nname = 2\n'
        'position = "36.51, -84.3"\n[[leg]]\nname = 7\nfrom = 2\nto = 1\n',
    )
    assert [(leg.name, leg.start, leg.end) for leg in plan.legs] == [("7", "2", "1")]
    assert plan.grid == "EPSG:32616"


def test_names_that_differ_in_capitals_are_taken_and_noted(tmp_path):
    plan = read(tmp_path, POINTS + '[[leg]]\nfrom = "start"\nto = " POST  7 "\n')
    assert (plan.legs[0].start, plan.legs[0].end) == ("Start", "Post 7")
    assert any('"start" was taken as "Start"' in note for note in plan.notes)


def test_legs_that_do_not_join_and_points_on_no_leg_are_noted(tmp_path):
    plan = read(
        tmp_path,
        POINTS
        + """
[[point]]
name = "Spare"
position = "16S GF 44 44"
[[leg]]
from = "Start"
to = "Post 7"
[[leg]]
from = "Start"
to = "Post 8"
""",
    )
    notes = "\n".join(plan.notes)
    assert 'leg 2 starts at "Start", not where' in notes
    assert 'Point "Spare" is on no leg' in notes
    assert 'Point "Spare" is known to 500 m only' in notes


@pytest.mark.parametrize(
    ("grid", "code"),
    [
        ('"auto"', "EPSG:32616"),
        ('"AUTO"', "EPSG:32616"),
        ('"epsg:32617"', "EPSG:32617"),
        ("32617", "EPSG:32617"),
        ('"32617"', "EPSG:32617"),
    ],
)
def test_grid(tmp_path, grid, code):
    assert read(tmp_path, f"[course]\ngrid = {grid}\n" + POINTS).grid == code


def test_auto_grid_of_degrees_is_the_utm_zone_there(tmp_path):
    # Bergen lies in the widened zone 32 (NGA.STND.0037).
    text = '[[point]]\nname="A"\nposition="60.39, 5.32"\n[[point]]\nname="B"\nposition="60.4, 5.33"'
    plan = read(tmp_path, text)
    assert plan.grid == "EPSG:32632"
    assert any("in which the first point lies" in note for note in plan.notes)


@pytest.mark.parametrize(
    ("date", "day"),
    [
        ("2026-10-03", dt.date(2026, 10, 3)),
        ('"2026-10-03"', dt.date(2026, 10, 3)),
        ("2026-10-03T09:00:00Z", dt.date(2026, 10, 3)),
        ("2026-10-03T09:00:00", dt.date(2026, 10, 3)),
    ],
)
def test_dates(tmp_path, date, day):
    assert read(tmp_path, f"[course]\ndate = {date}\n" + POINTS).date == day


def test_options_come_before_the_file_and_that_is_said(tmp_path):
    plan = read(
        tmp_path,
        '[course]\nname = "A"\npaces_per_100m = 65\ndate = "nonsense"\n' + POINTS,
        name="B",
        paces_per_100m=70,
        date="2026-05-01",
        arrival_radius_m=20,
        grid="EPSG:32617",
        grid_magnetic_angle_deg=1.5,
    )
    assert (plan.name, plan.paces_per_100m, plan.arrival_radius_m) == ("B", 70.0, 20.0)
    assert plan.date == dt.date(2026, 5, 1)
    assert (plan.grid, plan.grid_magnetic_angle_deg) == ("EPSG:32617", 1.5)
    assert 'name: "B" from the options, in place of "A" in the file.' in plan.notes
    assert "paces_per_100m: 70 from the options, in place of 65 in the file." in plan.notes


def test_options_of_none_say_nothing(tmp_path):
    plan = read(tmp_path, '[course]\nname = "A"\n' + POINTS, name=None, date=None, grid=None)
    assert plan.name == "A"


@pytest.mark.parametrize(
    ("options", "part"),
    [
        ({"date": "3.10.2026"}, "lane.toml, option date"),
        ({"grid": "EPSG:4326"}, "lane.toml, option grid: EPSG:4326 (WGS 84) has no grid in metres"),
        ({"grid": "green"}, 'option grid: "green" is no grid code'),
        ({"paces_per_100m": 3}, "option paces_per_100m: 3 is out of range (30 to 250 paces)"),
        ({"arrival_radius_m": 0}, "option arrival_radius_m: 0 is out of range"),
        ({"grid_magnetic_angle_deg": float("nan")}, "is not a finite number"),
        ({"route": "1"}, "option route"),
    ],
)
def test_bad_options(tmp_path, options, part):
    (problem,) = problems_of(tmp_path, POINTS, **options)
    assert part in problem


def test_an_option_that_does_not_exist_is_a_programmers_error(tmp_path):
    with pytest.raises(TypeError, match="no option pace"):
        read(tmp_path, POINTS, pace=65)


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ('[coarse]\nname = "x"\n' + POINTS, ['"coarse" is no table', '"course"']),
        ('[course]\nnane = "x"\n' + POINTS, ["course:", '"nane"', '"name"']),
        ('[course]\nwind = "x"\n' + POINTS, ['"wind"', "Known are: name, date, grid"]),
        ('[course]\norder = "any"\n' + POINTS, ["course, order", 'Write "planned" or "free"']),
        (
            '[course]\norder = "free"\n' + POINTS + '[[leg]]\nto = "Post 7"\n',
            ["leg: has no place in a course with order", "Leave the leg tables out"],
        ),
        ('[course]\nname = "\\u0000"\n' + POINTS, ["course, name: is empty"]),
        (
            POINTS + '[[leg]]\nto = "Mill"\ngrid_azimuth_deg = 9\ndistance_m = 90',
            ['"Mill" names no point', 'or leave "to" out'],
        ),
        ("[course]\ndate = 3\n" + POINTS, ["course, date: 3 is not a date"]),
        ('[course]\ndate = "2026-02-30"\n' + POINTS, ['"2026-02-30" is not a date']),
        ("[course]\nname = 1.5\n" + POINTS, ["course, name: 1.5 is not a name"]),
        ('[course]\nname = "  "\n' + POINTS, ["course, name: is empty"]),
        ("[course]\ngrid = true\n" + POINTS, ["course, grid: true is not a grid"]),
        ("[course]\npaces_per_100m = 20\n" + POINTS, ["20 is out of range (30 to 250 paces)"]),
        ("[course]\npaces_per_100m = true\n" + POINTS, ["true is not a number"]),
        ("[course]\narrival_radius_m = -1\n" + POINTS, ["arrival_radius_m: -1 is out of range"]),
        ("[course]\ngrid_magnetic_angle_deg = inf\n" + POINTS, ["inf is not a finite number"]),
        ("[course]\ngrid_magnetic_angle_deg = 200\n" + POINTS, ["200 is out of range"]),
        ("course = 3\n" + POINTS, ["course: 3 is not a table", "[course]"]),
        ('[point]\nname = "A"\nposition = "36.5, -84.3"', ["point: is not a list", "[[point]]"]),
        ("point = [1]\n", ["point 1: 1 is not a table"]),
        ('[[point]]\nposition = "36.5, -84.3"\n' + POINTS, ["point 1: has no name"]),
        ('[[point]]\nname = "A"\n' + POINTS, ["point 1 (A): has no position"]),
        (POINTS + '[[point]]\nname = "Start"\nposition = "36.5, -84.3"', ["point 4 (Start), name"]),
        (
            POINTS + '[[point]]\nname = "A"\npositon = "36.5, -84.3"',
            ['point 4: "positon" is no key of a point', '"position"'],
        ),
        (
            POINTS + '[[point]]\nname = "A"\nposition = [36.5, -84.3]',
            ["point 4 (A), position: [36.5, -84.3] is not a position in text"],
        ),
        (
            POINTS + '[[point]]\nname = "A"\nposition = "16S GF 418 4279"',
            ['point 4 (A), position: "16S GF 418 4279" has 3 and 4 digits', "leading zeros"],
        ),
        (POINTS + '[[leg]]\nto = "Post 77"', ['leg 1, to: "Post 77" names no point', '"Post 7"']),
        (POINTS + '[[leg]]\nfrom = "Oak"\nto = "Start"', ['leg 1, from: "Oak" names no point']),
        (POINTS + "[[leg]]\ndistance_m = 5", ["leg 1, to: has neither an end nor both"]),
        (POINTS + '[[leg]]\nto = "Start"', ['starts and ends at one place ("Start" and "Start")']),
        (
            POINTS + '[[point]]\nname = "A"\nposition = "16S GF 4310 4290"',
            ['leg 3: starts and ends at one place ("Post 8" and "A")'],
        ),
        (
            POINTS + '[[leg]]\nname = "2"\nto = "Post 7"\n[[leg]]\nto = "Post 8"',
            ['leg 2: "2" is the name of leg 1 too'],
        ),
        (
            POINTS + '[[leg]]\nto = "Post 7"\ngrid_azimuth = 3',
            ['leg 1: "grid_azimuth" is no key of a leg', '"grid_azimuth_deg"'],
        ),
        (
            POINTS + '[[leg]]\nto = "Post 7"\nazimuth_deg = 3',
            ['"grid_azimuth_deg", "magnetic_azimuth_deg" or "true_azimuth_deg" is meant'],
        ),
        (
            POINTS + '[[leg]]\nto = "Post 7"\ngrid_azimuth_deg = 412',
            ["leg 1, grid_azimuth_deg: 412 is out of range (0 to 360 degrees)", "_mil"],
        ),
        (POINTS + '[[leg]]\nto = "Post 7"\ntrue_azimuth_deg = -1', ["-1 is out of range"]),
        (POINTS + '[[leg]]\nto = "Post 7"\ngrid_azimuth_mil = 6401', ["(0 to 6400 mils)"]),
        (POINTS + '[[leg]]\nto = "Post 7"\ndistance_m = 0', ["0 is out of range (above 0"]),
        (POINTS + '[[leg]]\nto = "Post 7"\ndistance_m = "893"', ['"893" is text where a number']),
        (POINTS + '[[leg]]\nto = "Post 7"\ndistance_m = [8]', ["[8] is not a number"]),
        (POINTS + '[[leg]]\nto = "Post 7"\npaces = nan', ["nan is not a finite number"]),
        (POINTS + '[[leg]]\nto = "Post 7"\npaces = ' + "9" * 400, ["is out of range", "..."]),
        (POINTS + '[[leg]]\nto = "Post 7"\nnote = 3', ["leg 1, note: 3 is not text"]),
        (POINTS + '[[leg]]\nto = "Post 7"\nvia = "x"', ['leg 1, via: "x" is not a list']),
        (POINTS + '[[leg]]\nto = "Post 7"\nvia = ["Post 8"]', ['leg 1, via 1: "Post 8" is no']),
        (POINTS + "[[leg]]\nto = 1.5", ["leg 1, to: 1.5 is not a name"]),
        ("", ["is empty"]),
        ("# nothing yet\n", ["holds 0 points and no leg"]),
        ('[[point]]\nname = "A"\nposition = "36.5, -84.3"', ["holds 1 point and no leg"]),
        ("leg = []\n" + POINTS, ["holds 3 points and no leg"]),
        ("a = 3,5", ["line 1: is not TOML", "decimal point"]),
        ('[[point]\nname = "A"', ["line 1: is not TOML"]),
        ("a=" + "[" * 5000, ["nested too deeply"]),
        ("a=" + "9" * 5000, ["holds a number that is too long"]),
        ('[course]\ngrid = "EPSG:99999999"\n' + POINTS, ["not known to PROJ"]),
        # Bug: "true_azimuth_mil" was proposed.
        (
            POINTS + '[[leg]]\nto = "Post 7"\nazimuth = 41',
            ['"grid_azimuth_deg", "magnetic_azimuth_deg" or "true_azimuth_deg" is meant'],
        ),
        # Bug: "grid_magnetic_angle_deg = 65.5" was proposed.
        (
            '[course]\ngrid_magnetic_angle_deg = "-7"\n' + POINTS,
            ["is text where a number is wanted", "grid_magnetic_angle_deg = -7."],
        ),
        (
            '[course]\ngrid_magnetic_angle_deg = "west"\n' + POINTS,
            ["is text where a number is wanted", "grid north to magnetic north"],
        ),
        # Bug: "polar area A has no square BC there".
        (
            POINTS + '[[point]]\nname = "A"\nposition = "abc"',
            ['"abc" is no position that can be read', "16S GF 4182 4279"],
        ),
    ],
)
def test_one_slip_is_one_sentence(tmp_path, text, parts):
    (problem,) = problems_of(tmp_path, text)
    for part in parts:
        assert part in problem
    assert "\n" not in problem


@pytest.mark.parametrize("grid", ["EPSG:27700", "EPSG:32633", "EPSG:32761"])
def test_a_grid_that_is_not_that_of_the_course_is_refused(tmp_path, grid):
    (problem,) = problems_of(tmp_path, f'[course]\ngrid = "{grid}"\n' + POINTS)
    assert f'point "Start": "16S GF 4182 4279" lies far outside the course grid {grid}' in problem
    assert "(so do 2 more)" in problem


# The neighbour zone, and the equal-area grid of the whole country.
@pytest.mark.parametrize("grid", ["EPSG:32617", "EPSG:5070"])
def test_grids_that_reach_the_course_are_taken(tmp_path, grid):
    assert read(tmp_path, f'[course]\ngrid = "{grid}"\n' + POINTS).grid == grid


def test_a_grid_in_feet_is_refused(tmp_path):
    (problem,) = problems_of(tmp_path, '[course]\ngrid = "EPSG:2274"\n' + POINTS)
    assert "course, grid" in problem
    assert "foot" in problem


def test_a_lost_end_hides_no_other_slip(tmp_path):
    legs = '[[leg]]\nto = "Oak"\n[[leg]]\nfrom = "Elm"\nto = "Start"\n[[leg]]\nto = "Post 7"\n'
    problems = problems_of(tmp_path, POINTS + legs)
    assert [problem.split(": ")[0] for problem in problems] == [
        "lane.toml, leg 1, to",
        "lane.toml, leg 2, from",
    ]


def test_all_slips_are_told_at_once_in_the_order_of_a_plan(tmp_path):
    problems = problems_of(
        tmp_path,
        """
[course]
nane = "x"
date = "03/10/2026"
order = "any"
[[point]]
name = "Start"
position = "16S GF 418 4279"
[[point]]
name = "B"
position = "36,51,84,25"
[[leg]]
from = "Strat"
to = "B"
grid_azimuth_deg = 412
distance_m = -3
[[leg]]
paces = "580"
[[leg]]
to = "Start"
""",
    )
    assert [problem.split(": ")[0].removeprefix("lane.toml, ") for problem in problems] == [
        "course",
        "course, date",
        "course, order",
        "point 1 (Start), position",
        "point 2 (B), position",
        "leg 1, grid_azimuth_deg",
        "leg 1, distance_m",
        "leg 1, from",
        "leg 2, paces",
    ]


def test_signs_that_no_page_can_hold_are_taken_out_and_told(tmp_path):
    text = '[course]\nname = "a\\u001bb"\n' + POINTS.replace("Start", "St\\u0000art")
    plan = read(tmp_path, text + '[[leg]]\nto = "Post 7"\nnote = "a\\uFFFEb"')
    assert (plan.name, plan.points[0].name, plan.legs[0].note) == ("a b", "St art", "a b")
    assert sum("cannot be printed" in note for note in plan.notes) == 3


@pytest.mark.parametrize(
    ("grid", "position"),
    [("EPSG:2230", "2000000 500000"), ("EPSG:5513", "740000 1050000"), ("EPSG:4326", "SK 418 427")],
)
def test_positions_on_a_grid_that_is_refused_are_no_second_problem(tmp_path, grid, position):
    """Bug: each point added "or name the grid", which had been named."""
    text = f'[course]\ngrid = "{grid}"\n{POINTS}[[point]]\nname = "A"\nposition = "{position}"\n'
    (problem,) = problems_of(tmp_path, text)
    assert problem.startswith(f"lane.toml, course, grid: {grid}")


def test_a_grid_of_the_whole_earth_is_told_for_its_lengths(tmp_path):
    """Bug: the course "lies far outside" EPSG:3857, which reaches every course."""
    (problem,) = problems_of(tmp_path, '[course]\ngrid = "EPSG:3857"\n' + POINTS)
    assert "draws lengths 24% too long (so do 2 more)" in problem  # 1 / cos 36.5 degrees
    assert "outside" not in problem


def test_a_whole_circle_is_said_to_be_read_as_none(tmp_path):
    """Bug: an azimuth of 360 was told as 000.0, which nobody had written."""
    text = POINTS + '[[leg]]\nto = "Post 7"\ngrid_azimuth_deg = 360\nmagnetic_azimuth_mil = 6400\n'
    notes = read(tmp_path, text).notes
    assert "leg 1: grid_azimuth_deg = 360 was read as 0, which is the same direction." in notes
    assert "leg 1: magnetic_azimuth_mil = 6400 was read as 0, which is the same direction." in notes


def test_a_point_written_again_in_other_capitals_is_met_again(tmp_path):
    """Bug: "start" at the place of "Start" was another point, and nothing told of it.

    Without leg tables the points are visited in order, so the walk comes back to it.
    """
    again = '[[point]]\nname = "start"\nposition = "16S GF 4182 4279"\n'
    plan = read(tmp_path, POINTS + again)
    assert [leg.end for leg in plan.legs] == ["Post 7", "Post 8", "Start"]
    assert any('"start" lies where "Start" lies' in note for note in plan.notes)
