"""Areas of a course: GeoJSON after RFC 7946, and one sentence for each thing that is wrong."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from audit.errors import InputRefusedError
from audit.geodesy.areas_on_grid import areas_on_grid
from audit.geodesy.grids import course_grid
from audit.readers.areas_file import read_areas

SQUARE = [[-84.0, 36.0], [-83.99, 36.0], [-83.99, 36.01], [-84.0, 36.01], [-84.0, 36.0]]
HOLE = [[-83.996, 36.004], [-83.994, 36.004], [-83.994, 36.006], [-83.996, 36.006],
        [-83.996, 36.004]]  # fmt: skip


def feature(geometry: object, **properties: object) -> dict:
    return {"type": "Feature", "geometry": geometry, "properties": properties}


def polygon(*rings: object) -> dict:
    return {"type": "Polygon", "coordinates": list(rings)}


def written(tmp_path: Path, *features: object) -> Path:
    path = tmp_path / "areas.geojson"
    path.write_text(json.dumps({"type": "FeatureCollection", "features": list(features)}))
    return path


def problems(path: Path) -> list[str]:
    with pytest.raises(InputRefusedError) as refused:
        read_areas(path)
    return [str(one) for one in refused.value.problems]


def test_all_kinds_are_read_and_lie_where_they_should(tmp_path):
    line = {"type": "LineString", "coordinates": SQUARE[:2]}
    many = {"type": "MultiPolygon", "coordinates": [[SQUARE]]}
    path = written(
        tmp_path,
        feature(polygon(SQUARE, HOLE), kind="bounds", name="Ground"),
        feature(many, kind="No go"),
        feature(line, kind="hazard", name="Scarp"),
    )
    areas = read_areas(path)
    assert [(one.name, one.kind) for one in areas] == [
        ("Ground", "bounds"), ("no-go 2", "no-go"), ("Scarp", "hazard"),
    ]  # fmt: skip
    placed = areas_on_grid(areas, course_grid("EPSG:32617"))
    # By rule: 0.01 degrees of latitude are 1110 m, of longitude 1110 m times cos(36 degrees).
    assert placed.no_go[0].shape.area == pytest.approx(1110.0 * 1110.0 * 0.809, rel=0.01)
    assert placed.bounds.area == pytest.approx(0.96 * placed.no_go[0].shape.area, rel=1e-4)
    assert placed.hazards[0].shape.length == pytest.approx(898.0, rel=0.01)


def test_roads_are_lines(tmp_path):
    line = {"type": "LineString", "coordinates": SQUARE[:2]}
    (road,) = read_areas(written(tmp_path, feature(line, kind="road", name="Mill Road")))
    assert (road.kind, road.name, len(road.lines)) == ("road", "Mill Road", 1)
    (placed,) = areas_on_grid([road], course_grid("EPSG:32617")).roads
    assert placed.shape.length == pytest.approx(898.0, rel=0.01)
    (told,) = problems(written(tmp_path, feature(polygon(SQUARE), kind="road")))
    assert "is an area, and a road is a line" in told


def test_every_problem_of_a_file_is_told_at_once(tmp_path):
    bow = [SQUARE[0], SQUARE[2], SQUARE[1], SQUARE[3], SQUARE[0]]
    path = written(
        tmp_path,
        feature(polygon(SQUARE), kind="swamp", name="A"),
        feature(polygon(SQUARE), name="B"),
        feature(polygon(bow), kind="no-go"),
        feature({"type": "LineString", "coordinates": SQUARE}, kind="no-go"),
        feature({"type": "Point", "coordinates": SQUARE[0]}, kind="hazard"),
        feature(polygon([[400.0, 36.0], *SQUARE[1:]]), kind="hazard"),
        feature(polygon("here"), kind="hazard"),
        feature(None, kind="hazard"),
        "no feature",
    )
    told = problems(path)
    assert len(told) == 9
    assert told[0].startswith('areas.geojson, feature 1 (A), kind: "swamp" is no kind of area.')
    assert "has no kind. Write one of" in told[1]
    assert "its outline is not sound (self-intersection)" in told[2]
    assert "is a line, and only a hazard or a road may be one" in told[3]
    assert '"Point" is no polygon' in told[4]
    assert "is no longitude and latitude" in told[5]
    assert "cannot be drawn" in told[6]
    assert all("has no geometry or no properties" in one for one in told[7:])


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("{", "is not JSON"),
        ("[]", "is no FeatureCollection"),
        ('{"type": "FeatureCollection", "features": []}', "holds no areas"),
        ("[" * 100_000, "is nested too deeply"),
    ],
)
def test_what_is_no_areas_file_is_refused(tmp_path, text, said):
    path = tmp_path / "areas.geojson"
    path.write_text(text)
    assert said in problems(path)[0]
