"""What a plan says of the map's margin: the year of its angle, the corners of the sheet."""

from __future__ import annotations

import datetime as dt

import pytest

from audit.errors import InputRefusedError
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
    assert read(tmp_path, f"grid_magnetic_angle_date = {written}").grid_magnetic_angle_date == day
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
