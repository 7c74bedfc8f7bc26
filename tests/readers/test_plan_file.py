"""One door for all formats: told by name, then by content; the same course reads the same."""

from __future__ import annotations

import shutil
from itertools import pairwise
from pathlib import Path

import pyproj
import pytest

from audit.errors import InputRefusedError
from audit.readers.plan_file import holds_plan, read_plan

PLANS = Path(__file__).resolve().parents[2] / "fixtures" / "plans"
FORMATS = ["toml", "csv", "gpx", "geojson"]
STOPS = ["Trailhead", "Split Oak", "Old Kiln", "Spring Box", "Trailhead"]


@pytest.mark.parametrize("suffix", FORMATS)
def test_one_course_in_four_formats_reads_to_the_same_legs(suffix):
    plan = read_plan(PLANS / f"lantern-hollow.{suffix}", name="Lantern Hollow, lane 2")
    wanted = read_plan(PLANS / "lantern-hollow.toml")
    assert (plan.name, plan.grid) == (wanted.name, wanted.grid)
    assert [(leg.name, leg.start, leg.end) for leg in plan.legs] == [
        (str(number), *pair) for number, pair in enumerate(pairwise(STOPS), 1)
    ]
    geod = pyproj.Geod(ellps="WGS84")
    for point, other in zip(plan.points, wanted.points, strict=True):
        assert point.name == other.name
        apart_m = geod.inv(
            point.position.longitude_deg,
            point.position.latitude_deg,
            other.position.longitude_deg,
            other.position.latitude_deg,
        )[2]
        assert apart_m < 0.02  # seven decimals of a degree are a centimetre
    if suffix == "csv":
        assert plan.legs == wanted.legs


# Worked from the grid references by hand: (42610 - 41820, 43120 - 42790) = (790, 330) m.
def test_the_sample_plan_agrees_with_its_own_references():
    leg = read_plan(PLANS / "lantern-hollow.toml").legs[0]
    assert leg.distance_m == pytest.approx((790**2 + 330**2) ** 0.5, abs=0.5)
    assert leg.grid_azimuth.degrees == pytest.approx(90 - 22.67, abs=0.05)


def test_the_sample_with_decimal_commas():
    plan = read_plan(PLANS / "kestrel-moor.csv", grid="EPSG:27700")
    assert [(leg.start, leg.end) for leg in plan.legs] == [
        ("Stile", "Cairn"),
        ("Cairn", "Sheepfold"),
        ("Sheepfold", "end of leg 3"),
    ]
    assert plan.legs[0].distance_m == 806.2
    with pytest.raises(InputRefusedError, match=r'set grid = "EPSG:27700"'):
        read_plan(PLANS / "kestrel-moor.csv")


@pytest.mark.parametrize("suffix", FORMATS)
@pytest.mark.parametrize("name", ["plan", "plan.txt", "PLAN.{}"])
def test_content_tells_where_the_name_does_not(tmp_path, suffix, name):
    path = tmp_path / name.format(suffix.upper())
    shutil.copyfile(PLANS / f"lantern-hollow.{suffix}", path)
    assert len(read_plan(path).legs) == 4


@pytest.mark.parametrize(
    ("suffix", "wrong"), [("toml", "csv"), ("gpx", "toml"), ("geojson", "gpx"), ("csv", "toml")]
)
def test_a_wrong_suffix_is_noted(tmp_path, suffix, wrong):
    path = tmp_path / f"plan.{wrong}"
    shutil.copyfile(PLANS / f"lantern-hollow.{suffix}", path)
    plan = read_plan(path)
    assert len(plan.legs) == 4
    assert any("it was read as" in note for note in plan.notes)


@pytest.mark.parametrize(
    ("name", "content", "part"),
    [
        ("plan.toml", b"", "plan.toml: is empty"),
        ("plan.csv", b" \n\n", "plan.csv: is empty"),
        ("plan.csv", b"a\x00b", "plan.csv: holds no text but binary data"),
        ("plan.toml", b"\x81\x8d\x8f", "plan.toml: holds no text but binary data"),
        ("plan.csv", b"\xff\xfea", "plan.csv: holds no text but binary data"),
        ("plan.csv", b"PK\x03\x04....", "plan.csv: is a spreadsheet or zip file"),
        ("plan.xls", b"\xd0\xcf\x11\xe0....", "plan.xls: is an old spreadsheet"),
        ("plan.gpx.gz", b"\x1f\x8b....", "plan.gpx.gz: is packed with gzip"),
        ("plan.pdf", b"%PDF-1.7", "plan.pdf: is a PDF document"),
        ("plan", b"dear diary", "plan: is in no format of a plan"),
        ("plan.doc", b"\x89PNG\r\n", "plan.doc: is in no format of a plan"),
    ],
)
def test_files_that_hold_no_plan(tmp_path, name, content, part):
    (tmp_path / name).write_bytes(content)
    with pytest.raises(InputRefusedError) as refused:
        read_plan(tmp_path / name)
    assert str(refused.value).startswith(part)
    assert len(refused.value.problems) == 1
    assert str(tmp_path) not in str(refused.value)


def test_no_file_a_folder_and_a_name_that_is_none(tmp_path):
    with pytest.raises(InputRefusedError, match=r"gone\.toml: there is no such file"):
        read_plan(tmp_path / "gone.toml")
    with pytest.raises(InputRefusedError, match="is a folder, not a file"):
        read_plan(tmp_path)
    with pytest.raises(InputRefusedError, match="cannot be read"):
        read_plan("plan\x00.toml")


def test_a_file_that_may_not_be_read(tmp_path, monkeypatch):
    def shut(*_args):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", shut)  # an administrator may read every file
    with pytest.raises(InputRefusedError, match=r"shut\.toml: may not be read by you"):
        read_plan(tmp_path / "shut.toml")


def test_paths_may_be_text_and_the_folder_is_not_told(tmp_path):
    path = tmp_path / "plan.toml"
    shutil.copyfile(PLANS / "lantern-hollow.toml", path)
    assert read_plan(str(path)).source == "plan.toml"


def test_the_same_file_reads_to_the_same_plan():
    for suffix in FORMATS:
        path = PLANS / f"lantern-hollow.{suffix}"
        assert read_plan(path) == read_plan(path)


@pytest.mark.parametrize("suffix", FORMATS)
def test_a_plan_of_a_folder_is_known_in_every_format(suffix):
    assert holds_plan(PLANS / f"lantern-hollow.{suffix}")


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("class.json", '{\n "format": 1,\n "name": "Fernbank Plateau"}'),
        ("settings.json", '{"type": "module", "colour": "red"}'),
        ("legs.csv", "leg,from,to,status,confidence,planned_azimuth_deg\n1,A,B,walked,0.9,40\n"),
        (
            "debrief.geojson",
            '{"type": "FeatureCollection", "features": [{"properties": {"dead_reckoned": false}}]}',
        ),
    ],
)
def test_other_files_of_a_folder_are_no_plans(tmp_path, name, text):
    """Bug: any JSON was a plan, and so was what a debrief had been written to."""
    (tmp_path / name).write_text(text, encoding="utf-8")
    assert not holds_plan(tmp_path / name)
