"""Points in order or one line, as RFC 7946 has them."""

from __future__ import annotations

import json

import pytest
from readers.plan_said import stops_of

from audit.errors import InputRefusedError
from audit.readers.plan_file import read_plan


def feature(coordinates, name=None, kind="Point"):
    return {
        "type": "Feature",
        "properties": {"name": name} if name is not None else None,
        "geometry": {"type": kind, "coordinates": coordinates},
    }


def collection(*features, **more):
    return {"type": "FeatureCollection", "features": list(features), **more}


A, B, C = [-84.3, 36.5], [-84.3, 36.51], [-84.29, 36.51, 300.0]
LINE = {"type": "LineString", "coordinates": [A, B, C]}
CRS84 = {"type": "name", "properties": {"name": "urn:ogc:def:crs:OGC:1.3:CRS84"}}
MERCATOR = {"type": "name", "properties": {"name": "urn:ogc:def:crs:EPSG::3857"}}


def read(tmp_path, document, **options):
    path = tmp_path / "lane.geojson"
    path.write_text(document if isinstance(document, str) else json.dumps(document))
    return read_plan(path, **options)


def test_points_in_order(tmp_path):
    plan = read(tmp_path, collection(feature(A, "Start"), feature(B, 7), feature(C), name="Ridge"))
    assert stops_of(plan) == ["Start", "7", "Point 3"]
    assert plan.name == "Ridge"
    assert plan.grid == "EPSG:32616"
    assert (plan.points[2].position.longitude_deg, plan.points[2].position.latitude_deg) == (
        -84.29,
        36.51,
    )


@pytest.mark.parametrize(
    "document",
    [LINE, feature(LINE["coordinates"], None, "LineString"), collection(feature([A, B, C], "R", "LineString")),
     collection(LINE), LINE | {"crs": CRS84}],
)  # fmt: skip
def test_one_line(tmp_path, document):
    assert stops_of(read(tmp_path, document)) == ["Point 1", "Point 2", "Point 3"]


def test_a_round_comes_back_to_its_first_point(tmp_path):
    document = {"type": "LineString", "coordinates": [A, B, C, C, A]}
    plan = read(tmp_path, document, name="Round")
    assert stops_of(plan) == ["Point 1", "Point 2", "Point 3", "Point 1"]
    assert any("was left out" in note for note in plan.notes)


@pytest.mark.parametrize(
    ("document", "parts"),
    [
        ('{"a": 1,}', ["line 1: is not JSON"]),
        ("[1, 2]", ["lane.geojson: is JSON but not GeoJSON"]),
        ({"format": 1}, ["is JSON but not GeoJSON"]),
        ("[" * 100_000, ["nested too deeply"]),
        ('{"type": ' + "9" * 5000 + "}", ["number that is too long"]),
        ({"type": "FeatureCollection"}, ["without its list of features"]),
        (collection(), ["holds nothing"]),
        (collection(feature(A)), ["holds 1 point and no leg"]),
        (collection(feature(A), {"type": "Feature", "geometry": None}), ["feature 2: has no geom"]),
        (collection(feature(A), 3), ["feature 2: has no geometry"]),
        (
            collection(feature(A), feature(B), feature([A, B], None, "LineString")),
            ["holds 1 LineString and 2 Point"],
        ),
        (collection(LINE, LINE), ["holds 2 LineString"]),
        ({"type": "Polygon", "coordinates": [[A, B, C, A]]}, ["holds 1 Polygon"]),
        (LINE | {"crs": MERCATOR}, ["crs:", "EPSG::3857", "RFC 7946"]),
        (
            {"type": "LineString", "coordinates": [A, [36.5, -184.3]]},
            ["line, position 2", "[36.5, -184.3]", "longitude first"],
        ),
        (collection(feature(A), feature([36.5, 95.0], "Far")), ["feature 2 (Far)", "out of range"]),
        (
            '{"type": "LineString", "coordinates": [[1, 2], [NaN, 2]]}',
            ["line, position 2", "is no position"],
        ),
        (
            '{"type": "LineString", "coordinates": [[1, 2], [1e999, 2]]}',
            ["line, position 2", "is no position"],
        ),
        ({"type": "LineString", "coordinates": [A, ["x", 1]]}, ["is no position"]),
        ({"type": "LineString", "coordinates": [A, [True, 1]]}, ["is no position"]),
        ({"type": "LineString", "coordinates": [A, [1]]}, ["is no position"]),
        ({"type": "LineString", "coordinates": [A, [10**400, 1]]}, ["is no position"]),
        ({"type": "LineString", "coordinates": [A, None]}, ["is no position"]),
        ({"type": "LineString", "coordinates": None}, ["has no list of coordinates"]),
    ],
)
def test_what_is_no_plan_is_told_in_one_sentence(tmp_path, document, parts):
    with pytest.raises(InputRefusedError) as refused:
        read(tmp_path, document)
    (problem,) = refused.value.problems
    for part in ["lane.geojson", *parts]:
        assert part in str(problem)
    assert "\n" not in str(problem)


def test_all_bad_positions_are_told_at_once(tmp_path):
    document = {"type": "LineString", "coordinates": [[1], [2, 91], ["x", 3]]}
    with pytest.raises(InputRefusedError) as refused:
        read(tmp_path, document)
    assert len(refused.value.problems) == 3


def test_signs_that_no_page_can_hold_are_taken_out_and_told(tmp_path):
    plan = read(tmp_path, collection(feature(A, "G\ud800te"), feature(B, "Ford\x00"), name="x\x1b"))
    assert [plan.name, *(point.name for point in plan.points)] == ["x", "G te", "Ford"]
    assert sum("cannot be printed" in note for note in plan.notes) == 3
