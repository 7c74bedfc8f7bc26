"""`leg-audit copy`: every form reads back to the same plan, but for what it says it cannot carry."""

from __future__ import annotations

import json
import shlex
from pathlib import Path

import gpxpy
import numpy as np
import pytest

import audit
from audit.cli.copy_files import copy_file
from audit.errors import OutputRefusedError
from audit.geodesy.grids import course_grid
from audit.leg_card.plan_differences import plan_differences

ROOT = Path(__file__).resolve().parents[2]
FULL = """
[course]
name = "Fernbank, \\"full\\" form"
date = 2026-09-19
grid_magnetic_angle_deg = -7.5
grid_magnetic_angle_date = 2025
paces_per_100m = 65.5
arrival_radius_m = 25
sheet = ["16S GF 40 50", "16S GF 55 65"]
safety_magnetic_azimuth_mil = 3200
safety_note = "to the road, then east"

[[point]]
name = "Gate"
position = "16S GF 4832 5828"
[[point]]
name = "Beech Knoll"
position = "36.641027, -84.218711"
half_square_m = 12.5
[[point]]
name = "Stone Ford"
position = "16S 749085.25 4059155.125"
[[point]]
name = "Not on a leg"
position = "16S GF 490 590"

[[leg]]
name = "first"
from = "Gate"
to = "Beech Knoll"
grid_azimuth_mil = 738
magnetic_azimuth_deg = 49.0
distance_m = 500.125
paces = 325
note = "wall, on the left; \\"dry\\""
[[leg]]
to = "Stone Ford"
via = ["16S GF 4890 5890", "16S GF 4900 5902"]
true_azimuth_deg = 42.2
[[leg]]
grid_azimuth_deg = 92.0
distance_m = 570
[[leg]]
from = "end of leg 3"
to = "Gate"
"""


