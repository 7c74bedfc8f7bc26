"""What a plan says of the map's margin: the year of its angle, the corners of the sheet."""

from __future__ import annotations

import datetime as dt

import pytest

from audit.azimuths import TrueAzimuth
from audit.errors import InputRefusedError
from audit.leg_card import work_out_card
from audit.readers.plan_file import read_plan

PLAN = """
[course]
name = "Two points"
date = 2026-10-03
grid_magnetic_angle_deg = -6.0
{line}
[[point]]
name = "A"
position = "16S GF 4182 4279"
[[point]]
name = "B"
position = "16S GF 4265 4312"
"""


def read(tmp_path, line):
    path = tmp_path / "plan.toml"
    path.write_text(PLAN.format(line=line), encoding="utf-8")
    return read_plan(path)


@pytest.mark.parametrize(
    ("written", "day"),
    [
        ("2019", dt.date(2019, 7, 1)),
        ('"2019"', dt.date(2019, 7, 1)),
        ("2019-03-05", dt.date(2019, 3, 5)),
        ('"2019-03-05"', dt.date(2019, 3, 5)),
    ],
)
def test_the_year_or_day_of_the_angle(tmp_path, written, day):
    dated = read(tmp_path, f"grid_magnetic_angle_date = {written}")
    assert dated.grid_magnetic_angle_date == day
    assert dated.grid_magnetic_angle_dated == written.strip('"')
    assert read(tmp_path, "").grid_magnetic_angle_date is None


@pytest.mark.parametrize("written", ["19", "true", '"long ago"'])
def test_what_is_no_year_is_refused(tmp_path, written):
    with pytest.raises(InputRefusedError, match="grid_magnetic_angle_date"):
        read(tmp_path, f"grid_magnetic_angle_date = {written}")


def test_the_corners_of_the_sheet(tmp_path):
    sheet = read(tmp_path, 'sheet = ["16S GF 41 42", "16S GF 45 46"]').sheet
    assert sheet is not None
    assert [corner.half_square_m for corner in sheet] == [500.0, 500.0]
    assert sheet[0].longitude_deg < sheet[1].longitude_deg
    assert read(tmp_path, "").sheet is None


@pytest.mark.parametrize("written", ['["16S GF 41 42"]', '"16S GF 41 42"', '["here", "there"]'])
def test_a_sheet_without_two_corners_is_refused(tmp_path, written):
    with pytest.raises(InputRefusedError, match="sheet"):
        read(tmp_path, f"sheet = {written}")


@pytest.mark.parametrize(
    ("line", "given", "magnetic_deg"),
    [
        ("safety_grid_azimuth_deg = 180", "grid", 186.0),  # 6 west is added
        ("safety_magnetic_azimuth_deg = 180", "magnetic", 180.0),
        ("safety_magnetic_azimuth_mil = 3200", "magnetic", 180.0),
        ("safety_grid_azimuth_mil = 3200", "grid", 186.0),
    ],
)
def test_the_safety_bearing_comes_from_either_north_and_gets_the_angle(
    tmp_path, line, given, magnetic_deg
):
    # Magnetic = grid - angle (TC 3-25.26, 6-13).
    plan = read(tmp_path, line + '\nsafety_note = "to the road, then east"')
    safety = work_out_card(plan).safety
    assert safety.given == given
    assert safety.magnetic.degrees == pytest.approx(magnetic_deg)
    assert safety.grid.degrees == pytest.approx(magnetic_deg - 6.0)
    assert safety.note == "to the road, then east"


def test_a_true_safety_bearing_goes_by_the_convergence(tmp_path):
    card = work_out_card(read(tmp_path, "safety_true_azimuth_deg = 90"))
    grid = card.angles.grid_from_true(TrueAzimuth(90.0))
    assert (card.safety.given, card.safety.grid) == ("true", grid)
    assert card.safety.magnetic == card.angles.magnetic(grid)


@pytest.mark.parametrize(
    ("line", "match"),
    [
        ("safety_grid_azimuth_deg = 180\nsafety_magnetic_azimuth_deg = 186", "more than one north"),
        ('safety_note = "to the road"', "without a safety bearing"),
        ("safety_grid_azimuth_deg = 361", "out of range"),
        (
            "safety_azimuth_deg = 180",
            '"safety_grid_azimuth_deg", .*_magnetic_azimuth_deg" or .*_true_azimuth_deg" is meant',
        ),
    ],
)
def test_a_safety_bearing_that_cannot_be_meant_is_refused(tmp_path, line, match):
    with pytest.raises(InputRefusedError, match=match):
        read(tmp_path, line)


def test_a_course_without_a_safety_bearing_has_none(tmp_path):
    assert work_out_card(read(tmp_path, "")).safety is None


@pytest.mark.parametrize(
    ("line", "options", "said"),
    [
        ("", {"safety_grid_azimuth_deg": 180.0, "safety_magnetic_azimuth_deg": 187.0},
         "than another option does"),
        ("safety_grid_azimuth_deg = 180", {"safety_magnetic_azimuth_deg": 187.0},
         "than the file does"),
    ],
)  # fmt: skip
def test_options_that_disagree_are_not_the_files_fault(tmp_path, line, options, said):
    """Bug: two options that gave a safety bearing were told as the file's."""
    path = tmp_path / "plan.toml"
    path.write_text(PLAN.format(line=line))
    with pytest.raises(InputRefusedError) as refused:
        read_plan(path, **options)
    (problem,) = refused.value.problems
    assert problem.place == "option safety_magnetic_azimuth_deg"
    assert said in problem.rule


def test_a_course_at_a_pole_is_on_no_zone(tmp_path):
    """Bug: the polar grid was told as the UTM zone in which the first point lies."""
    path = tmp_path / "plan.toml"
    text = PLAN.format(line="").replace("16S GF 4182 4279", "85.0, 10.0")
    path.write_text(text.replace("16S GF 4265 4312", "85.01, 10.0"))
    (note,) = (one for one in read_plan(path).notes if "Course grid" in one)
    assert note == "Course grid: EPSG:32661, the polar grid (UPS) on which the first point lies."
