"""Plans as spreadsheets save them: separators, decimal commas, encodings, lost zeros."""

from __future__ import annotations

import pytest
from readers.plan_said import legs_of, refusal

from audit.azimuths import GridAzimuth
from audit.readers.plan_file import read_plan

HEADER = (
    "leg,from,to,from_position,to_position,grid_azimuth_deg,magnetic_azimuth_deg,"
    "distance_m,paces,note\n"
)
A, B, C = "16S GF 4182 4279", "16S GF 4265 4312", "16S GF 4310 4290"
FULL = HEADER + (
    f'1,Start,Post 7,{A},{B},68.3,75.3,893,580,"stream, on the left"\n2,Post 7,Post 8,,{C},,,,,\n'
)


def read(tmp_path, text, encoding="utf-8", **options):
    path = tmp_path / "lane.csv"
    path.write_bytes(text.encode(encoding))
    return read_plan(path, **options)


def problems_of(tmp_path, text, **options):
    return refusal(read, tmp_path, text, **options)


def test_the_columns_of_the_format(tmp_path):
    plan = read(tmp_path, FULL, name="Ridge", paces_per_100m=65, date="2026-10-03")
    assert legs_of(plan) == [("1", "Start", "Post 7"), ("2", "Post 7", "Post 8")]
    assert [point.name for point in plan.points] == ["Start", "Post 7", "Post 8"]
    leg = plan.legs[0]
    assert leg.grid_azimuth == GridAzimuth(68.3)
    assert leg.magnetic_azimuth is not None
    assert (leg.distance_m, leg.paces, leg.note) == (893.0, 580.0, "stream, on the left")
    assert (plan.name, plan.paces_per_100m, plan.grid) == ("Ridge", 65.0, "EPSG:32616")
    assert str(plan.date) == "2026-10-03"


@pytest.mark.parametrize(
    "rewrite",
    [
        lambda text: text.replace("\n", "\r\n"),
        lambda text: text.replace("\n", "\r"),
        lambda text: "\ufeff" + text,
        lambda text: "\n\n" + text.replace("\n", "\n\n") + ",,,,,,,,,\n",
        lambda text: text.replace("from_position", " From Position ").replace("leg,", "Leg,"),
        lambda text: text.replace(",75.3", ', "75.3"'),
        lambda text: text.replace(",893", ",893 m").replace("68.3", "68.3°"),
        lambda text: text.rstrip(",\n") + "\n",
    ],
)
def test_line_ends_marks_and_blanks_change_nothing(tmp_path, rewrite):
    wanted = read(tmp_path, FULL)
    plan = read(tmp_path, rewrite(FULL))
    assert plan.points == wanted.points
    assert plan.legs == wanted.legs


@pytest.mark.parametrize("directive", ["", "sep=;\r\n"])
def test_semicolons_and_decimal_commas(tmp_path, directive):
    text = directive + (
        "leg;from;to;from_position;to_position;grid_azimuth_deg;distance_m;paces\r\n"
        "1;A;B;36,512 -84,231;36,521 -84,231;1,250;1,250;1 250\r\n"
        "2;B;C;;36.53, -84.231;68,25;893,5;580\r\n"
    )
    plan = read(tmp_path, text)
    assert plan.position("A").latitude_deg == 36.512
    assert plan.position("C").latitude_deg == 36.53
    assert [leg.distance_m for leg in plan.legs] == [1.25, 893.5]
    assert [leg.grid_azimuth.degrees for leg in plan.legs] == [1.25, 68.25]
    assert plan.legs[0].paces == 1250.0
    notes = "\n".join(plan.notes)
    assert "Commas in distance_m are read as decimal commas." in notes
    assert "Marks between thousands in paces are left out." in notes


def test_tabs(tmp_path):
    text = f"leg\tfrom_position\tto_position\tdistance_m\n\t{A}\t{B}\t893,5\n"
    plan = read(tmp_path, text)
    assert legs_of(plan) == [("1", "Point 1", "Point 2")]
    assert plan.legs[0].distance_m == 893.5


@pytest.mark.parametrize(
    ("cell", "distance_m"),
    [
        ('"893,5"', 893.5),
        ('"1,250.5"', 1250.5),
        ('"123,456"', 123.456),  # 123456 m is no leg
        ("1.250", 1.25),
        ("1 250", 1250.0),
        ("1'250", 1250.0),
    ],
)
def test_numbers_that_have_one_reading(tmp_path, cell, distance_m):
    text = f"from_position,to_position,distance_m\n{A},{B},{cell}\n"
    assert read(tmp_path, text).legs[0].distance_m == distance_m