@pytest.fixture
def full(tmp_path, monkeypatch) -> Path:
    tmp_path = tmp_path / "here"
    tmp_path.mkdir()
    (tmp_path / "full.toml").write_text(FULL, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path / "full.toml"


def back_from(done, name):
    """Read a copy with the options that the command said."""
    said = [line for line in done.err.splitlines() if line.startswith("To read it: ")]
    words = shlex.split(said[0])[6:] if said else []
    options = {
        key.removeprefix("--").replace("-", "_"): value
        for key, value in zip(words[::2], words[1::2], strict=True)
    }
    units = {"grid_magnetic_angle": "_deg", "arrival_radius": "_m", "paces_per_100m": ""}
    for key, unit in units.items():
        if key in options:
            options[key + unit] = float(options.pop(key))
    return audit.read_plan(name, **options)


@pytest.mark.usefixtures("full")
@pytest.mark.parametrize("form", ["toml", "geojson"])
def test_the_full_forms_carry_all_of_it(leg_audit, form):
    done = leg_audit("copy", "full.toml", "--out", f"copy.{form}")
    assert done.status == 0
    back = audit.read_plan(f"copy.{form}")
    differ = plan_differences(audit.read_plan("full.toml"), back)
    assert differ == ()
    assert "does not carry" not in done.err
    again = leg_audit("copy", f"copy.{form}", "--out", f"again.{form}")
    assert again.status == 0
    assert Path(f"again.{form}").read_bytes() == Path(f"copy.{form}").read_bytes()


@pytest.mark.usefixtures("full")
def test_csv_carries_the_numbers_of_the_legs(leg_audit):
    done = leg_audit("copy", "full.toml", "--out", "copy.csv")
    back = back_from(done, "copy.csv")
    differ = set(plan_differences(audit.read_plan("full.toml"), back))
    assert differ == {
        "leg 2: via", "points", "precision of Beech Knoll", "grid_magnetic_angle_dated", "sheet",
        "safety bearing", "safety_note",
    }  # fmt: skip
    for said in (
        "the via positions of leg 2", "points on no leg: Not on a leg",
        "how well these points are known: Beech Knoll", "the date of the grid-magnetic angle",
        "the corners of the map sheet", "the safety bearing",
    ):  # fmt: skip
        assert said in done.err


@pytest.mark.usefixtures("full")
def test_gpx_carries_the_places_and_the_ways_between_them(leg_audit):
    done = leg_audit("copy", "full.toml", "--out", "copy.gpx")
    plan, back = audit.read_plan("full.toml"), back_from(done, "copy.gpx")
    assert back.name == plan.name
    grid = course_grid(plan.grid)
    for point in back.points:
        before = plan.position(point.name)
        if before is None:
            assert point.name == "end of leg 3"
            continue
        here, there = (
            np.array(grid.to_grid(one.longitude_deg, one.latitude_deg))
            for one in (before, point.position)
        )
        assert np.hypot(*(here - there)) < 0.001
    assert [(one.start, one.end) for one in back.legs] == [
        (one.start, one.end) for one in plan.legs
    ]
    assert [len(one.via) for one in back.legs] == [0, 2, 0, 0]
    # The reference reader of the format reads it too.
    route = gpxpy.parse(Path("copy.gpx").read_text(encoding="utf-8")).routes[0]
    assert next(point.name for point in route.points if point.name) == "Gate"
    assert route.points[1].description.startswith("Leg first: 049.0° magnetic, 500 m")
    # Bug: the straight azimuth stood at the end of a leg along via positions.
    along = [point.description for point in route.points if point.type == "via"]
    assert [text.split(":")[0] for text in along] == ["Leg 2", "Leg 2"]
    ends = {point.name: point.description for point in route.points}
    assert len({text.split(":")[1] for text in (*along, ends["Stone Ford"])}) == 3
    assert "the end of leg 3 is dead reckoned" in done.err
    assert "the names of the legs" in done.err


@pytest.mark.parametrize("form", ["toml", "geojson", "csv", "gpx"])
@pytest.mark.parametrize(
    ("source", "options"),
    [
        ("lantern-hollow.toml", ()), ("lantern-hollow.gpx", ("--date", "2026-10-03")),
        ("lantern-hollow.geojson", ("--date", "2026-10-03")),
        ("lantern-hollow.csv", ("--date", "2026-10-03")),
        ("kestrel-moor.csv", ("--date", "2026-10-03", "--grid", "EPSG:27700")),
    ],
)  # fmt: skip
def test_every_form_into_every_form(leg_audit, tmp_path, form, source, options):
    path, copy = ROOT / "fixtures" / "plans" / source, tmp_path / f"copy.{form}"
    done = leg_audit("copy", path, "--out", copy, *options)
    assert done.status == 0, done.err
    given = {
        key.removeprefix("--"): value
        for key, value in zip(options[::2], options[1::2], strict=True)
    }
    differ = plan_differences(audit.read_plan(path, **given), back_from(done, copy))
    lost = ("azimuth", "distance_m", "paces", "note", "precision", "name", "sheet", "points")
    if form in ("toml", "geojson"):
        assert differ == ()
    else:
        assert [one for one in differ if not any(word in one for word in lost)] == []
        assert not any("position of" in one for one in differ)


@pytest.mark.parametrize("seed", range(25))
def test_plans_at_random_come_back_from_every_form(tmp_path, seed):
    rng = np.random.default_rng(seed)
    zone, band = (("33", "V", 6_650_000.0), ("55", "H", 6_100_000.0))[seed % 2][:2]
    north = 6_650_000.0 if seed % 2 == 0 else 6_100_000.0
    count = int(rng.integers(2, 8))
    lines = ["[course]", f'name = "Course {seed}"', "date = 2026-05-05"]
    for number in range(count):
        east_m, north_m = 500_000.0 + rng.uniform(-1e5, 1e5), north + rng.uniform(0, 3e4)
        lines += ["[[point]]", f'name = "P{number}, \\u00e9"',
                  f'position = "{zone}{band} {east_m:.3f} {north_m:.3f}"']  # fmt: skip
    source = tmp_path / "plan.toml"
    source.write_text("\n".join(lines), encoding="utf-8")
    plan = audit.read_plan(source)
    for form in ("toml", "geojson"):
        copy_file(source, tmp_path / f"copy.{form}", onto=None, options={})
        assert plan_differences(plan, audit.read_plan(tmp_path / f"copy.{form}")) == ()
    for form in ("csv", "gpx"):
        copy_file(source, tmp_path / f"copy.{form}", onto=None, options={})
        options = {"date": "2026-05-05", "name": plan.name, "grid": plan.grid}
        assert plan_differences(plan, audit.read_plan(tmp_path / f"copy.{form}", **options)) == ()


@pytest.mark.usefixtures("full")
def test_onto_the_grid_of_another_map(leg_audit):
    done = leg_audit("copy", "full.toml", "--onto", "EPSG:32617", "--out", "other.toml")
    assert done.status == 0, done.err
    assert "look it up in the margin of the map in hand all the same" in done.err
    moved = audit.read_plan("other.toml")
    assert moved.grid == "EPSG:32617"
    for one, other in zip(audit.read_plan("full.toml").points, moved.points, strict=True):
        assert one.position.half_square_m == other.position.half_square_m
        assert one.position.latitude_deg == pytest.approx(other.position.latitude_deg, abs=1e-8)
    assert leg_audit("check", "other.toml").out.count("DIFFERS") == (
        leg_audit("check", "full.toml").out.count("DIFFERS")
    )


@pytest.mark.usefixtures("full")
def test_free_order_is_carried_by_the_full_forms_and_said_to_be_lost_by_the_others(leg_audit):
    Path("free.toml").write_text(
        '[course]\nname = "Free"\ndate = 2026-09-19\norder = "free"\n'
        '[[point]]\nname = "Gate"\nposition = "16S GF 4832 5828"\n'
        '[[point]]\nname = "Knoll"\nposition = "16S GF 4865 5865"\n'
        '[[point]]\nname = "Ford"\nposition = "16S GF 4908 5915"\n'
    )
    for form in ("toml", "geojson"):
        leg_audit("copy", "free.toml", "--out", f"copy.{form}")
        assert plan_differences(audit.read_plan("free.toml"), audit.read_plan(f"copy.{form}")) == ()
    done = leg_audit("copy", "free.toml", "--out", "copy.gpx")
    assert "that the points may be visited in any order" in done.err


@pytest.mark.usefixtures("full")
def test_the_geojson_stands_up_to_the_standard(leg_audit):
    leg_audit("copy", "full.toml", "--out", "copy.geojson")
    document = json.loads(Path("copy.geojson").read_text(encoding="utf-8"))
    assert document["type"] == "FeatureCollection"
    for feature in document["features"]:
        # RFC 7946, 3.2 and 3.1.1: these members, longitude before latitude.
        assert feature.keys() == {"type", "properties", "geometry"}
        longitude, latitude = feature["geometry"]["coordinates"]
        assert -85.0 < longitude < -84.0 < 36.0 < latitude < 37.0


@pytest.mark.usefixtures("full")
@pytest.mark.parametrize(
    ("arguments", "status", "said"),
    [
        (("--out", "copy.doc"), 2, "does not say in which form"),
        (("--out", "../here/full.toml"), 2, "is the plan itself, and is not written over"),
        (("--out", "copy.toml", "--onto", "EPSG:27700"), 2, "does not reach the point"),
        (("--out", "copy.toml", "--onto", "moor"), 2, "is no grid for a plan"),
        (("--out", "full.toml/x.csv",), 2, "a file stands where a folder is wanted"),
    ],
)  # fmt: skip
def test_wrong_use_is_told_and_writes_nothing(leg_audit, arguments, status, said):
    done = leg_audit("copy", "full.toml", *arguments)
    assert done.status == status
    assert said in done.err
    assert not Path("copy.toml").exists()
    assert Path("full.toml").read_text(encoding="utf-8") == FULL
    assert leg_audit("copy", "full.toml").status == 2


def test_a_copy_that_would_be_another_plan_is_not_written(full, monkeypatch):
    from audit.cli import copy_files
    from audit.reports.plan_copy import PlanCopy

    text = FULL.replace("16S GF 4832 5828", "16S GF 4833 5828")
    spoilt = lambda _: PlanCopy(text=text, lost=(), options={})  # noqa: E731
    monkeypatch.setitem(copy_files._FORMS, ".toml", ("TOML", spoilt))
    with pytest.raises(OutputRefusedError, match="position of Gate"):
        copy_file(full, full.with_name("copy.toml"), onto=None, options={})
    assert not full.with_name("copy.toml").exists()