@pytest.mark.parametrize(
    ("separator", "cell"), [(",", '"1,250"'), ("\t", "1,250"), (";", "1.250"), (",", '"12,500"')]
)
def test_numbers_that_have_two_are_refused_with_both(tmp_path, separator, cell):
    rows = (["from_position", "to_position", "distance_m"], [A, B, cell])
    (problem,) = problems_of(tmp_path, "\n".join(separator.join(row) for row in rows))
    assert "line 2, distance_m" in problem
    both = "12.5 or as 12500" if "12," in cell else "1.25 or as 1250"
    assert f"can be read as {both}" in problem


def test_an_azimuth_with_three_decimals_is_clear(tmp_path):
    text = f'from_position,to_position,grid_azimuth_deg\n{A},{B},"68,250"\n'
    assert read(tmp_path, text).legs[0].grid_azimuth == GridAzimuth(68.25)


def test_windows_1252_and_utf_16_are_read_and_noted(tmp_path):
    text = f"from,to,from_position,to_position\nStart,Höhle,{A},{B}\n"
    for encoding, part in (("cp1252", "Windows-1252"), ("utf-16", "UTF-16")):
        plan = read(tmp_path, text, encoding=encoding)
        assert plan.legs[0].end == "Höhle"
        assert any(part in note for note in plan.notes)


def test_ends_without_a_position_are_dead_reckoned(tmp_path):
    text = (
        "from,to,from_position,magnetic_azimuth_mil,distance_m\n"
        f"Start,Cairn,{A},1600,400\n"
        "Cairn,,,800,300\n"
        ",Wall,,0,200\n"
    )
    plan = read(tmp_path, text)
    assert legs_of(plan) == [
        ("1", "Start", "Cairn"),
        ("2", "Cairn", "end of leg 2"),
        ("3", "end of leg 2", "Wall"),
    ]
    assert [point.name for point in plan.points] == ["Start"]
    assert sum("where the azimuth and" in note for note in plan.notes) == 3


def test_an_end_in_other_capitals_is_the_point_and_not_dead_reckoned(tmp_path):
    text = (
        "from,to,from_position,to_position,grid_azimuth_deg,distance_m\n"
        f"A,Oak,{A},{B},,\nOak,C,,{C},,\nC,oak,,,250,500\n"
    )
    plan = read(tmp_path, text)
    assert plan.legs[2].end == "Oak"
    assert 'line 4, to: "oak" was taken as "Oak".' in plan.notes


def test_a_dead_reckoned_end_in_other_capitals_is_the_one_before(tmp_path):
    """Bug: "hut" was dead reckoned to a second place beside that of "Hut"."""
    text = (
        "from,to,from_position,to_position,grid_azimuth_deg,distance_m\n"
        f"A,Hut,{A},,68,893\nHut,C,,{C},,\nC,hut,,,250,500\nhut,A,,,,\n"
    )
    plan = read(tmp_path, text)
    assert [(leg.start, leg.end) for leg in plan.legs[2:]] == [("C", "Hut"), ("Hut", "A")]
    assert 'line 4, to: "hut" was taken as "Hut".' in plan.notes


def test_a_point_needs_its_position_once(tmp_path):
    text = f"from,to,from_position,to_position\nA,B,{A},\nB,C,{B},{C}\nC,A,,\n"
    assert legs_of(read(tmp_path, text)) == [("1", "A", "B"), ("2", "B", "C"), ("3", "C", "A")]


def test_one_name_for_two_places_is_told_apart_and_noted(tmp_path):
    text = f"from,to,from_position,to_position\nPost,Post,{A},{B}\nPost,C,{B},{C}\n"
    plan = read(tmp_path, text)
    assert legs_of(plan) == [("1", "Post", "Post (2)"), ("2", "Post (2)", "C")]
    assert any('"Post" stands for several places' in note for note in plan.notes)


def test_one_place_in_other_capitals_is_one_point(tmp_path):
    """Bug: "Knoll" and "knoll" at one place were two points, and nothing told of it."""
    text = f"from,to,from_position,to_position\nA,Knoll,{A},{B}\nknoll,C,{B},{C}\n"
    plan = read(tmp_path, text)
    assert legs_of(plan) == [("1", "A", "Knoll"), ("2", "Knoll", "C")]
    assert any('"knoll" lies where "Knoll" lies' in note for note in plan.notes)
    assert not any("not where the leg before it ends" in note for note in plan.notes)


def test_two_places_in_other_capitals_stay_two_and_are_told(tmp_path):
    """Bug: "Knoll" and "knoll" at two places were two points, and nothing told of it.

    Each place is met again under its own name, however that is spelt.
    """
    text = (
        "from,to,from_position,to_position\n"
        f"A,Knoll,{A},{B}\nknoll,A,{C},{A}\na,KNOLL,{A},{C}\nknoll,knoll,{C},{B}\n"
    )
    plan = read(tmp_path, text)
    assert [(leg.start, leg.end) for leg in plan.legs] == [
        ("A", "Knoll"), ("knoll", "A"), ("A", "knoll"), ("knoll", "Knoll"),
    ]  # fmt: skip
    assert plan.namesakes == (("Knoll", "knoll"),)
    assert any('"Knoll" and "knoll" differ in capitals only' in note for note in plan.notes)


def test_one_point_given_coarse_and_fine_stays_one(tmp_path):
    text = f"from,to,from_position,to_position\nA,B,{A},16S GF 426 431\nB,C,{B},{C}\n"
    assert legs_of(read(tmp_path, text)) == [("1", "A", "B"), ("2", "B", "C")]


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("hello world\n1,2\n", ["line 1: names no known column", "from_position"]),
        (HEADER, ["holds 0 points and no leg"]),
        (
            f"leg,from_position,to_position,colour\n1,{A},{B},red\n",
            ['line 1: "colour" is no column', "Known are: leg, from"],
        ),
        (
            f"leg,from_position,to_position,distance\n1,{A},{B},5\n",
            ['line 1: "distance" is no column', '"distance_m"'],
        ),
        (f"leg,leg,from_position,to_position\n1,1,{A},{B}\n", ['"leg" names two columns']),
        (
            "from_position,to_position\n36.5, -84.2, 36.6, -84.2\n",
            ["line 2: has more cells than the 2 columns", "quotation marks"],
        ),
        (
            f"from_position,to_position\n16S GF 182 4279,{B}\n",
            ["line 2, from_position", "3 and 4 digits", "spreadsheets drop leading zeros"],
        ),
        (f"to_position\n{A}\n", ["line 2, from: has no start"]),
        (f"from,to,from_position\nA,B,{A}\n", ['line 2, to: "B" names no point']),
        (f"from,to,to_position\nX,B,{A}\n", ['line 2, from: "X" names no point']),
        (f"from_position\n{A}\n", ["line 2, to: has neither an end nor both"]),
        (
            f"from_position,to_position,distance_m\n{A},{B},4 furlongs\n",
            ['line 2, distance_m: "4 furlongs" is not a number'],
        ),
        (
            f"from_position,to_position,grid_azimuth_deg\n{A},{B},412\n",
            ['line 2, grid_azimuth_deg: "412" is out of range (0 to 360 degrees)'],
        ),
        (
            f"from_position,to_position,paces\n{A},{B},-5\n",
            ['line 2, paces: "-5" is out of range'],
        ),
        (
            f"leg,from_position,to_position\n\n1,{A},{B}\n1,{B},{C}\n",
            ['line 4: "1" is the name of line 3 too'],
        ),
        ('leg,to\n1,"x\n', ["line 2: is not CSV", "quotation mark"]),
        (
            f'leg,from_position,to_position,note\n1,{A},{B},"two\nlines"\n2,{B},16S GF 1\n',
            ["line 4, to_position"],
        ),
    ],
)
def test_one_slip_is_one_sentence(tmp_path, text, parts):
    (problem,) = problems_of(tmp_path, text)
    for part in ["lane.csv", *parts]:
        assert part in problem
    assert "\n" not in problem


def test_all_slips_are_told_at_once(tmp_path):
    text = (
        "leg,from,to,from_position,to_position,distance_m,colour\n"
        f'1,A,B,16S GF 182 4279,{B},"1,250",red\n'
        "2,B,C,,36.512,3,\n"
        "2,X,C,,,4 furlongs,\n"
    )
    places = [problem.split(": ")[0] for problem in problems_of(tmp_path, text)]
    assert places == [
        "lane.csv, line 1",
        "lane.csv, line 2, from_position",
        "lane.csv, line 2, distance_m",
        "lane.csv, line 3, to_position",
        "lane.csv, line 4, distance_m",
        "lane.csv, line 4, from",
        "lane.csv, line 4",
    ]


def test_a_caller_may_free_the_order_of_a_plan_with_legs(tmp_path):
    plan = read(tmp_path, FULL, order="free")
    assert plan.order == "free"
    assert legs_of(plan) == [("Post 7", "Start", "Post 7"), ("Post 8", "Post 7", "Post 8")]
    assert all(leg.grid_azimuth is None and leg.distance_m is None for leg in plan.legs)
    assert any("was put aside" in note for note in plan.notes)


def test_an_end_without_a_position_is_not_looked_for_in_free_order(tmp_path):
    text = HEADER + f"1,Start,Post 7,{A},{B},,,,,\n2,Post 7,,,,68,,500,,\n"
    problems = problems_of(tmp_path, text, order="free")
    assert len(problems) == 1
    assert "line 3" in problems[0]
    assert "ends at no point with a position" in problems[0]
